use crate::job::{AnyValue, Job, Piece, Treatment};
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::model::{SeatPlan, Verdict};
use crate::plan::sentence::say;
use crate::quantity::{Ratio, Toward, celsius, to_step};
use crate::stock::medium::Hazard;
use crate::thermal::{CARBON_DIOXIDE_SHORT_TERM_LIMIT, Coolant, OXYGEN_DEFICIENT, room_air_after};
use uom::si::ratio::ratio;

/// Metal above this burns skin at a short touch.
///
/// ISO 13732-1, bare metal, contact of about one second, from memory.
const BURNS_C: f64 = 65.0;

/// What can hurt someone.
pub(super) fn of_job(job: &Job, seats: &[SeatPlan], found: &mut Vec<Caution>) {
    for treatment in job.chill.iter().chain(&job.warm) {
        for hazard in treatment.medium.hazards() {
            found.push(of_medium(*hazard));
        }
        for note in treatment.medium.notes() {
            let text = format!("{}: {note}.", treatment.medium.id());
            found.push(Caution::new("medium-care", Level::Note, say(text), PRACTICE));
        }
        hot_part(treatment, seats, found);
    }
    for seat in seats {
        gas(job, seat, found);
    }
    let pressed = seats.iter().any(|seat| seat.verdict == Verdict::Press || seat.verdict == Verdict::SomeWillNot);
    if pressed {
        let words = if job.part.kind.is_bearing() { PRESS } else { PRESS_PLAIN };
        found.push(Caution::new("press", Level::Warning, say(words), PRACTICE));
    }
    deferring(found);
}

/// What can hurt someone who presses a seal home, where nothing has been said of pressing.
pub(super) fn of_seal(found: &mut Vec<Caution>) {
    if found.iter().all(|caution| caution.code() != "press") {
        found.push(Caution::new("press-seal", Level::Warning, say(PRESS_SEAL), PRACTICE));
    }
}

/// That a plan is a calculation.
pub(super) fn deferring(found: &mut Vec<Caution>) {
    found.push(Caution::new("defer", Level::Note, say(DEFER), PRACTICE));
}

const PRESS_SEAL: &str = "Pressing the seal: keep hands out from under press and driver, wear eye protection, and stop when the force rises \
                          before the seal is home.";
const PRESS: &str = "Stand clear of the line of the press, guard it, wear eye protection: hardened rings shatter. Keep the \
                     part square, and stop when the force rises before the shoulder is reached.";
const PRESS_PLAIN: &str = "Stand clear of the line of the press, guard it, wear eye protection: a part that tilts or slips is thrown out. \
                           Keep the part square, and stop when the force rises before it is home.";
const DEFER: &str = "This plan is a calculation. The manual of the machine's maker, the data of the part's maker, local \
                     codes and licensed practice go before it.";

/// The caution that a danger of a medium brings to every job with it.
pub(crate) fn of_medium(hazard: Hazard) -> Caution {
    let (level, text, source) = words(hazard);
    Caution::new(hazard.code(), level, say(text), source)
}

/// Level, text and source for each hazard of a medium.
fn words(hazard: Hazard) -> (Level, &'static str, &'static str) {
    match hazard {
        Hazard::Cryogen => (
            Level::Danger,
            "Liquid nitrogen burns skin and eyes at once and spits when a warm part goes in: face shield, loose dry \
             insulating gloves, closed shoes; lower the part slowly, never seal the vessel, keep water out.",
            "common practice, no published source; follow the gas supplier's safety sheet",
        ),
        Hazard::Asphyxiation => (
            Level::Danger,
            "The gas that boils off displaces air without any warning to the senses. Work in the open or with forced \
             ventilation and an oxygen alarm (below 19.5 % is oxygen-deficient); never alone, never in a pit or a vehicle.",
            "19.5 % oxygen: 29 CFR 1910.134, from memory",
        ),
        Hazard::DryIce => (
            Level::Danger,
            "Dry ice burns skin and gives off carbon dioxide, which gathers low and poisons long before oxygen runs short: \
             insulating gloves, forced ventilation or the open, an alarm for carbon dioxide (one for oxygen comes too late); never \
             alone, never in a pit or a vehicle, never in a closed vessel, which bursts.",
            "carbon dioxide: 0.5 % over eight hours, 29 CFR 1910.1000 Table Z-1; 3 % for a quarter of an hour, ACGIH, which takes \
             oxygen to 20.3 % alone (from memory)",
        ),
        Hazard::FlammableSolvent => (
            Level::Danger,
            "The cold bath is a flammable solvent: no flame, no spark, no hot plate or oven in the room, vapour drawn off.",
            PRACTICE,
        ),
        Hazard::HotOil => (
            Level::Danger,
            "Hot oil burns and can ignite: a covered bath with a thermostat, dry parts only, a lid and an extinguisher at \
             hand. Hang the part clear of the bottom.",
            PRACTICE,
        ),
        Hazard::Steam => {
            (Level::Warning, "Boiling water and steam scald; dry and oil the part at once against rust.", PRACTICE)
        }
        Hazard::InductionMagnetism => (
            Level::Warning,
            "An induction heater's field can stop a pacemaker: keep such persons away as its maker says, take off rings and \
             watches, and demagnetise the part.",
            PRACTICE,
        ),
        Hazard::ColdPart => (
            Level::Caution,
            "Bare skin sticks to metal this cold and is burnt by it: dry insulating gloves.",
            "ISO 13732-3, from memory",
        ),
        Hazard::HotPart => (
            Level::Warning,
            "Hot metal looks like cold metal: heat-proof gloves, long sleeves, a marked place to put it down; no food goes \
             into an oven that has held oily parts.",
            PRACTICE,
        ),
    }
}

/// Vessels lose and boil away several times what the part itself evaporates, mostly on their first cooling.
///
/// Common practice, no published source.
const LOSS_FACTOR: f64 = 3.0;

/// What the room's air becomes when the coolant has turned to gas.
fn gas(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(used) = seat.chill.as_ref().and_then(|chill| chill.coolant) else { return };
    let piece = if seat.inner.piece == Piece::Part { job.part.kind.noun() } else { "shaft" };
    let name = match used.coolant {
        Coolant::Nitrogen => "liquid nitrogen",
        Coolant::DryIce => "dry ice",
    };
    let sentence = say(format!("{} seat: the {piece} itself turns about ", seat.seat.name()))
        .value(AnyValue::Mass(used.mass), Toward::Up)
        .text(format!(" of {name} to gas; with the vessel and what stands about, count on three times as much"));
    let room = job.bench.room.and_then(|room| {
        let whole = used.mass * LOSS_FACTOR;
        room_air_after(used.coolant, whole, room, job.bench.temperature, job.bench.pressure).ok()
    });
    let Some(air) = room else {
        let sentence =
            sentence.text(". State room under [bench], such as \"60 m3\", to see what that does to the air.");
        found.push(Caution::new("gas-in-the-room", Level::Note, sentence, GAS));
        return;
    };
    let bad = air.oxygen < OXYGEN_DEFICIENT || air.carbon_dioxide > CARBON_DIOXIDE_SHORT_TERM_LIMIT;
    // A tenth of a per cent is what decides here, so it is kept, and rounded to the side of danger.
    let oxygen = format!("{:.1} %", to_step(100.0 * air.oxygen, 0.1, Toward::Down));
    let sentence = sentence
        .text(format!(". Mixed evenly into the room, with no change of air, that leaves {oxygen} of oxygen (19.5 % is the least) and "))
        .value(AnyValue::Share(Ratio::new::<ratio>(air.carbon_dioxide)), Toward::Up)
        .text(" of carbon dioxide (0.5 % over a day, 3 % for a quarter of an hour). Near the floor it is worse.");
    let (level, sentence) = if bad {
        (Level::Danger, sentence.text(" Do not do it in this room without forced ventilation."))
    } else {
        (Level::Warning, sentence)
    };
    let caution = Caution::new("gas-in-the-room", level, sentence, GAS);
    found.push(if bad { caution.forbidding() } else { caution });
}

const GAS: &str =
    "heat balance of the part; perfect mixing, no change of air; limits 29 CFR 1910.134, ACGIH (from memory)";

fn hot_part(treatment: &Treatment, seats: &[SeatPlan], found: &mut Vec<Caution>) {
    let burns = celsius(BURNS_C);
    let hottest = seats
        .iter()
        .filter_map(|seat| seat.warm.as_ref())
        .filter(|soak| soak.piece == treatment.piece && soak.end_quick > burns)
        .map(|soak| soak.end_quick)
        .next();
    if let Some(end) = hottest.filter(|_| !treatment.medium.hazards().contains(&Hazard::HotPart)) {
        let sentence = say("The warmed part comes out at ")
            .temperature(end, Toward::Up)
            .text(": it burns at a touch. Heat-proof gloves.");
        found.push(Caution::new("hot-part", Level::Warning, sentence, "ISO 13732-1, from memory"));
    }
}
