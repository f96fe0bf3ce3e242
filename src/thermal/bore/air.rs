use crate::quantity::ThermodynamicTemperature;
use crate::stock::{Curve, CurveError};
use crate::thermal::ThermalError;
use uom::si::f64::ThermalConductivity;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Temperatures for which the formula of still air holds, K.
const VALID_K: (f64, f64) = (85.0, 2000.0);
/// Reducing temperature of the formula, K.
const REDUCING_K: f64 = 132.5;
/// Unit of the formula, W/(m K).
const UNIT: f64 = 25.9778e-3;
/// Reduced density of air at 101 325 Pa and the reducing temperature, times the first coefficient of the density term:
/// 101 325 Pa × 28.9647 g/mol / (8.314 463 J/(mol K) × 132.5 K) / (314.3 kg/m³) × 0.402 287 (ideal gas).
const AT_ONE_ATMOSPHERE: f64 = 0.003_409_8;

/// How well the air in the gap conducts, against the mean temperature of the two surfaces.
#[derive(Clone, Copy, Debug)]
pub enum AirConductivity<'a> {
    /// Dry still air at one atmosphere ([`still_air_conductivity`]).
    StillAir,
    /// A table of one's own: W/(m K) over K. Another gas, or a fixed law.
    Table(&'a Curve),
}

/// Thermal conductivity of dry still air at 101 325 Pa.
///
/// `k/Λ = 0.239503 θ + 0.00649768 √θ + 1 - 1.92615/θ + 2.00383/θ² - 1.07553/θ³ + 0.229414/θ⁴ + 0.402287 ρ/ρ*`,
/// `θ = T / 132.5 K`, `Λ = 25.9778 mW/(m K)`; of the density term the first power, with the density of the ideal gas.
///
/// **Valid for** 85 K to 2000 K (-188 °C to 1727 °C). From -80 °C to 150 °C it agrees with an independent property
/// library within 0.8 %.
///
/// # Errors
/// [`ThermalError::Property`] outside that range.
///
/// **Source**: K. Kadoya, N. Matsunaga, A. Nagashima, "Viscosity and thermal conductivity of dry air in the gaseous
/// phase", J. Phys. Chem. Ref. Data 14 (1985) 947-970; coefficients read in a printed copy, range from memory.
pub fn still_air_conductivity(temperature: ThermodynamicTemperature) -> Result<ThermalConductivity, ThermalError> {
    let asked = temperature.get::<kelvin>();
    AirConductivity::StillAir.check_covered(asked)?;
    Ok(ThermalConductivity::new::<watt_per_meter_kelvin>(still_air(asked)))
}

fn still_air(temperature: f64) -> f64 {
    // A product beside a quotient, so that neither waits for the other.
    let (theta, inverse) = (temperature * (1.0 / REDUCING_K), REDUCING_K / temperature);
    let falling = -1.926_15 + AT_ONE_ATMOSPHERE + inverse * (2.003_83 + inverse * (-1.075_53 + inverse * 0.229_414));
    UNIT * (0.239_503 * theta + 0.006_497_68 * theta.sqrt() + 1.0 + inverse * falling)
}

impl AirConductivity<'_> {
    /// Conductivity (W/(m K)) at a temperature (K) that has been checked with [`Self::check_covered`].
    pub(super) fn at_inside(&self, temperature: f64) -> f64 {
        match self {
            // A trial step of the solver may stray beyond what its accepted steps are held to.
            Self::StillAir => still_air(temperature.clamp(VALID_K.0, VALID_K.1)),
            Self::Table(table) => table.at_inside(temperature),
        }
    }

    /// An error unless the law holds at a temperature (K).
    pub(super) fn check_covered(&self, temperature: f64) -> Result<(), ThermalError> {
        let (from, to) = VALID_K;
        let covered = match self {
            Self::StillAir if temperature >= from && temperature <= to => Ok(()),
            Self::StillAir => Err(CurveError::Outside { asked: temperature, from, to }),
            Self::Table(table) => table.at(temperature).map(|_| ()),
        };
        covered.map_err(|source| ThermalError::Property {
            property: "thermal conductivity (of the air in the gap)",
            source,
        })
    }
}
