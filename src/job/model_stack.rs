//! What stands along the axis of a job.

use crate::quantity::Length;
use crate::stock::retaining_rings::RingPlace;

/// What stands along the axis: parts between a shoulder and a retaining ring, or two bearings and their spacer.
#[derive(Clone, Debug)]
pub struct Stack {
    /// The parts on their bed, and the ring that holds them; none where only a pair is described.
    pub bed: Option<Box<Bed>>,
    /// Two bearings with a spacer between their inner rings.
    pub pair: Option<BearingPair>,
}

/// A size along the axis with its limits.
#[derive(Clone, Debug, PartialEq)]
pub struct AxialSize {
    /// Nominal.
    pub nominal: Length,
    /// Lower limit.
    pub least: Length,
    /// Upper limit.
    pub most: Length,
    /// Where the limits come from, in words.
    pub basis: String,
}

/// A shoulder, the parts on it, the ring and its groove.
#[derive(Clone, Debug)]
pub struct Bed {
    /// Whether the ring sits in the bore or on the shaft.
    pub place: RingPlace,
    /// Depth of the shoulder below the face, when given.
    pub depth: Option<AxialSize>,
    /// From the face to the wall of the groove that holds the ring, when given so.
    pub from_face: Option<AxialSize>,
    /// From the shoulder to that wall, when given so.
    pub from_shoulder: Option<AxialSize>,
    /// Width of the groove.
    pub groove_width: AxialSize,
    /// The parts, from the shoulder on.
    pub parts: Vec<StackPart>,
    /// The ring.
    pub ring: StackRing,
    /// Least play that is wanted.
    pub least_play: Length,
    /// Most play that is wanted, when given.
    pub most_play: Option<Length>,
}

/// One part of a stack.
#[derive(Clone, Debug, PartialEq)]
pub struct StackPart {
    /// What it is called: the key of the job, with a number where there are several.
    pub name: String,
    /// The key of the job.
    pub kind: &'static str,
    /// Its width.
    pub size: AxialSize,
}

impl StackPart {
    /// Whether it is of this kind.
    pub fn is(&self, kind: &str) -> bool {
        self.kind == kind
    }
}

/// The retaining ring.
#[derive(Clone, Debug)]
pub struct StackRing {
    /// What it is called.
    pub name: String,
    /// Its thickness.
    pub thickness: AxialSize,
    /// Least land between its groove and the face; none for a ring that is not in the tables.
    pub least_land: Option<Length>,
    /// Diameter of its groove; none for a ring that is not in the tables.
    pub groove: Option<Length>,
}

/// Two bearings whose outer rings sit against shoulders, with a spacer between their inner rings.
#[derive(Clone, Debug)]
pub struct BearingPair {
    /// Distance of the two shoulders.
    pub shoulders: AxialSize,
    /// Length of the spacer.
    pub spacer: AxialSize,
}
