//! Nitrogen at its boiling point, what a chill uses up, and what the gas does to the air of a room.

mod evaporation;
mod room;

pub use evaporation::{Evaporated, dry_ice_sublimed, nitrogen_evaporated};
pub use room::{
    CARBON_DIOXIDE_LONG_TERM_LIMIT, CARBON_DIOXIDE_SHORT_TERM_LIMIT, Coolant, OXYGEN_DEFICIENT, RoomAir, room_air_after,
};

use super::ICE_POINT_K;
use super::air::{SEA_LEVEL_PA, shown, standard_pressure};
use super::error::ThermalError;
use super::root::root;
use crate::quantity::{Length, Pressure, ThermodynamicTemperature, within};
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;

/// Lowest and highest pressure, kPa.
const RANGE_KPA: (f64, f64) = (50.0, 110.0);
/// Temperature to which the boiling point is searched, K.
const TEMPERATURE_TOLERANCE_K: f64 = 1e-9;

/// Saturated nitrogen at 101 325 Pa, SI units.
///
/// **Source**: values of CoolProp 8.0.0. Density, heat capacity and enthalpy: R. Span, E. W. Lemmon, R. T Jacobsen,
/// W. Wagner, A. Yokozeki, J. Phys. Chem. Ref. Data 29 (2000) 1361-1433. Viscosity and conductivity: E. W. Lemmon,
/// R. T Jacobsen, Int. J. Thermophysics 25 (2004) 21-69.
pub(super) mod saturated {
    /// Density of the liquid, kg/m³.
    pub const LIQUID_DENSITY: f64 = 806.085;
    /// Heat capacity of the liquid, J/(kg K).
    pub const LIQUID_HEAT_CAPACITY: f64 = 2041.49;
    /// Conductivity of the liquid, W/(m K).
    pub const LIQUID_CONDUCTIVITY: f64 = 0.144_773;
    /// Viscosity of the liquid, Pa s.
    pub const LIQUID_VISCOSITY: f64 = 1.606_62e-4;
    /// Expansion coefficient of the liquid, 1/K.
    pub const LIQUID_EXPANSION: f64 = 5.670_5e-3;
    /// Surface tension, N/m (from the surface-tension fit that the library carries).
    pub const SURFACE_TENSION: f64 = 8.879_6e-3;
    /// Latent heat, J/kg.
    pub const LATENT_HEAT: f64 = 199_176.0;
    /// Density of the vapour, kg/m³.
    pub const VAPOUR_DENSITY: f64 = 4.612_14;
    /// Conductivity of the vapour, W/(m K).
    pub const VAPOUR_CONDUCTIVITY: f64 = 7.187_55e-3;
    /// Viscosity of the vapour, Pa s.
    pub const VAPOUR_VISCOSITY: f64 = 5.444_01e-6;
}

/// Nitrogen vapour at 101 325 Pa, SI units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Vapour {
    pub(super) density: f64,
    pub(super) heat_capacity: f64,
    pub(super) viscosity: f64,
    pub(super) conductivity: f64,
    /// Enthalpy above that of the saturated vapour, J/kg.
    pub(super) enthalpy: f64,
}

/// Temperature (K), density (kg/m³), heat capacity (J/(kg K)), viscosity (µPa s), conductivity (mW/(m K)), enthalpy above
/// saturated vapour (kJ/kg), at 101 325 Pa. Source as for [`saturated`].
const VAPOUR: [[f64; 6]; 21] = [
    [77.355, 4.6121, 1123.9, 5.4440, 7.1876, 0.0],
    [80.0, 4.4399, 1113.1, 5.6238, 7.4452, 2.96],
    [85.0, 4.1504, 1097.5, 5.9618, 7.9320, 8.48],
    [90.0, 3.8992, 1086.4, 6.2971, 8.4176, 13.94],
    [95.0, 3.6787, 1078.1, 6.6294, 8.9012, 19.35],
    [100.0, 3.4831, 1071.8, 6.9588, 9.3820, 24.73],
    [105.0, 3.3082, 1066.9, 7.2850, 9.8600, 30.07],
    [110.0, 3.1508, 1063.0, 7.6082, 10.3346, 35.40],
    [115.0, 3.0081, 1059.8, 7.9281, 10.8059, 40.70],
    [120.0, 2.8782, 1057.3, 8.2449, 11.2737, 46.00],
    [130.0, 2.6502, 1053.4, 8.8690, 12.1986, 56.55],
    [140.0, 2.4563, 1050.6, 9.4807, 13.1090, 67.07],
    [150.0, 2.2893, 1048.6, 10.0803, 14.0050, 77.56],
    [160.0, 2.1439, 1047.0, 10.6682, 14.8869, 88.04],
    [180.0, 1.9027, 1044.9, 11.8105, 16.6096, 108.96],
    [200.0, 1.7107, 1043.5, 12.9110, 18.2802, 129.84],
    [220.0, 1.5541, 1042.6, 13.9728, 19.9021, 150.70],
    [240.0, 1.4239, 1042.0, 14.9990, 21.4787, 171.54],
    [260.0, 1.3139, 1041.6, 15.9923, 23.0134, 192.38],
    [280.0, 1.2197, 1041.4, 16.9552, 24.5091, 213.21],
    [300.0, 1.1382, 1041.4, 17.8901, 25.9687, 234.04],
];

impl Vapour {
    /// Coldest and hottest vapour of the table, K.
    pub(super) const RANGE_K: (f64, f64) = (VAPOUR[0][0], VAPOUR[VAPOUR.len() - 1][0]);

    /// Vapour at a temperature (K) inside the table, its end values beyond; straight lines between the rows, which
    /// is within 0.1 % (the density as `ρ T`, which is nearly constant).
    pub(super) fn at(temperature: f64) -> Self {
        let i = VAPOUR.partition_point(|row| row[0] <= temperature).clamp(1, VAPOUR.len() - 1);
        let (low, high) = (&VAPOUR[i - 1], &VAPOUR[i]);
        let share = ((temperature - low[0]) / (high[0] - low[0])).clamp(0.0, 1.0);
        let mixed = |a: f64, b: f64| a + share * (b - a);
        Self {
            density: mixed(low[0] * low[1], high[0] * high[1]) / mixed(low[0], high[0]),
            heat_capacity: mixed(low[2], high[2]),
            viscosity: mixed(low[3], high[3]) * 1e-6,
            conductivity: mixed(low[4], high[4]) * 1e-3,
            enthalpy: mixed(low[5], high[5]) * 1e3,
        }
    }
}

/// Temperature at which liquid nitrogen boils under a pressure; 77.355 K (-195.8 °C) at 101 325 Pa.
///
/// Inverse of `ln(p/pc) = Tc/T Σ n_i (1 - T/Tc)^k_i`.
///
/// **Valid for** 50 to 110 kPa; within 0.01 K of the equation of state there.
///
/// # Errors
/// [`ThermalError::Value`] for the pressure.
///
/// **Source**: R. Span and others, J. Phys. Chem. Ref. Data 29 (2000) 1361-1433, vapour-pressure equation (coefficients
/// from memory, compared with CoolProp 8.0.0 from 63 to 85 K).
pub fn nitrogen_boiling_point(pressure: Pressure) -> Result<ThermodynamicTemperature, ThermalError> {
    let kilopascals = within("pressure over the nitrogen", shown(pressure.get::<pascal>() * 1e-3), RANGE_KPA, "kPa")?;
    let wanted = (kilopascals * 1e3).ln();
    let t = root(|t| log_vapour_pressure(t) - wanted, (65.0, 85.0), TEMPERATURE_TOLERANCE_K);
    Ok(ThermodynamicTemperature::new::<kelvin>(t))
}

/// Temperature at which liquid nitrogen boils at an elevation, in the standard atmosphere.
///
/// # Errors
/// As for [`standard_pressure`].
pub fn nitrogen_boiling_point_at(elevation: Length) -> Result<ThermodynamicTemperature, ThermalError> {
    nitrogen_boiling_point(standard_pressure(elevation)?)
}

/// Natural logarithm of the vapour pressure in Pa.
fn log_vapour_pressure(t: f64) -> f64 {
    const CRITICAL_K: f64 = 126.192;
    const CRITICAL_PA: f64 = 3.3958e6;
    let x = 1.0 - t / CRITICAL_K;
    let root_x = x.sqrt();
    let sum = -6.124_452_84 * x + 1.263_272_2 * x * root_x - 0.765_910_082 * x * x * root_x - 1.775_705_64 * x.powi(5);
    CRITICAL_PA.ln() + CRITICAL_K / t * sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The constants and the end of the table against the rows of the reference data.
    #[test]
    fn saturated_nitrogen_is_that_of_the_reference() {
        let vapour = Vapour::at(77.355);
        let known = [
            ("nitrogen saturated rhol", saturated::LIQUID_DENSITY),
            ("nitrogen saturated cpl", saturated::LIQUID_HEAT_CAPACITY),
            ("nitrogen saturated cpv", vapour.heat_capacity),
            ("nitrogen saturated kl", saturated::LIQUID_CONDUCTIVITY),
            ("nitrogen saturated kv", saturated::VAPOUR_CONDUCTIVITY),
            ("nitrogen saturated kv", vapour.conductivity),
            ("nitrogen saturated muv", saturated::VAPOUR_VISCOSITY),
            ("nitrogen saturated muv", vapour.viscosity),
            ("nitrogen latent heat", saturated::LATENT_HEAT),
        ];
        let text = include_str!("../../tests/reference/film/nitrogen.csv");
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.unwrap()).collect();
        for (name, ours) in known {
            let row = rows.iter().find(|row| row[1].starts_with(name)).unwrap();
            let value: f64 = row[3].parse().unwrap();
            assert!((ours / value - 1.0).abs() < 3e-5, "{name}: {ours}, {value}");
        }
    }

    #[test]
    fn vapour_beyond_the_table_keeps_its_end_values() {
        assert!((Vapour::at(60.0).density - 4.6121).abs() < 1e-9);
        assert!((Vapour::at(400.0).density - 1.1382).abs() < 1e-9);
        assert!((Vapour::at(300.0).conductivity - 25.9687e-3).abs() < 1e-9);
    }
}
