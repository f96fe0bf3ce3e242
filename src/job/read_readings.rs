//! A diameter by a table of readings: one row a depth, one column a direction.

use super::model::Measured;
use super::read_size::{Seating, gauge, near_nominal};
use super::section::{Notes, Section};
use crate::assembly::readings::Readings;
use crate::quantity::{self, Length};
use crate::stock::Library;

/// Most readings of one diameter.
const MOST: usize = 400;

const WANTED: &str = "write one row a depth from the mouth inwards, one reading a direction: [[\"51.960 mm\", \"51.985 mm\"], \
                      [\"51.962 mm\", \"51.984 mm\"]]";

/// The size that the readings under `readings` give; `within` is the uncertainty of one reading.
pub(super) fn measured(
    table: &Section<'_>,
    seating: &Seating,
    within: Length,
    library: &Library,
    notes: &mut Notes,
) -> Option<Measured> {
    let readings = table_of(table, seating, notes)?;
    let form = readings.form();
    let gauge = gauge(table, seating, library, notes)?;
    Some(Measured {
        nominal: seating.nominal,
        reading: (form.smallest + form.largest) / 2.0,
        within: (form.largest - form.smallest) / 2.0 + within,
        uncertainty: within,
        readings: Some(readings),
        part_temperature: gauge.part_temperature,
        gauge_temperature: gauge.gauge_temperature,
        gauge_material: gauge.material,
    })
}

fn table_of(table: &Section<'_>, seating: &Seating, notes: &mut Notes) -> Option<Readings> {
    let rows = table.word_rows("readings", WANTED, notes)?;
    let count: usize = rows.iter().map(Vec::len).sum();
    if count > MOST {
        let message = format!("`{}` holds {count} readings but may hold at most {MOST}", table.path("readings"));
        notes.problem(table.place("readings"), message, WANTED);
        return None;
    }
    let mut lengths = Vec::with_capacity(rows.len());
    let mut sound = true;
    for (number, row) in rows.iter().enumerate() {
        let key = format!("readings[{}]", number + 1);
        let mut read = Vec::with_capacity(row.len());
        for words in row {
            let found = table.parse_words(&key, words, quantity::length, notes);
            let near = found.and_then(|found| {
                near_nominal(table, "readings", (found.value, found.at), seating.nominal, notes).map(|()| found.value)
            });
            sound &= near.is_some();
            read.extend(near);
        }
        lengths.push(read);
    }
    if !sound {
        return None;
    }
    match Readings::new(lengths) {
        Ok(readings) => Some(readings),
        Err(error) => {
            notes.problem(table.place("readings"), format!("`{}`: {error}", table.path("readings")), WANTED);
            None
        }
    }
}
