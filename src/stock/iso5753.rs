//! ISO 5753-1: radial internal clearance of rolling bearings before they are fitted.
//!
//! The clearance is the whole play across the diameter, without load, all parts equally warm. Deep groove ball bearings
//! and cylindrical roller bearings, both with a cylindrical bore.
//!
//! **Source**: ISO 5753-1:2009, through the texts that the files in `fits/` name, row by row; many rows of deep groove
//! ball bearings are from memory.

use super::dimensions::ClearanceGroup;
use super::iso286::{SizeRange, Status, TableError, mm, rows, um};
use crate::quantity::Nanometres;
use serde::Deserialize;
use std::sync::LazyLock;

/// A family of bearings with a table of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BearingFamily {
    /// Deep groove ball bearings.
    DeepGrooveBall,
    /// Cylindrical roller bearings.
    CylindricalRoller,
}

impl BearingFamily {
    /// Both families.
    pub const ALL: [Self; 2] = [Self::DeepGrooveBall, Self::CylindricalRoller];
}

/// Limits of the radial internal clearance of one group in one band of the bore.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct ClearanceRow {
    /// The group.
    pub group: ClearanceGroup,
    #[serde(rename = "over_mm", deserialize_with = "mm")]
    over: Nanometres,
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    to: Nanometres,
    /// Smallest clearance.
    #[serde(rename = "min_um", deserialize_with = "um")]
    pub least: Nanometres,
    /// Largest clearance.
    #[serde(rename = "max_um", deserialize_with = "um")]
    pub most: Nanometres,
    /// Whether the figures were read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

impl ClearanceRow {
    /// The band of the bore.
    pub fn range(&self) -> SizeRange {
        SizeRange { over: self.over, to: self.to }
    }
}

/// The CSV text of deep groove ball bearings that is built into the program.
pub const EMBEDDED_BALL: &str = include_str!("../../fits/iso5753_ball.csv");
/// The CSV text of cylindrical roller bearings that is built into the program.
pub const EMBEDDED_ROLLER: &str = include_str!("../../fits/iso5753_roller.csv");

/// The tables, parsed.
#[derive(Clone, Debug)]
pub struct Tables {
    ball: Vec<ClearanceRow>,
    roller: Vec<ClearanceRow>,
}

/// The embedded tables, parsed once.
///
/// # Errors
/// [`TableError`] when an embedded file is malformed.
pub fn tables() -> Result<&'static Tables, TableError> {
    static TABLES: LazyLock<Result<Tables, TableError>> =
        LazyLock::new(|| Tables::parse(EMBEDDED_BALL, EMBEDDED_ROLLER));
    TABLES.as_ref().map_err(Clone::clone)
}

impl Tables {
    /// Parses and checks both tables.
    ///
    /// # Errors
    /// [`TableError`] with file and line of the first bad row.
    pub fn parse(ball: &str, roller: &str) -> Result<Self, TableError> {
        Ok(Self {
            ball: rows("fits/iso5753_ball.csv", ball, check)?,
            roller: rows("fits/iso5753_roller.csv", roller, check)?,
        })
    }

    /// The limits of a group for a bearing with this bore, where the table gives them.
    ///
    /// ```
    /// use seatwise::quantity::Nanometres;
    /// use seatwise::stock::dimensions::ClearanceGroup;
    /// use seatwise::stock::iso5753::{BearingFamily, tables};
    /// let row = tables()?.clearance(BearingFamily::DeepGrooveBall, ClearanceGroup::C3, Nanometres::from_mm(30.0));
    /// assert_eq!(row.map(|row| (row.least.um(), row.most.um())), Some((13.0, 28.0)));
    /// # Ok::<(), seatwise::stock::iso286::TableError>(())
    /// ```
    pub fn clearance(&self, family: BearingFamily, group: ClearanceGroup, bore: Nanometres) -> Option<&ClearanceRow> {
        self.rows(family).find(|row| row.group == group && row.range().contains(bore))
    }

    /// The tightest group, from `from` on, of which `will_do` holds.
    ///
    /// None when it holds of no group of the table, or when the bore is not in it.
    pub fn tightest(
        &self,
        family: BearingFamily,
        from: ClearanceGroup,
        bore: Nanometres,
        will_do: impl Fn(&ClearanceRow) -> bool,
    ) -> Option<&ClearanceRow> {
        let groups = ClearanceGroup::ALL.into_iter().filter(|group| *group >= from);
        groups.filter_map(|group| self.clearance(family, group, bore)).find(|row| will_do(row))
    }

    /// The rows of one family, band by band.
    pub fn rows(&self, family: BearingFamily) -> impl Iterator<Item = &ClearanceRow> {
        match family {
            BearingFamily::DeepGrooveBall => self.ball.iter(),
            BearingFamily::CylindricalRoller => self.roller.iter(),
        }
    }
}

fn check(row: &ClearanceRow) -> Result<(), String> {
    row.range().check()?;
    if Nanometres(0) <= row.least && row.least < row.most {
        Ok(())
    } else {
        Err("min_um must be zero or more and below max_um".to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        let head = "group,over_mm,to_mm,min_um,max_um,status,source\n";
        for (row, wanted) in
            [("C3,24,30,28,13,from memory,x", "below max_um"), ("C3,30,24,13,28,from memory,x", "band")]
        {
            let said = Tables::parse(&format!("{head}{row}\n"), EMBEDDED_ROLLER).unwrap_err().to_string();
            assert!(said.contains("line 2") && said.contains(wanted), "{said}");
        }
    }

    #[test]
    fn the_embedded_tables_are_whole() {
        let tables = tables().unwrap();
        assert_eq!((tables.ball.len(), tables.roller.len()), (111, 130));
    }
}
