//! ISO 492: limit deviations of bore, outside and width of rolling bearing rings.
//!
//! Deviations of the mean diameter in a single plane (ISO 492 symbols Δdmp and ΔDmp), radial bearings with a
//! cylindrical bore, without flange. A thin ring may be out of round by more than this before it is seated.
//!
//! **Source**: ISO 492, through the texts that the files in `fits/` name, row by row.

use super::iso286::{SizeRange, Status, TableError, mm, rows, um};
use crate::quantity::{Deviations, Nanometres};
use serde::Deserialize;
use std::fmt;
use std::sync::LazyLock;
use thiserror::Error;

/// A ring of a rolling bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Ring {
    /// The inner ring: its bore sits on the shaft.
    Inner,
    /// The outer ring: its outside sits in the housing.
    Outer,
}

/// A tolerance class of ISO 492, coarsest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
pub enum RingClass {
    /// The Normal class. Older texts and the trade call it P0.
    Normal,
    /// Class 6.
    P6,
    /// Class 5.
    P5,
    /// Class 4.
    P4,
}

/// A text that names no class of ISO 492 in the tables.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[error("`{given}` is not a tolerance class known here\n  help: the classes are ISO 492 Normal (P0), P6, P5 and P4")]
pub struct RingClassError {
    /// What was given.
    pub given: String,
}

impl RingClass {
    /// All classes, coarsest first.
    pub const ALL: [Self; 4] = [Self::Normal, Self::P6, Self::P5, Self::P4];

    /// Reads `ISO 492 Normal`, `ISO 492 P6`, `Normal`, `P6` or `class 6`, in capitals or not; `P0` means Normal.
    ///
    /// # Errors
    /// [`RingClassError`] for any other text, class 2 included: its limits are not in the tables.
    pub fn parse(text: &str) -> Result<Self, RingClassError> {
        let lower = text.trim().to_ascii_lowercase();
        let name = lower.strip_prefix("iso 492").unwrap_or(&lower).trim();
        match name.strip_prefix("class").map_or(name, str::trim) {
            "normal" | "p0" | "pn" | "0" => Ok(Self::Normal),
            "p6" | "6" => Ok(Self::P6),
            "p5" | "5" => Ok(Self::P5),
            "p4" | "4" => Ok(Self::P4),
            _ => Err(RingClassError { given: text.to_owned() }),
        }
    }
}

impl fmt::Display for RingClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = match self {
            Self::Normal => "Normal",
            Self::P6 => "P6",
            Self::P5 => "P5",
            Self::P4 => "P4",
        };
        write!(f, "ISO 492 {name}")
    }
}

/// Limits of a ring's seat diameter in one band of that diameter.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct RingRow {
    /// The class.
    pub class: RingClass,
    /// The ring; the bands of an inner ring are of its bore, those of an outer ring of its outside.
    pub ring: Ring,
    #[serde(rename = "over_mm", deserialize_with = "mm")]
    over: Nanometres,
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    to: Nanometres,
    #[serde(rename = "upper_um", deserialize_with = "um")]
    upper: Nanometres,
    #[serde(rename = "lower_um", deserialize_with = "um")]
    lower: Nanometres,
    /// Whether the figure was read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

/// Limits of the width of each ring of a single bearing, in one band of the bore.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct WidthRow {
    /// The class.
    pub class: RingClass,
    #[serde(rename = "over_mm", deserialize_with = "mm")]
    over: Nanometres,
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    to: Nanometres,
    #[serde(rename = "upper_um", deserialize_with = "um")]
    upper: Nanometres,
    #[serde(rename = "lower_um", deserialize_with = "um")]
    lower: Nanometres,
    /// Whether the figure was read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

impl RingRow {
    /// The band of the seat diameter.
    pub fn range(&self) -> SizeRange {
        SizeRange { over: self.over, to: self.to }
    }

    /// The limit deviations.
    pub fn deviations(&self) -> Deviations {
        Deviations { lower: self.lower, upper: self.upper }
    }
}

impl WidthRow {
    /// The band of the bore.
    pub fn range(&self) -> SizeRange {
        SizeRange { over: self.over, to: self.to }
    }

    /// The limit deviations.
    pub fn deviations(&self) -> Deviations {
        Deviations { lower: self.lower, upper: self.upper }
    }
}

/// The CSV text of the seat diameters that is built into the program.
pub const EMBEDDED_RINGS: &str = include_str!("../../fits/iso492_rings.csv");
/// The CSV text of the widths that is built into the program.
pub const EMBEDDED_WIDTHS: &str = include_str!("../../fits/iso492_widths.csv");

/// The tables, parsed.
#[derive(Clone, Debug)]
pub struct Tables {
    rings: Vec<RingRow>,
    widths: Vec<WidthRow>,
}

/// The embedded tables, parsed once.
///
/// # Errors
/// [`TableError`] when an embedded file is malformed.
pub fn tables() -> Result<&'static Tables, TableError> {
    static TABLES: LazyLock<Result<Tables, TableError>> =
        LazyLock::new(|| Tables::parse(EMBEDDED_RINGS, EMBEDDED_WIDTHS));
    TABLES.as_ref().map_err(Clone::clone)
}

impl Tables {
    /// Parses and checks both tables.
    ///
    /// # Errors
    /// [`TableError`] with file and line of the first bad row.
    pub fn parse(rings: &str, widths: &str) -> Result<Self, TableError> {
        Ok(Self {
            rings: rows("fits/iso492_rings.csv", rings, |row: &RingRow| check(row.range(), row.deviations()))?,
            widths: rows("fits/iso492_widths.csv", widths, |row: &WidthRow| check(row.range(), row.deviations()))?,
        })
    }

    /// The limits of the seat diameter `size` of a ring, where the tables give them.
    pub fn ring(&self, class: RingClass, ring: Ring, size: Nanometres) -> Option<&RingRow> {
        self.rings(class, ring).find(|row| row.range().contains(size))
    }

    /// The limits of the width of either ring of a bearing with this `bore`, where the tables give them.
    pub fn width(&self, class: RingClass, bore: Nanometres) -> Option<&WidthRow> {
        self.widths(class).find(|row| row.range().contains(bore))
    }

    /// The rows of one class and ring, in order of size.
    pub fn rings(&self, class: RingClass, ring: Ring) -> impl Iterator<Item = &RingRow> {
        self.rings.iter().filter(move |row| row.class == class && row.ring == ring)
    }

    /// The rows of the widths of one class, in order of the bore.
    pub fn widths(&self, class: RingClass) -> impl Iterator<Item = &WidthRow> {
        self.widths.iter().filter(move |row| row.class == class)
    }
}

fn check(range: SizeRange, deviations: Deviations) -> Result<(), String> {
    range.check()?;
    if deviations.lower < deviations.upper { Ok(()) } else { Err("lower_um must be below upper_um".to_owned()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_class_is_read_with_or_without_its_standard() {
        for (text, class) in [
            ("ISO 492 Normal", RingClass::Normal),
            ("normal", RingClass::Normal),
            ("P0", RingClass::Normal),
            ("iso 492 p6", RingClass::P6),
            ("P5", RingClass::P5),
            ("ISO 492 class 4", RingClass::P4),
        ] {
            assert_eq!(RingClass::parse(text), Ok(class), "{text}");
        }
        for class in RingClass::ALL {
            assert_eq!(RingClass::parse(&class.to_string()), Ok(class));
        }
    }

    #[test]
    fn a_class_without_tables_is_refused_with_those_that_have_them() {
        for text in ["P2", "P6X", "ISO 493 Normal", "", "h6"] {
            let said = RingClass::parse(text).unwrap_err().to_string();
            assert!(said.contains("Normal (P0), P6, P5 and P4"), "{said}");
        }
    }

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        let bad =
            "class,ring,over_mm,to_mm,upper_um,lower_um,status,source\nNormal,outer,50,80,-13,0,published text,x\n";
        let said = Tables::parse(bad, EMBEDDED_WIDTHS).unwrap_err().to_string();
        assert!(said.contains("line 2") && said.contains("below upper_um"), "{said}");
    }

    #[test]
    fn the_embedded_tables_are_whole() {
        let tables = tables().unwrap();
        assert_eq!((tables.rings.len(), tables.widths.len()), (102, 37));
    }
}
