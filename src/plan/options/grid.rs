//! Settings and holds that a shop can set, and the first of them that does what is wanted.

use crate::job::{Job, Piece};
use crate::plan::limits;
use crate::plan::model::SeatKind;
use crate::quantity::{ThermodynamicTemperature, Time, celsius};
use crate::stock::Material;
use crate::stock::medium::{Medium, Transfer};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// Steps of a dial, °C (9 °F), and the fine steps of the least setting.
pub(super) const DIAL_C: f64 = 5.0;
pub(super) const FINE_C: f64 = 1.0;

/// What a temperature of a limit may lose in its way through kelvin, °C.
const ROUNDING_C: f64 = 1e-6;

/// Ends of the ranges in which a clock is set by a step: up to a minute by 5 s, to 10 min by 30 s, and so on.
const CLOCK_S: [(f64, f64); 5] =
    [(60.0, 5.0), (600.0, 30.0), (7_200.0, 300.0), (21_600.0, 900.0), (72.0 * 3600.0, 3_600.0)];

/// Holds that one sets on a clock, shortest first, to 72 h.
pub(super) fn holds() -> Vec<Time> {
    let mut seconds = Vec::new();
    let mut from = 0.0;
    for (to, step) in CLOCK_S {
        let count = ((to - from) / step).round() as u32;
        seconds.extend((1..=count).map(|i| from + step * f64::from(i)));
        from = to;
    }
    seconds.into_iter().map(Time::new::<second>).collect()
}

/// Whether the job, not the medium, says how hot it is.
pub(super) fn is_settable(medium: &Medium) -> bool {
    medium.temperature().default.is_none() || matches!(medium.transfer(), Transfer::Power(_))
}

/// Settings of a medium that warms `piece`, coolest first: whole steps above the shop, and the limit itself where the
/// steps miss it. Empty where the limit lies below what the medium can be set to.
pub(super) fn settings(
    job: &Job,
    seat: SeatKind,
    (piece, medium): (Piece, &Medium),
    step: f64,
) -> Vec<ThermodynamicTemperature> {
    let range = medium.temperature();
    let shop = job.bench.temperature.get::<degree_celsius>();
    let low = range.low.get::<degree_celsius>();
    let high = highest(job, seat, piece).map_or(f64::INFINITY, |limit| limit.get::<degree_celsius>());
    let high = high.min(range.high.get::<degree_celsius>()) + ROUNDING_C;
    let first = ((low - ROUNDING_C) / step).ceil().max((shop / step).floor() + 1.0) as i32;
    let last = (high / step).floor() as i32;
    let mut settings: Vec<f64> = (first..=last).map(|i| f64::from(i) * step).collect();
    let missed = (high - ROUNDING_C) - settings.last().copied().unwrap_or(f64::NEG_INFINITY);
    if missed > 0.01 && high >= low && high > shop + step {
        settings.push(high - ROUNDING_C);
    }
    settings.into_iter().map(celsius).collect()
}

/// The hottest that a piece may get: the strictest limit, and the end of its material's tables.
pub(in crate::plan) fn highest(job: &Job, seat: SeatKind, piece: Piece) -> Option<ThermodynamicTemperature> {
    let limit = limits::hottest(&limits::hot(job, seat, piece));
    let tables = job.materials_of(piece).map(end_of_tables);
    limit.into_iter().chain(tables).reduce(|a, b| if a < b { a } else { b })
}

fn end_of_tables(material: &Material) -> ThermodynamicTemperature {
    let ends = [material.expansion(), material.heat_capacity(), material.conductivity()].map(|table| table.range().1);
    crate::plan::soaking::from_kelvin(ends.into_iter().fold(f64::INFINITY, f64::min))
}

/// The first of `count` for which a thing holds that, once it holds, holds for all after it; `count` where it never does.
pub(super) fn first(count: usize, mut holds: impl FnMut(usize) -> bool) -> usize {
    let (mut low, mut high) = (0, count);
    while low < high {
        let middle = low + (high - low) / 2;
        if holds(middle) { high = middle } else { low = middle + 1 }
    }
    low
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_is_set_by_steps_that_grow_and_each_is_longer_than_the_one_before() {
        let holds: Vec<f64> = holds().iter().map(|hold| hold.get::<second>()).collect();
        assert!(holds.windows(2).all(|pair| pair[0] < pair[1]));
        for wanted in [5.0, 60.0, 90.0, 600.0, 900.0, 7200.0, 8100.0, 21600.0, 25200.0, 259_200.0] {
            assert!(holds.iter().any(|hold| (hold - wanted).abs() < 1e-9), "{wanted}");
        }
    }

    /// Settings of an oven, 40 to 250 °C, for a housing that bears a temperature, in a shop of another.
    fn of_oven(hottest: &str, shop: &str, step: f64) -> Vec<f64> {
        let text = format!(
            "[bearing]\ndesignation = \"6205\"\nclosure = \"open\"\n[housing]\nbore_limits = \"N7\"\noutside = \"80 mm\"\nmaterial = \
             {{ name = \"alloy\", family = \"light alloy\", density = \"2700 kg/m3\", modulus = \"70 GPa\", poisson = \"0.33\", \
             strength = \"160 MPa\", expansion = \"23 um/mK\", heat_capacity = \"900 J/kgK\", conductivity = \"150 W/mK\", \
             hottest = \"{hottest} °C\", source = \"test\" }}\n[bench]\ntemperature = \"{shop} °C\"\n"
        );
        let job = crate::job::check(&text, &crate::stock::Library::default()).unwrap_or_else(|error| panic!("{error}"));
        let oven = crate::stock::Library::default().medium("oven").expect("an oven");
        let found = settings(&job, SeatKind::Housing, (Piece::Housing, &oven), step);
        found.iter().map(|at| (at.get::<degree_celsius>() * 1e3).round() / 1e3).collect()
    }

    #[test]
    fn settings_are_whole_steps_above_the_shop_and_end_at_the_limit_itself() {
        let low = 40.0;
        let steps = |from: f64, to: f64| {
            (0..).map(|i| from + 5.0 * f64::from(i)).take_while(|at| *at <= to).collect::<Vec<_>>()
        };
        assert_eq!(of_oven("75", "20", DIAL_C), steps(low, 75.0));
        assert_eq!(of_oven("73.4", "20", DIAL_C), [steps(low, 70.0), vec![73.4]].concat());
        // A limit that the last step misses by less than a dial shows is that step.
        assert_eq!(of_oven("75.005", "20", DIAL_C), steps(low, 75.0));
        // The shop itself is no setting; a step above it is the first.
        assert_eq!(of_oven("75", "45", DIAL_C), steps(50.0, 75.0));
        assert_eq!(of_oven("75", "43", DIAL_C), steps(45.0, 75.0));
        // A limit that is hardly above the shop is not worth setting, and one below what the oven can do cannot be set.
        assert_eq!(of_oven("47", "44", DIAL_C), [45.0]);
        assert_eq!(of_oven("47", "41.9", DIAL_C), [45.0, 47.0]);
        assert_eq!(of_oven(&format!("{}", low - 2.0), "15", DIAL_C), [0.0; 0]);
        assert_eq!(of_oven("44", "40", FINE_C), [41.0, 42.0, 43.0, 44.0]);
    }

    #[test]
    fn the_first_of_a_row_is_found_wherever_it_stands_and_with_few_questions() {
        for count in 0..40 {
            for start in 0..=count {
                let mut asked = 0;
                let found = first(count, |i| {
                    asked += 1;
                    i >= start
                });
                assert!(found == start && asked <= 6, "{count} {start}: {found} after {asked}");
            }
        }
    }
}
