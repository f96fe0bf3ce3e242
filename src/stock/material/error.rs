//! What can be wrong with a material file, said so that its author can mend it.

use std::ops::Range;

use thiserror::Error;

/// Why a material cannot be used.
///
/// [`span`](Self::span) gives the bytes of the file to underline.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum MaterialError {
    /// The text is not TOML of the right shape: a key is missing, unknown or of the wrong kind.
    #[error("material {id}{}: {message}", section.as_ref().map(|s| format!(", section `{s}`")).unwrap_or_default())]
    Shape {
        /// Id of the material.
        id: String,
        /// Section in which the trouble lies, where it is known.
        section: Option<String>,
        /// What the TOML reader says.
        message: String,
        /// Bytes of the text.
        span: Option<Range<usize>>,
    },
    /// A value is out of its range.
    #[error("material {id}: `{property}` is {value} but must be {allowed}")]
    Value {
        /// Id of the material.
        id: String,
        /// Section and key.
        property: String,
        /// What was given.
        value: String,
        /// What is allowed.
        allowed: String,
        /// Bytes of the text.
        span: Option<Range<usize>>,
    },
    /// A table is not usable.
    #[error("material {id}: `{property}` {problem}")]
    Table {
        /// Id of the material.
        id: String,
        /// Section and key.
        property: String,
        /// What is wrong and what to do.
        problem: String,
        /// Bytes of the text.
        span: Option<Range<usize>>,
    },
}

impl MaterialError {
    /// What to do.
    pub fn help(&self) -> String {
        const TEMPLATE: &str = "materials/_template.toml shows a material";
        match self {
            Self::Shape { message, .. } if message.starts_with("there is no ") => {
                format!("write the key as it stands there: {TEMPLATE}")
            }
            Self::Shape { message, .. } if message.contains(" is none of: ") => {
                format!("write one of these words: {TEMPLATE}")
            }
            Self::Shape { .. } => format!("add or write it as shown: {TEMPLATE}"),
            Self::Value { property, .. } if property == "id" => {
                "the id is the name of the file: call it by small letters and hyphens, such as our-alloy.toml"
                    .to_owned()
            }
            Self::Value { .. } => "check the number and its unit, which is the end of its key".to_owned(),
            Self::Table { .. } => format!("check the table; {TEMPLATE}"),
        }
    }

    /// What is allowed, where a value lies outside or a word is none of those known.
    pub fn allowed(&self) -> Option<&str> {
        match self {
            Self::Value { allowed, .. } => Some(allowed),
            Self::Shape { message, .. } => {
                message.split_once(" is none of: ").and_then(|(_, known)| known.split(';').next())
            }
            Self::Table { .. } => None,
        }
    }

    /// The section of the file that the message is about; none at its top.
    pub(super) fn section(&self) -> Option<&str> {
        match self {
            Self::Shape { section, .. } => section.as_deref(),
            Self::Value { property, .. } | Self::Table { property, .. } => property.split('.').next(),
        }
    }

    /// Bytes of the file that the message is about; `None` for values that came from no file.
    pub fn span(&self) -> Option<Range<usize>> {
        match self {
            Self::Shape { span, .. } | Self::Value { span, .. } | Self::Table { span, .. } => span.clone(),
        }
    }
}

/// A name that stands for nothing known.
#[derive(Clone, Debug, Error, Eq, PartialEq)]
#[error("`{asked}` is no {what} known here{}", suggestion(nearest))]
pub struct UnknownName {
    /// Kind of thing, for the message.
    pub what: &'static str,
    /// What was asked for.
    pub asked: String,
    /// Known ids that resemble it, nearest first; may be empty.
    pub nearest: Vec<String>,
}

fn suggestion(nearest: &[String]) -> String {
    if nearest.is_empty() { String::new() } else { format!("; did you mean {}?", nearest.join(" or ")) }
}

/// An embedded data file that cannot be read; a test rules it out for a released crate.
#[derive(Clone, Debug, Error, Eq, PartialEq)]
#[error("{file}: {message}")]
pub struct DataError {
    /// File in the folder `materials`.
    pub file: &'static str,
    /// What is wrong.
    pub message: String,
}
