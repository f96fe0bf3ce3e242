use super::thread::{CheckedThread, ScrewThread};
use crate::mechanics::error::{MechanicsError, between, ordered};
use crate::quantity::{Force, Length, Ratio, Torque, not_negative, positive};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::torque::newton_meter;

/// Ends between which a coefficient of friction must lie.
const FRICTION: (f64, f64) = (0.0, 1.0);

/// A screw with the face on which its nut or head turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// The thread.
    pub thread: ScrewThread,
    /// Mean diameter of the face that turns under load; `None` when it turns on a thrust bearing or a ball.
    pub face_diameter: Option<Length>,
}

/// Coefficients of friction of a screw, each between 0 and 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewFriction {
    /// In the thread.
    pub thread: f64,
    /// Under the nut or head; without meaning when the screw has no such face.
    pub face: f64,
}

/// The friction that a screw may have: nobody knows it better than a range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewFrictionRange {
    /// Lowest: the most force for a torque. Belongs to whatever must not be overloaded.
    pub low: ScrewFriction,
    /// Highest: the most torque for a force. Belongs to whatever must be reached.
    pub high: ScrewFriction,
}

/// Torque on a screw, in its two parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewTorque {
    /// On the thread; it twists the rod. Negative when the load turns the screw back by itself.
    pub thread: Torque,
    /// Under the nut or head.
    pub face: Torque,
}

impl ScrewTorque {
    /// What the spanner feels.
    pub fn total(&self) -> Torque {
        self.thread + self.face
    }
}

impl ScrewFriction {
    /// The same coefficient in the thread and under the face.
    pub fn both(coefficient: f64) -> Self {
        Self { thread: coefficient, face: coefficient }
    }

    fn check(self) -> Result<Self, MechanicsError> {
        between("coefficient of friction in the thread", self.thread, FRICTION)?;
        between("coefficient of friction under the nut", self.face, FRICTION)?;
        Ok(self)
    }
}

impl ScrewFrictionRange {
    pub(in crate::mechanics) fn check(&self) -> Result<(), MechanicsError> {
        let (low, high) = (self.low.check()?, self.high.check()?);
        let rising = |what, low, high| {
            if low <= high { Ok(()) } else { Err(MechanicsError::NotBetween { what, value: low, from: 0.0, to: high }) }
        };
        rising("lowest friction in the thread", low.thread, high.thread)?;
        rising("lowest friction under the nut", low.face, high.face)
    }
}

/// Mean diameter of the ring-shaped face of a hexagon nut: `D_m = (s + d_h)/2`.
///
/// # Errors
/// Sizes that are not positive; a hole that is not smaller than the nut.
///
/// **Source**: mean diameter as in VDI 2230 and bolting handbooks (from memory).
pub fn nut_face_diameter(across_flats: Length, hole: Length) -> Result<Length, MechanicsError> {
    let small = positive("hole under the nut", hole.get::<meter>(), "m")?;
    let large = positive("width across flats", across_flats.get::<meter>(), "m")?;
    ordered(("hole under the nut", small), ("width across flats", large))?;
    Ok((across_flats + hole) / 2.0)
}

impl Screw {
    /// Torque that moves the screw against an axial force.
    ///
    /// `T = F d2/2 (μ + cos α_n tan λ)/(cos α_n - μ tan λ) + F μ_f D_m/2`, `tan λ = lead/(π d2)`, `tan α_n = tan α cos λ`: the exact
    /// balance on the flank.
    ///
    /// **Valid for** steady turning, force along the axis; a screw at rest may need a little more.
    ///
    /// # Errors
    /// A thread or face that is none, friction outside 0 to 1, a force below zero.
    ///
    /// **Source**: Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 8-2, eqs. 8-1 to 8-6 (from memory),
    /// with the normal flank angle in place of the axial one.
    pub fn torque(&self, force: Force, friction: ScrewFriction) -> Result<ScrewTorque, MechanicsError> {
        let newtons = not_negative("force of the screw", force.get::<newton>(), "N")?;
        let (thread, face) = self.arms(friction, 1.0)?;
        Ok(ScrewTorque::of(newtons, thread, face))
    }

    /// Torque that turns the screw back under the force; the thread's part is negative when the load does it alone.
    ///
    /// As [`Screw::torque`] with the slope the other way: `T = F d2/2 (μ - cos α_n tan λ)/(cos α_n + μ tan λ) + F μ_f D_m/2`.
    ///
    /// # Errors
    /// As for [`Screw::torque`].
    pub fn lowering_torque(&self, force: Force, friction: ScrewFriction) -> Result<ScrewTorque, MechanicsError> {
        let newtons = not_negative("force of the screw", force.get::<newton>(), "N")?;
        let (thread, face) = self.arms(friction, -1.0)?;
        Ok(ScrewTorque::of(newtons, thread, face))
    }

    /// Force that a torque at the spanner gives: the torque over that for a force of one, as [`Screw::torque`] is linear.
    ///
    /// # Errors
    /// As for [`Screw::torque`]; a torque below zero.
    pub fn force(&self, torque: Torque, friction: ScrewFriction) -> Result<Force, MechanicsError> {
        let torque = not_negative("torque of the screw", torque.get::<newton_meter>(), "N·m")?;
        let (thread, face) = self.arms(friction, 1.0)?;
        Ok(Force::new::<newton>(torque / (thread + face)))
    }

    /// Work done over work put in, `η = F lead/(2π T)`, face included.
    ///
    /// # Errors
    /// As for [`Screw::torque`].
    pub fn efficiency(&self, friction: ScrewFriction) -> Result<Ratio, MechanicsError> {
        let (thread, face) = self.arms(friction, 1.0)?;
        let lead = self.thread.check()?.lead;
        Ok(Ratio::new::<ratio>(lead / (2.0 * PI * (thread + face))))
    }

    /// Whether the thread holds the load by itself when the spanner is let go: `μ > cos α_n tan λ`; the face, which helps, does
    /// not count. Shaking can loosen a thread that holds at rest.
    ///
    /// # Errors
    /// As for [`Screw::torque`].
    pub fn is_self_locking(&self, friction: ScrewFriction) -> Result<bool, MechanicsError> {
        Ok(self.arms(friction, -1.0)?.0 > 0.0)
    }

    /// Torque for a force of one on thread and face, N·m/N; `way` is 1 against the load and -1 with it.
    fn arms(&self, friction: ScrewFriction, way: f64) -> Result<(f64, f64), MechanicsError> {
        let friction = friction.check()?;
        let CheckedThread { pitch_radius, slope, flank_cosine, lead, .. } = self.thread.check()?;
        let flank = friction.thread / flank_cosine;
        let divisor = 1.0 - way * flank * slope;
        if divisor <= 0.0 {
            let (lead_mm, diameter_mm) = (lead * 1e3, pitch_radius * 2e3);
            return Err(MechanicsError::Jams { lead_mm, diameter_mm, friction: friction.thread });
        }
        let thread = pitch_radius * (flank + way * slope) / divisor;
        let face = match self.face_diameter {
            Some(diameter) => {
                friction.face * positive("diameter of the nut's face", diameter.get::<meter>(), "m")? / 2.0
            }
            None => 0.0,
        };
        Ok((thread, face))
    }
}

impl ScrewTorque {
    fn of(force: f64, thread: f64, face: f64) -> Self {
        Self { thread: Torque::new::<newton_meter>(force * thread), face: Torque::new::<newton_meter>(force * face) }
    }
}
