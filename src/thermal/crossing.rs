use super::root::root;
use crate::quantity::Time;
use uom::si::time::second;

/// Samples between the two ends of the search.
const SAMPLES: u32 = 128;
/// Share of the searched span to which a crossing is located.
const TIME_TOLERANCE: f64 = 1e-12;

/// First time from `from` to `to` at which `f` is zero or changes its sign; `None` when it does not.
///
/// Meant for a clearance, or the distance of a temperature from a limit, that follows one or two [`super::History`]s.
/// The span is sampled at 128 times that lie closest together at the start, where parts change fastest: the first gap
/// is 1/16384 of the span, the last 1/64. Two crossings inside one gap cancel and are not seen; a function that rises
/// or falls throughout loses none.
///
/// `f` must be finite; a sample that is not a number counts as no crossing.
pub fn first_crossing(from: Time, to: Time, f: impl Fn(Time) -> f64) -> Option<Time> {
    let (from, to) = (from.get::<second>(), to.get::<second>());
    let at = |t: f64| f(Time::new::<second>(t));
    let time = |sample: u32| from + (to - from) * (f64::from(sample) / f64::from(SAMPLES)).powi(2);
    if at(from).abs() < f64::MIN_POSITIVE {
        return Some(Time::new::<second>(from));
    }
    let mut before = (from, at(from));
    for sample in 1..=SAMPLES {
        let now = (time(sample), at(time(sample)));
        if now.1.abs() < f64::MIN_POSITIVE {
            return Some(Time::new::<second>(now.0));
        }
        if before.1 * now.1 < 0.0 {
            let tolerance = TIME_TOLERANCE * (to - from);
            return Some(Time::new::<second>(root(at, (before.0, now.0), tolerance)));
        }
        before = now;
    }
    None
}
