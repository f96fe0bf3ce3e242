//! What can go wrong, or hurt someone. One file a family; each finding has a stable code, a level, and a source.

mod designation;
mod fit;
mod grip;
mod hazards;
mod inspection;
mod limits;
mod liner;
mod model;
mod moisture;
mod play;
mod push;
mod reach;
mod screws;
mod seal;
mod seal_place;
mod service;
mod stack;
mod strength;
mod uneven_wall;

use super::caution::Caution;
use super::fasteners::FastenersPlan;
use super::inspection::InspectionPlan;
use super::model::SeatPlan;
use super::push::InternalClearancePlan;
use super::seal::SealPlan;
use super::stack::StackPlan;
use super::uneven_wall::UnevenWallPlan;
use crate::job::{Job, Seal};
pub(crate) use hazards::of_medium;

/// What a job may have beside its seats.
pub(super) struct Beside<'p> {
    pub(super) fasteners: Option<&'p FastenersPlan>,
    pub(super) inspection: Option<&'p InspectionPlan>,
    pub(super) uneven_wall: Option<&'p UnevenWallPlan>,
}

/// Everything to say about a job and its planned seats, as [`Caution::rank`] has them; findings of the same rank keep their order.
pub(super) fn all(
    job: &Job,
    seats: &[SeatPlan],
    play: Option<&InternalClearancePlan>,
    beside: &Beside<'_>,
) -> Vec<Caution> {
    let mut found = Vec::new();
    for seat in seats {
        limits::of_seat(job, seat, &mut found);
        strength::of_seat(seat, &mut found);
        liner::of_seat(job, seat, &mut found);
        push::of_seat(job, seat, &mut found);
        fit::of_seat(seat, &mut found);
        reach::of_seat(job, seat, &mut found);
        grip::of_seat(job, seat, &mut found);
        moisture::of_seat(job, seat, &mut found);
        service::of_seat(job, seat, &mut found);
        model::of_seat(job, seat, &mut found);
    }
    designation::of_job(job, &mut found);
    if let Some(play) = play {
        play::of_job(job, play, &mut found);
    }
    if let Some(wall) = beside.uneven_wall {
        uneven_wall::of_job(wall, &mut found);
    }
    if let Some(inspection) = beside.inspection {
        inspection::of_job(job, inspection, &mut found);
    }
    if let Some(fasteners) = beside.fasteners {
        screws::of_job(fasteners, &mut found);
    }
    hazards::of_job(job, seats, &mut found);
    if let [seat] = seats {
        // There is no other seat to be taken for it.
        found.iter_mut().for_each(|caution| caution.leave_out_seat(seat.seat.name()));
    }
    found.sort_by_cached_key(Caution::rank);
    found
}

/// What to say of the shaft seal and of the stack, put among the others.
pub(super) fn of_assembly(
    job: &Job,
    seal_plan: Option<&SealPlan>,
    stack_plan: Option<&StackPlan>,
    found: &mut Vec<Caution>,
) {
    if let Some((plan, stated)) = seal_plan.zip(job.seal.as_ref()) {
        seal::of_job(job, stated, plan, found);
        seal_place::of_job(plan, found);
        hazards::of_seal(found);
    }
    if let Some(plan) = stack_plan {
        stack::of_job(plan, found);
    }
    found.sort_by_cached_key(Caution::rank);
}

/// What to say of a shaft seal that goes in alone.
pub(super) fn of_seal_alone(seal: &Seal, plan: &SealPlan) -> Vec<Caution> {
    let mut found = Vec::new();
    seal::of_seal(seal, plan, &mut found);
    seal_place::of_job(plan, &mut found);
    hazards::of_seal(&mut found);
    hazards::deferring(&mut found);
    found.sort_by_cached_key(Caution::rank);
    found
}
