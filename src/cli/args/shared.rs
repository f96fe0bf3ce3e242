//! Flags that several commands have.

use crate::quantity::System;
use clap::Args;
use clap::ValueEnum;
use std::path::{Path, PathBuf};

#[derive(Args, Debug)]
pub(in crate::cli) struct OutputFlags {
    /// Write the result to FILE instead of standard output
    #[arg(short = 'o', long = "output", value_name = "FILE", global = true)]
    pub(in crate::cli) file: Option<PathBuf>,
    /// Write over files that exist (never over an input)
    #[arg(long, global = true)]
    pub(in crate::cli) force: bool,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct OwnFlags {
    /// Add a material from a file (see materials/_template.toml); may be repeated
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) material: Vec<PathBuf>,
    /// Add media from a file (written like materials/media.toml, or by log --keep-medium); may be repeated
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) medium: Vec<PathBuf>,
}

impl OwnFlags {
    /// Every file that is read for them.
    pub(in crate::cli) fn files(&self) -> impl Iterator<Item = &PathBuf> {
        self.material.iter().chain(&self.medium)
    }

    /// The same, and the other files that a command reads.
    pub(super) fn files_and<'a>(&'a self, more: impl IntoIterator<Item = &'a PathBuf>) -> Vec<&'a Path> {
        self.files().chain(more).map(PathBuf::as_path).collect()
    }
}

/// How the result of a job is shown, and what the job may name that is the user's own.
#[derive(Args, Debug)]
pub(in crate::cli) struct ShownFlags<F: ValueEnum + Send + Sync + 'static> {
    /// Form of the result
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: F,
    #[command(flatten)]
    pub(in crate::cli) units: UnitsFlag,
    #[command(flatten)]
    pub(in crate::cli) own: OwnFlags,
}

#[derive(Args, Clone, Copy, Debug)]
pub(in crate::cli) struct UnitsFlag {
    /// Units of the result; as the job was typed unless stated
    #[arg(long, value_enum)]
    units: Option<Units>,
}

impl UnitsFlag {
    pub(in crate::cli) fn or(self, usual: System) -> System {
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

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum PlanFormat {
    Text,
    Json,
    Csv,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum Format {
    Text,
    Json,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum Color {
    Auto,
    Always,
    Never,
}

impl Color {
    pub(in crate::cli) fn apply(self) {
        match self {
            Self::Auto => anstream::ColorChoice::Auto,
            Self::Always => anstream::ColorChoice::Always,
            Self::Never => anstream::ColorChoice::Never,
        }
        .write_global();
    }
}
