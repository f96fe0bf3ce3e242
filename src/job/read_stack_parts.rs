//! The parts of a stack, with the limits that are usual for each.

use super::entry::AnyValue;
use super::model::{Part, Size};
use super::model_stack::{AxialSize, StackPart};
use super::read_axial::{Usual, axial, axials};
use super::read_stack::Place;
use super::section::{Notes, Section};
use crate::fit::{self, RingClass};
use crate::quantity::{self, Deviations, Length, Nanometres};
use uom::si::length::millimeter;

/// The parts that a stack may hold, from the shoulder on where the job does not say otherwise.
const PARTS: [&str; 4] = ["seal", "spacer", "bearing", "shim"];

/// The parts, from the shoulder on.
pub(super) fn parts(section: &Section<'_>, of: &Place<'_>, notes: &mut Notes) -> Option<Vec<StackPart>> {
    let mut parts = Vec::new();
    let mut sound = true;
    for kind in PARTS {
        let sizes = match kind {
            "bearing" => bearing(section, of, notes).map(|size| vec![size]),
            _ if !section.has(kind) => continue,
            "seal" => axial(section, kind, &Usual::Own(seal_width(section), SEAL_WHY), notes).map(|size| vec![size]),
            "shim" => axials(section, kind, &Usual::Own(SHIM, SHIM_WHY), notes),
            _ => axials(section, kind, &Usual::General, notes),
        };
        let Some(sizes) = sizes else {
            sound = false;
            continue;
        };
        let several = sizes.len() > 1;
        parts.extend(sizes.into_iter().enumerate().map(|(number, size)| StackPart {
            name: if several { format!("{kind} {}", number + 1) } else { kind.to_owned() },
            kind,
            size,
        }));
    }
    if sound { in_order(section, parts, notes) } else { None }
}

const SEAL_WHY: &str = "width of a shaft seal, ISO 6194-1: ±0.2 mm up to 10 mm, ±0.3 mm above (from memory)";
const SHIM_WHY: &str = "thickness of shim rings, DIN 988: 0/-0.05 mm from half a millimetre on (from memory)";

/// Limits of a shim ring whose limits are not given.
const SHIM: Deviations = Deviations { lower: Nanometres(-50_000), upper: Nanometres(0) };

fn seal_width(section: &Section<'_>) -> Deviations {
    let wide = section.text("seal").and_then(|text| quantity::length(text).ok());
    let over = wide.is_some_and(|found| found.value > Length::new::<millimeter>(10.0));
    let upper = Nanometres::from_mm(if over { 0.3 } else { 0.2 });
    Deviations { lower: -upper, upper }
}

/// The parts as the job orders them, or as listed.
fn in_order(section: &Section<'_>, mut parts: Vec<StackPart>, notes: &mut Notes) -> Option<Vec<StackPart>> {
    let names: Vec<String> = parts.iter().map(|part| part.name.clone()).collect();
    let wanted = format!("write order with each of these once, from the shoulder on: \"{}\"", names.join("\", \""));
    if !section.has("order") {
        if parts.len() > 1 {
            let why = "from the shoulder on: the order changes nothing in the play, only what is measured on the way; state order";
            notes.assume(section.path("order"), AnyValue::Text(names.join(", ")), why);
        }
        return Some(parts);
    }
    let mut found = Vec::new();
    for word in section.word_list("order", &wanted, notes)? {
        let Some(place) = parts.iter().position(|part| part.name == word.text) else {
            let message =
                format!("`stack.order` names \"{}\", which is no part of this stack, or is there twice", word.text);
            notes.problem(word.at, message, wanted);
            return None;
        };
        found.push(parts.remove(place));
    }
    if let Some(left_out) = parts.first() {
        notes.problem(section.place("order"), format!("`stack.order` leaves out the {}", left_out.name), wanted);
        return None;
    }
    Some(found)
}

/// Width of what goes in: stated, by ISO 492 for a bearing, else by ISO 2768-1.
fn bearing(section: &Section<'_>, of: &Place<'_>, notes: &mut Notes) -> Option<AxialSize> {
    let part = of.part;
    let ring = part.bore.filter(|_| part.kind.is_bearing()).map(|bore| width_limits(part, bore));
    let Some((class, limits)) = ring else {
        if section.has("bearing") {
            return axial(section, "bearing", &Usual::General, notes);
        }
        section.missing("bearing", "give the length of the part with its limits, such as \"30 mm ±0.1 mm\"", notes);
        return None;
    };
    match limits {
        Ok(limits) if !section.has("bearing") => {
            let why = format!("ring width of {class}, {}; state bearing under [stack]", limits.source);
            notes.assume("stack.bearing: limits", AnyValue::Limits(limits.deviations), why);
            Some(AxialSize {
                nominal: part.width,
                least: limits.smallest().length(),
                most: limits.largest().length(),
                basis: if limits.source.from_memory { format!("{class} (from memory)") } else { class.to_string() },
            })
        }
        Ok(limits) => axial(section, "bearing", &Usual::Own(limits.deviations, "ring width, ISO 492"), notes),
        Err(_) if section.has("bearing") => axial(section, "bearing", &Usual::General, notes),
        Err(error) => {
            notes.problem(section.at.clone(), format!("`stack.bearing`: {error}"), "state the width with its limits");
            None
        }
    }
}

/// Width limits of the bearing's class; those of Normal where the class is not stated or the tables have no widths for it.
fn width_limits(part: &Part, bore: Length) -> (RingClass, Result<fit::Limits, fit::FitError>) {
    let basis = [&part.outside_size, &part.bore_size].into_iter().flatten().find_map(|size| match size {
        Size::Limits { basis, .. } => RingClass::parse(basis).ok(),
        Size::Measured(_) => None,
    });
    let class = basis.unwrap_or(RingClass::Normal);
    let of = |class| fit::ring_width_limits(Nanometres::from_length(bore), Nanometres::from_length(part.width), class);
    match of(class) {
        Err(fit::FitError::WidthNotGiven { .. }) => (RingClass::Normal, of(RingClass::Normal)),
        limits => (class, limits),
    }
}
