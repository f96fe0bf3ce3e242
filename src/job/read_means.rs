//! What presses: an arbor press, a hydraulic ram, a screw jig, hammer and sleeve.

use super::entry::AnyValue;
use super::model::{PressMeans, ScrewJig};
use super::section::{Notes, Section, nearest};
use crate::quantity::{self, Length, Pressure, Torque};
use crate::stock::threads::{StrengthClass, Thread, hexagon_nut, strength_class};
use std::ops::RangeInclusive;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::torque::newton_meter;

pub(super) const MEANS_KEYS: [&str; 8] =
    ["means", "ram", "ram_pressure", "thread", "strength", "screw_friction", "torque", "rod_length"];

/// Friction of an oiled screw, in the thread and under the nut.
const SCREW_FRICTION: (f64, f64) = (0.10, 0.16);
const SCREW_FRICTION_WHY: &str = "oiled steel screws, VDI 2230 friction class B is 0.08 to 0.16 (from memory), its slippery end left out for a jig that has \
     been used; state screw_friction = \"0.10 to 0.14\" when it is known";

/// `None` only when something was wanted and could not be read.
pub(super) fn means(section: &Section<'_>, notes: &mut Notes) -> Option<Option<PressMeans>> {
    let names = PressMeans::NAMES.map(|name| format!("\"{name}\"")).join(", ");
    if !section.has("means") {
        let stray = MEANS_KEYS.iter().find(|key| section.has(key));
        if let Some(key) = stray {
            let message = format!("`{}` needs `means` beside it", section.path(key));
            notes.problem(section.place(key), message, format!("write means = one of: {names}"));
            return None;
        }
        return Some(None);
    }
    let words = section.words("means", &format!("write one of: {names}"), notes)?;
    let typed = words.text.trim().to_lowercase();
    let read = match typed.as_str() {
        "arbor press" => Some(PressMeans::Arbor),
        "hydraulic press" => hydraulic(section, notes),
        "screw jig" => jig(section, notes).map(|jig| PressMeans::Screw(Box::new(jig))),
        "hammer and sleeve" => Some(PressMeans::HammerAndSleeve),
        _ => {
            let help = nearest(&typed, PressMeans::NAMES.into_iter())
                .map_or(String::new(), |meant| format!("did you mean \"{meant}\"? "));
            let message = format!("`{}` cannot be \"{}\"", section.path("means"), words.text);
            notes.problem(words.at, message, format!("{help}write one of: {names}"));
            None
        }
    }?;
    belongs(section, &read, notes)?;
    Some(Some(read))
}

/// Keys of other means are a slip.
fn belongs(section: &Section<'_>, means: &PressMeans, notes: &mut Notes) -> Option<()> {
    let own: &[&str] = match means {
        PressMeans::Arbor | PressMeans::HammerAndSleeve => &["means"],
        PressMeans::Hydraulic { .. } => &["means", "ram", "ram_pressure"],
        PressMeans::Screw(_) => &["means", "thread", "strength", "screw_friction", "torque", "rod_length"],
    };
    let stray = MEANS_KEYS.iter().find(|key| section.has(key) && !own.contains(key));
    let Some(key) = stray else { return Some(()) };
    let message = format!("`{}` does not belong to {}", section.path(key), means.name());
    notes.problem(section.place(key), message, format!("leave it out; it takes: {}", own[1..].join(", ")));
    None
}

fn hydraulic(section: &Section<'_>, notes: &mut Notes) -> Option<PressMeans> {
    let mm = |ram: Length| ram.get::<millimeter>();
    let ram = within(section, "ram", quantity::length, (mm, 5.0..=2000.0, "5 mm to 2000 mm"), notes)?;
    let mpa = |pressure: Pressure| pressure.get::<megapascal>();
    let pressure =
        within(section, "ram_pressure", quantity::pressure, (mpa, 0.1..=300.0, "0.1 MPa to 300 MPa"), notes)?;
    Some(PressMeans::Hydraulic { ram, pressure })
}

/// A quantity under `key` that must lie in a range of plain numbers; `None` only when it was given and could not be used.
pub(super) fn within<Q: super::section::Echo + Copy>(
    section: &Section<'_>,
    key: &str,
    parse: fn(&str) -> Result<quantity::Entered<Q>, quantity::QuantityError>,
    (number, range, words): (fn(Q) -> f64, RangeInclusive<f64>, &str),
    notes: &mut Notes,
) -> Option<Option<Q>> {
    if !section.has(key) {
        return Some(None);
    }
    let found = section.quantity(key, parse, notes)?;
    if range.contains(&number(found.value)) {
        return Some(Some(found.value));
    }
    let message = format!("`{}` is out of range: it must lie from {words}", section.path(key));
    notes.problem(found.at, message, "check the number and its unit");
    None
}

fn jig(section: &Section<'_>, notes: &mut Notes) -> Option<ScrewJig> {
    section.missing("thread", "give the thread of the screw, such as \"M12\" or \"1/2-13 UNC\"", notes);
    let thread = thread(section, notes);
    let friction = screw_friction(section, notes);
    let newton_metres = |torque: Torque| torque.get::<newton_meter>();
    let range = (newton_metres as fn(Torque) -> f64, 0.1..=10_000.0, "0.1 N·m to 10000 N·m");
    let torque = within(section, "torque", quantity::torque, range, notes);
    let length = |length: Length| length.get::<millimeter>();
    let rod_length = within(section, "rod_length", quantity::length, (length, 5.0..=3000.0, "5 mm to 3000 mm"), notes);
    let thread = thread?;
    let class = class(section, &thread, notes)?;
    let nut = match hexagon_nut(&thread) {
        Ok(nut) => nut.cloned(),
        Err(error) => {
            notes.problem(section.place("thread"), error.to_string(), "choose another thread");
            return None;
        }
    };
    let (friction, friction_source) = friction?;
    Some(ScrewJig { thread, class, nut, friction, friction_source, torque: torque?, rod_length: rod_length? })
}

pub(super) fn thread(section: &Section<'_>, notes: &mut Notes) -> Option<Thread> {
    let wanted = "give the thread of the screw, such as \"M12\" or \"1/2-13 UNC\"";
    let words = section.words("thread", wanted, notes)?;
    match Thread::parse(words.text) {
        Ok(thread) => {
            let value = AnyValue::Text(thread.designation.clone());
            section.enter("thread", words.text, value, None, notes);
            Some(thread)
        }
        Err(error) => {
            notes.advised(words.at, &section.path("thread"), &error.to_string(), wanted);
            None
        }
    }
}

/// `None` only when a class was given and is none.
fn class(section: &Section<'_>, thread: &Thread, notes: &mut Notes) -> Option<Option<StrengthClass>> {
    let name = if section.has("strength") {
        let words = section.words("strength", "give the class on the screw's head, such as \"8.8\"", notes)?;
        Some((words.text.to_owned(), words.at))
    } else {
        None
    };
    let (text, at) = name.clone().unwrap_or_else(|| (USUAL_CLASS.to_owned(), section.place("thread")));
    match strength_class(&text, thread.nominal) {
        Ok(class) if name.is_none() => {
            let why = "the weakest rod that is sold as stock (from memory); state strength when the screw is marked";
            notes.assume(section.path("strength"), AnyValue::Text(class.name()), why);
            Some(Some(class))
        }
        Ok(class) => Some(Some(class)),
        // A thread that the usual class does not cover is judged without one.
        Err(_) if name.is_none() => Some(None),
        Err(error) => {
            let help = "give the class on the screw's head, such as \"8.8\" or \"SAE grade 5\"";
            notes.advised(at, &section.path("strength"), &error.to_string(), help);
            None
        }
    }
}

/// Strength of a plain threaded rod.
const USUAL_CLASS: &str = "4.8";

fn screw_friction(section: &Section<'_>, notes: &mut Notes) -> Option<((f64, f64), String)> {
    if !section.has("screw_friction") {
        let value = AnyValue::Text(format!("{:.2} to {:.2}", SCREW_FRICTION.0, SCREW_FRICTION.1));
        notes.assume(section.path("screw_friction"), value, SCREW_FRICTION_WHY);
        return Some((SCREW_FRICTION, "oiled screw, from memory of VDI 2230".to_owned()));
    }
    Some((friction_range(section, "screw_friction", notes)?, "stated in the job".to_owned()))
}

/// The friction of a screw as stated under `key`: one coefficient, or the ends of a range.
pub(super) fn friction_range(section: &Section<'_>, key: &str, notes: &mut Notes) -> Option<(f64, f64)> {
    let wanted = "write it as \"0.12\" or \"0.10 to 0.16\"";
    let words = section.words(key, wanted, notes)?;
    let ends: Vec<&str> = words.text.splitn(2, " to ").collect();
    let read: Option<Vec<f64>> = ends.iter().map(|end| quantity::number(end).ok().map(|read| read.value)).collect();
    let (low, high) = match read.as_deref() {
        Some([both]) => (*both, *both),
        Some([low, high]) => (*low, *high),
        _ => {
            let message = format!("`{}` is no coefficient of friction", section.path(key));
            notes.problem(words.at, message, wanted);
            return None;
        }
    };
    if !(0.01..=0.5).contains(&low) || !(low..=0.5).contains(&high) {
        let path = section.path(key);
        let message = format!("`{path}` is {low} to {high} but must rise and lie from 0.01 to 0.5");
        notes.problem(words.at, message, "an oiled screw has 0.08 to 0.16, a dry one 0.14 to 0.24");
        return None;
    }
    section.enter(key, words.text, AnyValue::Text(format!("{low} to {high}")), None, notes);
    Some((low, high))
}
