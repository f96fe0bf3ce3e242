//! A hub that has yielded in part: what pressure is left, and how far it has grown for good. The same of a bush: [`bush`].

mod bush;
mod wall;

pub use bush::{PlasticBush, YieldedBush};

use super::error::MechanicsError;
use super::joint::Joint;
use super::seam::checked_interference;
use super::yield_start::Onset;
use crate::quantity::{Length, Pressure, Ratio, positive};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use wall::Wall;

/// Rounding of an interference, as a share of it, that a change of units leaves.
const LIMIT_ROUNDING: f64 = 1e-12;

/// At what difference of hoop and radial stress the hub flows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FlowRule {
    /// Tresca: at the yield strength Y.
    Tresca,
    /// Modified shear stress hypothesis: at `2 Y/√3`, as in DIN 7190-1 (from memory; the text was not opened). Nearer to von
    /// Mises in long hubs; it promises 15 % more pressure than Tresca.
    ModifiedShearStress,
}

/// A joint whose outer part may yield from its bore outward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlasticHub {
    /// The joint.
    pub joint: Joint,
    /// Yield strength of the outer part.
    pub hub_yield: Pressure,
    /// Yield strength of the inner part, which has to stay elastic.
    pub inner_yield: Pressure,
    /// Rule by which the outer part flows.
    pub rule: FlowRule,
}

/// A hub at one interference; elastic when `plastic_ratio` is one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartlyPlastic {
    /// Contact pressure, lower than the elastic formula says once the hub yields.
    pub pressure: Pressure,
    /// Outside diameter of the plastic zone over the diameter of the joint, `ζ = c/a`; one when there is none.
    pub plastic_ratio: Ratio,
    /// Share of the wall's section area that is plastic, `(c² - a²)/(b² - a²)`.
    pub plastic_share: Ratio,
    /// Growth of the hub's bore under the pressure, elastic and plastic.
    pub bore_growth: Length,
    /// What of that growth stays when the joint is taken apart, which is the interference lost for the next fitting; zero
    /// when the hub stayed elastic. `None` when the bore yields again, in compression, while it is relieved.
    pub permanent_set: Option<Length>,
}

/// From where to where [`PlasticHub::solve`] has an answer beyond the elastic one; of a [`PlasticBush`], from where to where it is
/// plastic in part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlasticLimits {
    /// The bore of the part begins to yield.
    pub first: Onset,
    /// The whole wall is plastic; of a hub, or the pressure reaches the flow stress, beyond which its theory does not hold.
    pub last: Onset,
}

impl PlasticHub {
    /// Pressure, plastic zone and permanent growth at the interference of the joint.
    ///
    /// With the flow stress Y, the hub's radii a and b, `k = b/a` and the radius c of the plastic zone, `ζ = c/a`:
    /// `p = Y [ln ζ + ½ (1 - ζ²/k²)]`, growth of the bore `Δd = d/E [Y ζ² - (1 - ν) p]`, and ζ is such that Δd and what the
    /// elastic inner part gives way make the interference. Relieving the pressure is elastic: the hub's bore closes by its Lamé
    /// compliance times p, and `Δd - c_hub p` stays.
    ///
    /// So the second fitting of the same parts has less interference by the permanent set, stays elastic and comes to the
    /// pressure of the first. Smoothing of the surfaces and creep come on top.
    ///
    /// **Valid for** plane stress (open ends, equal width), an ideal plastic hub without hardening, flow by the associated rule
    /// with the axial stress as the middle one (`p ≤ Y`), small strains, an inner part that stays elastic by Tresca. The set
    /// holds while the relieved bore does not flow backward, `p ≤ Y (k² - 1)/k²`, which is always so for `k < 2.2`. Not for
    /// brittle hubs, which crack instead.
    ///
    /// # Errors
    /// As for [`Joint::solve`]; strengths that are not positive; an inner part that yields first; an interference beyond
    /// [`PlasticHub::limits`].
    ///
    /// **Source**: own derivation (Tresca's condition in the equilibrium of the wall, Lamé outside of it); variant
    /// [`FlowRule::ModifiedShearStress`] after DIN 7190-1, from memory.
    pub fn solve(&self) -> Result<PartlyPlastic, MechanicsError> {
        let wall = self.wall()?;
        let interference = checked_interference(self.joint.interference, self.joint.diameter)?;
        let Some(zeta) = wall.plastic_ratio(interference) else {
            let (interference_mm, largest_mm) = (interference * 1e3, wall.interference(wall.last_ratio()) * 1e3);
            return Err(MechanicsError::BeyondPlastic { interference_mm, largest_mm });
        };
        let pressure = if zeta > 1.0 { wall.pressure(zeta) } else { wall.elastic_pressure(interference) };
        self.check_inner(&wall, pressure)?;
        Ok(state(&wall, zeta, pressure))
    }

    /// The interferences between which the hub is plastic in part.
    ///
    /// # Errors
    /// As for [`PlasticHub::solve`], but the interference of the joint does not matter and the inner part is not looked at.
    pub fn limits(&self) -> Result<PlasticLimits, MechanicsError> {
        let wall = self.wall()?;
        let onset = |zeta: f64| Onset {
            interference: Length::new::<meter>(wall.interference(zeta)),
            pressure: Pressure::new::<pascal>(wall.pressure(zeta)),
        };
        Ok(PlasticLimits { first: onset(1.0), last: onset(wall.last_ratio()) })
    }

    fn wall(&self) -> Result<Wall, MechanicsError> {
        let (inner, hub) = self.joint.checked_rings()?;
        let strength = positive("yield strength of the outer part", self.hub_yield.get::<pascal>(), "Pa")?;
        let flow = match self.rule {
            FlowRule::Tresca => strength,
            FlowRule::ModifiedShearStress => strength * 2.0 / 3.0_f64.sqrt(),
        };
        Ok(Wall::new(flow, inner, &hub, &self.joint.outer))
    }

    fn check_inner(&self, wall: &Wall, pressure: f64) -> Result<(), MechanicsError> {
        let strength = positive("yield strength of the inner part", self.inner_yield.get::<pascal>(), "Pa")?;
        let stress = wall.inner_stress(pressure);
        if stress <= strength {
            return Ok(());
        }
        Err(MechanicsError::InnerYields { stress_mpa: stress / 1e6, strength_mpa: strength / 1e6 })
    }
}

fn state(wall: &Wall, zeta: f64, pressure: f64) -> PartlyPlastic {
    let growth = if zeta > 1.0 { wall.growth(zeta) } else { wall.hub_gives * pressure };
    PartlyPlastic {
        pressure: Pressure::new::<pascal>(pressure),
        plastic_ratio: Ratio::new::<ratio>(zeta),
        plastic_share: Ratio::new::<ratio>(wall.plastic_share(zeta)),
        bore_growth: Length::new::<meter>(growth),
        permanent_set: wall.permanent_set(zeta, pressure).map(Length::new::<meter>),
    }
}
