//! What a medium is beside its temperature: what the piece lies on in it, how much heat it holds, how hard it blows.

use super::entry::AnyValue;
use super::model::{MediumStore, RestsOn};
use super::section::{Found, Notes, Section};
use crate::quantity::{self, Power};
use crate::stock::medium::{Film, Hazard, Law, Medium};
use uom::si::heat_capacity::kilojoule_per_kelvin;
use uom::si::power::{kilowatt, watt};

/// Heat capacities of a medium that a job may state, kJ/K: a glass of water to a large oil bath.
const CAPACITY_KJ_K: (f64, f64) = (0.1, 10_000.0);
/// Largest power that holds a medium, kW.
const HOLDING_KW: f64 = 100.0;
/// Powers of a blower, W.
const BLOWER_W: (f64, f64) = (200.0, 20_000.0);

fn law(medium: &Medium) -> Option<Law> {
    medium.film().map(|film| film.law)
}

/// What the piece lies on; asked only where air is around it.
pub(super) fn rests_on(section: &Section<'_>, medium: &Medium, notes: &mut Notes) -> Option<RestsOn> {
    let in_air = matches!(law(medium), Some(Law::Air { .. }));
    if !section.has("rests_on") {
        if in_air {
            let why = "a metal shelf as cold or hot as the air speeds it up, a tray slows it down: state rests_on";
            notes.assume(section.path("rests_on"), AnyValue::Text("grate".to_owned()), why);
        }
        return Some(RestsOn::Grate);
    }
    let names = RestsOn::NAMES.map(|(name, _)| format!("\"{name}\"")).join(", ");
    let help = format!("write one of: {names}");
    let words = section.words("rests_on", &help, notes)?;
    if !in_air {
        let message =
            format!("`{}` belongs to freezers and ovens; {} needs none", section.path("rests_on"), medium.id());
        notes.problem(section.place("rests_on"), message, "leave it out");
        return None;
    }
    let found = RestsOn::NAMES.iter().find(|(name, _)| name.eq_ignore_ascii_case(words.text.trim()));
    if found.is_none() {
        let message = format!("`{}` cannot be \"{}\"", section.path("rests_on"), words.text);
        notes.problem(words.at, message, help);
    }
    found.map(|(_, rests_on)| *rests_on)
}

/// The heat that the medium holds, where it is not large against the piece.
pub(super) fn store(section: &Section<'_>, medium: &Medium, notes: &mut Notes) -> Option<Option<MediumStore>> {
    if !section.has("heat_capacity") {
        if section.has("holding_power") {
            let message = format!("`{}` needs `heat_capacity` beside it", section.path("holding_power"));
            let help =
                "give the heat capacity of all that is as cold or hot as the medium, heat_capacity = \"20 kJ/K\"";
            notes.problem(section.place("holding_power"), message, help);
            return None;
        }
        return Some(None);
    }
    if let Some(why) = steady(medium) {
        let message = format!("`{}`: {} {why}", section.path("heat_capacity"), medium.id());
        notes.problem(section.place("heat_capacity"), message, "leave `heat_capacity` and `holding_power` out");
        return None;
    }
    let capacity = section.quantity("heat_capacity", quantity::body_heat_capacity, notes)?;
    let kilojoules = capacity.value.get::<kilojoule_per_kelvin>();
    if !(CAPACITY_KJ_K.0..=CAPACITY_KJ_K.1).contains(&kilojoules) {
        let path = section.path("heat_capacity");
        let message = format!("`{path}` is {kilojoules} kJ/K but must lie from 0.1 kJ/K to 10000 kJ/K");
        let help =
            "a litre of water is 4.2 kJ/K, a kilogram of steel 0.46 kJ/K, a kilogram of frozen food about 2 kJ/K";
        notes.problem(capacity.at, message, help);
        return None;
    }
    let holding =
        if section.has("holding_power") { holding_power(section, notes)?.value } else { no_power(section, notes) };
    Some(Some(MediumStore { capacity: capacity.value, holding }))
}

/// Why a medium keeps its temperature whatever is put into it.
fn steady(medium: &Medium) -> Option<&'static str> {
    let film = medium.film();
    if film.is_none() {
        Some("heats the piece from within")
    } else if medium.hazards().iter().any(|hazard| matches!(hazard, Hazard::Cryogen | Hazard::DryIce)) {
        Some("keeps its temperature as long as some is left: the plan says how much is used up")
    } else if film.is_some_and(|film: &Film| film.resting_face_only || matches!(film.law, Law::Stream { .. })) {
        Some("is taken as large against the piece")
    } else {
        None
    }
}

fn holding_power(section: &Section<'_>, notes: &mut Notes) -> Option<Found<Power>> {
    let found = section.quantity("holding_power", quantity::power, notes)?;
    let kilowatts = found.value.get::<kilowatt>();
    if kilowatts <= HOLDING_KW {
        return Some(found);
    }
    let message = format!("`{}` is {kilowatts} kW but must lie from 0 kW to 100 kW", section.path("holding_power"));
    notes.problem(
        found.at,
        message,
        "give the cooling or heating power that holds the empty medium at its temperature",
    );
    None
}

fn no_power(section: &Section<'_>, notes: &mut Notes) -> Power {
    let none = Power::new::<watt>(0.0);
    let why = "not stated: nothing brings the medium back to its temperature, which is the pessimistic end";
    notes.assume(section.path("holding_power"), AnyValue::Power(none), why);
    none
}

/// Power of the blower, weak and strong; none where nothing blows.
pub(super) fn blower(section: &Section<'_>, medium: &Medium, notes: &mut Notes) -> Option<Option<(Power, Power)>> {
    let Some(Film { law: Law::Stream { powers }, provenance, .. }) = medium.film() else { return Some(None) };
    if !section.has("power") {
        let span = format!("{:.0} W to {:.0} W", powers.0.get::<watt>(), powers.1.get::<watt>());
        let why = format!("{provenance}; state power = \"... W\" from the plate of the gun");
        notes.assume(section.path("power"), AnyValue::Text(span), why);
        return Some(Some(*powers));
    }
    let found = section.quantity("power", quantity::power, notes)?;
    let watts = found.value.get::<watt>();
    if (BLOWER_W.0..=BLOWER_W.1).contains(&watts) {
        return Some(Some((found.value, found.value)));
    }
    let message = format!("`{}` is {watts} W but must lie from 200 W to 20000 W", section.path("power"));
    notes.problem(found.at, message, "give the power on the plate of the gun");
    None
}
