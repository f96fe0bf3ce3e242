//! The bands and what they stand for.

use super::Shown;
use crate::report::plot::font::Weight;
use crate::report::plot::palette::{self, Colour, INK, MUTED};
use crate::report::plot::pen::{LABEL, Pen, QUIET, Style, baseline, rectangle};
use crate::report::plot::scene::{Area, at};
use crate::report::plot::units::{decimals_of, fixed, multiples, round_step};
use std::ops::Range;

/// Bands that are wanted.
const BANDS: f64 = 10.0;
/// Height of a band in the key, px.
const HEIGHT: f64 = 30.0;
const WIDTH: f64 = 40.0;
/// Room for a word above the bands, and below them.
const WORD: f64 = 30.0;

/// Width of the line between two signs, px.
pub(super) const NOTHING: f64 = 3.0;

/// Levels between the bands.
pub(super) struct Levels {
    pub(super) levels: Vec<f64>,
    decimals: usize,
    /// Of a quantity with a sign: what it is above and below nothing, and its largest size.
    sides: Option<([&'static str; 2], f64)>,
}

impl Levels {
    /// Round levels over a range; none where everything is alike.
    pub(super) fn over(range: &Range<f64>, show: Shown) -> Self {
        let span = range.end - range.start;
        if !span.is_finite() || span <= 1e-9 * range.end.abs().max(range.start.abs()) || span < 1e-9 {
            return Self { levels: Vec::new(), decimals: 0, sides: None };
        }
        let step = round_step(span / BANDS);
        let inside = |level: &f64| *level > range.start + 0.05 * step && *level < range.end - 0.02 * step;
        let levels = multiples(range.start, range.end, step).into_iter().filter(inside).collect();
        let largest = range.end.abs().max(range.start.abs());
        Self { levels, decimals: decimals_of(step), sides: show.sides().map(|words| (words, largest)) }
    }

    pub(super) fn text(&self, level: f64) -> String {
        fixed(level, self.decimals)
    }

    /// Whether a level is the line between two signs.
    pub(super) fn divides(&self, level: f64) -> bool {
        self.sides.is_some() && level.abs() < f64::EPSILON
    }

    /// Colour of the band above `count` levels.
    pub(super) fn colour(&self, count: usize) -> Colour {
        match self.sides {
            None => palette::band(count as f64 / self.levels.len().max(1) as f64),
            Some((_, largest)) => palette::band_with_sign(self.middle(count) / largest),
        }
    }

    /// The value half-way up the band above `count` levels; the lowest and the highest band count as high as the others.
    fn middle(&self, count: usize) -> f64 {
        let step = self.levels.windows(2).next().map_or(0.0, |pair| pair[1] - pair[0]);
        match (count.checked_sub(1).and_then(|below| self.levels.get(below)), self.levels.get(count)) {
            (Some(low), _) => low + 0.5 * step,
            (None, Some(high)) => high - 0.5 * step,
            (None, None) => 0.0,
        }
    }

    /// What the highest and the lowest band say of the sign; nothing where there is none.
    fn words(&self) -> [Option<&'static str>; 2] {
        let Some(([above, below], _)) = self.sides else { return [None, None] };
        [(self.middle(self.levels.len()) > 0.0).then_some(above), (self.middle(0) < 0.0).then_some(below)]
    }

    /// Height of the key, its name included.
    pub(super) fn height(&self) -> f64 {
        let words = if self.sides.is_some() { 2.0 * WORD } else { 0.0 };
        (self.levels.len() + 1) as f64 * HEIGHT + 64.0 + words
    }

    /// The key below `top`, its left side at `left`.
    pub(super) fn draw(&self, pen: &mut Pen<'_>, name: &[String; 2], (left, top): (f64, f64)) {
        if self.levels.is_empty() {
            return;
        }
        pen.write(&name[0], QUIET, 0.0, at(left, top + 16.0));
        pen.write(&name[1], QUIET, 0.0, at(left, top + 40.0));
        let bands = self.levels.len() + 1;
        let room = if self.sides.is_some() { WORD } else { 0.0 };
        let y = |count: usize| top + room + 58.0 + (bands - count) as f64 * HEIGHT;
        let [above, below] = self.words();
        for (word, y) in [(above, y(bands) - 9.0), (below, y(0) + 23.0)] {
            if let Some(word) = word {
                pen.write(word, LABEL, 0.0, at(left, y));
            }
        }
        for count in 0..bands {
            let area = Area { left, right: left + WIDTH, top: y(count + 1), bottom: y(count) };
            pen.scene.fill(rectangle(&area), self.colour(count));
            pen.around(&rectangle(&area), 1.0, INK);
        }
        for (k, level) in self.levels.iter().enumerate() {
            let y = y(k + 1);
            let (from, width, style) = if self.divides(*level) {
                (left, NOTHING, Style { weight: Weight::Bold, ..LABEL })
            } else {
                (left + WIDTH, 1.5, LABEL)
            };
            let colour = if self.divides(*level) { INK } else { MUTED };
            pen.scene.line(vec![at(from, y), at(left + WIDTH + 7.0, y)], width, colour);
            pen.write(&self.text(*level), style, 0.0, at(left + WIDTH + 12.0, baseline(y)));
        }
    }
}
