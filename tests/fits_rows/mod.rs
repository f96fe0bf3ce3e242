//! Reads the reference rows of `tests/reference/fits`; a missing file or column stops the test.
#![allow(dead_code, missing_docs, clippy::unwrap_used, reason = "shared by several test files")]

use seatwise::fit::ToleranceClass;
use seatwise::quantity::Nanometres;
use std::collections::BTreeMap;

/// One row, by column name. Its `Debug` form names the source in every failure.
#[derive(Debug)]
pub struct Row(BTreeMap<String, String>);

impl Row {
    pub fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    pub fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap_or_else(|_| panic!("{column} is no number: {self:?}"))
    }
}

pub fn rows(file: &str) -> Vec<Row> {
    let path = format!("{}/tests/reference/fits/{file}", env!("CARGO_MANIFEST_DIR"));
    read(&std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{file}: {error}")))
}

pub fn read(text: &str) -> Vec<Row> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    reader.deserialize().map(|row| Row(row.unwrap())).collect()
}

pub fn class(name: &str) -> ToleranceClass {
    ToleranceClass::parse(name).unwrap_or_else(|error| panic!("{name}: {error}"))
}

pub fn mm(size: f64) -> Nanometres {
    Nanometres::from_mm(size)
}

pub fn um(size: f64) -> Nanometres {
    Nanometres::from_um(size)
}

pub fn opt_um(cell: &str) -> Option<Nanometres> {
    (!cell.is_empty()).then(|| um(cell.parse().unwrap()))
}
