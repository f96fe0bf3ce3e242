use super::error::MechanicsError;
use super::stress::Stress;
use crate::quantity::{Length, Pressure, positive, within};
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

/// What holds the ends of concentric parts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ends {
    /// Nothing: open ends, plane stress, `σ_z = 0`. Right for seats, whose parts are short.
    #[default]
    Free,
    /// Ends that cannot move at all: plane strain, `ε_z = 0`, the free strain included. A limit case, for parts very long
    /// between unyielding ends; with temperatures its axial stress is large. It bounds what friction at the ends can do and
    /// is no recommendation.
    Held,
}

/// A ring under pressure: stresses at its surfaces and change of its diameters.
///
/// The changes are those that the pressure makes; in a layer of a [`Compound`](super::Compound) they are the total ones, with
/// its free strain.
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
            free_strain: 0.0,
            axial_share: 0.0,
            axial_rest: 0.0,
        })
    }
}

/// A ring in plain SI, checked; the building block of a joint of any number of rings.
#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedRing {
    pub(super) inside_radius: f64,
    pub(super) outside_radius: f64,
    /// Modulus and Poisson ratio in the plane of the ring.
    modulus: f64,
    poisson: f64,
    /// Strain in the plane without any pressure.
    pub(super) free_strain: f64,
    /// `σ_z = axial_share (σ_r + σ_t) + axial_rest`
    axial_share: f64,
    axial_rest: f64,
}

impl CheckedRing {
    /// The same ring with a free strain and these ends.
    ///
    /// Held ends are free ends with `E' = E/(1 - ν²)`, `ν' = ν/(1 - ν)`, `ε' = (1 + ν) ε`, and `σ_z = ν (σ_r + σ_t) - E ε`.
    pub(super) fn with(self, free_strain: f64, ends: Ends) -> Self {
        let (modulus, poisson) = (self.modulus, self.poisson);
        match ends {
            Ends::Free => Self { free_strain, ..self },
            Ends::Held => Self {
                modulus: modulus / (1.0 - poisson * poisson),
                poisson: poisson / (1.0 - poisson),
                free_strain: (1.0 + poisson) * free_strain,
                axial_share: poisson,
                axial_rest: -modulus * free_strain,
                ..self
            },
        }
    }

    pub(super) fn state(&self, inside: f64, outside: f64) -> RingState {
        let solid = self.inside_radius <= 0.0;
        let at = |radius| self.stress(inside, outside, radius);
        let change =
            |radius: f64| Length::new::<meter>(self.change(inside, outside, radius) + 2.0 * radius * self.free_strain);
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
        let axial = self.axial_share * 2.0 * even + self.axial_rest;
        let [radial, hoop, axial] = [even - varying, even + varying, axial].map(Pressure::new::<pascal>);
        Stress { radial, hoop, axial }
    }

    /// Change of the diameter `2 radius` that the two pressures make, m.
    pub(super) fn change(&self, inside: f64, outside: f64, radius: f64) -> f64 {
        let (even, varying) = self.terms(inside, outside, radius);
        2.0 * radius / self.modulus * ((1.0 - self.poisson) * even + (1.0 + self.poisson) * varying)
    }
}

impl RingState {
    /// Largest von Mises stress in the ring; it is always at one of the surfaces, `σ_v² = (A - σ_z)² + 3 B²/r⁴`.
    pub fn von_mises(&self) -> Pressure {
        self.at_inside.von_mises().max(self.at_outside.von_mises())
    }

    /// Largest Tresca stress in the ring; always at one of the surfaces, as every stress changes one way with r.
    pub fn tresca(&self) -> Pressure {
        self.at_inside.tresca().max(self.at_outside.tresca())
    }
}
