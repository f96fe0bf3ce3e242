//! The work in its order, as a card for the bench has it: each step with what is read at it, where to stop until something is
//! so, and what can hurt someone or spoil the part there.

mod apply;
mod beside;
mod blanks;
mod screws;

use super::inspection::CheckState;
use super::model::{Plan, SeatKind, Verdict};
use super::seal::SealAlonePlan;
use super::sentence::{Sentence, say};

/// The work of a job in its order.
#[derive(Clone, Debug)]
pub struct Work {
    /// Numbers of the cautions, from 0, that belong to no one step but must be known before the first.
    pub before: Vec<usize>,
    /// What is done, in order; empty when the job must not be done as planned.
    pub stages: Vec<Stage>,
    /// Numbers of the cautions that are worth knowing.
    pub notes: Vec<usize>,
}

/// Steps that belong together.
#[derive(Clone, Debug)]
pub struct Stage {
    /// What they do, in words.
    pub title: String,
    /// Which seat they belong to; none for what stands beside the seats.
    pub seat: Option<SeatKind>,
    /// The steps.
    pub steps: Vec<WorkStep>,
}

/// A step of the work.
#[derive(Clone, Debug)]
pub struct WorkStep {
    /// What sort of step it is.
    pub kind: StepKind,
    /// What to do, with quantities still to be rounded.
    pub text: Sentence,
    /// What was found already; none where this is not a check.
    pub found: Option<CheckState>,
    /// What must be so before the next step; none where the work goes on by itself.
    pub hold_point: Option<Sentence>,
    /// What is measured or noted.
    pub blanks: Vec<Blank>,
    /// Numbers of the cautions that apply here, from 0, gravest first.
    pub cautions: Vec<usize>,
}

/// A place to write a reading.
#[derive(Clone, Debug)]
pub struct Blank {
    /// What is read.
    pub what: String,
    /// Between what it should lie; none where it is only kept.
    pub wanted: Option<Sentence>,
}

/// What sort of step it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StepKind {
    /// Look whether it is good enough.
    Check,
    /// Clean and measure.
    Prepare,
    /// Warm the outer part.
    Warm,
    /// Chill the inner part.
    Chill,
    /// Carry it to the seat.
    Place,
    /// Push or press it home.
    Push,
    /// Look whether it sits.
    Finish,
    /// Measure what stands along the axis.
    Stack,
    /// Read how deep the bearing sits.
    Depth,
    /// Measure the gap for the retaining ring.
    Gap,
    /// Put the retaining ring in.
    Ring,
    /// Make the shaft seal ready.
    Seal,
    /// Press the shaft seal home.
    SealPress,
    /// Read how deep the shaft seal sits.
    SealDepth,
    /// Tighten the cover.
    Screws,
}

impl WorkStep {
    fn new(kind: StepKind, text: Sentence) -> Self {
        Self { kind, text, found: None, hold_point: None, blanks: Vec::new(), cautions: Vec::new() }
    }
}

impl Plan<'_> {
    /// The work in its order: checks, seats, what stands along the axis, the seal in its turn, the cover.
    pub fn work(&self) -> Work {
        let stages = if self.verdict == Verdict::DoNot { Vec::new() } else { self.stages() };
        apply::cautions(&self.cautions, stages)
    }

    fn stages(&self) -> Vec<Stage> {
        let seal_first = self.job.seal.as_ref().is_some_and(|seal| seal.fitted_first);
        let seal = self.seal.as_ref().map(beside::seal);
        let (early, late) = if seal_first { (seal, None) } else { (None, seal) };
        let mut stages: Vec<Stage> = self.checks().into_iter().chain(early).collect();
        // What a stack is made of is measured while it can still be reached.
        let stack = self.stack.as_ref().map(beside::stack).unwrap_or_default();
        let (measured, built): (Vec<Stage>, Vec<Stage>) = stack.into_iter().unzip();
        stages.extend(measured);
        stages.extend(self.seats.iter().map(|seat| Stage {
            title: format!("{} seat", capital(seat.seat.name())),
            seat: Some(seat.seat),
            steps: self.seat_steps(seat).into_iter().map(|(kind, text)| blanks::step(self, seat, kind, text)).collect(),
        }));
        stages.extend(built);
        stages.extend(late);
        stages.extend(self.fasteners.as_ref().map(screws::stage));
        stages.retain(|stage| !stage.steps.is_empty());
        stages
    }

    fn checks(&self) -> Option<Stage> {
        let inspection = self.inspection.as_ref()?;
        let steps = inspection.checks.iter().map(|check| {
            let mut text = say(format!("{}: ", capital(check.part)));
            text.words.extend(check.text.words.iter().cloned());
            WorkStep { found: Some(check.state), ..WorkStep::new(StepKind::Check, text) }
        });
        Some(Stage { title: "Before it goes together".to_owned(), seat: None, steps: steps.collect() })
    }
}

impl SealAlonePlan<'_> {
    /// The work in its order.
    pub fn work(&self) -> Work {
        apply::cautions(&self.cautions, vec![beside::seal(&self.seal)])
    }
}

fn capital(word: &str) -> String {
    let (first, rest) = word.split_at(word.chars().next().map_or(0, char::len_utf8));
    format!("{}{rest}", first.to_uppercase())
}
