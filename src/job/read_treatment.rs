//! Chilling and warming.

use super::entry::AnyValue;
use super::model::{FilmChoice, Hold, Piece, Treatment, Wrapping};
use super::read_medium::{blower, rests_on, store};
use super::section::{Found, Notes, Section, nearest};
use crate::quantity::{self, Power, ThermodynamicTemperature, Time, Toward, celsius, show_duration};
use crate::stock::Library;
use crate::stock::medium::{Direction, Film, Law, Medium, Transfer};
use std::borrow::Cow;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, second};

pub(super) const KEYS: [&str; 11] = [
    "part",
    "medium",
    "temperature",
    "film",
    "wrap",
    "rests_on",
    "heat_capacity",
    "holding_power",
    "power",
    "hold",
    "until",
];

/// Longest hold that a job may ask for.
const LONGEST_HOLD_H: f64 = 72.0;

/// Whether the section chills or warms, and what it may be done to.
pub(super) struct Asked {
    pub(super) direction: Direction,
    pub(super) housing: bool,
    pub(super) shaft: bool,
    pub(super) shop: ThermodynamicTemperature,
}

pub(super) fn treatment(
    section: &Section<'_>,
    asked: &Asked,
    library: &Library,
    notes: &mut Notes,
) -> Option<Treatment> {
    section.missing("part", "say what is treated: \"bearing\", \"housing\" or \"shaft\"", notes);
    let piece = piece(section, asked, notes);
    section.missing("medium", "name a medium (`seatwise media` lists them)", notes);
    let medium = medium(section, asked, library, notes);
    let hold = hold(section, asked, notes);
    let medium = medium?;
    let film = film(section, &film_of(&medium, library)?, notes);
    let wrap = wrap(section, notes);
    let power = power(section, &medium, notes);
    let temperature = temperature(section, &medium, asked, notes);
    let hold = target_in_range(section, hold?, &medium, notes);
    let (rests_on, store, blower) =
        (rests_on(section, &medium, notes), store(section, &medium, notes), blower(section, &medium, notes));
    let (piece, film, wrap, power) = (piece?, film?, wrap?, power?);
    let (rests_on, store, blower) = (rests_on?, store?, blower?);
    Some(Treatment {
        piece,
        film,
        wrap,
        rests_on,
        store,
        power,
        blower,
        temperature: temperature?,
        hold: hold?,
        medium,
    })
}

/// Film range of the medium; a piece that is heated from within stands in still air.
fn film_of(medium: &Medium, library: &Library) -> Option<Film> {
    match medium.transfer() {
        Transfer::Film(film) => Some(film.clone()),
        Transfer::Power(_) => library.medium("still-air").ok()?.film().cloned(),
    }
}

fn piece(section: &Section<'_>, asked: &Asked, notes: &mut Notes) -> Option<Piece> {
    let words = section.words("part", "write part = \"bearing\", \"housing\" or \"shaft\"", notes)?;
    let piece = match words.text.trim().to_lowercase().as_str() {
        "bearing" | "bush" | "plug" | "part" | "ring" => Piece::Part,
        "housing" => Piece::Housing,
        "shaft" => Piece::Shaft,
        other => {
            let choices = ["bearing", "bush", "plug", "housing", "shaft"];
            let help = nearest(other, choices.into_iter()).map_or_else(
                || format!("choose one of: {}", choices.join(", ")),
                |meant| format!("did you mean \"{meant}\"?"),
            );
            notes.problem(words.at, format!("`{}` cannot be \"{other}\"", section.path("part")), help);
            return None;
        }
    };
    let refused = refusal(piece, asked);
    if let Some((message, help)) = refused {
        notes.problem(words.at, message, help);
        return None;
    }
    Some(piece)
}

/// Treating the wrong piece makes the joint tighter.
fn refusal(piece: Piece, asked: &Asked) -> Option<(&'static str, &'static str)> {
    match (asked.direction, piece) {
        (Direction::Chill, Piece::Housing) => {
            Some(("chilling the housing makes the joint tighter", "chill the part that goes in, or warm the housing"))
        }
        (Direction::Warm, Piece::Shaft) => {
            Some(("warming the shaft makes the joint tighter", "warm the bearing, or chill the shaft"))
        }
        (Direction::Chill, Piece::Part) if !asked.housing => Some((
            "a chilled part is tighter on its shaft, and there is no [housing] for it to go into",
            "warm the bearing or chill the shaft, or describe the [housing]",
        )),
        (Direction::Warm, Piece::Part) if !asked.shaft => Some((
            "a warmed part is tighter in its housing, and there is no [shaft] for it to go onto",
            "chill the part or warm the housing, or describe the [shaft]",
        )),
        (_, Piece::Housing) if !asked.housing => Some(("there is no [housing] in this job", "describe the [housing]")),
        (_, Piece::Shaft) if !asked.shaft => Some(("there is no [shaft] in this job", "describe the [shaft]")),
        _ => None,
    }
}

fn medium(section: &Section<'_>, asked: &Asked, library: &Library, notes: &mut Notes) -> Option<Medium> {
    let words = section.words("medium", "name a medium (`seatwise media` lists them)", notes)?;
    let medium = match library.medium(words.text) {
        Ok(medium) => medium,
        Err(error) => {
            notes.problem(words.at, format!("`{}`: {error}", section.path("medium")), "`seatwise media` lists them");
            return None;
        }
    };
    if medium.direction() != asked.direction {
        let (does, section_for) = match medium.direction() {
            Direction::Chill => ("chills", "[chill]"),
            Direction::Warm => ("warms", "[warm]"),
            Direction::Air => ("neither chills nor warms", "[bench]"),
        };
        let message = format!("`{}`: {} {does}", section.path("medium"), medium.id());
        notes.problem(words.at, message, format!("it belongs under {section_for}; choose another medium here"));
        return None;
    }
    Some(medium)
}

fn temperature(
    section: &Section<'_>,
    medium: &Medium,
    asked: &Asked,
    notes: &mut Notes,
) -> Option<ThermodynamicTemperature> {
    if matches!(medium.transfer(), Transfer::Power(_)) {
        if section.has("temperature") {
            let message = format!("{} has no temperature of its own", medium.id());
            notes.problem(section.place("temperature"), message, "write until = \"90 °C\" for the part's temperature");
        }
        // The piece is heated from within and loses heat to the air of the shop.
        return Some(asked.shop);
    }
    let stated = if section.has("temperature") {
        let found = section.quantity("temperature", quantity::temperature, notes)?;
        right_side(section, &found, medium, asked, notes)?;
        Some(found)
    } else {
        None
    };
    match medium.at(stated.as_ref().map(|found| found.value)) {
        Ok(value) => {
            if stated.is_none() {
                let why = format!("{}; state the real temperature when it is known", medium.temperature().provenance);
                notes.assume(section.path("temperature"), AnyValue::Temperature(value), why);
            }
            Some(value)
        }
        Err(error) => {
            let at = stated.map_or_else(|| section.place("medium"), |found| found.at);
            let message = format!("`{}`: {error}", section.path("temperature"));
            notes.problem(at, message, "check the sign and the unit, or choose another medium");
            None
        }
    }
}

/// A chill above, or a warm-up below, the temperature of the shop is a slip of the pen.
fn right_side(
    section: &Section<'_>,
    found: &Found<ThermodynamicTemperature>,
    medium: &Medium,
    asked: &Asked,
    notes: &mut Notes,
) -> Option<()> {
    let (celsius_given, shop) = (found.value.get::<degree_celsius>(), asked.shop.get::<degree_celsius>());
    let wrong = match asked.direction {
        Direction::Chill => {
            found.value >= asked.shop || (celsius_given > 0.0 && medium.temperature().high < celsius(0.0))
        }
        Direction::Warm => found.value <= asked.shop,
        Direction::Air => false,
    };
    if !wrong {
        return Some(());
    }
    let (does, side) = if asked.direction == Direction::Chill { ("chills", "below") } else { ("warms", "above") };
    let message = format!(
        "`{}` is {celsius_given:.1} °C, but {} {does}: it must be {side} the shop, {shop:.1} °C{}",
        section.path("temperature"),
        medium.id(),
        if asked.direction == Direction::Chill && celsius_given < shop { ", and below freezing" } else { "" }
    );
    let help = if celsius_given > 0.0 && asked.direction == Direction::Chill {
        format!("did you mean minus: \"-{celsius_given:.0} °C\"? or was it °F?")
    } else {
        "check the sign and the unit".to_owned()
    };
    notes.problem(found.at.clone(), message, help);
    None
}

/// The film coefficient under `film`, or that of the medium.
pub(super) fn film(section: &Section<'_>, usual: &Film, notes: &mut Notes) -> Option<FilmChoice> {
    if !section.has("film") {
        return Some(usual_film(section.path("film"), usual, notes));
    }
    let found = section.quantity("film", quantity::film_coefficient, notes)?;
    let value = found.value.get::<watt_per_square_meter_kelvin>();
    if !(0.5..=20_000.0).contains(&value) {
        let message = format!("`{}` is {value} W/m²K but must lie from 0.5 to 20000 W/m²K", section.path("film"));
        notes.problem(found.at, message, "still air gives 3 to 8, a stirred bath some hundreds");
        return None;
    }
    Some(FilmChoice::Stated(found.value))
}

/// The film of the medium's data, noted as an assumption.
pub(super) fn usual_film(key: impl Into<Cow<'static, str>>, usual: &Film, notes: &mut Notes) -> FilmChoice {
    let radiation = if usual.radiates { "; radiation is added" } else { "" };
    let why = format!("{}{radiation}; state film = \"... W/m²K\" when it has been measured", usual.provenance);
    let value = match usual.law {
        Law::Stated => AnyValue::Film(usual.low, usual.high),
        Law::Air { .. } => AnyValue::Text("air around the part".to_owned()),
        Law::Stream { .. } => AnyValue::Film(usual.low, usual.high),
        Law::BoilingNitrogen { .. } => AnyValue::Text("boiling curve of nitrogen".to_owned()),
    };
    notes.assume(key, value, why);
    FilmChoice::OfMedium(usual.clone())
}

fn wrap(section: &Section<'_>, notes: &mut Notes) -> Option<Option<Wrapping>> {
    if !section.has("wrap") {
        return Some(None);
    }
    let names = Wrapping::NAMES.map(|(name, _)| name).join(", ");
    let words = section.words("wrap", &format!("write one of: {names}"), notes)?;
    let found = Wrapping::NAMES.iter().find(|(name, _)| name.eq_ignore_ascii_case(words.text.trim()));
    if found.is_none() {
        notes.problem(
            words.at,
            format!("`{}` cannot be \"{}\"", section.path("wrap"), words.text),
            format!("write one of: {names}"),
        );
    }
    found.map(|(_, wrapping)| Some(*wrapping))
}

fn power(section: &Section<'_>, medium: &Medium, notes: &mut Notes) -> Option<Power> {
    let Transfer::Power(range) = medium.transfer() else {
        let blows = medium.film().is_some_and(|film| matches!(film.law, Law::Stream { .. }));
        if section.has("power") && !blows {
            let message = format!("{} takes no `power`", medium.id());
            notes.problem(
                section.place("power"),
                message,
                "leave `power` out, or choose the induction heater or the hot-air gun",
            );
            return None;
        }
        return Some(Power::new::<watt>(0.0));
    };
    let allowed = format!("from {:.0} W to {:.0} W", range.low.get::<watt>(), range.high.get::<watt>());
    section.missing("power", &format!("give the heat put into the piece, {allowed}"), notes);
    let found = section.quantity("power", quantity::power, notes)?;
    if found.value < range.low || found.value > range.high {
        let message =
            format!("`{}` is {:.0} W but must lie {allowed}", section.path("power"), found.value.get::<watt>());
        notes.problem(found.at, message, "check the number and its unit");
        return None;
    }
    Some(found.value)
}

fn hold(section: &Section<'_>, asked: &Asked, notes: &mut Notes) -> Option<Hold> {
    if section.has("hold") && section.has("until") {
        notes.problem(section.place("until"), "both `hold` and `until` are given", "keep one of the two");
        return None;
    }
    if section.has("hold") {
        return hold_time(section.quantity("hold", quantity::duration, notes)?, section, notes);
    }
    if !section.has("until") {
        let verb = if asked.direction == Direction::Chill { "chilled" } else { "warmed" };
        let help = format!("say how long it is {verb}: hold = \"30 min\", until = \"settled\", or until = \"90 °C\"");
        notes.problem(section.at.clone(), format!("`{}` is missing", section.path("hold")), help);
        return None;
    }
    let words = section.words("until", "write until = \"settled\", or a temperature", notes)?;
    if words.text.trim().eq_ignore_ascii_case("settled") {
        return Some(Hold::Settled);
    }
    let found = section.parse_words("until", &words, quantity::temperature, notes)?;
    reachable(section, Hold::Reaches(found.value), asked, notes)
}

fn hold_time(found: Found<Time>, section: &Section<'_>, notes: &mut Notes) -> Option<Hold> {
    let typed = show_duration(found.value, Toward::Nearest);
    if found.value.get::<second>() < 1.0 || found.value.get::<hour>() > LONGEST_HOLD_H {
        let message = format!("`{}` is {typed} but must lie from 1 s to {LONGEST_HOLD_H} h", section.path("hold"));
        notes.problem(found.at, message, "check the number and its unit: s, min or h");
        return None;
    }
    Some(Hold::For(found.value))
}

/// A target on the wrong side of the shop's temperature can never be reached.
fn reachable(section: &Section<'_>, hold: Hold, asked: &Asked, notes: &mut Notes) -> Option<Hold> {
    let Hold::Reaches(target) = hold else { return Some(hold) };
    let wrong = match asked.direction {
        Direction::Chill => target >= asked.shop,
        Direction::Warm => target <= asked.shop,
        Direction::Air => false,
    };
    if wrong {
        let message = format!(
            "`{}` is {:.1} °C, on the wrong side of the shop's {:.1} °C",
            section.path("until"),
            target.get::<degree_celsius>(),
            asked.shop.get::<degree_celsius>()
        );
        notes.problem(section.place("until"), message, "check the sign and the unit");
        return None;
    }
    Some(hold)
}

/// A piece that is heated from within has no medium to stop it: its target must lie in the heater's range.
fn target_in_range(section: &Section<'_>, hold: Hold, medium: &Medium, notes: &mut Notes) -> Option<Hold> {
    if matches!(medium.transfer(), Transfer::Film(_)) {
        return Some(hold);
    }
    let Hold::Reaches(target) = hold else {
        let message = format!("{} has no temperature of its own to settle at", medium.id());
        let help = "write until = \"90 °C\": the temperature at which the part is taken off";
        notes.problem(section.place(if section.has("hold") { "hold" } else { "until" }), message, help);
        return None;
    };
    match medium.at(Some(target)) {
        Ok(_) => Some(hold),
        Err(error) => {
            notes.problem(
                section.place("until"),
                format!("`{}`: {error}", section.path("until")),
                "choose a temperature in that range",
            );
            None
        }
    }
}
