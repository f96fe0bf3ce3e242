//! Sheets for spreadsheets: what a cell holds decides how it is written, in the one place where CSV is made.

use super::json::figures;
use serde_json::Value;
use std::borrow::Cow;
use std::fmt::Write;

/// A cell.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Cell {
    /// Words, some of which a user may have typed.
    Text(String),
    /// A number, rounded to six significant figures; it may be negative.
    Number(f64),
    /// The thing does not exist.
    Nothing,
}

/// A cell with the name of its column.
pub(crate) type Named = (&'static str, Cell);

impl Cell {
    /// Words, or nothing where there are none.
    pub(crate) fn text(words: impl Into<String>) -> Self {
        let words = words.into();
        if words.is_empty() { Self::Nothing } else { Self::Text(words) }
    }

    /// A number to six figures, or nothing where there is none that is finite.
    pub(crate) fn number(value: impl Into<Option<f64>>) -> Self {
        value.into().filter(|value| value.is_finite()).map_or(Self::Nothing, |value| Self::Number(figures(value)))
    }

    /// The same in JSON: words as they were typed, null where there is nothing.
    pub(crate) fn json(&self) -> Value {
        match self {
            Self::Text(words) => Value::from(words.as_str()),
            Self::Number(number) => Value::from(*number),
            Self::Nothing => Value::Null,
        }
    }

    /// As it stands in CSV.
    #[cfg(feature = "cli")]
    pub(crate) fn as_written(&self) -> String {
        self.written(&mut String::new()).into_owned()
    }

    /// The same; `digits` is room for those of a number.
    fn written<'c>(&'c self, digits: &'c mut String) -> Cow<'c, str> {
        match self {
            Self::Text(words) => harmless(words),
            Self::Number(number) => {
                digits.clear();
                // A string takes whatever is written into it.
                let _ = write!(digits, "{number}");
                Cow::Borrowed(digits)
            }
            Self::Nothing => "".into(),
        }
    }
}

/// Words that a spreadsheet shows and never runs: those that it would take for a formula begin with an apostrophe.
///
/// The signs are those of the usual advice against such cells, and a line feed, which some programs skip.
fn harmless(words: &str) -> Cow<'_, str> {
    if words.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']) { format!("'{words}").into() } else { words.into() }
}

/// The names of columns as the first row.
pub(crate) fn head<'n>(names: impl IntoIterator<Item = &'n str>) -> Vec<Cell> {
    names.into_iter().map(Cell::text).collect()
}

/// Bytes that the writer gathers before it hands them on: about a row.
const BUFFER: usize = 1024;

/// Rows as CSV text; every CSV that this crate writes is made here.
pub(crate) fn written(rows: impl IntoIterator<Item = Vec<Cell>>) -> Result<String, csv::Error> {
    let mut writer = csv::WriterBuilder::new().buffer_capacity(BUFFER).from_writer(Vec::new());
    let mut digits = String::new();
    for row in rows {
        row.iter().try_for_each(|cell| writer.write_field(cell.written(&mut digits).as_bytes()))?;
        writer.write_record(None::<&[u8]>)?;
    }
    let bytes = writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8(bytes).unwrap_or_else(|error| String::from_utf8_lossy(error.as_bytes()).into_owned()))
}

#[cfg(test)]
mod tests {
    use super::{Cell, written};

    #[test]
    fn words_that_look_like_a_formula_are_kept_from_running_and_numbers_stay_numbers() {
        for sign in ['=', '+', '-', '@', '\t', '\r', '\n'] {
            let words = format!("{sign}2+3");
            let line = written([vec![Cell::text(words.clone()), Cell::text("x")]]).unwrap();
            assert!(line.starts_with('\'') || line.starts_with("\"'"), "{words:?} gave {line:?}");
        }
        let row = vec![Cell::text("Pump -1"), Cell::number(-12.5), Cell::number(0.000_25), Cell::number(f64::NAN)];
        assert_eq!(written([row]).unwrap(), "Pump -1,-12.5,0.00025,\n");
        // Typed as words it is words, whatever it looks like.
        assert_eq!(written([vec![Cell::text("-5"), Cell::number(-5.0)]]).unwrap(), "'-5,-5\n");
    }

    #[test]
    fn json_has_the_words_as_typed() {
        assert_eq!(Cell::text("=1+1").json(), "=1+1");
        assert_eq!(Cell::text("007").json(), "007");
        assert!(Cell::text("").json().is_null() && Cell::number(None).json().is_null());
    }
}
