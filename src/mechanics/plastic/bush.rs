//! A bush in a seat, or a hollow shaft in a ring, that has yielded in part or all through: what it still bears, and how far its
//! bore has closed.

use super::{LIMIT_ROUNDING, PlasticLimits};
use crate::mechanics::elastic::{Part, Strength, YieldCheck};
use crate::mechanics::error::MechanicsError;
use crate::mechanics::joint::Joint;
use crate::mechanics::ring::CheckedRing;
use crate::mechanics::seam::{checked_interference, compliance};
use crate::mechanics::yield_start::Onset;
use crate::quantity::{Length, Pressure, Ratio, positive};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;

/// Largest closing of the bore over the bore with an answer.
///
/// Yield strengths of copper alloys are taken at 0.5 % extension under load, those of other metals below it (ASTM B 505 and
/// ISO 6892-1, from memory); a metal strained further hardens, and is no longer the ideal plastic one of the theory.
const LARGEST_CLOSING: f64 = 0.005;

/// A joint whose hollow inner part may yield from its bore outward, up to its whole wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlasticBush {
    /// The joint; its inner part is hollow.
    pub joint: Joint,
    /// Hoop stress at which the inner part flows: its yield strength Y by Tresca, which is what it bears at the least. `2 Y/√3`
    /// is the most that von Mises gives in plane stress, and so a bound from above.
    pub flow_stress: Pressure,
    /// Strength of the outer part, which has to stay elastic.
    pub outer: Strength,
    /// By what factor the seat, while all is elastic, is stiffer than two rings of equal width; one for those. The outer part gives
    /// way by so much less that the pressure is that of the rings times this factor.
    pub stiffer: f64,
}

/// A bush at one interference; elastic when `plastic_ratio` is one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YieldedBush {
    /// Contact pressure, lower than the elastic formula says once the bush yields.
    pub pressure: Pressure,
    /// Outside diameter of the plastic zone over the bore, `ζ = c/a`; one when there is none.
    pub plastic_ratio: Ratio,
    /// Share of the wall's section area that is plastic, `(c² - a²)/(b² - a²)`.
    pub plastic_share: Ratio,
    /// How far the bore closes on its diameter, elastic and plastic.
    pub bore_closing: Length,
    /// Interference beyond that at which the whole wall is plastic: it adds no pressure, and only closes the bore.
    pub surplus: Length,
    /// By how much the outside stays smaller when the joint is taken apart, which is the interference lost for the next
    /// fitting; zero when the bush stayed elastic.
    pub permanent_set: Length,
}

impl PlasticBush {
    /// Pressure, plastic zone, closing of the bore and permanent set at the interference of the joint.
    ///
    /// All stresses are pressures and none acts along the axis, so that by Tresca the hoop stress alone decides: in the plastic
    /// zone it is -Y, and `σ_r = -Y (1 - a/r)`. With the radii a, b of the ring, `k = b/a`, c of the plastic zone, `ζ = c/a`:
    ///
    /// - `p = Y [1 - 1/(2 ζ) - ζ/(2 k²)]`, from the elastic limit `Y (k² - 1)/(2 k²)` to the plastic limit `Y (1 - 1/k)`;
    /// - closing of the outside `D Y/(2 E) [(1 - ν)(2 - 1/ζ) + (1 + ν) ζ/k²]`, which with the growth of the outer part makes the
    ///   interference: a quadratic equation for ζ;
    /// - closing of the bore `d Y/E (1 + ln ζ)`.
    ///
    /// By the associated flow rule of that side of Tresca's hexagon the metal flows along the axis and not through the wall. So
    /// once the whole wall is plastic the pressure stays, the bore closes by as much as the outside, and the bush grows longer.
    /// (A bush that cannot grow longer closes by k times as much.) Relieving is elastic, for a bore never flows back:
    /// what stays is the closing of the outside less its Lamé part.
    ///
    /// The plastic limit is a safe one: a field of stress in equilibrium that nowhere passes the strength (lower bound theorem).
    /// `2 Y/√3 ln k`, of a long tube that cannot grow longer, is the most; ends held by friction alone, `µ p L/(2 t)`, are
    /// far from it.
    ///
    /// **Valid for** plane stress (open ends, equal width), an ideal plastic bush without hardening, small strains (closing of
    /// the bore up to 0.5 %), an outer part that stays elastic. The seat holds the bush round, so that it cannot buckle. Not for
    /// brittle bushes, which crack, nor for plastics, which creep.
    ///
    /// # Errors
    /// As for [`Joint::solve`]; a solid inner part; a strength that is not positive; an outer part that passes its strength; an
    /// interference beyond [`PlasticBush::largest`].
    ///
    /// **Source**: own derivation (Tresca's condition in the equilibrium of the wall, Lamé outside of it, associated flow).
    pub fn solve(&self) -> Result<YieldedBush, MechanicsError> {
        let wall = self.wall()?;
        let interference = checked_interference(self.joint.interference, self.joint.diameter)?;
        let zeta = wall.plastic_ratio(interference);
        let state = if zeta > 1.0 { wall.yielded(interference, zeta) } else { wall.elastic(interference) };
        let most = wall.largest();
        if zeta > 1.0 && interference > most * (1.0 + LIMIT_ROUNDING) {
            let (interference_mm, largest_mm) = (interference * 1e3, most * 1e3);
            return Err(MechanicsError::BeyondPlasticBush { interference_mm, largest_mm });
        }
        let outer = wall.outer.state(state.pressure.get::<pascal>(), 0.0);
        match YieldCheck::of(&outer, Part::Outer, &self.outer)?.factor {
            Some(factor) if factor < 1.0 => Err(MechanicsError::OuterYields { factor }),
            _ => Ok(state),
        }
    }

    /// The interferences between which the wall is plastic in part: its bore begins to yield, its whole wall is plastic.
    ///
    /// # Errors
    /// As for [`PlasticBush::solve`], but the interference of the joint does not matter and the outer part is not looked at.
    pub fn limits(&self) -> Result<PlasticLimits, MechanicsError> {
        let wall = self.wall()?;
        let onset = |zeta: f64| Onset {
            interference: Length::new::<meter>(wall.interference(zeta)),
            pressure: Pressure::new::<pascal>(wall.pressure(zeta)),
        };
        Ok(PlasticLimits { first: onset(1.0), last: onset(wall.ratio) })
    }

    /// The largest interference with an answer, at which the bore has closed by 0.5 %; below that at which it begins to yield
    /// for metals so hard that the theory has nothing to say.
    ///
    /// # Errors
    /// As for [`PlasticBush::limits`].
    pub fn largest(&self) -> Result<Length, MechanicsError> {
        Ok(Length::new::<meter>(self.wall()?.largest()))
    }

    fn wall(&self) -> Result<Wall, MechanicsError> {
        let (inner, outer) = self.joint.checked_rings()?;
        if inner.inside_radius <= 0.0 {
            return Err(MechanicsError::InnerIsSolid);
        }
        let flow = positive("flow stress of the inner part", self.flow_stress.get::<pascal>(), "Pa")?;
        let given = &self.joint.inner;
        let outside_gives = -inner.change(0.0, 1.0, inner.outside_radius);
        let together = compliance(&inner, &outer) / positive("factor by which the seat is stiffer", self.stiffer, "")?;
        Ok(Wall {
            flow,
            ratio: inner.outside_radius / inner.inside_radius,
            bore: 2.0 * inner.inside_radius,
            strain: flow / given.elastic_modulus.get::<pascal>(),
            poisson: given.poisson,
            outside_gives,
            outer_gives: together - outside_gives,
            inner,
            outer,
        })
    }
}

/// The wall of the bush and what is around it, plain SI.
struct Wall {
    flow: f64,
    /// Outside over bore, k.
    ratio: f64,
    bore: f64,
    /// Flow stress over elastic modulus.
    strain: f64,
    poisson: f64,
    /// Closing of the elastic bush's outside for a pressure of one.
    outside_gives: f64,
    /// Growth of the outer part's bore for it; negative where a seat is stiffer than a rigid one around the plain bush.
    outer_gives: f64,
    inner: CheckedRing,
    outer: CheckedRing,
}

impl Wall {
    fn pressure(&self, zeta: f64) -> f64 {
        self.flow * (1.0 - 0.5 / zeta - 0.5 * zeta / self.square())
    }

    fn outside_closing(&self, zeta: f64) -> f64 {
        let nu = self.poisson;
        let outside = self.bore * self.ratio;
        0.5 * outside * self.strain * ((1.0 - nu) * (2.0 - 1.0 / zeta) + (1.0 + nu) * zeta / self.square())
    }

    fn bore_closing(&self, zeta: f64) -> f64 {
        self.bore * self.strain * (1.0 + zeta.ln())
    }

    fn interference(&self, zeta: f64) -> f64 {
        self.outside_closing(zeta) + self.outer_gives * self.pressure(zeta)
    }

    /// ζ at an interference: one while the bush is elastic, k once its whole wall is plastic.
    ///
    /// The interference is `α + β/ζ + γ ζ`. Its rate `γ - β/ζ²` changes one way, from the interference of first yield to
    /// `D Y/(E k²)`, so that it rises throughout, and the root is that on the rising branch.
    fn plastic_ratio(&self, interference: f64) -> f64 {
        if interference <= self.interference(1.0) {
            return 1.0;
        }
        if interference >= self.interference(self.ratio) {
            return self.ratio;
        }
        let (half, around) = (0.5 * self.bore * self.ratio * self.strain, 0.5 * self.outer_gives * self.flow);
        let alpha = 2.0 * (half * (1.0 - self.poisson) + around);
        let beta = -(half * (1.0 - self.poisson) + around);
        let gamma = (half * (1.0 + self.poisson) - around) / self.square();
        let left = interference - alpha;
        let root = (left * left - 4.0 * beta * gamma).max(0.0).sqrt();
        // The same root twice, each where nothing cancels.
        let zeta = if left > 0.0 { (left + root) / (2.0 * gamma) } else { -2.0 * beta / (root - left) };
        zeta.clamp(1.0, self.ratio)
    }

    fn elastic(&self, interference: f64) -> YieldedBush {
        let pressure = interference.max(0.0) / (self.outside_gives + self.outer_gives);
        state((pressure, 1.0, 0.0), -self.inner.change(0.0, pressure, self.inner.inside_radius), (0.0, 0.0))
    }

    fn yielded(&self, interference: f64, zeta: f64) -> YieldedBush {
        let pressure = self.pressure(zeta);
        let surplus = (interference - self.interference(self.ratio)).max(0.0);
        let share = (zeta * zeta - 1.0) / (self.square() - 1.0);
        let set = (self.outside_closing(zeta) - self.outside_gives * pressure).max(0.0) + surplus;
        state((pressure, zeta, share), self.bore_closing(zeta) + surplus, (surplus, set))
    }

    /// Interference at which the bore has closed by the largest share.
    fn largest(&self) -> f64 {
        let beyond = LARGEST_CLOSING * self.bore - self.bore_closing(self.ratio);
        if beyond >= 0.0 {
            return self.interference(self.ratio) + beyond;
        }
        let zeta = (LARGEST_CLOSING / self.strain - 1.0).exp();
        // Below the start of yielding everything is in proportion.
        if zeta < 1.0 { self.interference(1.0) * LARGEST_CLOSING / self.strain } else { self.interference(zeta) }
    }

    fn square(&self) -> f64 {
        self.ratio * self.ratio
    }
}

fn state((pressure, zeta, share): (f64, f64, f64), bore_closing: f64, (surplus, set): (f64, f64)) -> YieldedBush {
    YieldedBush {
        pressure: Pressure::new::<pascal>(pressure),
        plastic_ratio: Ratio::new::<ratio>(zeta),
        plastic_share: Ratio::new::<ratio>(share),
        bore_closing: Length::new::<meter>(bore_closing),
        surplus: Length::new::<meter>(surplus),
        permanent_set: Length::new::<meter>(set),
    }
}
