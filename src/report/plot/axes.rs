//! The scales: clearance upwards, shared by all panels, and time to the right, one scale a panel.

use super::readings::{Readings, Sample, Stop};
use super::scene::{Point, at};
use super::units::{TimeUnit, decimals_of, fixed, multiples, round_step};
use crate::quantity::Cases;

/// White space between two panels.
const GAP: f64 = 40.0;
/// Shares of the width that the panels in the medium, in shop air and in the seat get, as far as they are there; the
/// seconds in hand are what the fitter looks for.
const SHARES: [f64; 3] = [0.4, 0.6, 0.5];
/// Least distance of two horizontal grid lines.
const LEAST_PITCH: f64 = 40.0;
/// Least space between two numbers along the time axis.
const NUMBER_SPACE: f64 = 32.0;
/// Least distance of two ticks along the time axis.
const LEAST_TICK: f64 = 64.0;
/// Half the length of the mark that stands for a curve of a single point.
const SINGLE_POINT: f64 = 14.0;

/// A round number along an axis.
#[derive(Clone, Debug)]
pub(super) struct Tick {
    /// In the unit of the axis.
    pub(super) value: f64,
    pub(super) text: String,
}

/// The clearance axis, before and after it has its place on the page.
#[derive(Clone, Debug)]
pub(super) struct ClearanceAxis {
    low: f64,
    high: f64,
    pub(super) top: f64,
    pub(super) bottom: f64,
}

impl ClearanceAxis {
    /// An axis that shows everything, with room on both sides of zero.
    pub(super) fn over(readings: &Readings, least_span: f64) -> Self {
        let (low, high) = readings.extremes();
        let spare = (least_span - (high - low)).max(0.0) / 2.0;
        let (low, high) = (low - spare, high + spare);
        let margin = 0.08 * (high - low);
        Self { low: low - margin, high: high + margin, top: 0.0, bottom: 1.0 }
    }

    pub(super) fn y(&self, clearance: f64) -> f64 {
        self.bottom - (clearance - self.low) / (self.high - self.low) * (self.bottom - self.top)
    }

    /// Round numbers for an axis of `height` px.
    pub(super) fn ticks(&self, height: f64) -> Vec<Tick> {
        let step = round_step((self.high - self.low) * LEAST_PITCH / height);
        let decimals = decimals_of(step);
        let tick = |value| Tick { value, text: fixed(value, decimals) };
        multiples(self.low, self.high, step).into_iter().map(tick).collect()
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    Medium,
    Air,
    Seat,
}

/// One time scale with the part of the curves that belongs to it.
#[derive(Clone, Debug)]
pub(super) struct Panel {
    pub(super) place: Place,
    pub(super) unit: TimeUnit,
    pub(super) left: f64,
    pub(super) right: f64,
    from: f64,
    to: f64,
    samples: Vec<Sample>,
}

impl Panel {
    /// One to three panels between `left` and `right`.
    pub(super) fn side_by_side(readings: &Readings, left: f64, right: f64) -> Vec<Self> {
        let (medium, air) = readings.halves();
        let lasts = |samples: &[Sample]| samples.first().zip(samples.last()).is_some_and(|(a, b)| b.time > a.time);
        let parts = [(Place::Medium, medium), (Place::Air, air), (Place::Seat, readings.in_seat.clone())];
        let shown: Vec<_> = parts.iter().filter(|(_, samples)| lasts(samples)).cloned().collect();
        // A history of a single point is a level mark where it stands.
        let shown = if shown.is_empty() {
            parts.into_iter().rev().filter(|(_, s)| !s.is_empty()).take(1).collect()
        } else {
            shown
        };
        let share = |place: Place| SHARES[place as usize];
        let whole: f64 = shown.iter().map(|(place, _)| share(*place)).sum();
        let gaps = shown.len().saturating_sub(1) as f64 * GAP;
        let mut from = left;
        let panel = |(place, samples): (Place, Vec<Sample>)| {
            let to = from + (right - left - gaps) * share(place) / whole;
            let panel = Self::new(place, samples, from, to);
            from = to + GAP;
            panel
        };
        shown.into_iter().map(panel).collect()
    }

    fn new(place: Place, samples: Vec<Sample>, left: f64, right: f64) -> Self {
        let (mut from, mut to) = (samples[0].time, samples[samples.len() - 1].time);
        if to - from < 1e-3 {
            (from, to) = (from - 0.5, to + 0.5);
        }
        Self { place, unit: TimeUnit::for_span(to - from), left, right, from, to, samples }
    }

    pub(super) fn x(&self, time: f64) -> f64 {
        self.left + (time - self.from) / (self.to - self.from) * (self.right - self.left)
    }

    /// Whether a moment is shown in this panel; time zero is shown where the parts come into the air.
    pub(super) fn shows(&self, stop: &Stop) -> bool {
        stop.in_seat == (self.place == Place::Seat) && stop.time >= self.from && stop.time <= self.to
    }

    /// Time as the panel counts it: since the start in the medium, or since leaving it.
    pub(super) fn counted(&self, time: f64) -> f64 {
        time - self.origin()
    }

    fn origin(&self) -> f64 {
        if self.place == Place::Medium { self.samples[0].time } else { 0.0 }
    }

    /// What the time axis counts.
    pub(super) fn name(&self) -> String {
        match self.place {
            Place::Medium => format!("{} in the medium", self.unit.plural()),
            Place::Air => format!("{} in shop air", self.unit.plural()),
            Place::Seat => format!("{} in the seat", self.unit.plural()),
        }
    }

    /// Round numbers that leave space between each other, `width` telling how wide a number is set.
    pub(super) fn ticks(&self, width: impl Fn(&str) -> f64) -> Vec<Tick> {
        let unit = self.unit.seconds();
        let (low, high) = (self.counted(self.from) / unit, self.counted(self.to) / unit);
        let px = (self.right - self.left) / (high - low);
        let at_step = |step: f64| -> Vec<Tick> {
            let decimals = decimals_of(step);
            let tick = |value| Tick { value, text: fixed(value, decimals) };
            multiples(low, high, step).into_iter().map(tick).collect()
        };
        let steps = self.unit.steps().iter().filter(|step| *step * px >= LEAST_TICK);
        let mut choices = steps.map(|&step| (step, at_step(step)));
        let roomy =
            choices.find(|(step, ticks)| ticks.iter().all(|tick| width(&tick.text) + NUMBER_SPACE <= step * px));
        roomy.map(|(_, ticks)| ticks).unwrap_or_default()
    }

    /// The x of a tick.
    pub(super) fn tick_x(&self, tick: &Tick) -> f64 {
        self.x(tick.value * self.unit.seconds() + self.origin())
    }

    /// The three curves in px. Points closer than half a px to the one before are left out.
    pub(super) fn curves(&self, axis: &ClearanceAxis) -> Cases<Vec<Point>> {
        let curve = |pick: fn(&Cases<f64>) -> f64| {
            let points = self.samples.iter().map(|s| at(self.x(s.time), axis.y(pick(&s.clearance))));
            widened(thinned(points.collect()))
        };
        Cases { tightest: curve(|c| c.tightest), middle: curve(|c| c.middle), loosest: curve(|c| c.loosest) }
    }

    /// Clearance at the end of the panel.
    pub(super) fn last(&self) -> Cases<f64> {
        self.samples[self.samples.len() - 1].clearance
    }
}

fn thinned(points: Vec<Point>) -> Vec<Point> {
    let last = points.len() - 1;
    let mut kept: Vec<Point> = Vec::with_capacity(points.len());
    for (i, point) in points.into_iter().enumerate() {
        let near = |k: &Point| (k.x - point.x).abs() < 0.5 && (k.y - point.y).abs() < 0.5;
        if i == last || !kept.last().is_some_and(near) {
            kept.push(point);
        }
    }
    kept
}

/// A curve of no length becomes a short level mark.
fn widened(points: Vec<Point>) -> Vec<Point> {
    match points[..] {
        [only] => vec![at(only.x - SINGLE_POINT, only.y), at(only.x + SINGLE_POINT, only.y)],
        _ => points,
    }
}
