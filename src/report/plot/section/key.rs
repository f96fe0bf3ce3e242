//! The bands and what they stand for.

use crate::report::plot::palette::{self, Colour, INK, MUTED};
use crate::report::plot::pen::{LABEL, Pen, QUIET, baseline, rectangle};
use crate::report::plot::scene::{Area, at};
use crate::report::plot::units::{decimals_of, fixed, multiples, round_step};
use std::ops::Range;

/// Bands that are wanted.
const BANDS: f64 = 10.0;
/// Height of a band in the key, px.
const HEIGHT: f64 = 30.0;
const WIDTH: f64 = 40.0;

/// Levels between the bands.
pub(super) struct Levels {
    pub(super) levels: Vec<f64>,
    decimals: usize,
}

impl Levels {
    /// Round levels over a range; none where everything is alike.
    pub(super) fn over(range: &Range<f64>) -> Self {
        let span = range.end - range.start;
        if !span.is_finite() || span <= 1e-9 * range.end.abs().max(range.start.abs()) || span < 1e-9 {
            return Self { levels: Vec::new(), decimals: 0 };
        }
        let step = round_step(span / BANDS);
        let inside = |level: &f64| *level > range.start + 0.05 * step && *level < range.end - 0.02 * step;
        let levels = multiples(range.start, range.end, step).into_iter().filter(inside).collect();
        Self { levels, decimals: decimals_of(step) }
    }

    pub(super) fn text(&self, level: f64) -> String {
        fixed(level, self.decimals)
    }

    /// Colour of the band above `count` levels.
    pub(super) fn colour(&self, count: usize) -> Colour {
        palette::band(count as f64 / self.levels.len().max(1) as f64)
    }

    /// Height of the key, its name included.
    pub(super) fn height(&self) -> f64 {
        (self.levels.len() + 1) as f64 * HEIGHT + 64.0
    }

    /// The key below `top`, its left side at `left`.
    pub(super) fn draw(&self, pen: &mut Pen<'_>, name: &[String; 2], (left, top): (f64, f64)) {
        if self.levels.is_empty() {
            return;
        }
        pen.write(&name[0], QUIET, 0.0, at(left, top + 16.0));
        pen.write(&name[1], QUIET, 0.0, at(left, top + 40.0));
        let bands = self.levels.len() + 1;
        let y = |count: usize| top + 58.0 + (bands - count) as f64 * HEIGHT;
        for count in 0..bands {
            let area = Area { left, right: left + WIDTH, top: y(count + 1), bottom: y(count) };
            pen.scene.fill(rectangle(&area), self.colour(count));
            pen.around(&rectangle(&area), 1.0, INK);
        }
        for (k, level) in self.levels.iter().enumerate() {
            let y = y(k + 1);
            pen.scene.line(vec![at(left + WIDTH, y), at(left + WIDTH + 7.0, y)], 1.5, MUTED);
            pen.write(&self.text(*level), LABEL, 0.0, at(left + WIDTH + 12.0, baseline(y)));
        }
    }
}
