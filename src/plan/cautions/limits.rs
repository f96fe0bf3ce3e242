use crate::job::{Job, Piece};
use crate::plan::caution::{Caution, Level};
use crate::plan::limits::{self, Holder, Limit};
use crate::plan::model::SeatPlan;
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{ThermodynamicTemperature, Toward};

/// What a temperature may stray beyond its limit by the last digits of a calculation, K; no thermometer shows it.
const ROUNDING_K: f64 = 0.05;

/// Temperature limits of materials, closure and seal.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    if let Some(chill) = &seat.chill {
        for limit in limits::cold(job, chill.piece) {
            too_cold(&limit, chill.end_quick, found);
        }
        care(job, seat.inner.name, chill.piece, chill.end_quick, found);
        grease(job, chill.piece, found);
    }
    if let Some(warm) = &seat.warm {
        for limit in limits::hot(job, seat.seat, warm.piece) {
            too_hot(seat, &limit, warm.end_quick, found);
        }
        care(job, seat.outer.name, warm.piece, warm.end_quick, found);
    }
}

fn grease(job: &Job, piece: Piece, found: &mut Vec<Caution>) {
    let closure = job.part.closure.as_ref().filter(|_| piece == Piece::Part);
    if let Some((note, provenance)) = closure.and_then(|closure| closure.grease_note()) {
        found.push(Caution::new("grease-cold", Level::Note, say(format!("{note}.")), provenance.to_string()));
    }
}

/// What the material's file says of temperatures that are allowed and need care.
fn care(job: &Job, name: &str, piece: Piece, reached: ThermodynamicTemperature, found: &mut Vec<Caution>) {
    let noted =
        job.materials_of(piece).flat_map(|material| material.cautions().iter().map(move |note| (material, note)));
    for (material, note) in noted.filter(|(_, note)| note.applies_at(reached)) {
        let sentence = say(format!("The {name} ({}) would reach ", material.id()))
            .temperature(reached, Toward::Nearest)
            .text(format!(": {}.", note.text));
        found.push(Caution::new("material-care", Level::Caution, sentence, note.provenance.to_string()));
    }
}

fn too_cold(limit: &Limit<'_>, reached: ThermodynamicTemperature, found: &mut Vec<Caution>) {
    let Limit { of, limit } = limit;
    if limit.temperature.value - reached.value > ROUNDING_K {
        let sentence = passes(*of, reached)
            .text(", below its limit of ")
            .temperature(limit.temperature, Toward::Up)
            .text(format!(
                " ({}). Choose a milder medium, take it out sooner, or warm the outer part instead.",
                limit.reason
            ));
        found.push(Caution::new("too-cold", Level::Danger, sentence, limit.provenance.to_string()).forbidding());
    }
}

fn too_hot(seat: &SeatPlan, limit: &Limit<'_>, reached: ThermodynamicTemperature, found: &mut Vec<Caution>) {
    let Limit { of, limit } = limit;
    if reached.value - limit.temperature.value > ROUNDING_K {
        let sentence = passes(*of, reached)
            .text(", above its limit of ")
            .temperature(limit.temperature, Toward::Down)
            .text(format!(" ({}). ", limit.reason));
        let sentence = milder(seat, limit.temperature, sentence);
        found.push(Caution::new("too-hot", Level::Danger, sentence, limit.provenance.to_string()).forbidding());
    }
}

fn passes(what: Holder<'_>, reached: ThermodynamicTemperature) -> Sentence {
    say(format!("The {what} would reach ")).temperature(reached, Toward::Nearest)
}

/// What a warm-up within the limit would do.
fn milder(seat: &SeatPlan, limit: ThermodynamicTemperature, sentence: Sentence) -> Sentence {
    match seat.clears_at.outer.filter(|needed| *needed <= limit) {
        Some(needed) => sentence
            .text(format!("The tightest case already clears with the {} at ", seat.outer.name))
            .temperature(needed, Toward::Up)
            .text(" on arrival: warm it to between the two, and be quick."),
        None => {
            sentence.text("At the limit the tightest case does not clear: chill the inner part as well, or press it.")
        }
    }
}
