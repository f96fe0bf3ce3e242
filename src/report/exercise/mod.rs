//! An exercise as a sheet for the class and as its answers, each as text, Markdown, a page to print, or JSON.
//!
//! The results, and the values that go into them, are those of each plan's working; what no result gives is what the sheet
//! gives. Nothing is computed here.

mod closed;
mod document;
#[cfg(feature = "cli")]
mod html;
mod markdown;
mod solved;
mod text;

pub use document::ExerciseDocument;

use crate::plan::exercise::{Exercise, ExerciseLevel};
use crate::plan::{Plan, PlanError};
use crate::quantity::System;
use crate::report::Layout;
use crate::report::json::pretty;
use solved::Solved;

/// What every sheet says of its jobs.
const ON_PAPER: &str = "These jobs are invented, to be worked on paper. Cold, heat and presses injure: at a bench the maker's manual, \
                        local codes and licensed practice go before any calculation.";

/// Which of the two papers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// What the class gets.
    Sheet,
    /// The same with its answers, their working, and the job files.
    Answers,
}

/// In which form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Plain text.
    Text,
    /// Markdown.
    Markdown,
    /// A page that stands alone, with its formulas in MathML; its fonts come with the feature `cli`.
    #[cfg(feature = "cli")]
    Html,
}

/// An exercise with its plans, ready to be written.
#[derive(Debug)]
pub struct Solution<'e> {
    exercise: &'e Exercise,
    plans: Vec<Vec<Plan<'e>>>,
}

impl<'e> Solution<'e> {
    /// Plans every job of an exercise.
    ///
    /// # Errors
    /// None in practice: a job that cannot be planned is not drawn.
    pub fn new(exercise: &'e Exercise) -> Result<Self, PlanError> {
        let plans = exercise.problems.iter().map(crate::plan::exercise::Problem::plans).collect::<Result<_, _>>()?;
        Ok(Self { exercise, plans })
    }

    /// One of the two papers.
    pub fn write(&self, paper: Paper, form: Form, layout: impl Into<Layout>) -> String {
        let layout = layout.into();
        let (system, problems) = (layout.system, self.solved(layout.system));
        match form {
            Form::Text => text::text(&self.title(paper), &problems, paper, layout),
            Form::Markdown => markdown::markdown(&self.title(paper), &problems, paper, system),
            #[cfg(feature = "cli")]
            Form::Html => html::html(&self.title(paper), &problems, paper, system),
        }
    }

    /// One of the two papers as a JSON object, `seatwise.exercise/1`, ending in a line feed.
    ///
    /// # Errors
    /// None in practice: every number is finite.
    pub fn json(&self, paper: Paper) -> Result<String, serde_json::Error> {
        pretty(&ExerciseDocument::new(self.exercise, &self.solved(System::Metric), paper))
    }

    fn solved(&self, system: System) -> Vec<Solved<'_>> {
        let each = self.exercise.problems.iter().zip(&self.plans);
        each.map(|(problem, plans)| Solved::new(problem, plans, system)).collect()
    }

    fn title(&self, paper: Paper) -> String {
        let what = match paper {
            Paper::Sheet => "Exercise",
            Paper::Answers => "Answers to the exercise",
        };
        format!("{what}, level {}, seed {}", level(self.exercise.level), self.exercise.seed)
    }
}

fn level(level: ExerciseLevel) -> u8 {
    match level {
        ExerciseLevel::One => 1,
        ExerciseLevel::Two => 2,
        ExerciseLevel::Three => 3,
    }
}

/// The JSON Schema of [`Solution::json`]'s object, ending in a line feed.
///
/// # Errors
/// None in practice: the schema is made from types.
pub fn schema() -> Result<String, serde_json::Error> {
    pretty(&schemars::schema_for!(ExerciseDocument))
}
