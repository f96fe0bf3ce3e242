use super::{Caution, Level};
use crate::job::{Job, Piece};
use crate::plan::model::{SeatKind, SeatPlan};
use crate::plan::sentence::say;
use crate::quantity::{ThermodynamicTemperature, Toward};
use crate::stock::material::{Material, TemperatureLimit};

/// What has a limit, and the temperature that it would reach.
struct Check {
    what: String,
    reached: ThermodynamicTemperature,
}

/// Temperature limits of materials, closure and seal.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    if let Some(chill) = &seat.chill {
        chilled(job, seat, chill.end_quick, chill.piece, found);
    }
    if let Some(warm) = &seat.warm {
        warmed(job, seat, warm.end_quick, warm.piece, found);
    }
}

fn chilled(job: &Job, seat: &SeatPlan, reached: ThermodynamicTemperature, piece: Piece, found: &mut Vec<Caution>) {
    if let Some(material) = material(job, piece) {
        let check = Check { what: format!("{} ({})", seat.inner.name, material.id()), reached };
        too_cold(&check, material.coldest(), found);
        notes(&check, material, found);
    }
    let Some(closure) = job.part.closure.as_ref().filter(|_| piece == Piece::Part) else { return };
    if let Some(limit) = closure.coldest() {
        too_cold(&Check { what: format!("bearing ({})", closure.kind()), reached }, limit, found);
    }
    if let Some((note, provenance)) = closure.grease_note() {
        found.push(Caution::new("grease-cold", Level::Note, say(format!("{note}.")), provenance.to_string()));
    }
}

fn warmed(job: &Job, seat: &SeatPlan, reached: ThermodynamicTemperature, piece: Piece, found: &mut Vec<Caution>) {
    if let Some(material) = material(job, piece) {
        let check = Check { what: format!("{} ({})", seat.outer.name, material.id()), reached };
        too_hot(&check, material.hottest(), found);
        notes(&check, material, found);
    }
    if let Some(closure) = &job.part.closure {
        let what = match piece {
            Piece::Part => format!("bearing ({})", closure.kind()),
            _ => format!("bearing ({}) in the warm {}", closure.kind(), seat.outer.name),
        };
        too_hot(&Check { what, reached }, closure.hottest(), found);
    }
    if let Some(seal) = job.seal.as_ref().filter(|seal| seat.seat == SeatKind::Housing && seal.fitted_first) {
        let what = format!("seal ({}) in the warm housing", seal.lip.id());
        too_hot(&Check { what, reached }, seal.lip.hottest(), found);
    }
}

fn material(job: &Job, piece: Piece) -> Option<&Material> {
    match piece {
        Piece::Part => Some(&job.part.material),
        Piece::Housing => job.housing.as_ref().map(|housing| &housing.material),
        Piece::Shaft => job.shaft.as_ref().map(|shaft| &shaft.material),
    }
}

/// What the material's file says of temperatures that are allowed and need care.
fn notes(check: &Check, material: &Material, found: &mut Vec<Caution>) {
    for note in material.cautions().iter().filter(|note| note.applies_at(check.reached)) {
        let sentence = say(format!("The {} would reach ", check.what))
            .temperature(check.reached, Toward::Nearest)
            .text(format!(": {}.", note.text));
        found.push(Caution::new("material-care", Level::Caution, sentence, note.provenance.to_string()));
    }
}

fn too_cold(check: &Check, limit: &TemperatureLimit, found: &mut Vec<Caution>) {
    if check.reached < limit.temperature {
        let sentence = say(format!("The {} would reach ", check.what))
            .temperature(check.reached, Toward::Nearest)
            .text(", below its limit of ")
            .temperature(limit.temperature, Toward::Up)
            .text(format!(
                " ({}). Choose a milder medium, take it out sooner, or warm the outer part instead.",
                limit.reason
            ));
        found.push(Caution::new("too-cold", Level::Danger, sentence, limit.provenance.to_string()).forbidding());
    }
}

fn too_hot(check: &Check, limit: &TemperatureLimit, found: &mut Vec<Caution>) {
    if check.reached > limit.temperature {
        let sentence = say(format!("The {} would reach ", check.what))
            .temperature(check.reached, Toward::Nearest)
            .text(", above its limit of ")
            .temperature(limit.temperature, Toward::Down)
            .text(format!(
                " ({}). Stay at or below the limit, and chill or press for what is still missing.",
                limit.reason
            ));
        found.push(Caution::new("too-hot", Level::Danger, sentence, limit.provenance.to_string()).forbidding());
    }
}
