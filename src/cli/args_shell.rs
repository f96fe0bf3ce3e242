//! Flags of the commands that serve the shell.

use super::args::OutputFlags;
use clap::{Args, ValueEnum};

#[derive(Args, Debug)]
pub(super) struct CompletionsFlags {
    /// Which shell
    #[arg(value_enum)]
    pub(super) shell: Shell,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Args, Debug)]
pub(super) struct ManualFlags {
    /// A command; without it the page of the program
    pub(super) command: Option<String>,
    #[command(flatten)]
    pub(super) output: OutputFlags,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum Shell {
    Bash,
    Zsh,
    Fish,
    Powershell,
}

impl Shell {
    pub(super) fn generator(self) -> clap_complete::Shell {
        match self {
            Self::Bash => clap_complete::Shell::Bash,
            Self::Zsh => clap_complete::Shell::Zsh,
            Self::Fish => clap_complete::Shell::Fish,
            Self::Powershell => clap_complete::Shell::PowerShell,
        }
    }
}
