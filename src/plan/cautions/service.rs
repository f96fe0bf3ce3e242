use crate::job::{Job, Piece, ServiceEnd};
use crate::plan::caution::{Caution, Level};
use crate::plan::limits;
use crate::plan::model::{SeatPlan, ServiceFit};
use crate::plan::sentence::say;
use crate::quantity::{Length, ThermodynamicTemperature, Toward, celsius};
use crate::stock::material::Family;

const EXPANSION: &str = "thermal expansion of both materials (see sources)";
const ELASTIC: &str = "thick-wall rings (Lamé), plane stress, strength of the weaker part (see sources)";
const YIELDS: &str = "ring that yields from its bore outward, Tresca, plane stress, strength at 20 °C (own derivation)";

/// Whether the fit keeps its grip, its strength and its seals in service.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    for state in &seat.service {
        loose(seat, state, found);
        too_tight(seat, state, found);
        creeps(job, seat, state, found);
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
    let sentence = match &seat.tighter {
        Some(tighter) if tighter.elastic => sentence
            .text(format!(" {} would keep at least ", tighter.class))
            .small(tighter.least, Toward::Down)
            .text(" of interference in service, with up to ")
            .small(tighter.most, Toward::Up)
            .text(" at 20 °C: check force and internal clearance again."),
        Some(tighter) => sentence.text(format!(
            " The first class that would keep it, {}, takes the weaker part beyond its elastic limit: hold the ring by other \
             means.",
            tighter.class
        )),
        None => sentence,
    };
    found.push(Caution::new("loose-in-service", Level::Warning, sentence, EXPANSION));
}

/// Interference that bears against the elastic limit, which is one of what bears.
fn too_tight(seat: &SeatPlan, state: &ServiceFit, found: &mut Vec<Caution>) {
    let limit = seat.press.elastic_limit;
    if state.bears <= limit {
        return;
    }
    let sentence = say(format!("{} seat, {} in service: up to ", seat.seat.name(), name(state.end)))
        .small(state.bears, Toward::Up)
        .text(" of interference bears, but the ")
        .text(seat.press.weaker)
        .text(" stays elastic only up to ")
        .small(limit, Toward::Down);
    let (level, sentence, source) = match state.yields {
        None => {
            let text = ". It would yield or crack: choose a looser class or another material.";
            (Level::Warning, sentence.text(text), ELASTIC)
        }
        // It has yielded as far when it was fitted, of which another caution speaks.
        Some(more) if more <= Length::default() => return,
        Some(more) => {
            let sentence = sentence.text(". It yields then and goes on holding, but loses ").small(more, Toward::Up).text(
                " of interference, which is missing from then on at any other temperature, and its bore stays smaller by about \
                 as much: look at bore and seat after the first run, and hold it by other means if it must not move.",
            );
            (Level::Caution, sentence, YIELDS)
        }
    };
    found.push(Caution::new("elastic-limit-in-service", level, sentence, source));
}

/// Temperature from which cast light alloys give way under a steady press fit, °C: magnesium with aluminium from about 100, cast
/// aluminium with silicon from about 150; ASM Handbook volume 2, from memory. The lower one is taken.
const CREEP_C: f64 = 100.0;

/// A light alloy that runs hot loses interference with time.
fn creeps(job: &Job, seat: &SeatPlan, state: &ServiceFit, found: &mut Vec<Caution>) {
    let light = job.materials_of(seat.outer.piece).any(|material| material.family() == Family::LightAlloy);
    let tight = state.clearance.tightest < Length::default();
    if !(light && tight && state.end == ServiceEnd::Hottest && state.outer > celsius(CREEP_C)) {
        return;
    }
    let sentence = say(format!("{} seat: the {} runs at ", seat.seat.name(), seat.outer.name))
        .temperature(state.outer, Toward::Nearest)
        .text(". Light alloys creep under a press fit at this heat and lose interference with the hours: hold the ring by other \
               means, and look at it at each overhaul.");
    let source = "creep of magnesium and cast aluminium alloys, ASM Handbook volume 2 (from memory)";
    found.push(Caution::new("creep-in-service", Level::Caution, sentence, source));
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
