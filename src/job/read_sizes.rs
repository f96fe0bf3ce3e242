//! Nominal sizes of a part: from its designation, or as stated, and never against each other.

use super::model::PartKind;
use super::read_size::unit_hint;
use super::section::{Found, Notes, Section, flatten, in_mm};
use crate::quantity::{self, Length};
use crate::stock::dimensions::Designation;

/// Smallest and largest size that a job may hold, mm: the range of ISO 286-1.
const SIZE_MM: (f64, f64) = (1.0, 3150.0);

/// Nominal sizes.
pub(super) struct Sizes {
    pub(super) bore: Option<Found<Length>>,
    pub(super) outside: Found<Length>,
    pub(super) width: Found<Length>,
}

pub(super) fn sizes(
    section: &Section<'_>,
    kind: Option<PartKind>,
    designation: Option<&Designation>,
    notes: &mut Notes,
) -> Option<Sizes> {
    let plug = kind == Some(PartKind::SolidPlug);
    if plug && section.has("bore") {
        notes.problem(section.place("bore"), "a solid plug has no bore", "leave `bore` out, or call it a plain bush");
    }
    let mut read = |key: &str, designated: Option<Length>| nominal(section, key, designated, notes);
    let bore = if plug { None } else { Some(read("bore", designation.map(|d| d.bore.length()))) };
    let outside = read("outside", designation.map(|d| d.outside.length()));
    let width = read("width", designation.map(|d| d.width.length()));
    let bore = flatten(bore)?;
    let (outside, width) = (outside?, width?);
    if let Some(bore) = &bore {
        let (bore_mm, outside_mm) = (in_mm(bore.value), in_mm(outside.value));
        if bore_mm >= outside_mm {
            let message = format!("the bore, {bore_mm} mm, must be smaller than the outside, {outside_mm} mm");
            notes.problem(bore.at.clone(), message, "exchange the two sizes, or check the unit of each");
            return None;
        }
        mixed_units(bore, &outside, notes)?;
    }
    Some(Sizes { bore, outside, width })
}

/// One size in inches beside another in millimetres is refused when reading both in one unit makes a likelier bearing.
fn mixed_units(bore: &Found<Length>, outside: &Found<Length>, notes: &mut Notes) -> Option<()> {
    let differ = matches!((bore.system, outside.system), (Some(a), Some(b)) if a != b);
    let ratio = (outside.value / bore.value).get::<uom::si::ratio::ratio>();
    if !differ || ratio < 6.0 {
        return Some(());
    }
    let message = format!(
        "the bore is {:.4} mm and the outside {:.4} mm, typed in different units",
        in_mm(bore.value),
        in_mm(outside.value)
    );
    notes.problem(bore.at.clone(), message, "write both in the same unit: one of the two units looks wrong");
    None
}

fn nominal(section: &Section<'_>, key: &str, designated: Option<Length>, notes: &mut Notes) -> Option<Found<Length>> {
    if !section.has(key) {
        if let Some(value) = designated {
            return Some(Found { value, at: section.place("designation"), system: None });
        }
        section.missing(key, "give the nominal size, such as \"62 mm\" or \"1-1/8 in\"", notes);
        return None;
    }
    let found = section.quantity(key, quantity::length, notes)?;
    let mm = in_mm(found.value);
    if !(SIZE_MM.0..=SIZE_MM.1).contains(&mm) {
        let message = format!(
            "`{}` is {mm} mm but must lie from {} mm to {} mm, the range of ISO 286-1",
            section.path(key),
            SIZE_MM.0,
            SIZE_MM.1
        );
        notes.problem(found.at, message, "check the number and its unit");
        return None;
    }
    if let Some(designated) = designated {
        let designated_mm = in_mm(designated);
        if (mm - designated_mm).abs() > 1e-6 {
            let message = format!("`{}` is {mm} mm but the designation says {designated_mm} mm", section.path(key));
            notes.problem(found.at, message, unit_hint(mm, designated_mm));
            return None;
        }
    }
    Some(found)
}
