use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level};
use crate::plan::model::SeatPlan;
use crate::plan::push::Plastic;
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Ratio, Toward};
use uom::si::ratio::ratio;

const ELASTIC: &str = "thick-wall rings (Lamé), plane stress, strength of the weaker part (see sources)";

/// Factor below which the elastic limit is called near.
pub(super) const NEAR: f64 = 1.25;

/// Whether the rings stay elastic.
pub(super) fn of_seat(seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(factor) = seat.press.yield_factor.tightest else { return };
    // How much stiffer than certain the seat may be.
    let (low, high) = seat.press.shape.pressure;
    let stiffer = high / low;
    let opening = format!("{} seat: the {} ", seat.seat.name(), seat.press.weaker);
    if factor < 1.0 {
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

/// What an ideal plastic hub keeps.
fn yielded(sentence: Sentence, plastic: &Plastic) -> Sentence {
    let sentence = sentence
        .text(" An ideal plastic wall would yield over ")
        .value(AnyValue::Share(Ratio::new::<ratio>(plastic.share)), Toward::Up)
        .text(" of its section and bear ")
        .value(AnyValue::Pressure(plastic.pressure), Toward::Nearest);
    match plastic.lost {
        Some(lost) => {
            sentence.text("; a second fitting would have ").small(lost, Toward::Up).text(" less interference.")
        }
        None => sentence.text("."),
    }
}
