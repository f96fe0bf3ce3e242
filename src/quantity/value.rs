//! Numbers that a computation cannot take, refused with their range.

use thiserror::Error;

/// Why a number was refused.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ValueError {
    /// A number that must be finite and positive is not.
    #[error("the {what} is {}; it must be above zero", with_unit(*value, unit))]
    NotPositive {
        /// What the number means.
        what: &'static str,
        /// The number.
        value: f64,
        /// Its unit.
        unit: &'static str,
    },
    /// A number that must be zero or more, and finite, is not.
    #[error("the {what} is {}; it must be zero or more", with_unit(*value, unit))]
    Negative {
        /// What the number means.
        what: &'static str,
        /// The number.
        value: f64,
        /// Its unit.
        unit: &'static str,
    },
    /// A number lies outside the range in which it has a meaning or a formula holds.
    #[error("the {what} is {}; it must be from {} to {}", with_unit(*value, unit), figures(*from), with_unit(*to, unit))]
    OutOfRange {
        /// What the number means.
        what: &'static str,
        /// The number.
        value: f64,
        /// Lowest value allowed.
        from: f64,
        /// Highest value allowed.
        to: f64,
        /// Unit of the three numbers.
        unit: &'static str,
    },
}

/// `value` when it is finite and above zero.
pub(crate) fn positive(what: &'static str, value: f64, unit: &'static str) -> Result<f64, ValueError> {
    if value.is_finite() && value > 0.0 { Ok(value) } else { Err(ValueError::NotPositive { what, value, unit }) }
}

/// `value` when it is finite and not negative.
pub(crate) fn not_negative(what: &'static str, value: f64, unit: &'static str) -> Result<f64, ValueError> {
    if value.is_finite() && value >= 0.0 { Ok(value) } else { Err(ValueError::Negative { what, value, unit }) }
}

/// `value` when it lies in `from..=to`.
pub(crate) fn within(
    what: &'static str,
    value: f64,
    (from, to): (f64, f64),
    unit: &'static str,
) -> Result<f64, ValueError> {
    if value >= from && value <= to { Ok(value) } else { Err(ValueError::OutOfRange { what, value, from, to, unit }) }
}

fn with_unit(value: f64, unit: &str) -> String {
    if unit.is_empty() { figures(value) } else { format!("{} {unit}", figures(value)) }
}

/// A number with the figures that were meant: a size turned from one unit to another ends in a tail of digits.
fn figures(value: f64) -> String {
    format!("{value:.9e}").parse::<f64>().unwrap_or(value).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_refused_number_is_written_as_it_was_meant_beside_its_range() {
        let refused = within("bore", 0.1 + 0.2, (1.0, 500.0), "mm").unwrap_err();
        assert_eq!(refused.to_string(), "the bore is 0.3 mm; it must be from 1 to 500 mm");
        let refused = within("share", 1.5, (0.0, 1.0), "").unwrap_err();
        assert_eq!(refused.to_string(), "the share is 1.5; it must be from 0 to 1");
        assert_eq!(positive("mass", 0.0, "kg").unwrap_err().to_string(), "the mass is 0 kg; it must be above zero");
        assert_eq!(
            not_negative("hold", -1.0, "s").unwrap_err().to_string(),
            "the hold is -1 s; it must be zero or more"
        );
    }

    #[test]
    fn what_is_no_number_or_has_no_end_is_refused_everywhere() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(positive("x", value, "").is_err());
            assert!(not_negative("x", value, "").is_err());
            assert!(within("x", value, (-1e300, 1e300), "").is_err());
        }
        assert_eq!(within("x", 1.0, (0.0, 1.0), ""), Ok(1.0));
        assert_eq!(not_negative("x", 0.0, ""), Ok(0.0));
        assert!(positive("x", 0.0, "").is_err());
    }
}
