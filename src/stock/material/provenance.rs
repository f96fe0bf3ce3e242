//! Where a number comes from and how far it may be trusted.

use std::fmt;
use std::sync::Arc;

use serde::Deserialize;

/// How a stated value was come by.
#[derive(Clone, Debug, Deserialize, Eq, PartialEq)]
#[serde(try_from = "String")]
pub enum Status {
    /// Read in a published text that was opened, whole or in part.
    Published,
    /// Recalled from a named text that was not opened.
    Memory,
    /// What the trade does; no published source.
    Practice,
    /// Derived, scaled, or taken from a similar thing; the words say which.
    Approximation(Arc<str>),
    /// The result of a calculation; the words say from what.
    Computed(Arc<str>),
    /// The user stated the value and named a source.
    Stated,
    /// The user stated the value and named no source.
    NoSourceGiven,
}

impl TryFrom<String> for Status {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let words = |after: &str| (!after.trim().is_empty()).then(|| Arc::from(after.trim()));
        match (text.as_str(), text.split_once(':')) {
            ("published text", _) => Some(Self::Published),
            ("from memory", _) => Some(Self::Memory),
            ("common practice", _) => Some(Self::Practice),
            (_, Some(("approximation", after))) => words(after).map(Self::Approximation),
            (_, Some(("computed", after))) => words(after).map(Self::Computed),
            _ => None,
        }
        .ok_or_else(|| {
            format!(
                "status is \"{text}\" but must be \"published text\", \"from memory\", \"common practice\", \
                 \"approximation: <what and why>\" or \"computed: <from what>\""
            )
        })
    }
}

impl fmt::Display for Status {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Published => f.write_str("published text"),
            Self::Memory => f.write_str("from memory"),
            Self::Practice => f.write_str("common practice"),
            Self::Approximation(words) => write!(f, "approximation: {words}"),
            Self::Computed(words) => write!(f, "computed: {words}"),
            Self::Stated => f.write_str("stated by the user"),
            Self::NoSourceGiven => f.write_str("stated by the user, no source given"),
        }
    }
}

/// Name of a standard, book, data set or practice; never empty. Its copies share the text.
#[derive(Clone, Debug, Deserialize, Eq, PartialEq)]
#[serde(try_from = "String")]
pub struct Source(Arc<str>);

impl Source {
    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for Source {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let empty = text.trim().trim_matches('.').is_empty();
        if empty {
            Err("source is empty: name the standard, book or data sheet".to_owned())
        } else {
            Ok(Self(text.into()))
        }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Source and status of one value.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Provenance {
    /// Where the value comes from.
    pub source: Source,
    /// How it was come by.
    pub status: Status,
}

impl fmt::Display for Provenance {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({})", self.source, self.status)
    }
}

impl Provenance {
    /// Of a value that a user states in a job.
    pub(crate) fn of_user(source: Option<&str>) -> Self {
        match source.and_then(|text| Source::try_from(text.to_owned()).ok()) {
            Some(source) => Self { source, status: Status::Stated },
            None => Self { source: Source("no source given".into()), status: Status::NoSourceGiven },
        }
    }

    /// Of a value that is common practice and stands in the code.
    pub(crate) fn of_practice(source: &str) -> Self {
        Self { source: Source(source.into()), status: Status::Practice }
    }

    /// Of a value that is calculated for a job by the relation `source`, from what `words` say.
    pub(crate) fn of_calculation(source: &str, words: &str) -> Self {
        Self { source: Source(source.into()), status: Status::Computed(words.into()) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_status_survives_being_printed() {
        for text in ["published text", "from memory", "common practice", "approximation: shape of copper"] {
            assert_eq!(Status::try_from(text.to_owned()).unwrap().to_string(), text);
        }
    }

    #[test]
    fn an_approximation_must_say_what_it_is() {
        for text in ["approximation", "approximation: ", "guess", "published"] {
            assert!(Status::try_from(text.to_owned()).unwrap_err().contains("approximation: <what and why>"), "{text}");
        }
    }

    #[test]
    fn a_source_of_dots_is_empty() {
        assert!(Source::try_from(" ... ".to_owned()).is_err());
    }
}
