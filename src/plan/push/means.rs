//! Whether what presses reaches the force, and when to stop it.

use super::model::{MeansPlan, ScrewPlan, StopReason};
use crate::job::{Job, PressMeans, ScrewJig};
use crate::mechanics::{
    Means, Screw, ScrewFriction, ScrewFrictionRange, StopTorque, hydraulic_force, hydraulic_pressure, nut_face_diameter,
};
use crate::plan::PlanError;
use crate::quantity::{Force, Torque};
use uom::si::force::newton;

/// Force over the predicted maximum at which to stop: a scatter of friction that no table covers.
///
/// Common practice, no published source.
pub(in crate::plan) const ALARM: f64 = 1.25;

/// The means of a job against the force that the tightest case may need; `wall` is what the wall behind the part allows.
pub(in crate::plan) fn means(job: &Job, needed: Force, wall: Option<Force>) -> Result<Option<MeansPlan>, PlanError> {
    let Some(means) = &job.press.means else { return Ok(None) };
    let capacity = job.press.capacity;
    let mut plan = MeansPlan {
        name: means.name(),
        needed,
        available: capacity,
        gauge: None,
        alarm: needed * ALARM,
        screw: None,
        words: None,
    };
    match means {
        PressMeans::Arbor => {}
        PressMeans::Hydraulic { ram, pressure } => {
            plan.gauge = ram.map(|ram| hydraulic_pressure(ram, needed)).transpose()?;
            let given = ram.zip(*pressure).map(|(ram, pressure)| hydraulic_force(ram, pressure)).transpose()?;
            plan.available = smaller(capacity, given);
        }
        PressMeans::Screw(jig) => {
            let (screw, friction) = screw(jig)?;
            let turned = jig.torque.map(|torque| screw.force(torque, friction.high)).transpose()?;
            plan.available = smaller(capacity, turned);
            plan.screw = Some(screw_plan(jig, needed, wall)?);
        }
        PressMeans::HammerAndSleeve => plan.words = Means::HammerAndSleeve.caution(),
    }
    Ok(Some(plan))
}

fn smaller(one: Option<Force>, other: Option<Force>) -> Option<Force> {
    one.into_iter().chain(other).reduce(Force::min)
}

/// The screw of a jig with both ends of its friction.
fn screw(jig: &ScrewJig) -> Result<(Screw, ScrewFrictionRange), PlanError> {
    let face = jig.nut.as_ref().map(|nut| nut_face_diameter(nut.across_flats, nut.hole)).transpose()?;
    let (low, high) = jig.friction;
    let friction = ScrewFrictionRange { low: ScrewFriction::both(low), high: ScrewFriction::both(high) };
    Ok((Screw { thread: (&jig.thread).into(), face_diameter: face }, friction))
}

/// Torque at the highest friction, and the share of the proof stress that the rod bears.
pub(super) fn turning(jig: &ScrewJig, force: Force) -> Result<(Torque, Option<f64>), PlanError> {
    let (screw, friction) = screw(jig)?;
    let torque = screw.torque(force, friction.high)?;
    let check =
        jig.class.as_ref().map(|class| screw.thread.rod_check(force, torque.thread, class.proof)).transpose()?;
    Ok((torque.total(), check.map(|check| check.share_of_proof_stress)))
}

fn screw_plan(jig: &ScrewJig, needed: Force, wall: Option<Force>) -> Result<ScrewPlan, PlanError> {
    let (screw, friction) = screw(jig)?;
    let running = |friction| screw.torque(needed, friction).map(|torque| torque.total());
    let (_, rod_share) = turning(jig, needed)?;
    let proof_load = jig.class.as_ref().map(|class| screw.thread.proof_load(class.proof)).transpose()?;
    // Tension and twist grow together, so any trial says at which force both together reach the proof stress.
    let trial = Force::new::<newton>(1000.0);
    let rod = turning(jig, trial)?.1.map(|share| trial / share);
    let limit = match (wall, rod) {
        (Some(wall), Some(rod)) if rod < wall => Some((rod, StopReason::Rod)),
        (Some(wall), _) => Some((wall, StopReason::Wall)),
        (None, Some(rod)) => Some((rod, StopReason::Rod)),
        (None, None) => None,
    };
    let stop = limit
        .map(|(force, reason)| StopTorque::of(&screw, &friction, needed, force).map(|stop| (stop, reason)))
        .transpose()?;
    Ok(ScrewPlan {
        thread: jig.thread.designation.clone(),
        running: (running(friction.low)?, running(friction.high)?),
        crosses: stop.is_some_and(|(stop, _)| stop.crosses()),
        stop: stop.map(|(stop, reason)| (stop.limit, reason)),
        rod_share,
        proof_load,
        class: jig.class.as_ref().map(|class| class.name()),
    })
}
