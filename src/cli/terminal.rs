//! How wide lines may be.

use terminal_size::{Width, terminal_size_of};

/// Columns where there is no terminal, and bounds of what is believed of one.
const USUAL: usize = 100;
const NARROWEST: usize = 40;
const WIDEST: usize = 140;

/// Columns for what is said on standard error.
pub(super) fn width() -> usize {
    let found = terminal_size_of(std::io::stderr()).map(|(Width(columns), _)| usize::from(columns));
    found.unwrap_or(USUAL).clamp(NARROWEST, WIDEST)
}
