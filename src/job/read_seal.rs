//! The shaft seal: its lip, its sizes, its place.

use super::entry::AnyValue;
use super::model::Part;
use super::model_seal::{PassesOver, Seal, SealBody, SealLips};
use super::read_seal_seat::{bore, hardness, rough, shaft};
use super::read_seal_sizes::sizes;
use super::section::{Notes, Section, flatten, in_mm, nearest};
use crate::quantity::{self, Length};
use crate::stock::closure::{self, Elastomer};
use crate::stock::seal_seats::SealCase;

pub(super) const KEYS: [&str; 22] = [
    "lip",
    "fitted",
    "size",
    "inside",
    "outside",
    "width",
    "case",
    "lips",
    "bore_limits",
    "bore_roughness",
    "chamfer",
    "shaft_limits",
    "shaft_roughness",
    "shaft_hardness",
    "shaft_end",
    "depth",
    "shoulder",
    "drain",
    "worn_track",
    "passes_over",
    "sealant",
    "speed",
];

/// What the seal sits beside.
pub(super) struct Beside<'p> {
    pub(super) part: &'p Part,
    pub(super) housing: bool,
}

/// A seal that goes in without a bearing.
pub(super) fn seal_alone(section: &Section<'_>, notes: &mut Notes) -> Option<Seal> {
    let lip = lip(section, notes);
    if section.has("fitted") {
        let message = "`seal.fitted` says when a bearing goes in, and this job has none";
        notes.problem(section.place("fitted"), message, "leave it out, or describe the [bearing] and its [housing]");
    }
    let body = body(section, None, notes);
    Some(Seal { lip: lip?, fitted_first: false, body: Some(Box::new(body?)) })
}

pub(super) fn seal(section: &Section<'_>, beside: &Beside<'_>, notes: &mut Notes) -> Option<Seal> {
    let lip = lip(section, notes);
    let fitted_first = fitted_first(section, notes);
    // Whatever is said beyond the lip is said of a seal whose sizes are wanted too.
    let wanted = KEYS[2..].iter().any(|key| section.has(key));
    let body = flatten(wanted.then(|| body(section, Some(beside), notes)));
    Some(Seal { lip: lip?, fitted_first: fitted_first?, body: body?.map(Box::new) })
}

fn lip(section: &Section<'_>, notes: &mut Notes) -> Option<Elastomer> {
    let wanted = "write the elastomer of the lip, such as \"NBR\" or \"FKM\"";
    section.missing("lip", wanted, notes);
    let words = section.words("lip", wanted, notes)?;
    match closure::elastomer(words.text) {
        Ok(lip) => Some(lip),
        Err(error) => {
            notes.problem(words.at, format!("`seal.lip`: {error}"), wanted);
            None
        }
    }
}

/// Whether it sits in the housing before the bearing goes in.
fn fitted_first(section: &Section<'_>, notes: &mut Notes) -> Option<bool> {
    let wanted = "write \"before the bearing\" or \"after the bearing\"";
    if !section.has("fitted") {
        let why = "not stated; a seal behind the bearing goes in first and feels the heat of the housing";
        notes.assume("seal.fitted", AnyValue::Text("before the bearing".into()), why);
        return Some(true);
    }
    let words = section.words("fitted", wanted, notes)?;
    match words.text.trim().to_lowercase().as_str() {
        "before the bearing" | "before" => Some(true),
        "after the bearing" | "after" => Some(false),
        other => {
            notes.problem(words.at, format!("`seal.fitted` cannot be \"{other}\""), wanted);
            None
        }
    }
}

fn body(section: &Section<'_>, beside: Option<&Beside<'_>>, notes: &mut Notes) -> Option<SealBody> {
    let sizes = sizes(section, notes);
    let case = choice(section, "case", &SealCase::NAMES, (SealCase::Rubber, CASE_WHY), notes);
    let lips = choice(section, "lips", &SealLips::NAMES, (SealLips::Single, LIPS_WHY), notes);
    let sealant = choice(section, "sealant", &[("yes", true), ("no", false)], (false, SEALANT_WHY), notes);
    let passes_over = choice(section, "passes_over", &PassesOver::NAMES, (PassesOver::PlainShaft, PASSES_WHY), notes);
    let speed = flatten(section.has("speed").then(|| section.quantity("speed", quantity::speed_of_turning, notes)));
    let hardness = hardness(section, notes);
    let (bore_roughness, shaft_roughness) =
        (rough(section, "bore_roughness", notes), rough(section, "shaft_roughness", notes));
    let [inside, outside, width] = sizes?;
    let shares_bore =
        beside.is_some_and(|beside| beside.housing && (in_mm(outside) - in_mm(beside.part.outside)).abs() <= 1e-6);
    let bore = bore(section, outside, shares_bore, notes);
    let shaft = shaft(section, inside, notes);
    let chamfer = optional(section, "chamfer", (0.05, 10.0), notes);
    let shaft_end = optional(section, "shaft_end", (1.0, in_mm(inside)), notes);
    let shoulder = optional(section, "shoulder", (0.5, 1000.0), notes);
    let drain = optional(section, "drain", (0.1, 1000.0), notes);
    let worn_track = optional(section, "worn_track", (0.01, 10.0), notes);
    let depth = depth(section, width, shoulder.flatten(), notes);
    let (shaft, shaft_basis) = shaft?;
    Some(SealBody {
        inside,
        outside,
        width,
        case: case?,
        lips: lips?,
        bore: bore?,
        shaft,
        shaft_basis,
        bore_roughness: bore_roughness?,
        shaft_roughness: shaft_roughness?,
        shaft_hardness: hardness?,
        chamfer: chamfer?,
        shaft_end: shaft_end?,
        depth: depth?,
        shoulder: shoulder?,
        drain: drain?,
        worn_track: worn_track?,
        passes_over: section.has("passes_over").then_some(passes_over?),
        sealant: sealant?,
        speed: speed?.map(|found| found.value),
    })
}

const CASE_WHY: &str =
    "common practice, no published source: the usual case of a repair seal; state case = \"metal\" for bare sheet";
const LIPS_WHY: &str = "not stated; state lips = \"double\" where there is a second lip against dirt";
const SEALANT_WHY: &str = "not stated; a rubber case needs none, a metal case in a sound bore seldom";
const PASSES_WHY: &str = "not stated; state passes_over where the lip goes over a thread, a spline or a keyway";

/// The word under `key`, or the usual one with its reason.
fn choice<T: Copy + PartialEq>(
    section: &Section<'_>,
    key: &str,
    names: &[(&'static str, T)],
    (usual, why): (T, &'static str),
    notes: &mut Notes,
) -> Option<T> {
    let list: Vec<&str> = names.iter().map(|(name, _)| *name).collect();
    if !section.has(key) {
        let name = names.iter().find(|(_, value)| *value == usual).map_or("", |(name, _)| name);
        notes.assume(section.path(key), AnyValue::Text(name.to_owned()), why);
        return Some(usual);
    }
    let wanted = format!("write one of: {}", list.join(", "));
    let words = section.words(key, &wanted, notes)?;
    let typed = words.text.trim();
    if let Some((name, value)) = names.iter().find(|(name, _)| name.eq_ignore_ascii_case(typed)) {
        section.enter(key, words.text, AnyValue::Text((*name).to_owned()), None, notes);
        return Some(*value);
    }
    let help =
        nearest(typed, list.into_iter()).map_or(wanted.clone(), |meant| format!("did you mean \"{meant}\"? {wanted}"));
    notes.problem(words.at, format!("`{}` cannot be \"{typed}\"", section.path(key)), help);
    None
}

/// A length that may be left out; `None` only when it was refused.
fn optional(section: &Section<'_>, key: &str, (low, high): (f64, f64), notes: &mut Notes) -> Option<Option<Length>> {
    if !section.has(key) {
        return Some(None);
    }
    let found = section.quantity(key, quantity::length, notes)?;
    let value = in_mm(found.value);
    if (low..=high).contains(&value) {
        return Some(Some(found.value));
    }
    let message = format!("`{}` is {value} mm but must lie from {low} mm to {high} mm", section.path(key));
    notes.problem(found.at, message, "check the number and its unit");
    None
}

/// Depth of the face that goes in first: as asked, against the shoulder, or so that the seal is flush.
fn depth(section: &Section<'_>, width: Length, shoulder: Option<Length>, notes: &mut Notes) -> Option<Length> {
    if section.has("depth") {
        return optional(section, "depth", (0.5, 1000.0), notes)?;
    }
    let (depth, why) = match shoulder {
        Some(shoulder) => {
            (shoulder, "not stated: against its shoulder; state depth, from the face to the end that goes in first")
        }
        None => (width, "common practice, no published source: flush with the face; state depth or shoulder"),
    };
    notes.assume(section.path("depth"), AnyValue::Size(depth), why);
    Some(depth)
}
