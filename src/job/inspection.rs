//! What was found when the parts were looked at, as a job states it.

use crate::quantity::Length;

/// What was found when the parts were looked at.
#[derive(Clone, Debug, Default)]
pub struct Inspection {
    /// Whether the bearing was in use before; none where the job does not say.
    pub used: Option<bool>,
    /// How it turns by hand.
    pub feel: Option<Feel>,
    /// Through what it was pushed when it was taken out.
    pub removed: Option<RemovedThrough>,
    /// Radial run-out of the shaft at the seat, full reading.
    pub run_out: Option<Length>,
    /// Length of the chamfer at the mouth of the seat.
    pub lead_in: Option<Length>,
    /// Roughness Ra of the shaft where the lip of the seal runs.
    pub lip_track: Option<Length>,
}

/// How a bearing turns by hand, clean and without load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Feel {
    /// Evenly and quietly.
    Smooth,
    /// With grit in it that washing took away, or still there.
    Gritty,
    /// With places that it falls into.
    Notchy,
    /// With play that can be felt and heard.
    Loose,
}

impl Feel {
    /// Every feel with the name that a job uses.
    pub const NAMES: [(&'static str, Feel); 4] =
        [("smooth", Self::Smooth), ("gritty", Self::Gritty), ("notchy", Self::Notchy), ("loose", Self::Loose)];

    /// The name that a job uses.
    pub fn name(self) -> &'static str {
        Self::NAMES.iter().find(|(_, feel)| *feel == self).map_or("feel", |(name, _)| name)
    }
}

/// Where the force went when a bearing was taken out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RemovedThrough {
    /// Through the ring that was tight.
    TightRing,
    /// Through the rolling elements.
    RollingElements,
}

impl RemovedThrough {
    /// Every way with the name that a job uses.
    pub const NAMES: [(&'static str, RemovedThrough); 2] =
        [("tight ring", Self::TightRing), ("rolling elements", Self::RollingElements)];
}
