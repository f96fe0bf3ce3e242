//! Scatter of a plan: what share of parts drops in, and which quantity decides it.
//!
//! Sizes, temperatures, films, times and friction are drawn from their distributions. Each draw is independent, belongs to
//! a chunk, and each chunk has random numbers of its own, so that a seed gives the same result on any number of threads.
//! The core makes no threads: whoever calls it may hand it a [`Worker`] that has some.
//!
//! The temperatures of the parts are computed beforehand on a grid of their inputs and read by linear interpolation, which
//! keeps them monotone; some draws are planned directly as well, and the largest difference is part of the result.

mod chunk;
mod distribution;
mod evaluate;
mod inputs;
mod model;
mod piece;
mod prepare;
mod sensitivity;
mod share;
mod summary;
mod table;
mod worker;

pub(super) use inputs::sizes;

pub use distribution::{Distribution, DistributionError, Random};
pub use inputs::{InputKind, InputUsed};
pub use model::{Bar, Output, OutputSummary, PERCENTILES, Scatter, SeatScatter, Sensitivity};
pub use prepare::{Drawn, SeatModel};
pub use sensitivity::{Index, indices};
pub use share::Share;
pub use worker::{OneByOne, Worker};

use super::{Method, PlanError, SolvedSeats, joint};
use crate::job::Job;
use crate::quantity::Force;
use thiserror::Error;

/// Fewest and most draws.
///
/// Below a hundred a share means little; five million fill about 300 MB.
pub const DRAWS: (u64, u64) = (100, 5_000_000);

/// The seed of a scatter for which none is stated.
pub const USUAL_SEED: u64 = 1;

/// What is asked of a scatter.
#[derive(Clone, Copy, Debug)]
pub struct Request {
    /// How many parts are drawn.
    pub draws: u64,
    /// Where the random numbers begin.
    pub seed: u64,
    /// A force whose share of parts is wanted.
    pub force_limit: Option<Force>,
    /// How pressure and force are found.
    pub method: Method,
}

/// Why a job has no scatter.
#[derive(Clone, Debug, Error)]
pub enum ScatterError {
    /// Too few or too many draws.
    #[error("{asked} draws were asked for, but there must be from {} to {}", DRAWS.0, DRAWS.1)]
    Draws {
        /// How many.
        asked: u64,
    },
    /// A drawn job cannot be planned.
    #[error("a draw at the edge of its range cannot be planned: {0}")]
    Plan(#[from] PlanError),
    /// A distribution is impossible.
    #[error("{input}: {error}")]
    Distribution {
        /// Of what.
        input: String,
        /// What is wrong.
        error: DistributionError,
    },
}

impl ScatterError {
    /// What to do about it.
    pub fn help(&self) -> &'static str {
        match self {
            Self::Draws { .. } => "ask for 10000 to begin with: --draws 10000",
            Self::Plan(_) => "narrow the spread of medium or hold under [scatter]",
            Self::Distribution { .. } => "check the mean and the limits under [scatter]",
        }
    }
}

/// Draws the parts of a job.
///
/// # Errors
/// [`ScatterError`] for a number of draws outside [`DRAWS`], a mean outside its limits, and draws that cannot be planned.
pub fn scatter(job: &Job, request: &Request, worker: &impl Worker) -> Result<Scatter, ScatterError> {
    scatter_among(job, request, &SolvedSeats::default(), worker)
}

/// Draws the parts of a job that has been planned with these sections, so that none is solved twice.
///
/// # Errors
/// As for [`scatter`].
pub fn scatter_among(
    job: &Job,
    request: &Request,
    solved: &SolvedSeats,
    worker: &impl Worker,
) -> Result<Scatter, ScatterError> {
    if !(DRAWS.0..=DRAWS.1).contains(&request.draws) {
        return Err(ScatterError::Draws { asked: request.draws });
    }
    let joints = joint::joints(job)?;
    let seats = joints.iter().zip(0..).map(|(joint, number)| {
        let model = prepare::prepare(job, joint, (request.method, solved), worker)?;
        Ok(summary::seat(&model, request, number, worker))
    });
    let seats = seats.collect::<Result<Vec<_>, ScatterError>>()?;
    Ok(Scatter { draws: request.draws, seed: request.seed, seats })
}

/// The seats of a job, ready to be drawn one part at a time.
///
/// # Errors
/// As for [`scatter`].
pub fn seat_models<'j>(job: &'j Job, method: Method, worker: &impl Worker) -> Result<Vec<SeatModel<'j>>, ScatterError> {
    let joints = joint::joints(job)?;
    let solved = SolvedSeats::default();
    joints.iter().map(|joint| prepare::prepare(job, joint, (method, &solved), worker)).collect()
}
