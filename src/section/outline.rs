//! Sections in plain SI, checked: what the mesh is made from.

use super::geometry::Elastic;
use crate::quantity::Pressure;
use uom::si::pressure::pascal;

/// Share of the ring's wall that must lie on a shoulder for it to be one.
const LEAST_FACE: f64 = 0.01;

/// What a surface lacks of a plain cylinder: chamfers at its ends and a groove.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Cut {
    /// Chamfer at z = 0, m.
    pub(super) back: f64,
    /// Chamfer at the front, m.
    pub(super) front: f64,
    /// Groove.
    pub(super) arc: Option<Arc>,
}

/// A groove as an arc of a circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Arc {
    pub(super) depth: f64,
    pub(super) half_width: f64,
    pub(super) middle: f64,
}

/// The part of a body behind z = 0: a wall, a shoulder, or the same tube going on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rear {
    pub(super) thickness: f64,
    pub(super) inner: f64,
    pub(super) outer: f64,
}

/// One body: a tube from z = 0 to `front` and what is behind it. Radii in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Outline {
    pub(super) part: &'static str,
    pub(super) inner: f64,
    pub(super) outer: f64,
    pub(super) front: f64,
    pub(super) inner_cut: Cut,
    pub(super) outer_cut: Cut,
    pub(super) rear: Option<Rear>,
    pub(super) step: Option<OuterStep>,
    pub(super) modulus: f64,
    pub(super) poisson: f64,
}

/// Another outer radius of a body behind a position, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct OuterStep {
    pub(super) at: f64,
    pub(super) outer: f64,
}

/// A wall of a housing, or the shoulder of a shaft, with what the ring presses on it. Radii in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Abutment {
    pub(super) thickness: f64,
    /// Radius of its root: the seat's.
    pub(super) root: f64,
    /// Radius of its free edge; zero when it is closed.
    pub(super) free: f64,
    /// Radii between which the ring's face lies on it.
    pub(super) face: (f64, f64),
}

/// Where a body is held along the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Rest {
    /// On the outer circle of its front face, which takes no force.
    Circle,
    /// On the outer circle of its back face, which takes no force.
    BackCircle,
    /// On the front face of its tube.
    Front,
    /// On the back face of its tube from a radius outward.
    Back { from: f64 },
}

impl Rest {
    /// One circle of the same face, which keeps a body in place without hindering it.
    pub(super) fn circle(self) -> Self {
        match self {
            Rest::Circle | Rest::Front => Rest::Circle,
            Rest::BackCircle | Rest::Back { .. } => Rest::BackCircle,
        }
    }
}

/// Bodies from the inside outward, each touching the next.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Outlines {
    pub(super) bodies: Vec<Outline>,
    /// Place of the ring among them.
    pub(super) ring: usize,
    /// Place of the housing or shaft among them.
    pub(super) seat: usize,
    /// Where the housing or shaft is held.
    pub(super) rest: Rest,
    /// The contact whose sides are bonded.
    pub(super) bonded: Option<usize>,
}

impl Arc {
    /// Depth at a position: `√(ρ² - x²) - (ρ - t)` with `ρ = (b² + t²)/(2 t)`, t the depth and b half the width.
    fn depth_at(&self, z: f64) -> f64 {
        let (t, b, x) = (self.depth, self.half_width, z - self.middle);
        if t <= 0.0 || x.abs() >= b {
            return 0.0;
        }
        let rho = (b * b + t * t) / (2.0 * t);
        (rho * rho - x * x).max(0.0).sqrt() - (rho - t)
    }
}

impl Cut {
    /// Depth of the cut at a position, m; `front` is where the body ends.
    pub(super) fn depth_at(&self, z: f64, front: f64) -> f64 {
        let chamfer = (self.back - z).max(self.front - (front - z)).max(0.0);
        chamfer + self.arc.map_or(0.0, |arc| arc.depth_at(z))
    }
}

impl Outline {
    /// Radius of a point that lies at `radius` where nothing is cut off.
    pub(super) fn radius_at(&self, radius: f64, z: f64) -> f64 {
        if z < 0.0 || radius < self.inner || radius > self.outer {
            return radius;
        }
        let share = (radius - self.inner) / (self.outer - self.inner);
        let inner = self.inner + self.inner_cut.depth_at(z, self.front);
        let outer = self.outer - self.outer_cut.depth_at(z, self.front);
        inner + share * (outer - inner)
    }

    /// Inner and outer radius at a position where nothing is cut off.
    pub(super) fn radii_at(&self, z: f64) -> (f64, f64) {
        let (inner, outer) = match self.rear {
            Some(rear) if z < 0.0 => (rear.inner, rear.outer),
            _ => (self.inner, self.outer),
        };
        (inner, self.step.filter(|step| z < step.at).map_or(outer, |step| step.outer))
    }

    /// Outer radius of the face at the back: the seat's own, not that of a shoulder.
    pub(super) fn outer_at_back(&self) -> f64 {
        self.step.map_or(self.outer, |step| step.outer)
    }

    /// The inner corner of its step, as radius and axial position.
    pub(super) fn corner_of_step(&self) -> Option<[f64; 2]> {
        self.step.map(|step| [step.outer.min(self.outer), step.at])
    }

    /// Its material.
    pub(super) fn elastic(&self) -> Elastic {
        Elastic { modulus: Pressure::new::<pascal>(self.modulus), poisson: self.poisson }
    }

    /// Where the body begins at the back, m.
    pub(super) fn back(&self) -> f64 {
        self.rear.map_or(0.0, |rear| -rear.thickness)
    }

    /// Axial length of the cylinder that can touch the next body, on its inner or its outer side.
    pub(super) fn land(&self, outside: bool) -> (f64, f64) {
        let (cut, radius) = if outside { (self.outer_cut, self.outer) } else { (self.inner_cut, self.inner) };
        // A tube that goes on behind as wide as it is in front can touch there too.
        let goes_on = self.rear.is_some_and(|rear| same(if outside { rear.outer } else { rear.inner }, radius));
        (if goes_on { self.back() } else { cut.back }, self.front - cut.front)
    }
}

/// Whether two lengths are the same but for rounding.
pub(super) fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (a.abs() + b.abs()).max(1e-6)
}

impl Outlines {
    /// Where bodies k and k + 1 touch: the ends, m.
    pub(super) fn contact(&self, k: usize) -> (f64, f64) {
        let (inner, outer) = (self.bodies[k].land(true), self.bodies[k + 1].land(false));
        (inner.0.max(outer.0), inner.1.min(outer.1))
    }

    /// The abutment behind the ring; `None` when there is none, or the ring passes it.
    pub(super) fn abutment(&self) -> Option<Abutment> {
        let (seat, ring) = (&self.bodies[self.seat], &self.bodies[self.ring]);
        let rear = seat.rear?;
        let (from, to) = (ring.radius_at(ring.inner, 0.0), ring.radius_at(ring.outer, 0.0));
        let (root, free, face) = if !same(rear.inner, seat.inner) {
            (seat.inner, rear.inner, (from.max(rear.inner), to.min(seat.inner)))
        } else if !same(rear.outer, seat.outer) {
            (seat.outer, rear.outer, (from.max(seat.outer), to.min(rear.outer)))
        } else {
            return None;
        };
        let pressed = face.1 - face.0 > LEAST_FACE * (ring.outer - ring.inner);
        pressed.then_some(Abutment { thickness: rear.thickness, root, free, face })
    }
}
