//! One plan of a way, with given settings and holds.

use super::model::{Worked, in_hand};
use crate::job::{Hold, Job, Piece, Treatment};
use crate::plan::caution::{Caution, Level};
use crate::plan::joint;
use crate::plan::model::{SeatKind, Verdict};
use crate::plan::seat::{self, Arrives};
use crate::plan::sentence::{Sentence, say};
use crate::plan::{Method, SolvedSeats, plan_among};
use crate::quantity::{ThermodynamicTemperature, Time};
use crate::stock::medium::{Medium, Transfer};
use std::cell::Cell;

/// A medium, how it is set, and when the piece is taken out.
#[derive(Clone, Copy)]
pub(super) struct Dose<'m> {
    pub(super) medium: &'m Medium,
    pub(super) setting: Option<ThermodynamicTemperature>,
    pub(super) hold: Hold,
}

/// Plans ways of one seat and counts them.
pub(super) struct Trials<'j> {
    pub(super) job: &'j Job,
    pub(super) seat: SeatKind,
    /// Sections that trials share.
    pub(super) solved: &'j SolvedSeats,
    pub(super) made: Cell<usize>,
}

/// The plan of a job of one seat with these treatments, or why there is none.
pub(super) fn planned(
    job: &Job,
    chill: Option<Treatment>,
    warm: Option<Treatment>,
    solved: &SolvedSeats,
) -> Result<Worked, Sentence> {
    let job = job.with_treatments(chill, warm).map_err(|error| say(error.to_string()))?;
    let mut planned = plan_among(&job, Method::Auto, solved).map_err(|error| say(error.to_string()))?;
    let (Some(seat), cautions) = (planned.seats.pop(), planned.cautions) else { return Err(say("there is no seat")) };
    let in_hand = in_hand(seat.window.tightest, job.bench.carry);
    Ok(Worked { seat, cautions, odds: None, in_hand, treatments: (job.chill, job.warm) })
}

/// The same, refused where a limit or a danger forbids it; a press that is too small is a caution, and no more.
pub(in crate::plan) fn run(
    job: &Job,
    chill: Option<Treatment>,
    warm: Option<Treatment>,
    solved: &SolvedSeats,
) -> Result<Worked, Sentence> {
    let worked = planned(job, chill, warm, solved)?;
    match forbidden(&worked).filter(|refusal| !refusal.lacks_force) {
        Some(refusal) => Err(refusal.reason),
        None => Ok(worked),
    }
}

/// Which piece is chilled and which is warmed at a seat.
pub(in crate::plan) fn pieces(seat: SeatKind) -> (Piece, Piece) {
    match seat {
        SeatKind::Housing => (Piece::Part, Piece::Housing),
        SeatKind::Shaft => (Piece::Shaft, Piece::Part),
    }
}

impl Trials<'_> {
    /// The plan with these doses, or why there is none.
    pub(super) fn run(&self, chill: Option<Dose<'_>>, warm: Option<Dose<'_>>) -> Result<Worked, Refusal> {
        self.made.set(self.made.get() + 1);
        let (inner, outer) = pieces(self.seat);
        let treatment = |piece, dose: Option<Dose<'_>>| dose.map(|dose| self.treatment(piece, dose)).transpose();
        Ok(planned(self.job, treatment(inner, chill)?, treatment(outer, warm)?, self.solved)?)
    }

    /// How the tightest case arrives with these doses: quickly found, and as in the plan of [`Self::run`].
    pub(super) fn arrives(&self, chill: Option<Dose<'_>>, warm: Option<Dose<'_>>) -> Result<Arrives, Refusal> {
        let (inner, outer) = pieces(self.seat);
        let treatment = |piece, dose: Option<Dose<'_>>| dose.map(|dose| self.treatment(piece, dose)).transpose();
        let (chill, warm) = (treatment(inner, chill)?, treatment(outer, warm)?);
        let words = |error: &dyn std::fmt::Display| say(error.to_string());
        let job = self.job.with_treatments(chill, warm).map_err(|error| words(&error))?;
        let joints = joint::joints(&job).map_err(|error| words(&error))?;
        let Some(joint) = joints.first() else { return Err(say("there is no seat").into()) };
        Ok(seat::arrives(&job, joint, self.solved).map_err(|error| words(&error))?)
    }

    fn treatment(&self, piece: Piece, dose: Dose<'_>) -> Result<Treatment, Sentence> {
        // A heater without a temperature of its own works until the piece has the temperature that is set.
        let (temperature, hold) = match (dose.medium.transfer(), dose.setting) {
            (Transfer::Power(_), Some(target)) => (None, Hold::Reaches(target)),
            _ => (dose.setting, dose.hold),
        };
        self.job.treatment_in(piece, dose.medium, temperature, hold).map_err(|error| say(error.to_string()))
    }
}

/// Why a way is refused.
pub(super) struct Refusal {
    pub(super) reason: Sentence,
    /// Whether it is nothing but the size of the press.
    pub(super) lacks_force: bool,
}

impl From<Sentence> for Refusal {
    fn from(reason: Sentence) -> Self {
        Self { reason, lacks_force: false }
    }
}

/// What forbids a plan, in its own words; a press that is too small forbids pressing.
pub(super) fn forbidden(worked: &Worked) -> Option<Refusal> {
    let too_small = |caution: &&Caution| caution.code() == "press-too-small" && worked.seat.verdict != Verdict::DropsIn;
    let forbids = |caution: &&Caution| caution.forbids() && caution.level() == Level::Danger;
    let refusal = |lacks_force| move |caution: &Caution| Refusal { reason: caution.sentence().clone(), lacks_force };
    let found = worked.cautions.iter().find(forbids).map(refusal(false));
    found.or_else(|| worked.cautions.iter().find(too_small).map(refusal(true)))
}

/// The longer of two times, of which there may be none.
pub(super) fn longest(a: Option<Time>, b: Option<Time>) -> Time {
    a.unwrap_or_default().max(b.unwrap_or_default())
}
