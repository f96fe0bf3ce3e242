//! Diameters at 20 °C.

use super::PlanError;
use crate::job::{Measured, Size};
use crate::quantity::{Length, Nanometres};
use crate::stock::Curve;
use crate::thermal::{Measurement, size_at_reference};

/// Smallest and largest diameter at 20 °C.
pub(super) struct SizeBand {
    pub(super) smallest: Nanometres,
    pub(super) largest: Nanometres,
    /// Mean of several readings.
    pub(super) mean: Option<Nanometres>,
    /// Half width of the band when it comes from a measurement.
    pub(super) uncertainty: Option<Length>,
    /// What the limits are.
    pub(super) basis: String,
    /// Where they come from.
    pub(super) source: String,
}

/// The band of `size`; the measured size of a part of this `expansion` is brought to 20 °C.
pub(super) fn at_reference(size: &Size, expansion: &Curve) -> Result<SizeBand, PlanError> {
    match size {
        Size::Limits { limits, basis } => Ok(SizeBand {
            smallest: limits.smallest(),
            largest: limits.largest(),
            mean: None,
            uncertainty: None,
            basis: basis.clone(),
            source: limits.source.to_string(),
        }),
        Size::Measured(measured) => from_measurement(measured, expansion),
    }
}

fn from_measurement(measured: &Measured, expansion: &Curve) -> Result<SizeBand, PlanError> {
    let size = size_at_reference(&Measurement {
        reading: measured.reading,
        part_temperature: measured.part_temperature,
        part_expansion: expansion,
        gauge_temperature: measured.gauge_temperature,
        gauge_expansion: measured.gauge_material.expansion(),
    })?;
    // The readings lie so near each other that all move by the same share.
    let form = measured.readings.as_ref().map(|readings| (readings, readings.form()));
    let mean = form.as_ref().map(|(_, form)| Nanometres::from_length(form.mean * (size / measured.reading)));
    let (basis, source) = match &form {
        Some((readings, _)) => (format!("{} readings, {readings}", readings.count()), format!("measured, {readings}")),
        None => ("as measured".to_owned(), "measured".to_owned()),
    };
    Ok(SizeBand {
        smallest: Nanometres::from_length(size - measured.within),
        largest: Nanometres::from_length(size + measured.within),
        mean,
        uncertainty: Some(measured.uncertainty),
        basis,
        source: format!("{source}; brought to 20 °C (ISO 1) with the expansion of part and gauge"),
    })
}
