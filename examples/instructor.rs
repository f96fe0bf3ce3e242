//! A sheet for the class, its answers, and the working of one plan: `cargo run --example instructor`.

use seatwise::plan::exercise::{ExerciseLevel, exercise};
use seatwise::quantity::System;
use seatwise::report::exercise::{Form, Paper, Solution};
use seatwise::report::working;
use seatwise::stock::Library;
use seatwise::{job, plan};
use std::error::Error;
use std::io::{self, Write};

/// A bush that is pressed into its housing.
const JOB: &str = include_str!("bronze-bush.toml");

fn main() -> Result<(), Box<dyn Error>> {
    papers(&mut io::stdout().lock())
}

/// Writes the three, the same for the same seed.
pub fn papers(out: &mut impl Write) -> Result<(), Box<dyn Error>> {
    let library = Library::default();
    let drawn = exercise(7, ExerciseLevel::One, 2, &library)?;
    let solution = Solution::new(&drawn)?;
    writeln!(out, "{}", solution.write(Paper::Sheet, Form::Text, System::Metric))?;
    writeln!(out, "{}", solution.write(Paper::Answers, Form::Text, System::Metric))?;
    let job = job::check(JOB, &library)?;
    let plan = plan::plan(&job)?;
    writeln!(out, "{}", working::text(&working::working(&plan, job.system), job.system))?;
    Ok(())
}
