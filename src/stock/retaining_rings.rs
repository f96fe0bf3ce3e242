//! Retaining rings in bores (DIN 472) and on shafts (DIN 471), with their grooves.
//!
//! **Source**: DIN 471 and DIN 472, through the texts that `fits/retaining_rings.csv` names, row by row.

use super::iso286::{Status, TableError, mm, rows, um};
use crate::quantity::{Deviations, Length, Nanometres};
use serde::Deserialize;
use std::fmt;
use std::sync::LazyLock;

/// Where a retaining ring sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum RingPlace {
    /// In a bore: DIN 472.
    Bore,
    /// On a shaft: DIN 471.
    Shaft,
}

impl RingPlace {
    /// The standard of rings in that place.
    pub fn standard(self) -> &'static str {
        match self {
            Self::Bore => "DIN 472",
            Self::Shaft => "DIN 471",
        }
    }
}

/// One ring of the normal type, with its groove.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct RetainingRing {
    /// Where it sits.
    #[serde(rename = "on")]
    pub place: RingPlace,
    /// Bore or shaft.
    #[serde(rename = "size_mm", deserialize_with = "mm")]
    pub size: Nanometres,
    /// Nominal thickness.
    #[serde(rename = "thickness_mm", deserialize_with = "mm")]
    pub thickness: Nanometres,
    #[serde(rename = "lower_um", deserialize_with = "um")]
    lower: Nanometres,
    /// Diameter of the groove.
    #[serde(rename = "groove_mm", deserialize_with = "mm")]
    pub groove: Nanometres,
    /// Least width of the groove; its tolerance class is H13.
    #[serde(rename = "width_mm", deserialize_with = "mm")]
    pub width: Nanometres,
    /// Whether the figures were read in a published text.
    pub status: Status,
    /// Key of the text, explained at the head of the file.
    pub source: String,
}

/// Least land between the groove and the face over the depth of the groove: from memory of the tables' last column.
const LAND_OVER_DEPTH: f64 = 3.0;

impl RetainingRing {
    /// Limit deviations of the thickness.
    pub fn thickness_deviations(&self) -> Deviations {
        Deviations { lower: self.lower, upper: Nanometres(0) }
    }

    /// Depth of the groove.
    pub fn groove_depth(&self) -> Length {
        (self.groove.length() - self.size.length()).abs() / 2.0
    }

    /// Least land between the groove and the face beside it.
    pub fn least_land(&self) -> Length {
        LAND_OVER_DEPTH * self.groove_depth()
    }
}

impl fmt::Display for RetainingRing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}x{}", self.place.standard(), self.size.mm(), self.thickness.mm())
    }
}

/// The CSV text that is built into the program.
pub const EMBEDDED: &str = include_str!("../../fits/retaining_rings.csv");

/// The embedded rings, parsed once: bores, then shafts, each with rising size.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn table() -> Result<&'static [RetainingRing], TableError> {
    static TABLE: LazyLock<Result<Vec<RetainingRing>, TableError>> = LazyLock::new(|| parse(EMBEDDED));
    TABLE.as_deref().map_err(Clone::clone)
}

/// The ring of a bore or a shaft; none where the table has no such size.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
///
/// # Examples
/// ```
/// use seatwise::quantity::Nanometres;
/// use seatwise::stock::retaining_rings::{RingPlace, ring};
/// let ring = ring(RingPlace::Bore, Nanometres::from_mm(62.0))?.ok_or("no such ring")?;
/// assert_eq!((ring.to_string(), ring.groove.mm()), ("DIN 472 62x2".to_owned(), 65.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn ring(place: RingPlace, size: Nanometres) -> Result<Option<&'static RetainingRing>, TableError> {
    Ok(table()?.iter().find(|ring| ring.place == place && ring.size == size))
}

fn parse(text: &str) -> Result<Vec<RetainingRing>, TableError> {
    rows("fits/retaining_rings.csv", text, check)
}

fn check(row: &RetainingRing) -> Result<(), String> {
    let zero = Nanometres(0);
    if row.size <= zero || row.thickness <= zero || row.lower >= zero || -row.lower >= row.thickness {
        return Err("size and thickness must be above zero, and the lower limit below it".to_owned());
    }
    if row.width <= row.thickness {
        return Err("the groove must be wider than the ring".to_owned());
    }
    let outward = row.groove > row.size;
    if outward == (row.place == RingPlace::Bore) && row.groove != row.size {
        Ok(())
    } else {
        Err("the groove of a bore must be larger than it, that of a shaft smaller".to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        let head = "on,size_mm,thickness_mm,lower_um,groove_mm,width_mm,status,source\n";
        for (row, wanted) in [
            ("bore,62,2,-70,65,1.9,from memory,x", "wider than the ring"),
            ("bore,62,2,70,65,2.15,from memory,x", "lower limit below"),
            ("shaft,30,1.5,-60,31.4,1.6,from memory,x", "that of a shaft smaller"),
        ] {
            let said = parse(&format!("{head}{row}\n")).unwrap_err().to_string();
            assert!(said.contains("line 2") && said.contains(wanted), "{said}");
        }
    }
}
