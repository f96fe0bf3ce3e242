//! Sentences with quantities in them, so that the report alone chooses units and rounds.

use crate::job::AnyValue;
use crate::quantity::{Length, ThermodynamicTemperature, Time, Toward};
use std::borrow::Cow;

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
}
