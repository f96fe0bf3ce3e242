use crate::quantity::ValueError;
use crate::section::SectionError;
use thiserror::Error;

/// Why a section has no temperatures.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum HeatError {
    /// A number that has no meaning there.
    #[error(transparent)]
    Value(#[from] ValueError),
    /// A section that cannot be made, or a list of the wrong length.
    #[error(transparent)]
    Section(#[from] SectionError),
    /// A table that cannot be read.
    #[error("row {row} of the table must be finite and at a higher temperature than the row before it")]
    Disordered {
        /// Row number, from 1.
        row: usize,
    },
    /// A part, or the surface of one, left the temperatures that a table covers.
    #[error(
        "the {part} reaches {reached_c:.2} °C and its {property} is known from {from_c:.2} to {to_c:.2} °C; give a table \
         that covers it"
    )]
    OutsideTable {
        /// Which part.
        part: &'static str,
        /// Which table.
        property: &'static str,
        /// Temperature reached, °C.
        reached_c: f64,
        /// First temperature of the table, °C.
        from_c: f64,
        /// Last temperature of the table, °C.
        to_c: f64,
    },
    /// A time or a part that the history does not hold.
    #[error("the {what} is {value} {unit}; this history holds {from} to {to} {unit}")]
    NotHeld {
        /// What was asked for.
        what: &'static str,
        /// The value asked for.
        value: f64,
        /// First value held.
        from: f64,
        /// Last value held.
        to: f64,
        /// Unit of the three.
        unit: &'static str,
    },
    /// The steps became too small or too many: a law that jumps, or numbers near the limits of arithmetic.
    #[error("the temperatures cannot be followed beyond {time_s:.6} s of stage {stage}; check its films and tables")]
    NotFollowed {
        /// Stage, from 1.
        stage: usize,
        /// Time since the stage began, s.
        time_s: f64,
    },
}
