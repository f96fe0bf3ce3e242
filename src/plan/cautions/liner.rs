//! A liner that comes free, or overloads what is around it.

use super::strength::NEAR;
use crate::job::{AnyValue, Job};
use crate::plan::caution::{Caution, Level};
use crate::plan::liner::{LinerPlan, Reserve, Reserves, SOURCE};
use crate::plan::model::SeatPlan;
use crate::plan::sentence::say;
use crate::quantity::Toward;

/// What can go wrong with the liner of a seat.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(liner) = &seat.liner else { return };
    comes_free(job, liner, found);
    strained("liner", &liner.liner, &liner.liner_reserves, found);
    strained("housing around the liner", &liner.housing, &liner.housing_reserves, found);
    follows(liner, found);
}

/// In service only: what the housing may reach while it is warmed for fitting is among the limits of warming.
fn comes_free(job: &Job, liner: &LinerPlan, found: &mut Vec<Caution>) {
    let runs = || job.service.iter().map(|state| state.housing);
    let hottest = runs().reduce(|a, b| if b > a { b } else { a });
    let coldest = runs().reduce(|a, b| if b < a { b } else { a });
    let hot = liner.free_from.hot.zip(hottest).filter(|(from, reached)| reached >= from);
    let cold = liner.free_from.cold.zip(coldest).filter(|(from, reached)| reached <= from);
    let opening = || say("The pressed liner with its least interference comes free in the housing from ");
    if let Some((from, reached)) = hot {
        let sentence = opening().temperature(from, Toward::Down).text(" upwards, and in service it would be at ");
        let sentence = sentence.temperature(reached, Toward::Up).text(
            ". It may turn or come out with the ring, and the bore grows no further than the liner does alone. Stay below that, \
             or hold the liner by a screw or a flange.",
        );
        found.push(Caution::new("liner-comes-free", Level::Warning, sentence, SOURCE));
    }
    if let Some((from, reached)) = cold {
        let sentence = opening().temperature(from, Toward::Up).text(" downwards, and in service it would be at ");
        let sentence = sentence.temperature(reached, Toward::Down).text(
            ". It may turn or come out with the ring, which it squeezes as it shrinks alone. Stay above that, or hold the liner \
             by a screw or a flange.",
        );
        found.push(Caution::new("liner-comes-free", Level::Warning, sentence, SOURCE));
    }
}

/// What is passed while the job is done forbids it; what is passed in service is warned of, as for the ring's own fit.
fn strained(part: &str, material: &str, reserves: &Reserves, found: &mut Vec<Caution>) {
    let opening = || say(format!("The {part} ({material}) "));
    let passed = |reserve: &Reserve| reserve.factor.filter(|factor| *factor < 1.0);
    let how_far = |factor: f64, reserve: &Reserve| {
        let sentence = opening().text("passes its strength in the tightest case (strength over stress ");
        sentence.value(AnyValue::Number(factor), Toward::Down).text(format!(", {}): ", reserve.when))
    };
    if let Some((factor, reserve)) = reserves.fitting.as_ref().and_then(|reserve| Some((passed(reserve)?, reserve))) {
        let sentence =
            how_far(factor, reserve).text("less interference of the ring or of the liner, or a thicker wall.");
        found.push(Caution::new("liner-overload", Level::Danger, sentence, SOURCE).forbidding());
        return;
    }
    if let Some((factor, reserve)) = reserves.service.as_ref().and_then(|reserve| Some((passed(reserve)?, reserve))) {
        let sentence = how_far(factor, reserve).text(
            "it would yield or crack. Less interference of the ring or of the liner, a thicker wall, or a material that expands \
             more alike.",
        );
        found.push(Caution::new("liner-yields-in-service", Level::Warning, sentence, SOURCE));
        return;
    }
    let Some(reserve) = reserves.worst().filter(|reserve| reserve.least < NEAR) else { return };
    let sentence = opening()
        .text(if reserve.least < 1.0 { "may pass" } else { "comes close to" })
        .text(" its strength in the tightest case (strength over stress ")
        .value(AnyValue::Number(reserve.least), Toward::Down)
        .text(format!(", {}). Measure both parts before fitting.", reserve.when));
    found.push(Caution::new("liner-limit-near", Level::Caution, sentence, SOURCE));
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
