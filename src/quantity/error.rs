use std::ops::Range;
use thiserror::Error;

/// Why a text is not the quantity that was wanted, and what to write instead.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[error("{problem}\n  help: {help}")]
pub struct QuantityError {
    /// What is wrong, with the words that were typed.
    pub problem: String,
    /// What to write instead.
    pub help: String,
    /// The bytes of the text to underline.
    pub at: Range<usize>,
}

impl QuantityError {
    pub(super) fn new(at: Range<usize>, problem: impl Into<String>, help: impl Into<String>) -> Self {
        Self { problem: problem.into(), help: help.into(), at }
    }
}

/// Typed words for a message, in backticks and cut to a readable length.
pub(super) fn quoted(typed: &str) -> String {
    const LONGEST: usize = 40;
    let typed = typed.trim();
    if typed.chars().count() <= LONGEST {
        return format!("`{typed}`");
    }
    format!("`{}...`", typed.chars().take(LONGEST).collect::<String>())
}

/// A number for a message: up to ten decimals, no trailing zeros.
pub(super) fn plain(value: f64) -> String {
    let text = format!("{value:.10}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// "a", "a or b", "a, b or c".
pub(super) fn one_of(choices: &[String]) -> String {
    match choices {
        [] => String::new(),
        [only] => only.clone(),
        [rest @ .., last] => format!("{} or {last}", rest.join(", ")),
    }
}
