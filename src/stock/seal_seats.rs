//! What a radial shaft seal asks of its bore and its shaft, and how fast its lip may run.
//!
//! **Source**: DIN 3760 and ISO 6194-1, through the texts that `fits/seal_seats.csv` names, row by row.

use super::iso286::{Status, TableError, rows};
use crate::quantity::Length;
use serde::Deserialize;
use std::sync::LazyLock;
use uom::si::length::millimeter;

/// What the outside of a seal is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SealCase {
    /// Rubber over a sheet metal ring.
    Rubber,
    /// Bare sheet metal.
    Metal,
}

impl SealCase {
    /// Every case with the name that a job and the table use.
    pub const NAMES: [(&'static str, SealCase); 2] = [("rubber", Self::Rubber), ("metal", Self::Metal)];

    /// The name that a job and the table use.
    pub fn name(self) -> &'static str {
        match self {
            Self::Rubber => "rubber",
            Self::Metal => "metal",
        }
    }
}

/// A range that the table gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub enum Asked {
    /// Seal's outside above the nominal bore, mm; by the bore.
    #[serde(rename = "outside allowance")]
    OutsideAllowance,
    /// Angle of the lead-in of the bore to its axis, degrees.
    #[serde(rename = "bore chamfer angle")]
    BoreChamferAngle,
    /// Length of that lead-in, mm; by the seal's width.
    #[serde(rename = "bore chamfer length")]
    BoreChamferLength,
    /// Largest radius at the bottom of the bore, mm; by the seal's width.
    #[serde(rename = "bore corner radius")]
    BoreCornerRadius,
    /// Roughness Ra of the bore, µm; by the case.
    #[serde(rename = "bore roughness Ra")]
    BoreRa,
    /// Roughness Rz of the bore, µm; by the case.
    #[serde(rename = "bore roughness Rz")]
    BoreRz,
    /// Roughness Ra of the shaft under the lip, µm.
    #[serde(rename = "shaft roughness Ra")]
    ShaftRa,
    /// Roughness Rz of the shaft under the lip, µm.
    #[serde(rename = "shaft roughness Rz")]
    ShaftRz,
    /// Least hardness of the shaft under the lip, HRC.
    #[serde(rename = "shaft hardness")]
    ShaftHardness,
    /// The same from a lip speed of 4 m/s on, or in dirt.
    #[serde(rename = "shaft hardness, fast or dirty")]
    ShaftHardnessFast,
    /// Shaft less the diameter of the thin end of its lead-in, mm; by the shaft.
    #[serde(rename = "shaft lead-in")]
    ShaftLeadIn,
    /// Least straight length of the bore over the seal's width.
    #[serde(rename = "seat length over width")]
    SeatShare,
    /// Least depth of the bore above the seal's width, mm.
    #[serde(rename = "seat length above width")]
    SeatAbove,
    /// Limit deviations of the seal's width, mm; by the width.
    #[serde(rename = "width tolerance")]
    WidthTolerance,
    /// Speed of the shaft's surface under the lip, m/s, low and high end of what is given for the elastomer.
    #[serde(rename = "lip speed")]
    LipSpeed,
}

/// One row.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct SealRow {
    /// What it is of.
    pub quantity: Asked,
    /// Case of the seal or elastomer of the lip; blank for all.
    pub case: String,
    over_mm: Option<f64>,
    to_mm: Option<f64>,
    /// Low end, in the unit of the row.
    pub low: Option<f64>,
    /// High end.
    pub high: Option<f64>,
    /// Unit of the two.
    pub unit: String,
    /// Whether the figures were read in a published text.
    pub status: Status,
    /// Key of the text, explained at the head of the file.
    pub source: String,
}

/// From this speed of the shaft's surface on, m/s, the harder shaft is wanted; the text of the hardness rows gives it.
pub const FAST_M_S: f64 = 4.0;

impl SealRow {
    /// Whether the row is for a size.
    pub fn holds(&self, size: Length) -> bool {
        // A millionth of a millimetre: a size on the edge of a band belongs to the band below it, noise or not.
        let mm = (size.get::<millimeter>() * 1e6).round() / 1e6;
        self.over_mm.is_none_or(|over| mm > over) && self.to_mm.is_none_or(|to| mm <= to)
    }

    /// Both ends as lengths; none where one is blank.
    pub fn lengths(&self) -> Option<(Length, Length)> {
        let length = Length::new::<millimeter>;
        Some((length(self.low?), length(self.high?)))
    }
}

/// The CSV text that is built into the program.
pub const EMBEDDED: &str = include_str!("../../fits/seal_seats.csv");

/// The embedded rows, parsed once.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn table() -> Result<&'static [SealRow], TableError> {
    static TABLE: LazyLock<Result<Vec<SealRow>, TableError>> = LazyLock::new(|| parse(EMBEDDED));
    TABLE.as_deref().map_err(Clone::clone)
}

/// The first row of a quantity for a case and a size; none where the table has none.
///
/// **Arguments**: `case`, the name of the case or of the elastomer, or blank; `size`, what the quantity goes by.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
///
/// # Examples
/// ```
/// use seatwise::stock::seal_seats::{Asked, asked};
/// let bore = seatwise::quantity::length("62 mm")?.value;
/// let row = asked(Asked::OutsideAllowance, "rubber", bore)?;
/// assert_eq!(row.map(|row| (row.low, row.high)), Some((Some(0.20), Some(0.35))));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn asked(quantity: Asked, case: &str, size: Length) -> Result<Option<&'static SealRow>, TableError> {
    Ok(table()?.iter().find(|row| row.quantity == quantity && row.case == case && row.holds(size)))
}

fn parse(text: &str) -> Result<Vec<SealRow>, TableError> {
    rows("fits/seal_seats.csv", text, check)
}

fn check(row: &SealRow) -> Result<(), String> {
    if row.low.is_none() && row.high.is_none() {
        return Err("low and high are both blank".to_owned());
    }
    if [row.low, row.high, row.over_mm, row.to_mm].into_iter().flatten().any(|value| !value.is_finite()) {
        return Err("a figure is not finite".to_owned());
    }
    let in_order = |low: Option<f64>, high: Option<f64>| low.zip(high).is_none_or(|(low, high)| low < high);
    if !in_order(row.low, row.high) {
        return Err("low must be below high".to_owned());
    }
    if !in_order(row.over_mm, row.to_mm) {
        return Err("the band holds no size".to_owned());
    }
    if matches!(row.unit.as_str(), "mm" | "um" | "deg" | "HRC" | "share" | "m/s") {
        Ok(())
    } else {
        Err(format!("unit {} is not known", row.unit))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        let head = "quantity,case,over_mm,to_mm,low,high,unit,status,source\n";
        for (row, wanted) in [
            ("bore corner radius,,0,10,,,mm,from memory,x", "both blank"),
            ("lip speed,NBR,,,14,12,m/s,from memory,x", "below high"),
            ("shaft lead-in,,20,10,2,,mm,from memory,x", "holds no size"),
            ("lip speed,NBR,,,12,14,ft/min,from memory,x", "ft/min"),
        ] {
            let said = parse(&format!("{head}{row}\n")).unwrap_err().to_string();
            assert!(said.contains("line 2") && said.contains(wanted), "{said}");
        }
    }
}
