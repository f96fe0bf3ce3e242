//! The plan as one JSON object, `seatwise.plan/1`, and the schema that describes it.

mod basis;
mod document;
mod fasteners;
mod from_plan;
mod inspection;
mod push;
mod range;
mod scatter;
mod seal;
mod section_heat;
mod stack;
pub(in crate::report) mod units;

pub use document::{JobDocument, PlanDocument};

use crate::plan::Plan;
use crate::plan::seal::SealAlonePlan;

/// The plan as JSON text, ending in a line feed.
///
/// Numbers are rounded to six significant figures: finer than any input, and the same on every machine.
///
/// # Errors
/// Only if a number were not finite, which a plan never holds.
pub fn plan(plan: &Plan<'_>) -> Result<String, serde_json::Error> {
    pretty(&from_plan::document(plan))
}

/// The plan of a shaft seal alone as JSON text, `seatwise.seal/1`, ending in a line feed.
///
/// # Errors
/// Only if a number were not finite, which a plan never holds.
pub fn seal_alone(plan: &SealAlonePlan<'_>) -> Result<String, serde_json::Error> {
    pretty(&from_plan::seal_alone(plan))
}

/// The JSON Schema of [`plan`]'s object, ending in a line feed.
///
/// # Errors
/// None in practice: the schema is made from types.
pub fn schema() -> Result<String, serde_json::Error> {
    pretty(&schemars::schema_for!(PlanDocument))
}

/// The JSON Schema of [`seal_alone`]'s object, ending in a line feed.
///
/// # Errors
/// None in practice: the schema is made from types.
pub fn seal_schema() -> Result<String, serde_json::Error> {
    pretty(&schemars::schema_for!(seal::SealAloneDocument))
}

pub(crate) fn pretty<T: serde::Serialize>(value: &T) -> Result<String, serde_json::Error> {
    serde_json::to_string_pretty(value).map(|text| text + "\n")
}

/// Below this a value is the noise of a difference of sizes: a billionth of a micrometre, a second or a newton.
const NOISE: f64 = 1e-9;

/// Six significant figures.
pub(crate) fn figures(value: f64) -> f64 {
    if value.abs() < NOISE {
        return 0.0;
    }
    let digits = 5 - value.abs().log10().floor() as i32;
    let scale = 10f64.powi(digits.abs());
    if digits >= 0 { (value * scale).round() / scale } else { (value / scale).round() * scale }
}

#[cfg(test)]
mod tests {
    use super::figures;

    #[test]
    fn the_noise_of_a_difference_of_inch_sizes_is_zero() {
        // 1-1/8 in with a limit of 0, in micrometres.
        for noise in [3.469_45e-12, -8.9e-11] {
            assert!(figures(noise).abs() < f64::MIN_POSITIVE, "{noise}");
        }
    }

    #[test]
    fn six_figures_are_kept_of_large_and_small_numbers() {
        let cases =
            [(12.345_678_9, 12.3457), (-0.000_123_456_78, -0.000_123_457), (206_000.4, 206_000.0), (1e-15, 0.0)];
        for (value, kept) in cases {
            assert!((figures(value) - kept).abs() <= 1e-9 * f64::abs(kept), "{value} gave {}", figures(value));
        }
    }
}
