//! How the part is pressed home: friction in the seat, and what presses.

use super::entry::AnyValue;
use super::model::Press;
use super::read_means::{MEANS_KEYS, means};
use super::section::{Notes, Section};
use crate::fit;
use crate::quantity;
use crate::stock::friction::{Lubrication, friction};
use crate::stock::material::Material;
use uom::si::force::kilonewton;

/// Keys of [press]: those of the seat, then those of the means.
pub(super) fn press_keys() -> Vec<&'static str> {
    ["capacity", "condition", "friction", "smoothing"].into_iter().chain(MEANS_KEYS).collect()
}

/// The two materials of the seat that is pressed.
pub(super) struct Pair<'m> {
    pub(super) inner: &'m Material,
    pub(super) outer: &'m Material,
}

pub(super) fn press(section: Option<&Section<'_>>, pair: &Pair<'_>, notes: &mut Notes) -> Option<Press> {
    let (friction, friction_source) = friction_of(section, pair, notes)?;
    let capacity = section.and_then(|section| section.quantity("capacity", quantity::force, notes));
    if let Some(found) = &capacity {
        let force = found.value.get::<kilonewton>();
        if !(0.01..=100_000.0).contains(&force) {
            let message = format!("`press.capacity` is {force} kN but must lie from 0.01 kN to 100000 kN");
            notes.problem(found.at.clone(), message, "check the number and its unit");
        }
    }
    let means = section.map_or(Some(None), |section| means(section, notes));
    let smoothing = smoothing(section, notes)?;
    Some(Press { friction, friction_source, capacity: capacity.map(|found| found.value), means: means?, smoothing })
}

fn friction_of(section: Option<&Section<'_>>, pair: &Pair<'_>, notes: &mut Notes) -> Option<((f64, f64), String)> {
    if let Some(section) = section.filter(|section| section.has("friction")) {
        let found = section.quantity("friction", quantity::number, notes)?;
        if !(0.01..=1.0).contains(&found.value) {
            let message = format!("`press.friction` is {} but must lie from 0.01 to 1", found.value);
            notes.problem(found.at, message, "dry metal gives 0.1 to 0.2, oiled 0.05 to 0.12");
            return None;
        }
        return Some(((found.value, found.value), "stated in the job".to_owned()));
    }
    let lubrication = match section.and_then(|s| s.words("condition", "write \"dry\" or \"oiled\"", notes)) {
        None => {
            notes.assume("press.condition", AnyValue::Text("oiled".into()), "not stated; dry seats need more force");
            Lubrication::Oiled
        }
        Some(words) => match words.text.trim().to_lowercase().as_str() {
            "dry" => Lubrication::Dry,
            "oiled" => Lubrication::Oiled,
            other => {
                let message = format!("`press.condition` cannot be \"{other}\"");
                notes.problem(words.at, message, "write \"dry\" or \"oiled\"");
                return None;
            }
        },
    };
    let range = match friction(pair.inner.family(), pair.outer.family(), lubrication) {
        Ok(range) => range,
        Err(error) => {
            notes.problem(0..0, error.to_string(), "state friction under [press]");
            return None;
        }
    };
    let value = AnyValue::Text(format!("{} to {}", range.low, range.high));
    let source = range.provenance.to_string();
    notes.assume("press.friction", value, format!("{source}; state friction under [press]"));
    Some(((range.low, range.high), source))
}

fn smoothing(section: Option<&Section<'_>>, notes: &mut Notes) -> Option<f64> {
    let Some(section) = section.filter(|section| section.has("smoothing")) else {
        return Some(fit::SMOOTHING_FACTOR);
    };
    let found = section.quantity("smoothing", quantity::number, notes)?;
    if !(0.0..=1.0).contains(&found.value) {
        let message = format!("`press.smoothing` is {} but must lie from 0 to 1", found.value);
        notes.problem(found.at, message, "give the share of (Rz inner + Rz outer) that is smoothed away");
        return None;
    }
    Some(found.value)
}
