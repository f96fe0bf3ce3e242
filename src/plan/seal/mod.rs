//! The shaft seal beside the bearing.

mod alone;
mod demands;
mod model;
mod neighbour;
mod room;
mod steps;

pub use alone::{SealAlonePlan, plan_alone};
pub(super) use demands::source;
pub use model::{Demand, LipSpeed, Overlap, SealPlan};

use super::PlanError;
use super::model::{SeatKind, SeatPlan};
use crate::assembly::seal::{
    Allowance, CaseForce, Drain, MetalCase, RubberCover, Seating, interference, shifted_by, surface_speed,
};
use crate::job::{Job, Seal, SealBody, SealBore};
use crate::quantity::{AngularVelocity, Cases, Length, Velocity};
use crate::stock::seal_seats::{Asked, SealCase, asked};
use uom::si::length::millimeter;
use uom::si::velocity::meter_per_second;

/// By how much the driver is smaller than the bore, mm: common practice, no published source.
const DRIVER_SPARE_MM: f64 = 0.4;

/// What a seal sits beside.
pub(super) struct Beside<'s> {
    /// What goes in with it; none for a seal alone.
    pub(super) bearing: Option<&'static str>,
    /// The bearing's seat in the housing.
    pub(super) housing: Option<&'s SeatPlan>,
    /// What else stands in the bearing's bore, where the job says how deep.
    pub(super) in_bore: Vec<room::Piece>,
    /// Whether a retaining ring holds what goes in with it.
    pub(super) ring: bool,
    /// Speed of the shaft, where the seal does not state its own.
    pub(super) speed: Option<AngularVelocity>,
}

/// The seal of a job; none where the job does not give its sizes.
pub(super) fn plan(job: &Job, seats: &[SeatPlan]) -> Result<Option<SealPlan>, PlanError> {
    let beside = Beside {
        bearing: Some(job.part.kind.noun()),
        housing: seats.iter().find(|seat| seat.seat == SeatKind::Housing),
        in_bore: room::pieces(job),
        ring: job.stack.as_ref().is_some_and(|stack| stack.bed.is_some()),
        speed: job.speed,
    };
    let Some(seal) = &job.seal else { return Ok(None) };
    of(seal, &beside)
}

/// A seal beside what is given; none without its sizes.
fn of(seal: &Seal, beside: &Beside<'_>) -> Result<Option<SealPlan>, PlanError> {
    let Some(body) = seal.body.as_deref() else { return Ok(None) };
    let (bore, bore_basis) = bore(body, beside.housing);
    let row = asked(Asked::OutsideAllowance, body.case.name(), body.outside)?;
    let allowance = row.and_then(|row| row.lengths()).map(|(least, most)| Allowance { least, most });
    let interference = allowance.map(|allowance| interference(allowance, bore));
    let lip_speed = lip_speed(body.speed.or(beside.speed), seal, body)?;
    let shares_bore = matches!(body.bore, SealBore::OfBearing);
    let in_bore: &[room::Piece] = if shares_bore { &beside.in_bore } else { &[] };
    let seating = Seating {
        width: body.width,
        asked: body.depth,
        shoulder: body.shoulder,
        drain: body.drain.map(|edge| Drain { edge }),
        // What goes in after the seal stands in front of it.
        behind: if seal.fitted_first { None } else { in_bore.iter().map(|piece| piece.from).reduce(Length::min) },
        shift: body.worn_track.map(shifted_by),
    };
    let stand = seating.stand();
    let tolerance = asked(Asked::WidthTolerance, "", body.width)?.and_then(|row| row.lengths()).unwrap_or_default();
    let mut plan = SealPlan {
        name: [body.inside, body.outside, body.width].map(|size| round(size).to_string()).join("x"),
        case: body.case.name(),
        allowance,
        allowance_source: row.map(demands::source).unwrap_or_default(),
        bore,
        bore_basis,
        shaft: (body.shaft.deviations.lower.length(), body.shaft.deviations.upper.length()),
        shaft_basis: body.shaft_basis.clone(),
        shares_bore,
        interference,
        force: interference.map(|fit| force(body, fit)).transpose()?,
        reading: (stand.below_face - tolerance.1, stand.below_face - tolerance.0),
        stand,
        driver: body.outside - Length::new::<millimeter>(DRIVER_SPARE_MM),
        shift: seating.shift,
        overlaps: room::overlaps((stand.below_face - tolerance.1, stand.reached), in_bore),
        demands: demands::demands(body, lip_speed.map(|speed| speed.speed))?,
        lip_speed,
        coldest: seal.lip.coldest().temperature,
        hottest: seal.lip.hottest().temperature,
        neighbour: neighbour::neighbour(seal, beside),
        kinds: Vec::new(),
        steps: Vec::new(),
    };
    (plan.kinds, plan.steps) = steps::steps(beside, seal, body, &plan).into_iter().unzip();
    Ok(Some(plan))
}

/// Millimetres as the trade names a seal by.
fn round(size: Length) -> f64 {
    (size.get::<millimeter>() * 1e3).round() / 1e3
}

/// Limit deviations of the bore from the seal's nominal outside, and what they are.
fn bore(body: &SealBody, housing: Option<&SeatPlan>) -> ((Length, Length), String) {
    match (&body.bore, housing) {
        (SealBore::Own { limits, basis }, _) => {
            ((limits.deviations.lower.length(), limits.deviations.upper.length()), basis.clone())
        }
        (SealBore::OfBearing, Some(seat)) => {
            let of = |size: Length| size - body.outside;
            ((of(seat.outer.smallest), of(seat.outer.largest)), seat.outer.basis.clone())
        }
        (SealBore::OfBearing, None) => (Default::default(), "nominal".to_owned()),
    }
}

fn force(body: &SealBody, fit: Cases<Length>) -> Result<CaseForce, PlanError> {
    let (inside, outside, width) = (body.inside, body.outside, body.width);
    Ok(match body.case {
        SealCase::Metal => MetalCase::usual().force(inside, outside, width, fit)?,
        SealCase::Rubber => RubberCover::usual().force(inside, outside, width, fit)?,
    })
}

fn lip_speed(turning: Option<AngularVelocity>, seal: &Seal, body: &SealBody) -> Result<Option<LipSpeed>, PlanError> {
    let Some(turning) = turning else { return Ok(None) };
    let row = asked(Asked::LipSpeed, seal.lip.id(), body.inside)?;
    let velocity = Velocity::new::<meter_per_second>;
    Ok(Some(LipSpeed {
        speed: surface_speed(body.inside, turning),
        safe: row.and_then(|row| row.low).map(velocity),
        limit: row.and_then(|row| row.high).map(velocity),
    }))
}
