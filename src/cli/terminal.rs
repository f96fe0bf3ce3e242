//! How wide lines may be.

use crate::report::Layout;
use std::io;
use terminal_size::{Width, terminal_size_of};

/// Columns where none are known, and bounds of what is believed.
const USUAL: usize = 100;
const NARROWEST: usize = 40;
const WIDEST: usize = 140;

/// Columns of the terminal behind standard error, or those that the environment names; none in a pipe, where nothing is wrapped.
pub(super) fn known() -> Option<usize> {
    let found = terminal_size_of(io::stderr()).map(|(Width(columns), _)| usize::from(columns));
    found.or_else(named).map(|columns| columns.clamp(NARROWEST, WIDEST))
}

/// Columns for what is laid out whether they are known or not.
pub(super) fn width() -> usize {
    known().unwrap_or(USUAL)
}

/// Columns of a result on standard output: those of its terminal, or those that the environment names, and never more than what
/// reads well; the usual ones in a pipe.
pub(super) fn of_result() -> usize {
    let found = terminal_size_of(io::stdout()).map(|(Width(columns), _)| usize::from(columns));
    found.or_else(named).map_or(Layout::USUAL_COLUMNS, |columns| columns.clamp(NARROWEST, Layout::USUAL_COLUMNS))
}

fn named() -> Option<usize> {
    std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok())
}
