use crate::mechanics::error::{MechanicsError, ordered};
use crate::quantity::{Length, positive, within};
use crate::stock::threads::{FLANK_ANGLE_DEGREES, Thread};
use std::f64::consts::PI;
use uom::si::angle::{degree, radian};
use uom::si::f64::Angle;
use uom::si::length::meter;

/// Flanks from a square thread to one of a right angle, degrees.
const FLANK: (f64, f64) = (0.0, 45.0);

/// What the mechanics of a screw needs to know of its thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewThread {
    /// Pitch diameter, d2.
    pub pitch_diameter: Length,
    /// Advance for one turn: the pitch times the number of starts.
    pub lead: Length,
    /// Angle of the loaded flank in the plane of the axis: 30° for metric and unified threads, 0° for a square one.
    pub flank_angle: Angle,
    /// Diameter of the circle that has the stress area.
    pub stress_diameter: Length,
}

/// A thread in plain SI, checked, with its angles worked out.
#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedThread {
    pub(super) pitch_radius: f64,
    /// Tangent of the lead angle, `tan λ = lead/(π d2)`.
    pub(super) slope: f64,
    /// Cosine of the flank angle square to the thread, `tan α_n = tan α cos λ`.
    pub(super) flank_cosine: f64,
    pub(super) lead: f64,
    pub(super) stress_diameter: f64,
}

impl From<&Thread> for ScrewThread {
    fn from(thread: &Thread) -> Self {
        Self {
            pitch_diameter: thread.pitch_diameter(),
            lead: thread.pitch,
            flank_angle: Angle::new::<degree>(FLANK_ANGLE_DEGREES),
            stress_diameter: thread.stress_diameter(),
        }
    }
}

impl ScrewThread {
    pub(super) fn check(&self) -> Result<CheckedThread, MechanicsError> {
        let diameter = positive("pitch diameter of the thread", self.pitch_diameter.get::<meter>(), "m")?;
        let lead = positive("lead of the thread", self.lead.get::<meter>(), "m")?;
        // Beyond 45° a screw no longer turns torque into force in any useful way, and the balance has no sane limit.
        ordered(("lead of the thread", lead), ("turn of the thread, π d2,", PI * diameter))?;
        let flank = within("angle of the flank", self.flank_angle.get::<degree>(), FLANK, "°")?;
        let slope = lead / (PI * diameter);
        let flank_tangent = Angle::new::<degree>(flank).get::<radian>().tan() / slope.hypot(1.0);
        Ok(CheckedThread {
            pitch_radius: diameter / 2.0,
            slope,
            flank_cosine: 1.0 / flank_tangent.hypot(1.0),
            lead,
            stress_diameter: positive("stress diameter of the thread", self.stress_diameter.get::<meter>(), "m")?,
        })
    }
}
