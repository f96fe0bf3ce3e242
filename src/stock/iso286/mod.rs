//! The tables of ISO 286-1: standard tolerances, fundamental deviations of shafts and holes, and Delta.
//!
//! Figures stand as printed; the rules that turn them into limits of size are in [`crate::fit`]. The published figures
//! differ from the rounded formulas of the standard in most cells, so nothing is calculated here.
//!
//! **Source**: ISO 286-1:2010 Tables 1 to 5, through the texts that each file in `fits/` names, row by row.

mod grade;
mod table;

pub use grade::{Grade, GradeError, Grades};
pub use table::{SizeRange, Status, TableError};
pub(in crate::stock) use table::{mm, rows, um};

use crate::quantity::Nanometres;
use serde::Deserialize;
use std::sync::LazyLock;
use table::mm_or_blank;

/// What is made: an internal feature or an external one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Feature {
    /// An internal feature: a housing bore, the bore of a ring. Its classes are written with capitals.
    Hole,
    /// An external feature: a shaft, the outside of a ring. Its classes are written with small letters.
    Shaft,
}

/// One cell of the table of standard tolerances.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct GradeRow {
    #[serde(rename = "over_mm", deserialize_with = "mm")]
    over: Nanometres,
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    to: Nanometres,
    /// The grade.
    pub grade: Grade,
    /// The tolerance, upper less lower limit of size.
    #[serde(rename = "um", deserialize_with = "um")]
    pub tolerance: Nanometres,
    #[serde(rename = "not_up_to_mm", deserialize_with = "mm_or_blank")]
    not_up_to: Option<Nanometres>,
    /// Whether the figure was read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

/// One cell of a table of fundamental deviations.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct DeviationRow {
    /// The letter or letters, capitals for a hole.
    pub letter: String,
    /// The grades that this figure serves.
    pub grades: Grades,
    #[serde(rename = "over_mm", deserialize_with = "mm")]
    over: Nanometres,
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    to: Nanometres,
    /// Which limit deviation the figure is.
    pub deviation: Bound,
    /// The fundamental deviation, before Delta is added.
    #[serde(rename = "um", deserialize_with = "um")]
    pub value: Nanometres,
    /// The grades in which Delta is added to the figure.
    #[serde(default)]
    pub delta_grades: Grades,
    #[serde(rename = "not_up_to_mm", deserialize_with = "mm_or_blank")]
    not_up_to: Option<Nanometres>,
    /// Whether the figure was read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
    /// A remark on the figure; mostly empty.
    pub note: String,
}

/// Which limit deviation a table gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub enum Bound {
    /// The lower limit deviation: EI of a hole, ei of a shaft.
    #[serde(alias = "EI", alias = "ei")]
    Lower,
    /// The upper limit deviation: ES of a hole, es of a shaft.
    #[serde(alias = "ES", alias = "es")]
    Upper,
}

/// One cell of the Delta columns of the table of holes.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct DeltaRow {
    /// The grade.
    pub grade: Grade,
    #[serde(rename = "over_mm", deserialize_with = "mm")]
    over: Nanometres,
    #[serde(rename = "to_mm", deserialize_with = "mm")]
    to: Nanometres,
    /// Delta, never negative.
    #[serde(rename = "um", deserialize_with = "um")]
    pub value: Nanometres,
    /// Whether the figure was read in a published text.
    pub status: Status,
    /// Keys of the texts, explained at the head of the file.
    pub source: String,
}

impl GradeRow {
    /// The band of sizes, without those at its lower end that are excepted.
    pub fn range(&self) -> SizeRange {
        range(self.over, self.to, self.not_up_to)
    }
}

impl DeviationRow {
    /// The band of sizes, without those at its lower end that are excepted.
    pub fn range(&self) -> SizeRange {
        range(self.over, self.to, self.not_up_to)
    }
}

impl DeltaRow {
    /// The band of sizes.
    pub fn range(&self) -> SizeRange {
        range(self.over, self.to, None)
    }
}

fn range(over: Nanometres, to: Nanometres, not_up_to: Option<Nanometres>) -> SizeRange {
    SizeRange { over: not_up_to.map_or(over, |limit| limit.max(over)), to }
}

/// The texts of the four tables, as CSV.
#[derive(Clone, Copy, Debug)]
pub struct Texts<'a> {
    /// Standard tolerances.
    pub grades: &'a str,
    /// Fundamental deviations of shafts.
    pub shafts: &'a str,
    /// Fundamental deviations of holes.
    pub holes: &'a str,
    /// Delta of holes.
    pub delta: &'a str,
}

/// The texts that are built into the program.
pub const EMBEDDED: Texts<'static> = Texts {
    grades: include_str!("../../../fits/iso286_grades.csv"),
    shafts: include_str!("../../../fits/iso286_shafts.csv"),
    holes: include_str!("../../../fits/iso286_holes.csv"),
    delta: include_str!("../../../fits/iso286_delta.csv"),
};

/// The tables, parsed.
#[derive(Clone, Debug)]
pub struct Tables {
    grades: Vec<GradeRow>,
    shafts: Vec<DeviationRow>,
    holes: Vec<DeviationRow>,
    delta: Vec<DeltaRow>,
}

/// The embedded tables, parsed once.
///
/// # Errors
/// [`TableError`] when an embedded file is malformed.
pub fn tables() -> Result<&'static Tables, TableError> {
    static TABLES: LazyLock<Result<Tables, TableError>> = LazyLock::new(|| Tables::parse(EMBEDDED));
    TABLES.as_ref().map_err(Clone::clone)
}

impl Tables {
    /// Parses and checks the four tables.
    ///
    /// # Errors
    /// [`TableError`] with file and line of the first bad row.
    pub fn parse(texts: Texts<'_>) -> Result<Self, TableError> {
        Ok(Self {
            grades: rows("fits/iso286_grades.csv", texts.grades, check_grade)?,
            shafts: rows("fits/iso286_shafts.csv", texts.shafts, |row: &DeviationRow| row.range().check())?,
            holes: rows("fits/iso286_holes.csv", texts.holes, |row: &DeviationRow| row.range().check())?,
            delta: rows("fits/iso286_delta.csv", texts.delta, check_delta)?,
        })
    }

    /// The standard tolerance of `grade` at `size`, where the standard gives one.
    pub fn tolerance(&self, size: Nanometres, grade: Grade) -> Option<&GradeRow> {
        self.grades.iter().find(|row| row.grade == grade && row.range().contains(size))
    }

    /// The fundamental deviation of `letter` in `grade` at `size`, where the standard gives one.
    pub fn deviation(&self, feature: Feature, letter: &str, size: Nanometres, grade: Grade) -> Option<&DeviationRow> {
        // The size first: it leaves the fewest rows to look at more closely.
        let serves =
            |row: &&DeviationRow| row.range().contains(size) && row.grades.contains(grade) && row.letter == letter;
        self.deviation_rows(feature).iter().find(serves)
    }

    /// Delta of `grade` at `size`, where the standard gives one.
    pub fn delta(&self, size: Nanometres, grade: Grade) -> Option<&DeltaRow> {
        self.delta.iter().find(|row| row.grade == grade && row.range().contains(size))
    }

    /// All cells of the table of standard tolerances.
    pub fn grade_rows(&self) -> &[GradeRow] {
        &self.grades
    }

    /// All cells of the Delta columns.
    pub fn delta_rows(&self) -> &[DeltaRow] {
        &self.delta
    }

    /// All cells of the table of shafts or of holes.
    pub fn deviation_rows(&self, feature: Feature) -> &[DeviationRow] {
        match feature {
            Feature::Hole => &self.holes,
            Feature::Shaft => &self.shafts,
        }
    }

    /// The cells of one letter.
    pub fn deviations<'a>(&'a self, feature: Feature, letter: &'a str) -> impl Iterator<Item = &'a DeviationRow> {
        self.deviation_rows(feature).iter().filter(move |row| row.letter == letter)
    }
}

fn check_grade(row: &GradeRow) -> Result<(), String> {
    row.range().check()?;
    if row.tolerance > Nanometres(0) { Ok(()) } else { Err(format!("IT{} must be above zero", row.grade)) }
}

fn check_delta(row: &DeltaRow) -> Result<(), String> {
    row.range().check()?;
    if row.value >= Nanometres(0) { Ok(()) } else { Err(format!("Delta of IT{} must not be negative", row.grade)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GRADES: &str = "# head\nover_mm,to_mm,grade,um,not_up_to_mm,status,source\n";

    fn fault(rows: &str) -> String {
        let grades = format!("{GRADES}{rows}\n");
        let error = Tables::parse(Texts { grades: &grades, ..EMBEDDED }).unwrap_err();
        let cause = std::error::Error::source(&error).map(ToString::to_string).unwrap_or_default();
        format!("{error}: {cause}")
    }

    #[test]
    fn a_malformed_table_is_an_error_with_file_and_line() {
        for (row, wanted) in [
            ("0,3,7,ten,,published text,x", "line: 3"),
            ("0,3,19,10,,published text,x", "not a tolerance grade"),
            ("0,3,7,10,,hearsay,x", "hearsay"),
            ("0,3,7", "line: 3"),
            ("3,3,7,10,,published text,x", "line 3: the band"),
            ("0,3,7,-10,,published text,x", "line 3: IT7 must be above zero"),
            ("0,3,7,nan,,published text,x", "finite"),
            ("", "no rows"),
        ] {
            let said = fault(row);
            assert!(said.contains(wanted) && said.contains("iso286_grades.csv"), "{row}: {said}");
        }
    }

    #[test]
    fn the_embedded_tables_are_whole() {
        let tables = tables().unwrap();
        assert_eq!(tables.grade_rows().len(), 404);
        assert_eq!(tables.delta_rows().len(), 78);
    }
}
