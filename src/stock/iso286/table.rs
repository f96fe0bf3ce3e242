//! Reading the embedded CSV tables: every fault is an error that names the file and the line.

use crate::quantity::Nanometres;
use serde::de::{DeserializeOwned, Error as _};
use serde::{Deserialize, Deserializer};
use std::fmt;
use std::sync::Arc;
use thiserror::Error;

/// Why an embedded table cannot be used. A released binary never shows it: the tests read every table.
#[derive(Clone, Debug, Error)]
pub enum TableError {
    /// The CSV text is malformed, or a cell is not of the kind that its column wants.
    #[error("{file} cannot be read")]
    Csv {
        /// File name within the source tree.
        file: &'static str,
        /// What the CSV reader says, with the line.
        #[source]
        cause: Arc<csv::Error>,
    },
    /// A row can be read but contradicts itself.
    #[error("{file}, line {line}: {fault}")]
    Row {
        /// File name within the source tree.
        file: &'static str,
        /// Line in that file, from 1.
        line: u64,
        /// What is wrong with the row.
        fault: String,
    },
    /// The table has a header but no rows.
    #[error("{file} has no rows")]
    Empty {
        /// File name within the source tree.
        file: &'static str,
    },
}

/// Where the figure of a row comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Deserialize)]
pub enum Status {
    /// Read in the published text that the row names.
    #[serde(rename = "published text")]
    Published,
    /// Written down from memory of the standard that the row names; no text was opened.
    #[serde(rename = "from memory")]
    Memory,
}

impl fmt::Display for Status {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Published => "published text",
            Self::Memory => "from memory",
        })
    }
}

impl Status {
    /// Whether no published text stands behind the figure.
    pub fn is_memory(self) -> bool {
        self == Self::Memory
    }
}

/// A band of nominal sizes: over one size (exclusive), up to and including another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct SizeRange {
    /// Sizes must exceed this one.
    pub over: Nanometres,
    /// Sizes must not exceed this one.
    pub to: Nanometres,
}

impl SizeRange {
    /// Whether `size` lies in the band; a size on an edge belongs to the band below it.
    pub fn contains(self, size: Nanometres) -> bool {
        self.over < size && size <= self.to
    }

    pub(in crate::stock) fn check(self) -> Result<(), String> {
        if Nanometres(0) <= self.over && self.over < self.to {
            Ok(())
        } else {
            Err(format!("the band over {} mm up to {} mm holds no size", self.over.mm(), self.to.mm()))
        }
    }
}

impl std::fmt::Display for SizeRange {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.over == Nanometres(0) {
            write!(f, "up to and including {} mm", self.to.mm())
        } else {
            write!(f, "over {} mm, up to and including {} mm", self.over.mm(), self.to.mm())
        }
    }
}

/// All rows of `text`, each checked by `check`; lines that begin with `#` are comments.
pub(in crate::stock) fn rows<T: DeserializeOwned>(
    file: &'static str,
    text: &str,
    check: impl Fn(&T) -> Result<(), String>,
) -> Result<Vec<T>, TableError> {
    let csv_error = |cause| TableError::Csv { file, cause: Arc::new(cause) };
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let header = reader.headers().map_err(csv_error)?.clone();
    let mut rows = Vec::new();
    for record in reader.records() {
        let record = record.map_err(csv_error)?;
        let row: T = record.deserialize(Some(&header)).map_err(csv_error)?;
        let line = record.position().map_or(0, csv::Position::line);
        check(&row).map_err(|fault| TableError::Row { file, line, fault })?;
        rows.push(row);
    }
    if rows.is_empty() { Err(TableError::Empty { file }) } else { Ok(rows) }
}

/// A cell in millimetres.
pub(in crate::stock) fn mm<'de, D: Deserializer<'de>>(cell: D) -> Result<Nanometres, D::Error> {
    finite(cell).map(Nanometres::from_mm)
}

/// A cell in micrometres.
pub(in crate::stock) fn um<'de, D: Deserializer<'de>>(cell: D) -> Result<Nanometres, D::Error> {
    finite(cell).map(Nanometres::from_um)
}

/// A cell in millimetres that may be blank.
pub(in crate::stock) fn mm_or_blank<'de, D: Deserializer<'de>>(cell: D) -> Result<Option<Nanometres>, D::Error> {
    Ok(Option::<f64>::deserialize(cell)?.map(Nanometres::from_mm))
}

fn finite<'de, D: Deserializer<'de>>(cell: D) -> Result<f64, D::Error> {
    let value = f64::deserialize(cell)?;
    if value.is_finite() { Ok(value) } else { Err(D::Error::custom("the figure must be finite")) }
}
