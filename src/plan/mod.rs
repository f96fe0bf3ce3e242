//! Runs fit, thermal and mechanics in order, judges the result, and collects what must be said of it.

mod answer;
pub mod arrangement;
mod basis;
mod caution;
mod cautions;
pub mod chart;
mod clearance;
pub mod clearance_history;
mod dial;
pub mod drawing;
pub mod exercise;
pub mod fasteners;
mod grip;
mod histories;
mod holds;
pub mod in_section;
pub mod inspection;
mod joint;
mod limits;
mod liner;
pub mod log;
mod model;
pub mod options;
mod place;
pub mod push;
mod run;
pub mod scatter;
pub mod seal;
mod seat;
mod sentence;
mod sizes;
mod soak;
mod soaking;
mod sources;
pub mod stack;
mod steps;
mod strength;
mod subject;
mod surroundings;
mod track;
mod uneven_wall;
mod verdict;
pub mod work;

pub use basis::{Basis, PartBasis};
pub use caution::{Caution, Level};
pub(crate) use cautions::of_medium as caution_of_hazard;
pub use dial::dial_setting;
pub use liner::{FreeFrom, LinerPlan, Reserve, Reserves};
pub use model::{
    AtBore, ClearsAt, ConsumedCoolant, Driver, Fit, Grip, GripTime, Member, Plan, SeatKind, SeatPlan, ServiceFit, Soak,
    Source, Verdict, Window,
};
pub use push::SolvedSeats;
pub use sentence::{Sentence, Word};
pub use uneven_wall::{ThinSidePlan, UnevenWallPlan, WallEnd};

use crate::assembly::screws::ScrewsError;
use crate::assembly::seal::SealError;
use crate::assembly::stack::StackError;
use crate::fit::FitError;
use crate::job::{Job, Piece};
use crate::mechanics::MechanicsError;
use crate::section::SectionError;
use crate::stock::dimensions::RacewayError;
use crate::stock::iso286::TableError;
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
    /// A part is asked for in a medium, but the job puts it into none.
    #[error("the part is neither chilled nor warmed in this job")]
    Untreated,
    /// A thermal quantity has no answer.
    #[error("{0}")]
    Thermal(#[from] ThermalError),
    /// The smoothing of the surfaces cannot be computed.
    #[error("{0}")]
    Fit(#[from] FitError),
    /// An embedded table is faulty; a test rules it out for a released crate.
    #[error("{0}")]
    Table(#[from] TableError),
    /// The raceways of a bearing cannot be estimated.
    #[error("{0}")]
    Raceways(#[from] RacewayError),
    /// The section of a seat cannot be computed.
    #[error("{0}")]
    Section(#[from] SectionError),
    /// The screws of the cover cannot be computed.
    #[error("{0}")]
    Screws(#[from] ScrewsError),
    /// The shaft seal cannot be computed.
    #[error("{0}")]
    Seal(#[from] SealError),
    /// The stack of parts cannot be computed.
    #[error("{0}")]
    Stack(#[from] StackError),
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
            Self::Untreated => "add its [chill] or [warm] to the job",
            Self::Thermal(_) => "check the temperatures of the job against the materials (`seatwise materials ID`)",
            Self::Fit(_) => "check the roughness and the smoothing factor",
            Self::Section(_) => "check the sizes of the seat, or ask for the plane formula with --model plane",
            Self::Table(_) => "install the program again: its own tables are faulty",
            Self::Raceways(_) => "check the bore and the outside of the bearing",
            Self::Screws(_) => "check thread, engagement, torque and friction of the screws",
            Self::Seal(_) => "check the sizes of the seal",
            Self::Stack(_) => "check the sizes of the stack and their limits",
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
///
/// # Examples
/// ```
/// use seatwise::{job, plan::{self, Verdict}, stock::Library};
/// let text = r#"
///     [bearing]
///     designation = "6205"
///     closure = "open"
///     [housing]
///     bore_limits = "N7"
///     outside = "80 mm"
///     material = "cast-aluminium"
/// "#;
/// let job = job::check(text, &Library::default())?;
/// let plan = plan::plan(&job)?;
/// // Nothing is warmed or chilled, so the tightest pair is pressed: N7 of 52 mm is -39/-9 µm, the ring 0/-13 µm.
/// assert_eq!(plan.verdict, Verdict::Press);
/// assert!((plan.seats[0].fit.clearance.tightest.value - -39e-6).abs() < 1e-12);
/// assert!(plan.seats[0].press.force.tightest > plan.seats[0].press.force.middle);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn plan(job: &Job) -> Result<Plan<'_>, PlanError> {
    plan_by(job, Method::Auto)
}

/// How pressure and force of a seat are found.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Method {
    /// Two rings of equal width, with the bounds of seats computed beforehand: a fraction of a millisecond.
    Plane,
    /// The section of the seat: some milliseconds.
    Section,
    /// The section where the job gives the length of the seat and two rings of equal width are not exact.
    #[default]
    Auto,
}

/// Plans a checked job by a method.
///
/// # Errors
/// As for [`plan()`]; [`PlanError::Section`] when the section is asked for and cannot be divided.
///
/// Where one temperature for each piece is not enough (its time may be off by more than 5 %), or the section is asked for, the pieces that it
/// shows whole are followed in it: [`in_section::SectionHeat`].
pub fn plan_by(job: &Job, method: Method) -> Result<Plan<'_>, PlanError> {
    plan_alone(job, method, &SolvedSeats::default())
}

/// As [`plan_by()`], keeping the solved sections of the seats for what else is asked of the same job, such as a scatter.
///
/// # Errors
/// As for [`plan_by()`].
pub fn plan_alone<'j>(job: &'j Job, method: Method, solved: &SolvedSeats) -> Result<Plan<'j>, PlanError> {
    let when = match method {
        Method::Plane => in_section::When::Never,
        Method::Auto => in_section::When::Needed,
        Method::Section => in_section::When::Always,
    };
    plan_with(job, method, solved, Extent { heat: when, pages: true })
}

/// Plans a checked job as one of many, which share the sections that they have in common. Their temperatures are those of one
/// body for each piece: a history in the section takes as long as hundreds of plans.
///
/// # Errors
/// As for [`plan_by()`].
pub fn plan_among<'j>(job: &'j Job, method: Method, solved: &SolvedSeats) -> Result<Plan<'j>, PlanError> {
    plan_with(job, method, solved, Extent { heat: in_section::When::Never, pages: true })
}

/// As [`plan_among()`], for a line of a list: every number and caution of the plan, without what only a page about the one job
/// shows. The curves of clearance and force against time ([`SeatPlan::history`], [`SeatPlan::force_course`]) have no points, and the
/// list of sources is empty.
///
/// # Errors
/// As for [`plan_by()`].
pub fn plan_in_list<'j>(job: &'j Job, method: Method, solved: &SolvedSeats) -> Result<Plan<'j>, PlanError> {
    plan_with(job, method, solved, Extent { heat: in_section::When::Never, pages: false })
}

/// How much of a plan is wanted.
#[derive(Clone, Copy)]
struct Extent {
    heat: in_section::When,
    /// Whether a page will show it: its curves and its sources.
    pages: bool,
}

fn plan_with<'j>(job: &'j Job, method: Method, solved: &SolvedSeats, extent: Extent) -> Result<Plan<'j>, PlanError> {
    let joints = joint::joints(job)?;
    let mut seats =
        joints.iter().map(|joint| seat::plan(job, joint, (method, solved), extent)).collect::<Result<Vec<_>, _>>()?;
    let internal_clearance = push::internal_clearance(job, &seats)?;
    let fasteners = fasteners::fasteners(job)?;
    let inspection = inspection::inspection(job, &seats)?;
    let uneven_wall = uneven_wall::uneven_wall(job, &seats, (method, solved))?;
    let beside = cautions::Beside {
        fasteners: fasteners.as_ref(),
        inspection: inspection.as_ref(),
        uneven_wall: uneven_wall.as_ref(),
    };
    let mut seal = seal::plan(job, &seats)?;
    let mut stack = stack::plan(job, internal_clearance.as_ref())?;
    let mut cautions = cautions::all(job, &seats, internal_clearance.as_ref(), &beside);
    cautions::of_assembly(job, seal.as_ref(), stack.as_ref(), &mut cautions);
    for seat in &mut seats {
        seat.verdict = verdict::with_cautions(seat.verdict, &cautions);
    }
    let worst = seats.iter().map(|seat| seat.verdict).max().unwrap_or(Verdict::DoNot);
    if worst == Verdict::DoNot {
        // What must not be done as planned has no steps.
        seal.iter_mut().for_each(|seal| seal.steps.clear());
        stack.iter_mut().for_each(stack::StackPlan::clear_steps);
    }
    let sources = if extent.pages { sources::of(job, &joints, &seats) } else { Vec::new() };
    Ok(Plan {
        job,
        verdict: worst,
        seats,
        internal_clearance,
        seal,
        stack,
        fasteners,
        inspection,
        uneven_wall,
        cautions,
        sources,
        scatter: None,
    })
}
