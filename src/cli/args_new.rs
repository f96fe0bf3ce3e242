//! Flags of the commands with which a job begins, and of the one that looks back on it.

use super::args::{OutputFlags, OwnFlags, PlanFormat, UnitsFlag};
use crate::job::STARTERS;
use clap::Args;
use clap::builder::{PossibleValue, PossibleValuesParser};
use std::path::PathBuf;

#[derive(Args, Debug)]
pub(super) struct AskFlags {
    /// Save the job in FILE when all is answered; until then the answers are kept in FILE.answers
    #[arg(long, value_name = "FILE")]
    pub(super) save: Option<PathBuf>,

    /// Go on from the answers of a run that was interrupted
    #[arg(long, value_name = "FILE")]
    pub(super) resume: Option<PathBuf>,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct NewFlags {
    /// What goes in
    #[arg(value_parser = kinds())]
    pub(super) kind: String,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

fn kinds() -> PossibleValuesParser {
    STARTERS.map(|starter| PossibleValue::new(starter.name).help(starter.what)).into()
}

#[derive(Args, Debug)]
pub(super) struct LogFlags {
    /// Job file in TOML; - reads standard input. Its [chill] or [warm] is what was done
    pub(super) job: PathBuf,

    /// Readings in CSV with the heading time,part,value; - reads standard input
    pub(super) readings: PathBuf,

    /// Form of the result
    #[arg(long, value_enum, default_value_t = PlanFormat::Text)]
    pub(super) format: PlanFormat,

    #[command(flatten)]
    pub(super) units: UnitsFlag,

    /// Draw the readings over the predicted curve into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(super) plot: Option<PathBuf>,

    /// Write the job with the fitted film in it into FILE
    #[arg(long, value_name = "FILE")]
    pub(super) keep: Option<PathBuf>,

    /// Write the medium with the fitted film into FILE, whose name becomes the medium's; `--medium FILE` then knows it
    #[arg(long, value_name = "FILE")]
    pub(super) keep_medium: Option<PathBuf>,

    #[command(flatten)]
    pub(super) own: OwnFlags,

    #[command(flatten)]
    pub(super) output: OutputFlags,
}
