//! Reads the words with which a shop names a closure.

use super::{ClosureError, ClosureKind, Elastomer};
use crate::stock::material::{is_named, nearest_names, normalised};

const OPEN: &[&str] = &["open"];
const SHIELDS: &[&str] = &["shield", "shields", "shielded", "z", "2z", "zz"];
const SEALS: &[&str] = &["seal", "seals", "sealed", "rs", "2rs", "rubber", "elastomer"];
/// Words that change nothing here.
const FILLERS: &[&str] =
    &["contact", "noncontact", "non", "lip", "metal", "steel", "both", "one", "two", "side", "sides"];
const JOINERS: &[&str] = &["a", "and", "at", "of", "on", "with"];

/// Most words in the name of an elastomer.
const LONGEST_NAME: usize = 4;

/// Kind and elastomer that the text names.
pub(super) fn read(text: &str, known: &[Elastomer]) -> Result<(ClosureKind, Option<Elastomer>), ClosureError> {
    let words: Vec<&str> = text.split(|c: char| c.is_whitespace() || "-,+/".contains(c)).collect();
    let words: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    let (mut kinds, mut found): (Vec<ClosureKind>, Option<Elastomer>) = (Vec::new(), None);
    let mut rest = words.as_slice();
    while let Some((&word, after)) = rest.split_first() {
        rest = after;
        if let Some((elastomer, length)) = leading_elastomer(word, after, known) {
            let repeated = found.replace(elastomer.clone()).is_some_and(|earlier| earlier.id != elastomer.id);
            if repeated {
                return Err(ClosureError::Kind { asked: text.to_owned() });
            }
            rest = after.get(length - 1..).unwrap_or_default();
            kinds.push(ClosureKind::ElastomerSeals);
        } else {
            kinds.extend(kind_of(word).map_err(|()| not_understood(text, word, known))?);
        }
    }
    kinds.dedup();
    match kinds.as_slice() {
        [kind] => Ok((*kind, found)),
        _ => Err(ClosureError::Kind { asked: text.to_owned() }),
    }
}

/// What one word says about the kind; `None` for a word that changes nothing.
fn kind_of(word: &str) -> Result<Option<ClosureKind>, ()> {
    let word = normalised(word);
    let among = |list: &[&str]| list.contains(&word.as_str());
    if among(OPEN) {
        Ok(Some(ClosureKind::Open))
    } else if among(SHIELDS) {
        Ok(Some(ClosureKind::Shields))
    } else if among(SEALS) {
        Ok(Some(ClosureKind::ElastomerSeals))
    } else if among(FILLERS) || among(JOINERS) {
        Ok(None)
    } else {
        Err(())
    }
}

fn not_understood(text: &str, word: &str, known: &[Elastomer]) -> ClosureError {
    ClosureError::Word { asked: text.to_owned(), word: word.to_owned(), nearest: nearest(word, known) }
}

/// The elastomer that the text begins with, the longest name first, and how many words it takes.
fn leading_elastomer<'a>(word: &str, after: &[&str], known: &'a [Elastomer]) -> Option<(&'a Elastomer, usize)> {
    (1..=LONGEST_NAME.min(after.len() + 1)).rev().find_map(|length| {
        let name = std::iter::once(word).chain(after.iter().copied()).take(length).collect::<Vec<_>>().join(" ");
        elastomer(&name, known).map(|found| (found, length))
    })
}

/// The elastomer of that abbreviation or name.
pub(super) fn elastomer<'a>(name: &str, known: &'a [Elastomer]) -> Option<&'a Elastomer> {
    let asked = normalised(name);
    known.iter().find(|e| e.names().chain([e.id()]).any(|known| is_named(known, &asked)))
}

/// Abbreviations of elastomers whose names resemble the word.
pub(super) fn nearest(word: &str, known: &[Elastomer]) -> Vec<String> {
    nearest_names(
        word,
        known.iter().flat_map(|e| e.names().chain([e.id()]).map(|name| (name, e.id())).collect::<Vec<_>>()),
    )
}
