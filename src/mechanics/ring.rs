use super::error::{MechanicsError, positive, within};
use crate::quantity::{Length, Pressure};
use uom::si::length::{meter, millimeter};
use uom::si::pressure::pascal;

/// Largest Poisson ratio of a solid (incompressible).
const LARGEST_POISSON: f64 = 0.5;

/// An elastic ring, or a solid disc.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Inside diameter; `None` when it is solid.
    pub inside: Option<Length>,
    /// Outside diameter.
    pub outside: Length,
    /// Elastic modulus.
    pub elastic_modulus: Pressure,
    /// Poisson ratio, 0 to 0.5.
    pub poisson: f64,
}

/// The two stresses in the plane of a ring at one surface; the axial one is zero. Tension is positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stress {
    /// Radial stress.
    pub radial: Pressure,
    /// Hoop (tangential) stress.
    pub hoop: Pressure,
}

/// A ring under pressure: stresses at its surfaces and change of its diameters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RingState {
    /// Stress at the inside; at the centre when the ring is solid.
    pub at_inside: Stress,
    /// Stress at the outside.
    pub at_outside: Stress,
    /// Change of the inside diameter, positive when it grows; `None` when the ring is solid.
    pub inside_change: Option<Length>,
    /// Change of the outside diameter, positive when it grows.
    pub outside_change: Length,
}

impl Ring {
    /// Stresses and changes of size under a pressure on the inside and one on the outside.
    ///
    /// `σ_r = A - B/r²`, `σ_t = A + B/r²`, `Δd = d/E [(1 - ν) A + (1 + ν) B/r²]` with
    /// `A = (p_i a² - p_o b²)/(b² - a²)`, `B = (p_i - p_o) a² b²/(b² - a²)`; a and b are the radii. The pressure inside a
    /// solid disc is without meaning and counts as zero.
    ///
    /// **Valid for** plane stress, linear elasticity, uniform pressure over the whole width.
    ///
    /// # Errors
    /// Sizes and modulus that are not positive, an outside not larger than the inside, a Poisson ratio out of range.
    ///
    /// **Source**: G. Lamé (1852); S. Timoshenko, "Strength of Materials" Part II, thick-walled cylinders (from memory).
    pub fn under(&self, inside: Pressure, outside: Pressure) -> Result<RingState, MechanicsError> {
        let ring = self.check()?;
        Ok(ring.state(inside.get::<pascal>(), outside.get::<pascal>()))
    }

    pub(super) fn check(&self) -> Result<CheckedRing, MechanicsError> {
        let outside = positive("outside diameter", self.outside.get::<meter>(), "m")?;
        let inside = match self.inside {
            Some(inside) => positive("inside diameter", inside.get::<meter>(), "m")?,
            None => 0.0,
        };
        if inside >= outside {
            let (inside_mm, outside_mm) = (inside * 1e3, self.outside.get::<millimeter>());
            return Err(MechanicsError::NoWall { inside_mm, outside_mm });
        }
        Ok(CheckedRing {
            inside_radius: inside / 2.0,
            outside_radius: outside / 2.0,
            modulus: positive("elastic modulus", self.elastic_modulus.get::<pascal>(), "Pa")?,
            poisson: within("Poisson ratio", self.poisson, (0.0, LARGEST_POISSON), "")?,
        })
    }
}

/// A ring in plain SI, checked; the building block of a joint of any number of rings.
#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedRing {
    pub(super) inside_radius: f64,
    pub(super) outside_radius: f64,
    modulus: f64,
    poisson: f64,
}

impl CheckedRing {
    fn state(&self, inside: f64, outside: f64) -> RingState {
        let solid = self.inside_radius <= 0.0;
        let at = |radius| self.stress(inside, outside, radius);
        let change = |radius| Length::new::<meter>(self.change(inside, outside, radius));
        RingState {
            at_inside: at(self.inside_radius),
            at_outside: at(self.outside_radius),
            inside_change: (!solid).then(|| change(self.inside_radius)),
            outside_change: change(self.outside_radius),
        }
    }

    /// A, and B/r² at a radius (zero in a solid disc, where B is zero everywhere).
    fn terms(&self, inside: f64, outside: f64, radius: f64) -> (f64, f64) {
        let (a, b) = (self.inside_radius, self.outside_radius);
        let wall = (b - a) * (b + a);
        let even = (inside * a * a - outside * b * b) / wall;
        if a <= 0.0 {
            return (even, 0.0);
        }
        (even, (inside - outside) * (a / radius).powi(2) * b * b / wall)
    }

    fn stress(&self, inside: f64, outside: f64, radius: f64) -> Stress {
        let (even, varying) = self.terms(inside, outside, radius);
        Stress { radial: Pressure::new::<pascal>(even - varying), hoop: Pressure::new::<pascal>(even + varying) }
    }

    /// Change of the diameter `2 radius` under the two pressures, m.
    pub(super) fn change(&self, inside: f64, outside: f64, radius: f64) -> f64 {
        let (even, varying) = self.terms(inside, outside, radius);
        2.0 * radius / self.modulus * ((1.0 - self.poisson) * even + (1.0 + self.poisson) * varying)
    }
}

impl Stress {
    /// Equivalent stress after von Mises, `√(σ_r² - σ_r σ_t + σ_t²)` in plane stress.
    pub fn von_mises(&self) -> Pressure {
        let (r, t) = (self.radial.get::<pascal>(), self.hoop.get::<pascal>());
        Pressure::new::<pascal>((r * r - r * t + t * t).max(0.0).sqrt())
    }

    /// Equivalent stress after Tresca: the largest difference of the three principal stresses, the axial one zero.
    pub fn tresca(&self) -> Pressure {
        let (r, t) = (self.radial.get::<pascal>(), self.hoop.get::<pascal>());
        Pressure::new::<pascal>(r.max(t).max(0.0) - r.min(t).min(0.0))
    }

    /// Largest tension of the three principal stresses; zero when there is none.
    pub fn largest_tension(&self) -> Pressure {
        let (r, t) = (self.radial.get::<pascal>(), self.hoop.get::<pascal>());
        Pressure::new::<pascal>(r.max(t).max(0.0))
    }
}

impl RingState {
    /// Largest von Mises stress in the ring; it is always at one of the surfaces, `σ_v² = A² + 3 B²/r⁴`.
    pub fn von_mises(&self) -> Pressure {
        self.at_inside.von_mises().max(self.at_outside.von_mises())
    }

    /// Largest Tresca stress in the ring; always at one of the surfaces, as every stress changes one way with r.
    pub fn tresca(&self) -> Pressure {
        self.at_inside.tresca().max(self.at_outside.tresca())
    }
}
