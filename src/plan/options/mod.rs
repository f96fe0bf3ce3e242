//! Every sensible way to fit a part with what the shop has, each at its mildest setting and shortest hold, ranked.
//!
//! A way chills the inner part, warms the outer one, does both, or neither. Its setting and its holds are whole shop
//! figures: 5 °C steps, and minutes that one sets on a clock. Both are found by bisection, because a hotter outer part, and
//! a longer time in the medium, never give less clearance on arrival. What counts is always the tightest case.

mod aim;
mod grid;
mod map;
mod model;
mod rank;
mod solve;
mod suits;
mod trial;

pub use aim::{Aim, DRAWN_PARTS, Odds, SHARES};
pub use map::{Mark, WaysMap};
pub use model::{Outcome, SeatWays, Used, Way, Worked};
pub use rank::RULE;

pub(super) use grid::highest as limits_of;
pub(super) use trial::{pieces, run};

use super::model::SeatKind;
use super::scatter::{OneByOne, ScatterError, Worker};
use super::{Method, PlanError, SolvedSeats, plan_among};
use crate::job::{Job, Piece};
use crate::quantity::Time;
use crate::stock::medium::{Direction, Medium};
use aim::Drawn;
use solve::Solver;
use thiserror::Error;
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

/// Why there is no list of ways.
#[derive(Clone, Debug, Error)]
pub enum OptionsError {
    /// The fit itself cannot be planned.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// The sizes have no distribution.
    #[error(transparent)]
    Sizes(#[from] ScatterError),
    /// A share of parts that is none, or that so few drawn parts cannot judge.
    #[error("a share of {asked} % was asked for, but it must be from {} to {} %", 100.0 * SHARES.0, 100.0 * SHARES.1)]
    Share {
        /// What was asked, per cent.
        asked: f64,
    },
    /// The job has neither a housing nor a shaft.
    #[error("the job has no seat")]
    NoSeat,
}

impl OptionsError {
    /// What to do about it.
    pub fn help(&self) -> &'static str {
        match self {
            Self::Plan(error) => error.help(),
            Self::Sizes(error) => error.help(),
            Self::Share { .. } => "ask for a share such as 0.99 or \"99 %\"; without one the tightest case counts",
            Self::NoSeat => "describe the [housing] or the [shaft]",
        }
    }
}

/// Every way for each seat of a job, best first, with these media; each clears the tightest case.
///
/// The job's own treatments do not count, but what it says of a medium does: a freezer's temperature, a heater's power.
///
/// # Errors
/// [`OptionsError`] when the fit itself cannot be planned; a way that cannot be is refused with its reason.
pub fn options(job: &Job, media: &[Medium]) -> Result<Vec<SeatWays>, OptionsError> {
    options_for(job, media, Aim::TightestCase, &OneByOne)
}

/// As [`options`], each way with the mildest setting and the shortest hold that meet an aim.
///
/// The result does not depend on who works.
///
/// # Errors
/// As for [`options`]; [`OptionsError::Share`] and [`OptionsError::Sizes`] where a share cannot be judged.
pub fn options_for(job: &Job, media: &[Medium], aim: Aim, worker: &impl Worker) -> Result<Vec<SeatWays>, OptionsError> {
    [(Piece::Housing, SeatKind::Housing), (Piece::Shaft, SeatKind::Shaft)]
        .into_iter()
        .filter(|(piece, _)| match piece {
            Piece::Housing => job.housing.is_some(),
            _ => job.shaft.is_some(),
        })
        .filter_map(|(piece, seat)| job.with_seat_only(piece).map(|job| (job, seat)))
        .map(|(alone, seat)| of_seat(&alone, (seat, media), aim, worker))
        .collect()
}

/// The media that a shop has: those asked for, or else those of the job, or else every medium that is known.
pub fn media_at_hand(job: &Job, asked: &[Medium], known: &[Medium]) -> Vec<Medium> {
    let list = [asked, job.media.as_slice(), known].into_iter().find(|list| !list.is_empty()).unwrap_or_default();
    list.iter().filter(|medium| medium.direction() != Direction::Air).cloned().collect()
}

fn of_seat(
    job: &Job,
    (seat, media): (SeatKind, &[Medium]),
    aim: Aim,
    worker: &impl Worker,
) -> Result<SeatWays, OptionsError> {
    // What stops the fit as such is an error of the job, not of a way.
    let solved = SolvedSeats::default();
    plan_among(job, Method::Auto, &solved)?;
    let drawn = match aim {
        Aim::TightestCase => None,
        Aim::Share { share, seed } => Some(Drawn::new(job, seat, (share, seed))?),
    };
    let solver = Solver { job, seat, solved: &solved, drawn: drawn.as_ref() };
    let of = |direction| media.iter().filter(move |medium: &&Medium| medium.direction() == direction);
    let singles: Vec<Pair<'_>> = std::iter::once((None, None))
        .chain(of(Direction::Chill).map(|chill| (Some(chill), None)))
        .chain(of(Direction::Warm).map(|warm| (None, Some(warm))))
        .collect();
    let solve = |pairs: &[Pair<'_>]| worker.each(pairs.len(), |i| solver.solve(pairs[i].0, pairs[i].1));
    let mut ways = solve(&singles);
    let mut left_out = 0;
    let mut both: Vec<Pair<'_>> = Vec::new();
    for chill in of(Direction::Chill) {
        for warm in of(Direction::Warm) {
            match rank::worth_trying(&ways, chill, warm) {
                rank::Worth::Trying => both.push((Some(chill), Some(warm))),
                rank::Worth::GainsNothing => left_out += 1,
                rank::Worth::RefusedAlone => {}
            }
        }
    }
    ways.extend(solve(&both));
    rank::sort(&mut ways);
    let map = map::map(solver.judged(), seat, &ways)?;
    Ok(SeatWays { seat, job: job.clone(), aim, ways, left_out, map })
}

/// What chills and what warms in one way.
type Pair<'m> = (Option<&'m Medium>, Option<&'m Medium>);
