//! Chamfers of rolling bearings: the least of each size (ISO 15) and the largest that belong to it (ISO 582).
//!
//! A chamfer takes its length from the seat at either end. A standard limits it on both sides and prescribes no shape, so that a
//! ring in the hand may have any in between.
//!
//! **Source**: ISO 15:2011 and ISO 582:1995, radial bearings except tapered roller bearings, through the texts that the files in
//! `fits/` name, row by row.

use super::dimensions;
use super::iso286::{SizeRange, Status, TableError, mm, rows};
use crate::quantity::Nanometres;
use serde::Deserialize;
use std::sync::LazyLock;

/// The least chamfer of the bearings of a series with bores between two sizes, both included.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct LeastRow {
    /// The series, such as `62`.
    pub series: String,
    /// Smallest bore.
    #[serde(rename = "from_mm", deserialize_with = "mm")]
    pub from: Nanometres,
    /// Largest bore.
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    pub to: Nanometres,
    /// Least single chamfer, in both directions.
    #[serde(rename = "r_s_min_mm", deserialize_with = "mm")]
    pub least: Nanometres,
    /// Whether it was read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

/// The largest chamfers that belong to a least one, in one band of the bore.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct LargestRow {
    /// Least single chamfer.
    #[serde(rename = "r_s_min_mm", deserialize_with = "mm")]
    pub least: Nanometres,
    #[serde(rename = "over_mm", deserialize_with = "mm")]
    over: Nanometres,
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    to: Nanometres,
    /// Largest along the face.
    #[serde(rename = "radial_max_mm", deserialize_with = "mm")]
    pub radial: Nanometres,
    /// Largest along the seat.
    #[serde(rename = "axial_max_mm", deserialize_with = "mm")]
    pub axial: Nanometres,
    /// Whether it was read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

impl LargestRow {
    /// The band of the bore.
    pub fn range(&self) -> SizeRange {
        SizeRange { over: self.over, to: self.to }
    }
}

/// The CSV text of least chamfers that is built into the program.
pub const EMBEDDED_LEAST: &str = include_str!("../../fits/iso15_chamfers.csv");
/// The CSV text of largest chamfers that is built into the program.
pub const EMBEDDED_LARGEST: &str = include_str!("../../fits/iso582_chamfers.csv");

/// Where the least chamfers come from, in a word: no row was read in a published text.
pub const LEAST_FROM: &str = "from memory";

/// Least chamfers, series by series with rising bores.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn least() -> Result<&'static [LeastRow], TableError> {
    static TABLE: LazyLock<Result<Vec<LeastRow>, TableError>> = LazyLock::new(|| {
        rows("fits/iso15_chamfers.csv", EMBEDDED_LEAST, |row: &LeastRow| {
            let good = Nanometres(0) < row.least && row.from <= row.to;
            if good { Ok(()) } else { Err("the chamfer must be above zero and the bores in order".to_owned()) }
        })
    });
    TABLE.as_deref().map_err(Clone::clone)
}

/// Largest chamfers, by rising least ones and bores.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn largest() -> Result<&'static [LargestRow], TableError> {
    static TABLE: LazyLock<Result<Vec<LargestRow>, TableError>> = LazyLock::new(|| {
        rows("fits/iso582_chamfers.csv", EMBEDDED_LARGEST, |row: &LargestRow| {
            let good = row.least < row.radial && row.radial < row.axial && row.over < row.to;
            if good {
                Ok(())
            } else {
                Err("least, radial and axial chamfer must rise, and so must the band".to_owned())
            }
        })
    });
    TABLE.as_deref().map_err(Clone::clone)
}

/// Chamfers of a single-row deep groove ball bearing by its boundary sizes; none for sizes that ISO 15 does not have in the series
/// of the table.
///
/// # Errors
/// [`TableError`] when an embedded file is malformed.
///
/// # Examples
/// ```
/// use seatwise::quantity::Nanometres;
/// let mm = Nanometres::from_mm;
/// let of_6206 = seatwise::stock::chamfers::of_ball_bearing(mm(30.0), mm(62.0), mm(16.0))?.unwrap();
/// assert_eq!((of_6206.least.mm(), of_6206.radial.mm(), of_6206.axial.mm()), (1.0, 1.5, 3.0));
/// # Ok::<(), seatwise::stock::iso286::TableError>(())
/// ```
pub fn of_ball_bearing(
    bore: Nanometres,
    outside: Nanometres,
    width: Nanometres,
) -> Result<Option<&'static LargestRow>, TableError> {
    let sized = |row: &&dimensions::DimensionRow| (row.bore, row.outside, row.width) == (bore, outside, width);
    let Some(bearing) = dimensions::table()?.iter().find(sized) else { return Ok(None) };
    let of_series = |row: &&LeastRow| row.series == bearing.series && row.from <= bore && bore <= row.to;
    let Some(least) = least()?.iter().find(of_series) else { return Ok(None) };
    Ok(largest()?.iter().find(|row| row.least == least.least && row.range().contains(bore)))
}
