//! Every sensible way to fit a part with what the shop has, each at its mildest setting and shortest hold, ranked.
//!
//! A way chills the inner part, warms the outer one, does both, or neither. Its setting and its holds are whole shop
//! figures: 5 °C steps, and minutes that one sets on a clock. Both are found by bisection, because a hotter outer part, and
//! a longer time in the medium, never give less clearance on arrival. What counts is always the tightest case.

mod grid;
mod model;
mod rank;
mod solve;
mod suits;
mod trial;

pub use model::{Outcome, SeatWays, Used, Way, Worked};
pub use rank::RULE;

pub(super) use grid::highest as limits_of;
pub(super) use trial::{pieces, run};

use super::model::SeatKind;
use super::{Method, PlanError, SolvedSeats, plan_among};
use crate::job::{Job, Piece};
use crate::quantity::Time;
use crate::stock::medium::{Direction, Medium};
use solve::Solver;
use uom::si::time::second;

/// Time in hand at the seat, after the way to it, from which the work is no race.
///
/// Common practice, no published source: a minute lets one put a part down, take it up again and start anew.
pub const COMFORTABLE_IN_HAND_S: f64 = 60.0;

/// Time that the part stays free once it stands in its seat, from which it can be driven home without haste.
///
/// Common practice, no published source: a bearing is pushed home in two or three seconds, and set straight once in that
/// time.
pub const COMFORTABLE_IN_SEAT_S: f64 = 10.0;

/// Most plans that are made to find one way.
pub const MOST_TRIALS: usize = 48;

/// The two comfortable times: in hand at the seat, and free in the seat.
pub fn comfortable() -> (Time, Time) {
    (Time::new::<second>(COMFORTABLE_IN_HAND_S), Time::new::<second>(COMFORTABLE_IN_SEAT_S))
}

/// Every way for each seat of a job, best first, with these media.
///
/// The job's own treatments do not count, but what it says of a medium does: a freezer's temperature, a heater's power.
///
/// # Errors
/// [`PlanError`] when the fit itself cannot be planned; a way that cannot be is refused with its reason.
pub fn options(job: &Job, media: &[Medium]) -> Result<Vec<SeatWays>, PlanError> {
    [(Piece::Housing, SeatKind::Housing), (Piece::Shaft, SeatKind::Shaft)]
        .into_iter()
        .filter(|(piece, _)| match piece {
            Piece::Housing => job.housing.is_some(),
            _ => job.shaft.is_some(),
        })
        .filter_map(|(piece, seat)| job.with_seat_only(piece).map(|job| (job, seat)))
        .map(|(alone, seat)| of_seat(&alone, seat, media))
        .collect()
}

/// The media that a shop has: those asked for, or else those of the job, or else every medium that is known.
pub fn media_at_hand(job: &Job, asked: &[Medium], known: &[Medium]) -> Vec<Medium> {
    let list = [asked, job.media.as_slice(), known].into_iter().find(|list| !list.is_empty()).unwrap_or_default();
    list.iter().filter(|medium| medium.direction() != Direction::Air).cloned().collect()
}

fn of_seat(job: &Job, seat: SeatKind, media: &[Medium]) -> Result<SeatWays, PlanError> {
    // What stops the fit as such is an error of the job, not of a way.
    let solved = SolvedSeats::default();
    plan_among(job, Method::Auto, &solved)?;
    let of = |direction| media.iter().filter(move |medium: &&Medium| medium.direction() == direction);
    let solver = Solver { job, seat, solved: &solved };
    let mut ways = vec![solver.solve(None, None)];
    ways.extend(of(Direction::Chill).map(|chill| solver.solve(Some(chill), None)));
    ways.extend(of(Direction::Warm).map(|warm| solver.solve(None, Some(warm))));
    let mut left_out = 0;
    let singles = ways.clone();
    for chill in of(Direction::Chill) {
        for warm in of(Direction::Warm) {
            match rank::worth_trying(&singles, chill, warm) {
                rank::Worth::Trying => ways.push(solver.solve(Some(chill), Some(warm))),
                rank::Worth::GainsNothing => left_out += 1,
                rank::Worth::RefusedAlone => {}
            }
        }
    }
    rank::sort(&mut ways);
    Ok(SeatWays { seat, job: job.clone(), ways, left_out })
}
