//! The sizes of a shaft seal: in one word, or one by one.

use super::entry::AnyValue;
use super::section::{Found, Notes, Section, in_mm};
use crate::quantity::{self, Length};
use std::ops::Range;
use uom::si::length::millimeter;

/// Sizes of radial shaft seals, mm: the range of the tables.
const SHAFT_MM: (f64, f64) = (4.0, 500.0);
const BORE_MM: (f64, f64) = (10.0, 500.0);
const WIDTH_MM: (f64, f64) = (2.0, 50.0);

/// Inside, outside and width: as "35x52x7", or one by one.
pub(super) fn sizes(section: &Section<'_>, notes: &mut Notes) -> Option<[Length; 3]> {
    let named = ["inside", "outside", "width"];
    if section.has("size") {
        if let Some(twice) = named.iter().find(|key| section.has(key)) {
            let message = format!("both `seal.size` and `seal.{twice}` are given");
            notes.problem(section.place(twice), message, "keep one of the two");
            return None;
        }
        return in_one_word(section, notes);
    }
    let help = "give size = \"35x52x7\" (shaft, bore, width), or inside, outside and width";
    for key in named {
        section.missing(key, help, notes);
    }
    let [inside, outside, width] = named.map(|key| section.quantity(key, quantity::length, notes));
    let at = section.place("outside");
    sound([inside?, outside?, width?].map(|found: Found<Length>| found.value), at, notes)
}

/// Millimetres between crosses, the trade's way to name a seal: shaft x bore x width.
fn in_one_word(section: &Section<'_>, notes: &mut Notes) -> Option<[Length; 3]> {
    let wanted = "write shaft x bore x width in mm, such as \"35x52x7\"; for inch seals give inside, outside and width";
    let words = section.words("size", wanted, notes)?;
    let bare = words.text.trim().to_lowercase().replace("mm", "").replace(['×', '*', '-', '/'], "x").replace(',', ".");
    let numbers: Option<Vec<f64>> = bare.split('x').map(|part| part.trim().parse::<f64>().ok()).collect();
    let numbers = numbers.filter(|numbers| numbers.iter().all(|number| number.is_finite()));
    let Some(&[inside, outside, width]) = numbers.as_deref() else {
        let message = format!("`{}` cannot be \"{}\"", section.path("size"), words.text);
        notes.problem(words.at, message, wanted);
        return None;
    };
    let printed = format!("{inside} mm x {outside} mm x {width} mm");
    section.enter("size", words.text, AnyValue::Text(printed), Some(quantity::System::Metric), notes);
    sound([inside, outside, width].map(Length::new::<millimeter>), words.at, notes)
}

fn sound(sizes: [Length; 3], at: Range<usize>, notes: &mut Notes) -> Option<[Length; 3]> {
    let [inside, outside, width] = sizes.map(in_mm);
    let help = "check the order, shaft x bore x width, and the units";
    for (what, value, (low, high)) in
        [("shaft", inside, SHAFT_MM), ("bore", outside, BORE_MM), ("width", width, WIDTH_MM)]
    {
        if !(low..=high).contains(&value) {
            let message = format!("the seal's {what} is {value} mm but must lie from {low} mm to {high} mm");
            notes.problem(at, message, help);
            return None;
        }
    }
    if outside - inside < 4.0 {
        let message =
            format!("a seal of {outside} mm outside on a shaft of {inside} mm has under 2 mm for lip and case");
        notes.problem(at, message, help);
        return None;
    }
    Some(sizes)
}
