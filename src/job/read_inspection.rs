//! What was found when the parts were looked at.

use super::entry::AnyValue;
use super::inspection::{Feel, Inspection, RemovedThrough};
use super::model::Part;
use super::read_means::within;
use super::section::{Notes, Section, nearest};
use crate::quantity::{self, Length};
use uom::si::length::{micrometer, millimeter};

pub(super) const KEYS: [&str; 6] = ["bearing", "feel", "removed_through", "run_out", "lead_in", "lip_track"];

/// The parts that a job has, which decide what can be looked at.
pub(super) struct Has {
    pub(super) shaft: bool,
    pub(super) seal: bool,
}

/// `None` only when something could not be read.
pub(super) fn inspection(section: &Section<'_>, part: &Part, has: &Has, notes: &mut Notes) -> Option<Inspection> {
    belongs(section, part, has, notes)?;
    let used = one_of(section, "bearing", &[("new", false), ("used", true)], notes);
    let feel = one_of(section, "feel", &Feel::NAMES, notes);
    let removed = one_of(section, "removed_through", &RemovedThrough::NAMES, notes);
    let um = |length: Length| length.get::<micrometer>();
    let run_out_range = (um as fn(Length) -> f64, 0.0..=2000.0, "0 um to 2000 um");
    let run_out = within(section, "run_out", quantity::length, run_out_range, notes);
    let mm = |length: Length| length.get::<millimeter>();
    let lead_in_range = (mm as fn(Length) -> f64, 0.0..=50.0, "0 mm to 50 mm");
    let lead_in = within(section, "lead_in", quantity::length, lead_in_range, notes);
    let lip_track = lip_track(section, notes);
    Some(Inspection {
        used: used?,
        feel: feel?,
        removed: removed?,
        run_out: run_out?,
        lead_in: lead_in?,
        lip_track: lip_track?,
    })
}

/// A finding on a part that the job does not have is a slip.
fn belongs(section: &Section<'_>, part: &Part, has: &Has, notes: &mut Notes) -> Option<()> {
    let needs = [
        ("bearing", part.kind.is_bearing(), "a bearing"),
        ("feel", part.kind.is_bearing(), "a bearing"),
        ("removed_through", part.kind.is_bearing(), "a bearing"),
        ("run_out", has.shaft, "a [shaft]"),
        ("lip_track", has.seal, "a [seal]"),
    ];
    let mut sound = Some(());
    for (key, present, what) in needs {
        if section.has(key) && !present {
            let message = format!("`{}` is of {what}, but the job has none", section.path(key));
            notes.problem(section.place(key), message, "leave it out, or describe that part");
            sound = None;
        }
    }
    sound
}

/// A word out of a list; `None` only when it was given and is none of them.
fn one_of<T: Copy>(
    section: &Section<'_>,
    key: &str,
    names: &[(&'static str, T)],
    notes: &mut Notes,
) -> Option<Option<T>> {
    if !section.has(key) {
        return Some(None);
    }
    let list = names.iter().map(|(name, _)| format!("\"{name}\"")).collect::<Vec<_>>().join(", ");
    let words = section.words(key, &format!("write one of: {list}"), notes)?;
    let typed = words.text.trim().to_lowercase();
    match names.iter().find(|(name, _)| *name == typed) {
        Some((name, value)) => {
            section.enter(key, words.text, AnyValue::Text((*name).to_owned()), None, notes);
            Some(Some(*value))
        }
        None => {
            let meant = nearest(&typed, names.iter().map(|(name, _)| *name))
                .map_or(String::new(), |meant| format!("did you mean \"{meant}\"? "));
            let message = format!("`{}` cannot be \"{}\"", section.path(key), words.text);
            notes.problem(words.at, message, format!("{meant}write one of: {list}"));
            None
        }
    }
}

/// Roughness Ra of the track of the lip.
fn lip_track(section: &Section<'_>, notes: &mut Notes) -> Option<Option<Length>> {
    let wanted = "write the roughness of the shaft under the lip, such as \"Ra 0.4 um\"";
    if !section.has("lip_track") {
        return Some(None);
    }
    let words = section.words("lip_track", wanted, notes)?;
    match quantity::roughness(words.text) {
        Ok(entered) => match entered.value {
            quantity::Roughness::Ra(ra) => {
                section.enter("lip_track", words.text, AnyValue::SmallLength(ra), entered.system, notes);
                Some(Some(ra))
            }
            quantity::Roughness::Rz(_) => {
                notes.problem(words.at, format!("`{}` is an Rz", section.path("lip_track")), wanted);
                None
            }
        },
        Err(error) => {
            notes.problem(
                words.part(error.at),
                format!("`{}`: {}", section.path("lip_track"), error.problem),
                error.help,
            );
            None
        }
    }
}
