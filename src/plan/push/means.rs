//! Whether what presses reaches the force, and when to stop it.

use super::model::{MeansPlan, ScrewPlan, StopReason, WallPlan};
use crate::job::{Job, PressMeans, ScrewJig};
use crate::mechanics::{
    Landing, Means, Screw, ScrewFriction, ScrewFrictionRange, StopTorque, hydraulic_force, hydraulic_pressure,
    nut_face_diameter,
};
use crate::plan::PlanError;
use crate::quantity::{Force, Pressure, Torque};
use uom::si::force::newton;
use uom::si::pressure::pascal;

/// Force over the predicted maximum at which to stop: a scatter of friction that no table covers.
///
/// Common practice, no published source.
pub(in crate::plan) const ALARM: f64 = 1.25;

/// The means of a job against the force that the tightest case may need; `wall` is the one behind the part.
pub(in crate::plan) fn means(
    job: &Job,
    needed: Force,
    wall: Option<&WallPlan>,
) -> Result<Option<MeansPlan>, PlanError> {
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
            plan.screw = Some(screw_plan(job, jig, needed, wall)?);
        }
        PressMeans::HammerAndSleeve => plan.words = Means::HammerAndSleeve.caution(),
    }
    // What cannot be reached is no force to stop at.
    plan.alarm = plan.available.map_or(plan.alarm, |available| plan.alarm.min(available));
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

fn screw_plan(job: &Job, jig: &ScrewJig, needed: Force, wall: Option<&WallPlan>) -> Result<ScrewPlan, PlanError> {
    let (screw, friction) = screw(jig)?;
    let running = |friction| screw.torque(needed, friction).map(|torque| torque.total());
    let (_, rod_share) = turning(jig, needed)?;
    let proof_load = jig.class.as_ref().map(|class| screw.thread.proof_load(class.proof)).transpose()?;
    // Tension and twist grow together, so any trial says at which force both together reach the proof stress.
    let trial = Force::new::<newton>(1000.0);
    let rod = turning(jig, trial)?.1.map(|share| trial / share);
    // A wall that the fit alone strains to its limit bears no push: then the first touch of the spanner is too much.
    let walled = wall.and_then(|wall| wall.allowable).map(|allowable| allowable.max(Force::new::<newton>(1.0)));
    let limit = match (walled, rod) {
        (Some(wall), Some(rod)) if rod < wall => Some((rod, StopReason::Rod)),
        (Some(wall), _) => Some((wall, StopReason::Wall)),
        (None, Some(rod)) => Some((rod, StopReason::Rod)),
        (None, None) => None,
    };
    let stop = limit
        .map(|(force, reason)| StopTorque::of(&screw, &friction, needed, force).map(|stop| (stop, reason)))
        .transpose()?;
    let landing = match (stop, wall) {
        (Some((stop, _)), Some(wall)) => Some(landing(job, jig, (&screw, &friction), wall, &stop)?),
        _ => None,
    };
    Ok(ScrewPlan {
        landing,
        thread: jig.thread.designation.clone(),
        running: (running(friction.low)?, running(friction.high)?),
        crosses: stop.is_some_and(|(stop, _)| stop.crosses()),
        stop: stop.map(|(stop, reason)| (stop.limit, reason)),
        rod_share,
        proof_load,
        class: jig.class.as_ref().map(|class| class.name()),
    })
}

/// Elastic modulus of a steel rod, Pa: 206 GPa, VDI 2230 (from memory).
const ROD_MODULUS: f64 = 206e9;

/// What the spanner feels once the part is on its shoulder.
///
/// Rod and wall give way and nothing else, so that the true rise is slower; a rod of unknown length reaches through part and wall
/// at the least.
fn landing(
    job: &Job,
    jig: &ScrewJig,
    (screw, friction): (&Screw, &ScrewFrictionRange),
    wall: &WallPlan,
    stop: &StopTorque,
) -> Result<Landing, PlanError> {
    let trial = Force::new::<newton>(1000.0);
    let thickness = job.housing.as_ref().and_then(|housing| housing.shoulder).map(|shoulder| shoulder.wall);
    let rod = jig.rod_length.unwrap_or(job.part.width + thickness.unwrap_or_default());
    let stretch = screw.thread.stretch(trial, rod, Pressure::new::<pascal>(ROD_MODULUS))?;
    let deflection = wall.gives_per_newton * trial.get::<newton>();
    Ok(Landing::of(screw, friction, (trial, stretch + deflection), stop.running_high, stop.limit)?)
}
