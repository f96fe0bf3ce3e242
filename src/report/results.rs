//! The main results of a seat, for outputs that hold many plans.

use super::csv;
use super::sheet::{Cell, Named};
use super::words;
use crate::plan::{Caution, Level, Plan, SeatPlan, Verdict, Window};
use crate::quantity::{Length, System, Time, Toward, show_duration, show_force, show_temperature};
use serde_json::{Map, Value};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// The cells of a plan's CSV, and how long the tightest case stays free and where it locks.
pub(crate) fn cells(plan: &Plan<'_>, seat: &SeatPlan) -> Vec<Named> {
    let mut cells = csv::cells(plan, seat);
    let lock = seat.lock.tightest.map(|lock| lock.get::<degree_celsius>());
    let free = seat.free_in_seat().map(|time| time.get::<second>());
    cells.push(("free_in_seat_s_tightest", Cell::number(free)));
    cells.push(("lock_c_tightest", Cell::number(lock)));
    cells
}

/// The cells of a seat as an object: a number where it is one, null where there is none.
pub(crate) fn object(plan: &Plan<'_>, seat: &SeatPlan) -> Map<String, Value> {
    cells(plan, seat).into_iter().map(|(name, cell)| (name.to_owned(), cell.json())).collect()
}

/// The main results in words, each under its name; the same names for every seat.
pub(crate) fn shown(seat: &SeatPlan, system: System) -> Vec<(&'static str, String)> {
    let clearance = |length: Length| words::small_length(length, system, Toward::Down);
    let at = seat.at_bore;
    let free = at.clearance.tightest >= Length::default();
    let end = |soak: &Option<crate::plan::Soak>| {
        soak.as_ref().map_or("-".to_owned(), |soak| show_temperature(soak.end, system, 0, Toward::Nearest))
    };
    let force = |force| show_force(force, system, Toward::Up);
    vec![
        ("verdict", seat.verdict.words().to_uppercase()),
        ("inner part out at", end(&seat.chill)),
        ("outer part out at", end(&seat.warm)),
        ("clearance, tightest", clearance(at.clearance.tightest)),
        ("clearance, middle", clearance(at.clearance.middle)),
        ("clearance, loosest", clearance(at.clearance.loosest)),
        ("window", window(seat)),
        ("free in seat", if free { time(seat.free_in_seat()) } else { "-".to_owned() }),
        ("force at the seat", if free { "none".to_owned() } else { force(at.force.tightest) }),
        ("force pressed cold", force(seat.press.force.tightest)),
        (
            "locks at",
            seat.lock.tightest.map_or("-".to_owned(), |lock| show_temperature(lock, system, 0, Toward::Nearest)),
        ),
    ]
}

fn window(seat: &SeatPlan) -> String {
    match seat.window.tightest {
        Window::Lasts(time) => show_duration(time, Toward::Down),
        Window::Always | Window::Beyond(_) => "no end".to_owned(),
    }
}

fn time(time: Option<Time>) -> String {
    time.map_or("no end".to_owned(), |time| show_duration(time, Toward::Down))
}

/// What can hurt someone in any of several plans, each code once in its gravest form, gravest first.
pub(crate) fn grave<'c>(cautions: impl Iterator<Item = &'c Caution>, system: System) -> Vec<(&'static str, String)> {
    let mut found: Vec<&Caution> = Vec::new();
    for caution in cautions.filter(|caution| caution.level() <= Level::Warning || caution.code() == "defer") {
        if !found.iter().any(|known| known.code() == caution.code()) {
            found.push(caution);
        }
    }
    found.sort_by_key(|caution| caution.rank());
    found.into_iter().map(|caution| (caution.signal(), words::sentence(caution.sentence(), system))).collect()
}

/// The codes of a plan's dangers and warnings, and the first reason of one that must not be done.
pub(crate) fn flags(plan: &Plan<'_>) -> (String, String) {
    let grave = plan.cautions.iter().filter(|caution| caution.level() <= Level::Warning);
    let mut codes: Vec<&str> = grave.map(Caution::code).collect();
    codes.dedup();
    let forbids = plan.cautions.iter().find(|caution| caution.forbids() && plan.verdict == Verdict::DoNot);
    let reason = forbids.map(|caution| words::sentence(caution.sentence(), System::Metric)).unwrap_or_default();
    (codes.join(" "), reason)
}
