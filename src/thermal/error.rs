use super::ICE_POINT_K;
use crate::quantity::ValueError;
use crate::stock::CurveError;
use thiserror::Error;

/// Why a thermal question has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ThermalError {
    /// A property is asked for at a temperature that its table does not cover.
    #[error("the {property} of the material is not known there: {source}")]
    Property {
        /// Which property.
        property: &'static str,
        /// What the table says.
        source: CurveError,
    },
    /// A number that cannot be taken.
    #[error(transparent)]
    Value(#[from] ValueError),
    /// One size must exceed another and does not.
    #[error("the {larger} is {larger_mm} mm but must exceed the {smaller}, {smaller_mm} mm; check the two sizes")]
    NotLarger {
        /// Name of the size that must be larger.
        larger: &'static str,
        /// That size, mm.
        larger_mm: f64,
        /// Name of the size that must be smaller.
        smaller: &'static str,
        /// That size, mm.
        smaller_mm: f64,
    },
    /// No temperature of the table gives the expansion asked for.
    #[error(
        "a change of size of {asked_um_per_mm:.3} um per mm is not reached between {:.1} °C and {:.1} °C, where the \
         table runs from {lowest_um_per_mm:.3} to {highest_um_per_mm:.3} um per mm",
        .from_k - ICE_POINT_K, .to_k - ICE_POINT_K
    )]
    StrainNotReached {
        /// Change of size asked for, per mille of the size (µm per mm).
        asked_um_per_mm: f64,
        /// Smallest change in the table.
        lowest_um_per_mm: f64,
        /// Largest change in the table.
        highest_um_per_mm: f64,
        /// First temperature of the table, K.
        from_k: f64,
        /// Last temperature of the table, K.
        to_k: f64,
    },
    /// The body never comes to the temperature asked for in these surroundings.
    #[error(
        "{:.1} °C is not reached: in these surroundings the part goes from {:.1} °C to {:.1} °C at most; choose other \
         surroundings or a temperature between these two",
        .target_k - ICE_POINT_K, .start_k - ICE_POINT_K, .at_most_k - ICE_POINT_K
    )]
    NotReachable {
        /// Temperature asked for, K.
        target_k: f64,
        /// Temperature at the start of the stage, K.
        start_k: f64,
        /// Temperature that the part approaches, K.
        at_most_k: f64,
    },
    /// The body does come to the temperature, but not in the longest time allowed.
    #[error(
        "{:.1} °C is not reached within {longest_s:.0} s: the part is at {:.1} °C by then; allow more time",
        .target_k - ICE_POINT_K, .reached_k - ICE_POINT_K
    )]
    TooSlow {
        /// Temperature asked for, K.
        target_k: f64,
        /// Longest time allowed, s.
        longest_s: f64,
        /// Temperature at that time, K.
        reached_k: f64,
    },
    /// A time before the start or after the end of a history.
    #[error("{asked_s:.1} s lies outside the history, which runs from 0 s to {end_s:.1} s")]
    TimeOutside {
        /// Time asked for, s.
        asked_s: f64,
        /// Length of the history, s.
        end_s: f64,
    },
    /// The step control of the solver gave up.
    #[error("the heat balance could not be followed beyond {reached_s:.3} s; check mass, area and film coefficient")]
    NotFollowed {
        /// Time up to which it could be followed, s.
        reached_s: f64,
    },
}
