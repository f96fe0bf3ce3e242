use super::super::error::ThermalError;
use crate::quantity::{HeatTransfer, ThermodynamicTemperature, positive, within};
use uom::si::f64::HeatFluxDensity;
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Stefan-Boltzmann constant, W/(m² K⁴) (CODATA 2018, exact by definition of the SI, rounded).
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;

/// Radiation as a film coefficient: `h = ε σ (T² + Ts²) (T + Ts)`.
///
/// **Valid for** a small grey body in large surroundings, which it does not see itself in.
///
/// # Errors
/// An emissivity outside 0 to 1, a temperature that is not above zero.
///
/// **Source**: Stefan-Boltzmann law.
pub fn radiation_coefficient(
    emissivity: f64,
    surface: ThermodynamicTemperature,
    surroundings: ThermodynamicTemperature,
) -> Result<HeatTransfer, ThermalError> {
    let (strength, body, walls) = checked(emissivity, surface, surroundings)?;
    Ok(HeatTransfer::new::<watt_per_square_meter_kelvin>(strength * coefficient(body, walls)))
}

/// Net heat that the body radiates: `q = ε σ (T⁴ - Ts⁴)`, positive when it is the warmer one.
///
/// **Valid for**, **Errors** and **Source** as for [`radiation_coefficient`].
///
/// # Errors
/// As for [`radiation_coefficient`].
pub fn radiation_flux(
    emissivity: f64,
    surface: ThermodynamicTemperature,
    surroundings: ThermodynamicTemperature,
) -> Result<HeatFluxDensity, ThermalError> {
    let (strength, body, walls) = checked(emissivity, surface, surroundings)?;
    Ok(HeatFluxDensity::new::<watt_per_square_meter>(strength * coefficient(body, walls) * (body - walls)))
}

fn checked(
    emissivity: f64,
    surface: ThermodynamicTemperature,
    surroundings: ThermodynamicTemperature,
) -> Result<(f64, f64, f64), ThermalError> {
    Ok((
        within("emissivity", emissivity, (0.0, 1.0), "")?,
        positive("temperature of the surface", surface.get::<kelvin>(), "K")?,
        positive("temperature of the surroundings", surroundings.get::<kelvin>(), "K")?,
    ))
}

/// The coefficient of a black body, W/(m² K).
pub(super) fn coefficient(body: f64, walls: f64) -> f64 {
    STEFAN_BOLTZMANN * (body * body + walls * walls) * (body + walls)
}
