//! The shape of `seatwise.exercise/1`. Names here are relied on by other programs: more may be added, none may change.

use super::solved::{Given, Part, Solved};
use super::{Paper, level};
use crate::plan::exercise::Exercise;
use crate::quantity::Worked;
use crate::report::working::{Value, in_text};
use schemars::JsonSchema;
use serde::Serialize;

/// An exercise, or its answers.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ExerciseDocument {
    /// Always `seatwise.exercise/1`.
    pub format: &'static str,
    /// What the problems were drawn from.
    pub seed: u64,
    /// 1, 2 or 3.
    pub level: u8,
    /// Whether the answers and the job files are in it.
    pub with_answers: bool,
    /// The problems.
    pub problems: Vec<ProblemDocument>,
}

/// One problem.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ProblemDocument {
    /// From 1.
    pub number: usize,
    /// What it is about.
    pub title: String,
    /// The situation.
    pub story: String,
    /// What is supposed.
    pub supposed: Vec<&'static str>,
    /// Jobs: what is done, or may be done instead.
    pub cases: Vec<CaseDocument>,
    /// What is asked.
    pub questions: Vec<QuestionDocument>,
    /// Dangers of the jobs.
    pub dangers: Vec<String>,
}

/// One job of a problem.
#[derive(Debug, JsonSchema, Serialize)]
pub struct CaseDocument {
    /// What is done in it.
    pub label: String,
    /// Its job file, with the answers only.
    pub job: Option<String>,
    /// What is given; a later case has what it has in common with the first from there.
    pub given: Vec<GivenDocument>,
}

/// A value that is given.
#[derive(Debug, JsonSchema, Serialize)]
pub struct GivenDocument {
    /// The value.
    #[serde(flatten)]
    pub value: ValueDocument,
    /// Sources of the results that lean on it.
    pub sources: Vec<String>,
}

/// A value with all its figures.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ValueDocument {
    /// Its symbol.
    pub symbol: String,
    /// What it is.
    pub meaning: String,
    /// Where it stands in the JSON plan (JSON Pointer), or `job:` and the key under which the job states it.
    pub at: String,
    /// The value, not rounded.
    pub value: f64,
    /// Its SI unit: m, K, Pa, N, `N m`, s, kg, m2, `W/(m2 K)`, `J/(kg K)`, 1/K, or 1.
    pub unit: &'static str,
}

/// One question.
#[derive(Debug, JsonSchema, Serialize)]
pub struct QuestionDocument {
    /// Its words.
    pub words: String,
    /// The results that answer it or lead to the answer, in the order of the working; empty without the answers.
    pub answers: Vec<AnswerDocument>,
}

/// A part of an answer.
#[derive(Debug, JsonSchema, Serialize)]
pub struct AnswerDocument {
    /// The case, from 0.
    pub case: usize,
    /// Whether it was asked for; else it leads there.
    pub asked: bool,
    /// The number; null where the answer is a word.
    pub number: Option<ValueDocument>,
    /// The kind of fit or the verdict; null where the answer is a number.
    pub word: Option<WordDocument>,
}

/// An answer in words.
#[derive(Debug, JsonSchema, Serialize)]
pub struct WordDocument {
    /// `kind` of fit or `verdict`.
    pub of: &'static str,
    /// The word.
    pub word: String,
}

impl ExerciseDocument {
    pub(super) fn new(exercise: &Exercise, problems: &[Solved<'_>], paper: Paper) -> Self {
        let problems = problems.iter().enumerate();
        Self {
            format: "seatwise.exercise/1",
            seed: exercise.seed,
            level: level(exercise.level),
            with_answers: paper == Paper::Answers,
            problems: problems.map(|(place, solved)| problem(place + 1, solved, paper)).collect(),
        }
    }
}

fn problem(number: usize, solved: &Solved<'_>, paper: Paper) -> ProblemDocument {
    let answers = paper == Paper::Answers;
    let cases = solved.problem.cases.iter().zip(&solved.given).map(|(case, given)| CaseDocument {
        label: case.label.clone(),
        job: answers.then(|| case.text.clone()),
        given: given.iter().map(given_value).collect(),
    });
    let questions = solved.answers.iter().map(|answered| QuestionDocument {
        words: answered.question.words.clone(),
        answers: if answers { answered.parts.iter().map(answer).collect() } else { Vec::new() },
    });
    ProblemDocument {
        number,
        title: solved.problem.title.clone(),
        story: solved.problem.story.clone(),
        supposed: solved.problem.supposed.clone(),
        cases: cases.collect(),
        questions: questions.collect(),
        dangers: solved.dangers.clone(),
    }
}

fn given_value(given: &Given) -> GivenDocument {
    GivenDocument { value: value(&given.value), sources: given.sources.clone() }
}

fn answer(part: &Part) -> AnswerDocument {
    match part {
        Part::Worked { case, line, asked } => {
            AnswerDocument { case: *case, asked: *asked, number: Some(value(&line.result)), word: None }
        }
        Part::Again { case, value: again } => {
            AnswerDocument { case: *case, asked: true, number: Some(value(again)), word: None }
        }
        Part::Words { case, at, short, .. } => {
            let word = WordDocument { of: at, word: short.clone() };
            AnswerDocument { case: *case, asked: true, number: None, word: Some(word) }
        }
    }
}

fn value(value: &Value) -> ValueDocument {
    ValueDocument {
        symbol: in_text(value.symbol),
        meaning: value.meaning.clone(),
        at: value.at.clone(),
        value: value.amount.si(),
        unit: unit(value.amount),
    }
}

fn unit(amount: Worked) -> &'static str {
    match amount {
        Worked::Size(_) | Worked::RoughSize(_) | Worked::Small(_) => "m",
        Worked::Strain(_) | Worked::Number(_) => "1",
        Worked::Temperature(_) | Worked::Step(_) => "K",
        Worked::Modulus(_) | Worked::Pressure(_) => "Pa",
        Worked::Force(_) => "N",
        Worked::Torque(_) => "N m",
        Worked::Time(_) => "s",
        Worked::Mass(_) => "kg",
        Worked::Area(_) => "m2",
        Worked::Film(_) => "W/(m2 K)",
        Worked::HeatCapacity(_) => "J/(kg K)",
        Worked::Coefficient(_) => "1/K",
    }
}
