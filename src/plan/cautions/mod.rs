//! What can go wrong, or hurt someone. One file a family; each finding has a stable code, a level, and a source.

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
mod service;
mod strength;
mod uneven_wall;

use super::caution::Caution;
use super::fasteners::FastenersPlan;
use super::inspection::InspectionPlan;
use super::model::SeatPlan;
use super::push::InternalClearancePlan;
use super::uneven_wall::UnevenWallPlan;
use crate::job::Job;

/// What a job may have beside its seats.
pub(super) struct Beside<'p> {
    pub(super) fasteners: Option<&'p FastenersPlan>,
    pub(super) inspection: Option<&'p InspectionPlan>,
    pub(super) uneven_wall: Option<&'p UnevenWallPlan>,
}

/// Everything to say about a job and its planned seats, gravest first; findings of the same level keep their order.
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
        grip::of_seat(seat, &mut found);
        moisture::of_seat(job, seat, &mut found);
        service::of_seat(job, seat, &mut found);
        model::of_seat(job, seat, &mut found);
    }
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
    found.sort_by_key(|caution| (caution.level(), !caution.forbids()));
    found
}
