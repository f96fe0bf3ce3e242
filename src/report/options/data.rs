//! The ways for other programs: `seatwise.options/1` as JSON, and one row a way as CSV.

use super::soaks;
use crate::job::{Job, Piece};
use crate::plan::options::{
    Aim, COMFORTABLE_IN_HAND_S, COMFORTABLE_IN_SEAT_S, DRAWN_PARTS, Odds, RULE, SeatWays, Used, Way, Worked,
};
use crate::plan::{Level, Soak};
use crate::quantity::{Force, Length, System, ThermodynamicTemperature, Time};
use crate::report::json::{figures, pretty};
use crate::report::sheet::{Cell, head, written};
use crate::report::words;
use serde_json::{Map, Value, json};
use uom::si::force::newton;
use uom::si::length::micrometer;
use uom::si::mass::kilogram;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// The ways as one JSON object, `seatwise.options/1`.
///
/// Temperatures are in °C, times in s, clearances in µm, forces in N; a thing that does not exist is null.
///
/// # Errors
/// None in practice: every number is finite.
pub fn json(job: &Job, seats: &[SeatWays]) -> Result<String, serde_json::Error> {
    let heading = &job.heading;
    pretty(&json!({
        "format": "seatwise.options/1",
        "job": { "title": heading.title, "reference": heading.reference, "revision": heading.revision },
        "rule": RULE,
        "aim": aim(seats),
        "comfortable": { "in_hand_s": COMFORTABLE_IN_HAND_S, "free_in_seat_s": COMFORTABLE_IN_SEAT_S },
        "seats": seats.iter().map(of_seat).collect::<Vec<_>>(),
    }))
}

/// What every way had to do; null for the tightest case.
fn aim(seats: &[SeatWays]) -> Value {
    match seats.first().map(|seat| seat.aim) {
        Some(Aim::Share { share, seed }) => {
            json!({ "share": figures(share.get::<ratio>()), "seed": seed, "draws": DRAWN_PARTS })
        }
        Some(Aim::TightestCase) | None => Value::Null,
    }
}

fn odds(odds: &Odds) -> Value {
    json!({
        "drops_in": figures(odds.drops_in.share()),
        "drops_in_low": figures(odds.drops_in.low),
        "drops_in_high": figures(odds.drops_in.high),
        "tightest_clearance_um": um(odds.tightest),
        "tightest_force_n": newtons(odds.force),
    })
}

fn of_seat(seat: &SeatWays) -> Value {
    json!({
        "seat": seat.seat.name(),
        "placing_clearance_um": um(seat.job.bench.placing_clearance),
        "pairs_left_out": seat.left_out,
        "ways": seat.ways.iter().enumerate().map(|(i, way)| Value::Object(of_way(seat, i + 1, way))).collect::<Vec<_>>(),
    })
}

fn of_way(seat: &SeatWays, rank: usize, way: &Way) -> Map<String, Value> {
    let mut map = Map::new();
    let mut put = |key: &str, value: Value| map.insert(key.to_owned(), value);
    put("rank", json!(rank));
    put("way", json!(way.words()));
    put("verdict", json!(way.worked().map_or("do not", |worked| worked.seat.verdict.words())));
    put("reason", json!(way.reason().map(|reason| words::sentence(reason, System::Metric))));
    for (key, chills) in [("chill", true), ("warm", false)] {
        let used = if chills { &way.chill } else { &way.warm };
        let soak =
            way.worked().and_then(|worked| if chills { worked.seat.chill.as_ref() } else { worked.seat.warm.as_ref() });
        put(key, used.as_ref().map_or(Value::Null, |used| of_medium(&seat.job, used, soak)));
    }
    for (key, value) in numbers(way) {
        put(key, value);
    }
    put("share", json!(way.worked().and_then(|worked| worked.odds.as_ref()).map(odds)));
    put("cautions", json!(way.worked().map_or_else(Vec::new, cautions)));
    map
}

fn of_medium(job: &Job, used: &Used, soak: Option<&Soak>) -> Value {
    json!({
        "part": words::piece(job, used.piece),
        "medium": used.medium.id(),
        "medium_c": soak.map(|soak| celsius(soak.medium_temperature)),
        "setting_c": used.setting.map(celsius),
        "least_setting_c": used.least_setting.map(celsius),
        "hold_s": soak.map(|soak| seconds(soak.hold)),
        "end_c": soak.map(|soak| celsius(soak.end)),
        "coolant_kg": soak.and_then(|soak| soak.coolant).map(|used| figures(used.mass.get::<kilogram>())),
    })
}

fn numbers(way: &Way) -> Vec<(&'static str, Value)> {
    let worked = way.worked();
    let level = |worked: &Worked| worked.hazard(way).map_or("none", Level::word);
    vec![
        ("ready_after_s", json!(worked.map(|worked| seconds(worked.ready_after())))),
        ("clearance_um", json!(worked.map(|worked| um(worked.seat.at_bore.clearance.tightest)))),
        ("in_hand_s", json!(worked.and_then(|worked| worked.in_hand).map(seconds))),
        ("free_in_seat_s", json!(worked.and_then(Worked::in_seat).map(seconds))),
        ("force_n", json!(worked.map(|worked| newtons(worked.seat.at_bore.force.tightest)))),
        ("comfortable", json!(worked.is_some_and(Worked::is_comfortable))),
        ("chilling_shortens", json!(worked.is_some_and(Worked::chilling_shortens))),
        ("danger", json!(worked.map(level))),
    ]
}

fn cautions(worked: &Worked) -> Vec<Value> {
    let one = |caution: &crate::plan::Caution| {
        json!({
            "code": caution.code(),
            "level": caution.level().word(),
            "signal": caution.signal(),
            "text": words::sentence(caution.sentence(), System::Metric),
            "source": caution.source(),
        })
    };
    worked.cautions.iter().map(one).collect()
}

const HEAD: [&str; 26] = [
    "title",
    "seat",
    "rank",
    "way",
    "verdict",
    "chill_medium",
    "chill_c",
    "chill_hold_s",
    "chill_end_c",
    "chill_coolant_kg",
    "warm_medium",
    "warm_c",
    "warm_least_c",
    "warm_hold_s",
    "warm_end_c",
    "ready_after_s",
    "clearance_um",
    "in_hand_s",
    "free_in_seat_s",
    "force_n",
    "comfortable",
    "chilling_shortens",
    "danger_or_reason",
    "share_drops_in",
    "tightest_clearance_um",
    "tightest_force_n",
];

/// The ways as CSV: one row a way, best first; a cell is empty where the thing does not exist.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn csv(job: &Job, seats: &[SeatWays]) -> Result<String, csv::Error> {
    let mut rows = vec![head(HEAD)];
    for seat in seats {
        rows.extend(seat.ways.iter().enumerate().map(|(i, way)| row(job, seat, i + 1, way)));
    }
    written(rows)
}

fn row(job: &Job, seat: &SeatWays, rank: usize, way: &Way) -> Vec<Cell> {
    let mut cells = vec![
        Cell::text(job.heading.title.as_str()),
        Cell::text(seat.seat.name()),
        Cell::number(rank as f64),
        Cell::text(way.words()),
        Cell::text(way.worked().map_or("do not", |worked| worked.seat.verdict.words())),
    ];
    let soak_of = |inner: bool| {
        way.worked()
            .and_then(|worked| soaks(way, worked).find(|(used, _)| is_inner(used, seat) == inner))
            .map(|(_, soak)| soak)
    };
    let (chill, warm) = (soak_of(true), soak_of(false));
    let name = |used: &Option<Used>| used.as_ref().map_or(Cell::Nothing, |used| Cell::text(used.medium.id()));
    cells.push(name(&way.chill));
    cells.push(Cell::number(chill.map(|soak| celsius(soak.medium_temperature))));
    cells.push(Cell::number(chill.map(|soak| seconds(soak.hold))));
    cells.push(Cell::number(chill.map(|soak| celsius(soak.end))));
    cells.push(Cell::number(chill.and_then(|soak| soak.coolant).map(|used| figures(used.mass.get::<kilogram>()))));
    let setting = way.warm.as_ref().and_then(|used| used.setting).map(celsius);
    cells.push(name(&way.warm));
    cells.push(Cell::number(setting.or(warm.map(|soak| celsius(soak.medium_temperature)))));
    cells.push(Cell::number(way.warm.as_ref().and_then(|used| used.least_setting).map(celsius)));
    cells.push(Cell::number(warm.map(|soak| seconds(soak.hold))));
    cells.push(Cell::number(warm.map(|soak| celsius(soak.end))));
    cells.extend(numbers(way).into_iter().take(7).map(|(_, value)| plain(value)));
    let level = way.worked().map(|worked| worked.hazard(way).map_or("none", Level::word).to_owned());
    let reason = way.reason().map(|reason| words::sentence(reason, System::Metric));
    cells.push(Cell::text(level.or(reason).unwrap_or_default()));
    let odds = way.worked().and_then(|worked| worked.odds);
    cells.push(Cell::number(odds.map(|odds| odds.drops_in.share())));
    cells.push(Cell::number(odds.map(|odds| um(odds.tightest))));
    cells.push(Cell::number(odds.map(|odds| newtons(odds.force))));
    cells
}

fn is_inner(used: &Used, seat: &SeatWays) -> bool {
    match seat.seat {
        crate::plan::SeatKind::Housing => used.piece == Piece::Part,
        crate::plan::SeatKind::Shaft => used.piece == Piece::Shaft,
    }
}

fn plain(value: Value) -> Cell {
    match value {
        Value::Null => Cell::Nothing,
        Value::Number(number) => Cell::number(number.as_f64()),
        Value::String(text) => Cell::text(text),
        other => Cell::text(other.to_string()),
    }
}

fn um(length: Length) -> f64 {
    figures(length.get::<micrometer>())
}

fn newtons(force: Force) -> f64 {
    figures(force.get::<newton>())
}

fn seconds(time: Time) -> f64 {
    figures(time.get::<second>())
}

fn celsius(temperature: ThermodynamicTemperature) -> f64 {
    figures(temperature.get::<degree_celsius>())
}
