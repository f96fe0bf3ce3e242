//! What an exercise holds.

use crate::job::{self, Job};
use crate::plan::{Method, Plan, plan_by};
use crate::stock::Library;
use thiserror::Error;

/// How much a problem asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExerciseLevel {
    /// A fit, and the temperature that clears it.
    One,
    /// Times, and pressure, force and torque.
    Two,
    /// A whole job.
    Three,
}

/// Problems drawn from a seed.
#[derive(Clone, Debug)]
pub struct Exercise {
    /// What they were drawn from.
    pub seed: u64,
    /// How much they ask for.
    pub level: ExerciseLevel,
    /// The problems.
    pub problems: Vec<Problem>,
}

/// One problem.
#[derive(Clone, Debug)]
pub struct Problem {
    /// What it is about.
    pub title: String,
    /// The situation; sizes and values are in the list of what is given.
    pub story: String,
    /// What is supposed, beside what the formulas say themselves.
    pub supposed: Vec<&'static str>,
    /// Jobs: what is done, or may be done instead.
    pub cases: Vec<Case>,
    /// What is asked.
    pub questions: Vec<Question>,
}

/// One job of a problem.
#[derive(Clone, Debug)]
pub struct Case {
    /// What is done in it.
    pub label: String,
    /// Its job file.
    pub text: String,
    /// The same, checked.
    pub job: Job,
    /// What its materials are.
    pub properties: Properties,
}

/// Whether the values of materials change with temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Properties {
    /// Constant: closed formulas hold.
    Constant,
    /// Those of the library.
    Library,
}

/// One question.
#[derive(Clone, Debug)]
pub struct Question {
    /// Its words.
    pub words: String,
    /// What answers it, in this order.
    pub answers: Vec<Answer>,
    /// What often goes wrong; empty where nothing stands out.
    pub slip: &'static str,
}

/// A part of an answer. A case is its place in the problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// A number of the plan, by its place below the first seat of the JSON plan.
    Number(usize, &'static str),
    /// Clearance, transition or interference fit.
    Kind(usize),
    /// The verdict.
    Verdict(usize),
}

/// Why there is no exercise.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum ExerciseError {
    /// Too many problems, or none.
    #[error("{count} problems were asked for; a sheet has 1 to {}", super::MOST_PROBLEMS)]
    Count {
        /// How many.
        count: usize,
    },
    /// No sound job was drawn.
    #[error("no sound job was drawn for problem {number} from seed {seed}; take another seed")]
    NoneFound {
        /// The seed.
        seed: u64,
        /// The problem, from 1.
        number: usize,
    },
}

/// A problem that was drawn, not checked yet.
pub(super) struct Drawn {
    pub(super) title: String,
    pub(super) story: String,
    pub(super) supposed: Vec<&'static str>,
    pub(super) cases: Vec<(String, String)>,
    pub(super) properties: Properties,
    pub(super) questions: Vec<Question>,
    /// Whether the plans of the cases are worth asking for.
    pub(super) suits: fn(&[Plan<'_>]) -> bool,
}

impl Drawn {
    /// The problem, if every job in it is sound and its answers are worth asking for.
    pub(super) fn checked(self, library: &Library) -> Option<Problem> {
        let properties = self.properties;
        let mut cases = Vec::with_capacity(self.cases.len());
        for (label, text) in self.cases {
            let job = job::check(&text, library).ok()?;
            cases.push(Case { label, text, job, properties });
        }
        let plans: Vec<Plan<'_>> =
            cases.iter().map(|case| plan_by(&case.job, Method::Auto)).collect::<Result<_, _>>().ok()?;
        let suits = (self.suits)(&plans);
        drop(plans);
        suits.then_some(Problem {
            title: self.title,
            story: self.story,
            supposed: self.supposed,
            cases,
            questions: self.questions,
        })
    }
}

/// A question.
pub(super) fn ask(words: impl Into<String>, answers: &[Answer]) -> Question {
    Question { words: words.into(), answers: answers.to_vec(), slip: "" }
}

impl Question {
    pub(super) fn with_slip(self, slip: &'static str) -> Self {
        Self { slip, ..self }
    }
}
