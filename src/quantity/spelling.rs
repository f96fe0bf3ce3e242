//! How a typed spelling finds its unit.

use super::unit::Kind::{self, Duration, Force, Length, Mass, Pressure};
use super::unit::Unit;
use super::units::{AMBIGUOUS, Ambiguous, UNITS};

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
