//! What to set a dial to.

use super::limits;
use super::model::SeatKind;
use crate::job::{Job, Treatment};
use crate::quantity::{System, ThermodynamicTemperature, Toward, celsius, to_step};
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};

/// Steps of an oven's dial, in °C and in °F: common practice, no published source.
const STEPS: (f64, f64) = (5.0, 10.0);

/// The mark of a dial at `wanted` or the next one above, but not above `cap`: an oven that is asked for 87.3 °C is set to
/// 90 °C, and one that may not pass 99 °C to 99 °C.
///
/// **Valid for** warming: more heat never clears less. A `cap` below `wanted` leaves `wanted` as it is, since a plan that passes
/// its limit says so elsewhere.
pub fn dial_setting(
    wanted: ThermodynamicTemperature,
    cap: Option<ThermodynamicTemperature>,
    system: System,
) -> ThermodynamicTemperature {
    let up = |degrees, step| to_step(degrees, step, Toward::Up);
    let mark = match system {
        System::Metric => celsius(up(wanted.get::<degree_celsius>(), STEPS.0)),
        System::Inch => {
            ThermodynamicTemperature::new::<degree_fahrenheit>(up(wanted.get::<degree_fahrenheit>(), STEPS.1))
        }
    };
    match cap {
        Some(cap) if mark > cap && cap >= wanted => cap,
        Some(cap) if cap < wanted => wanted,
        _ => mark,
    }
}

/// What to set for a treatment whose temperature the job states between the marks of a dial; none where it lies on a mark.
pub(super) fn between_marks(job: &Job, seat: SeatKind, warm: &Treatment) -> Option<ThermodynamicTemperature> {
    const SAME_K: f64 = 0.05;
    if !job.entries.iter().any(|entry| entry.key == "warm.temperature") {
        return None;
    }
    let limits = limits::hot(job, seat, warm.piece);
    let highest = warm.medium.temperature().high;
    let cap = limits::hottest(&limits).map_or(highest, |limit| if limit < highest { limit } else { highest });
    let set = dial_setting(warm.temperature, Some(cap), job.system);
    let off = set.get::<degree_celsius>() - warm.temperature.get::<degree_celsius>();
    (off > SAME_K).then_some(set)
}

#[cfg(test)]
mod tests {
    use super::dial_setting;
    use crate::quantity::{System, celsius};
    use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};

    #[test]
    fn a_dial_is_set_up_to_its_next_mark_but_never_above_what_is_allowed() {
        let cases = [
            (87.3, Some(100.0), 90.0),
            (99.6, Some(100.0), 100.0),
            (96.0, Some(99.0), 99.0),
            (80.0, Some(100.0), 80.0),
            (96.0, Some(96.0), 96.0),
            (101.0, Some(100.0), 101.0),
            (87.3, None, 90.0),
        ];
        for (wanted, cap, set) in cases {
            let got = dial_setting(celsius(wanted), cap.map(celsius), System::Metric).get::<degree_celsius>();
            assert!((got - set).abs() < 1e-9, "{wanted} °C up to {cap:?} °C gave {got} °C, not {set} °C");
        }
    }

    #[test]
    fn a_dial_in_fahrenheit_has_marks_of_its_own() {
        let got = dial_setting(celsius(87.3), None, System::Inch).get::<degree_fahrenheit>();
        // 87.3 °C is 189.14 °F.
        assert!((got - 190.0).abs() < 1e-9, "{got}");
    }
}
