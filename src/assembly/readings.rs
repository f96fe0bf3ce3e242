//! A table of readings of one diameter: mean, out-of-round and taper.

use crate::quantity::Length;
use std::fmt;
use thiserror::Error;
use uom::si::length::millimeter;

/// Readings of one diameter: one row a depth, from the mouth inwards, one column a direction across.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings {
    rows: Vec<Vec<Length>>,
}

/// Readings that make no table.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ReadingsError {
    /// One reading tells nothing of the form.
    #[error("there is {count} reading; give two or more: directions across in a row, depths in rows of their own")]
    TooFew {
        /// How many there are.
        count: usize,
    },
    /// A row has another number of readings than the first.
    #[error("row {row} has {count} readings but the first has {wanted}; give each depth the same directions")]
    Ragged {
        /// Number of the row, from 1.
        row: usize,
        /// Its readings.
        count: usize,
        /// Readings of the first row.
        wanted: usize,
    },
    /// A reading is not a diameter.
    #[error("reading {column} of row {row} is {value_mm} mm; a diameter must be above zero")]
    NotPositive {
        /// Number of the row, from 1.
        row: usize,
        /// Number of the reading in it, from 1.
        column: usize,
        /// Its value, mm.
        value_mm: f64,
    },
}

/// Where the diameter is largest along its depth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Widest {
    /// At the first depth.
    Mouth,
    /// At the last depth.
    Bottom,
    /// Between: a barrel.
    Between,
}

/// Form of a diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Form {
    /// Mean of all readings.
    pub mean: Length,
    /// Smallest reading.
    pub smallest: Length,
    /// Largest reading.
    pub largest: Length,
    /// Largest less smallest reading at one depth, at the worst depth; none with one direction.
    pub out_of_round: Option<Length>,
    /// Largest less smallest mean of a depth; none with one depth.
    pub taper: Option<Length>,
    /// Where the mean is largest; none with one depth.
    pub widest: Option<Widest>,
}

impl Readings {
    /// A table of readings.
    ///
    /// # Errors
    /// [`ReadingsError`] for fewer than two readings, rows of unequal length, a reading that is no diameter.
    pub fn new(rows: Vec<Vec<Length>>) -> Result<Self, ReadingsError> {
        let count = rows.iter().map(Vec::len).sum();
        if count < 2 {
            return Err(ReadingsError::TooFew { count });
        }
        let wanted = rows[0].len();
        for (number, row) in rows.iter().enumerate() {
            if row.len() != wanted {
                return Err(ReadingsError::Ragged { row: number + 1, count: row.len(), wanted });
            }
            let bad = row.iter().map(|reading| reading.get::<millimeter>()).enumerate();
            if let Some((column, value_mm)) = bad.into_iter().find(|(_, mm)| !(mm.is_finite() && *mm > 0.0)) {
                return Err(ReadingsError::NotPositive { row: number + 1, column: column + 1, value_mm });
            }
        }
        Ok(Self { rows })
    }

    /// The readings, row by row.
    pub fn rows(&self) -> &[Vec<Length>] {
        &self.rows
    }

    /// How many readings there are.
    pub fn count(&self) -> usize {
        self.rows.iter().map(Vec::len).sum()
    }

    /// Directions in which each depth was read.
    pub fn directions(&self) -> usize {
        self.rows[0].len()
    }

    /// Mean, extremes, out-of-round and taper.
    ///
    /// Out-of-round is a difference of diameters, twice the roundness deviation of an oval in the sense of ISO 1101 (which
    /// measures radii). **Valid for** readings across two points: these do not see a form of three or five lobes.
    pub fn form(&self) -> Form {
        let all = || self.rows.iter().flatten().copied();
        let means: Vec<Length> = self.rows.iter().map(|row| mean(row.iter().copied(), row.len())).collect();
        let out_of_round = self.rows.iter().map(|row| spread(row)).reduce(Length::max);
        Form {
            mean: mean(all(), self.count()),
            smallest: all().fold(self.rows[0][0], Length::min),
            largest: all().fold(self.rows[0][0], Length::max),
            out_of_round: out_of_round.filter(|_| self.directions() > 1),
            taper: (means.len() > 1).then(|| spread(&means)),
            widest: (means.len() > 1).then(|| widest(&means)),
        }
    }
}

fn mean(lengths: impl Iterator<Item = Length>, count: usize) -> Length {
    lengths.fold(Length::default(), |sum, length| sum + length) / count as f64
}

fn spread(lengths: &[Length]) -> Length {
    let ends = |choose: fn(Length, Length) -> Length| lengths.iter().copied().reduce(choose).unwrap_or_default();
    ends(Length::max) - ends(Length::min)
}

fn widest(means: &[Length]) -> Widest {
    let most = means.iter().copied().fold(means[0], Length::max);
    match means.iter().position(|mean| *mean >= most) {
        Some(0) => Widest::Mouth,
        Some(place) if place + 1 == means.len() => Widest::Bottom,
        _ => Widest::Between,
    }
}

impl fmt::Display for Readings {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (depths, directions) = (self.rows.len(), self.directions());
        write!(f, "{directions} direction{} at {depths} depth{}", plural(directions), plural(depths))
    }
}

fn plural(count: usize) -> &'static str {
    if count == 1 { "" } else { "s" }
}
