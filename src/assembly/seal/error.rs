use thiserror::Error;

/// Why a question about a shaft seal has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SealError {
    /// A size that must be above zero, and finite, is not.
    #[error("the {what} is {value} mm; it must be above zero")]
    Size {
        /// What it is of.
        what: &'static str,
        /// The size, mm.
        value: f64,
    },
    /// Two sizes do not stand in the order that a seal has.
    #[error("a seal of {inside} mm inside and {outside} mm outside has no room for its section")]
    Order {
        /// Inside diameter, mm.
        inside: f64,
        /// Outside diameter, mm.
        outside: f64,
    },
}
