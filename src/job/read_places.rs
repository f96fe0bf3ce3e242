//! Where the screws of a cover sit: on a circle, or each by its coordinates.

use super::entry::AnyValue;
use super::section::{Notes, Section};
use crate::assembly::screws::{Place, circle};
use crate::quantity;

/// Most screws of one kind.
const MOST: u32 = 200;

const WANTED_POINTS: &str =
    "write each screw as [across, up], such as [[\"0 mm\", \"45 mm\"], [\"45 mm\", \"0 mm\"], [\"-45 mm\", \"0 mm\"]]";
const WANTED_TURN: &str = "write an angle from -360° to 360°, such as \"45°\"";

pub(super) fn places(section: &Section<'_>, notes: &mut Notes) -> Option<Vec<Place>> {
    match (section.has("points"), section.has("circle")) {
        (true, true) => {
            notes.problem(section.place("points"), "both `circle` and `points` are given", "keep one of the two");
            None
        }
        (true, false) => points(section, notes),
        (false, true) => on_circle(section, notes),
        (false, false) => {
            let message = format!("`{}` is missing", section.path("circle"));
            notes.problem(
                section.at.clone(),
                message,
                "give count and circle = \"90 mm\", or points = [[\"0 mm\", \"45 mm\"], ...]",
            );
            None
        }
    }
}

fn points(section: &Section<'_>, notes: &mut Notes) -> Option<Vec<Place>> {
    let rows = section.word_rows("points", WANTED_POINTS, notes)?;
    let count = rows.len();
    if count > MOST as usize {
        let message = format!("`{}` holds {count} screws but may hold at most {MOST}", section.path("points"));
        notes.problem(section.place("points"), message, "leave out what does not belong to this cover");
        return None;
    }
    let mut places = Vec::with_capacity(count);
    for (number, row) in rows.iter().enumerate() {
        let [x, y] = row.as_slice() else {
            let at = row.first().map_or(section.place("points"), |first| first.at.clone());
            let message = format!("screw {} of `{}` has {} coordinates", number + 1, section.path("points"), row.len());
            notes.problem(at, message, WANTED_POINTS);
            continue;
        };
        let key = format!("points[{}]", number + 1);
        let x = section.parse_words(&key, x, quantity::coordinate, notes);
        let y = section.parse_words(&key, y, quantity::coordinate, notes);
        places.extend(x.zip(y).map(|(x, y)| Place { x: x.value, y: y.value }));
    }
    if section.has("count") {
        let stated = section.count("count", (1, MOST), notes)?;
        if stated != count {
            let message = format!("`{}` is {stated} but {count} points are given", section.path("count"));
            notes.problem(section.place("count"), message, "leave `count` out, or give as many points");
            return None;
        }
    }
    (places.len() == count).then_some(places)
}

fn on_circle(section: &Section<'_>, notes: &mut Notes) -> Option<Vec<Place>> {
    section.missing("count", "give how many screws stand on the circle, such as count = 6", notes);
    let count = section.count("count", (1, MOST), notes);
    let diameter = section.quantity("circle", quantity::length, notes);
    let turned = turned(section, notes);
    let (count, diameter, turned) = (count?, diameter?, turned?);
    match circle(count, diameter.value, turned) {
        Ok(places) => Some(places),
        Err(error) => {
            notes.problem(
                diameter.at,
                format!("`{}`: {error}", section.path("circle")),
                "give the diameter through the screws",
            );
            None
        }
    }
}

/// Degrees by which the first screw stands clockwise of the top.
fn turned(section: &Section<'_>, notes: &mut Notes) -> Option<f64> {
    if !section.has("turned") {
        return Some(0.0);
    }
    let words = section.words("turned", WANTED_TURN, notes)?;
    let text = words.text.trim();
    let bare = ["°", "degrees", "deg"].iter().find_map(|unit| text.strip_suffix(unit));
    let read = bare.and_then(|bare| quantity::number(bare).ok()).map(|read| read.value);
    let Some(degrees) = read.filter(|degrees| (-360.0..=360.0).contains(degrees)) else {
        notes.problem(words.at, format!("`{}` cannot be \"{text}\"", section.path("turned")), WANTED_TURN);
        return None;
    };
    section.enter("turned", words.text, AnyValue::Text(format!("{degrees}°")), None, notes);
    Some(degrees)
}
