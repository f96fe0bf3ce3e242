//! Sentences with quantities in them, so that the report alone chooses units and rounds.

use crate::job::AnyValue;
use crate::quantity::{Length, ThermodynamicTemperature, Time, Toward};
use std::borrow::Cow;
use uom::si::time::second;

/// A piece of a sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum Word {
    /// Words as they stand.
    Text(Cow<'static, str>),
    /// A quantity, with the direction in which it may be rounded.
    Value(AnyValue, Toward),
}

/// A sentence whose quantities are still quantities.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sentence {
    /// Its pieces, in order.
    pub words: Vec<Word>,
}

/// Begins a sentence.
pub(super) fn say(text: impl Into<Cow<'static, str>>) -> Sentence {
    Sentence::default().text(text)
}

impl Sentence {
    /// The same without `opening`, and with a capital where it then begins; as it is where it begins otherwise.
    pub(super) fn without(mut self, opening: &str) -> Self {
        let rest = match self.words.first() {
            Some(Word::Text(text)) => text.strip_prefix(opening),
            Some(Word::Value(..)) | None => None,
        };
        let capital = rest.map(|rest| {
            let mut letters = rest.chars();
            letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect::<String>()
        });
        if let Some(text) = capital {
            self.words[0] = Word::Text(text.into());
        }
        self
    }

    pub(super) fn text(mut self, text: impl Into<Cow<'static, str>>) -> Self {
        self.words.push(Word::Text(text.into()));
        self
    }

    pub(super) fn value(mut self, value: AnyValue, toward: Toward) -> Self {
        self.words.push(Word::Value(value, toward));
        self
    }

    pub(super) fn small(self, length: Length, toward: Toward) -> Self {
        self.value(AnyValue::SmallLength(length), toward)
    }

    pub(super) fn temperature(self, temperature: ThermodynamicTemperature, toward: Toward) -> Self {
        self.value(AnyValue::Temperature(temperature), toward)
    }

    pub(super) fn duration(self, time: Time, toward: Toward) -> Self {
        self.value(AnyValue::Duration(time), toward)
    }

    /// "after 8 s"; a time that nobody could use is "at once".
    pub(super) fn after(self, time: Time) -> Self {
        if time.get::<second>() < 1.0 { self.text("at once") } else { self.text("after ").duration(time, Toward::Down) }
    }
}
