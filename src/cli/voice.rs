//! What is said on standard error beside the result: always what went wrong, the rest unless `--quiet`.

use std::io::Write;

/// How much is said.
#[derive(Clone, Copy, Debug)]
pub(super) struct Voice {
    /// Only errors are said.
    pub(super) quiet: bool,
}

impl Voice {
    /// What only helps to follow the run.
    pub(super) fn talk(self, text: &str) {
        if !self.quiet {
            self.error(text);
        }
    }

    /// What went wrong.
    pub(super) fn error(self, text: &str) {
        // A closed standard error leaves no one to tell; the exit code and the result still do.
        let _ = anstream::stderr().write_all(text.as_bytes());
    }
}
