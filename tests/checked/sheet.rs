//! Collects the checks of a set, row by row.

use super::Check;
use super::reference_rows::{Row, number};

pub struct Sheet {
    checks: Vec<Check>,
    row: String,
    source: String,
    status: String,
}

impl Sheet {
    /// Source and status are those at the head of the file, until a row gives its own.
    pub fn of(file: &str) -> Self {
        let name = format!("tests/reference/{file}");
        let text = super::file(&name);
        let head = |key: &str| {
            let said = text.lines().take_while(|line| line.starts_with('#')).find_map(|line| line.strip_prefix(key))?;
            Some(said.trim().trim_end_matches(';').to_owned())
        };
        let source = head("# source:").map_or(format!("`{name}`"), |said| format!("`{name}`: {said}"));
        Self { checks: Vec::new(), row: String::new(), source, status: "computed apart".to_owned() }
    }

    pub fn row(&mut self, name: impl Into<String>) {
        self.row = name.into();
    }

    pub fn source(&mut self, source: &str, status: &str) {
        self.source = source.trim_end_matches(';').to_owned();
        self.status = status.to_owned();
    }

    /// The source at the head of another file.
    pub fn source_of(&mut self, other: &Self) {
        self.source.clone_from(&other.source);
        self.status.clone_from(&other.status);
    }

    /// Computed value between `expected - below` and `expected + above`.
    pub fn between(&mut self, what: (&str, &'static str), values: [f64; 2], allowed: [f64; 2]) {
        let ([expected, computed], (what, unit)) = (values, what);
        let (row, source, status) = (self.row.clone(), self.source.clone(), self.status.clone());
        self.checks.push(Check { row, source, status, what: what.to_owned(), unit, expected, computed, allowed });
    }

    pub fn within(&mut self, what: (&str, &'static str), [expected, computed]: [f64; 2], allowed: f64) {
        self.between(what, [expected, computed], [allowed; 2]);
    }

    /// A column of the row, whose name ends in its unit, to a share of its value and an absolute floor.
    pub fn column(&mut self, row: &Row, column: &str, computed: f64, [share, floor]: [f64; 2]) {
        let expected = number(row, column);
        self.within(named(column), [expected, computed], share * expected.abs() + floor);
    }

    pub fn done(self) -> Vec<Check> {
        self.checks
    }
}

/// Name and unit of a column such as `p_mean_MPa`.
fn named(column: &str) -> (&str, &'static str) {
    let units = [
        ("_MPa", "MPa"),
        ("_mm2", "mm²"),
        ("_mm", "mm"),
        ("_um", "µm"),
        ("_N", "N"),
        ("_kn", "kN"),
        ("_Nm", "N·m"),
        ("_nm", "N·m"),
        ("_C", "°C"),
        ("_s", "s"),
    ];
    units.into_iter().find_map(|(end, unit)| Some((column.strip_suffix(end)?, unit))).unwrap_or((column, ""))
}
