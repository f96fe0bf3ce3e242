//! A finding that the fitter must know, with its signal word.

use super::sentence::Sentence;

/// How grave a caution is, gravest first, to people or to the job.
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
    /// The word for it in JSON; what a person reads is [`Caution::signal`].
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
/// ANSI Z535 keeps danger, warning, caution and the safety alert symbol for these; a spoiled part or machine has "notice"
/// (from memory).
const HURTS_PEOPLE: [&str; 15] = [
    "asphyxiation",
    "cold-part",
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
    "weak-screw",
];

/// Source of a rule that no text was found for.
pub(super) const PRACTICE: &str = "common practice, no published source";

impl Caution {
    pub(super) fn new(code: &'static str, level: Level, sentence: Sentence, source: impl Into<String>) -> Self {
        Self { code, level, sentence, source: source.into(), forbids: false }
    }

    /// Takes off the seat with which its sentence begins.
    pub(super) fn leave_out_seat(&mut self, name: &str) {
        self.sentence.leave_out_seat(name);
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

    /// The signal word that every text uses: danger, warning or caution where someone may be hurt, notice where only the part,
    /// the machine or the job may suffer, however badly, and note for what is worth knowing.
    ///
    /// Words that mean people alone keep their weight among the many findings about parts. **Source**: ANSI Z535.4 and
    /// Z535.6, from memory.
    pub fn signal(&self) -> &'static str {
        if self.level == Level::Note || self.hurts_people() { self.level.word() } else { "notice" }
    }

    /// Where it stands among others: what forbids the job, then harm to people, then harm to things, each gravest first, and
    /// notes at the end.
    pub(crate) fn rank(&self) -> impl Ord + Copy + use<> {
        (!self.forbids, self.level == Level::Note, !self.hurts_people(), self.level)
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

#[cfg(test)]
mod tests {
    use super::{Caution, Level};
    use crate::plan::sentence::{Word, say};

    fn caution(code: &'static str, level: Level) -> Caution {
        Caution::new(code, level, say("housing seat: it happens."), "common practice")
    }

    #[test]
    fn words_of_danger_are_for_people_and_come_before_notices_however_grave() {
        let mut found = [
            caution("defer", Level::Note),
            caution("internal-clearance", Level::Danger),
            caution("cold-part", Level::Caution),
            caution("cryogen", Level::Danger),
            caution("too-hot", Level::Danger).forbidding(),
        ];
        found.sort_by_key(Caution::rank);
        let shown = found.each_ref().map(|caution| (caution.signal(), caution.code()));
        let wanted = [
            ("notice", "too-hot"),
            ("danger", "cryogen"),
            ("caution", "cold-part"),
            ("notice", "internal-clearance"),
            ("note", "defer"),
        ];
        assert_eq!(shown, wanted);
    }

    #[test]
    fn a_sentence_begins_with_a_capital_where_its_seat_is_left_out() {
        let bare = |name: &str| {
            let mut caution = caution("frost", Level::Caution);
            caution.leave_out_seat(name);
            caution.sentence().words.clone()
        };
        assert_eq!(bare("housing"), [Word::Text("It happens.".into())]);
        assert_eq!(bare("shaft"), [Word::Text("housing seat: it happens.".into())]);
    }
}
