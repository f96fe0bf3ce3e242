//! Reading of job text, table by table: every value keeps its place, and reading goes on after a mistake.

use super::entry::{AnyValue, Assumption, Entry};
use super::problem::Problem;
use crate::quantity::{self, Entered, Length, QuantityError, System};
use std::borrow::Cow;
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// What reading a job leaves behind beside the job itself.
#[derive(Default)]
pub(super) struct Notes {
    pub(super) problems: Vec<Problem>,
    pub(super) entries: Vec<Entry>,
    pub(super) assumptions: Vec<Assumption>,
}

impl Notes {
    pub(super) fn problem(&mut self, at: Range<usize>, message: impl Into<String>, help: impl Into<String>) {
        self.problems.push(Problem::new(at, message, help));
    }

    /// A refusal that carries its own advice after `help:`; `otherwise` is the advice when it carries none.
    pub(super) fn advised(&mut self, at: Range<usize>, path: &str, refusal: &str, otherwise: &str) {
        let (message, help) = refusal.split_once("\n  help: ").unwrap_or((refusal, otherwise));
        self.problem(at, format!("`{path}`: {message}"), help);
    }

    pub(super) fn assume(
        &mut self,
        what: impl Into<Cow<'static, str>>,
        value: AnyValue,
        why: impl Into<Cow<'static, str>>,
    ) {
        self.assumptions.push(Assumption { what: what.into(), value, why: why.into() });
    }
}

/// A value that was found, with its place.
#[derive(Clone, Debug)]
pub(super) struct Found<T> {
    pub(super) value: T,
    pub(super) at: Range<usize>,
    pub(super) system: Option<System>,
}

/// A piece of text with its place in the job.
#[derive(Clone, Debug)]
pub(super) struct Words<'t> {
    pub(super) text: &'t str,
    pub(super) at: Range<usize>,
    /// Whether a byte of `text` is the same number of bytes after the opening quote in the job.
    verbatim: bool,
}

impl Words<'_> {
    /// The place in the job of a range of bytes of this text.
    pub(super) fn part(&self, range: Range<usize>) -> Range<usize> {
        if self.verbatim && range.start <= range.end && range.end <= self.text.len() {
            let start = self.at.start + 1;
            start + range.start..start + range.end.max(range.start + 1)
        } else {
            self.at.clone()
        }
    }
}

/// One table of the job.
pub(super) struct Section<'t> {
    /// Its name as the user writes it, such as `housing.shoulder`; empty for the top level.
    name: String,
    /// Where its heading stands.
    pub(super) at: Range<usize>,
    table: &'t DeTable<'t>,
    job_text: &'t str,
}

impl<'t> Section<'t> {
    pub(super) fn top(job_text: &'t str, table: &'t Spanned<DeTable<'t>>, known: &[&str], notes: &mut Notes) -> Self {
        let end = job_text.trim_end().len();
        Self::checked(String::new(), end..end, table.get_ref(), job_text, known, notes)
    }

    fn checked(
        name: String,
        at: Range<usize>,
        table: &'t DeTable<'t>,
        job_text: &'t str,
        known: &[&str],
        notes: &mut Notes,
    ) -> Self {
        let section = Self { name, at, table, job_text };
        for key in section.table.keys() {
            if !known.contains(&key.get_ref().as_ref()) {
                section.unknown_key(key.get_ref(), key.span(), known, notes);
            }
        }
        section
    }

    fn unknown_key(&self, key: &str, at: Range<usize>, known: &[&str], notes: &mut Notes) {
        let place = if self.name.is_empty() { "a job".to_owned() } else { format!("[{}]", self.name) };
        let help = match nearest(key, known.iter().copied()) {
            Some(meant) => format!("did you mean `{meant}`? {place} knows: {}", known.join(", ")),
            None => format!("{place} knows: {}", known.join(", ")),
        };
        notes.problem(at, format!("{place} has no `{key}`"), help);
    }

    /// `section.key` as the user would say it.
    pub(super) fn path(&self, key: &str) -> String {
        if self.name.is_empty() { key.to_owned() } else { format!("{}.{key}", self.name) }
    }

    fn get(&self, key: &str) -> Option<(Range<usize>, &'t Spanned<DeValue<'t>>)> {
        self.table.get_key_value(key).map(|(k, v)| (k.span(), v))
    }

    pub(super) fn has(&self, key: &str) -> bool {
        self.table.contains_key(key)
    }

    /// Where `key` stands, or the section's heading when it is absent.
    pub(super) fn place(&self, key: &str) -> Range<usize> {
        self.get(key).map_or(self.at.clone(), |(at, _)| at)
    }

    /// Where `key` stands in the table under `section`, or that table's heading when it is absent.
    pub(super) fn place_in(&self, section: &str, key: &str) -> Range<usize> {
        let Some((at, value)) = self.get(section) else { return self.at.clone() };
        let DeValue::Table(table) = value.get_ref() else { return at };
        table.iter().find(|(known, _)| known.get_ref() == key).map_or(at, |(known, _)| known.span())
    }

    /// The text under `key`, as it stands; none where there is no text.
    pub(super) fn text(&self, key: &str) -> Option<&'t str> {
        self.get(key).and_then(|(_, value)| value.get_ref().as_str())
    }

    pub(super) fn is_table(&self, key: &str) -> bool {
        self.get(key).is_some_and(|(_, v)| v.get_ref().is_table())
    }

    pub(super) fn is_list(&self, key: &str) -> bool {
        self.get(key).is_some_and(|(_, v)| v.get_ref().is_array())
    }

    /// The table under `key`.
    pub(super) fn section(&self, key: &str, known: &[&str], notes: &mut Notes) -> Option<Section<'t>> {
        let (at, value) = self.get(key)?;
        match value.get_ref() {
            DeValue::Table(table) => Some(Self::checked(self.path(key), at, table, self.job_text, known, notes)),
            other => {
                let message = format!("`{}` is {} but must be a table", self.path(key), kind_of(other));
                notes.problem(value.span(), message, format!("write [{}] with: {}", self.path(key), known.join(", ")));
                None
            }
        }
    }

    /// The text under `key`; anything but text is a problem that `wanted` explains.
    pub(super) fn words(&self, key: &str, wanted: &str, notes: &mut Notes) -> Option<Words<'t>> {
        let (_, value) = self.get(key)?;
        let at = value.span();
        let DeValue::String(text) = value.get_ref() else {
            let message = format!("`{}` is {} but must be text in quotes", self.path(key), kind_of(value.get_ref()));
            notes.problem(at, message, wanted);
            return None;
        };
        let inside = self.job_text.get(at.start + 1..at.end.saturating_sub(1));
        let words = Words { text: text.as_ref(), verbatim: inside == Some(text.as_ref()), at };
        if words.text.trim().is_empty() {
            notes.problem(words.at.clone(), format!("`{}` is empty", self.path(key)), wanted);
            return None;
        }
        Some(words)
    }

    /// The list of texts under `key`; anything but a list of texts is a problem that `wanted` explains.
    pub(super) fn word_list(&self, key: &str, wanted: &str, notes: &mut Notes) -> Option<Vec<Words<'t>>> {
        let (_, value) = self.get(key)?;
        let DeValue::Array(items) = value.get_ref() else {
            let message = format!("`{}` is {} but must be a list", self.path(key), kind_of(value.get_ref()));
            notes.problem(value.span(), message, wanted);
            return None;
        };
        let mut words = Vec::new();
        for item in items.iter() {
            match item.get_ref() {
                DeValue::String(text) => {
                    words.push(Words { text: text.as_ref(), verbatim: false, at: item.span() });
                }
                other => {
                    let message = format!("`{}` holds {} but must hold texts", self.path(key), kind_of(other));
                    notes.problem(item.span(), message, wanted);
                }
            }
        }
        (words.len() == items.len()).then_some(words)
    }

    /// The tables of the list under `key`, named by their place in it.
    pub(super) fn sections(&self, key: &str, known: &[&str], notes: &mut Notes) -> Option<Vec<Section<'t>>> {
        let (_, value) = self.get(key)?;
        let wanted = format!("write [[{}]] for each, with: {}", self.path(key), known.join(", "));
        let DeValue::Array(items) = value.get_ref() else {
            let message = format!("`{}` is {} but must be a list of tables", self.path(key), kind_of(value.get_ref()));
            notes.problem(value.span(), message, wanted);
            return None;
        };
        let mut sections = Vec::new();
        for (number, item) in items.iter().enumerate() {
            let name = format!("{}[{}]", self.path(key), number + 1);
            match item.get_ref() {
                DeValue::Table(table) => {
                    sections.push(Self::checked(name, item.span(), table, self.job_text, known, notes));
                }
                other => {
                    notes.problem(item.span(), format!("`{name}` is {} but must be a table", kind_of(other)), &wanted);
                }
            }
        }
        (sections.len() == items.len()).then_some(sections)
    }

    /// The rows of texts under `key`: a list of lists, or one list for one row. `wanted` explains what is to be written.
    pub(super) fn word_rows(&self, key: &str, wanted: &str, notes: &mut Notes) -> Option<Vec<Vec<Words<'t>>>> {
        let (_, value) = self.get(key)?;
        let nested = match value.get_ref() {
            DeValue::Array(items) => items.iter().any(|item| item.get_ref().is_array()),
            _ => false,
        };
        if !nested {
            return Some(vec![self.word_list(key, wanted, notes)?]);
        }
        let DeValue::Array(items) = value.get_ref() else { return None };
        let mut rows = Vec::new();
        for item in items.iter() {
            let DeValue::Array(texts) = item.get_ref() else {
                let message = format!("`{}` holds {} among its rows", self.path(key), kind_of(item.get_ref()));
                notes.problem(item.span(), message, wanted);
                continue;
            };
            let mut row = Vec::new();
            for text in texts.iter() {
                match text.get_ref() {
                    DeValue::String(words) => {
                        row.push(Words { text: words.as_ref(), verbatim: false, at: text.span() });
                    }
                    other => {
                        let message = format!("`{}` holds {} but must hold texts", self.path(key), kind_of(other));
                        notes.problem(text.span(), message, wanted);
                    }
                }
            }
            rows.push((row, texts.len()));
        }
        let whole = rows.len() == items.len() && rows.iter().all(|(row, length)| row.len() == *length);
        whole.then(|| rows.into_iter().map(|(row, _)| row).collect())
    }

    /// The whole number under `key`, in a range; in quotes or not, since it has no unit.
    pub(super) fn count(&self, key: &str, (low, high): (u32, u32), notes: &mut Notes) -> Option<usize> {
        let (_, value) = self.get(key)?;
        let wanted = format!("write a whole number from {low} to {high}");
        let (text, at) = match value.get_ref() {
            DeValue::Integer(number) => (number.as_str(), value.span()),
            _ => {
                let words = self.words(key, &wanted, notes)?;
                (words.text.trim(), words.at)
            }
        };
        match text.parse::<u32>().ok().filter(|count| (low..=high).contains(count)) {
            Some(count) => {
                self.enter(key, text, AnyValue::Number(f64::from(count)), None, notes);
                Some(count as usize)
            }
            None => {
                notes.problem(at, format!("`{}` cannot be {text}", self.path(key)), wanted);
                None
            }
        }
    }

    /// The quantity under `key`, echoed in the entries.
    pub(super) fn quantity<Q: Echo>(
        &self,
        key: &str,
        parse: fn(&str) -> Result<Entered<Q>, QuantityError>,
        notes: &mut Notes,
    ) -> Option<Found<Q>> {
        let (_, value) = self.get(key)?;
        if let Some(number) = bare_number(value.get_ref()) {
            let (message, help) = match parse(number) {
                Err(error) => (format!("`{}`: {}", self.path(key), error.problem), error.help),
                Ok(_) => (format!("`{}` is a bare number", self.path(key)), "write it as text".to_owned()),
            };
            notes.problem(value.span(), message, format!("{help}; in quotes"));
            return None;
        }
        let words = self.words(key, "write the value with its unit, in quotes", notes)?;
        self.parse_words(key, &words, parse, notes)
    }

    /// The small length under `key`: a deviation, an uncertainty, a clearance.
    pub(super) fn small_length(&self, key: &str, notes: &mut Notes) -> Option<Found<Length>> {
        let before = notes.entries.len();
        let found = self.quantity(key, quantity::deviation, notes)?;
        for entry in &mut notes.entries[before..] {
            entry.value = AnyValue::SmallLength(found.value);
        }
        Some(found)
    }

    /// Parses `words`, which stand under `key`, and echoes them in the entries.
    pub(super) fn parse_words<Q: Echo>(
        &self,
        key: &str,
        words: &Words<'_>,
        parse: fn(&str) -> Result<Entered<Q>, QuantityError>,
        notes: &mut Notes,
    ) -> Option<Found<Q>> {
        match parse(words.text) {
            Ok(entered) => {
                let value = entered.value.echo();
                self.enter(key, words.text, value, entered.system, notes);
                Some(Found { value: entered.value, at: words.at.clone(), system: entered.system })
            }
            Err(error) => {
                notes.problem(words.part(error.at), format!("`{}`: {}", self.path(key), error.problem), error.help);
                None
            }
        }
    }

    /// Echoes what was typed under `key` among the entries.
    pub(super) fn enter(&self, key: &str, typed: &str, value: AnyValue, system: Option<System>, notes: &mut Notes) {
        notes.entries.push(Entry { key: self.path(key), typed: typed.to_owned(), value, system });
    }

    /// Reports that `key` is missing and what to write.
    pub(super) fn missing(&self, key: &str, help: &str, notes: &mut Notes) {
        if !self.has(key) {
            notes.problem(self.at.clone(), format!("`{}` is missing", self.path(key)), help);
        }
    }
}

/// A quantity that can be echoed among the entries.
pub(super) trait Echo {
    fn echo(&self) -> AnyValue;
}

macro_rules! echo {
    ($($quantity:ty => $variant:ident),* $(,)?) => {
        $(impl Echo for $quantity {
            fn echo(&self) -> AnyValue {
                AnyValue::$variant(*self)
            }
        })*
    };
}

echo! {
    Length => Size,
    quantity::Deviations => Limits,
    quantity::ThermodynamicTemperature => Temperature,
    quantity::TemperatureInterval => TemperatureStep,
    quantity::Time => Duration,
    quantity::Mass => Mass,
    quantity::Force => Force,
    quantity::Torque => Torque,
    quantity::Pressure => Pressure,
    quantity::Power => Power,
    quantity::HeatCapacity => BodyHeat,
    quantity::AngularVelocity => Turning,
    quantity::Ratio => Share,
    f64 => Number,
}

impl Echo for quantity::HeatTransfer {
    fn echo(&self) -> AnyValue {
        AnyValue::Film(*self, *self)
    }
}

/// `None` only when a thing was wanted and could not be read.
pub(super) fn flatten<T>(wanted: Option<Option<T>>) -> Option<Option<T>> {
    match wanted {
        None => Some(None),
        Some(read) => read.map(Some),
    }
}

/// Millimetres for a message and for comparison, without the noise of the last digits.
pub(super) fn in_mm(length: quantity::Length) -> f64 {
    (length.get::<uom::si::length::millimeter>() * 1e5).round() / 1e5
}

/// The known name nearest to what was typed, when one is near enough to be meant.
pub(super) fn nearest<'k>(typed: &str, known: impl Iterator<Item = &'k str>) -> Option<&'k str> {
    let typed = typed.to_lowercase();
    known
        .map(|name| (strsim::jaro_winkler(&typed, &name.to_lowercase()), name))
        .filter(|(likeness, _)| *likeness > 0.8)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, name)| name)
}

fn bare_number<'t>(value: &'t DeValue<'t>) -> Option<&'t str> {
    match value {
        DeValue::Integer(number) => Some(number.as_str()),
        DeValue::Float(number) => Some(number.as_str()),
        _ => None,
    }
}

fn kind_of(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) | DeValue::Float(_) => "a bare number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}
