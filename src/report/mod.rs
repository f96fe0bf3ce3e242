//! A plan as text, JSON, CSV or a plot. Nothing is computed here; quantities are rounded here, once.

pub mod batch;
pub mod chart;
pub mod compare;
pub mod csv;
pub mod deck;
pub mod fits;
pub mod json;
pub mod options;
#[cfg(feature = "cli")]
pub mod plot;
pub(crate) mod results;
pub mod section;
pub mod stock;
pub mod sweep;
pub mod text;
pub(crate) mod words;

use crate::plan::{Plan, SeatPlan};
use crate::quantity::System;

/// The title of a seat's picture: the verdict and the answer, in the same words as everywhere.
pub fn plot_title(plan: &Plan<'_>, seat: &SeatPlan, system: System) -> String {
    let verdict = seat.verdict.words();
    let (first, rest) = verdict.split_at(verdict.chars().next().map_or(0, char::len_utf8));
    format!("{}{rest}: {}", first.to_uppercase(), words::sentence(&plan.answer(seat), system))
}
