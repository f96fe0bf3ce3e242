//! Units and how a typed spelling finds its own.

use super::System;
use super::units::{AMBIGUOUS, Ambiguous, UNITS};
use Kind::{
    BodyHeat, Conductivity, Density, Duration, Expansion, Film, Force, HeatCapacity, Length, Mass, Power, Pressure,
    Share, Step, Temperature, Torque, Turning, Volume,
};

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    Length,
    Temperature,
    Step,
    Duration,
    Mass,
    Pressure,
    Force,
    Torque,
    Power,
    Turning,
    Film,
    Volume,
    Density,
    Expansion,
    HeatCapacity,
    BodyHeat,
    Conductivity,
    Share,
    /// A plain number; it has no units.
    Bare,
}

impl Kind {
    /// The kind in words that follow "a unit of".
    pub(super) fn name(self) -> &'static str {
        match self {
            Length => "length",
            Temperature => "temperature",
            Step => "temperature difference",
            Duration => "time",
            Mass => "mass",
            Pressure => "pressure or stress",
            Force => "force",
            Torque => "torque",
            Power => "power",
            Turning => "speed of turning",
            Film => "heat transfer coefficient",
            Volume => "volume",
            Density => "density",
            Expansion => "coefficient of expansion",
            HeatCapacity => "heat capacity for each kilogram",
            BodyHeat => "heat capacity of a whole body",
            Conductivity => "thermal conductivity",
            Share => "share",
            Kind::Bare => "plain number",
        }
    }
}

/// One unit: SI value = (number + `zero`) × `factor`.
#[derive(Debug)]
pub(super) struct Unit {
    pub(super) kind: Kind,
    /// Spellings; the first is the one that messages show.
    pub(super) names: &'static [&'static str],
    pub(super) factor: f64,
    pub(super) zero: f64,
    /// The family that the unit belongs to, if only one.
    pub(super) system: Option<System>,
}

impl Unit {
    pub(super) fn name(&self) -> &'static str {
        self.names[0]
    }

    pub(super) fn si(&self, number: f64) -> f64 {
        (number + self.zero) * self.factor
    }

    /// How many of this unit a quantity is.
    pub(super) fn number(&self, si: f64) -> f64 {
        si / self.factor - self.zero
    }
}

/// What a typed unit turned out to be.
#[derive(Debug)]
pub(super) enum Found {
    Unit(&'static Unit),
    Ambiguous(&'static Ambiguous),
    /// A unit of something else, and the wanted unit whose spelling it begins.
    OtherKind(Kind, Option<&'static str>),
    /// No unit at all, and the wanted unit that is spelled most like it.
    Unknown(Option<&'static str>),
}

/// Looks up a typed unit where a unit of `kind` is wanted. Capital letters do not matter, save in "mPa".
pub(super) fn find(kind: Kind, typed: &str) -> Found {
    let typed_key = key(typed);
    if kind == Pressure && typed.trim() == "mPa" {
        return Found::Unknown(Some("MPa"));
    }
    if let Some(unit) = UNITS.iter().find(|unit| unit.kind == kind && spelled(unit.names, &typed_key)) {
        return Found::Unit(unit);
    }
    if let Some(word) = AMBIGUOUS.iter().find(|word| word.kinds.contains(&kind) && spelled(word.names, &typed_key)) {
        return Found::Ambiguous(word);
    }
    if let Some(other) = UNITS.iter().find(|unit| spelled(unit.names, &typed_key)) {
        return Found::OtherKind(other.kind, cut_short(kind, other.kind, &typed_key));
    }
    nearest(kind, &typed_key)
}

/// The wanted unit for which a unit of something else is often said: "lb" for lbf, "kg" for kgf, "m" for min.
fn cut_short(wanted: Kind, typed: Kind, typed_key: &str) -> Option<&'static str> {
    if !matches!((wanted, typed), (Force, Mass) | (Duration, Length)) {
        return None;
    }
    let mut units = UNITS.iter().filter(|unit| unit.kind == wanted);
    units.find(|unit| unit.names.iter().any(|name| key(name).starts_with(typed_key))).map(Unit::name)
}

fn spelled(names: &[&str], typed_key: &str) -> bool {
    !typed_key.is_empty() && names.iter().any(|name| letters(name).eq(typed_key.chars()))
}

/// What the spelling was probably meant to be. A slip in a word with two readings has the same two readings.
fn nearest(kind: Kind, typed_key: &str) -> Found {
    // three letters in five: "milimeter" and "ponds" are caught, "furlong" is not
    const ALIKE: f64 = 0.6;
    let units = UNITS.iter().filter(|unit| unit.kind == kind).flat_map(|unit| unit.names).map(|name| (*name, None));
    let words = AMBIGUOUS.iter().filter(|word| word.kinds.contains(&kind));
    let words = words.flat_map(|word| word.names.iter().map(move |name| (*name, Some(word))));
    let alike = |name: &str| strsim::normalized_damerau_levenshtein(&key(name), typed_key);
    let best = units.chain(words).map(|(name, word)| (alike(name), name, word)).max_by(|a, b| a.0.total_cmp(&b.0));
    match best {
        Some((alike, _, Some(word))) if alike >= ALIKE => Found::Ambiguous(word),
        Some((alike, name, None)) if alike >= ALIKE => Found::Unknown(Some(name)),
        _ => Found::Unknown(None),
    }
}

/// A spelling without what does not matter: case, gaps, dots between factors, and the several signs for one thing.
fn key(spelling: &str) -> String {
    letters(spelling).collect()
}

fn letters(spelling: &str) -> impl Iterator<Item = char> + '_ {
    spelling.chars().flat_map(|letter| letter_key(letter).into_iter().flatten())
}

fn letter_key(letter: char) -> [Option<char>; 2] {
    match letter {
        'µ' | 'μ' => [Some('u'), None],
        '²' => [Some('2'), None],
        '³' => [Some('3'), None],
        'º' | '˚' => [Some('°'), None],
        '℃' => [Some('°'), Some('c')],
        '℉' => [Some('°'), Some('f')],
        '″' | '”' | '“' => [Some('"'), None],
        '′' | '’' => [Some('\''), None],
        '.' | '·' | '⋅' | '•' | '∙' | '×' | '*' | '^' | '-' | '‐' | '‑' => [None, None],
        gap if gap.is_whitespace() => [None, None],
        other => [other.to_lowercase().next(), None],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_spelling_stands_for_two_units_of_a_kind() {
        let mut seen: Vec<(Kind, String)> = Vec::new();
        let words = AMBIGUOUS.iter().flat_map(|w| w.kinds.iter().map(move |&kind| (kind, w.names)));
        for (kind, names) in UNITS.iter().map(|unit| (unit.kind, unit.names)).chain(words) {
            for name in names {
                let entry = (kind, key(name));
                assert!(!seen.contains(&entry), "{name} stands twice");
                seen.push(entry);
            }
        }
    }

    #[test]
    fn every_spelling_finds_its_own_unit() {
        for unit in UNITS {
            for name in unit.names {
                assert!(matches!(find(unit.kind, name), Found::Unit(found) if found.name() == unit.name()), "{name}");
            }
        }
    }
}
