//! Water that moist air leaves on a cold part: dew above 0 °C, frost below, and the heat that comes with it.
//!
//! What is left out, and why that is on the safe side for a chilled part: what lies on the part does not dry off again
//! (drying would cool it), and frost does not insulate (a hundredth of the film's resistance for the tenth of a
//! millimetre that forms while a bearing warms up).

use super::ICE_POINT_K;
use super::error::ThermalError;
use super::moist_air::{Over, condensation_point, saturation_pressure, vapour_pressure};
use crate::quantity::{HeatTransfer, Pressure, ThermodynamicTemperature, not_negative, within};
use uom::si::f64::{HeatFluxDensity, MassFlux};
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::mass_flux::kilogram_per_square_meter_second;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;

/// Molar mass of water over that of dry air; ASHRAE Handbook, Fundamentals (from memory).
const MASS_RATIO: f64 = 0.621_945;
/// Heat capacity of air at constant pressure, J/(kg K): 1005.6 to 1006.5 from -40 to 30 °C (CoolProp 8.0.0).
const AIR_HEAT_CAPACITY: f64 = 1006.0;
/// Lewis number α/D of vapour in air: α = 22.0e-6 m²/s at 25 °C (CoolProp 8.0.0) over D = 26e-6 m²/s at 298 K (Incropera,
/// "Fundamentals of Heat and Mass Transfer", Table A.8, from memory). 0.90 instead would lower the rate by 4 %.
const LEWIS_NUMBER: f64 = 0.85;
/// Latent heat of vaporisation at 0 °C, J/kg (IAPWS-95 by CoolProp 8.0.0, 2 500 914.58 J/kg at 0.01 °C).
const VAPORISATION: f64 = 2.500_914_58e6;
/// Its fall per kelvin, J/(kg K): 2 453.5 kJ/kg at 20 °C (steam tables, from memory).
const VAPORISATION_SLOPE: f64 = 2370.0;
/// Latent heat of fusion at 0 °C, J/kg (molar heat of fusion of the `chemicals` 1.5.2 data over molar mass).
pub(super) const FUSION: f64 = 3.336_056_947e5;
/// Coldest surface of the vapour pressure over ice, K; below it the pressure is under 0.0014 Pa and taken as none.
const COLDEST_K: f64 = 173.15;
/// Air pressures in which parts are fitted, Pa: from 5000 m of altitude to a deep mine.
const PRESSURE_RANGE_PA: (f64, f64) = (50e3, 120e3);

/// Frost melts between 0 °C and this much above, K: a band and not a point, so that the balance stays smooth.
const MELTING_BAND_K: f64 = 2.0;

/// Air with water vapour in it, as it wets a cold surface.
///
/// Mass flux by the analogy of heat and mass transfer (Chilton-Colburn):
///
/// `g = h / (c_p Le^(2/3)) · 0.622 (e - e_s(T_surface)) / p`, zero where the surface is above the dew or frost point.
///
/// `e_s` is over ice below 0 °C, over water above. The film coefficient is that of convection alone, without radiation.
///
/// **Source**: F. P. Incropera, D. P. DeWitt, "Fundamentals of Heat and Mass Transfer", section 6.7 (heat and mass transfer
/// analogy, from memory), written with partial pressures at the film temperature, so that it starts at the dew point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MoistAir {
    temperature: f64,
    vapour: f64,
    /// Mass flux for a film of one and an excess of vapour pressure of one, kg K/(J Pa).
    transfer: f64,
    /// Temperature from which on no surface takes up water, K: a little above the dew or frost point.
    dry_from: f64,
}

/// How far above the dew point a surface is dry without a look at the vapour pressure, K: the tolerance of that point, and
/// more.
const SURELY_DRY_K: f64 = 0.01;

/// How much water a surface takes up, and the heat that comes with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wetting {
    /// Water or ice per area and time.
    pub mass: MassFlux,
    /// Heat into the surface: latent heat times mass.
    pub heat: HeatFluxDensity,
    /// Dew or frost.
    pub onto: Over,
}

impl MoistAir {
    /// Air of this temperature, relative humidity (0 to 1, over water) and pressure.
    ///
    /// # Errors
    /// [`ThermalError::Value`]: temperature beyond -100 to 100 °C, humidity beyond 0 to 1, pressure beyond 50 to
    /// 120 kPa.
    pub fn new(
        air: ThermodynamicTemperature,
        relative_humidity: f64,
        pressure: Pressure,
    ) -> Result<Self, ThermalError> {
        let kpa = pressure.get::<pascal>() / 1e3;
        within("air pressure", kpa, (PRESSURE_RANGE_PA.0 / 1e3, PRESSURE_RANGE_PA.1 / 1e3), "kPa")?;
        let vapour = vapour_pressure(air, relative_humidity, Over::Water)?.get::<pascal>();
        let transfer = MASS_RATIO / (AIR_HEAT_CAPACITY * lewis_factor() * pressure.get::<pascal>());
        // Air so dry that it has no frost point is looked at wherever the surface is.
        let onset = condensation_point(air, relative_humidity).map(|(point, _)| point.get::<kelvin>() + SURELY_DRY_K);
        Ok(Self { temperature: air.get::<kelvin>(), vapour, transfer, dry_from: onset.unwrap_or(f64::INFINITY) })
    }

    /// Temperature of the air.
    pub fn temperature(&self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<kelvin>(self.temperature)
    }

    /// Temperature below which a surface gets wet or white, and which of the two; `None` for air so dry that this lies
    /// below -100 °C.
    pub fn onset(&self) -> Option<(ThermodynamicTemperature, Over)> {
        let saturated = saturation_pressure(self.temperature(), Over::Water).ok()?;
        condensation_point(self.temperature(), (self.vapour / saturated.get::<pascal>()).min(1.0)).ok()
    }

    /// Water and heat that a surface takes up under a film coefficient (convection alone).
    ///
    /// This is the extra flux to add to any balance of one body. Frost that melts later takes
    /// 334 kJ/kg back; [`super::Network`] accounts for that, this function does not.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for the film coefficient; [`ThermalError::Value`] for a surface that is not above 0 K
    /// or above 100 °C.
    pub fn wetting(&self, surface: ThermodynamicTemperature, film: HeatTransfer) -> Result<Wetting, ThermalError> {
        let h = not_negative("film coefficient", film.get::<watt_per_square_meter_kelvin>(), "W/(m² K)")?;
        let t = within("temperature of the surface", surface.get::<kelvin>(), (0.0, ICE_POINT_K + 100.0), "K")?;
        let mass = self.deposit(t, h);
        Ok(Wetting {
            mass: MassFlux::new::<kilogram_per_square_meter_second>(mass),
            heat: HeatFluxDensity::new::<watt_per_square_meter>(mass * latent_heat(t)),
            onto: if freezes(t) { Over::Ice } else { Over::Water },
        })
    }

    /// Mass flux, kg/(m² s), onto a surface at `t` K under a film of `h` W/(m² K).
    pub(super) fn deposit(&self, t: f64, h: f64) -> f64 {
        if t >= self.dry_from {
            return 0.0;
        }
        let excess = self.vapour - surface_pressure(t);
        if excess <= 0.0 {
            return 0.0;
        }
        h * self.transfer * excess
    }
}

/// `Le^(2/3)`.
fn lewis_factor() -> f64 {
    LEWIS_NUMBER.powf(2.0 / 3.0)
}

/// Vapour pressure at a surface, Pa.
fn surface_pressure(t: f64) -> f64 {
    if t < COLDEST_K {
        return 0.0;
    }
    let over = if freezes(t) { Over::Ice } else { Over::Water };
    // Above 100 °C nothing settles, whatever the air holds.
    saturation_pressure(ThermodynamicTemperature::new::<kelvin>(t), over).map_or(f64::INFINITY, |p| p.get::<pascal>())
}

/// Whether water on a surface at `t` K is ice.
pub(super) fn freezes(t: f64) -> bool {
    t < ICE_POINT_K
}

/// Heat that a kilogram of vapour brings, J/kg: of condensation from 0 °C up, of deposition below.
///
/// The heat of deposition changes by less than 0.5 % down to -100 °C (memory) and is taken as at 0 °C.
pub(super) fn latent_heat(t: f64) -> f64 {
    if freezes(t) { VAPORISATION + FUSION } else { VAPORISATION - VAPORISATION_SLOPE * (t - ICE_POINT_K) }
}

/// Share of the frost that melts per kelvin of warming, 1/K: a parabola over the melting band, whose integral is one.
pub(super) fn melting_share(t: f64) -> f64 {
    let s = (t - ICE_POINT_K) / MELTING_BAND_K;
    if s > 0.0 && s < 1.0 { 6.0 * s * (1.0 - s) / MELTING_BAND_K } else { 0.0 }
}
