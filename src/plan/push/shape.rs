//! How far a seat exceeds the plane formula.

use super::computed;
use super::model::{HowNear, ShapeFactor};
use super::solved::SolvedSeats;
use crate::job::{Housing, Job};
use crate::mechanics::{Back, HowKnown, Joint, Ring, SeatFactor, SeatShape, Span, seat_factor};
use crate::plan::model::SeatKind;
use crate::plan::{Method, PlanError, liner};
use crate::quantity::Length;
use crate::stock::seat_shapes;

/// How much stiffer than any metal a part is that stands for a rigid one.
const RIGID: f64 = 1e9;

/// Metal in front of the ring, over its width, that counts as possible where the job does not state a length: the most of the
/// computed seats, beyond which hardly more is added.
const UNSTATED_FRONT: f64 = 10.0 / 16.0;

/// The factor of a seat, with friction up to `friction`.
pub(super) fn factor(
    job: &Job,
    seat: SeatKind,
    (method, solved): (Method, &SolvedSeats),
    joint: &Joint,
    friction: f64,
) -> Result<ShapeFactor, PlanError> {
    let bounds = bounds(job, seat, joint, friction)?;
    let wanted = method == Method::Section || has_section(job, seat, &bounds);
    if method == Method::Plane || !wanted {
        return Ok(bounds);
    }
    match computed::factors(job, seat, joint, solved) {
        Ok(Some(factor)) => Ok(factor),
        Ok(None) => Ok(bounds),
        // A seat that the section refuses keeps its bounds, unless the section was asked for.
        Err(PlanError::Section(_)) if method == Method::Auto => Ok(bounds),
        Err(error) => Err(error),
    }
}

/// Whether a section says more than these bounds: a seat of unknown length has none, and two rings of equal width need none.
pub(in crate::plan) fn has_section(job: &Job, seat: SeatKind, bounds: &ShapeFactor) -> bool {
    length_stated(job, seat) && (bounds.known != HowNear::Exact || !job.part.ring_shape.is_plain())
}

/// Whether the job gives the length of a seat.
pub(in crate::plan) fn length_stated(job: &Job, seat: SeatKind) -> bool {
    match seat {
        SeatKind::Housing => job.housing.as_ref().is_some_and(|housing| housing.length_stated),
        SeatKind::Shaft => job.shaft.as_ref().is_some_and(|shaft| shaft.length_stated),
    }
}

/// The ends between which the factor lies, from seats computed beforehand.
fn bounds(job: &Job, seat: SeatKind, joint: &Joint, friction: f64) -> Result<ShapeFactor, PlanError> {
    match (seat, &job.housing, &job.shaft) {
        (SeatKind::Housing, Some(housing), _) => {
            stepped(job, housing, joint, of_housing(job, housing, joint, friction)?)
        }
        (SeatKind::Shaft, _, Some(shaft)) if shaft.length_stated && shaft.length <= job.part.width => Ok(equal_width()),
        _ => on_shaft(joint),
    }
}

fn of_housing(job: &Job, housing: &Housing, joint: &Joint, friction: f64) -> Result<ShapeFactor, PlanError> {
    let table = seat_shapes::table()?;
    let none = Length::default();
    let with = |back, front| -> Result<ShapeFactor, PlanError> {
        let shape = SeatShape { back, front, chamfer: none };
        Ok(plain(&seat_factor(joint, &shape, table)?.with_friction(friction)?))
    };
    let back = match housing.shoulder {
        Some(shoulder) => Back::Wall { thickness: shoulder.wall, hole: shoulder.inside },
        None => Back::Flush,
    };
    let behind = housing.shoulder.map_or(none, |shoulder| shoulder.wall);
    if !housing.length_stated {
        return Ok(with(back, none)?.either(with(back, UNSTATED_FRONT * job.part.width)?));
    }
    let over = (housing.length - job.part.width - behind).max(none);
    if over <= none && housing.shoulder.is_none() {
        return Ok(equal_width());
    }
    if housing.shoulder.is_some() {
        return with(back, over);
    }
    // The job does not say on which side the longer boss goes on: all in front, or half on either side.
    let wall = Back::Wall { thickness: 0.5 * over, hole: joint.diameter };
    Ok(with(Back::Flush, over)?.either(with(wall, 0.5 * over)?))
}

/// The most that the thicker part of a stepped boss adds: as if it went all along, over the thinner one that `joint` has.
fn stepped(job: &Job, housing: &Housing, joint: &Joint, factor: ShapeFactor) -> Result<ShapeFactor, PlanError> {
    let Some(step) = housing.step else { return Ok(factor) };
    let thick = Housing { outside: housing.outside.max(step.outside), step: None, ..housing.clone() };
    let outer = match liner::bore(job, &thick) {
        Some(lined) => lined.stands_for()?,
        None => Ring { outside: thick.outside, ..joint.outer },
    };
    let trial = Joint { interference: joint.diameter * 1e-4, ..*joint };
    let more = (Joint { outer, ..trial }.solve()?.pressure / trial.solve()?.pressure).value.max(1.0);
    let up = |(low, high): (f64, f64)| (low, high * more);
    Ok(ShapeFactor {
        force: up(factor.force),
        pressure: up(factor.pressure),
        closing: up(factor.closing),
        known: HowNear::Bounds,
        ..factor
    })
}

/// Two rings of equal width, for which the plane formula is exact; friction adds less than a hundredth.
fn equal_width() -> ShapeFactor {
    let one = (1.0, 1.0);
    ShapeFactor { force: one, pressure: one, closing: one, at_shoulder: None, wall: None, known: HowNear::Exact }
}

/// A shaft is as wide as the ring at the least, and rigid at the most: no table tells more.
fn on_shaft(joint: &Joint) -> Result<ShapeFactor, PlanError> {
    let trial = Joint { interference: joint.diameter * 1e-4, ..*joint };
    let mut rigid = trial;
    rigid.inner.elastic_modulus *= RIGID;
    let (plane, rigid) = (trial.solve()?.pressure, rigid.solve()?.pressure);
    let span = (1.0, (rigid / plane).value);
    Ok(ShapeFactor {
        force: span,
        pressure: span,
        closing: span,
        at_shoulder: None,
        wall: None,
        known: HowNear::Bounds,
    })
}

fn plain(factor: &SeatFactor) -> ShapeFactor {
    let ends = |span: Span| (span.lowest, span.highest);
    ShapeFactor {
        force: ends(factor.force),
        pressure: ends(factor.pressure),
        closing: ends(factor.closing),
        at_shoulder: factor.at_shoulder.map(ends),
        wall: None,
        known: match factor.known {
            HowKnown::Exact => HowNear::Exact,
            HowKnown::Interpolated => HowNear::Interpolated,
            HowKnown::Envelope { .. } => HowNear::Bounds,
        },
    }
}
