//! The shape of a seat beyond what two rings of equal width say.

use crate::mechanics::error::MechanicsError;
use crate::mechanics::joint::Joint;
use crate::quantity::{Length, not_negative, positive, within};
use uom::si::length::meter;

/// Two sizes over one another are the same when they agree to this; the table holds six digits.
pub(super) const SAME: f64 = 1e-4;

/// What is behind the ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Back {
    /// Nothing: the housing ends at the back face of the ring.
    Flush,
    /// A wall in one piece with the housing: the shoulder and what carries it. A bore that goes on behind the ring is a wall
    /// as thick as it goes on, with a hole as large as the bore.
    Wall {
        /// Thickness.
        thickness: Length,
        /// Diameter of the hole in it; zero for a closed wall.
        hole: Length,
    },
}

/// A housing seat beyond its bore and outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeatShape {
    /// What is behind the ring.
    pub back: Back,
    /// Length of the housing in front of the ring; zero when flush.
    pub front: Length,
    /// Length that the chamfers or roundings take from the contact at each end.
    pub chamfer: Length,
}

/// A shape in sizes over the bore or the width of the ring.
#[derive(Clone, Copy, Debug)]
pub(super) struct Normal {
    /// Outside of the housing over its bore.
    pub(super) outside: f64,
    /// Wall over width; zero when flush.
    pub(super) wall: f64,
    /// Hole over bore; one when flush.
    pub(super) hole: f64,
    /// Front over width.
    pub(super) front: f64,
    /// Chamfer over width.
    pub(super) chamfer: f64,
    /// Width over bore.
    pub(super) width: f64,
}

impl SeatShape {
    /// A through bore as wide as the ring.
    pub fn equal_width() -> Self {
        let none = Length::new::<meter>(0.0);
        Self { back: Back::Flush, front: none, chamfer: none }
    }

    pub(super) fn normal(&self, joint: &Joint) -> Result<Normal, MechanicsError> {
        let bore = positive("diameter of the joint", joint.diameter.get::<meter>(), "m")?;
        let width = positive("length of the contact", joint.length.get::<meter>(), "m")?;
        let outside = positive("outside of the housing", joint.outer.outside.get::<meter>(), "m")?;
        let front = not_negative("length of the housing in front of the ring", self.front.get::<meter>(), "m")?;
        // Three eighths at each end leave a quarter of the width; a seat with less is not one of this kind.
        let chamfer = within("chamfer", self.chamfer.get::<meter>(), (0.0, 0.375 * width), "m")?;
        let (wall, hole) = match self.back {
            Back::Flush => (0.0, bore),
            Back::Wall { thickness, hole } => (
                positive("thickness of the wall behind the ring", thickness.get::<meter>(), "m")?,
                within("hole in the wall behind the ring", hole.get::<meter>(), (0.0, bore), "m")?,
            ),
        };
        Ok(Normal {
            outside: outside / bore,
            wall: wall / width,
            hole: hole / bore,
            front: front / width,
            chamfer: chamfer / width,
            width: width / bore,
        })
    }
}

impl Normal {
    /// A through bore as wide as the ring, whatever its chamfers.
    pub(super) fn is_equal_width(&self) -> bool {
        self.wall <= 0.0 && self.front <= 0.0
    }

    /// Whether the housing holds all the metal of another of the same bore; chamfers are counted apart.
    pub(super) fn holds(&self, other: &Self) -> bool {
        let reaches = |own: f64, other: f64| own >= other - SAME;
        let back = other.wall <= 0.0 || (reaches(self.wall, other.wall) && reaches(other.hole, self.hole));
        reaches(self.outside, other.outside) && reaches(self.front, other.front) && back
    }
}
