//! How the part comes out, or off, again.

use super::means::turning;
use super::model::Removal;
use crate::job::{Job, PressMeans};
use crate::plan::PlanError;
use crate::plan::joint::Joint;
use crate::plan::limits;
use crate::quantity::{Cases, Force, ThermodynamicTemperature};

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
        outer_alone,
        outer_limit: limit.filter(|limit| outer_alone.is_some_and(|needed| needed > *limit)),
        both,
        pull,
        torque: turned.map(|(torque, _)| torque),
        rod_share: turned.and_then(|(_, share)| share),
    })
}
