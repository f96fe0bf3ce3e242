//! A step in the outside of a boss.

use super::entry::AnyValue;
use super::model::Step;
use super::read_seats::possible_outside;
use super::section::{Notes, Section, in_mm};
use crate::quantity::{self, Length};
use uom::si::length::millimeter;

const KEYS: [&str; 2] = ["outside", "from_front"];

/// Least and most of the boss's length in front of a step, as shares: nearer to an end it is a chamfer or a rim.
const PLACES: (f64, f64) = (0.02, 0.98);
/// By how much of the bore both outsides must differ.
const LEAST_STEP: f64 = 0.002;

/// The boss that a step is in.
pub(super) struct Boss {
    pub(super) bore: Length,
    /// Outside at the front; none where it was refused.
    pub(super) outside: Option<Length>,
    pub(super) length: Option<Length>,
    /// Whether its wall is not the same all round.
    pub(super) uneven: bool,
}

/// The step of a housing; `None` only where it was refused.
pub(super) fn step(section: &Section<'_>, boss: &Boss, notes: &mut Notes) -> Option<Option<Step>> {
    if !section.has("step") {
        return Some(None);
    }
    let table = section.section("step", &KEYS, notes)?;
    table.missing("outside", "give the outside diameter behind the step, towards the back", notes);
    table.missing("from_front", "give the distance of the step from the front face of the boss", notes);
    let behind = table.quantity("outside", quantity::length, notes);
    let from_front = table.quantity("from_front", quantity::length, notes);
    let refuse = |notes: &mut Notes, message: &str, help: &str| notes.problem(section.place("step"), message, help);
    if boss.uneven {
        refuse(notes, "a boss has a `step` or an uneven `wall`, not both", "keep the one that changes the wall most");
        return None;
    }
    if !section.has("length") {
        let help = "give the length of the boss, from its front face to its back: where a step lies is told from it";
        refuse(notes, "`housing.step` needs `housing.length`", help);
        return None;
    }
    let (behind, from_front, outside, length) = (behind?, from_front?, boss.outside?, boss.length?);
    let (at, place) = (behind.at.clone(), from_front.at.clone());
    let behind = possible_outside(behind, boss.bore, notes)?;
    if (behind - outside).abs() < LEAST_STEP * boss.bore {
        let message = format!(
            "the boss is {:.3} mm outside in front of the step and {:.3} mm behind it, which must differ by {:.3} mm at least",
            in_mm(outside),
            in_mm(behind),
            in_mm(LEAST_STEP * boss.bore)
        );
        notes.problem(at, message, "leave `step` out where the boss is plain");
        return None;
    }
    let (least, most) = (PLACES.0 * length, PLACES.1 * length);
    if from_front.value < least || from_front.value > most {
        let message = format!(
            "the step lies {:.3} mm from the front face but must lie from {:.3} to {:.3} mm in a boss {:.3} mm long",
            in_mm(from_front.value),
            in_mm(least),
            in_mm(most),
            in_mm(length)
        );
        notes.problem(place, message, "count from the face at which the part goes in; leave `step` out at an end");
        return None;
    }
    let step = Step { outside: behind, from_front: from_front.value };
    assume(section, step.even_outside(outside, length), notes);
    Some(Some(step))
}

fn assume(section: &Section<'_>, even: Length, notes: &mut Notes) {
    let even = Length::new::<millimeter>((in_mm(even) * 1e3).round() / 1e3);
    let why = "a stepped boss takes up heat as the plain one of the same volume; its stress is that of two rings around the thinner \
               part, times what its section adds (own reasoning, no published source)";
    notes.assume(section.path("step: even outside"), AnyValue::RoughSize(even), why);
}
