//! From the rows of a file to checked curves.

use std::ops::Range;

use toml::Spanned;

use super::REFERENCE_K;
use super::check::{Checked, Checker, TEMPERATURE_K, ZERO_C_IN_K};
use super::raw::RawTable;
use crate::stock::curve::{Curve, CurveError};

/// Widest change of length, µm/m: polymers from deep cold to their melting, with some room.
const EXPANSION_UM_M: (f64, f64) = (-30_000.0, 60_000.0);
/// Mean coefficient between neighbouring rows, 1/K: more than this is a slip of units.
const STEEPEST_EXPANSION: f64 = 4e-4;

/// One value over a range, or a table; a section of the file must have exactly one of them.
pub(super) struct Choice<'a> {
    pub section: &'static str,
    pub value_key: &'static str,
    pub table_key: &'static str,
    pub value: Option<&'a Spanned<f64>>,
    /// Range of the single value, °C: two numbers, and their place.
    pub between: Option<(&'a [f64], Range<usize>)>,
    pub table: Option<&'a RawTable>,
    pub bounds: (f64, f64),
}

impl Checker<'_> {
    /// The expansion table: micrometres per metre to a ratio, rising, zero at 20 °C.
    pub(super) fn expansion(&self, table: &RawTable) -> Checked<Curve> {
        const KEY: &str = "expansion.table_k_um_m";
        let rows = self.rows(KEY, table, EXPANSION_UM_M)?;
        for (i, pair) in rows.windows(2).enumerate() {
            let slope = (pair[1].1 - pair[0].1) / (pair[1].0 - pair[0].0) * 1e-6;
            let span = table.get_ref().get(i + 1).map(Spanned::span);
            if slope <= 0.0 {
                let problem = format!("must rise with temperature, but row {} is not above row {}", i + 2, i + 1);
                return Err(self.table_error(KEY, &problem, span));
            }
            if slope > STEEPEST_EXPANSION {
                let problem = format!(
                    "rises by {slope:.1e} per K before row {}; are the values in micrometres per metre?",
                    i + 2
                );
                return Err(self.table_error(KEY, &problem, span));
            }
        }
        // The reference row is written by hand as 293.15 and 0, so both read back exactly.
        if !rows.iter().any(|&(t, v)| (t - REFERENCE_K).abs() < 1e-9 && v.abs() < 1e-9) {
            let problem = "lacks the row [293.15, 0]: lengths are counted from 20 °C";
            return Err(self.table_error(KEY, problem, Some(table.span())));
        }
        let ratios: Vec<(f64, f64)> = rows.iter().map(|&(t, v)| (t, v * 1e-6)).collect();
        self.curve(KEY, &ratios, table)
    }

    pub(super) fn choice(&self, choice: &Choice<'_>) -> Checked<Curve> {
        let key = |name: &str| format!("{}.{name}", choice.section);
        match (choice.value, choice.table) {
            (Some(value), None) => self.constant(&key(choice.value_key), value, choice),
            (None, Some(table)) => {
                let rows = self.rows(&key(choice.table_key), table, choice.bounds)?;
                let curve = self.curve(&key(choice.table_key), &rows, table)?;
                self.includes_20c(&key(choice.table_key), &curve, table.span())?;
                Ok(curve)
            }
            _ => {
                let problem = format!("needs either `{}` or `{}`", choice.value_key, choice.table_key);
                Err(self.table_error(choice.section, &problem, choice.value.map(Spanned::span)))
            }
        }
    }

    fn constant(&self, key: &str, value: &Spanned<f64>, choice: &Choice<'_>) -> Checked<Curve> {
        let number = self.number(key, value, choice.bounds)?;
        let Some((between, span)) = choice.between.clone() else {
            let problem = "is one value: state with `between_c` from which to which temperature it may be used";
            return Err(self.table_error(key, problem, Some(value.span())));
        };
        let &[from, to] = between else {
            return Err(self.table_error(choice.section, "needs two temperatures in `between_c`", Some(span)));
        };
        let fault = |problem: String| self.table_error(choice.section, &problem, Some(span.clone()));
        let curve = Curve::constant(number, from + ZERO_C_IN_K, to + ZERO_C_IN_K)
            .map_err(|_| fault(format!("is stated between {from} and {to} °C; the first must be the lower")))?;
        self.includes_20c(choice.section, &curve, span.clone())?;
        Ok(curve)
    }

    fn includes_20c(&self, key: &str, curve: &Curve, span: Range<usize>) -> Checked<()> {
        let (from, to) = curve.range();
        if from <= REFERENCE_K && REFERENCE_K <= to {
            return Ok(());
        }
        Err(self.table_error(key, "must include 20 °C (293.15 K)", Some(span)))
    }

    /// Rows of a table, each temperature and value in its range.
    fn rows(&self, key: &str, table: &RawTable, bounds: (f64, f64)) -> Checked<Vec<(f64, f64)>> {
        if table.get_ref().len() < 2 {
            return Err(self.table_error(key, "needs two rows or more", Some(table.span())));
        }
        let check = |row: &Spanned<Vec<f64>>| {
            let &[kelvin, value] = row.get_ref().as_slice() else {
                let problem = "has a row that is not a pair of temperature in K and value";
                return Err(self.table_error(key, problem, Some(row.span())));
            };
            let in_range = |x: f64, (low, high): (f64, f64)| x >= low && x <= high;
            let temperatures = format!("a temperature of {} to {} K", TEMPERATURE_K.0, TEMPERATURE_K.1);
            self.require(in_range(kelvin, TEMPERATURE_K), key, kelvin, &temperatures, row.span())?;
            self.require(in_range(value, bounds), key, value, &format!("{} to {}", bounds.0, bounds.1), row.span())?;
            Ok((kelvin, value))
        };
        table.get_ref().iter().map(check).collect()
    }

    fn curve(&self, key: &str, rows: &[(f64, f64)], table: &RawTable) -> Checked<Curve> {
        Curve::new(rows).map_err(|error| {
            let row = if let CurveError::Disordered { row } = error { row } else { 1 };
            let span = table.get_ref().get(row - 1).map_or_else(|| table.span(), Spanned::span);
            self.table_error(key, &format!("must be in rising order of temperature, but row {row} is not"), Some(span))
        })
    }

    pub(super) fn scaled(&self, curve: &Curve, factor: f64, key: &str) -> Checked<Curve> {
        let rows: Vec<(f64, f64)> = curve.points().map(|(t, v)| (t, v * factor)).collect();
        Curve::new(&rows).map_err(|error| self.table_error(key, &error.to_string(), None))
    }
}
