//! How the part comes out, or off, again.

use super::means::turning;
use super::model::Removal;
use crate::job::{Job, PressMeans};
use crate::plan::PlanError;
use crate::plan::joint::Joint;
use crate::plan::limits;
use crate::plan::model::SeatKind;
use crate::quantity::{Cases, Force, ThermodynamicTemperature};
use crate::stock::retaining_rings::RingPlace;

/// Force to break a joint loose over that to keep it sliding: 0.11 over 0.08 of dry steel, DIN 7190, from memory.
const BREAKING_LOOSE: f64 = 0.11 / 0.08;

/// Draws the part off; `outer_alone` and `both` are the temperatures that free the tightest case.
pub(in crate::plan) fn removal(
    job: &Job,
    joint: &Joint<'_>,
    press: Cases<Force>,
    (outer_alone, both): (Option<ThermodynamicTemperature>, Option<ThermodynamicTemperature>),
) -> Result<Removal, PlanError> {
    let pull = press.map(|force| force * BREAKING_LOOSE);
    let turned = match &job.press.means {
        Some(PressMeans::Screw(jig)) if pull.tightest > Force::default() => Some(turning(jig, pull.tightest)?),
        _ => None,
    };
    let limit = limits::hottest(&limits::hot(job, joint.seat, joint.outer.piece));
    Ok(Removal {
        first_out: first_out(job, joint.seat),
        outer_alone,
        outer_limit: limit.filter(|limit| outer_alone.is_some_and(|needed| needed > *limit)),
        both,
        pull,
        torque: turned.map(|(torque, _)| torque),
        rod_share: turned.and_then(|(_, share)| share),
    })
}

/// What stands in its way: a seal that went in after it, then the ring that holds it in this seat.
fn first_out(job: &Job, seat: SeatKind) -> Vec<&'static str> {
    let mut first = Vec::new();
    if job.seal.as_ref().is_some_and(|seal| !seal.fitted_first) {
        first.push("seal");
    }
    let place = match seat {
        SeatKind::Housing => RingPlace::Bore,
        SeatKind::Shaft => RingPlace::Shaft,
    };
    let bed = job.stack.as_ref().and_then(|stack| stack.bed.as_deref());
    if bed.is_some_and(|bed| bed.place == place) {
        first.push("retaining ring");
    }
    first
}
