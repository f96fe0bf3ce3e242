//! The formulas of pool boiling, for nitrogen.

use super::super::air::FREE_FALL;
use super::super::error::ThermalError;
use super::super::nitrogen::{Vapour, saturated as n2};
use super::radiation::coefficient;
use crate::quantity::{HeatTransfer, Length, TemperatureInterval, within};
use std::f64::consts::TAU;
use uom::si::f64::HeatFluxDensity;
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, millimeter};
use uom::si::temperature_interval::kelvin as step_kelvin;

/// Boiling point at 101 325 Pa, K (Span and others 2000, as given by CoolProp 8.0.0).
pub(super) const BOILING_POINT_K: f64 = 77.355;
/// Diameters of cylinders, mm.
pub(super) const DIAMETER_MM: (f64, f64) = (1.0, 1000.0);
/// Superheats of film boiling, K; the vapour table ends at a film of 300 K.
pub(super) const FILM_SUPERHEAT_K: (f64, f64) = (1.0, 445.0);
/// Superheats of nucleate boiling, K.
const NUCLEATE_SUPERHEAT_K: (f64, f64) = (0.0, 20.0);
/// Surface constants of Rohsenow.
pub(super) const SURFACE_CONSTANT: (f64, f64) = (0.003, 0.02);
/// Constants of the critical flux, from large plates with edges to thin wires.
pub(super) const CRITICAL_CONSTANT: (f64, f64) = (0.118, 0.18);
/// Share of the vapour's sensible heat that Bromley's film carries on top of the latent heat.
pub(super) const SENSIBLE_SHARE_OF_BROMLEY: f64 = 0.8;

/// Film boiling on a horizontal cylinder, convection alone:
/// `h = 0.62 (k³ ρ (ρl - ρ) g r' / (μ D ΔT))^(1/4)`, `r' = r + s cp ΔT`, vapour at the mean of wall and liquid.
///
/// `sensible_share` s is 0.8 in current textbooks, 0.4 in older ones.
///
/// **Valid for** nitrogen at 101 325 Pa, superheat ΔT of the wall 1 to 445 K. The paper measured cylinders of a few
/// millimetres; on thicker ones it is low ([`breen_westwater_film_boiling`]: by 40 % at 50 mm).
///
/// # Errors
/// [`ThermalError::Value`] for the superheat, a diameter outside 1 to 1000 mm, a share outside 0 to 1.
///
/// **Source**: L. A. Bromley, Chem. Eng. Progress 46 (1950) 221-227 (constants from memory).
pub fn bromley_film_boiling(
    diameter: Length,
    superheat: TemperatureInterval,
    sensible_share: f64,
) -> Result<HeatTransfer, ThermalError> {
    let share = within("share of sensible heat", sensible_share, (0.0, 1.0), "")?;
    let drive = Pool::AT_SEA_LEVEL.drive(film_superheat(superheat)?, share);
    Ok(film(bromley(drive, checked_diameter(diameter)?)))
}

/// Film boiling on a horizontal cylinder of any thickness, convection alone:
/// `h = (0.59 + 0.069 λ/D) (k³ ρ (ρl - ρ) g r' / (μ λ ΔT))^(1/4)`, λ = 2π √(σ / (g (ρl - ρ))) = 6.7 mm.
///
/// **Valid for** nitrogen at 101 325 Pa, superheat 1 to 445 K. Sensible share 0.8 as for Bromley (engineer's choice).
///
/// # Errors
/// [`ThermalError::Value`] for the superheat or a diameter outside 1 to 1000 mm.
///
/// **Source**: B. P. Breen, J. W. Westwater, Chem. Eng. Progress 58 (1962) 67-72 (from memory).
pub fn breen_westwater_film_boiling(
    diameter: Length,
    superheat: TemperatureInterval,
) -> Result<HeatTransfer, ThermalError> {
    let drive = Pool::AT_SEA_LEVEL.drive(film_superheat(superheat)?, SENSIBLE_SHARE_OF_BROMLEY);
    Ok(film(breen_westwater(drive, checked_diameter(diameter)?)))
}

/// Film boiling on a horizontal plate that faces up, convection alone:
/// `h = 0.425 (k³ ρ (ρl - ρ) g r' / (μ ΔT l))^(1/4)`, l the [`capillary_length`], `r' = r + 0.5 cp ΔT`.
///
/// **Valid for** nitrogen at 101 325 Pa, superheat 1 to 445 K.
///
/// # Errors
/// [`ThermalError::Value`] for the superheat.
///
/// **Source**: P. J. Berenson, J. Heat Transfer 83 (1961) 351-358 (constants from memory).
pub fn berenson_plate_film_boiling(superheat: TemperatureInterval) -> Result<HeatTransfer, ThermalError> {
    let drive = Pool::AT_SEA_LEVEL.drive(film_superheat(superheat)?, 0.5);
    Ok(film(0.425 * fourth_root(drive / capillary_si())))
}

/// Film boiling with radiation through the vapour: `h = h_film + 3/4 h_radiation`.
///
/// **Valid for** radiation that is the smaller of the two, as it always is on a part below 500 K in nitrogen.
///
/// # Errors
/// An emissivity outside 0 to 1, a superheat outside 1 to 445 K.
///
/// **Source**: L. A. Bromley, Chem. Eng. Progress 46 (1950) 221-227 (from memory).
pub fn film_boiling_with_radiation(
    convection: HeatTransfer,
    emissivity: f64,
    superheat: TemperatureInterval,
) -> Result<HeatTransfer, ThermalError> {
    let strength = within("emissivity", emissivity, (0.0, 1.0), "")?;
    let wall = BOILING_POINT_K + film_superheat(superheat)?;
    Ok(convection + film(0.75 * strength * coefficient(wall, BOILING_POINT_K)))
}

/// Least flux that keeps up film boiling on a plate: `q = 0.09 ρv r (g σ (ρl - ρv) / (ρl + ρv)²)^(1/4)`.
///
/// **Valid for** nitrogen at 101 325 Pa: 8.4 kW/m².
///
/// **Source**: N. Zuber 1959 with the constant of P. J. Berenson, J. Heat Transfer 83 (1961) 351-358 (from memory).
pub fn berenson_minimum_flux() -> HeatFluxDensity {
    let sum = n2::LIQUID_DENSITY + n2::VAPOUR_DENSITY;
    let wave = fourth_root(FREE_FALL * n2::SURFACE_TENSION * density_step() / (sum * sum));
    flux(0.09 * n2::VAPOUR_DENSITY * n2::LATENT_HEAT * wave)
}

/// Superheat at which film boiling ends on a plate that stays as warm everywhere:
/// `ΔT = 0.127 ρv r / kv (g (ρl - ρv) / (ρl + ρv))^(2/3) (σ / (g (ρl - ρv)))^(1/2) (μv / (g (ρl - ρv)))^(1/3)`.
///
/// **Valid for** nitrogen at 101 325 Pa: 69 K with properties of the saturated vapour. Metal parts are found at 25 to 60 K
/// (spread of the literature, from memory), rough, coated and thin ones at the upper end or above.
///
/// **Source**: P. J. Berenson, J. Heat Transfer 83 (1961) 351-358 (constants from memory).
pub fn berenson_minimum_superheat() -> TemperatureInterval {
    let weight = FREE_FALL * density_step();
    let share = (weight / (n2::LIQUID_DENSITY + n2::VAPOUR_DENSITY)).cbrt();
    let lead = 0.127 * n2::VAPOUR_DENSITY * n2::LATENT_HEAT / n2::VAPOUR_CONDUCTIVITY;
    let kelvins = lead * share * share * capillary_si() * (n2::VAPOUR_VISCOSITY / weight).cbrt();
    TemperatureInterval::new::<step_kelvin>(kelvins)
}

/// Nucleate boiling: `h = μl r √(g (ρl - ρv)/σ) (cl / (C r Pr^n))³ ΔT²`.
///
/// `surface_constant` C is 0.013 when nothing is known; for nitrogen on metals 0.005 to 0.015 is reported (from memory).
/// `prandtl_exponent` n is 1.7, for water 1.0.
///
/// **Valid for** nitrogen at 101 325 Pa, superheat 0 to 20 K and below the critical flux; within a factor of two.
///
/// # Errors
/// [`ThermalError::Value`] for the superheat, a constant outside 0.003 to 0.02, an exponent outside 1 to 1.7.
///
/// **Source**: W. M. Rohsenow, Trans. ASME 74 (1952) 969-976 (constants from memory).
pub fn rohsenow_nucleate_boiling(
    superheat: TemperatureInterval,
    surface_constant: f64,
    prandtl_exponent: f64,
) -> Result<HeatTransfer, ThermalError> {
    let excess = within("superheat", superheat.get::<step_kelvin>(), NUCLEATE_SUPERHEAT_K, "K")?;
    let constant = within("surface constant", surface_constant, SURFACE_CONSTANT, "")?;
    let exponent = within("exponent of the Prandtl number", prandtl_exponent, (1.0, 1.7), "")?;
    Ok(film(rohsenow(constant, exponent) * excess * excess))
}

/// Critical flux of a pool: `q = C r √ρv (σ g (ρl - ρv))^(1/4)`.
///
/// `constant` C is 0.131 on a large plate by theory, 0.149 as measured (Lienhard), 0.118 on a large cylinder, 0.18 on
/// small heaters.
///
/// **Valid for** nitrogen at 101 325 Pa: 162 kW/m² with 0.131.
///
/// # Errors
/// [`ThermalError::Value`] for a constant outside 0.118 to 0.18.
///
/// **Source**: N. Zuber, "Hydrodynamic aspects of boiling heat transfer", AECU-4439 (1959) (from memory).
pub fn zuber_critical_flux(constant: f64) -> Result<HeatFluxDensity, ThermalError> {
    let constant = within("constant of the critical flux", constant, CRITICAL_CONSTANT, "")?;
    Ok(flux(Pool::AT_SEA_LEVEL.critical_flux(constant)))
}

/// Critical flux on a horizontal cylinder: [`zuber_critical_flux`] with 0.125 R^(-1/4) up to R = 1.17, 0.118 above, where R
/// is the radius over the [`capillary_length`].
///
/// **Valid for** nitrogen at 101 325 Pa, diameters of 1 mm (R = 0.47) and more.
///
/// # Errors
/// [`ThermalError::Value`] for a diameter outside 1 to 1000 mm.
///
/// **Source**: J. H. Lienhard and others as given in Heat Exchanger Design Handbook, section 2.7.2 (from memory).
pub fn cylinder_critical_flux(diameter: Length) -> Result<HeatFluxDensity, ThermalError> {
    let radius = 0.5 * checked_diameter(diameter)? / capillary_si();
    let constant = if radius <= 1.17 { 0.125 / fourth_root(radius) } else { 0.118 };
    Ok(flux(Pool::AT_SEA_LEVEL.critical_flux(constant)))
}

/// Size of the ripples on boiling nitrogen: `√(σ / (g (ρl - ρv)))`, 1.06 mm at 101 325 Pa.
///
/// **Source**: definition; properties as given by CoolProp 8.0.0.
pub fn capillary_length() -> Length {
    Length::new::<meter>(capillary_si())
}

/// Liquid nitrogen at a pressure: its boiling point (K), and its vapour's density against that at 101 325 Pa.
///
/// The other properties are kept: at 70 kPa the latent heat is 2 % higher and the liquid 2 % denser.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pool {
    pub(super) boiling_point: f64,
    pub(super) thinness: f64,
}

impl Pool {
    const AT_SEA_LEVEL: Self = Self { boiling_point: BOILING_POINT_K, thinness: 1.0 };

    /// `k³ ρ (ρl - ρ) g r' / (μ ΔT)` of the vapour film, with `r' = r + share cp ΔT`.
    pub(super) fn drive(&self, superheat: f64, share: f64) -> f64 {
        let vapour = Vapour::at(self.boiling_point + 0.5 * superheat);
        let density = vapour.density * self.thinness;
        let weight = density * (n2::LIQUID_DENSITY - density) * FREE_FALL;
        let heat = n2::LATENT_HEAT + share * vapour.heat_capacity * superheat;
        vapour.conductivity.powi(3) * weight * heat / (vapour.viscosity * superheat)
    }

    pub(super) fn critical_flux(&self, constant: f64) -> f64 {
        let density = n2::VAPOUR_DENSITY * self.thinness;
        let step = n2::LIQUID_DENSITY - density;
        constant * n2::LATENT_HEAT * density.sqrt() * fourth_root(n2::SURFACE_TENSION * FREE_FALL * step)
    }
}

pub(super) fn bromley(drive: f64, diameter: f64) -> f64 {
    0.62 * fourth_root(drive / diameter)
}

pub(super) fn breen_westwater(drive: f64, diameter: f64) -> f64 {
    let wave = TAU * capillary_si();
    (0.59 + 0.069 * wave / diameter) * fourth_root(drive / wave)
}

/// `h / ΔT²` of nucleate boiling.
pub(super) fn rohsenow(surface_constant: f64, prandtl_exponent: f64) -> f64 {
    let prandtl = n2::LIQUID_HEAT_CAPACITY * n2::LIQUID_VISCOSITY / n2::LIQUID_CONDUCTIVITY;
    let share = n2::LIQUID_HEAT_CAPACITY / (surface_constant * n2::LATENT_HEAT * prandtl.powf(prandtl_exponent));
    n2::LIQUID_VISCOSITY * n2::LATENT_HEAT * share.powi(3) / capillary_si()
}

/// `h / ΔT^(1/3)` of the liquid before it boils: `Nu = 0.15 Ra^(1/3)` of McAdams, which no length enters.
pub(super) fn liquid_convection() -> f64 {
    let warmth = n2::LIQUID_DENSITY * n2::LIQUID_DENSITY * n2::LIQUID_HEAT_CAPACITY * n2::LIQUID_EXPANSION * FREE_FALL;
    0.15 * n2::LIQUID_CONDUCTIVITY * (warmth / (n2::LIQUID_VISCOSITY * n2::LIQUID_CONDUCTIVITY)).cbrt()
}

pub(super) fn checked_diameter(diameter: Length) -> Result<f64, ThermalError> {
    Ok(within("diameter", diameter.get::<millimeter>(), DIAMETER_MM, "mm")? * 1e-3)
}

fn film_superheat(superheat: TemperatureInterval) -> Result<f64, ThermalError> {
    Ok(within("superheat of film boiling", superheat.get::<step_kelvin>(), FILM_SUPERHEAT_K, "K")?)
}

fn density_step() -> f64 {
    n2::LIQUID_DENSITY - n2::VAPOUR_DENSITY
}

fn capillary_si() -> f64 {
    (n2::SURFACE_TENSION / (FREE_FALL * density_step())).sqrt()
}

fn fourth_root(x: f64) -> f64 {
    x.sqrt().sqrt()
}

fn film(h: f64) -> HeatTransfer {
    HeatTransfer::new::<watt_per_square_meter_kelvin>(h)
}

fn flux(q: f64) -> HeatFluxDensity {
    HeatFluxDensity::new::<watt_per_square_meter>(q)
}
