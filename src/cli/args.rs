pub(super) use super::args_new::{AskFlags, LogFlags, NewFlags};
pub(super) use super::args_shell::{CompletionsFlags, ManualFlags};
use crate::plan::Method;
use crate::plan::scatter::USUAL_SEED;
use crate::quantity::System;
use crate::report::schemas;
use clap::builder::PossibleValuesParser;
use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::{Path, PathBuf};

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
            Command::Plan(flags) => flags.own.files().chain([&flags.job]).map(PathBuf::as_path).collect(),
            Command::Card(flags) => flags.own.files().chain([&flags.job]).map(PathBuf::as_path).collect(),
            Command::Options(flags) => flags.own.files().chain([&flags.job]).map(PathBuf::as_path).collect(),
            Command::Table(flags) => flags.own.files().chain([&flags.job]).map(PathBuf::as_path).collect(),
            Command::Working(flags) => flags.own.files().chain([&flags.job]).map(PathBuf::as_path).collect(),
            Command::Sweep(flags) => flags.own.files().chain([&flags.job]).map(PathBuf::as_path).collect(),
            Command::Compare(flags) => flags.own.files().chain(&flags.jobs).map(PathBuf::as_path).collect(),
            Command::Batch(flags) => flags.own.files().chain(&flags.list).map(PathBuf::as_path).collect(),
            Command::Section(flags) => flags.own.files().chain([flags.job()]).map(PathBuf::as_path).collect(),
            Command::Deck(flags) => flags.own.files().chain([&flags.job]).map(PathBuf::as_path).collect(),
            Command::Ask(flags) => flags.own.files().chain(&flags.resume).map(PathBuf::as_path).collect(),
            Command::Log(flags) => {
                flags.own.files().chain([&flags.job, &flags.readings]).map(PathBuf::as_path).collect()
            }
            Command::Materials(flags) => flags.own.files().map(PathBuf::as_path).collect(),
            Command::Media(flags) => flags.own.files().map(PathBuf::as_path).collect(),
            _ => Vec::new(),
        }
    }

    /// Where the result goes.
    pub(super) fn output(&self) -> &OutputFlags {
        match &self.command {
            Command::Plan(flags) => &flags.output,
            Command::Card(flags) => &flags.output,
            Command::Options(flags) => &flags.output,
            Command::Table(flags) => &flags.output,
            Command::Working(flags) => &flags.output,
            Command::Sweep(flags) => &flags.output,
            Command::Compare(flags) => &flags.output,
            Command::Batch(flags) => &flags.output,
            Command::Section(flags) => &flags.output,
            Command::Deck(flags) => &flags.output,
            Command::Exercise(flags) => &flags.output,
            Command::Limits(flags) => &flags.output,
            Command::Pair(flags) => &flags.output,
            Command::Materials(flags) => &flags.output,
            Command::Media(flags) => &flags.output,
            Command::Schema(flags) => &flags.output,
            Command::Ask(flags) => &flags.output,
            Command::New(flags) => &flags.output,
            Command::Log(flags) => &flags.output,
            Command::Completions(flags) => &flags.output,
            Command::Manual(flags) => &flags.output,
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
    Section(super::section::SectionFlags),
    /// The same section as an input deck for CalculiX, to check the answer with an independent solver
    #[command(after_help = "Example: seatwise deck examples/pump-case.toml -o pump.inp, then: ccx pump")]
    Deck(super::deck::DeckFlags),
    /// The working of a plan: each result as a formula, with its numbers put in, and its source
    #[command(after_help = "Example: seatwise working examples/pump-case.toml --format html -o working.html")]
    Working(WorkingFlags),
    /// Problems for a class, drawn from a seed, with their answers on a sheet apart
    #[command(
        after_help = "The same seed gives the same bytes. Examples: seatwise exercise --seed 7 --level 1\n          \
                      seatwise exercise --seed 7 --level 2 --format html -o sheet.html --answers answers.html"
    )]
    Exercise(super::exercise::ExerciseFlags),
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
    /// Compare temperatures or sizes that were read with what the plan expected, and fit the film
    #[command(
        after_help = "A row of the readings is a time since the part went into its medium, the part, and a temperature or a\n\
                      size: 5 min,bearing,-3 °C. Sizes need one more at 0 s, before it went in.\n\
                      Example: seatwise log examples/pump-case.toml readings.csv --plot log.svg"
    )]
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

#[derive(Args, Debug)]
pub(super) struct PlanFlags {
    /// Job file in TOML; - reads standard input
    pub(super) job: PathBuf,

    /// Form of the result
    #[arg(long, value_enum, default_value_t = PlanFormat::Text)]
    pub(super) format: PlanFormat,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    /// Draw clearance against time into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(super) plot: Option<PathBuf>,

    /// How much of the text is printed: the first page, or all of it
    #[arg(long, value_enum, default_value_t = Detail::Full)]
    pub(super) detail: Detail,

    /// How pressure and force are found
    #[arg(long, value_enum, default_value_t = ModelFlag::Auto)]
    pub(super) model: ModelFlag,

    /// Draw the force of the tightest case against depth into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(super) force_plot: Option<PathBuf>,

    /// Draw the cover screws with the order in which to tighten them into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(super) screw_plot: Option<PathBuf>,

    /// Exit with 3 when the verdict is worse than this
    #[arg(long, value_enum, value_name = "VERDICT")]
    pub(super) require: Option<Required>,

    #[command(flatten)]
    pub(super) scatter: ScatterFlags,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

/// Parts drawn from the distributions of their sizes, temperatures, times and friction.
#[derive(Args, Debug)]
#[command(next_help_heading = "Scatter")]
pub(super) struct ScatterFlags {
    /// Draw so many parts, and say what share drops in and what decides it; [scatter] in the job says how they scatter
    #[arg(long, value_name = "COUNT")]
    pub(super) draws: Option<u64>,

    /// Where the random numbers begin: the same seed gives the same result
    #[arg(long, value_name = "NUMBER", default_value_t = USUAL_SEED, requires = "draws")]
    pub(super) seed: u64,

    /// Say as well what share needs no more than this force, such as "8 kN"
    #[arg(long, value_name = "FORCE", requires = "draws")]
    pub(super) force_limit: Option<String>,

    /// Draw the parts over their clearance, and what decides it, into FILE, .svg or .png
    #[arg(long, value_name = "FILE", requires = "draws")]
    pub(super) scatter_plot: Option<PathBuf>,

    /// Write mean, deviation and percentiles into FILE as CSV
    #[arg(long, value_name = "FILE", requires = "draws")]
    pub(super) scatter_csv: Option<PathBuf>,
}

/// How pressure and force of a seat are found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum ModelFlag {
    /// Two rings of equal width, with bounds for the shape of the seat
    Plane,
    /// The section of the seat, by finite elements
    Section,
    /// The section where the job gives the length of the seat
    Auto,
}

impl ModelFlag {
    pub(super) fn method(self) -> Method {
        match self {
            Self::Plane => Method::Plane,
            Self::Section => Method::Section,
            Self::Auto => Method::Auto,
        }
    }
}

/// How much of a plan's text is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Detail {
    /// What to do, the main numbers, dangers and warnings
    Short,
    /// Everything, with assumptions and sources
    Full,
}

#[derive(Args, Debug)]
pub(super) struct OptionsFlags {
    /// Job file in TOML; - reads standard input. Its own [chill] and [warm] say only how a medium is set up
    pub(super) job: PathBuf,

    /// A medium that the shop has; may be repeated. Without it those of [shop] in the job, or else all
    #[arg(long, value_name = "MEDIUM")]
    pub(super) with: Vec<String>,

    /// Look for what lets this share of the parts drop in, "0.99" or "99 %", in place of the tightest case of the limits;
    /// their sizes scatter as [scatter] in the job says
    #[arg(long, value_name = "SHARE")]
    pub(super) share: Option<String>,

    /// Where the random numbers of the share begin: the same seed gives the same list
    #[arg(long, value_name = "NUMBER", default_value_t = USUAL_SEED, requires = "share")]
    pub(super) seed: u64,

    /// Show every way that can be done, not the best eight
    #[arg(long)]
    pub(super) all: bool,

    /// Draw the ways over the temperatures of both parts, with contours of clearance, into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(super) plot: Option<PathBuf>,

    /// Form of the result
    #[arg(long, value_enum, default_value_t = PlanFormat::Text)]
    pub(super) format: PlanFormat,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct CardFlags {
    /// Job file in TOML; - reads standard input
    pub(super) job: PathBuf,

    /// Paper to print on
    #[arg(long, value_enum, default_value_t = PaperFlag::A4)]
    pub(super) paper: PaperFlag,

    /// Date on the card in place of the job's; without either a blank is left to write in
    #[arg(long, value_name = "DATE")]
    pub(super) date: Option<String>,

    /// How pressure and force are found
    #[arg(long, value_enum, default_value_t = ModelFlag::Auto)]
    pub(super) model: ModelFlag,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum PaperFlag {
    A4,
    Letter,
}

#[derive(Args, Debug)]
pub(super) struct TableFlags {
    /// Job file in TOML; - reads standard input. Its own [chill] and [warm] say only how a medium is set up
    pub(super) job: PathBuf,

    /// Temperatures of the housing (of the bearing, on a shaft) as it leaves the oven, "60 °C..100 °C/5" or "60 °C|80 °C"
    #[arg(long, value_name = "FROM..TO/COUNT")]
    pub(super) outer: Option<String>,

    /// What the inner part comes from; may be repeated. Without it what [shop] has, or else freezer and dry ice
    #[arg(long, value_name = "MEDIUM")]
    pub(super) with: Vec<String>,

    /// Form of the result
    #[arg(long, value_enum, default_value_t = TableFormat::Text)]
    pub(super) format: TableFormat,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct WorkingFlags {
    /// Job file in TOML; - reads standard input
    pub(super) job: PathBuf,

    /// Form of the result; HTML has its formulas in MathML
    #[arg(long, value_enum, default_value_t = WorkingFormat::Text)]
    pub(super) format: WorkingFormat,

    /// How pressure and force are found
    #[arg(long, value_enum, default_value_t = ModelFlag::Auto)]
    pub(super) model: ModelFlag,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum WorkingFormat {
    Text,
    Markdown,
    Html,
}

#[derive(Args, Debug)]
pub(super) struct SweepFlags {
    /// Job file in TOML; - reads standard input
    pub(super) job: PathBuf,

    /// A key of the job with its values: "warm.temperature=60 °C..120 °C/7" or "housing.bore_limits=N7|P7"; once or twice
    #[arg(long, value_name = "KEY=VALUES", required = true)]
    pub(super) over: Vec<String>,

    /// Draw clearance over the key, or contours of it over two keys, into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(super) plot: Option<PathBuf>,

    /// Form of the result
    #[arg(long, value_enum, default_value_t = PlanFormat::Text)]
    pub(super) format: PlanFormat,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct CompareFlags {
    /// Job files in TOML, two to six; one of them may be - for standard input
    #[arg(required = true, num_args = 2..=6)]
    pub(super) jobs: Vec<PathBuf>,

    /// Form of the result
    #[arg(long, value_enum, default_value_t = PlanFormat::Text)]
    pub(super) format: PlanFormat,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct BatchFlags {
    /// List in CSV with a heading; commas, semicolons or tabs; - reads standard input
    #[arg(required_unless_present = "template")]
    pub(super) list: Option<PathBuf>,

    /// Print a list to begin with
    #[arg(long, conflicts_with_all = ["list", "resume"])]
    pub(super) template: bool,

    /// Form of the result: CSV with a row a seat, or JSON with a line a job
    #[arg(long, value_enum, default_value_t = BatchFormat::Csv)]
    pub(super) format: BatchFormat,

    /// Go on with a run of the same list that was interrupted
    #[arg(long, requires = "file")]
    pub(super) resume: bool,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum BatchFormat {
    Csv,
    Json,
}

#[derive(Args, Debug)]
pub(super) struct LimitsFlags {
    /// Nominal size, in mm unless a unit is given: 62, "62 mm", "2.4409 in"
    pub(super) nominal: String,
    /// Tolerance class (N7, h6), or bearing class ("ISO 492 Normal") with --ring
    pub(super) class: String,
    /// Which ring of a bearing the class belongs to
    #[arg(long, value_enum)]
    pub(super) ring: Option<RingFlag>,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) units: UnitsFlag,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct PairFlags {
    /// Nominal size, in mm unless a unit is given: 62, "62 mm", "2.4409 in"
    pub(super) nominal: String,
    /// Class of the bore: H7, or "ISO 492 Normal" for a bearing's bore on a shaft
    pub(super) bore: String,
    /// Class of what goes in: s6, or "ISO 492 Normal" for a bearing's outside
    pub(super) inner: String,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) units: UnitsFlag,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct MaterialsFlags {
    /// Id or plain name of one material
    pub(super) name: Option<String>,
    /// Every property at this temperature
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true, requires = "name")]
    pub(super) at: Option<String>,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) own: OwnFlags,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct MediaFlags {
    /// Id or plain name of one medium
    pub(super) name: Option<String>,
    #[command(flatten)]
    pub(super) own: OwnFlags,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct SchemaFlags {
    /// Whose schema
    #[arg(value_name = "NAME", default_value = "plan", value_parser = PossibleValuesParser::new(schemas::names()))]
    pub(super) of: String,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct OutputFlags {
    /// Write the result to FILE instead of standard output
    #[arg(short = 'o', long = "output", value_name = "FILE")]
    pub(super) file: Option<PathBuf>,
    /// Write over files that exist (never over an input)
    #[arg(long)]
    pub(super) force: bool,
}

#[derive(Args, Debug)]
pub(super) struct OwnFlags {
    /// Add a material from a file (see materials/_template.toml); may be repeated
    #[arg(long, value_name = "FILE")]
    pub(super) material: Vec<PathBuf>,
    /// Add media from a file (written like materials/media.toml, or by log --keep-medium); may be repeated
    #[arg(long, value_name = "FILE")]
    pub(super) medium: Vec<PathBuf>,
}

impl OwnFlags {
    /// Every file that is read for them.
    pub(super) fn files(&self) -> impl Iterator<Item = &PathBuf> {
        self.material.iter().chain(&self.medium)
    }
}

#[derive(Args, Clone, Copy, Debug)]
pub(super) struct UnitsFlag {
    /// Units of the result; as the job was typed unless stated
    #[arg(long, value_enum)]
    units: Option<Units>,
}

impl UnitsFlag {
    pub(super) fn or(self, usual: System) -> System {
        match self.units {
            Some(Units::Metric) => System::Metric,
            Some(Units::Inch) => System::Inch,
            None => usual,
        }
    }
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum Units {
    Metric,
    Inch,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum RingFlag {
    Inner,
    Outer,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum PlanFormat {
    Text,
    Json,
    Csv,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum TableFormat {
    Text,
    Csv,
    Html,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    Text,
    Json,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum Required {
    DropsIn,
    SomeWillNot,
    Press,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum Color {
    Auto,
    Always,
    Never,
}

impl Color {
    pub(super) fn apply(self) {
        match self {
            Self::Auto => anstream::ColorChoice::Auto,
            Self::Always => anstream::ColorChoice::Always,
            Self::Never => anstream::ColorChoice::Never,
        }
        .write_global();
    }
}
