//! A bag, paper or trapped air around a part.

use super::error::ThermalError;
use crate::quantity::{HeatTransfer, Length, ThermodynamicTemperature, not_negative, positive, within};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, millimeter};
use uom::si::thermodynamic_temperature::kelvin;

/// Stefan-Boltzmann constant, W/(m² K⁴); CODATA 2018, exact by the 2019 SI.
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Polyethylene of low density, W/(m K): design value 0.33 of EN ISO 10456, read in a published copy.
const POLYETHYLENE_W_MK: f64 = 0.33;
/// Paper, W/(m K): 0.18 at 300 K, Incropera, "Fundamentals of Heat and Mass Transfer", Table A.3 (from memory).
const PAPER_W_MK: f64 = 0.18;
/// Thickest layer of air that counts as still; common practice, no published source. In a wider one convection starts.
const WIDEST_AIR_MM: f64 = 10.0;
/// Range of the formula for the conductivity of air that agrees with an independent library within 2.5 %, K.
const AIR_RANGE_K: (f64, f64) = (190.0, 430.0);

/// Resistance that lies between a part's surface and the film around it, and whether vapour gets through.
///
/// Layers add up: `R = Σ s/k`. The coefficient that then acts is `1/(1/h + R)`, see [`wrapped`].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wrap {
    resistance: f64,
    vapour_tight: bool,
}

impl Wrap {
    /// Nothing around the part.
    pub fn none() -> Self {
        Self::default()
    }

    /// A closed polyethylene bag with a film of this thickness (0.05 to 0.1 mm is usual; common practice). Vapour tight, so
    /// that no frost settles on the part. The film alone resists little: what insulates is the air inside, see
    /// [`Wrap::still_air`].
    ///
    /// # Errors
    /// [`ThermalError::Value`] for the thickness.
    pub fn plastic_bag(film: Length) -> Result<Self, ThermalError> {
        Ok(Self { vapour_tight: true, ..Self::layer(film, POLYETHYLENE_W_MK)? })
    }

    /// Paper of this thickness in all (0.1 mm a sheet; common practice). Vapour passes.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for the thickness.
    pub fn paper(thickness: Length) -> Result<Self, ThermalError> {
        Self::layer(thickness, PAPER_W_MK)
    }

    /// A layer of any material that vapour passes, `R = s/k` with k in W/(m K).
    ///
    /// # Errors
    /// A thickness below zero, a conductivity that is not above zero.
    pub fn layer(thickness: Length, conductivity_w_mk: f64) -> Result<Self, ThermalError> {
        let thickness = not_negative("thickness of the wrap", thickness.get::<meter>(), "m")?;
        let conductivity = positive("conductivity of the wrap", conductivity_w_mk, "W/(m K)")?;
        Ok(Self { resistance: thickness / conductivity, vapour_tight: false })
    }

    /// Air trapped under a wrap: conduction and radiation side by side, `1/R = k/s + 4 ε σ T³`.
    ///
    /// `effective_emissivity` is `1/(1/ε1 + 1/ε2 - 1)` of the two faces. A bag lies 1 to 3 mm off on the average (common
    /// practice, no published source).
    ///
    /// **Valid for** layers to 10 mm, in which the air stands still, and mean temperatures from 190 K to 430 K.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for thickness, temperature or emissivity.
    ///
    /// **Source**: conduction through a layer at rest; conductivity of air by the U.S. Standard Atmosphere 1976 (from
    /// memory).
    pub fn still_air(
        thickness: Length,
        mean_temperature: ThermodynamicTemperature,
        effective_emissivity: f64,
    ) -> Result<Self, ThermalError> {
        let mm = thickness.get::<millimeter>();
        let thickness = 1e-3 * within("layer of air", mm, (0.0, WIDEST_AIR_MM), "mm")?;
        let t = within("mean temperature of the air", mean_temperature.get::<kelvin>(), AIR_RANGE_K, "K")?;
        let emissivity = within("effective emissivity", effective_emissivity, (0.0, 1.0), "")?;
        let radiation = 4.0 * emissivity * STEFAN_BOLTZMANN * t.powi(3);
        // s/(k + s h_r) is 1/(k/s + h_r) and holds for no layer too.
        Ok(Self { resistance: thickness / (air_conductivity(t) + thickness * radiation), vapour_tight: false })
    }

    /// This wrap and another one around it; tight when one of them is.
    pub fn and(self, other: Self) -> Self {
        Self { resistance: self.resistance + other.resistance, vapour_tight: self.vapour_tight || other.vapour_tight }
    }

    /// Resistance, m² K/W.
    pub fn resistance_m2k_w(&self) -> f64 {
        self.resistance
    }

    /// Whether water vapour is kept off the part.
    pub fn is_vapour_tight(&self) -> bool {
        self.vapour_tight
    }
}

/// Film coefficient that acts on a part in a wrap, `1/(1/h + R)`, by its own surface (the part is taken as large against
/// the wrap's thickness).
///
/// # Errors
/// [`ThermalError::Value`] for the film coefficient.
///
/// **Source**: resistances in series.
pub fn wrapped(film: HeatTransfer, wrap: &Wrap) -> Result<HeatTransfer, ThermalError> {
    let h = positive("film coefficient", film.get::<watt_per_square_meter_kelvin>(), "W/(m² K)")?;
    Ok(HeatTransfer::new::<watt_per_square_meter_kelvin>(h / (1.0 + h * wrap.resistance)))
}

/// Conductivity of dry air, W/(m K): `2.64638e-3 T^1.5 / (T + 245.4 · 10^(-12/T))`.
///
/// **Source**: U.S. Standard Atmosphere 1976, equation 53 (from memory), checked against an independent library in the
/// tests.
pub(super) fn air_conductivity(t: f64) -> f64 {
    2.646_38e-3 * t.powf(1.5) / (t + 245.4 * 10.0_f64.powf(-12.0 / t))
}
