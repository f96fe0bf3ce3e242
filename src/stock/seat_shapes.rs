//! How much stiffer than two rings of equal width a blind bore or a longer housing is, from finite elements.
//!
//! The rows are of one ring in housings of several shapes; what they mean for another seat is worked out in
//! [`crate::mechanics::seat_factor`].

use super::iso286::{TableError, rows};
use serde::Deserialize;
use std::sync::LazyLock;

/// One seat that was computed, in sizes over the bore of the housing or the width of the ring.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct SeatRow {
    /// Name of the row.
    pub row: String,
    /// Outside diameter of the housing over its bore.
    pub outside_over_bore: f64,
    /// Thickness of the wall behind the ring over the width of the ring; zero for a through bore.
    pub wall_over_width: f64,
    /// Hole in that wall over the bore; one for a through bore.
    pub hole_over_bore: f64,
    /// Length of the housing in front of the ring over its width; zero when flush.
    pub front_over_width: f64,
    /// True mean pressure, force and mean closing over those of two rings of equal width.
    pub factor: f64,
    /// Closing of the ring's bore at the back face over the mean, where known.
    pub at_shoulder: Option<f64>,
    /// Closing of the ring's bore at the front face over the mean, where known.
    pub at_front: Option<f64>,
    /// How the row came about.
    pub status: String,
    /// Key of the source, explained at the head of the file.
    pub source: String,
}

/// The CSV text that is built into the program.
pub const EMBEDDED: &str = include_str!("../../fits/seat_shapes.csv");

/// The embedded rows, parsed once.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn table() -> Result<&'static [SeatRow], TableError> {
    static TABLE: LazyLock<Result<Vec<SeatRow>, TableError>> = LazyLock::new(|| parse(EMBEDDED));
    TABLE.as_deref().map_err(Clone::clone)
}

/// Parses and checks a table of seats.
///
/// # Errors
/// [`TableError`] with the line of the first bad row.
pub fn parse(text: &str) -> Result<Vec<SeatRow>, TableError> {
    rows("fits/seat_shapes.csv", text, check)
}

fn check(row: &SeatRow) -> Result<(), String> {
    let in_range = |what: &str, value: f64, from: f64, to: f64| {
        let holds = value >= from && value <= to;
        if holds { Ok(()) } else { Err(format!("{what} is {value}, which is not from {from} to {to}")) }
    };
    in_range("outside_over_bore", row.outside_over_bore, 1.01, 100.0)?;
    in_range("wall_over_width", row.wall_over_width, 0.0, 100.0)?;
    in_range("hole_over_bore", row.hole_over_bore, 0.0, 1.0)?;
    in_range("front_over_width", row.front_over_width, 0.0, 100.0)?;
    in_range("factor", row.factor, 1.0, 3.0)?;
    for closing in [row.at_shoulder, row.at_front].into_iter().flatten() {
        in_range("a closing over the mean", closing, 0.0, 3.0)?;
    }
    let through = (row.wall_over_width <= 0.0, row.hole_over_bore >= 1.0);
    if through.0 == through.1 { Ok(()) } else { Err("a through bore has a wall of 0 and a hole of 1".to_owned()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HEAD: &str = "row,outside_over_bore,wall_over_width,hole_over_bore,front_over_width,factor,at_shoulder,at_front,\
                        status,source\n";

    #[test]
    fn the_embedded_table_is_whole() {
        assert_eq!(table().unwrap().len(), 18);
    }

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        for (row, wanted) in [
            ("X,1.3,0.3,1,0,1.2,,,computed,k", "wall of 0 and a hole of 1"),
            ("X,0.9,0.3,0.6,0,1.2,,,computed,k", "outside_over_bore is 0.9"),
            ("X,1.3,0.3,0.6,0,0.8,,,computed,k", "factor is 0.8"),
            ("X,1.3,0.3,0.6,0,NaN,,,computed,k", "factor is NaN"),
            ("X,1.3,0.3,0.6,0,1.2,9,,computed,k", "closing over the mean is 9"),
        ] {
            let said = parse(&format!("{HEAD}{row}\n")).unwrap_err().to_string();
            assert!(said.contains("line 2") && said.contains(wanted), "{said}");
        }
    }
}
