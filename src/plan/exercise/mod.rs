//! Problems for a class: sound jobs at random, each with the questions that its plan answers.
//!
//! Levels 1 and 2 state materials with constant values and a constant film, so that closed formulas meet the plan; level 3
//! takes the library's. A job is drawn again until the answer is worth asking for, at most [`TRIES`] times.

mod constants;
mod draw;
mod fits;
mod heat;
mod material;
mod model;
mod press;
mod whole;

pub use constants::{Constants, constants};
pub use material::{CLASS_MATERIALS, ClassMaterial};
pub use model::{Answer, Case, Exercise, ExerciseError, ExerciseLevel, Problem, Properties, Question};

use super::{Method, Plan, PlanError, plan_by};
use crate::stock::Library;
use draw::Draw;

/// Most problems of an exercise.
pub const MOST_PROBLEMS: usize = 40;

/// How often a job is drawn before none is thought to exist.
pub const TRIES: u64 = 200;

/// Draws `count` problems; the same seed gives the same ones on every machine.
///
/// **Valid for** one to [`MOST_PROBLEMS`] problems.
///
/// # Errors
/// [`ExerciseError::Count`] for another number, [`ExerciseError::NoneFound`] when no sound job was drawn in [`TRIES`].
///
/// # Examples
/// ```
/// use seatwise::{plan::exercise::{ExerciseLevel, exercise}, stock::Library};
/// let library = Library::default();
/// let sheet = exercise(7, ExerciseLevel::One, 2, &library).unwrap();
/// let again = exercise(7, ExerciseLevel::One, 2, &library).unwrap();
/// assert_eq!(sheet.problems[1].cases[0].text, again.problems[1].cases[0].text);
/// ```
pub fn exercise(seed: u64, level: ExerciseLevel, count: usize, library: &Library) -> Result<Exercise, ExerciseError> {
    if count == 0 || count > MOST_PROBLEMS {
        return Err(ExerciseError::Count { count });
    }
    let problems = (0..count).map(|number| problem(seed, level, number, library)).collect::<Result<_, _>>()?;
    Ok(Exercise { seed, level, problems })
}

/// The first sound problem of its kind; kinds take turns.
fn problem(seed: u64, level: ExerciseLevel, number: usize, library: &Library) -> Result<Problem, ExerciseError> {
    let first = number as u64 * TRIES;
    for stream in first..first + TRIES {
        let draw = &mut Draw::new(seed, stream);
        let drawn = match (level, number % 3) {
            (ExerciseLevel::One, 0) => fits::of_classes(draw),
            (ExerciseLevel::One, 1) => fits::chilled(draw),
            (ExerciseLevel::One, _) => fits::warmed(draw),
            (ExerciseLevel::Two, 0 | 2) => heat::in_a_bath(draw),
            (ExerciseLevel::Two, _) => press::pressed(draw),
            (ExerciseLevel::Three, 1) => whole::bush(draw),
            (ExerciseLevel::Three, _) => whole::bearing(draw),
        };
        if let Some(problem) = drawn.checked(library) {
            return Ok(problem);
        }
    }
    Err(ExerciseError::NoneFound { seed, number: number + 1 })
}

impl Problem {
    /// The plan of each case.
    ///
    /// # Errors
    /// None in practice: a case that cannot be planned was not kept.
    pub fn plans(&self) -> Result<Vec<Plan<'_>>, PlanError> {
        self.cases.iter().map(|case| plan_by(&case.job, Method::Auto)).collect()
    }
}
