//! Boundary dimensions of single-row deep groove ball bearings, their designations, and estimates of their mass
//! and sections.
//!
//! Owns the ISO 15 dimension plan of the series 618, 619, 60, 62, 63 and 64. Every row is from memory, so a plan that
//! uses one must say so, and the fitter must hold the size against the part.

mod designation;
mod mass;
mod section;
mod suffix;

pub use designation::{Designation, DesignationError};
pub use mass::{BEARING_STEEL_DENSITY_KG_M3, MassError, SINGLE_ROW_FILL, SINGLE_ROW_FILL_SPREAD, estimated_mass};
pub use section::{BALL_SHARE, RING_SHARE, ROLLER_SHARE, RacewayError, Raceways, RollingElement};
pub use suffix::{ClearanceGroup, Suffix};

use super::iso286::{Status, TableError, mm, rows};
use crate::quantity::Nanometres;
use serde::Deserialize;
use std::sync::LazyLock;

/// Nominal sizes of one bearing.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct DimensionRow {
    /// The bearing series, such as `62`.
    pub series: String,
    /// The bore code, such as `06`; one digit is the bore in millimetres.
    pub bore_code: String,
    /// Nominal bore.
    #[serde(rename = "bore_mm", deserialize_with = "mm")]
    pub bore: Nanometres,
    /// Nominal outside diameter.
    #[serde(rename = "outside_mm", deserialize_with = "mm")]
    pub outside: Nanometres,
    /// Nominal width of both rings.
    #[serde(rename = "width_mm", deserialize_with = "mm")]
    pub width: Nanometres,
    /// Whether the sizes were read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

impl DimensionRow {
    /// Whether this is its basic designation.
    pub(crate) fn is_designated(&self, basic: &str) -> bool {
        let rest = basic.strip_prefix(self.series.as_str());
        let rest = if self.has_stroke() { rest.and_then(|rest| rest.strip_prefix('/')) } else { rest };
        rest == Some(self.bore_code.as_str())
    }

    fn has_stroke(&self) -> bool {
        self.series.len() == 3 && self.bore_code.len() == 1
    }

    /// The basic designation: series and bore code, with a stroke where the bore is written out after 618 or 619.
    pub fn designation(&self) -> String {
        let stroke = if self.has_stroke() { "/" } else { "" };
        format!("{}{stroke}{}", self.series, self.bore_code)
    }
}

/// The CSV text that is built into the program.
pub const EMBEDDED: &str = include_str!("../../../fits/iso15_single_row.csv");

/// The embedded table, parsed once, in the order of the file: series by series, each with rising bores.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn table() -> Result<&'static [DimensionRow], TableError> {
    static TABLE: LazyLock<Result<Vec<DimensionRow>, TableError>> = LazyLock::new(|| parse(EMBEDDED));
    TABLE.as_deref().map_err(Clone::clone)
}

/// Parses and checks a table of dimensions.
///
/// # Errors
/// [`TableError`] with the line of the first bad row.
pub fn parse(text: &str) -> Result<Vec<DimensionRow>, TableError> {
    rows("fits/iso15_single_row.csv", text, check)
}

fn check(row: &DimensionRow) -> Result<(), String> {
    if !(Nanometres(0) < row.bore && row.bore < row.outside && row.width > Nanometres(0)) {
        return Err("bore and width must be above zero and the outside above the bore".to_owned());
    }
    match bore_of_code(&row.bore_code) {
        Some(bore) if bore == row.bore => Ok(()),
        _ => Err(format!("bore code {} does not stand for a bore of {} mm", row.bore_code, row.bore.mm())),
    }
}

/// The bore that a bore code stands for: 00, 01, 02, 03 are 10, 12, 15, 17 mm; from 04 on five times the code.
fn bore_of_code(code: &str) -> Option<Nanometres> {
    let number: u8 = code.parse().ok()?;
    let mm = match (code.len(), number) {
        (1, 1..=9) => number,
        (2, 0) => 10,
        (2, 1) => 12,
        (2, 2) => 15,
        (2, 3) => 17,
        (2, 4..=48) => number * 5,
        _ => return None,
    };
    Some(Nanometres::from_mm(f64::from(mm)))
}

#[cfg(test)]
mod tests {
    use super::*;

    const HEAD: &str = "series,bore_code,bore_mm,outside_mm,width_mm,status,source\n";

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        for (row, wanted) in [
            ("62,06,35,62,16,from memory,x", "bore code 06 does not stand for a bore of 35 mm"),
            ("62,06,30,30,16,from memory,x", "the outside above the bore"),
            ("62,1,30,62,16,from memory,x", "bore code 1"),
        ] {
            let said = parse(&format!("{HEAD}{row}\n")).unwrap_err().to_string();
            assert!(said.contains("line 2") && said.contains(wanted), "{said}");
        }
    }

    #[test]
    fn the_embedded_table_is_whole() {
        assert_eq!(table().unwrap().len(), 185);
    }
}
