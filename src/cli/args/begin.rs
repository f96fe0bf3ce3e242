//! Flags of the commands with which a job begins, and of the one that looks back on it.

use super::{OwnFlags, PlanFormat, ShownFlags, UnitsFlag};
use crate::job::STARTERS;
use clap::Args;
use clap::builder::{PossibleValue, PossibleValuesParser};
use std::path::PathBuf;

#[derive(Args, Debug)]
pub(in crate::cli) struct AskFlags {
    /// Save the job in FILE when all is answered; until then the answers are kept in FILE.answers
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) save: Option<PathBuf>,

    /// Go on from the answers of a run that was interrupted
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) resume: Option<PathBuf>,

    #[command(flatten)]
    pub(in crate::cli) units: UnitsFlag,

    #[command(flatten)]
    pub(in crate::cli) own: OwnFlags,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct NewFlags {
    /// What goes in
    #[arg(value_parser = kinds())]
    pub(in crate::cli) kind: String,
}

fn kinds() -> PossibleValuesParser {
    STARTERS.map(|starter| PossibleValue::new(starter.name).help(starter.what)).into()
}

#[derive(Args, Debug)]
pub(in crate::cli) struct LogFlags {
    /// Job file in TOML; - reads standard input. Its [chill] or [warm] is what was done
    pub(in crate::cli) job: PathBuf,

    /// Readings in CSV with the heading time,part,value; - reads standard input
    pub(in crate::cli) readings: PathBuf,

    /// Draw the readings over the predicted curve into FILE, .svg or .png
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) plot: Option<PathBuf>,

    /// Write the job with the fitted film in it into FILE
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) keep: Option<PathBuf>,

    /// Write the medium with the fitted film into FILE, whose name becomes the medium's; `--medium FILE` then knows it
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) keep_medium: Option<PathBuf>,

    #[command(flatten)]
    pub(in crate::cli) shown: ShownFlags<PlanFormat>,
}
