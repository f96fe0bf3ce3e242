//! Flags in, streams and exit codes out; nothing is decided here.

mod args;
mod ask;
mod batch;
mod card;
mod command_line;
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
mod terminal;
mod usage;
mod voice;
mod working;

use args::{Arguments, Command};
use clap::FromArgMatches;
use failure::Failure;
use output::{NamedBytes, Output};
use std::ffi::OsString;
use std::path::Path;
use std::process::ExitCode;
use voice::Voice;

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
    /// The result, for standard output or the file of `-o`; none where the files are all.
    text: Option<String>,
    /// Files beside the result.
    files: Vec<NamedBytes>,
    code: u8,
}

impl Outcome {
    fn done(text: String) -> Self {
        Self { text: Some(text), files: Vec::new(), code: DONE }
    }
}

/// Runs the command line of this process.
pub fn run() -> ExitCode {
    let typed: Vec<OsString> = std::env::args_os().collect();
    let done = read(&typed).and_then(|read| match read {
        Read::Flags(arguments) => execute(&arguments),
        Read::Shown(code) => Ok(code),
    });
    match done {
        Ok(code) => ExitCode::from(code),
        Err(Failure::ReaderGone) => ExitCode::from(DONE),
        Err(failure) => {
            complain(&failure, usage::wants_json(&typed));
            ExitCode::from(FAILED)
        }
    }
}

/// What came of reading the flags.
enum Read {
    Flags(Box<Arguments>),
    /// They ask for help or the version, which has been printed, or for nothing at all.
    Shown(u8),
}

fn read(typed: &[OsString]) -> Result<Read, Failure> {
    let mut command = command_line::command().color(usage::color(typed));
    let read = command.try_get_matches_from_mut(typed).and_then(|found| Arguments::from_arg_matches(&found));
    let error = match read {
        Ok(arguments) => {
            arguments.color.apply();
            return Ok(Read::Flags(Box::new(arguments)));
        }
        Err(error) => error,
    };
    match usage::refusal(&error, typed, &command) {
        Some(failure) => Err(failure),
        None => {
            // A reader that goes away early has seen what it wanted.
            let _ = error.print();
            Ok(Read::Shown(if error.use_stderr() { FAILED } else { DONE }))
        }
    }
}

fn complain(failure: &Failure, as_json: bool) {
    let json = as_json.then(|| crate::report::refusal::json(&failure.refusals(), FAILED).ok()).flatten();
    Voice { quiet: false }.error(&json.unwrap_or_else(|| failure.render()));
}

fn execute(arguments: &Arguments) -> Result<u8, Failure> {
    let inputs = arguments.inputs();
    if inputs.iter().filter(|input| **input == Path::new("-")).count() > 1 {
        return Err(Failure::plain("standard input is named twice", "give it once, and files beside it"));
    }
    let output = Output::new(&arguments.output, inputs);
    let voice = Voice { quiet: arguments.quiet };
    let outcome = match &arguments.command {
        // A list may be longer than memory, so it writes its results as they come.
        Command::Batch(flags) if !flags.template => return batch::run(flags, &output, voice),
        Command::Ask(flags) => return ask::run(flags, &output, voice),
        command => {
            // Before the work, so that no one waits for a result that has no place. A section may be a picture a seat.
            if !matches!(command, Command::Section(_)) {
                output.may_write_text()?;
            }
            work(command, &output)?
        }
    };
    output.write_all(outcome.text.as_deref(), &outcome.files)?;
    Ok(outcome.code)
}

fn work(command: &Command, output: &Output<'_>) -> Result<Outcome, Failure> {
    match command {
        Command::Batch(_) => Ok(batch::template()),
        Command::Plan(flags) => plan::run(flags, output),
        Command::Card(flags) => card::run(flags),
        Command::Options(flags) => options::run(flags, output),
        Command::Table(flags) => table::run(flags, output),
        Command::Working(flags) => working::run(flags, output),
        Command::Sweep(flags) => sweep::run(flags, output),
        Command::Compare(flags) => compare::run(flags, output),
        Command::Deck(flags) => deck::run(flags),
        Command::Exercise(flags) => exercise::run(flags, output),
        Command::Limits(flags) => limits::run(flags, output),
        Command::Pair(flags) => pair::run(flags, output),
        Command::Materials(flags) => materials::run(flags, output),
        Command::Media(flags) => media::run(flags, output),
        Command::Schema(flags) => schema::run(flags),
        Command::New(flags) => Ok(new::run(flags)),
        Command::Log(flags) => log::run(flags, output),
        Command::Completions(flags) => Ok(command_line::completions(flags)),
        Command::Manual(flags) => command_line::manual(flags),
        Command::Section(flags) => section::run(flags, output),
        Command::Ask(_) => Err(Failure::plain("the questions are asked elsewhere", "report this")),
    }
}
