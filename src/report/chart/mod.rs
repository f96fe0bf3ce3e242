//! A chart for the shop's wall as text, CSV or a page to print.

mod csv;
#[cfg(feature = "cli")]
mod html;
mod text;

pub use csv::csv;
#[cfg(feature = "cli")]
pub use html::html;
pub(crate) use text::aligned;
pub use text::text;

use crate::job::Piece;
use crate::plan::chart::Chart;
use crate::plan::options::Worked;
use crate::plan::{Caution, SeatKind, Sentence, Verdict};
use crate::quantity::{Length, System, Time, Toward, show_duration, show_force, show_temperature};
use crate::report::words;

/// How to read a cell, the same words in every form.
const LEGEND: [&str; 5] = [
    "Temperatures are those on leaving oven and freezer; the part is then carried to the seat.",
    "GOES: drops in with this clearance, then time in hand at the seat, then time free in the seat.",
    "RACE: the same, but with less than 1 min in hand or less than 10 s free in the seat.",
    "PUSH: clearance is there, but less than it takes to drop in. PRESS: pressed, with up to this force.",
    "NO: a limit or a danger forbids it; the letter leads to the reason.",
];

/// What a cell says, and in what manner.
struct Shown {
    /// The first word, which stands for its kind.
    kind: &'static str,
    /// The lines under it.
    lines: Vec<String>,
}

/// A chart in words: what stands over the columns, before the rows, in the cells, and under the table.
struct Page {
    title: String,
    subtitle: String,
    corner: String,
    columns: Vec<String>,
    rows: Vec<(String, Vec<Shown>)>,
    reasons: Vec<String>,
    cautions: Vec<(&'static str, String)>,
}

fn page(chart: &Chart, system: System) -> Page {
    let mut reasons = Vec::new();
    let rows = chart.rows.iter().map(|row| {
        let head = show_temperature(row.outer, system, 0, Toward::Nearest);
        (head, row.cells.iter().map(|cell| shown(cell, system, &mut reasons)).collect())
    });
    let rows = rows.collect();
    let heading = &chart.job.heading;
    let title = [Some(&heading.title), heading.reference.as_ref()].into_iter().flatten().cloned();
    Page {
        title: title.filter(|text| !text.is_empty()).collect::<Vec<_>>().join(", "),
        subtitle: subtitle(chart, system),
        corner: format!("{} at", outer_name(chart)),
        columns: chart.columns.iter().enumerate().map(|(i, _)| column(chart, i, system)).collect(),
        rows,
        reasons: reasons.iter().enumerate().map(|(i, reason)| format!("{}: {reason}", letter(i))).collect(),
        cautions: cautions(chart, system),
    }
}

fn subtitle(chart: &Chart, system: System) -> String {
    let fit = &chart.cold.fit;
    let small = |length: Length| words::small_length(length, system, Toward::Nearest);
    let lock = match chart.cold.lock.tightest {
        Some(lock) => format!(
            "Both parts at one temperature: the tightest case locks at {}",
            show_temperature(lock, system, 0, Toward::Nearest)
        ),
        None => "Both parts at one temperature: no temperature frees the tightest case".to_owned(),
    };
    format!(
        "{} seat, interference {} to {} at 20 °C ({} in {}); the tightest case counts. {lock}.",
        capital(chart.seat),
        small(-fit.clearance.loosest),
        small(-fit.clearance.tightest),
        chart.cold.inner.basis,
        chart.cold.outer.basis
    )
}

fn capital(seat: SeatKind) -> &'static str {
    match seat {
        SeatKind::Housing => "Housing",
        SeatKind::Shaft => "Shaft",
    }
}

fn outer_name(chart: &Chart) -> &'static str {
    match chart.seat {
        SeatKind::Housing => "housing",
        SeatKind::Shaft => chart.job.part.kind.noun(),
    }
}

fn column(chart: &Chart, index: usize, system: System) -> String {
    let inner = match chart.seat {
        SeatKind::Housing => chart.job.part.kind.noun(),
        SeatKind::Shaft => "shaft",
    };
    match &chart.columns[index] {
        None => {
            format!("{inner} at shop, {}", show_temperature(chart.job.bench.temperature, system, 0, Toward::Nearest))
        }
        Some(medium) => {
            let end = chart.rows.iter().filter_map(|row| row.cells.get(index)?.as_ref().ok()).find_map(|worked| {
                worked.seat.chill.as_ref().map(|soak| show_temperature(soak.end, system, 0, Toward::Nearest))
            });
            end.map_or_else(|| medium.id().to_owned(), |end| format!("{}, {end}", medium.id()))
        }
    }
}

fn shown(cell: &Result<Box<Worked>, Sentence>, system: System, reasons: &mut Vec<String>) -> Shown {
    let worked = match cell {
        Ok(worked) => worked,
        Err(reason) => {
            return Shown { kind: "NO", lines: vec![letter(known(words::sentence(reason, system), reasons))] };
        }
    };
    let clearance = worked.seat.at_bore.clearance.tightest;
    let time = |time: Option<Time>| time.map_or("no end".to_owned(), |time| show_duration(time, Toward::Down));
    if worked.seat.verdict == Verdict::DropsIn {
        let kind = if worked.is_comfortable() { "GOES" } else { "RACE" };
        let clearance = words::small_length(clearance, system, Toward::Down);
        return Shown { kind, lines: vec![clearance, time(worked.in_hand), time(worked.in_seat())] };
    }
    if clearance >= Length::default() {
        return Shown { kind: "PUSH", lines: vec![words::small_length(clearance, system, Toward::Down)] };
    }
    Shown { kind: "PRESS", lines: vec![show_force(worked.seat.at_bore.force.tightest, system, Toward::Up)] }
}

/// The number of a reason, which is added where it is new.
fn known(reason: String, reasons: &mut Vec<String>) -> usize {
    match reasons.iter().position(|known| *known == reason) {
        Some(index) => index,
        None => {
            reasons.push(reason);
            reasons.len() - 1
        }
    }
}

fn letter(index: usize) -> String {
    let alphabet = u8::try_from(index % 26).unwrap_or_default();
    format!("{}{}", char::from(b'a' + alphabet), if index >= 26 { (index / 26).to_string() } else { String::new() })
}

/// What can hurt someone in any cell, each once, gravest first; the rest belongs to the plan of one job.
fn cautions(chart: &Chart, system: System) -> Vec<(&'static str, String)> {
    let media = chart.columns.iter().flatten().flat_map(|medium| medium.hazards()).map(|hazard| hazard.code());
    let mut codes: Vec<&str> = media.collect();
    codes.extend(["hot-part", "press", "gas-in-the-room", "push-right-ring", "stops-half-way", "defer"]);
    let mut found: Vec<&Caution> = Vec::new();
    for caution in chart.cautions().filter(|caution| codes.contains(&caution.code())) {
        // A caution with a number in it differs from cell to cell; the first stands for all.
        if !found.iter().any(|known| known.code() == caution.code()) {
            found.push(caution);
        }
    }
    found.sort_by_key(|caution| caution.rank());
    found.into_iter().map(|caution| (caution.signal(), words::sentence(caution.sentence(), system))).collect()
}

/// The piece that is warmed.
fn warmed(chart: &Chart) -> Piece {
    match chart.seat {
        SeatKind::Housing => Piece::Housing,
        SeatKind::Shaft => Piece::Part,
    }
}
