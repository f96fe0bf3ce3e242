use super::{DimensionRow, Suffix, bore_of_code, table};
use crate::quantity::Nanometres;
use crate::stock::iso286::{Status, TableError};
use thiserror::Error;

/// A bearing designation, read: its nominal sizes and what its suffixes say.
#[derive(Clone, Debug, PartialEq)]
pub struct Designation {
    /// The basic designation, without suffixes.
    pub basic: String,
    /// The series: 618, 619, 60, 62, 63 or 64.
    pub series: String,
    /// Nominal bore.
    pub bore: Nanometres,
    /// Nominal outside diameter.
    pub outside: Nanometres,
    /// Nominal width.
    pub width: Nanometres,
    /// The suffixes that open standards settle, in the order given.
    pub suffixes: Vec<Suffix>,
    /// Suffixes that are not known here, as given. They are named, never guessed: ask the maker what they mean.
    pub unknown: Vec<String>,
    /// Whether the sizes were read in a published text.
    pub status: Status,
}

/// Why a designation cannot be read.
#[derive(Clone, Debug, Error)]
pub enum DesignationError {
    /// No row of the table bears this designation.
    #[error(
        "no sizes are known for the bearing `{given}`\n  help: {}the series known are {series}; or give bore, outside \
         and width instead",
        did_you_mean(nearest)
    )]
    Unknown {
        /// What was given.
        given: String,
        /// Known designations nearest to it, nearest first.
        nearest: Vec<String>,
        /// The series of the table and their bores.
        series: String,
    },
    /// The embedded table is malformed.
    #[error(transparent)]
    Table(#[from] TableError),
}

fn did_you_mean(nearest: &[String]) -> String {
    if nearest.is_empty() { String::new() } else { format!("the nearest known are {}; ", nearest.join(", ")) }
}

impl Designation {
    /// Reads a designation such as `6206`, `6206-2RS`, `6206 C3`, `6206-2Z/C3`, `61805` or `618/5`.
    ///
    /// Series, then bore code (00 = 10 mm, 01 = 12, 02 = 15, 03 = 17, from 04 on five times the code; one digit is the
    /// bore), then suffixes after a stroke, dash, point, space or nothing. Capitals or not.
    ///
    /// # Errors
    /// [`DesignationError::Unknown`] when the series or the size is not in the table, with the nearest that are.
    ///
    /// **Source**: designation system of DIN 623-1, sizes of ISO 15, both from memory.
    ///
    /// # Examples
    /// ```
    /// use seatwise::stock::dimensions::Designation;
    /// let bearing = Designation::parse("6206-2RS C3")?;
    /// assert_eq!((bearing.bore.mm(), bearing.outside.mm(), bearing.width.mm()), (30.0, 62.0, 16.0));
    /// assert_eq!(bearing.suffixes.len(), 2);
    /// # Ok::<(), seatwise::stock::dimensions::DesignationError>(())
    /// ```
    pub fn parse(given: &str) -> Result<Self, DesignationError> {
        let text = given.trim().to_ascii_uppercase();
        let rows = table()?;
        let (basic, rest) = split(&text);
        let Some(row) = rows.iter().find(|row| row.is_designated(basic)) else {
            return Err(unknown(given, basic, rows));
        };
        let (suffixes, unknown) = read_suffixes(rest);
        Ok(Self {
            basic: row.designation(),
            series: row.series.clone(),
            bore: row.bore,
            outside: row.outside,
            width: row.width,
            suffixes,
            unknown,
            status: row.status,
        })
    }
}

/// Parts the leading digits, with the stroke of `618/5`, from what follows.
fn split(text: &str) -> (&str, &str) {
    let digits = |from: usize| text[from..].find(|c: char| !c.is_ascii_digit()).map_or(text.len(), |at| from + at);
    let mut end = digits(0);
    if matches!(&text[..end], "618" | "619") && text[end..].starts_with('/') {
        end = digits(end + 1);
    }
    // A digit right before letters belongs to them in `62062RS`: a basic designation has at most five digits.
    let basic = &text[..end];
    let longest = if basic.starts_with("61") { 5 } else { 4 };
    let end = if basic.contains('/') { end } else { end.min(longest) };
    text.split_at(end)
}

fn read_suffixes(rest: &str) -> (Vec<Suffix>, Vec<String>) {
    let (mut known, mut unknown) = (Vec::new(), Vec::new());
    for word in rest.split(|c: char| c.is_whitespace() || "-/.,".contains(c)).filter(|word| !word.is_empty()) {
        match Suffix::read(word) {
            Some(mut suffixes) => known.append(&mut suffixes),
            None => unknown.push(word.to_owned()),
        }
    }
    (known, unknown)
}

fn unknown(given: &str, basic: &str, rows: &[DimensionRow]) -> DesignationError {
    let mut in_series: Vec<&DimensionRow> = rows.iter().filter(|row| basic.starts_with(&row.series)).collect();
    let bore = in_series.first().and_then(|row| bore_of_code(basic[row.series.len()..].trim_start_matches('/')));
    let nearest = match bore {
        Some(bore) => {
            in_series.sort_by_key(|row| (row.bore - bore).0.abs());
            in_series
        }
        None => by_spelling(basic, rows),
    };
    DesignationError::Unknown {
        given: given.to_owned(),
        nearest: nearest.iter().take(3).map(|row| row.designation()).collect(),
        series: covered(rows),
    }
}

/// Rows whose designation is at most two slips of the pen away, nearest first.
fn by_spelling<'a>(basic: &str, rows: &'a [DimensionRow]) -> Vec<&'a DimensionRow> {
    let slips = |row: &DimensionRow| strsim::osa_distance(basic, &row.designation());
    let mut near: Vec<&DimensionRow> = rows.iter().filter(|row| !basic.is_empty() && slips(row) <= 2).collect();
    near.sort_by_key(|row| slips(row));
    near
}

/// The series of the table with the bores that each covers.
fn covered(rows: &[DimensionRow]) -> String {
    let series: Vec<String> = rows
        .chunk_by(|a, b| a.series == b.series)
        .map(|rows| {
            let (first, last) = (rows[0].bore.mm(), rows[rows.len() - 1].bore.mm());
            format!("{} (bore {first} to {last} mm)", rows[0].series)
        })
        .collect();
    series.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stock::dimensions::ClearanceGroup;
    use crate::stock::iso492::RingClass;

    fn sizes(text: &str) -> (f64, f64, f64) {
        let bearing = Designation::parse(text).unwrap();
        (bearing.bore.mm(), bearing.outside.mm(), bearing.width.mm())
    }

    #[test]
    fn series_and_bore_code_give_the_sizes() {
        for (text, wanted) in [
            ("6206", (30.0, 62.0, 16.0)),
            ("6300", (10.0, 35.0, 11.0)),
            ("6003", (17.0, 35.0, 10.0)),
            ("6408", (40.0, 110.0, 27.0)),
            ("61805", (25.0, 37.0, 7.0)),
            ("61900", (10.0, 22.0, 6.0)),
            ("608", (8.0, 22.0, 7.0)),
            ("618/4", (4.0, 9.0, 2.5)),
            ("619/9", (9.0, 20.0, 6.0)),
        ] {
            assert_eq!(sizes(text), wanted, "{text}");
        }
    }

    #[test]
    fn suffixes_are_read_however_they_are_joined() {
        let wanted = vec![Suffix::Shields { sides: 2 }, Suffix::InternalClearance(ClearanceGroup::C3)];
        for text in ["6206-2Z/C3", "6206 ZZ C3", "6206-2ZC3", " 6206zz-c3 ", "62062Z.C3"] {
            let bearing = Designation::parse(text).unwrap();
            assert_eq!((bearing.suffixes, bearing.unknown), (wanted.clone(), vec![]), "{text}");
        }
        let fine = Designation::parse("618/8-RS P6").unwrap();
        assert_eq!(fine.suffixes, [Suffix::Seals { sides: 1 }, Suffix::RingClass(RingClass::P6)]);
    }

    #[test]
    fn a_suffix_that_no_open_standard_settles_is_named_and_not_guessed() {
        let bearing = Designation::parse("6206-2RS1/C3 XQ7").unwrap();
        assert_eq!(bearing.unknown, ["2RS1", "XQ7"]);
        assert_eq!(bearing.suffixes, [Suffix::InternalClearance(ClearanceGroup::C3)]);
    }

    #[test]
    fn an_unknown_designation_is_refused_with_its_neighbours_and_the_series_covered() {
        for (text, wanted) in [("6223", "6222, 6224, 6221"), ("618/3", "618/4"), ("5206", "6206"), ("2606", "6206")] {
            let said = Designation::parse(text).unwrap_err().to_string();
            assert!(said.contains(wanted) && said.contains("618 (bore 4 to 150 mm)"), "{text}: {said}");
        }
        for text in ["", "NU206", "62", "62O6", "bearing", "6é06"] {
            let said = Designation::parse(text).unwrap_err().to_string();
            assert!(said.contains("give bore, outside and width"), "{text}: {said}");
        }
    }
}
