//! A finding that the fitter must know, with its signal word.

use super::sentence::Sentence;

/// How grave a caution is, gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Someone may be killed or badly hurt, or the job must not be done so.
    Danger,
    /// Someone may be hurt, or the part spoiled.
    Warning,
    /// The job may fail.
    Caution,
    /// Worth knowing.
    Note,
}

impl Level {
    /// The signal word that every output uses.
    pub fn word(self) -> &'static str {
        match self {
            Self::Danger => "danger",
            Self::Warning => "warning",
            Self::Caution => "caution",
            Self::Note => "note",
        }
    }
}

/// A finding that the fitter must know.
#[derive(Clone, Debug, PartialEq)]
pub struct Caution {
    code: &'static str,
    level: Level,
    sentence: Sentence,
    source: String,
    forbids: bool,
}

/// Codes of cautions that speak of harm to people.
///
/// ISO 3864 and ANSI Z535 keep the safety alert symbol for these: a spoiled part or machine has the word alone (from memory).
const HURTS_PEOPLE: [&str; 13] = [
    "asphyxiation",
    "cryogen",
    "dry-ice",
    "flammable-solvent",
    "gas-in-the-room",
    "hammer",
    "hot-oil",
    "hot-part",
    "induction-magnetism",
    "press",
    "press-seal",
    "retaining-ring",
    "steam",
];

/// Source of a rule that no text was found for.
pub(super) const PRACTICE: &str = "common practice, no published source";

impl Caution {
    pub(super) fn new(code: &'static str, level: Level, sentence: Sentence, source: impl Into<String>) -> Self {
        Self { code, level, sentence, source: source.into(), forbids: false }
    }

    /// The same caution as a reason that the job must not be done as planned.
    pub(super) fn forbidding(mut self) -> Self {
        self.forbids = true;
        self
    }

    /// Stable code, for scripts.
    pub fn code(&self) -> &'static str {
        self.code
    }

    /// How grave it is.
    pub fn level(&self) -> Level {
        self.level
    }

    /// What is found and what to do, with quantities still to be rounded.
    pub fn sentence(&self) -> &Sentence {
        &self.sentence
    }

    /// Where the rule comes from.
    pub fn source(&self) -> &str {
        &self.source
    }

    /// Whether someone may be hurt; else the part, the machine or the job is at risk.
    pub fn hurts_people(&self) -> bool {
        HURTS_PEOPLE.contains(&self.code)
    }

    /// Whether the job must not be done as planned.
    pub fn forbids(&self) -> bool {
        self.forbids
    }
}
