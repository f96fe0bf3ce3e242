//! A liner that comes free, or overloads what is around it.

use crate::job::{AnyValue, Job};
use crate::plan::LinerPlan;
use crate::plan::caution::{Caution, Level};
use crate::plan::liner::SOURCE;
use crate::plan::model::SeatPlan;
use crate::plan::sentence::say;
use crate::quantity::{ThermodynamicTemperature, Toward};

/// What can go wrong with the liner of a seat.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(liner) = &seat.liner else { return };
    comes_free(job, liner, found);
    overloads(liner, found);
    follows(liner, found);
}

/// The hottest that the lined housing runs; what it may reach while it is warmed for fitting is among the limits of warming.
fn hottest(job: &Job) -> Option<ThermodynamicTemperature> {
    job.service.iter().map(|state| state.housing).reduce(|a, b| if b > a { b } else { a })
}

fn comes_free(job: &Job, liner: &LinerPlan, found: &mut Vec<Caution>) {
    let Some((free_from, reached)) = liner.free_from.zip(hottest(job)) else { return };
    if reached < free_from {
        return;
    }
    let sentence = say("The pressed liner with its least interference comes free in the housing from ")
        .temperature(free_from, Toward::Down)
        .text(", and in service it would be at ")
        .temperature(reached, Toward::Up)
        .text(
            ". It may turn or come out with the ring, and the bore grows no further than the liner does alone. Stay below that, \
             or hold the liner by a screw or a flange.",
        );
    found.push(Caution::new("liner-comes-free", Level::Warning, sentence, SOURCE));
}

fn overloads(liner: &LinerPlan, found: &mut Vec<Caution>) {
    let Some(factor) = liner.housing_factor.filter(|factor| *factor < 1.0) else { return };
    let sentence = say(format!(
        "The housing ({}) around the liner passes its strength in the tightest case (strength over stress ",
        liner.housing
    ))
    .value(AnyValue::Number(factor), Toward::Down)
    .text("): less interference of the ring or of the liner, or a thicker boss.");
    found.push(Caution::new("liner-overloads-housing", Level::Danger, sentence, SOURCE).forbidding());
}

fn follows(liner: &LinerPlan, found: &mut Vec<Caution>) {
    let held = match liner.pressed {
        None => {
            "taken as cast in, it follows the housing wherever that goes, which one that has come loose would not; stresses \
             left by casting are not counted"
        }
        Some(_) => "while it is pressed in, it follows the housing; counted with its least interference",
    };
    let text = format!(
        "The bore is that of a liner ({}) in a housing of another material ({}): {held}.",
        liner.liner, liner.housing
    );
    found.push(Caution::new("liner", Level::Note, say(text), SOURCE));
}
