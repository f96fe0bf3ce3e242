use super::Thread;
use crate::quantity::Length;
use crate::stock::iso286::{Status, TableError, rows};
use serde::Deserialize;
use std::sync::LazyLock;
use uom::si::length::{inch, micrometer, millimeter};

/// The CSV text of the nut faces that is built into the program.
pub const EMBEDDED_NUT_FACES: &str = include_str!("../../../fits/nut_faces.csv");

/// Nominal sizes that count as the same, µm.
const SAME_SIZE_UM: f64 = 1.0;

/// A hexagon nut or bolt head on a plate with the usual clearance hole.
#[derive(Clone, Debug, PartialEq)]
pub struct HexagonNut {
    /// Nominal diameter of its thread.
    pub nominal: Length,
    /// Width across flats.
    pub across_flats: Length,
    /// Diameter of the clearance hole under it.
    pub hole: Length,
    /// Whether the sizes were read in a published text.
    pub status: Status,
    /// Key of the text, explained at the head of the file.
    pub source: String,
}

#[derive(Deserialize)]
struct RawRow {
    unit: String,
    nominal: f64,
    across_flats: f64,
    hole: f64,
    status: Status,
    source: String,
}

/// The embedded sizes of hexagon nuts, parsed once: metric, then inch, each with rising size.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn hexagon_nuts() -> Result<&'static [HexagonNut], TableError> {
    static NUTS: LazyLock<Result<Vec<HexagonNut>, TableError>> = LazyLock::new(|| parse(EMBEDDED_NUT_FACES));
    NUTS.as_deref().map_err(Clone::clone)
}

/// The usual hexagon nut of a thread; none when the table has no nut of its size (unified sizes below 1/4 in, odd
/// sixteenths, above 1-1/2 in).
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
///
/// **Source**: ISO 272, ISO 273, ASME B18.2.2, ASME B18.2.8, from memory.
pub fn hexagon_nut(thread: &Thread) -> Result<Option<&'static HexagonNut>, TableError> {
    let same = |nut: &&HexagonNut| (nut.nominal - thread.nominal).abs().get::<micrometer>() < SAME_SIZE_UM;
    Ok(hexagon_nuts()?.iter().find(same))
}

fn parse(text: &str) -> Result<Vec<HexagonNut>, TableError> {
    let rows: Vec<RawRow> = rows("fits/nut_faces.csv", text, check)?;
    let nut = |row: RawRow| {
        let length = |size: f64| match row.unit.as_str() {
            "in" => Length::new::<inch>(size),
            _ => Length::new::<millimeter>(size),
        };
        HexagonNut {
            nominal: length(row.nominal),
            across_flats: length(row.across_flats),
            hole: length(row.hole),
            status: row.status,
            source: row.source.clone(),
        }
    };
    Ok(rows.into_iter().map(nut).collect())
}

fn check(row: &RawRow) -> Result<(), String> {
    if !matches!(row.unit.as_str(), "mm" | "in") {
        return Err(format!("unit {} is neither mm nor in", row.unit));
    }
    if row.nominal > 0.0 && row.nominal < row.hole && row.hole < row.across_flats && row.across_flats.is_finite() {
        Ok(())
    } else {
        Err("the hole must be wider than the thread and narrower than the nut".to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        let head = "unit,nominal,across_flats,hole,status,source\n";
        for (row, wanted) in
            [("mm,10,16,9.5,from memory,x", "wider than the thread"), ("cm,1,2,1.1,from memory,x", "cm")]
        {
            let said = parse(&format!("{head}{row}\n")).unwrap_err().to_string();
            assert!(said.contains("line 2") && said.contains(wanted), "{said}");
        }
    }
}
