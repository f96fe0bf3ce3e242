//! Readers of what only data sheets and rooms state: density, expansion, heat capacity, conductivity, volume, and the heat
//! capacity of a freezer or a bath as a whole.

use super::Entered;
use super::error::QuantityError;
use super::read::{Wanted, read};
use super::unit::Kind;
use uom::si::f64::{
    AngularVelocity, HeatCapacity, MassDensity, SpecificHeatCapacity, TemperatureCoefficient, ThermalConductivity,
    Volume,
};
use uom::si::{
    angular_velocity::radian_per_second, heat_capacity::joule_per_kelvin, mass_density::kilogram_per_cubic_meter,
    specific_heat_capacity::joule_per_kilogram_kelvin, temperature_coefficient::per_kelvin,
    thermal_conductivity::watt_per_meter_kelvin, volume::cubic_meter,
};

const DENSITY: Wanted = Wanted {
    kind: Kind::Density,
    what: "a density",
    units: "kg/m³, g/cm³ or lb/in³",
    example: "2700 kg/m3",
    least: 0.0,
    most: 3e4,
    range: "0 to 30000 kg/m³",
    thousands_end: 3e4,
};

const EXPANSION: Wanted = Wanted {
    kind: Kind::Expansion,
    what: "a coefficient of expansion",
    units: "um/(m·K), 1/K or uin/(in·°F)",
    example: "23 um/mK",
    least: -1e-3,
    most: 1e-3,
    range: "-1000 to 1000 um/(m·K)",
    thousands_end: 1e-3,
};

const HEAT_CAPACITY: Wanted = Wanted {
    kind: Kind::HeatCapacity,
    what: "a heat capacity",
    units: "J/(kg·K) or Btu/(lb·°F)",
    example: "900 J/kgK",
    least: 0.0,
    most: 1e5,
    range: "0 to 100000 J/(kg·K)",
    thousands_end: 1e5,
};

const TURNING: Wanted = Wanted {
    kind: Kind::Turning,
    what: "a speed of turning",
    units: "rpm, 1/min or rad/s",
    example: "3000 rpm",
    least: 0.0,
    most: 1e5,
    range: "0 to 955000 rpm",
    thousands_end: 1e5,
};

const BODY_HEAT: Wanted = Wanted {
    kind: Kind::BodyHeat,
    what: "the heat capacity of a whole body",
    units: "kJ/K, J/K or Btu/°F",
    example: "20 kJ/K",
    least: 0.0,
    most: 1e9,
    range: "0 to 1000000 kJ/K",
    thousands_end: 1e9,
};

const CONDUCTIVITY: Wanted = Wanted {
    kind: Kind::Conductivity,
    what: "a thermal conductivity",
    units: "W/(m·K) or Btu/(h·ft·°F)",
    example: "150 W/mK",
    least: 0.0,
    most: 1e5,
    range: "0 to 100000 W/(m·K)",
    thousands_end: 1e5,
};

const VOLUME: Wanted = Wanted {
    kind: Kind::Volume,
    what: "a volume",
    units: "m³, l or ft³",
    example: "60 m3",
    least: 0.0,
    most: 1e9,
    range: "0 to 1000000000 m³",
    thousands_end: 1e9,
};

/// Reads a volume, such as "60 m3", "5 l" or "2000 ft3".
///
/// # Errors
/// No number or unit, a unit of something else, or out of 0 to 10⁹ m³.
pub fn volume(text: &str) -> Result<Entered<Volume>, QuantityError> {
    Ok(read(text, &VOLUME)?.map(Volume::new::<cubic_meter>))
}

/// Reads a density, such as "2700 kg/m3" or "0.098 lb/in3".
///
/// # Errors
/// No number or unit, a unit of something else, or out of 0 to 30 000 kg/m³.
pub fn density(text: &str) -> Result<Entered<MassDensity>, QuantityError> {
    Ok(read(text, &DENSITY)?.map(MassDensity::new::<kilogram_per_cubic_meter>))
}

/// Reads a mean coefficient of linear expansion, such as "23 um/mK", "23e-6 1/K" or "12.8 uin/in°F".
///
/// # Errors
/// No number or unit, a unit of something else, or beyond 1e-3 per K either way.
pub fn expansion_coefficient(text: &str) -> Result<Entered<TemperatureCoefficient>, QuantityError> {
    Ok(read(text, &EXPANSION)?.map(TemperatureCoefficient::new::<per_kelvin>))
}

/// Reads a specific heat capacity, such as "900 J/kgK".
///
/// # Errors
/// No number or unit, a unit of something else, or out of 0 to 100 000 J/(kg·K).
pub fn heat_capacity(text: &str) -> Result<Entered<SpecificHeatCapacity>, QuantityError> {
    Ok(read(text, &HEAT_CAPACITY)?.map(SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>))
}

/// Reads a speed of turning, such as "3000 rpm".
///
/// # Errors
/// No number or unit, a unit of something else, or out of 0 to 955 000 rpm.
pub fn speed_of_turning(text: &str) -> Result<Entered<AngularVelocity>, QuantityError> {
    Ok(read(text, &TURNING)?.map(AngularVelocity::new::<radian_per_second>))
}

/// Reads the heat capacity of a whole body, such as "20 kJ/K": mass times specific heat capacity, all its parts together.
///
/// # Errors
/// No number or unit, a unit of something else, or out of 0 to 1 000 000 kJ/K.
pub fn body_heat_capacity(text: &str) -> Result<Entered<HeatCapacity>, QuantityError> {
    Ok(read(text, &BODY_HEAT)?.map(HeatCapacity::new::<joule_per_kelvin>))
}

/// Reads a thermal conductivity, such as "150 W/mK".
///
/// # Errors
/// No number or unit, a unit of something else, or out of 0 to 100 000 W/(m·K).
pub fn conductivity(text: &str) -> Result<Entered<ThermalConductivity>, QuantityError> {
    Ok(read(text, &CONDUCTIVITY)?.map(ThermalConductivity::new::<watt_per_meter_kelvin>))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn metric_and_inch_values_of_aluminium_agree() {
        let near = |a: f64, b: f64| assert!((a / b - 1.0).abs() < 2e-3, "{a} against {b}");
        near(density("0.0975 lb/in3").unwrap().value.value, density("2.70 g/cm3").unwrap().value.value);
        near(
            expansion_coefficient("13.1 uin/in/°F").unwrap().value.value,
            expansion_coefficient("23.6 um/mK").unwrap().value.value,
        );
        near(expansion_coefficient("23.6e-6 1/K").unwrap().value.value, 23.6e-6);
        near(heat_capacity("0.214 Btu/lb/°F").unwrap().value.value, heat_capacity("896 J/kgK").unwrap().value.value);
        near(speed_of_turning("30 rpm").unwrap().value.value, std::f64::consts::PI);
        near(body_heat_capacity("10 Btu/°F").unwrap().value.value, body_heat_capacity("19 kJ/K").unwrap().value.value);
        near(conductivity("96.5 Btu/h/ft/°F").unwrap().value.value, conductivity("167 W/mK").unwrap().value.value);
    }
}
