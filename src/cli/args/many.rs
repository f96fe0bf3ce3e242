//! Flags of the commands that make many plans.

use super::shared::{OwnFlags, PlanFormat, ShownFlags};
use crate::plan::scatter::USUAL_SEED;
use clap::Args;
use clap::ValueEnum;
use std::path::PathBuf;

#[derive(Args, Debug)]
pub(in crate::cli) struct OptionsFlags {
    /// Job file in TOML; - reads standard input. Its own [chill] and [warm] say only how a medium is set up
    pub(in crate::cli) job: PathBuf,

    /// A medium that the shop has; may be repeated. Without it those of [shop] in the job, or else all
    #[arg(long, value_name = "MEDIUM")]
    pub(in crate::cli) with: Vec<String>,

    /// Look for what lets this share of the parts drop in, "0.99" or "99 %", in place of the tightest case of the limits;
    /// their sizes scatter as [scatter] in the job says
    #[arg(long, value_name = "SHARE")]
    pub(in crate::cli) share: Option<String>,

    /// Where the random numbers of the share begin: the same seed gives the same list
    #[arg(long, value_name = "NUMBER", default_value_t = USUAL_SEED, requires = "share")]
    pub(in crate::cli) seed: u64,

    /// Show every way that can be done, not the best eight
    #[arg(long)]
    pub(in crate::cli) all: bool,

    /// Draw the ways over the temperatures of both parts, with contours of clearance, into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) plot: Option<PathBuf>,

    #[command(flatten)]
    pub(in crate::cli) shown: ShownFlags<PlanFormat>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct TableFlags {
    /// Job file in TOML; - reads standard input. Its own [chill] and [warm] say only how a medium is set up
    pub(in crate::cli) job: PathBuf,

    /// Temperatures of the housing (of the bearing, on a shaft) as it leaves the oven, "60 °C..100 °C/5" or "60 °C|80 °C"
    #[arg(long, value_name = "FROM..TO/COUNT")]
    pub(in crate::cli) outer: Option<String>,

    /// What the inner part comes from; may be repeated. Without it what [shop] has, or else freezer and dry ice
    #[arg(long, value_name = "MEDIUM")]
    pub(in crate::cli) with: Vec<String>,

    #[command(flatten)]
    pub(in crate::cli) shown: ShownFlags<TableFormat>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct SweepFlags {
    /// Job file in TOML; - reads standard input
    pub(in crate::cli) job: PathBuf,

    /// A key of the job with its values: "warm.temperature=60 °C..120 °C/7" or "housing.bore_limits=N7|P7"; once or twice
    #[arg(long, value_name = "KEY=VALUES", required = true)]
    pub(in crate::cli) over: Vec<String>,

    /// Draw clearance over the key, or contours of it over two keys, into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) plot: Option<PathBuf>,

    #[command(flatten)]
    pub(in crate::cli) shown: ShownFlags<PlanFormat>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct CompareFlags {
    /// Job files in TOML, two to six; one of them may be - for standard input
    #[arg(required = true, num_args = 2..=6)]
    pub(in crate::cli) jobs: Vec<PathBuf>,

    #[command(flatten)]
    pub(in crate::cli) shown: ShownFlags<PlanFormat>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct BatchFlags {
    /// List in CSV with a heading; commas, semicolons or tabs; - reads standard input
    #[arg(required_unless_present = "template")]
    pub(in crate::cli) list: Option<PathBuf>,

    /// Print a list to begin with
    #[arg(long, conflicts_with_all = ["list", "resume"])]
    pub(in crate::cli) template: bool,

    /// Form of the result: CSV with a row a seat, or JSON with a line a job
    #[arg(long, value_enum, default_value_t = BatchFormat::Csv)]
    pub(in crate::cli) format: BatchFormat,

    /// Go on with a run of the same list that was interrupted
    #[arg(long, requires = "file")]
    pub(in crate::cli) resume: bool,

    #[command(flatten)]
    pub(in crate::cli) own: OwnFlags,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum BatchFormat {
    Csv,
    Json,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum TableFormat {
    Text,
    Csv,
    Html,
}
