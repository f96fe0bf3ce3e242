use crate::mechanics::MechanicsError;
use thiserror::Error;

/// Why a question about screws has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ScrewsError {
    /// A number lies outside the range in which it has a meaning.
    #[error("the {what} is {value} {unit}; it must be from {from} to {to} {unit}")]
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
    /// The balance on the thread has no answer.
    #[error(transparent)]
    Mechanics(#[from] MechanicsError),
}

/// A number that must be finite and lie in a range.
pub(super) fn within(
    what: &'static str,
    value: f64,
    (from, to): (f64, f64),
    unit: &'static str,
) -> Result<f64, ScrewsError> {
    if (from..=to).contains(&value) { Ok(value) } else { Err(ScrewsError::OutOfRange { what, value, from, to, unit }) }
}
