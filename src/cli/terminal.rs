//! How wide lines may be.

use terminal_size::{Width, terminal_size_of};

/// Columns where none are known, and bounds of what is believed.
const USUAL: usize = 100;
const NARROWEST: usize = 40;
const WIDEST: usize = 140;

/// Columns of the terminal behind standard error, or those that the environment names; none in a pipe, where nothing is wrapped.
pub(super) fn known() -> Option<usize> {
    let found = terminal_size_of(std::io::stderr()).map(|(Width(columns), _)| usize::from(columns));
    let named = || std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok());
    found.or_else(named).map(|columns| columns.clamp(NARROWEST, WIDEST))
}

/// Columns for what is laid out whether they are known or not.
pub(super) fn width() -> usize {
    known().unwrap_or(USUAL)
}
