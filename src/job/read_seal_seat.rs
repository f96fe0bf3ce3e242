//! What a job says of a seal's bore and shaft.

use super::entry::AnyValue;
use super::model::Size;
use super::model_seal::SealBore;
use super::read_size::{Seating, size};
use super::section::{Notes, Section};
use crate::fit::{self, Feature, Limits, ToleranceClass};
use crate::quantity::{self, Length, Nanometres, Roughness, reference_temperature};
use crate::stock::Library;

/// Range of hardness that the scale holds for, HRC.
const HARDNESS_HRC: (f64, f64) = (20.0, 70.0);

/// The bore: that of the bearing when it has the same diameter, else its own, H8 unless stated.
pub(super) fn bore(section: &Section<'_>, nominal: Length, shares: bool, notes: &mut Notes) -> Option<SealBore> {
    if shares && !section.has("bore_limits") {
        let why = "the seal and the bearing have the same outside, so they share the bore; state bore_limits for a bore of its own";
        notes.assume("seal.bore_limits", AnyValue::Text("those of the bearing's bore".into()), why);
        return Some(SealBore::OfBearing);
    }
    let why = "the usual bore of shaft seals, DIN 3760 in a web reproduction; state bore_limits under [seal]";
    let (limits, basis) = limits(section, "bore_limits", nominal, Feature::Hole, ("H8", why), notes)?;
    Some(SealBore::Own { limits, basis })
}

/// Limits of the shaft under the lip, h11 unless stated.
pub(super) fn shaft(section: &Section<'_>, nominal: Length, notes: &mut Notes) -> Option<(Limits, String)> {
    let why = "the usual shaft of shaft seals, DIN 3760 in a web reproduction; state shaft_limits under [seal]";
    limits(section, "shaft_limits", nominal, Feature::Shaft, ("h11", why), notes)
}

fn limits(
    section: &Section<'_>,
    key: &str,
    nominal: Length,
    feature: Feature,
    (usual, why): (&str, &str),
    notes: &mut Notes,
) -> Option<(Limits, String)> {
    if section.is_table(key) {
        notes.problem(
            section.place(key),
            format!("`{}` must be text", section.path(key)),
            "write a class or limits, such as \"H8\" or \"0/+46 um\"",
        );
        return None;
    }
    if !section.has(key) {
        let class = ToleranceClass::parse(usual).ok()?;
        let limits = match fit::limits_of_size(Nanometres::from_length(nominal), class) {
            Ok(limits) => limits,
            Err(error) => {
                notes.problem(section.at.clone(), format!("`{}`: {error}", section.path(key)), "state the limits");
                return None;
            }
        };
        notes.assume(section.path(key), AnyValue::Limits(limits.deviations), format!("{usual}, {why}"));
        return Some((limits, usual.to_owned()));
    }
    let seating = Seating { nominal, feature, ring: None, shop: reference_temperature() };
    match size(section, key, &seating, &Library::default(), notes)? {
        Size::Limits { limits, basis } => Some((limits, basis)),
        Size::Measured(_) => None,
    }
}

/// A roughness that may be left out; `None` only when it was refused.
pub(super) fn rough(section: &Section<'_>, key: &str, notes: &mut Notes) -> Option<Option<Roughness>> {
    if !section.has(key) {
        return Some(None);
    }
    let words = section.words(key, "write the roughness as \"Ra 0.4 um\" or \"Rz 3 um\"", notes)?;
    match quantity::roughness(words.text) {
        Ok(entered) => {
            section.enter(key, words.text, AnyValue::Roughness(entered.value), entered.system, notes);
            Some(Some(entered.value))
        }
        Err(error) => {
            notes.problem(words.part(error.at), format!("`{}`: {}", section.path(key), error.problem), error.help);
            None
        }
    }
}

/// Hardness of the shaft, HRC; `None` only when it was refused.
pub(super) fn hardness(section: &Section<'_>, notes: &mut Notes) -> Option<Option<f64>> {
    let key = "shaft_hardness";
    if !section.has(key) {
        return Some(None);
    }
    let wanted = "write the hardness as \"58 HRC\"";
    let words = section.words(key, wanted, notes)?;
    let number = words.text.trim().to_uppercase().strip_suffix("HRC").and_then(|text| text.trim().parse::<f64>().ok());
    match number.filter(|number| (HARDNESS_HRC.0..=HARDNESS_HRC.1).contains(number)) {
        Some(number) => {
            section.enter(key, words.text, AnyValue::Text(format!("{number} HRC")), None, notes);
            Some(Some(number))
        }
        None => {
            let message = format!(
                "`{}` cannot be \"{}\": it must lie from {} HRC to {} HRC",
                section.path(key),
                words.text,
                HARDNESS_HRC.0,
                HARDNESS_HRC.1
            );
            notes.problem(words.at, message, wanted);
            None
        }
    }
}
