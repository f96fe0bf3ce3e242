use super::super::error::ThermalError;
use super::{ICE_POINT_K, Vapour, saturated, shown};
use crate::quantity::{Mass, ThermodynamicTemperature, not_negative, within};
use uom::si::energy::joule;
use uom::si::f64::{Energy, Volume};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::volume::cubic_meter;

/// Heat that turns dry ice to gas at one atmosphere, J/kg: 6030 cal/mol at 194.7 K.
///
/// **Source**: W. F. Giauque, C. J. Egan, J. Chem. Phys. 5 (1937) 45-54 (from memory).
const SUBLIMATION_HEAT: f64 = 6030.0 * 4.184 / 44.0095e-3;
/// Density of a solid block of dry ice, kg/m³; pellets fill a vessel to about 60 % of it (common practice).
///
/// **Source**: handbook value, from memory.
const DRY_ICE_DENSITY: f64 = 1560.0;

/// Coolant used up by a heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evaporated {
    /// Its mass.
    pub mass: Mass,
    /// Its volume as liquid, or as solid block for dry ice.
    pub volume: Volume,
}

/// Liquid nitrogen that boils away when a part gives up `heat`.
///
/// `m = Q / (r + Δh)`: r = 199.2 kJ/kg; Δh is what the cold vapour takes up on the way to `vapour_leaves_at`, 226.9 kJ/kg
/// up to 20 °C. In an open vessel the vapour leaves cold: `None`. Losses through the vessel and its first cooling come
/// on top.
///
/// **Valid for** vapour that leaves at 77.4 to 300 K, one atmosphere.
///
/// # Errors
/// A negative heat; a temperature of the vapour outside that range.
///
/// **Source**: R. Span and others, J. Phys. Chem. Ref. Data 29 (2000) 1361-1433, as given by CoolProp 8.0.0.
pub fn nitrogen_evaporated(
    heat: Energy,
    vapour_leaves_at: Option<ThermodynamicTemperature>,
) -> Result<Evaporated, ThermalError> {
    let sensible = match vapour_leaves_at {
        None => 0.0,
        Some(temperature) => {
            let (from, to) = Vapour::RANGE_K;
            // Half a kelvin below the boiling point is the same to the trade, and thin air boils colder.
            let limits = (from - ICE_POINT_K - 0.5, to - ICE_POINT_K);
            let celsius = shown(temperature.get::<kelvin>() - ICE_POINT_K);
            Vapour::at(within("temperature of the vapour", celsius, limits, "°C")? + ICE_POINT_K).enthalpy
        }
    };
    evaporated(heat, saturated::LATENT_HEAT + sensible, saturated::LIQUID_DENSITY)
}

/// Dry ice that turns to gas when a part gives up `heat`: `m = Q / r`, r = 573 kJ/kg; the volume is that of a solid block.
///
/// # Errors
/// A negative heat.
///
/// **Source**: W. F. Giauque, C. J. Egan, J. Chem. Phys. 5 (1937) 45-54 (from memory).
pub fn dry_ice_sublimed(heat: Energy) -> Result<Evaporated, ThermalError> {
    evaporated(heat, SUBLIMATION_HEAT, DRY_ICE_DENSITY)
}

fn evaporated(heat: Energy, per_kilogram: f64, density: f64) -> Result<Evaporated, ThermalError> {
    let mass = not_negative("heat", heat.get::<joule>(), "J")? / per_kilogram;
    Ok(Evaporated { mass: Mass::new::<kilogram>(mass), volume: Volume::new::<cubic_meter>(mass / density) })
}
