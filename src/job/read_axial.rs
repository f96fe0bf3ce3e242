//! A size along the axis: nominal with limits, alone, or measured.

use super::entry::AnyValue;
use super::model_stack::AxialSize;
use super::section::{Notes, Section, in_mm};
use crate::fit::{self, ToleranceClass};
use crate::quantity::{self, Deviations, Length, Nanometres};
use std::ops::Range;
use uom::si::length::millimeter;

const WANTED: &str = "write the size with its limits, such as \"24 mm ±0.05 mm\", \"16 mm -0.12/0 mm\" or \"16 mm h11\", or \
                      { measured = \"23.98 mm\", within = \"0.01 mm\" }";

/// Largest size along the axis, mm.
const LARGEST_MM: f64 = 3150.0;

/// General tolerances for linear sizes, class m: up to a size (mm), limits either way (mm).
///
/// **Source**: ISO 2768-1, class m, from memory.
const GENERAL_MM: [(f64, f64); 7] =
    [(6.0, 0.1), (30.0, 0.2), (120.0, 0.3), (400.0, 0.5), (1000.0, 0.8), (2000.0, 1.2), (4000.0, 2.0)];

/// Limits of a size that was given alone.
pub(super) enum Usual {
    /// Those of ISO 2768-1 class m.
    General,
    /// These deviations, for this reason.
    Own(Deviations, &'static str),
}

/// The size under `key`.
pub(super) fn axial(section: &Section<'_>, key: &str, usual: &Usual, notes: &mut Notes) -> Option<AxialSize> {
    let (size, at) = if section.is_table(key) {
        (measured(section, key, notes)?, section.place(key))
    } else {
        let words = section.words(key, WANTED, notes)?;
        (from_words(section, key, &words, usual, notes)?, words.at)
    };
    in_range(section, key, size, at, notes)
}

/// The sizes under `key`: one, or a list of them, whose entries are numbered.
pub(super) fn axials(section: &Section<'_>, key: &str, usual: &Usual, notes: &mut Notes) -> Option<Vec<AxialSize>> {
    if !section.is_list(key) {
        return Some(vec![axial(section, key, usual, notes)?]);
    }
    let words = section.word_list(key, WANTED, notes)?;
    if words.is_empty() {
        let message = format!("`{}` is an empty list", section.path(key));
        notes.problem(section.place(key), message, "leave it out, or give each size with its limits");
        return None;
    }
    let mut sizes = Vec::new();
    for (number, words) in words.iter().enumerate() {
        let numbered = format!("{key} {}", number + 1);
        let size = from_words(section, &numbered, words, usual, notes);
        sizes.extend(size.and_then(|size| in_range(section, &numbered, size, words.at.clone(), notes)));
    }
    (sizes.len() == words.len()).then_some(sizes)
}

fn in_range(
    section: &Section<'_>,
    key: &str,
    size: AxialSize,
    at: Range<usize>,
    notes: &mut Notes,
) -> Option<AxialSize> {
    let (least, most) = (in_mm(size.least), in_mm(size.most));
    if size.least > Length::default() && most <= LARGEST_MM {
        return Some(size);
    }
    let message = format!(
        "`{}` lies from {least} mm to {most} mm but must lie above 0 mm and up to {LARGEST_MM} mm",
        section.path(key)
    );
    notes.problem(at, message, "check the size, its limits and their units");
    None
}

fn from_words(
    section: &Section<'_>,
    key: &str,
    words: &super::section::Words<'_>,
    usual: &Usual,
    notes: &mut Notes,
) -> Option<AxialSize> {
    let text = words.text.trim();
    if let Some((nominal, class)) = classed(text) {
        let limits = ToleranceClass::parse(class)
            .map_err(|error| error.to_string())
            .and_then(|class| fit::limits_of_size(nominal, class).map_err(|error| error.to_string()));
        return match limits {
            Ok(limits) => {
                section.enter(key, words.text, AnyValue::Size(nominal.length()), None, notes);
                Some(sized(nominal, limits.deviations, format!("{class}: {}", limits.source)))
            }
            Err(refusal) => {
                notes.advised(words.at.clone(), &section.path(key), &refusal, WANTED);
                None
            }
        };
    }
    match quantity::length(text) {
        Ok(plain) => {
            section.enter(key, words.text, AnyValue::Size(plain.value), plain.system, notes);
            return Some(alone(section, key, plain.value, usual, notes));
        }
        Err(error) if !text.contains(['±', '/', '+']) => {
            notes.problem(words.part(error.at), format!("`{}`: {}", section.path(key), error.problem), WANTED);
            return None;
        }
        Err(_) => {}
    }
    match quantity::sized_limits(text) {
        Ok(found) => {
            section.enter(key, words.text, AnyValue::Size(found.value.nominal.length()), found.system, notes);
            Some(sized(found.value.nominal, found.value.deviations, "limits as stated".to_owned()))
        }
        Err(error) => {
            notes.problem(words.part(error.at), format!("`{}`: {}", section.path(key), error.problem), WANTED);
            None
        }
    }
}

/// A size with a class of ISO 286-1 after it, such as "16 mm h11".
fn classed(text: &str) -> Option<(Nanometres, &str)> {
    let (size, class) = text.rsplit_once(' ')?;
    let begins = class.starts_with(|c: char| c.is_ascii_alphabetic());
    let ends = class.ends_with(|c: char| c.is_ascii_digit());
    let size = quantity::length(size).ok().filter(|_| begins && ends)?;
    Some((Nanometres::from_length(size.value), class))
}

fn sized(nominal: Nanometres, deviations: Deviations, basis: String) -> AxialSize {
    AxialSize {
        nominal: nominal.length(),
        least: (nominal + deviations.lower).length(),
        most: (nominal + deviations.upper).length(),
        basis,
    }
}

/// A size without limits: those that are usual for it, which are listed as an assumption.
fn alone(section: &Section<'_>, key: &str, nominal: Length, usual: &Usual, notes: &mut Notes) -> AxialSize {
    let (deviations, why) = match usual {
        Usual::General => (general(nominal), "ISO 2768-1 class m (from memory)"),
        Usual::Own(deviations, why) => (*deviations, *why),
    };
    let reason = format!("{why}; state the limits with the size");
    notes.assume(format!("{}: limits", section.path(key)), AnyValue::Limits(deviations), reason);
    sized(Nanometres::from_length(nominal), deviations, why.to_owned())
}

fn general(nominal: Length) -> Deviations {
    let size = nominal.get::<millimeter>();
    let either =
        GENERAL_MM.iter().find(|(up_to, _)| size <= *up_to).map_or(GENERAL_MM[GENERAL_MM.len() - 1].1, |row| row.1);
    let upper = Nanometres::from_mm(either);
    Deviations { lower: -upper, upper }
}

fn measured(section: &Section<'_>, key: &str, notes: &mut Notes) -> Option<AxialSize> {
    let table = section.section(key, &["measured", "within"], notes)?;
    table.missing("measured", "give the reading, such as measured = \"23.98 mm\"", notes);
    table.missing("within", "give the measuring uncertainty, such as within = \"0.01 mm\"", notes);
    let reading = table.quantity("measured", quantity::length, notes);
    let within = table.small_length("within", notes);
    let (reading, within) = (reading?, within?);
    if within.value < Length::default() {
        notes.problem(
            within.at,
            format!("`{}` is below zero", table.path("within")),
            "give how far the reading may be off",
        );
        return None;
    }
    Some(AxialSize {
        nominal: reading.value,
        least: reading.value - within.value,
        most: reading.value + within.value,
        basis: "measured".to_owned(),
    })
}
