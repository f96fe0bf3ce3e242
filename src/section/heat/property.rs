use super::error::HeatError;

/// Even parts of the table for each row: one look and a step or two find the row.
const PARTS_PER_ROW: usize = 4;

/// A property over temperature in K, straight between the rows of a table.
///
/// Straight, so that its integral (the enthalpy of a heat capacity, the flux potential of a conductivity) is exact and a
/// table that rises gives a curve that rises. A smooth curve is handed in as closely spaced rows: five kelvin apart, the
/// expansion of steel is followed to 1e-7.
#[derive(Clone, Debug, PartialEq)]
pub struct Property {
    rows: Vec<(f64, f64)>,
    /// Integral from the first row to each.
    sums: Vec<f64>,
    /// Slope from each row to the next: dividing in each reading took a tenth of a history.
    slopes: Vec<f64>,
    /// For each even part, the last row at or below its lower end.
    index: Vec<usize>,
    parts_per_kelvin: f64,
    everywhere: bool,
}

impl Property {
    /// A table of temperatures (K) and values, temperatures rising. One row is valid at that temperature only.
    ///
    /// # Errors
    /// [`HeatError::Disordered`] for an empty table, and for rows that are not finite or do not rise.
    pub fn new(rows: &[(f64, f64)]) -> Result<Self, HeatError> {
        if rows.is_empty() {
            return Err(HeatError::Disordered { row: 1 });
        }
        for (k, (kelvin, value)) in rows.iter().enumerate() {
            let rises = k == 0 || *kelvin > rows[k - 1].0;
            if !(kelvin.is_finite() && value.is_finite() && rises) {
                return Err(HeatError::Disordered { row: k + 1 });
            }
        }
        Ok(Self::from_rows(rows.to_vec(), false))
    }

    /// The same value at every temperature. A value that is not finite is refused where the property is used.
    pub fn constant(value: f64) -> Self {
        Self::from_rows(vec![(0.0, value), (1.0, value)], true)
    }

    /// A straight line at every temperature, `slope · (T - zero)`: the free strain of a constant coefficient of expansion.
    pub fn line(slope_per_kelvin: f64, zero_at_kelvin: f64) -> Self {
        let at = |kelvin: f64| (kelvin, slope_per_kelvin * (kelvin - zero_at_kelvin));
        Self::from_rows(vec![at(0.0), at(1.0e4)], true)
    }

    fn from_rows(rows: Vec<(f64, f64)>, everywhere: bool) -> Self {
        let mut sums = vec![0.0];
        for (k, pair) in rows.windows(2).enumerate() {
            sums.push(sums[k] + (pair[1].0 - pair[0].0) * (pair[0].1 + pair[1].1) / 2.0);
        }
        let slopes = rows.windows(2).map(|pair| (pair[1].1 - pair[0].1) / (pair[1].0 - pair[0].0)).collect();
        let parts = PARTS_PER_ROW * rows.len();
        let width = rows[rows.len() - 1].0 - rows[0].0;
        let parts_per_kelvin = if width > 0.0 { parts as f64 / width } else { 0.0 };
        let below = |part: usize| {
            let kelvin = rows[0].0 + width * part as f64 / parts as f64;
            rows.iter().rposition(|row| row.0 <= kelvin).unwrap_or(0).min(rows.len().saturating_sub(2))
        };
        let index = (0..=parts).map(below).collect();
        Self { rows, sums, slopes, index, parts_per_kelvin, everywhere }
    }

    /// Temperatures of the rows, K; none where the table holds everywhere, and is straight.
    pub(super) fn kelvins(&self) -> impl Iterator<Item = f64> {
        self.rows.iter().filter(|_| !self.everywhere).map(|row| row.0)
    }

    /// First and last temperature, K, between which the table holds; `None` when it holds everywhere.
    pub fn range(&self) -> Option<(f64, f64)> {
        (!self.everywhere).then(|| (self.rows[0].0, self.rows[self.rows.len() - 1].0))
    }

    /// Least and greatest value.
    pub(super) fn extremes(&self) -> (f64, f64) {
        let value = |&(_, value): &(f64, f64)| value;
        let least = self.rows.iter().map(value).fold(f64::INFINITY, f64::min);
        (least, self.rows.iter().map(value).fold(f64::NEG_INFINITY, f64::max))
    }

    /// Whether every value of the table is finite.
    pub(super) fn finite(&self) -> bool {
        self.rows.iter().all(|row| row.1.is_finite())
    }

    /// Row at or below a temperature inside the table.
    fn row(&self, kelvin: f64) -> usize {
        let part = ((kelvin - self.rows[0].0) * self.parts_per_kelvin) as usize;
        let mut row = self.index[part.min(self.index.len() - 1)];
        while row + 2 < self.rows.len() && self.rows[row + 1].0 <= kelvin {
            row += 1;
        }
        row
    }

    /// Value and integral since the first row. Beyond the table the end value goes on: trial steps may stray there, and
    /// whoever accepts a step looks at the range.
    pub(super) fn value_and_integral(&self, kelvin: f64) -> (f64, f64) {
        let (first, last) = (self.rows[0], self.rows[self.rows.len() - 1]);
        if !self.everywhere {
            if kelvin <= first.0 {
                return (first.1, (kelvin - first.0) * first.1);
            }
            if kelvin >= last.0 {
                return (last.1, self.sums[self.sums.len() - 1] + (kelvin - last.0) * last.1);
            }
        }
        let row = self.row(kelvin);
        let (low, from) = self.rows[row];
        let step = kelvin - low;
        let value = from + self.slopes[row] * step;
        (value, self.sums[row] + step * (from + value) / 2.0)
    }

    pub(super) fn at(&self, kelvin: f64) -> f64 {
        self.value_and_integral(kelvin).0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_are_straight_and_integrals_exact_between_rows() {
        let table = Property::new(&[(100.0, 2.0), (101.0, 4.0), (200.0, 4.0), (300.0, 0.0)]).unwrap();
        for (kelvin, value, integral) in [
            (100.0, 2.0, 0.0),
            (100.5, 3.0, 1.25),
            (101.0, 4.0, 3.0),
            (150.0, 4.0, 199.0),
            (250.0, 2.0, 549.0),
            (300.0, 0.0, 599.0),
            (90.0, 2.0, -20.0),
            (310.0, 0.0, 599.0),
        ] {
            let (found, sum) = table.value_and_integral(kelvin);
            assert!((found - value).abs() < 1e-12 && (sum - integral).abs() < 1e-10, "{kelvin}: {found} {sum}");
        }
    }

    #[test]
    fn a_line_holds_everywhere() {
        let line = Property::line(12e-6, 293.15);
        assert!(line.range().is_none());
        assert!((line.at(77.36) - 12e-6 * (77.36 - 293.15)).abs() < 1e-18 && line.at(293.15).abs() < 1e-15);
    }

    #[test]
    fn rows_out_of_order_are_named() {
        let refused = Property::new(&[(100.0, 2.0), (90.0, 4.0)]).unwrap_err().to_string();
        assert!(refused.contains("row 2"), "{refused}");
        assert!(Property::new(&[]).is_err() && Property::new(&[(1.0, f64::NAN)]).is_err());
    }
}
