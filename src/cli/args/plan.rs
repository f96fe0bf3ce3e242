//! Flags of the commands that show one plan.

use super::shared::{OwnFlags, PlanFormat, ShownFlags, UnitsFlag};
use crate::plan::Method;
use crate::plan::scatter::USUAL_SEED;
use clap::Args;
use clap::ValueEnum;
use std::path::PathBuf;

#[derive(Args, Debug)]
pub(in crate::cli) struct PlanFlags {
    /// Job file in TOML; - reads standard input
    pub(in crate::cli) job: PathBuf,

    /// Draw clearance against time into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) plot: Option<PathBuf>,

    /// How much of the text is printed: the first page, or all of it
    #[arg(long, value_enum, default_value_t = Detail::Full)]
    pub(in crate::cli) detail: Detail,

    /// How pressure and force are found
    #[arg(long, value_enum, default_value_t = ModelFlag::Auto)]
    pub(in crate::cli) model: ModelFlag,

    /// Draw the force of the tightest case against depth into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) force_plot: Option<PathBuf>,

    /// Draw the cover screws with the order in which to tighten them into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) screw_plot: Option<PathBuf>,

    /// Exit with 3 when the verdict is worse than this
    #[arg(long, value_enum, value_name = "VERDICT")]
    pub(in crate::cli) require: Option<Required>,

    #[command(flatten)]
    pub(in crate::cli) shown: ShownFlags<PlanFormat>,

    #[command(flatten)]
    pub(in crate::cli) scatter: ScatterFlags,
}

/// Parts drawn from the distributions of their sizes, temperatures, times and friction.
#[derive(Args, Debug)]
#[command(next_help_heading = "Scatter")]
pub(in crate::cli) struct ScatterFlags {
    /// Draw so many parts, and say what share drops in and what decides it; [scatter] in the job says how they scatter
    #[arg(long, value_name = "COUNT")]
    pub(in crate::cli) draws: Option<u64>,

    /// Where the random numbers begin: the same seed gives the same result
    #[arg(long, value_name = "NUMBER", default_value_t = USUAL_SEED, requires = "draws")]
    pub(in crate::cli) seed: u64,

    /// Say as well what share needs no more than this force, such as "8 kN"
    #[arg(long, value_name = "FORCE", requires = "draws")]
    pub(in crate::cli) force_limit: Option<String>,

    /// Draw the parts over their clearance, and what decides it, into FILE, .svg or .png
    #[arg(long, value_name = "FILE", requires = "draws")]
    pub(in crate::cli) scatter_plot: Option<PathBuf>,

    /// Write mean, deviation and percentiles into FILE as CSV
    #[arg(long, value_name = "FILE", requires = "draws")]
    pub(in crate::cli) scatter_csv: Option<PathBuf>,
}

/// How pressure and force of a seat are found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum ModelFlag {
    /// Two rings of equal width, with bounds for the shape of the seat
    Plane,
    /// The section of the seat, by finite elements
    Section,
    /// The section where the job gives the length of the seat
    Auto,
}

impl ModelFlag {
    pub(in crate::cli) fn method(self) -> Method {
        match self {
            Self::Plane => Method::Plane,
            Self::Section => Method::Section,
            Self::Auto => Method::Auto,
        }
    }
}

/// How much of a plan's text is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum Detail {
    /// What to do, the main numbers, dangers and warnings
    Short,
    /// Everything, with assumptions and sources
    Full,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct CardFlags {
    /// Job file in TOML; - reads standard input
    pub(in crate::cli) job: PathBuf,

    /// Paper to print on
    #[arg(long, value_enum, default_value_t = PaperFlag::A4)]
    pub(in crate::cli) paper: PaperFlag,

    /// Date on the card in place of the job's; without either a blank is left to write in
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) date: Option<String>,

    /// How pressure and force are found
    #[arg(long, value_enum, default_value_t = ModelFlag::Auto)]
    pub(in crate::cli) model: ModelFlag,

    #[command(flatten)]
    pub(in crate::cli) units: UnitsFlag,

    #[command(flatten)]
    pub(in crate::cli) own: OwnFlags,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum PaperFlag {
    A4,
    Letter,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct WorkingFlags {
    /// Job file in TOML; - reads standard input
    pub(in crate::cli) job: PathBuf,

    /// How pressure and force are found
    #[arg(long, value_enum, default_value_t = ModelFlag::Auto)]
    pub(in crate::cli) model: ModelFlag,

    #[command(flatten)]
    pub(in crate::cli) shown: ShownFlags<WorkingFormat>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum WorkingFormat {
    Text,
    Markdown,
    Html,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum Required {
    DropsIn,
    SomeWillNot,
    Press,
}
