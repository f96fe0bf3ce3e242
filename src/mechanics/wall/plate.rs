use super::load::{Integrals, LoadZone, Zone};
use crate::mechanics::error::{MechanicsError, ordered};
use crate::mechanics::stress::Stress;
use crate::quantity::{Force, Length, Pressure, not_negative, positive, within};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// Largest Poisson ratio of a solid (incompressible).
const LARGEST_POISSON: f64 = 0.5;
/// Share of the shear stiffness that an even shear stress would give; 5/6 for a rectangular section (E. Reissner, 1945, from memory).
const SHEAR_SHARE: f64 = 5.0 / 6.0;

/// How the edge of a wall is held. The wall of a housing lies between the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// It cannot turn: the bound for the stress at the root of an integral wall.
    Fixed,
    /// It turns freely: an upper bound of deflection and of the stress at the hole, far above those of an integral wall.
    Simple,
}

/// A flat round wall, with or without a hole in the middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall {
    /// Diameter at which the wall meets the housing: that of the bore.
    pub edge: Length,
    /// Diameter of the hole in the middle, if there is one.
    pub hole: Option<Length>,
    /// Thickness.
    pub thickness: Length,
    /// Elastic modulus.
    pub elastic_modulus: Pressure,
    /// Poisson ratio, 0 to 0.5.
    pub poisson: f64,
}

/// A wall under a force. Stresses are those on the face away from the force; on the other face they have the other sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallState {
    /// How far the edge of the hole, or the middle, gives way by bending.
    pub bending: Length,
    /// How far it gives way by shear, in addition.
    pub shear: Length,
    /// Bending stress at the root.
    pub at_edge: Stress,
    /// Bending stress at the hole, where only the hoop stress is not zero, or in the middle.
    pub at_hole: Stress,
    /// Mean shear stress through the thickness at the root, `F/(π D t)`.
    pub edge_shear: Pressure,
}

impl WallState {
    /// Deflection by bending and shear together.
    pub fn deflection(&self) -> Length {
        self.bending + self.shear
    }
}

impl Wall {
    /// Deflection and stress under a force on a zone.
    ///
    /// Thin plate: `d/dr[(1/r) d(r w')/dr] = Q/D`, `D = E t³/[12 (1 - ν²)]`, moments `M_r = -D (w'' + ν w'/r)`,
    /// `M_t = -D (w'/r + ν w'')`, stress `6 M/t²`; no moment at a hole; at the edge no slope (fixed) or no moment (simple).
    /// Shear adds `∫ Q dr/(5/6 G t)`, `G = E/[2 (1 + ν)]`.
    ///
    /// **Valid for** elastic walls, deflections below half the thickness, thickness up to the span from hole to edge. Against
    /// finite elements of a 62 mm wall with a 40 mm hole, 3 to 8 mm thick: stress at the root of a fixed wall within 4 %,
    /// deflection within 15 %; the small hoop stress at the hole of a fixed wall is up to 35 % too low. In a real housing the
    /// root bears 81 to 89 % of the fixed wall's stress, but the hole more: at three quarters of the span in thickness, 19 %
    /// more than the root of the fixed wall; below half the span, no more than 67 % of it. A sharp corner raises the stress further, locally.
    ///
    /// # Errors
    /// A force below zero; sizes that are not positive; a hole or zone beyond the edge; a zone over the hole; a wall thicker
    /// than its span; a Poisson ratio out of range.
    ///
    /// **Source**: S. Timoshenko, S. Woinowsky-Krieger, "Theory of Plates and Shells", chapter 3, for the equations (from
    /// memory); the same results as Roark's Formulas for Stress and Strain, Table 11.2, cases 1 and 2.
    pub fn under(&self, force: Force, zone: &LoadZone, edge: Edge) -> Result<WallState, MechanicsError> {
        let force = not_negative("force on the wall", force.get::<newton>(), "N")?;
        let plate = self.check(zone)?;
        Ok(plate.solve(edge).state(force))
    }

    /// Thickness over the span from hole to edge, or over half the edge diameter when there is no hole. From about a half on
    /// the wall is a block more than a plate: see [`Wall::under`].
    pub fn thickness_share(&self) -> f64 {
        let hole = self.hole.map_or(0.0, |hole| hole.get::<meter>());
        2.0 * self.thickness.get::<meter>() / (self.edge.get::<meter>() - hole)
    }

    pub(super) fn check(&self, zone: &LoadZone) -> Result<Plate, MechanicsError> {
        let zone = zone.check()?;
        let edge = positive("diameter of the wall's edge", self.edge.get::<meter>(), "m")?;
        let hole = match self.hole {
            Some(hole) => positive("hole in the wall", hole.get::<meter>(), "m")?,
            None => 0.0,
        };
        ordered(("hole in the wall", hole), ("wall's edge", edge))?;
        // A zone may end right at the edge or the hole, give or take rounding.
        let rounding = 1e-9 * edge;
        ordered(("hole in the wall", hole - rounding), ("inside of the loaded zone", 2.0 * zone.inside))?;
        ordered(("outside of the loaded zone", 2.0 * zone.outside - rounding), ("wall's edge", edge))?;
        let thickness = positive("thickness of the wall", self.thickness.get::<meter>(), "m")?;
        let span = (edge - hole) / 2.0;
        if thickness > span {
            return Err(MechanicsError::NoPlate { thickness_mm: thickness * 1e3, span_mm: span * 1e3 });
        }
        Ok(Plate {
            zone,
            edge: edge / 2.0,
            hole: hole / 2.0,
            thickness,
            modulus: positive("elastic modulus", self.elastic_modulus.get::<pascal>(), "Pa")?,
            poisson: within("Poisson ratio", self.poisson, (0.0, LARGEST_POISSON), "")?,
        })
    }
}

/// A wall and its load by radii, in plain SI, checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plate {
    pub(super) zone: Zone,
    edge: f64,
    hole: f64,
    pub(super) thickness: f64,
    modulus: f64,
    poisson: f64,
}

/// A plate whose slope is `w' = (2π load/D) (A r + B/r + s2/r)`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Solved {
    plate: Plate,
    a: f64,
    b: f64,
}

impl Plate {
    pub(super) fn solve(self, edge: Edge) -> Solved {
        let nu = self.poisson;
        let square = self.edge * self.edge;
        let Integrals { s1, s2, .. } = self.zone.integrals(self.edge);
        // No radial moment at the hole: B = A b² (1 + ν)/(1 - ν); zero when there is none.
        let ratio = self.hole * self.hole * (1.0 + nu) / (1.0 - nu);
        let a = match edge {
            Edge::Fixed => -s2 / (square + ratio),
            Edge::Simple => (s2 * (1.0 - nu) / square - s1) / ((1.0 + nu) * (1.0 - self.hole * self.hole / square)),
        };
        Solved { plate: self, a, b: a * ratio }
    }
}

impl Solved {
    /// Radial and hoop bending stress at a radius for a force of one, Pa/N.
    pub(super) fn stress(&self, radius: f64) -> (f64, f64) {
        let (nu, square) = (self.plate.poisson, radius * radius);
        let Integrals { s1, s2, .. } = self.plate.zone.integrals(radius);
        // In the middle of a full plate neither B nor s2 is there.
        let turning = if square > 0.0 { (self.b + s2) * (1.0 - nu) / square } else { 0.0 };
        let even = self.a * (1.0 + nu);
        let scale = -6.0 / (2.0 * PI * self.plate.thickness * self.plate.thickness);
        (scale * (even + s1 - turning), scale * (even + nu * s1 + turning))
    }

    pub(super) fn edge_radius(&self) -> f64 {
        self.plate.edge
    }

    pub(super) fn hole_radius(&self) -> f64 {
        self.plate.hole
    }

    fn state(&self, force: f64) -> WallState {
        let Plate { edge, hole, thickness, modulus, poisson, zone } = self.plate;
        let Integrals { s1, s3, .. } = zone.integrals(edge);
        let stiffness = modulus * thickness.powi(3) / (12.0 * (1.0 - poisson * poisson));
        let log = if hole > 0.0 { self.b * (edge / hole).ln() } else { 0.0 };
        let bending = -(self.a * (edge * edge - hole * hole) / 2.0 + log + s3) / stiffness;
        let shear = s1 / (SHEAR_SHARE * modulus / (2.0 * (1.0 + poisson)) * thickness);
        let load = force / (2.0 * PI);
        let stress = |radius| {
            let (radial, hoop) = self.stress(radius);
            Stress {
                radial: Pressure::new::<pascal>(force * radial),
                hoop: Pressure::new::<pascal>(force * hoop),
                axial: Pressure::default(),
            }
        };
        WallState {
            bending: Length::new::<meter>(load * bending),
            shear: Length::new::<meter>(load * shear),
            at_edge: stress(edge),
            at_hole: stress(hole),
            edge_shear: Pressure::new::<pascal>(load / (edge * thickness)),
        }
    }
}
