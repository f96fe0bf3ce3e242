//! Runs fit, thermal and mechanics in order, judges the result, and collects what must be said of it.

mod answer;
mod caution;
mod cautions;
pub mod chart;
mod clearance;
pub mod clearance_history;
mod grip;
mod holds;
mod joint;
mod limits;
mod model;
pub mod options;
mod place;
mod pressing;
mod run;
mod seat;
mod sentence;
mod sizes;
mod soak;
mod soaking;
mod sources;
mod steps;
mod subject;
mod surroundings;
mod track;
mod verdict;

pub use caution::{Caution, Level};
pub use model::{
    AtBore, ClearsAt, ConsumedCoolant, Fit, Grip, GripTime, Member, Plan, Pressing, SeatKind, SeatPlan, ServiceFit,
    Soak, Source, Verdict, Window,
};
pub use sentence::{Sentence, Word};

use crate::fit::FitError;
use crate::job::{Job, Piece};
use crate::mechanics::MechanicsError;
use crate::thermal::ThermalError;
use thiserror::Error;

/// Why a checked job cannot be planned.
#[derive(Clone, Debug, Error)]
pub enum PlanError {
    /// A temperature cannot be reached, or lies outside a material's table.
    #[error("the {piece}: {error}")]
    Temperature {
        /// Which piece.
        piece: &'static str,
        /// What is wrong.
        error: ThermalError,
    },
    /// A thermal quantity has no answer.
    #[error("{0}")]
    Thermal(#[from] ThermalError),
    /// The smoothing of the surfaces cannot be computed.
    #[error("{0}")]
    Fit(#[from] FitError),
    /// The rings of a joint cannot be computed.
    #[error("{0}")]
    Mechanics(#[from] MechanicsError),
}

impl PlanError {
    /// The same error with the piece that it belongs to.
    fn of(self, job: &Job, piece: Piece) -> Self {
        let Self::Thermal(error) = self else { return self };
        let piece = match piece {
            Piece::Part => job.part.kind.noun(),
            Piece::Housing => "housing",
            Piece::Shaft => "shaft",
        };
        Self::Temperature { piece, error }
    }

    /// What to do about it.
    pub fn help(&self) -> &'static str {
        match self {
            Self::Temperature { .. } => "change the medium, its temperature or the hold, or choose another material",
            Self::Thermal(_) => "check the temperatures of the job against the materials (`seatwise materials ID`)",
            Self::Fit(_) => "check the roughness and the smoothing factor",
            Self::Mechanics(_) => "check the diameters and walls of the job",
        }
    }
}

/// Plans a checked job.
///
/// Every temperature history uses the end of the film range that leaves the least in hand: the slower in the medium, the
/// quicker in shop air.
///
/// # Errors
/// [`PlanError`] when a target temperature cannot be reached or lies outside a material's table.
pub fn plan(job: &Job) -> Result<Plan<'_>, PlanError> {
    let joints = joint::joints(job)?;
    let mut seats = joints.iter().map(|joint| seat::plan(job, joint)).collect::<Result<Vec<_>, _>>()?;
    let cautions = cautions::all(job, &seats);
    for seat in &mut seats {
        seat.verdict = verdict::with_cautions(seat.verdict, &cautions);
    }
    let worst = seats.iter().map(|seat| seat.verdict).max().unwrap_or(Verdict::DoNot);
    let sources = sources::of(job, &joints);
    Ok(Plan { job, verdict: worst, seats, cautions, sources })
}
