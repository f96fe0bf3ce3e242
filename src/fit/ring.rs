use super::{FitError, Limits, LimitsSource};
use crate::quantity::{Deviations, Nanometres};
use crate::stock::iso286::{SizeRange, Status};
use crate::stock::iso492::{Ring, RingClass, tables};

/// Limits of the bore of an inner ring or of the outside of an outer ring.
///
/// They hold for the mean diameter in a single plane; the upper deviation is 0 in every class.
///
/// **Arguments**: `nominal`, the bore or outside diameter; a size on the edge of a band belongs to the band below it.
///
/// **Valid for** radial bearings with a cylindrical bore, tapered roller bearings excepted, at 20 °C.
///
/// # Errors
/// [`FitError::RingNotGiven`] where the tables do not reach, with the sizes that they cover.
///
/// **Source**: ISO 492, through the texts named in `fits/iso492_rings.csv`.
pub fn ring_limits(nominal: Nanometres, class: RingClass, ring: Ring) -> Result<Limits, FitError> {
    let tables = tables()?;
    let Some(row) = tables.ring(class, ring, nominal) else {
        let (over, to) = ends(tables.rings(class, ring).map(|row| row.range()));
        return Err(FitError::RingNotGiven { class, ring: Some(ring), nominal, over, to });
    };
    let what = match ring {
        Ring::Inner => "mean bore",
        Ring::Outer => "mean outside diameter",
    };
    Ok(limits(nominal, row.deviations(), format!("{class}: {what} {}", row.range()), row.status))
}

/// Limits of the width of either ring of a single bearing.
///
/// **Arguments**: `bore`, which sets the band; `width`, the nominal width of the ring.
///
/// # Errors
/// [`FitError::WidthNotGiven`] for a class without widths; [`FitError::RingNotGiven`] where the table does not reach.
///
/// **Source**: ISO 492, through the texts named in `fits/iso492_widths.csv`.
pub fn ring_width_limits(bore: Nanometres, width: Nanometres, class: RingClass) -> Result<Limits, FitError> {
    let tables = tables()?;
    if tables.widths(class).next().is_none() {
        return Err(FitError::WidthNotGiven { class });
    }
    let Some(row) = tables.width(class, bore) else {
        let (over, to) = ends(tables.widths(class).map(|row| row.range()));
        return Err(FitError::RingNotGiven { class, ring: None, nominal: bore, over, to });
    };
    Ok(limits(width, row.deviations(), format!("{class}: width, bore {}", row.range()), row.status))
}

fn limits(nominal: Nanometres, deviations: Deviations, text: String, status: Status) -> Limits {
    Limits { nominal, deviations, source: LimitsSource { text, from_memory: status.is_memory() } }
}

fn ends(ranges: impl Iterator<Item = SizeRange>) -> (Nanometres, Nanometres) {
    let bands: Vec<SizeRange> = ranges.collect();
    let over = bands.iter().map(|band| band.over).min().unwrap_or_default();
    let to = bands.iter().map(|band| band.to).max().unwrap_or_default();
    (over, to)
}
