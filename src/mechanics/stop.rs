use super::error::MechanicsError;
use super::screw::{Screw, ScrewFrictionRange};
use crate::quantity::{Force, Torque, not_negative, positive};
use uom::si::force::newton;
use uom::si::torque::newton_meter;

/// At what torque a screw jig is stopped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StopTorque {
    /// Torque that the part may need at the least, with the lowest friction in the screw.
    pub running_low: Torque,
    /// Torque that the part may need, with the highest friction in the screw.
    pub running_high: Torque,
    /// Torque that must not be exceeded: with the lowest friction it already gives the allowable force.
    pub limit: Torque,
}

impl StopTorque {
    /// Torque that takes a part home and spares the wall behind it.
    ///
    /// `T_run = F_needed k(μ_high)`, `T_limit = F_allowable k(μ_low)`, k being torque over force of [`Screw::torque`].
    ///
    /// All of the screw's force counts at the wall once the part is home; the share that the seat's friction still carries
    /// is left out, on the safe side.
    ///
    /// # Errors
    /// As for [`Screw::torque`]; a lowest friction above the highest; an allowable force that is not positive.
    ///
    /// **Source**: balance of the screw at both ends of the friction; no further assumption.
    pub fn of(
        screw: &Screw,
        friction: &ScrewFrictionRange,
        needed: Force,
        allowable: Force,
    ) -> Result<Self, MechanicsError> {
        friction.check()?;
        not_negative("force that the part needs", needed.get::<newton>(), "N")?;
        positive("force that the wall allows", allowable.get::<newton>(), "N")?;
        Ok(Self {
            running_low: screw.torque(needed, friction.low)?.total(),
            running_high: screw.torque(needed, friction.high)?.total(),
            limit: screw.torque(allowable, friction.low)?.total(),
        })
    }

    /// Limit over the highest running torque; `None` when nothing is needed to run.
    pub fn margin(&self) -> Option<f64> {
        let running = self.running_high.get::<newton_meter>();
        let margin = self.limit.get::<newton_meter>() / running;
        (running > 0.0 && margin.is_finite()).then_some(margin)
    }

    /// Whether the two cross: the torque that a part may need is above what the wall bears, so that the jig could break the
    /// wall before the ring is known to be home. Then measure the force, lubricate the screw, or support the wall.
    pub fn crosses(&self) -> bool {
        self.running_high > self.limit
    }
}
