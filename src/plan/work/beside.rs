//! What is read at the steps of what stands beside a seat: an axial stack, a shaft seal.

use super::blanks::kept;
use super::{Blank, Stage, StepKind, WorkStep};
use crate::job::AnyValue;
use crate::plan::seal::SealPlan;
use crate::plan::sentence::{Sentence, say};
use crate::plan::stack::{BedPlan, PairPlan, StackPlan};
use crate::quantity::{Length, Toward};

/// Places at which a depth is read, as the steps say.
const PLACES: usize = 4;

/// The steps of a seal.
pub(super) fn seal(plan: &SealPlan) -> Stage {
    let blanks = |kind: StepKind| match kind {
        StepKind::SealPress => vec![kept("highest force")],
        StepKind::SealDepth => depths(plan.reading),
        _ => Vec::new(),
    };
    Stage { title: format!("Shaft seal {}", plan.name), seat: None, steps: steps(&plan.kinds, &plan.steps, blanks) }
}

/// The steps of what stands along the axis, each time those before anything goes in and those after.
pub(super) fn stack(plan: &StackPlan) -> Vec<(Stage, Stage)> {
    plan.bed.iter().map(bed).chain(plan.pair.iter().map(pair)).collect()
}

/// The parts on a shoulder, with their ring.
fn bed(plan: &BedPlan) -> (Stage, Stage) {
    let blanks = |kind: StepKind| match kind {
        StepKind::Stack => plan.rows.iter().map(|row| read(&row.what, (row.least, row.most))).collect(),
        StepKind::Depth => plan.reading.map(depths).unwrap_or_default(),
        StepKind::Gap => vec![read("gap", plan.gap)],
        _ => Vec::new(),
    };
    split("Axial stack", steps(&plan.kinds, &plan.steps, blanks))
}

/// The first step measures, and comes before anything goes in.
fn split(title: &str, mut steps: Vec<WorkStep>) -> (Stage, Stage) {
    let after = steps.split_off(steps.len().min(1));
    let before = Stage { title: format!("{title}, measured first"), seat: None, steps };
    (before, Stage { title: title.to_owned(), seat: None, steps: after })
}

/// Two bearings with a spacer; both lengths are measured at the first step.
fn pair(plan: &PairPlan) -> (Stage, Stage) {
    let mut steps: Vec<WorkStep> = plan.steps.iter().map(|text| WorkStep::new(StepKind::Stack, text.clone())).collect();
    if let Some(first) = steps.first_mut() {
        first.blanks = vec![read("spacer", plan.spacer), read("between shoulders", plan.shoulders)];
    }
    split("Bearings and spacer", steps)
}

fn steps(kinds: &[StepKind], steps: &[Sentence], blanks: impl Fn(StepKind) -> Vec<Blank>) -> Vec<WorkStep> {
    let step =
        |(kind, text): (&StepKind, &Sentence)| WorkStep { blanks: blanks(*kind), ..WorkStep::new(*kind, text.clone()) };
    kinds.iter().zip(steps).map(step).collect()
}

fn read(what: &str, limits: (Length, Length)) -> Blank {
    Blank { what: what.to_owned(), wanted: Some(between(limits)) }
}

/// A reading at each place round; what they should be stands at the last.
fn depths(limits: (Length, Length)) -> Vec<Blank> {
    let place =
        |number: usize| Blank { what: format!("depth {number}"), wanted: (number == PLACES).then(|| between(limits)) };
    (1..=PLACES).map(place).collect()
}

fn between((least, most): (Length, Length)) -> Sentence {
    let size = |sentence: Sentence, length: Length| sentence.value(AnyValue::Size(length), Toward::Nearest);
    size(size(say(""), least).text(" to "), most)
}
