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
    /// Takes off "… seat:" or "… seat," at the beginning, so that a capital stands there; whatever begins otherwise stays.
    pub(super) fn leave_out_seat(&mut self, name: &str) {
        let Some(Word::Text(text)) = self.words.first_mut() else { return };
        let rest = text.strip_prefix(name).and_then(|rest| rest.strip_prefix(" seat"));
        let Some(rest) = rest.and_then(|rest| rest.strip_prefix([':', ','])?.strip_prefix(' ')) else { return };
        let mut rest = rest.to_owned();
        if let Some(first) = rest.get_mut(..1) {
            first.make_ascii_uppercase();
        }
        *text = rest.into();
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
