use crate::job::{AnyValue, Job};
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::model::SeatPlan;
use crate::plan::sentence::say;
use crate::quantity::{ThermodynamicTemperature, Toward, celsius};
use crate::thermal::{Over, condensation_point};
use uom::si::ratio::ratio;

/// As cited at the formulas of [`crate::thermal`].
const SATURATION: &str = "dew and frost point: saturation formulas of Sonntag (1994)";

const ADVICE: &str = " Chill it in a sealed bag with the air pressed out, wipe it as it comes out, oil the seat at once; or \
                      warm the outer part instead.";

/// Dew and frost on a chilled piece.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(chill) = &seat.chill else { return };
    match job.bench.humidity {
        None => humidity_unknown(seat, chill.end_quick, found),
        Some(humidity) => {
            // Air too dry for the formulas leaves nothing on any part, and there is nothing to say.
            if let Ok((point, over)) = condensation_point(job.bench.temperature, humidity.get::<ratio>()) {
                below_condensation_point(seat, chill.end_quick, (point, over), found);
            }
        }
    }
}

fn below_condensation_point(
    seat: &SeatPlan,
    part: ThermodynamicTemperature,
    (point, over): (ThermodynamicTemperature, Over),
    found: &mut Vec<Caution>,
) {
    if part >= point {
        return;
    }
    let freezes = part < celsius(0.0);
    let what = if freezes { "frost" } else { "dew" };
    let name = if over == Over::Water { "dew point" } else { "frost point" };
    let sentence = say(format!("{} seat: the {name} of the shop is ", seat.seat.name()))
        .temperature(point, Toward::Nearest)
        .text(format!(" and the {} comes out at ", seat.inner.name))
        .temperature(part, Toward::Nearest)
        .text(format!(": {what} forms on it at once"));
    let sentence = match seat.chill.as_ref().and_then(|chill| chill.water) {
        Some(water) => {
            sentence.text(", up to ").value(AnyValue::SmallMass(water), Toward::Up).text(" until it is warm")
        }
        None => sentence,
    };
    let sentence = sentence.text(", and leaves water in the seat. Run it in soon, so that it dries.").text(ADVICE);
    found.push(Caution::new(what, Level::Caution, sentence, SATURATION));
}

fn humidity_unknown(seat: &SeatPlan, part: ThermodynamicTemperature, found: &mut Vec<Caution>) {
    if part >= celsius(0.0) {
        return;
    }
    let sentence = say(format!("{} seat: the {} comes out at ", seat.seat.name(), seat.inner.name))
        .temperature(part, Toward::Nearest)
        .text("; in all but very dry air frost forms on it and leaves water in the seat.")
        .text(ADVICE)
        .text(" State humidity under [bench] for the dew point.");
    found.push(Caution::new("frost-likely", Level::Caution, sentence, PRACTICE));
}
