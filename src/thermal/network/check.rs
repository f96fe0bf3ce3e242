//! Refusals that bodies, surfaces and histories share.

use super::super::error::ThermalError;
use crate::quantity::ValueError;
use crate::stock::Curve;

/// An error unless a table covers a temperature.
pub(super) fn known(curve: &Curve, t: f64, property: &'static str) -> Result<(), ThermalError> {
    curve.at(t).map(|_| ()).map_err(|source| ThermalError::Property { property, source })
}

/// An error unless `index` is one of `count` places.
pub(super) fn place(what: &'static str, index: usize, count: usize) -> Result<(), ThermalError> {
    if index < count {
        return Ok(());
    }
    // Places are small numbers; their size as f64 is exact.
    #[allow(clippy::cast_precision_loss)]
    let (value, to) = (index as f64, count.saturating_sub(1) as f64);
    Err(ValueError::OutOfRange { what, value, from: 0.0, to, unit: "(counted from zero)" }.into())
}
