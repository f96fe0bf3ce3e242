//! Flags of the commands that serve the shell.

use clap::{Args, ValueEnum};

#[derive(Args, Debug)]
pub(in crate::cli) struct CompletionsFlags {
    /// Which shell
    #[arg(value_enum)]
    pub(in crate::cli) shell: Shell,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct ManualFlags {
    /// A command; without it the page of the program
    pub(in crate::cli) command: Option<String>,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum Shell {
    Bash,
    Zsh,
    Fish,
    Powershell,
}

impl Shell {
    pub(in crate::cli) fn generator(self) -> clap_complete::Shell {
        match self {
            Self::Bash => clap_complete::Shell::Bash,
            Self::Zsh => clap_complete::Shell::Zsh,
            Self::Fish => clap_complete::Shell::Fish,
            Self::Powershell => clap_complete::Shell::PowerShell,
        }
    }
}
