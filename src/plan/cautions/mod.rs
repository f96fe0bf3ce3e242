//! What can go wrong, or hurt someone. One file a family; each finding has a stable code, a level, and a source.

mod fit;
mod hazards;
mod limits;
mod model;
mod moisture;
mod reach;
mod service;
mod strength;

use super::model::SeatPlan;
use super::sentence::Sentence;
use crate::job::Job;

/// How grave a caution is, gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Someone may be killed or badly hurt, or the job must not be done so.
    Danger,
    /// Someone may be hurt, or the part spoiled.
    Warning,
    /// The job may fail.
    Caution,
    /// Worth knowing.
    Note,
}

impl Level {
    /// The signal word that every output uses.
    pub fn word(self) -> &'static str {
        match self {
            Self::Danger => "danger",
            Self::Warning => "warning",
            Self::Caution => "caution",
            Self::Note => "note",
        }
    }
}

/// A finding that the fitter must know.
#[derive(Clone, Debug, PartialEq)]
pub struct Caution {
    code: &'static str,
    level: Level,
    sentence: Sentence,
    source: String,
    forbids: bool,
}

/// Source of a rule that no text was found for.
const PRACTICE: &str = "common practice, no published source";

impl Caution {
    fn new(code: &'static str, level: Level, sentence: Sentence, source: impl Into<String>) -> Self {
        Self { code, level, sentence, source: source.into(), forbids: false }
    }

    /// The same caution as a reason that the job must not be done as planned.
    fn forbidding(mut self) -> Self {
        self.forbids = true;
        self
    }

    /// Stable code, for scripts.
    pub fn code(&self) -> &'static str {
        self.code
    }

    /// How grave it is.
    pub fn level(&self) -> Level {
        self.level
    }

    /// What is found and what to do, with quantities still to be rounded.
    pub fn sentence(&self) -> &Sentence {
        &self.sentence
    }

    /// Where the rule comes from.
    pub fn source(&self) -> &str {
        &self.source
    }

    /// Whether the job must not be done as planned.
    pub fn forbids(&self) -> bool {
        self.forbids
    }
}

/// Everything to say about a job and its planned seats, gravest first; findings of the same level keep their order.
pub(super) fn all(job: &Job, seats: &[SeatPlan]) -> Vec<Caution> {
    let mut found = Vec::new();
    for seat in seats {
        limits::of_seat(job, seat, &mut found);
        strength::of_seat(seat, &mut found);
        fit::of_seat(seat, &mut found);
        reach::of_seat(job, seat, &mut found);
        moisture::of_seat(job, seat, &mut found);
        service::of_seat(seat, &mut found);
        model::of_seat(job, seat, &mut found);
    }
    hazards::of_job(job, seats, &mut found);
    found.sort_by_key(|caution| (caution.level, !caution.forbids));
    found
}
