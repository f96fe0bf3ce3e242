use super::error::MechanicsError;
use super::screw::{Screw, ScrewFrictionRange, ScrewThread};
use crate::quantity::{Force, Length, Pressure, Torque, not_negative, positive};
use std::f64::consts::{PI, TAU};
use uom::si::angle::radian;
use uom::si::f64::Angle;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::torque::newton_meter;

/// Share of a turn for which the rise is given.
const SHARE_OF_TURN: f64 = 0.1;

/// What the spanner feels once the part has come to its shoulder and moves no more.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Landing {
    /// Rise of the torque for a tenth of a turn, at the lowest and the highest friction.
    pub rise: (Torque, Torque),
    /// Turn from the highest running torque to the limit, the least that it can be; zero where they cross.
    pub turn_to_limit: Angle,
}

impl Landing {
    /// Rise of the torque when the jig pulls against what gives way by `gives` under `under`: rod, wall, ring.
    ///
    /// One turn draws the parts together by the lead p, so that the force rises by `F' = p/(2π) (under/gives)` for a radian and
    /// the torque by `k(μ) F'`, k being torque over force of [`Screw::torque`]. With the highest friction the least force lies
    /// between the running torque and the limit, and so the least turn.
    ///
    /// **Valid for** parts that bear all round from the first touch; a part that lands askew, dirt or a burr make the rise slower,
    /// and so does all that gives way besides. It is the sudden end of what can happen.
    ///
    /// # Errors
    /// As for [`Screw::torque`]; a force, or what gives under it, that is not positive.
    ///
    /// **Source**: balance of the screw, springs in a row; no further assumption.
    pub fn of(
        screw: &Screw,
        friction: &ScrewFrictionRange,
        (under, gives): (Force, Length),
        running: Torque,
        limit: Torque,
    ) -> Result<Self, MechanicsError> {
        friction.check()?;
        let spring = positive("force at the shoulder", under.get::<newton>(), "N")?
            / positive("what gives way at the shoulder", gives.get::<meter>(), "m")?;
        let per_radian = spring * screw.thread.lead.get::<meter>() / TAU;
        let one = Force::new::<newton>(1.0);
        let arm = |friction| screw.torque(one, friction).map(|torque| torque.total().get::<newton_meter>());
        let (low, high) = (arm(friction.low)?, arm(friction.high)?);
        let rise = |arm: f64| Torque::new::<newton_meter>(arm * per_radian * TAU * SHARE_OF_TURN);
        let left = (limit - running).get::<newton_meter>().max(0.0);
        Ok(Self { rise: (rise(low), rise(high)), turn_to_limit: Angle::new::<radian>(left / (high * per_radian)) })
    }
}

impl ScrewThread {
    /// How far a rod of this length is stretched by a force: `F L/(E A_s)`.
    ///
    /// # Errors
    /// A force below zero; a length or modulus that is not positive; a thread that is none.
    ///
    /// **Source**: Hooke's law over the stress area; the shank of a part-threaded rod gives less.
    pub fn stretch(&self, force: Force, length: Length, modulus: Pressure) -> Result<Length, MechanicsError> {
        let force = not_negative("force of the screw", force.get::<newton>(), "N")?;
        let length = positive("length of the rod", length.get::<meter>(), "m")?;
        let modulus = positive("elastic modulus of the rod", modulus.get::<pascal>(), "Pa")?;
        let diameter = positive("stress diameter of the thread", self.stress_diameter.get::<meter>(), "m")?;
        Ok(Length::new::<meter>(force * length / (modulus * PI / 4.0 * diameter * diameter)))
    }
}
