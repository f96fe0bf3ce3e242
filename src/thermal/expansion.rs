use super::REFERENCE_K;
use super::error::ThermalError;
use super::root::root;
use crate::quantity::{Length, ThermodynamicTemperature, positive};
use crate::stock::Curve;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;

/// Temperature to which an inverse search is carried, K.
const TEMPERATURE_TOLERANCE_K: f64 = 1e-9;

/// Size of a part at a temperature: `d(T) = d20 (1 + ΔL/L(T))`.
///
/// **Arguments**: size at 20 °C; `expansion`, ΔL/L against temperature (K), zero at 293.15 K.
///
/// **Valid for** the range of the table, the whole part at one temperature and free to move.
///
/// # Errors
/// [`ThermalError::Value`] for the size, [`ThermalError::Property`] outside the table.
///
/// **Source**: definition of linear thermal expansion; size at 20 °C by ISO 1.
pub fn diameter_at(
    size_at_20: Length,
    expansion: &Curve,
    temperature: ThermodynamicTemperature,
) -> Result<Length, ThermalError> {
    Ok(size_at_20 + change_of(size_at_20, expansion, temperature)?)
}

/// Change of size from 20 °C to a temperature, `d20 ΔL/L(T)`: negative when the part has shrunk.
///
/// # Errors
/// As for [`diameter_at`].
pub fn change_of(
    size_at_20: Length,
    expansion: &Curve,
    temperature: ThermodynamicTemperature,
) -> Result<Length, ThermalError> {
    positive("size at 20 °C", size_at_20.get::<meter>(), "m")?;
    Ok(size_at_20 * strain(expansion, temperature)?)
}

/// A size as it was read, and how warm part and gauge were.
#[derive(Clone, Copy, Debug)]
pub struct Measurement<'a> {
    /// What the gauge showed.
    pub reading: Length,
    /// Temperature of the part.
    pub part_temperature: ThermodynamicTemperature,
    /// Expansion of the part, ΔL/L.
    pub part_expansion: &'a Curve,
    /// Temperature of the gauge.
    pub gauge_temperature: ThermodynamicTemperature,
    /// Expansion of the gauge, ΔL/L.
    pub gauge_expansion: &'a Curve,
}

/// Size at 20 °C of a part that was measured at another temperature.
///
/// A gauge is right at 20 °C; warm, its scale is longer and it shows too little:
/// `reading (1 + e_gauge(T_gauge)) = d20 (1 + e_part(T_part))`.
///
/// # Errors
/// [`ThermalError::Value`] for the reading, [`ThermalError::Property`] outside a table.
///
/// **Source**: ISO 1 (sizes hold at 20 °C) and the definition of linear expansion.
pub fn size_at_reference(measurement: &Measurement) -> Result<Length, ThermalError> {
    positive("reading", measurement.reading.get::<meter>(), "m")?;
    let gauge = strain(measurement.gauge_expansion, measurement.gauge_temperature)?;
    let part = strain(measurement.part_expansion, measurement.part_temperature)?;
    Ok(measurement.reading * ((1.0 + gauge) / (1.0 + part)))
}

/// Temperature at which a part has changed its size by `strain` (ΔL/L from 20 °C; negative to shrink).
///
/// When the table reaches the strain more than once, the temperature nearest to 20 °C counts.
///
/// # Errors
/// [`ThermalError::StrainNotReached`], with the range that the table offers.
pub fn temperature_for_strain(expansion: &Curve, strain: f64) -> Result<ThermodynamicTemperature, ThermalError> {
    let rows: Vec<(f64, f64)> = expansion.points().collect();
    // The curve is monotone between two rows, so a pair of rows holds the strain once or not at all.
    let held = rows.windows(2).filter_map(|pair| held_between(expansion, strain, pair));
    held.min_by(|a, b| (a - REFERENCE_K).abs().total_cmp(&(b - REFERENCE_K).abs()))
        .map(ThermodynamicTemperature::new::<kelvin>)
        .ok_or_else(|| not_reached(expansion, &rows, strain))
}

fn held_between(expansion: &Curve, strain: f64, pair: &[(f64, f64)]) -> Option<f64> {
    let ((low, at_low), (high, at_high)) = (pair[0], pair[1]);
    let (below, above) = (at_low - strain, at_high - strain);
    if below.abs() < f64::MIN_POSITIVE {
        Some(low)
    } else if above.abs() < f64::MIN_POSITIVE {
        Some(high)
    } else if below * above < 0.0 {
        Some(root(|t| expansion.at_inside(t) - strain, (low, high), TEMPERATURE_TOLERANCE_K))
    } else {
        None
    }
}

fn not_reached(expansion: &Curve, rows: &[(f64, f64)], strain: f64) -> ThermalError {
    let (from_k, to_k) = expansion.range();
    let lowest = rows.iter().map(|row| row.1).fold(f64::INFINITY, f64::min);
    let highest = rows.iter().map(|row| row.1).fold(f64::NEG_INFINITY, f64::max);
    ThermalError::StrainNotReached {
        asked_um_per_mm: strain * 1e3,
        lowest_um_per_mm: lowest * 1e3,
        highest_um_per_mm: highest * 1e3,
        from_k,
        to_k,
    }
}

fn strain(expansion: &Curve, temperature: ThermodynamicTemperature) -> Result<f64, ThermalError> {
    expansion
        .at(temperature.get::<kelvin>())
        .map_err(|source| ThermalError::Property { property: "thermal expansion", source })
}
