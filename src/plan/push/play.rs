//! The internal clearance of a bearing: as delivered, fitted, running.

use super::model::InternalClearancePlan;
use crate::job::{InternalPlay, Job};
use crate::mechanics::{ClearanceRange, FittedClearance, InternalClearance, temperature_loss};
use crate::plan::PlanError;
use crate::plan::model::{SeatKind, SeatPlan};
use crate::quantity::{Length, Nanometres, TemperatureInterval};
use crate::stock::dimensions::{ClearanceGroup, Raceways};
use crate::stock::iso5753;
use uom::si::f64::TemperatureCoefficient;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Step over which the expansion of the rings is taken, K.
const STEP_K: f64 = 20.0;

/// The clearance of the part, when it is a bearing whose clearance is known.
///
/// The fits are those at the temperature of the shop. A housing of light alloy that runs warm closes the ring less, so the
/// running clearance is on the safe side there.
pub(in crate::plan) fn internal_clearance(
    job: &Job,
    seats: &[SeatPlan],
) -> Result<Option<InternalClearancePlan>, PlanError> {
    let Some((play, bore)) = job.part.internal_play.as_ref().zip(job.part.bore) else { return Ok(None) };
    let lost = |kind: SeatKind| -> Option<ClearanceRange> {
        let change = seats.iter().find(|seat| seat.seat == kind)?.press.ring_change?;
        Some(ClearanceRange::of(change.loosest, change.tightest))
    };
    let (outer_ring, inner_ring) = (lost(SeatKind::Housing), lost(SeatKind::Shaft));
    let clearance = InternalClearance {
        delivered: ClearanceRange { least: play.least, most: play.most },
        outer_ring: outer_ring.unwrap_or_default(),
        inner_ring: inner_ring.unwrap_or_default(),
        temperature: warm_rings(job, play, bore)?,
    };
    let state = clearance.solve()?;
    let group = |keeps: fn(&FittedClearance) -> ClearanceRange| match keeps(&state).may_be_negative() {
        true => tightest(play, bore, &clearance, keeps),
        false => Ok(None),
    };
    let (usual_group, sure_group) = (group(|state| state.usual)?, group(|state| state.running)?);
    Ok(Some(InternalClearancePlan {
        group: play.group.map(|group| format!("{group:?}")),
        delivered: clearance.delivered,
        outer_ring,
        inner_ring,
        temperature: clearance.temperature,
        fitted: state.fitted,
        running: state.running,
        usual: state.usual,
        usual_group,
        sure_group,
        source: play.source.clone(),
    }))
}

/// What the difference of the rings takes, over its range.
fn warm_rings(job: &Job, play: &InternalPlay, bore: Length) -> Result<ClearanceRange, PlanError> {
    let Some((least, most)) = job.ring_difference else { return Ok(ClearanceRange::default()) };
    let raceways = Raceways::estimate(bore, job.part.outside, play.element)?;
    let expansion = job.part.material.expansion();
    let shop = job.bench.temperature.get::<kelvin>();
    let coefficient = (expansion.at_inside(shop + STEP_K) - expansion.at_inside(shop)) / STEP_K;
    let loss = |step: TemperatureInterval| {
        let alpha = TemperatureCoefficient::new::<per_kelvin>(coefficient);
        temperature_loss(
            alpha,
            TemperatureInterval::new::<step_kelvin>(step.get::<step_kelvin>()),
            raceways.inner,
            raceways.outer,
        )
    };
    let (least, most) = (loss(least)?, loss(most)?);
    Ok(ClearanceRange { least: least.least.min(most.least), most: least.most.max(most.most) })
}

/// The tightest looser group that keeps play, by the worst ends or as is usual.
fn tightest(
    play: &InternalPlay,
    bore: Length,
    clearance: &InternalClearance,
    keeps: fn(&FittedClearance) -> ClearanceRange,
) -> Result<Option<String>, PlanError> {
    let from = play.group.unwrap_or(ClearanceGroup::C2);
    let found = iso5753::tables()?.tightest(play.family, from, Nanometres::from_length(bore), |row| {
        let delivered = ClearanceRange { least: row.least.length(), most: row.most.length() };
        let state = InternalClearance { delivered, ..*clearance }.solve();
        state.is_ok_and(|state| !keeps(&state).may_be_negative())
    });
    Ok(found.map(|row| format!("{:?}", row.group)))
}
