//! A job's text with another value at one key, all else as it was typed.

use std::ops::Range;
use thiserror::Error;
use toml::de::{DeTable, DeValue};

/// Why a value cannot be put at a key.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum PutError {
    /// The key is no key.
    #[error("`{key}` is no key of a job; write it as table.key, such as warm.temperature")]
    Key {
        /// What was given.
        key: String,
    },
    /// A part of the key is a value, not a table.
    #[error("`{key}` cannot be reached: `{inside}` is a value in this job, not a table")]
    NoTable {
        /// The key.
        key: String,
        /// What is not a table.
        inside: String,
    },
    /// The place where the key would have to be added is not a plain table.
    #[error(
        "`{key}` is not in this job, and cannot be added where its table is written in one line; add it to the job"
    )]
    NoPlace {
        /// The key.
        key: String,
    },
}

/// `text` with `value` at `key`, in place of what stands there, or added to its table.
///
/// The value is written as text in quotes; one that begins with a brace or a bracket is taken as TOML. A text that is not
/// TOML comes back as it is, so that [`super::check`] says what is wrong with it.
///
/// # Errors
/// [`PutError`] when the key is no key, or has no place in this job.
///
/// # Examples
/// ```
/// let text = "[warm]\ntemperature = \"80 °C\" # of the oven\n";
/// let put = seatwise::job::put(text, "warm.temperature", "95 °C")?;
/// assert_eq!(put, "[warm]\ntemperature = \"95 °C\" # of the oven\n");
/// # Ok::<(), seatwise::job::PutError>(())
/// ```
pub fn put(text: &str, key: &str, value: &str) -> Result<String, PutError> {
    let segments: Vec<&str> = key.split('.').collect();
    if segments.iter().any(|segment| !is_bare(segment)) {
        return Err(PutError::Key { key: key.to_owned() });
    }
    let (table, errors) = DeTable::parse_recoverable(text);
    if !errors.is_empty() {
        return Ok(text.to_owned());
    }
    let value = written(value);
    Ok(match place(text, table.get_ref(), &segments)? {
        Place::Value(at) => spliced(text, at, &value),
        Place::After(at) => {
            let last = segments.last().copied().unwrap_or_default();
            spliced(text, at..at, &format!("{last} = {value}\n"))
        }
        Place::Nowhere(tables) => {
            format!("{}\n\n[{tables}]\n{} = {value}\n", text.trim_end(), segments[segments.len() - 1])
        }
    })
}

/// Every value of a job's text under its whole key, as typed, in the order of the tables; nothing of a text that is not TOML.
///
/// # Examples
/// ```
/// let typed = seatwise::job::typed("[housing]\nshoulder = { wall = \"4 mm\" }\n");
/// assert_eq!(typed, [("housing.shoulder.wall".to_owned(), "4 mm".to_owned())]);
/// ```
pub fn typed(text: &str) -> Vec<(String, String)> {
    let (table, errors) = DeTable::parse_recoverable(text);
    let mut found = Vec::new();
    if errors.is_empty() {
        collect(text, table.get_ref(), "", &mut found);
    }
    found
}

fn collect(text: &str, table: &DeTable<'_>, under: &str, found: &mut Vec<(String, String)>) {
    for (key, value) in table {
        let key = if under.is_empty() { key.get_ref().to_string() } else { format!("{under}.{}", key.get_ref()) };
        match value.get_ref() {
            DeValue::Table(inner) => collect(text, inner, &key, found),
            DeValue::String(words) => found.push((key, words.to_string())),
            _ => found.push((key, text.get(value.span()).unwrap_or_default().to_owned())),
        }
    }
}

/// Where a value goes.
enum Place {
    /// In place of this.
    Value(Range<usize>),
    /// As a line of its own from here on.
    After(usize),
    /// Into a table that the text does not have.
    Nowhere(String),
}

fn is_bare(segment: &str) -> bool {
    !segment.is_empty() && segment.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '_' | '-'))
}

fn place(text: &str, top: &DeTable<'_>, segments: &[&str]) -> Result<Place, PutError> {
    let key = segments.join(".");
    let mut table = top;
    let mut line = Some(0);
    for (depth, segment) in segments.iter().enumerate() {
        let found = table.iter().find(|(known, _)| known.get_ref() == segment);
        let last = depth + 1 == segments.len();
        match found {
            Some((_, value)) if last => return Ok(Place::Value(value.span())),
            Some((at, value)) => {
                let DeValue::Table(inner) = value.get_ref() else {
                    return Err(PutError::NoTable { key, inside: segments[..=depth].join(".") });
                };
                table = inner;
                line = after_heading(text, at.span().start);
            }
            None if last => return line.map(Place::After).ok_or(PutError::NoPlace { key }),
            None if line.is_some() => return Ok(Place::Nowhere(segments[..segments.len() - 1].join("."))),
            None => return Err(PutError::NoPlace { key }),
        }
    }
    Err(PutError::Key { key })
}

/// The beginning of the line after a heading such as `[warm]`; nothing where a table is written otherwise.
fn after_heading(text: &str, at: usize) -> Option<usize> {
    let begin = text[..at].rfind('\n').map_or(0, |newline| newline + 1);
    let end = text[at..].find('\n').map(|newline| at + newline + 1)?;
    text[begin..at].trim_start().starts_with('[').then_some(end)
}

fn spliced(text: &str, at: Range<usize>, value: &str) -> String {
    format!("{}{value}{}", &text[..at.start], &text[at.end..])
}

/// A value as TOML.
fn written(value: &str) -> String {
    if value.starts_with(['{', '[']) {
        return value.to_owned();
    }
    toml::Value::String(value.to_owned()).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    const JOB: &str =
        "title = 'Pump'\n[housing]\nbore_limits = \"N7\" # class\nshoulder = { inside = \"50 mm\" }\n[bench]\n";

    #[test]
    fn a_value_is_put_in_place_and_a_missing_one_is_added() {
        let cases = [
            ("title", "Case", "title = \"Case\"\n[housing]"),
            ("housing.bore_limits", "-3/+2 um", "bore_limits = \"-3/+2 um\" # class\n"),
            ("housing.bore_limits", "{ measured = \"62 mm\" }", "bore_limits = { measured = \"62 mm\" } # class\n"),
            ("housing.shoulder.inside", "48 mm", "{ inside = \"48 mm\" }"),
            ("housing.outside", "90 mm", "[housing]\noutside = \"90 mm\"\nbore_limits"),
            ("bench.carry", "9 s", "[bench]\ncarry = \"9 s\"\n"),
            ("warm.medium", "oven", "[bench]\n\n[warm]\nmedium = \"oven\"\n"),
            ("reference", "A \"1\"", "title = 'Pump'\n"),
        ];
        for (key, value, holds) in cases {
            let text = put(JOB, key, value).unwrap();
            assert!(text.contains(holds), "{key}: {text}");
            assert!(toml::from_str::<toml::Table>(&text).is_ok(), "{key}: {text}");
        }
    }

    #[test]
    fn a_key_without_a_place_is_refused() {
        for key in ["", "warm.", "a b", "housing.bore_limits.lower", "housing.shoulder.wall"] {
            assert!(put(JOB, key, "1").is_err(), "{key}");
        }
        assert_eq!(put("[broken", "a.b", "1").unwrap(), "[broken");
    }
}
