use thiserror::Error;

/// Why a stack has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum StackError {
    /// There is nothing in it.
    #[error("the stack has no dimensions")]
    Empty,
    /// A dimension is not a length with its limits in order.
    #[error(
        "dimension {number} of the stack lies from {least} mm to {most} mm; both must be finite, zero or more, in order"
    )]
    Limits {
        /// Which one, from 1.
        number: usize,
        /// Its lower limit, mm.
        least: f64,
        /// Its upper limit, mm.
        most: f64,
    },
    /// A bearing whose play, ball or grooves are not those of a ball bearing.
    #[error(
        "a play of {play} mm, balls of {ball} mm and grooves of {inner} and {outer} of the ball make no ball bearing"
    )]
    Bearing {
        /// Radial play, mm.
        play: f64,
        /// Ball diameter, mm.
        ball: f64,
        /// Radius of the inner groove over the ball's diameter.
        inner: f64,
        /// Radius of the outer groove over the ball's diameter.
        outer: f64,
    },
}
