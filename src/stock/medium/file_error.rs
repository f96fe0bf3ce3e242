//! What can be wrong with a file of media, said so that its author can mend it.

use std::ops::Range;
use thiserror::Error;

/// Why a file of media cannot be used.
#[derive(Clone, Debug, Error, PartialEq)]
#[error("{message}")]
pub struct MediumFileError {
    pub(super) message: String,
    pub(super) span: Option<Range<usize>>,
    pub(super) allowed: Option<String>,
    /// Whether it is about how several keys go together.
    pub(super) together: bool,
}

impl MediumFileError {
    /// What is allowed, where a value lies outside or a word is none of those known.
    pub fn allowed(&self) -> Option<&str> {
        self.allowed.as_deref()
    }

    /// What to do.
    pub fn help(&self) -> &'static str {
        if self.message.contains("there is no `") {
            "write the key as `seatwise log --keep-medium` does"
        } else if self.allowed.is_some() {
            "check the number and its unit, which is the end of its key, or the word"
        } else {
            "write it as `seatwise log --keep-medium` does, one [[medium]] or several"
        }
    }

    /// The offending bytes of the text, where they are known.
    pub fn span(&self) -> Option<Range<usize>> {
        self.span.clone()
    }
}
