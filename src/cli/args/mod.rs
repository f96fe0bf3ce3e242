//! The command line: commands, and the flags of each.

mod begin;
mod look_up;
mod many;
mod plan;
mod shared;
mod shell;

pub(super) use begin::*;
pub(super) use look_up::*;
pub(super) use many::*;
pub(super) use plan::*;
pub(super) use shared::*;
pub(super) use shell::*;

use clap::{Parser, Subcommand};
use std::path::Path;

/// Plans how a bearing, bush or plug goes into its seat.
#[derive(Debug, Parser)]
#[command(
    version,
    about,
    after_help = "Example: seatwise plan examples/pump-case.toml --plot pump.svg\n\
                  `seatwise COMMAND --help` has an example for each command. A job file named - is standard input.\n\n\
                  Exit codes:\n  \
                  0  done\n  \
                  2  could not be done; nothing was written, and standard error says what is wrong\n  \
                  3  planned, and the verdict is worse than --require asks\n  \
                  4  a batch is done, but some of its rows could not be planned\n\n\
                  A calculation only: makers' manuals, local codes and licensed practice go before it."
)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) command: Command,

    /// Where the result goes
    #[command(flatten)]
    pub(super) output: OutputFlags,

    /// When to colour messages (NO_COLOR is respected)
    #[arg(long, global = true, value_enum, default_value_t = Color::Auto)]
    pub(super) color: Color,

    /// Say nothing on standard error but errors
    #[arg(short, long, global = true)]
    pub(super) quiet: bool,
}

impl Arguments {
    /// Files that must not be written over.
    pub(super) fn inputs(&self) -> Vec<&Path> {
        match &self.command {
            Command::Plan(flags) => flags.shown.own.files_and([&flags.job]),
            Command::Card(flags) => flags.own.files_and([&flags.job]),
            Command::Options(flags) => flags.shown.own.files_and([&flags.job]),
            Command::Table(flags) => flags.shown.own.files_and([&flags.job]),
            Command::Working(flags) => flags.shown.own.files_and([&flags.job]),
            Command::Sweep(flags) => flags.shown.own.files_and([&flags.job]),
            Command::Compare(flags) => flags.shown.own.files_and(&flags.jobs),
            Command::Batch(flags) => flags.own.files_and(&flags.list),
            Command::Section(flags) => flags.own.files_and([flags.job()]),
            Command::Deck(flags) => flags.own.files_and([&flags.job]),
            Command::Ask(flags) => flags.own.files_and(&flags.resume),
            Command::Log(flags) => flags.shown.own.files_and([&flags.job, &flags.readings]),
            Command::Materials(flags) => flags.own.files_and([]),
            Command::Media(flags) => flags.own.files_and([]),
            _ => Vec::new(),
        }
    }
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Plan a job: what to do, what to expect, what can go wrong
    #[command(after_help = "Example: seatwise plan examples/pump-case.toml --plot pump.svg")]
    Plan(PlanFlags),
    /// A card to print and take to the bench: steps, hold points, cautions where they apply, sources
    #[command(after_help = "Examples: seatwise card examples/pump-case.toml -o card.html\n          \
                      seatwise card examples/gear-cover.toml --paper letter --date 2026-03-02 -o card.html")]
    Card(CardFlags),
    /// Every sensible way to fit the part with what the shop has, ranked
    #[command(after_help = "Examples: seatwise options examples/pump-case.toml\n          \
                      seatwise options examples/iron-hub.toml --with freezer --with oven")]
    Options(OptionsFlags),
    /// A chart for the wall: how hot the outer part is against how cold the inner one is
    #[command(after_help = "Examples: seatwise table examples/pump-case.toml\n          \
                      seatwise table examples/pump-case.toml --outer \"60 °C..100 °C/5\" --format html -o chart.html")]
    Table(TableFlags),
    /// Plan a job again and again with other values at one key or two
    #[command(
        after_help = "Examples: seatwise sweep examples/pump-case.toml --over \"warm.temperature=60 °C..80 °C/5\"\n          \
                      seatwise sweep examples/pump-case.toml --over \"housing.bore_limits=M7|N7|P7\" --over \"bench.carry=10 s|60 s\""
    )]
    Sweep(SweepFlags),
    /// Plans of several jobs side by side, with what differs marked
    #[command(after_help = "Example: seatwise compare today.toml hotter.toml colder.toml")]
    Compare(CompareFlags),
    /// Plan a list of jobs, one a row
    #[command(
        after_help = "A column of the list is a key of the job file, such as bearing.designation or warm.hold;\n\
                      the README lists them. An empty cell leaves the key out; a cell in braces is taken as TOML.\n\
                      Examples: seatwise batch --template -o list.csv\n          seatwise batch list.csv -o plans.csv"
    )]
    Batch(BatchFlags),
    /// The seat in section: pressure along it, how far the ring closes, stresses; a table, or a picture with -o
    #[command(after_help = "Examples: seatwise section examples/pump-case.toml\n          \
                      seatwise section examples/pump-case.toml -o section.svg\n          \
                      seatwise section examples/pump-case.toml --at hottest --show hoop -o hot.png")]
    Section(crate::cli::section::SectionFlags),
    /// The same section as an input deck for CalculiX, to check the answer with an independent solver
    #[command(after_help = "Example: seatwise deck examples/pump-case.toml -o pump.inp, then: ccx pump")]
    Deck(crate::cli::deck::DeckFlags),
    /// The working of a plan: each result as a formula, with its numbers put in, and its source
    #[command(after_help = "Example: seatwise working examples/pump-case.toml --format html -o working.html")]
    Working(WorkingFlags),
    /// Problems for a class, drawn from a seed, with their answers on a sheet apart
    #[command(
        after_help = "The same seed gives the same sheet. Examples: seatwise exercise --seed 7 --level 1\n          \
                      seatwise exercise --seed 7 --level 2 --format html -o sheet.html --answers answers.html"
    )]
    Exercise(crate::cli::exercise::ExerciseFlags),
    /// Limits of size of a tolerance class
    #[command(after_help = "Examples: seatwise limits 62 N7\n          seatwise limits \"2.4409 in\" N7")]
    Limits(LimitsFlags),
    /// Clearance and interference of a bore and what goes into it
    #[command(
        after_help = "Examples: seatwise pair 62 N7 \"ISO 492 Normal\"\n          seatwise pair \"1.5 in\" H7 s6"
    )]
    Pair(PairFlags),
    /// List the materials, or show one with its sources
    #[command(
        after_help = "Examples: seatwise materials\n          seatwise materials bearing-steel --at \"-78.5 °C\""
    )]
    Materials(MaterialsFlags),
    /// List what chills and what warms, or show one with its limits
    #[command(after_help = "Examples: seatwise media\n          seatwise media dry-ice")]
    Media(MediaFlags),
    /// Answer questions in place of writing a job file; ends with the plan
    #[command(after_help = "Answers may come from a pipe, one a line. Example: seatwise ask --save pump.toml")]
    Ask(AskFlags),
    /// Write a job file to begin with, with a remark beside every line
    #[command(after_help = "Example: seatwise new bearing -o pump.toml")]
    New(NewFlags),
    /// Compare readings with what the plan expected, and find the film: how readily heat passes into the part
    #[command(after_help = "A row of the readings is a time since the part went into its medium, the part, and a\n\
                      temperature or a size: 5 min,bearing,-3 °C. Sizes need one more at 0 s, before it went in.\n\
                      Example: seatwise log examples/pump-case.toml readings.csv --plot log.svg")]
    Log(LogFlags),
    /// Print the JSON Schema of an output: a plan, a section, a list of ways, a sweep, an exercise and more
    #[command(after_help = "Example: seatwise schema plan -o plan.schema.json")]
    Schema(SchemaFlags),
    /// Print the script that completes commands and flags in a shell
    #[command(
        after_help = "Examples: seatwise completions bash > ~/.local/share/bash-completion/completions/seatwise\n          \
                      seatwise completions fish > ~/.config/fish/completions/seatwise.fish"
    )]
    Completions(CompletionsFlags),
    /// Print the manual page of the program or of a command
    #[command(after_help = "Examples: seatwise manual > seatwise.1\n          seatwise manual plan > seatwise-plan.1")]
    Manual(ManualFlags),
}
