use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level};
use crate::plan::model::{SeatKind, SeatPlan};
use crate::plan::push::{Plastic, TakesSet};
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Pressure, Ratio, Toward};
use uom::si::ratio::ratio;

const ELASTIC: &str = "thick-wall rings (Lamé), plane stress, strength of the weaker part (see sources)";

const PLASTIC: &str = "ring that yields from its bore outward under pressure from outside, Tresca, plane stress, ideal plastic, small \
                       strains (own derivation)";

/// Factor below which the elastic limit is called near.
pub(super) const NEAR: f64 = 1.25;

/// Whether the rings stay elastic.
pub(super) fn of_seat(seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(factor) = seat.press.yield_factor.tightest else { return };
    // How much stiffer than certain the seat may be.
    let (low, high) = seat.press.shape.pressure;
    let stiffer = high / low;
    let opening = format!("{} seat: the {} ", seat.seat.name(), seat.press.weaker);
    if let Some(set) = &seat.press.takes_set {
        found.push(takes_set(seat, set));
    } else if factor < 1.0 {
        let sentence = say(opening)
            .text("passes its strength in the tightest case (strength over stress ")
            .value(AnyValue::Number(factor), Toward::Down)
            .text("). The elastic formulas no longer hold: pressure and force are not to be relied on. It stays elastic up to ")
            .small(seat.press.elastic_limit, Toward::Down)
            .text(" of interference.");
        let sentence = match &seat.press.plastic {
            Some(plastic) => yielded(sentence, plastic),
            None => sentence,
        };
        found.push(Caution::new("elastic-limit-passed", Level::Danger, sentence, ELASTIC).forbidding());
    } else if factor < NEAR * stiffer {
        let sentence = say(opening)
            .text(if factor < stiffer { "may pass" } else { "comes close to" })
            .text(" its strength in the tightest case (strength over stress ")
            .value(AnyValue::Number(factor / stiffer), Toward::Down)
            .text("). Measure both parts before fitting.");
        found.push(Caution::new("elastic-limit-near", Level::Caution, sentence, ELASTIC));
    }
}

/// A ductile bush, or hollow shaft, that yields from its bore outward and goes on holding.
///
/// Nothing forbids it: a ring pressed from outside yields where its bore is, is held round by a seat that stays elastic, and bears
/// no less for it. Bushes of some 20 mm with the fits of ISO 4379 are pressed so every day, bore closed and then reamed, many of
/// them plastic all through. That is the graver finding: a tighter fit would hold no more, as the surplus only moves metal, and
/// how far the bore closes is known less well. Of a shaft it is graver again, since it carries load besides.
fn takes_set(seat: &SeatPlan, set: &TakesSet) -> Caution {
    let shaft = seat.seat == SeatKind::Shaft;
    let pressure = |pressure: Pressure| AnyValue::Pressure(pressure);
    let opening = say(format!("{} seat: the {} ", seat.seat.name(), seat.inner.name));
    let sentence = match set.surplus {
        None => opening
            .text("yields over ")
            .value(share(set.share), Toward::Up)
            .text(" of its wall in the tightest case and takes a set. It goes on holding and bears ")
            .value(pressure(set.pressure), Toward::Down)
            .text(" or more (at the most 15 % more, with which the force to press it is told); its bore closes by "),
        Some(surplus) => opening
            .text("yields through its whole wall in the tightest case. It goes on holding, but with ")
            .value(pressure(set.pressure), Toward::Down)
            .text(" however tight the fit (at the most 15 % more, with which the force to press it is told): the last ")
            .small(surplus, Toward::Up)
            .text(" of interference only move metal. Its bore closes by "),
    };
    let sentence = sentence.small(set.closes, Toward::Nearest).text(match (shaft, set.surplus) {
        (false, None) => ", elastic and plastic: measure it once it is in, then ream or size it.",
        (false, Some(_)) => {
            ", elastic and plastic, more where it cannot grow longer: measure it once it is in, then ream or size it. Where it must \
             hold more, take a thicker wall or a stronger metal, or secure it, and not a tighter fit."
        }
        (true, _) => {
            ", elastic and plastic. What it carries in service comes on top: choose a looser fit, a smaller bore or a stronger shaft."
        }
    });
    let sentence = sentence
        .text(" Taken out, it has ")
        .small(set.lost, Toward::Up)
        .text(" less interference for a second fitting.");
    let code = if shaft { "shaft-takes-set" } else { "bush-takes-set" };
    let level = if shaft || set.surplus.is_some() { Level::Warning } else { Level::Caution };
    Caution::new(code, level, sentence, PLASTIC)
}

fn share(value: f64) -> AnyValue {
    AnyValue::Share(Ratio::new::<ratio>(value))
}

/// What an ideal plastic hub keeps.
fn yielded(sentence: Sentence, plastic: &Plastic) -> Sentence {
    let sentence = sentence
        .text(" An ideal plastic wall would yield over ")
        .value(share(plastic.share), Toward::Up)
        .text(" of its section and bear ")
        .value(AnyValue::Pressure(plastic.pressure), Toward::Nearest);
    match plastic.lost {
        Some(lost) => {
            sentence.text("; a second fitting would have ").small(lost, Toward::Up).text(" less interference.")
        }
        None => sentence.text("."),
    }
}
