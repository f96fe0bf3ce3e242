//! A property tabulated over temperature, read by monotone cubic interpolation.

use std::cell::Cell;
use thiserror::Error;

/// A table of one property over temperature (K), interpolated by a monotone piecewise cubic.
///
/// Between two rows the curve stays between their values, so a table that rises gives a curve that rises.
/// Outside the table there is no value: asking for one is an error, never an extrapolation.
///
/// **Source**: F. N. Fritsch, R. E. Carlson, "Monotone Piecewise Cubic Interpolation", SIAM J. Numer. Anal. 17 (1980)
/// 238-246, with the weighted harmonic mean of F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    x: Vec<f64>,
    y: Vec<f64>,
    /// What lies between each row and the next.
    spans: Vec<Span>,
    /// The table's width cut into even parts: for each, the last row at or below all that lies in it, rounding included.
    rows: Vec<u32>,
    /// Parts per kelvin.
    parts: f64,
    /// First and last row, once more: a reading needs nothing else where it lies beyond.
    ends: [(f64, f64); 2],
    /// Least and greatest of the rows' values, between which the whole curve stays.
    extremes: (f64, f64),
}

/// A curve between two rows.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Span {
    from: f64,
    to: f64,
    /// In rising powers of the distance (K) from the lower row.
    cubic: [f64; 4],
}

/// A span that holds no temperature.
const NOWHERE: Span = Span { from: 0.0, to: 0.0, cubic: [0.0; 4] };

impl Span {
    #[inline]
    fn at(&self, temperature: f64) -> f64 {
        let t = temperature - self.from;
        let [c0, c1, c2, c3] = self.cubic;
        c0 + t * (c1 + t * (c2 + t * c3))
    }
}

/// A curve with the span that was read last: the next temperature of a solver lies mostly in the same one, and gets the same value
/// as from [`Curve::at_inside`] in a third of the time.
#[derive(Clone, Debug)]
pub(crate) struct Reader<'a> {
    curve: &'a Curve,
    last: Cell<&'a Span>,
}

impl Reader<'_> {
    /// As [`Curve::at_inside`].
    #[inline]
    pub(crate) fn at_inside(&self, temperature: f64) -> f64 {
        let span = self.last.get();
        if temperature >= span.from && temperature < span.to { span.at(temperature) } else { self.look(temperature) }
    }

    #[inline(never)]
    fn look(&self, temperature: f64) -> f64 {
        let (from, to) = self.curve.range();
        if temperature > from
            && temperature < to
            && let Some(span) = self.curve.span_around(temperature)
        {
            self.last.set(span);
        }
        self.curve.at_inside(temperature)
    }
}

/// Even parts for each row of a table: one look and a step or two find the row that a halving search needs five for.
const PARTS_PER_ROW: usize = 2;

/// Share of a part to which the edges between two are known; a temperature of a thousand kelvin in a table of one kelvin loses less.
const EDGE: f64 = 1e-9;

/// Why a curve cannot be made or read.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum CurveError {
    /// The table has no rows, or rows that are not finite or not in rising order of temperature.
    #[error("row {row} of the table must be finite and at a higher temperature than the row before it")]
    Disordered {
        /// Row number, from 1.
        row: usize,
    },
    /// The temperature lies outside the table.
    #[error(
        "{:.2} °C is outside the table, which runs from {:.2} °C to {:.2} °C",
        .asked - ICE_POINT_K, .from - ICE_POINT_K, .to - ICE_POINT_K
    )]
    Outside {
        /// Temperature asked for, K.
        asked: f64,
        /// First temperature of the table, K.
        from: f64,
        /// Last temperature of the table, K.
        to: f64,
    },
}

/// 0 °C, K.
const ICE_POINT_K: f64 = 273.15;

/// What a temperature loses on its way through °C: -40 °C arrives as 233.14999999999998 K.
const ROUNDING_K: f64 = 1e-9;

impl Curve {
    /// A curve through `points`, pairs of temperature (K) and value, in rising order of temperature.
    ///
    /// One point makes a constant that is valid at that temperature only; use [`Curve::constant`] for a range.
    ///
    /// # Errors
    /// [`CurveError::Disordered`] when a row is not finite or temperatures do not rise.
    pub fn new(points: &[(f64, f64)]) -> Result<Self, CurveError> {
        let (x, y) = checked(points)?;
        let slope = slopes(&x, &y);
        Ok(Self::through(x, y, &slope))
    }

    /// A curve through `points` that passes each of them with a slope that is known better than from its neighbours, so that it
    /// bends less abruptly there; flatter where the curve would not stay between two rows.
    ///
    /// # Errors
    /// As for [`Curve::new`], also where the slopes are not as many as the points.
    pub(crate) fn with_slopes(points: &[(f64, f64)], known: &[f64]) -> Result<Self, CurveError> {
        let (x, y) = checked(points)?;
        if known.len() != points.len() {
            return Err(CurveError::Disordered { row: known.len().min(points.len()) + 1 });
        }
        let slope = kept_between(&x, &y, known);
        Ok(Self::through(x, y, &slope))
    }

    fn through(x: Vec<f64>, y: Vec<f64>, slope: &[f64]) -> Self {
        let spans = spans(&x, &y, slope);
        let (rows, parts) = even_parts(&x);
        let ends = [(x[0], y[0]), (x[x.len() - 1], y[y.len() - 1])];
        let extremes = y.iter().fold((y[0], y[0]), |(least, most), y| (least.min(*y), most.max(*y)));
        Self { x, y, spans, rows, parts, ends, extremes }
    }

    /// The same curve with every value times a factor above zero.
    pub(crate) fn times(&self, factor: f64) -> Self {
        let span = |span: &Span| Span { cubic: span.cubic.map(|term| term * factor), ..*span };
        Self {
            x: self.x.clone(),
            y: self.y.iter().map(|y| y * factor).collect(),
            spans: self.spans.iter().map(span).collect(),
            rows: self.rows.clone(),
            parts: self.parts,
            ends: self.ends.map(|(x, y)| (x, y * factor)),
            extremes: (self.extremes.0 * factor, self.extremes.1 * factor),
        }
    }

    /// The same `value` at every temperature from `from` to `to` (K).
    ///
    /// # Errors
    /// [`CurveError::Disordered`] when `from` is not below `to` or a number is not finite.
    pub fn constant(value: f64, from: f64, to: f64) -> Result<Self, CurveError> {
        Self::new(&[(from, value), (to, value)])
    }

    /// First and last temperature of the table, K.
    pub fn range(&self) -> (f64, f64) {
        (self.ends[0].0, self.ends[1].0)
    }

    /// Least and greatest value of the curve, which are those of two of its rows.
    pub(crate) fn extremes(&self) -> (f64, f64) {
        self.extremes
    }

    /// The table's own rows, temperature (K) and value.
    pub fn points(&self) -> impl DoubleEndedIterator<Item = (f64, f64)> + '_ {
        self.x.iter().copied().zip(self.y.iter().copied())
    }

    /// The value at `temperature` (K).
    ///
    /// # Errors
    /// [`CurveError::Outside`] beyond the ends of the table.
    pub fn at(&self, temperature: f64) -> Result<f64, CurveError> {
        let (from, to) = self.range();
        if temperature >= from - ROUNDING_K && temperature <= to + ROUNDING_K {
            Ok(self.at_inside(temperature))
        } else {
            Err(CurveError::Outside { asked: temperature, from, to })
        }
    }

    /// The value at a temperature (K) that the caller has checked to lie in the table; the end value beyond it.
    ///
    /// For inner loops whose end temperatures have been checked with [`Curve::at`].
    #[inline]
    pub(crate) fn at_inside(&self, temperature: f64) -> f64 {
        let [(from, first), (to, last)] = self.ends;
        if temperature <= from {
            return first;
        }
        if temperature >= to {
            return last;
        }
        // What is no number is in no span, and has no value.
        self.span_around(temperature).map_or(temperature, |span| span.at(temperature))
    }

    /// The same curve, for readings of which each is mostly near the one before.
    pub(crate) fn reader(&self) -> Reader<'_> {
        Reader { curve: self, last: Cell::new(self.spans.first().unwrap_or(&NOWHERE)) }
    }

    /// The span that holds a temperature inside the table.
    #[inline]
    fn span_around(&self, temperature: f64) -> Option<&Span> {
        // Inside the table, so neither negative nor larger than the number of parts.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let part = ((temperature - self.ends[0].0) * self.parts) as u32 as usize;
        let row = self.rows.get(part).or(self.rows.last())?;
        self.spans.get(*row as usize..)?.iter().find(|span| temperature < span.to)
    }

    /// Integral over temperatures (K) that the caller has checked to lie in the table.
    ///
    /// Simpson's rule between the rows is exact, for the curve is cubic there.
    pub(crate) fn integral_inside(&self, from: f64, to: f64) -> f64 {
        let (low, high) = (from.min(to), from.max(to));
        let inside = self.x.iter().copied().filter(|t| (low..high).contains(t));
        let mut ends: Vec<f64> = std::iter::once(low).chain(inside).collect();
        ends.push(high);
        let panel = |pair: &[f64]| {
            let (a, b) = (pair[0], pair[1]);
            (b - a) / 6.0 * (self.at_inside(a) + 4.0 * self.at_inside(0.5 * (a + b)) + self.at_inside(b))
        };
        let whole: f64 = ends.windows(2).map(panel).sum();
        if to < from { -whole } else { whole }
    }
}

/// Temperatures and values of a table that has rows, in order.
fn checked(points: &[(f64, f64)]) -> Result<(Vec<f64>, Vec<f64>), CurveError> {
    if points.is_empty() {
        return Err(CurveError::Disordered { row: 1 });
    }
    for (i, &(x, y)) in points.iter().enumerate() {
        let rises = i == 0 || x > points[i - 1].0;
        if !(x.is_finite() && y.is_finite() && rises) {
            return Err(CurveError::Disordered { row: i + 1 });
        }
    }
    Ok(points.iter().copied().unzip())
}

/// Even parts of a table's width, as [`Curve`] keeps them.
fn even_parts(x: &[f64]) -> (Vec<u32>, f64) {
    let intervals = x.len() - 1;
    if intervals == 0 {
        return (Vec::new(), 0.0);
    }
    let count = PARTS_PER_ROW * intervals;
    let per_part = (x[intervals] - x[0]) / count as f64;
    let mut row = 0;
    let rows = (0..count).map(|part| {
        // Rounding may put a temperature just below the edge of a part into it.
        let lower = x[0] + (part as f64 - EDGE) * per_part;
        while row + 1 < intervals && x[row + 1] <= lower {
            row += 1;
        }
        u32::try_from(row).unwrap_or(u32::MAX)
    });
    (rows.collect(), 1.0 / per_part)
}

/// Hermite cubics through the rows with their slopes: `y0 + s0 t + (3Δ/w - 2 s0 - s1) t²/w + (s0 + s1 - 2Δ/w) t³/w²`.
fn spans(x: &[f64], y: &[f64], slope: &[f64]) -> Vec<Span> {
    let span = |i: usize| {
        let width = x[i + 1] - x[i];
        let (s0, s1, secant) = (slope[i], slope[i + 1], (y[i + 1] - y[i]) / width);
        let cubic = [y[i], s0, (3.0 * secant - 2.0 * s0 - s1) / width, (s0 + s1 - 2.0 * secant) / (width * width)];
        Span { from: x[i], to: x[i + 1], cubic }
    };
    (0..x.len() - 1).map(span).collect()
}

/// Slopes at the rows: weighted harmonic mean inside, one-sided and limited at the ends.
fn slopes(x: &[f64], y: &[f64]) -> Vec<f64> {
    let n = x.len();
    if n == 1 {
        return vec![0.0];
    }
    let width: Vec<f64> = x.windows(2).map(|w| w[1] - w[0]).collect();
    let secant: Vec<f64> = y.windows(2).zip(&width).map(|(w, h)| (w[1] - w[0]) / h).collect();
    let mut slope = vec![secant[0]; n];
    for i in 1..n - 1 {
        slope[i] = inner_slope((width[i - 1], width[i]), (secant[i - 1], secant[i]));
    }
    if n > 2 {
        slope[0] = end_slope((width[0], width[1]), (secant[0], secant[1]));
        slope[n - 1] = end_slope((width[n - 2], width[n - 3]), (secant[n - 2], secant[n - 3]));
    }
    slope
}

/// Known slopes, none against a neighbouring secant nor steeper than three times it, which keeps each cubic between its rows (the
/// sufficient condition of Fritsch and Carlson).
fn kept_between(x: &[f64], y: &[f64], known: &[f64]) -> Vec<f64> {
    let last = x.len() - 1;
    let secant = |i: usize| (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    let kept = |i: usize| {
        let near = [(i > 0).then(|| secant(i - 1)), (i < last).then(|| secant(i))];
        near.into_iter().flatten().fold(known[i], |slope, secant| {
            if slope * secant > 0.0 { slope.signum() * slope.abs().min(3.0 * secant.abs()) } else { 0.0 }
        })
    };
    (0..x.len()).map(kept).collect()
}

fn inner_slope((h0, h1): (f64, f64), (d0, d1): (f64, f64)) -> f64 {
    if d0 * d1 <= 0.0 {
        return 0.0;
    }
    let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
    (w0 + w1) / (w0 / d0 + w1 / d1)
}

/// Three-point end formula, kept to the sign of the first secant and to three times its size.
fn end_slope((h0, h1): (f64, f64), (d0, d1): (f64, f64)) -> f64 {
    let slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if slope * d0 <= 0.0 {
        0.0
    } else if d0 * d1 < 0.0 && slope.abs() > 3.0 * d0.abs() {
        3.0 * d0
    } else {
        slope
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_table_is_read_as_a_straight_line() {
        let curve = Curve::new(&[(77.0, 1.0), (200.0, 247.0), (300.0, 447.0)]).unwrap();
        assert!((curve.at(150.0).unwrap() - 147.0).abs() < 1e-9);
    }

    #[test]
    fn a_rising_table_never_falls_between_rows() {
        let curve = Curve::new(&[(0.0, 0.0), (1.0, 0.01), (2.0, 5.0), (3.0, 5.01), (9.0, 40.0)]).unwrap();
        let values: Vec<f64> = (0..=900).map(|i| curve.at(f64::from(i) / 100.0).unwrap()).collect();
        assert!(values.windows(2).all(|w| w[1] >= w[0]));
    }

    #[test]
    fn known_slopes_are_taken_where_the_curve_stays_between_its_rows() {
        let rows: Vec<(f64, f64)> = (0..9).map(|i| (f64::from(i), f64::from(i).exp())).collect();
        let slopes: Vec<f64> = rows.iter().map(|row| row.1).collect();
        let curve = Curve::with_slopes(&rows, &slopes).unwrap();
        // The cubic of Hermite is off by the fourth derivative over 384 at most, largest at the upper row.
        assert!(
            (0..800)
                .map(|i| f64::from(i) / 100.0)
                .all(|t| { (curve.at(t).unwrap() - t.exp()).abs() <= (t.floor() + 1.0).exp() / 384.0 })
        );
        let steep = Curve::with_slopes(&[(0.0, 0.0), (1.0, 1.0), (2.0, 1.1)], &[9.0, 9.0, -9.0]).unwrap();
        let values: Vec<f64> = (0..=200).map(|i| steep.at(f64::from(i) / 100.0).unwrap()).collect();
        assert!(values.windows(2).all(|w| w[1] >= w[0]));
        assert!(Curve::with_slopes(&rows, &slopes[1..]).is_err());
    }

    #[test]
    fn outside_the_table_is_an_error_that_says_its_range() {
        let curve = Curve::constant(1.0, 77.0, 400.0).unwrap();
        let said = curve.at(76.9).unwrap_err().to_string();
        assert!(said.contains("-196.15 °C") && said.contains("126.85 °C"), "{said}");
        assert!(curve.at(f64::NAN).is_err());
        assert!(curve.at(77.0 - 1e-10).is_ok(), "rounding of a unit does not leave the table");
    }

    #[test]
    fn a_reader_gives_what_the_curve_gives_wherever_it_was_before() {
        let curve = Curve::new(&[(77.0, 1.0), (100.0, 7.0), (101.0, 8.0), (200.0, 3.0), (300.0, 447.0)]).unwrap();
        let reader = curve.reader();
        for i in 0..4000_u32 {
            // To and fro over the table and beyond both of its ends, rows included.
            let t = 70.0 + f64::from(i * 1237 % 4800) * 0.05;
            assert_eq!(reader.at_inside(t).to_bits(), curve.at_inside(t).to_bits(), "{t}");
        }
        assert!(reader.at_inside(f64::NAN).is_nan());
        let point = Curve::new(&[(300.0, 5.0)]).unwrap();
        assert!([0.0, 299.0, 300.0, 301.0].iter().all(|t| (point.reader().at_inside(*t) - 5.0).abs() < 1e-15));
    }

    #[test]
    fn rows_out_of_order_are_refused_by_number() {
        assert_eq!(Curve::new(&[(1.0, 1.0), (1.0, 2.0)]), Err(CurveError::Disordered { row: 2 }));
    }
}
