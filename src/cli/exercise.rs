use super::Outcome;
use super::args::UnitsFlag;
use super::failure::Failure;
use super::output::Output;
use crate::plan::exercise::{ExerciseLevel, exercise};
use crate::plan::scatter::USUAL_SEED;
use crate::quantity::System;
use crate::report::Layout;
use crate::report::exercise::{Form, Paper, Solution};
use crate::stock::Library;
use clap::{Args, ValueEnum};
use std::path::PathBuf;

#[derive(Args, Debug)]
pub(super) struct ExerciseFlags {
    /// What the problems are drawn from
    #[arg(long, default_value_t = USUAL_SEED)]
    seed: u64,

    /// 1: fits and the temperature that clears; 2: times, pressure, force, torque; 3: whole jobs
    #[arg(long, default_value_t = 1, value_parser = clap::value_parser!(u8).range(1..=3))]
    level: u8,

    /// How many problems
    #[arg(long, value_name = "N", default_value_t = 6, value_parser = clap::value_parser!(u8).range(1..=40))]
    problems: u8,

    /// Write the answers, with their working and the job files, to FILE
    #[arg(long, value_name = "FILE")]
    answers: Option<PathBuf>,

    /// Form of the sheet and of the answers
    #[arg(long, value_enum, default_value_t = ExerciseFormat::Text)]
    format: ExerciseFormat,

    #[command(flatten)]
    units: UnitsFlag,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum ExerciseFormat {
    Text,
    Markdown,
    Html,
    Json,
}

pub(super) fn run(flags: &ExerciseFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let level = match flags.level {
        1 => ExerciseLevel::One,
        2 => ExerciseLevel::Two,
        _ => ExerciseLevel::Three,
    };
    let drawn = exercise(flags.seed, level, usize::from(flags.problems), &Library::default())
        .map_err(|error| Failure::plain(error.to_string(), "take another --seed or another --problems"))?;
    let solution = Solution::new(&drawn).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let mut outcome = Outcome::done(written(&solution, Paper::Sheet, flags, output.columns())?);
    if let Some(path) = &flags.answers {
        outcome
            .files
            .push((path.clone(), written(&solution, Paper::Answers, flags, Layout::USUAL_COLUMNS)?.into_bytes()));
    }
    Ok(outcome)
}

fn written(solution: &Solution<'_>, paper: Paper, flags: &ExerciseFlags, columns: usize) -> Result<String, Failure> {
    let layout = Layout { system: flags.units.or(System::Metric), columns };
    let form = match flags.format {
        ExerciseFormat::Json => return solution.json(paper).map_err(Failure::unprintable),
        ExerciseFormat::Text => Form::Text,
        ExerciseFormat::Markdown => Form::Markdown,
        ExerciseFormat::Html => Form::Html,
    };
    Ok(solution.write(paper, form, layout))
}
