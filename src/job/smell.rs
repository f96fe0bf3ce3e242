//! Entries that are possible one by one but cannot be meant together.

use super::model::{Housing, Part, PartKind, Shaft, Size};
use super::section::{Notes, Section, in_mm};
use crate::quantity::Length;
use std::ops::Range;
use uom::si::length::micrometer;

/// Largest interference, and largest measured clearance, as a share of the diameter.
///
/// Common practice, no published source: a steel ring yields at about 0.1 to 0.3 % of its diameter, so a larger
/// interference is a slip of the pen or a job for another method; a seat that measures looser than this is not the seat
/// of this ring.
const LARGEST_SHARE: f64 = 0.003;
/// Largest interference of a bush in its housing, which yields from its bore outward and goes on holding.
///
/// The small bushes of ISO 4379, H7/s6, come to 0.45 % (8 mm outside: +23/+32 µm; 6 mm: +19/+27 µm, ISO 286-2).
const LARGEST_OF_BUSH: f64 = 0.005;

/// Refuses fits that no metal bears, and measured sizes that do not belong together.
pub(super) fn fits(
    top: &Section<'_>,
    part: &Part,
    housing: Option<&Housing>,
    shaft: Option<&Shaft>,
    notes: &mut Notes,
) {
    if let (Some(housing), Some(outside)) = (housing, &part.outside_size) {
        let largest = if part.kind == PartKind::PlainBush { LARGEST_OF_BUSH } else { LARGEST_SHARE };
        joint((&housing.size, outside), largest, top.place("housing"), notes);
    }
    if let (Some(shaft), Some(bore)) = (shaft, &part.bore_size) {
        joint((bore, &shaft.size), LARGEST_SHARE, top.place("shaft"), notes);
    }
}

fn joint((outer, inner): (&Size, &Size), largest: f64, at: Range<usize>, notes: &mut Notes) {
    let (outer_low, outer_high) = extent(outer);
    let (inner_low, inner_high) = extent(inner);
    let (interference, clearance) = (inner_high - outer_low, outer_high - inner_low);
    let share = (interference / inner_high).get::<uom::si::ratio::ratio>();
    if share > largest {
        let message = format!(
            "the interference is up to {:.0} um, {:.2} % of the diameter; steel yields at 0.1 to 0.3 %",
            interference.get::<micrometer>(),
            share * 100.0
        );
        notes.problem(at, message, likely(outer_low, inner_high));
        return;
    }
    let measured = matches!(outer, Size::Measured(_)) || matches!(inner, Size::Measured(_));
    let share = (clearance / inner_high).get::<uom::si::ratio::ratio>();
    if measured && share > LARGEST_SHARE {
        let message = format!(
            "the measured sizes leave a clearance of {:.0} um, {:.2} % of the diameter",
            clearance.get::<micrometer>(),
            share * 100.0
        );
        notes.problem(at, message, "were bore and ring exchanged, or measured on another part?");
    }
}

/// Smallest and largest diameter, as read: the correction to 20 °C is far smaller than what is looked for here.
fn extent(size: &Size) -> (Length, Length) {
    match size {
        Size::Limits { limits, .. } => (limits.smallest().length(), limits.largest().length()),
        Size::Measured(measured) => (measured.reading - measured.within, measured.reading + measured.within),
    }
}

fn likely(bore: Length, ring: Length) -> String {
    format!(
        "the bore is {:.3} mm and the ring {:.3} mm at the tightest: check the limits' signs and units, or exchange bore \
         and ring",
        in_mm(bore),
        in_mm(ring)
    )
}
