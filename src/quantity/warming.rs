use super::{TemperatureInterval, ThermodynamicTemperature};
use uom::si::{temperature_interval as step, thermodynamic_temperature as level};

/// Temperature at which sizes are stated, K (20 °C, ISO 1).
pub const REFERENCE_TEMPERATURE_K: f64 = 293.15;

/// Temperature at which sizes are stated, 20 °C (ISO 1).
pub fn reference_temperature() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<level::kelvin>(REFERENCE_TEMPERATURE_K)
}

/// A temperature from its number of degrees Celsius.
pub fn celsius(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<level::degree_celsius>(degrees)
}

/// Warming of a part above `reference`; negative when the part is chilled.
///
/// The only place where a difference is made of two temperatures: a strain from an absolute temperature would
/// compile, and be wrong.
pub fn warming(part: ThermodynamicTemperature, reference: ThermodynamicTemperature) -> TemperatureInterval {
    TemperatureInterval::new::<step::kelvin>(part.get::<level::kelvin>() - reference.get::<level::kelvin>())
}
