use crate::job::{Job, Piece, ServiceEnd};
use crate::plan::caution::{Caution, Level};
use crate::plan::limits;
use crate::plan::model::{SeatPlan, ServiceFit};
use crate::plan::sentence::say;
use crate::quantity::{Length, ThermodynamicTemperature, Toward};

const EXPANSION: &str = "thermal expansion of both materials (see sources)";
const ELASTIC: &str = "thick-wall rings (Lamé), plane stress, strength of the weaker part (see sources)";

/// Whether the fit keeps its grip, its strength and its seals in service.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    for state in &seat.service {
        loose(seat, state, found);
        too_tight(seat, state, found);
        for (piece, temperature) in [(seat.inner.piece, state.inner), (seat.outer.piece, state.outer)] {
            beyond_limits(job, state.end, piece, temperature, found);
        }
    }
}

fn name(end: ServiceEnd) -> &'static str {
    match end {
        ServiceEnd::Coldest => "coldest",
        ServiceEnd::Hottest => "hottest",
    }
}

fn loose(seat: &SeatPlan, state: &ServiceFit, found: &mut Vec<Caution>) {
    let clearance = state.clearance;
    if clearance.loosest <= Length::default() {
        return;
    }
    let share =
        if clearance.tightest > Length::default() { "every case is loose" } else { "part of the band is loose" };
    let sentence = say(format!("{} seat, {} in service: {share}, by up to ", seat.seat.name(), name(state.end)))
        .small(clearance.loosest, Toward::Up)
        .text(". Choose a tighter class, or hold the ring by other means, if it must not creep.");
    found.push(Caution::new("loose-in-service", Level::Warning, sentence, EXPANSION));
}

fn too_tight(seat: &SeatPlan, state: &ServiceFit, found: &mut Vec<Caution>) {
    let interference = -state.clearance.tightest;
    if interference <= seat.press.elastic_limit {
        return;
    }
    let sentence = say(format!("{} seat, {} in service: up to ", seat.seat.name(), name(state.end)))
        .small(interference, Toward::Up)
        .text(" of interference, but the ")
        .text(seat.press.weaker)
        .text(" stays elastic only up to ")
        .small(seat.press.elastic_limit, Toward::Down)
        .text(". It would yield or crack: choose a looser class or another material.");
    found.push(Caution::new("elastic-limit-in-service", Level::Warning, sentence, ELASTIC));
}

/// Materials, the elastomer of the closure and the seal's lip, each once for the piece that they belong to.
fn beyond_limits(
    job: &Job,
    end: ServiceEnd,
    piece: Piece,
    temperature: ThermodynamicTemperature,
    found: &mut Vec<Caution>,
) {
    for running in limits::in_service(job, piece) {
        let passed = match end {
            ServiceEnd::Coldest => running.coldest.filter(|limit| temperature < limit.temperature),
            ServiceEnd::Hottest => running.hottest.filter(|limit| temperature > limit.temperature),
        };
        let Some(limit) = passed else { continue };
        let side = if end == ServiceEnd::Coldest { "below" } else { "above" };
        let sentence = say(format!("{} in service: the {} would be at ", name(end), running.what))
            .temperature(temperature, Toward::Nearest)
            .text(format!(", {side} its limit of "))
            .temperature(limit.temperature, Toward::Nearest)
            .text(format!(" ({}).", limit.reason));
        found.push(Caution::new("limit-in-service", Level::Warning, sentence, limit.provenance.to_string()));
    }
}
