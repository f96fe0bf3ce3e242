//! Flags that several commands have.

use crate::cli::terminal;
use crate::quantity::System;
use crate::report::Layout;
use clap::Args;
use clap::ValueEnum;
use std::path::PathBuf;

#[derive(Args, Debug)]
pub(in crate::cli) struct OutputFlags {
    /// Write the result to FILE instead of standard output
    #[arg(short = 'o', long = "output", value_name = "FILE")]
    pub(in crate::cli) file: Option<PathBuf>,
    /// Write over files that exist (never over an input)
    #[arg(long)]
    pub(in crate::cli) force: bool,
}

impl OutputFlags {
    /// Columns of a text: those of the terminal, or the usual ones of a file.
    pub(in crate::cli) fn columns(&self) -> usize {
        if self.file.is_some() { Layout::USUAL_COLUMNS } else { terminal::of_result() }
    }

    /// How a text in these units is set.
    pub(in crate::cli) fn layout(&self, system: System) -> Layout {
        Layout { system, columns: self.columns() }
    }
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
