use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level};
use crate::plan::model::SeatPlan;
use crate::plan::sentence::say;
use crate::quantity::Toward;

const ELASTIC: &str = "thick-wall rings (Lamé), plane stress, strength of the weaker part (see sources)";

/// Factor below which the elastic limit is called near.
const NEAR: f64 = 1.25;

/// Whether the rings stay elastic.
pub(super) fn of_seat(seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(factor) = seat.press.yield_factor.tightest else { return };
    let opening = format!("{} seat: the {} ", seat.seat.name(), seat.press.weaker);
    if factor < 1.0 {
        let sentence = say(opening)
            .text("passes its strength in the tightest case (strength over stress ")
            .value(AnyValue::Number(factor), Toward::Down)
            .text("). The elastic formulas no longer hold: pressure and force are not to be relied on. It stays elastic up to ")
            .small(seat.press.elastic_limit, Toward::Down)
            .text(" of interference.");
        found.push(Caution::new("elastic-limit-passed", Level::Danger, sentence, ELASTIC).forbidding());
    } else if factor < NEAR {
        let sentence = say(opening)
            .text("comes close to its strength in the tightest case (strength over stress ")
            .value(AnyValue::Number(factor), Toward::Down)
            .text("). Measure both parts before fitting.");
        found.push(Caution::new("elastic-limit-near", Level::Caution, sentence, ELASTIC));
    }
}
