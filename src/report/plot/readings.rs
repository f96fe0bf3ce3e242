//! The history checked and brought to the units of the axes.

use super::PlotError;
use super::units::{length_value, seconds};
use crate::plan::clearance_history::{ClearanceHistory, ClearancePoint, Moment, MomentKind};
use crate::quantity::{Cases, System};

/// Longest time before or after time zero, s: 100 days. Beyond it something is wrong upstream.
pub(super) const LONGEST_S: f64 = 8.64e6;
/// Largest clearance or interference, mm. No seat of the tables has a tenth of it.
pub(super) const LARGEST_MM: f64 = 100.0;
/// The moments that the strip above the curves has room for.
pub(super) const MOST_MOMENTS: usize = 8;

/// Clearance at one time, in s and in the unit of the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sample {
    pub(super) time: f64,
    pub(super) clearance: Cases<f64>,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct Stop {
    pub(super) time: f64,
    pub(super) clearance: f64,
    pub(super) kind: MomentKind,
    /// Whether its time counts from the part's standing in its seat.
    pub(super) in_seat: bool,
}

#[derive(Clone, Debug)]
pub(super) struct Readings {
    pub(super) samples: Vec<Sample>,
    pub(super) placing: f64,
    pub(super) stops: Vec<Stop>,
    /// The curve in the seat.
    pub(super) in_seat: Vec<Sample>,
}

impl Readings {
    pub(super) fn new(history: &ClearanceHistory, system: System) -> Result<Self, PlotError> {
        check(history)?;
        let sample = |point: &ClearancePoint| Sample {
            time: seconds(point.time),
            clearance: point.clearance.map(|length| length_value(length, system)),
        };
        let stop = |moment: &Moment, in_seat: bool| Stop {
            time: seconds(moment.time),
            clearance: length_value(moment.clearance, system),
            kind: moment.kind,
            in_seat,
        };
        let seat = &history.in_seat;
        let before = history.moments.iter().map(|moment| stop(moment, false));
        Ok(Self {
            samples: history.points.iter().map(sample).collect(),
            placing: length_value(history.placing_clearance, system),
            stops: before.chain(seat.moments.iter().map(|moment| stop(moment, true))).collect(),
            in_seat: seat.points.iter().map(sample).collect(),
        })
    }

    /// Lowest and highest value that the axis has to show; zero is always among them.
    pub(super) fn extremes(&self) -> (f64, f64) {
        let samples = self.samples.iter().chain(&self.in_seat);
        let curves = samples.flat_map(|s| [s.clearance.tightest, s.clearance.middle, s.clearance.loosest]);
        let all = curves.chain(self.stops.iter().map(|stop| stop.clearance)).chain([self.placing]);
        all.fold((0.0, 0.0), |(low, high), value| (value.min(low), value.max(high)))
    }

    /// Samples up to time zero and from time zero on; a sample at zero belongs to both.
    pub(super) fn halves(&self) -> (Vec<Sample>, Vec<Sample>) {
        let before = self.samples.partition_point(|s| s.time < 0.0);
        let after = self.samples.partition_point(|s| s.time <= 0.0);
        let (mut first, mut second) = (self.samples[..after].to_vec(), self.samples[before..].to_vec());
        if before == after && !first.is_empty() && !second.is_empty() {
            let middle = between(self.samples[before - 1], self.samples[before]);
            first.push(middle);
            second.insert(0, middle);
        }
        (first, second)
    }
}

/// The sample at time zero on the straight line from `a`, before it, to `b`, after it.
fn between(a: Sample, b: Sample) -> Sample {
    let share = a.time / (a.time - b.time);
    Sample { time: 0.0, clearance: a.clearance.zip(b.clearance).map(|(a, b)| a + (b - a) * share) }
}

fn check(history: &ClearanceHistory) -> Result<(), PlotError> {
    if history.points.is_empty() {
        return Err(PlotError::NoPoints);
    }
    let count = history.moments.len() + history.in_seat.moments.len();
    if count > MOST_MOMENTS {
        return Err(PlotError::TooManyMoments { count, most: MOST_MOMENTS });
    }
    length_in_range("the placing clearance", history.placing_clearance)?;
    check_curve(&history.points, &history.moments)?;
    check_curve(&history.in_seat.points, &history.in_seat.moments)
}

fn check_curve(points: &[ClearancePoint], moments: &[Moment]) -> Result<(), PlotError> {
    for (i, point) in points.iter().enumerate() {
        check_point(i + 1, point)?;
        if i > 0 && point.time < points[i - 1].time {
            return Err(PlotError::Disordered { point: i + 1 });
        }
    }
    let ends = points.first().zip(points.last()).map(|(first, last)| (first.time, last.time));
    let (from, to) = ends.unwrap_or_default();
    for (i, moment) in moments.iter().enumerate() {
        time_in_range(&format!("the time of moment {}", i + 1), seconds(moment.time))?;
        length_in_range(&format!("the clearance of moment {}", i + 1), moment.clearance)?;
        if moment.time < from || moment.time > to {
            let (at_s, from_s, to_s) = (seconds(moment.time), seconds(from), seconds(to));
            return Err(PlotError::MomentOutside { at_s, from_s, to_s });
        }
    }
    Ok(())
}

fn check_point(number: usize, point: &ClearancePoint) -> Result<(), PlotError> {
    time_in_range(&format!("the time of point {number}"), seconds(point.time))?;
    let Cases { tightest, middle, loosest } = point.clearance;
    for (case, length) in [("tightest", tightest), ("middle", middle), ("loosest", loosest)] {
        length_in_range(&format!("the {case} clearance of point {number}"), length)?;
    }
    Ok(())
}

fn time_in_range(what: &str, value_s: f64) -> Result<(), PlotError> {
    in_range(what, value_s, LONGEST_S, "s")
}

fn length_in_range(what: &str, length: crate::quantity::Length) -> Result<(), PlotError> {
    in_range(what, length.get::<uom::si::length::millimeter>(), LARGEST_MM, "mm")
}

/// A number that is not finite is out of range as well.
fn in_range(what: &str, value: f64, largest: f64, unit: &'static str) -> Result<(), PlotError> {
    if value.abs() <= largest {
        Ok(())
    } else {
        Err(PlotError::OutOfRange { what: what.to_owned(), value, largest, unit })
    }
}
