//! How wide lines may be.

use crate::report::Layout;
use std::io;

/// Columns where none are known, and bounds of what is believed.
const USUAL: usize = 100;
/// Columns of a terminal that tells none, as a serial line or a recorder may: common practice.
const UNTOLD: usize = 80;
const NARROWEST: usize = 40;
const WIDEST: usize = 140;

/// Columns of the terminal behind standard error, or those that the environment names; none in a pipe, where nothing is wrapped.
pub(super) fn known() -> Option<usize> {
    told(columns_of(&io::stderr())).map(|columns| columns.clamp(NARROWEST, WIDEST))
}

/// Columns for what is laid out whether they are known or not.
pub(super) fn width() -> usize {
    known().unwrap_or(USUAL)
}

/// Columns of a result on standard output: those of its terminal, or those that the environment names, and never more than what
/// reads well; the usual ones in a pipe.
pub(super) fn of_result() -> usize {
    told(columns_of(&io::stdout()))
        .map_or(Layout::USUAL_COLUMNS, |columns| columns.clamp(NARROWEST, Layout::USUAL_COLUMNS))
}

/// The columns of a terminal, else those of the environment, else the usual ones of a terminal; none where there is neither.
fn told(terminal: Option<usize>) -> Option<usize> {
    match terminal {
        Some(0) => named().or(Some(UNTOLD)),
        Some(columns) => Some(columns),
        None => named(),
    }
}

/// Columns of a terminal, whether or not it tells its rows; 0 where it does not know.
#[cfg(unix)]
fn columns_of(stream: &impl std::os::fd::AsFd) -> Option<usize> {
    let size = rustix::termios::tcgetwinsize(stream).ok()?;
    Some(usize::from(size.ws_col))
}

/// Columns of a terminal.
#[cfg(windows)]
fn columns_of(stream: &impl std::os::windows::io::AsHandle) -> Option<usize> {
    terminal_size::terminal_size_of(stream).map(|(terminal_size::Width(columns), _)| usize::from(columns))
}

/// Columns of a terminal: not known on this system.
#[cfg(not(any(unix, windows)))]
fn columns_of<T>(_: &T) -> Option<usize> {
    None
}

fn named() -> Option<usize> {
    std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok())
}

#[cfg(test)]
mod tests {
    use super::{UNTOLD, named, told};

    #[test]
    fn a_terminal_that_tells_no_columns_is_none_that_is_absent() {
        assert_eq!(told(Some(60)), Some(60));
        assert_eq!(told(Some(0)), named().or(Some(UNTOLD)));
        assert_eq!(told(None), named());
    }
}
