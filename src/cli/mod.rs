//! Flags in, streams and exit codes out; nothing is decided here.

mod args;
mod args_new;
mod ask;
mod batch;
mod card;
mod compare;
mod deck;
mod exercise;
mod failure;
mod input;
mod limits;
mod log;
mod materials;
mod media;
mod new;
mod options;
mod output;
mod pair;
mod plan;
mod scatter;
mod schema;
mod section;
mod spread;
mod sweep;
mod table;
mod working;

use args::{Arguments, Command};
use clap::Parser;
use failure::Failure;
use output::Output;
use std::io::Write;
use std::process::ExitCode;

/// Exit code of a run that did what was asked.
const DONE: u8 = 0;
/// Exit code of a run that could not do what was asked; nothing was written.
const FAILED: u8 = 2;
/// Exit code of a plan whose verdict is worse than `--require` asks.
const WORSE: u8 = 3;

/// Exit code of a batch some of whose rows could not be planned.
const SOME_FAILED: u8 = 4;

/// What a command leaves behind.
struct Outcome {
    /// The result, for standard output or the file of `-o`.
    text: String,
    code: u8,
}

impl Outcome {
    fn done(text: String) -> Self {
        Self { text, code: DONE }
    }
}

/// Runs the command line of this process.
pub fn run() -> ExitCode {
    let arguments = Arguments::parse();
    arguments.color.apply();
    match execute(&arguments) {
        Ok(code) => ExitCode::from(code),
        Err(Failure::ReaderGone) => ExitCode::from(DONE),
        Err(failure) => {
            // A closed standard error leaves no one to tell; the exit code still does.
            let _ = anstream::stderr().write_all(failure.render().as_bytes());
            ExitCode::from(FAILED)
        }
    }
}

fn execute(arguments: &Arguments) -> Result<u8, Failure> {
    let (outcome, output) = match &arguments.command {
        // A list may be longer than memory, so it writes its results as they come.
        Command::Batch(flags) if !flags.template => return batch::run(flags, &arguments.inputs()),
        Command::Batch(flags) => (batch::template(), &flags.output),
        Command::Plan(flags) => (plan::run(flags)?, &flags.output),
        Command::Card(flags) => (card::run(flags)?, &flags.output),
        Command::Options(flags) => (options::run(flags)?, &flags.output),
        Command::Table(flags) => (table::run(flags)?, &flags.output),
        Command::Working(flags) => (working::run(flags)?, &flags.output),
        Command::Sweep(flags) => (sweep::run(flags)?, &flags.output),
        Command::Compare(flags) => (compare::run(flags)?, &flags.output),
        Command::Section(flags) => return section::run(flags, &arguments.inputs()),
        Command::Deck(flags) => (deck::run(flags)?, &flags.output),
        Command::Exercise(flags) => (exercise::run(flags)?, &flags.output),
        Command::Limits(flags) => (limits::run(flags)?, &flags.output),
        Command::Pair(flags) => (pair::run(flags)?, &flags.output),
        Command::Materials(flags) => (materials::run(flags)?, &flags.output),
        Command::Media(flags) => (media::run(flags)?, &flags.output),
        Command::Schema(flags) => (schema::run(flags)?, &flags.output),
        Command::Ask(flags) => return ask::run(flags, &arguments.inputs()),
        Command::New(flags) => (new::run(flags), &flags.output),
        Command::Log(flags) => (log::run(flags)?, &flags.output),
    };
    Output::new(output, arguments.inputs()).write_result(outcome.text.as_bytes())?;
    Ok(outcome.code)
}
