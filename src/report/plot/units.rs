//! Units of the axes, round numbers along them, and numbers as text.

use crate::plan::clearance_history::MomentKind;
use crate::quantity::{Length, System, Time};
use uom::si::length::{micrometer, mil};
use uom::si::time::second;

/// Name of the unit of clearance.
pub(super) fn length_name(system: System) -> &'static str {
    match system {
        System::Metric => "µm",
        System::Inch => "thou",
    }
}

/// A clearance in the unit of its axis.
pub(super) fn length_value(length: Length, system: System) -> f64 {
    match system {
        System::Metric => length.get::<micrometer>(),
        System::Inch => length.get::<mil>(),
    }
}

pub(super) fn seconds(time: Time) -> f64 {
    time.get::<second>()
}

/// A clearance with its unit: to 0.1 µm or 0.01 thou.
pub(super) fn length_text(length: Length, system: System) -> String {
    let decimals = if system == System::Metric { 1 } else { 2 };
    format!("{} {}", trimmed(length_value(length, system), decimals), length_name(system))
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum TimeUnit {
    Second,
    Minute,
    Hour,
}

impl TimeUnit {
    /// The unit in which a span of `seconds` reads best: hours beyond three hours, minutes beyond three minutes.
    pub(super) fn for_span(seconds: f64) -> Self {
        if seconds > 3.0 * 3600.0 {
            Self::Hour
        } else if seconds > 3.0 * 60.0 {
            Self::Minute
        } else {
            Self::Second
        }
    }

    pub(super) fn seconds(self) -> f64 {
        match self {
            Self::Second => 1.0,
            Self::Minute => 60.0,
            Self::Hour => 3600.0,
        }
    }

    pub(super) fn plural(self) -> &'static str {
        match self {
            Self::Second => "seconds",
            Self::Minute => "minutes",
            Self::Hour => "hours",
        }
    }

    fn symbol(self) -> &'static str {
        match self {
            Self::Second => "s",
            Self::Minute => "min",
            Self::Hour => "h",
        }
    }

    /// Distances between ticks that read as whole parts of a minute, an hour or a day, in this unit.
    pub(super) fn steps(self) -> &'static [f64] {
        match self {
            Self::Second | Self::Minute => {
                &[0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0]
            }
            Self::Hour => &[1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 120.0, 240.0, 480.0, 960.0],
        }
    }
}

/// The unit in which a moment is told on an axis in `axis`: a finer one while the number stays below a hundred.
pub(super) fn moment_unit(seconds: f64, axis: TimeUnit) -> TimeUnit {
    match axis {
        TimeUnit::Minute | TimeUnit::Hour if seconds < 100.0 => TimeUnit::Second,
        TimeUnit::Hour if seconds < 6000.0 => TimeUnit::Minute,
        _ => axis,
    }
}

/// The time of a moment, rounded away from comfort: time still needed goes up, time in hand goes down.
pub(super) fn moment_time(seconds: f64, unit: TimeUnit, kind: MomentKind) -> String {
    let value = seconds / unit.seconds();
    let decimals = usize::from(value.abs() < 9.95);
    let parts = 10_f64.powi(decimals as i32);
    // A whole number of parts that arithmetic left a hair to one side counts as whole.
    let hair = 1e-6;
    let rounded = match kind {
        MomentKind::NoLongerClears | MomentKind::Grips => (value * parts + hair).floor(),
        MomentKind::OutOfMedium | MomentKind::AtBore | MomentKind::FirstClears => (value * parts - hair).ceil(),
    };
    format!("{} {}", trimmed(rounded / parts, decimals), unit.symbol())
}

/// A number with a fixed count of decimals and a true minus sign; never "−0".
pub(super) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.contains(|c: char| ('1'..='9').contains(&c)) => format!("−{digits}"),
        Some(digits) => digits.to_owned(),
        None => text,
    }
}

/// As [`fixed`], without zeros at the end.
fn trimmed(value: f64, decimals: usize) -> String {
    let text = fixed(value, decimals);
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// Decimals that a multiple of `step` needs.
pub(super) fn decimals_of(step: f64) -> usize {
    (0..6)
        .find(|&n| {
            let scaled = step * 10_f64.powi(n as i32);
            (scaled - scaled.round()).abs() < 1e-6
        })
        .unwrap_or(6)
}

/// Multiples of `step` from `low` to `high`, both included.
pub(super) fn multiples(low: f64, high: f64, step: f64) -> Vec<f64> {
    let hair = 1e-9;
    let (first, last) = ((low / step - hair).ceil() as i64, (high / step + hair).floor() as i64);
    (first..=last).map(|i| i as f64 * step).collect()
}

/// The smallest of 1, 2 and 5 times a power of ten that is not below `least`.
pub(super) fn round_step(least: f64) -> f64 {
    let power = 10_f64.powf(least.log10().floor());
    [1.0, 2.0, 5.0].iter().map(|m| m * power).find(|step| *step >= least * (1.0 - 1e-9)).unwrap_or(10.0 * power)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_negative_number_has_a_minus_sign_and_zero_has_none() {
        assert_eq!(fixed(-40.0, 0), "−40");
        assert_eq!(fixed(-0.04, 1), "0.0");
        assert_eq!(trimmed(-0.50, 2), "−0.5");
        assert_eq!(trimmed(100.0, 0), "100");
    }

    #[test]
    fn time_in_hand_is_rounded_down_and_time_needed_up() {
        assert_eq!(moment_time(13.9, TimeUnit::Second, MomentKind::NoLongerClears), "13 s");
        assert_eq!(moment_time(13.1, TimeUnit::Second, MomentKind::AtBore), "14 s");
        assert_eq!(moment_time(13.0, TimeUnit::Second, MomentKind::AtBore), "13 s");
        assert_eq!(moment_time(62.0, TimeUnit::Minute, MomentKind::FirstClears), "1.1 min");
        assert_eq!(moment_time(8.0 * 3600.0, TimeUnit::Hour, MomentKind::NoLongerClears), "8 h");
    }

    #[test]
    fn a_moment_soon_after_the_medium_is_told_in_seconds_on_a_long_axis() {
        assert_eq!(moment_unit(20.0, TimeUnit::Hour), TimeUnit::Second);
        assert_eq!(moment_unit(600.0, TimeUnit::Hour), TimeUnit::Minute);
        assert_eq!(moment_unit(146.0, TimeUnit::Minute), TimeUnit::Minute);
        assert_eq!(moment_unit(146.0, TimeUnit::Second), TimeUnit::Second);
    }

    #[test]
    fn steps_are_round() {
        for (least, want) in [(0.9, 1.0), (1.1, 2.0), (2.0, 2.0), (3.0, 5.0), (6.0, 10.0), (0.03, 0.05)] {
            assert!((round_step(least) - want).abs() < 1e-12, "{least}: {}", round_step(least));
        }
        assert_eq!((decimals_of(0.05), decimals_of(20.0), decimals_of(0.2)), (2, 0, 1));
        assert_eq!(multiples(-5.0, 10.0, 5.0).len(), 4);
    }

    #[test]
    fn long_spans_are_told_in_hours() {
        assert_eq!(TimeUnit::for_span(60.0), TimeUnit::Second);
        assert_eq!(TimeUnit::for_span(1800.0), TimeUnit::Minute);
        assert_eq!(TimeUnit::for_span(8.0 * 3600.0), TimeUnit::Hour);
    }
}
