//! Heat between a ring and the rolling elements in it.

use super::super::error::ThermalError;
use crate::quantity::not_negative;
use std::f64::consts::PI;
use uom::si::f64::ThermalConductance;
use uom::si::thermal_conductance::watt_per_kelvin;

/// Conductivity of still air, W/(m K), at 0 °C (CoolProp 8.0.0: 0.0236 at -10 °C, 0.0259 at 20 °C).
pub(super) const AIR_W_MK: f64 = 0.0243;
/// Conductivity of grease, W/(m K); mineral oil has 0.13 to 0.15 (from memory).
const GREASE_W_MK: f64 = 0.15;
/// Conductivity of bearing steel, W/(m K); from memory, 40 to 46.
const STEEL_W_MK: f64 = 40.0;
/// Radius of the touching spot over the ball's diameter when only its own weight presses: Hertz with 0.03 to 0.05 N on a
/// ball of 10 mm gives 1.0e-3 to 1.3e-3.
const SPOT: f64 = 1.2e-3;
/// Distance of the two faces beside the spot, m: roughness and oxide; common practice, no published source.
const NEAREST_M: f64 = 2e-6;
/// How much more of the ball lies close to a groove than to a plane: the groove follows it across the way of rolling, with
/// a radius 4 % larger (1/√0.04 = 5), but does not reach all round. Estimate, no published source.
const GROOVE: f64 = 4.0;
/// Either way, the estimate may be wrong by this factor.
const UNCERTAINTY: f64 = 3.0;

/// How heat passes between each ring and the rolling elements.
///
/// One ball at one ring, without load: `G = 2 k_steel a + 2π k_fill (D_w/2) f ln(1 + D_w/(2 δ))`: the solid spot of radius a
/// (constriction on both sides), and what fills the narrow gap around it. For a bearing of 30 × 62 × 16 mm the nine balls give
/// about 0.2 W/K dry and 1.3 W/K greased at each ring. The spot counts for a few per cent only.
///
/// **Valid for** a bearing that is handled, not run: load and speed raise the conductance many times. The estimate may be off
/// by a factor of three either way ([`BallContact::range`]); a plan should not hang on it.
///
/// **Source**: constriction `1/(4 k a)` of each side from H. S. Carslaw, J. C. Jaeger, "Conduction of Heat in Solids" (from
/// memory); gap of a sphere against a plane by integration; the constants as named in the code.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BallContact {
    /// Washed or oiled: air around the spots.
    Dry,
    /// Packed with grease.
    Greased,
    /// This much between each ring and all rolling elements together.
    Known(ThermalConductance),
}

impl BallContact {
    /// Conductance between one ring and `count` balls of a diameter (m), W/K.
    pub(super) fn conductance(self, count: f64, diameter: f64) -> Result<f64, ThermalError> {
        let fill = match self {
            BallContact::Dry => AIR_W_MK,
            BallContact::Greased => GREASE_W_MK,
            BallContact::Known(value) => {
                return Ok(not_negative("conductance of the rolling contact", value.get::<watt_per_kelvin>(), "W/K")?);
            }
        };
        let spot = 2.0 * STEEL_W_MK * SPOT * diameter;
        let gap = PI * fill * diameter * GROOVE * (1.0 + 0.5 * diameter / NEAREST_M).ln();
        Ok(count * (spot + gap))
    }

    /// Factors on the conductance between which the truth is expected: 1/3 to 3, or 1 when it was given.
    pub fn range(self) -> (f64, f64) {
        match self {
            BallContact::Dry | BallContact::Greased => (1.0 / UNCERTAINTY, UNCERTAINTY),
            BallContact::Known(_) => (1.0, 1.0),
        }
    }
}
