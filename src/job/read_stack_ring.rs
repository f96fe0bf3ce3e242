//! The retaining ring of a stack and the width of its groove.

use super::entry::AnyValue;
use super::model_stack::{AxialSize, StackRing};
use super::read_axial::{Usual, axial};
use super::read_stack::Place;
use super::section::{Notes, Section, in_mm};
use crate::fit::{self, ToleranceClass};
use crate::quantity::{Deviations, Length, Nanometres};
use crate::stock::retaining_rings::{self, RetainingRing, RingPlace};

const WANTED: &str = "write ring = \"DIN 472 62x2\", the bore or shaft alone, \"62\", or { thickness = \"2 mm -0.07/0 mm\" } for \
                      a ring of another kind";

/// Class of the groove's width in DIN 471 and DIN 472.
const GROOVE_CLASS: &str = "H13";

/// A ring, with its row where the tables have it.
pub(super) struct Found {
    pub(super) ring: StackRing,
    pub(super) row: Option<&'static RetainingRing>,
}

/// Bore or shaft: as the ring says, else the bore where there is a housing.
pub(super) fn place(section: &Section<'_>, of: &Place<'_>, notes: &mut Notes) -> Option<RingPlace> {
    let named = section.text("ring").map(str::to_uppercase).unwrap_or_default();
    let place = if named.contains("471") {
        RingPlace::Shaft
    } else if named.contains("472") || of.housing {
        RingPlace::Bore
    } else {
        RingPlace::Shaft
    };
    if place == RingPlace::Shaft && of.part.bore.is_none() {
        notes.problem(section.place("ring"), "a solid plug has no shaft for a ring of DIN 471", WANTED);
        return None;
    }
    Some(place)
}

/// The ring under `ring`, or that of the bore or shaft.
pub(super) fn ring(section: &Section<'_>, place: RingPlace, nominal: Length, notes: &mut Notes) -> Option<Found> {
    if section.is_table("ring") {
        let table = section.section("ring", &["thickness"], notes)?;
        table.missing("thickness", "give the thickness of the ring with its limits", notes);
        let thickness = axial(&table, "thickness", &Usual::General, notes)?;
        let ring = StackRing { name: "retaining ring".to_owned(), thickness, least_land: None, groove: None };
        return Some(Found { ring, row: None });
    }
    let (at, typed) = if section.has("ring") {
        let words = section.words("ring", WANTED, notes)?;
        (words.at.clone(), Some(words))
    } else {
        (section.at.clone(), None)
    };
    let seat = if place == RingPlace::Bore { "bore" } else { "shaft" };
    let (size, thick) = match &typed {
        Some(words) => match named(words.text) {
            Some(found) => found,
            None => {
                notes.problem(at, format!("`stack.ring` cannot be \"{}\"", words.text), WANTED);
                return None;
            }
        },
        None => (in_mm(nominal), None),
    };
    if (size - in_mm(nominal)).abs() > 1e-6 {
        let message = format!("`stack.ring` is for a {seat} of {size} mm, but the {seat} is {} mm", in_mm(nominal));
        notes.problem(at, message, "take the ring of this seat, or leave `ring` out");
        return None;
    }
    let row = retaining_rings::ring(place, Nanometres::from_mm(size)).ok().flatten();
    let Some(row) = row else {
        let message = format!("{} has no ring for a {seat} of {size} mm in the tables here", place.standard());
        notes.problem(
            at,
            message,
            "give ring = { thickness = \"2 mm -0.07/0 mm\" } and groove = { ..., width = \"2.2 mm 0/+0.1 mm\" }",
        );
        return None;
    };
    if let Some(thick) = thick.filter(|thick| (thick - row.thickness.mm()).abs() > 1e-6) {
        let message = format!("`stack.ring` is {thick} mm thick, but {row} is {} mm", row.thickness.mm());
        notes.problem(
            at,
            message,
            "take the thickness of the normal type, or give ring = { thickness = ... } for another",
        );
        return None;
    }
    match &typed {
        Some(words) => section.enter("ring", words.text, AnyValue::Text(row.to_string()), None, notes),
        None => {
            let why = format!("the ring of the {seat}, {} ({}); state ring", place.standard(), row.status);
            notes.assume(section.path("ring"), AnyValue::Text(row.to_string()), why);
        }
    }
    Some(Found { ring: of_row(row), row: Some(row) })
}

fn of_row(row: &RetainingRing) -> StackRing {
    let limits = row.thickness_deviations();
    let thickness = AxialSize {
        nominal: row.thickness.length(),
        least: (row.thickness + limits.lower).length(),
        most: (row.thickness + limits.upper).length(),
        basis: format!("{} ({}; limits from memory)", row.place.standard(), row.status),
    };
    StackRing {
        name: row.to_string(),
        thickness,
        least_land: Some(row.least_land()),
        groove: Some(row.groove.length()),
    }
}

/// Size and thickness, mm, of "DIN 472 62x2", "62x2" or "62".
fn named(text: &str) -> Option<(f64, Option<f64>)> {
    let upper = text.trim().to_uppercase().replace(',', ".").replace(['×', '*'], "X");
    let bare = upper.trim_start_matches("DIN").trim_start();
    let bare = bare
        .strip_prefix("471")
        .or(bare.strip_prefix("472"))
        .filter(|rest| rest.starts_with([' ', '-']))
        .unwrap_or(bare);
    let bare = bare.trim_start_matches([' ', '-']).trim_end_matches("MM").trim_end();
    let (size, thick) = bare.split_once('X').map_or((bare, None), |(size, thick)| (size, Some(thick)));
    let number = |text: &str| text.trim().parse::<f64>().ok().filter(|number| number.is_finite() && *number > 0.0);
    match thick {
        Some(thick) => Some((number(size)?, Some(number(thick)?))),
        None => Some((number(size)?, None)),
    }
}

/// The width of the groove: stated, or the least of the table with class H13.
pub(super) fn groove_width(
    groove: &Section<'_>,
    row: Option<&'static RetainingRing>,
    notes: &mut Notes,
) -> Option<AxialSize> {
    let limits = row.and_then(|row| h13(row.width).map(|limits| (row, limits)));
    match limits {
        _ if groove.has("width") => {
            let usual =
                limits.map_or(Usual::General, |(_, limits)| Usual::Own(limits, "H13, the class of these grooves"));
            axial(groove, "width", &usual, notes)
        }
        Some((row, limits)) => {
            let why = format!(
                "{} mm {GROOVE_CLASS}, {} ({}); state width with the groove",
                row.width.mm(),
                row.place.standard(),
                row.status
            );
            notes.assume(groove.path("width"), AnyValue::Size(row.width.length()), why);
            Some(AxialSize {
                nominal: row.width.length(),
                least: (row.width + limits.lower).length(),
                most: (row.width + limits.upper).length(),
                basis: format!("{} ({})", row.place.standard(), row.status),
            })
        }
        None => {
            groove.missing(
                "width",
                "give the width of the groove with its limits, such as \"2.15 mm 0/+0.14 mm\"",
                notes,
            );
            None
        }
    }
}

fn h13(width: Nanometres) -> Option<Deviations> {
    let class = ToleranceClass::parse(GROOVE_CLASS).ok()?;
    fit::limits_of_size(width, class).ok().map(|limits| limits.deviations)
}
