//! From the medium to the clearance at the seat.

use super::model::{Line, Value};
use super::seat::{DEFINITION, INTERFERENCE, Seat, Which, in_words, line, of, symbol, v};
use super::text::shown;
use crate::plan::{GripTime, Soak, Window};
use crate::quantity::{Length, Time, Worked};

const INTEGRATED: &str = "the heat balance of the piece is followed in small steps, since film coefficient, radiation and heat \
                          capacity change with its temperature";
const COOLING_LAW: &str = "With everything constant the difference from the medium would fall to exp(-t/τ) of what it was; τ is that of the start";
const CROSSING: &str = "the clearance is followed in time until the placing clearance is gone";
const EXCHANGE: &str = "both parts exchange heat across the closing gap; the clearance is followed until it is gone";
const LOCK: &str =
    "the temperature at which D_i · (1 + ε_i) = D_o · (1 + ε_o), found in the tables of expansion by halving";

pub(super) fn lines(seat: Seat<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for (key, soak) in [("chill", &seat.seat.chill), ("warm", &seat.seat.warm)] {
        if let Some(soak) = soak {
            lines.extend(treated(seat, key, soak));
        }
    }
    if !lines.is_empty() {
        lines.extend([growth(seat, Which::Inner), growth(seat, Which::Outer), clearance(seat)]);
        lines.extend(window(seat));
        lines.extend(grip(seat));
    }
    lines.extend(lock(seat));
    lines
}

/// Temperature on leaving the medium, and what share of the full change that is.
fn treated(seat: Seat<'_>, key: &str, soak: &Soak) -> Vec<Line> {
    let (start, medium, end) = (symbol("T", "s"), symbol("T", "m"), symbol("T", "e"));
    let temperature = |symbol, meaning: String, of, at: &str| seat.value(symbol, meaning, Worked::Temperature(of), at);
    let at = |name: &str| format!("{key}/{name}");
    let shop =
        || temperature(start, "temperature of the shop".to_owned(), seat.plan.job.bench.temperature, "basis/shop_c");
    let of_medium =
        || temperature(medium, format!("temperature of {}", soak.medium), soak.medium_temperature, &at("medium_c"));
    let left = || temperature(end, "temperature on leaving".to_owned(), soak.end, &at("end_c"));
    let mut put_in =
        vec![shop(), of_medium(), time(seat, symbol("t", ""), "time in the medium", soak.hold, &at("hold_s"))];
    let constant = soak.time_constant;
    put_in.extend(
        constant.map(|constant| time(seat, symbol("τ", ""), "time constant", constant, &at("time_constant_s"))),
    );
    let what = format!("Temperature on leaving {}", soak.medium);
    let mut first = in_words(what, left(), INTEGRATED, put_in, vec![seat.source("temperatures against time")]);
    if constant.is_some() {
        first = first.with_remark(COOLING_LAW);
    }
    let share = soak.share_reached.map(|share| {
        let result =
            seat.value(symbol("η", ""), "share of the full change", Worked::Number(share), &at("share_reached"));
        let formula = (v(start) - v(end)) / (v(start) - v(medium));
        line(
            "Share of the full change",
            result,
            formula,
            vec![shop(), left(), of_medium()],
            vec![DEFINITION.to_owned()],
        )
    });
    [Some(first), share].into_iter().flatten().collect()
}

fn time(seat: Seat<'_>, symbol: super::Symbol, meaning: &str, time: Time, at: &str) -> Value {
    seat.value(symbol, meaning, Worked::Time(time), at)
}

/// The growth of a diameter; below zero where it shrinks.
fn growth(seat: Seat<'_>, which: Which) -> Line {
    let (strain, size) = (of("ε", which), seat.size(which, which == Which::Inner));
    let temperature = if which == Which::Inner { seat.seat.at_bore.inner } else { seat.seat.at_bore.outer };
    let to = format!("its temperature on arrival, {}", shown(Worked::Temperature(temperature), seat.system));
    let put_in = vec![size, seat.strain(which, seat.part(which).strain_at_bore, "strain_at_bore_um_m", to)];
    line(
        format!("Change of the {} on arrival", seat.name(which)),
        grown(seat, which),
        v(of("D", which)) * v(strain),
        put_in,
        vec![seat.source(&format!("{}, expansion", seat.material(which)))],
    )
}

fn grown(seat: Seat<'_>, which: Which) -> Value {
    let meaning = format!("change of the {}", seat.name(which));
    let at = format!("{}/growth_at_bore_um", seat.basis(which));
    seat.value(of("ΔD", which), meaning, Worked::Small(seat.part(which).growth_at_bore), &at)
}

fn clearance(seat: Seat<'_>) -> Line {
    let formula = v(of("ΔD", Which::Outer)) - v(of("ΔD", Which::Inner)) - v(INTERFERENCE);
    let clearance = seat.seat.at_bore.clearance.tightest;
    let result =
        seat.value(symbol("C", ""), "clearance on arrival", Worked::Small(clearance), "at_bore/clearance_um/tightest");
    let put_in = vec![grown(seat, Which::Outer), grown(seat, Which::Inner), seat.interference()];
    let enough = clearance >= seat.seat.history.placing_clearance;
    let remark = match (enough, clearance > Length::default()) {
        (true, _) => "At least the placing clearance: it drops in",
        (false, true) => "Above zero, but less than the placing clearance: it may need a push",
        (false, false) => "Not above zero: it must be pressed",
    };
    line("Clearance when it reaches the seat", result, formula, put_in, vec![seat.source("sizes")]).with_remark(remark)
}

fn window(seat: Seat<'_>) -> Option<Line> {
    let Window::Lasts(lasts) = seat.seat.window.tightest else { return None };
    let placing = Worked::Small(seat.seat.history.placing_clearance);
    let placing = seat.value(symbol("C", "p"), "placing clearance", placing, "at_bore/placing_clearance_um");
    let result = time(seat, symbol("t", "w"), "latest start of the push", lasts, "window_s/tightest");
    let source = vec![seat.source("temperatures against time")];
    Some(in_words("Latest start of the push, from leaving the medium", result, CROSSING, vec![placing], source))
}

fn grip(seat: Seat<'_>) -> Option<Line> {
    let (GripTime::Grips(grips) | GripTime::FreeUntilLock(grips)) = seat.seat.grip?.times.tightest else { return None };
    let result = time(seat, symbol("t", "g"), "time in the seat until it grips", grips, "grip_s/tightest");
    let source = vec![seat.source("temperatures against time")];
    Some(in_words("Time in the seat until it grips", result, EXCHANGE, Vec::new(), source))
}

fn lock(seat: Seat<'_>) -> Option<Line> {
    let lock = Worked::Temperature(seat.seat.lock.tightest?);
    let result = seat.value(symbol("T", "l"), "lock temperature", lock, "lock_c/tightest");
    let put_in = vec![seat.size(Which::Inner, true), seat.size(Which::Outer, false)];
    let source = seat.sources_of_both("expansion");
    Some(in_words("Temperature of both parts together at which the joint closes", result, LOCK, put_in, source))
}
