//! Sizes of screw and tapped hole at the limits of their usual tolerance: least metal on both.

use super::strip::ThreadSizes;
use crate::quantity::Length;
use crate::stock::threads::Thread;
use uom::si::length::{inch, millimeter};

/// Ends of the ranges of diameter over which ISO 965-1 takes one mean, mm.
const RANGES: [f64; 9] = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0];

/// Screw 6g in a hole 6H (metric) or 2A in 2B (unified), both with the least metal.
///
/// **Source**: formulas of ISO 965-1 behind its tables, and of ASME B1.1, both from memory; the tables round them, by which
/// the shear areas differ by up to half a per cent.
pub(super) fn least_metal(thread: &Thread) -> ThreadSizes {
    if thread.series.is_metric() { metric(thread) } else { unified(thread) }
}

fn metric(thread: &Thread) -> ThreadSizes {
    let (nominal, pitch) = (thread.nominal.get::<millimeter>(), thread.pitch.get::<millimeter>());
    let um = |um: f64| Length::new::<millimeter>(um * 1e-3);
    let allowance = um(15.0 + 11.0 * pitch);
    let screw_pitch = 90.0 * pitch.powf(0.4) * mean_of_range(nominal).powf(0.1);
    let screw_major = 180.0 * pitch.powf(2.0 / 3.0) - 3.15 / pitch.sqrt();
    let hole_minor = if pitch < 0.9 { 433.0 * pitch - 190.0 * pitch.powf(1.22) } else { 230.0 * pitch.powf(0.7) };
    ThreadSizes {
        screw_major: thread.nominal - allowance - um(screw_major),
        screw_pitch: thread.pitch_diameter() - allowance - um(screw_pitch),
        hole_pitch: thread.pitch_diameter() + um(1.32 * screw_pitch),
        hole_minor: thread.minor_diameter() + um(hole_minor),
    }
}

/// Geometric mean of the range that a diameter lies in, mm.
fn mean_of_range(nominal: f64) -> f64 {
    let above = RANGES.iter().position(|end| nominal <= *end).unwrap_or(RANGES.len() - 1).max(1);
    (RANGES[above - 1] * RANGES[above]).sqrt()
}

fn unified(thread: &Thread) -> ThreadSizes {
    let (nominal, pitch) = (thread.nominal.get::<inch>(), thread.pitch.get::<inch>());
    let inches = Length::new::<inch>;
    // The length of engagement that the standard reckons with is one diameter.
    let screw_pitch = 0.0015 * nominal.cbrt() + 0.0015 * nominal.sqrt() + 0.015 * pitch.powf(2.0 / 3.0);
    let allowance = inches(0.3 * screw_pitch);
    let coarse = 0.25 * pitch - 0.4 * pitch * pitch;
    let hole_minor = if nominal < 0.25 {
        let small = 0.05 * pitch.powf(2.0 / 3.0) + 0.03 * pitch / nominal - 0.002;
        small.clamp(coarse, 0.394 * pitch)
    } else {
        coarse
    };
    ThreadSizes {
        screw_major: thread.nominal - allowance - inches(0.06 * pitch.powf(2.0 / 3.0)),
        screw_pitch: thread.pitch_diameter() - allowance - inches(screw_pitch),
        hole_pitch: thread.pitch_diameter() + inches(1.3 * screw_pitch),
        hole_minor: thread.minor_diameter() + inches(hole_minor),
    }
}
