use super::face::Faces;
use super::seating::Seating;
use crate::quantity::Time;

/// When a stage ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Until {
    /// After a time.
    Elapsed(Time),
    /// When the mean clearance of every contact is gone, or after the time at the latest. Parts that sit apart never grip.
    Grips {
        /// Latest end.
        at_most: Time,
    },
}

/// A part of a history during which what the faces meet stays the same.
#[derive(Clone, Debug)]
pub struct Stage<'a> {
    /// What the faces of each part meet, from the inside outward.
    pub around: Vec<Faces<'a>>,
    /// How the parts sit in one another; `None` while they are apart.
    pub seating: Option<Seating>,
    /// When it ends.
    pub until: Until,
}
