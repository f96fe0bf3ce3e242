//! What could not be done, for other programs: `seatwise.error/1`.

use super::json::pretty;
use schemars::JsonSchema;
use serde::Serialize;
use std::ops::Range;

/// One thing that is wrong, as it is told: to a person in lines, to a program as an object.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Refusal {
    /// What is wrong, with the value that was given.
    pub message: String,
    /// What to do.
    pub help: String,
    /// The file in which it stands, as it was named; `standard input` for a pipe.
    pub file: Option<String>,
    /// Line and column from 1, counted in characters, and the text that is meant.
    pub place: Option<Place>,
    /// The range or the choices that are allowed.
    pub allowed: Option<String>,
}

/// A place in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// What stands there.
    pub value: String,
}

impl Place {
    /// The place of some bytes of `text`; bytes outside it, or inside a character, mean the nearest place before.
    pub fn of(text: &str, at: &Range<usize>) -> Self {
        let at = within(text, at);
        let before = &text[..at.start];
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        Self { line, column, value: text[at].to_owned() }
    }
}

/// A range that lies inside the text, at the bounds of characters.
pub fn within(text: &str, at: &Range<usize>) -> Range<usize> {
    let floor = |mut index: usize| {
        index = index.min(text.len());
        while !text.is_char_boundary(index) {
            index -= 1;
        }
        index
    };
    let start = floor(at.start);
    start..floor(at.end).max(start)
}

/// Why a run could not do what was asked.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "seatwise.error/1", deny_unknown_fields)]
struct ErrorDocument<'r> {
    /// Always `seatwise.error/1`.
    format: &'static str,
    /// Exit code of the run.
    exit_code: u8,
    /// Everything that was found wrong, in the order of files and lines; never empty.
    #[schemars(length(min = 1))]
    errors: Vec<ErrorEntry<'r>>,
}

/// One thing that is wrong.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct ErrorEntry<'r> {
    /// What is wrong.
    message: &'r str,
    /// The file, where it lies in one.
    file: Option<&'r str>,
    /// Line from 1, where it has a place.
    #[schemars(range(min = 1))]
    line: Option<usize>,
    /// Column in characters from 1, where it has a place.
    #[schemars(range(min = 1))]
    column: Option<usize>,
    /// The text at that place.
    value: Option<&'r str>,
    /// The range or the choices that are allowed, where there are any.
    allowed: Option<&'r str>,
    /// What to do.
    help: &'r str,
}

impl<'r> ErrorEntry<'r> {
    fn of(refusal: &'r Refusal) -> Self {
        let place = refusal.place.as_ref();
        Self {
            message: &refusal.message,
            file: refusal.file.as_deref(),
            line: place.map(|place| place.line),
            column: place.map(|place| place.column),
            value: place.map(|place| place.value.as_str()),
            allowed: refusal.allowed.as_deref(),
            help: &refusal.help,
        }
    }
}

/// The refusals as one JSON object, `seatwise.error/1`, ending in a line feed.
///
/// # Errors
/// None in practice: it holds no numbers that could not be written.
pub fn json(refusals: &[Refusal], exit_code: u8) -> Result<String, serde_json::Error> {
    pretty(&ErrorDocument {
        format: "seatwise.error/1",
        exit_code,
        errors: refusals.iter().map(ErrorEntry::of).collect(),
    })
}

/// The JSON Schema of [`json`]'s object, ending in a line feed.
///
/// # Errors
/// None in practice: the schema is made from types.
pub fn schema() -> Result<String, serde_json::Error> {
    pretty(&schemars::schema_for!(ErrorDocument<'static>))
}

#[cfg(test)]
mod tests {
    use super::Place;

    #[test]
    fn a_place_is_counted_in_lines_and_characters() {
        let text = "title = \"Größe\"\nbore = \"30 kg\"\n";
        let at = text.find("30 kg").unwrap();
        let place = Place::of(text, &(at..at + 5));
        assert_eq!((place.line, place.column, place.value.as_str()), (2, 9, "30 kg"));
        let at = text.find("ße").unwrap();
        // The second byte of a character means the character; a place beyond the text means its end.
        assert_eq!(Place::of(text, &(at + 1..at + 3)).column, 13);
        assert_eq!(Place::of(text, &(900..1000)).line, 3);
    }
}
