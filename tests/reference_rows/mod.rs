//! Reads the rows of `tests/reference`; a missing or empty file, column or number stops the test.
#![allow(dead_code, missing_docs, clippy::unwrap_used, reason = "shared by several test files")]

use std::collections::HashMap;

/// One row, by column name.
pub type Row = HashMap<String, String>;

/// All rows of a file such as `mechanics/lame.csv`.
pub fn read(file: &str) -> Vec<Row> {
    let path = format!("{}/tests/reference/{file}", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path).unwrap();
    let rows: Vec<Row> = reader.deserialize().map(|row| row.unwrap()).collect();
    assert!(!rows.is_empty(), "{file} has no rows");
    rows
}

pub fn number(row: &Row, column: &str) -> f64 {
    row[column].parse().unwrap_or_else(|_| panic!("{column} of {row:?}"))
}

/// Value of `key=` in a cell such as `m=1 kg;c=470 J/kgK`.
pub fn given(cell: &str, key: &str) -> f64 {
    let part = cell.split(';').find_map(|part| part.trim().strip_prefix(&format!("{key}="))).unwrap();
    let digits = part.split(' ').next().unwrap();
    digits.parse().unwrap_or_else(|_| panic!("{key} in {cell}"))
}
