use super::warmed;
use crate::job::Piece;
use crate::plan::chart::{Chart, Row};
use crate::plan::options::Worked;
use crate::quantity::System;
use crate::report::sheet::{Cell, head, written};
use crate::report::words;
use uom::si::force::newton;
use uom::si::length::micrometer;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

const HEAD: [&str; 14] = [
    "title",
    "seat",
    "warmed",
    "outer_c",
    "inner_medium",
    "inner_c",
    "verdict",
    "comfortable",
    "clearance_um",
    "in_hand_s",
    "free_in_seat_s",
    "lock_c",
    "force_n",
    "reason",
];

/// Charts as CSV: one row a cell, row after row; a cell of it is empty where the thing does not exist.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn csv(charts: &[Chart]) -> Result<String, csv::Error> {
    let mut rows = vec![head(HEAD)];
    for chart in charts {
        for row in &chart.rows {
            rows.extend((0..chart.columns.len()).map(|column| cells(chart, row, column)));
        }
    }
    written(rows)
}

fn cells(chart: &Chart, row: &Row, column: usize) -> Vec<Cell> {
    let cell = &row.cells[column];
    let worked: Option<&Worked> = cell.as_ref().ok().map(AsRef::as_ref);
    let of = |read: fn(&Worked) -> f64| Cell::number(worked.map(read));
    let medium = chart.columns[column].as_ref();
    let inner = worked.map(|worked| worked.seat.chill.as_ref().map_or(chart.job.bench.temperature, |soak| soak.end));
    vec![
        Cell::text(chart.job.heading.title.as_str()),
        Cell::text(chart.seat.name()),
        Cell::text(if warmed(chart) == Piece::Housing { "housing" } else { chart.job.part.kind.noun() }),
        Cell::number(Some(row.outer.get::<degree_celsius>())),
        Cell::text(medium.map_or("shop", |medium| medium.id())),
        Cell::number(inner.map(|inner| inner.get::<degree_celsius>())),
        Cell::text(worked.map_or("do not", |worked| worked.seat.verdict.words())),
        worked.map_or(Cell::Nothing, |worked| Cell::text(worked.is_comfortable().to_string())),
        of(|worked| worked.seat.at_bore.clearance.tightest.get::<micrometer>()),
        Cell::number(worked.and_then(|worked| worked.in_hand).map(|time| time.get::<second>())),
        Cell::number(worked.and_then(Worked::in_seat).map(|time| time.get::<second>())),
        Cell::number(chart.cold.lock.tightest.map(|lock| lock.get::<degree_celsius>())),
        of(|worked| worked.seat.at_bore.force.tightest.get::<newton>()),
        cell.as_ref().err().map_or(Cell::Nothing, |reason| Cell::text(words::sentence(reason, System::Metric))),
    ]
}
