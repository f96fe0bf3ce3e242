//! A plan as text, JSON, CSV, a plot or a card. Nothing is computed here; quantities are rounded here, once.

pub mod batch;
#[cfg(feature = "cli")]
pub mod card;
pub mod chart;
pub mod compare;
pub mod csv;
pub mod deck;
pub mod exercise;
pub mod fits;
pub mod json;
pub mod log;
pub mod options;
#[cfg(feature = "cli")]
pub mod plot;
pub mod refusal;
pub(crate) mod results;
pub mod scatter;
pub mod schemas;
pub mod section;
pub(crate) mod sheet;
pub mod stock;
pub mod sweep;
pub mod text;
pub(crate) mod words;
pub mod working;

use crate::plan::fasteners::FastenersPlan;
use crate::plan::{Plan, SeatPlan};
use crate::quantity::{System, Toward, show_torque};

/// How a text is set.
///
/// A [`System`] alone stands for the usual width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Layout {
    /// Units of the numbers.
    pub system: System,
    /// Widest line of prose, columns; a table is as wide as it is, and a word that is longer stands on a line of its own.
    pub columns: usize,
}

impl Layout {
    /// Columns of a text that goes into a file or to another program.
    pub const USUAL_COLUMNS: usize = 100;
}

impl From<System> for Layout {
    fn from(system: System) -> Self {
        Self { system, columns: Self::USUAL_COLUMNS }
    }
}

/// The title of a seat's picture: the verdict and the answer, in the same words as everywhere.
pub fn plot_title(plan: &Plan<'_>, seat: &SeatPlan, system: System) -> String {
    let verdict = seat.verdict.words();
    let (first, rest) = verdict.split_at(verdict.chars().next().map_or(0, char::len_utf8));
    format!("{}{rest}: {}", first.to_uppercase(), words::sentence(&plan.answer(seat), system))
}

/// The title of the picture of the screws: how many of each, and their torque.
pub fn screws_title(plan: &FastenersPlan, system: System) -> String {
    let each: Vec<String> = plan
        .groups
        .iter()
        .map(|group| {
            let torque = show_torque(group.torque, system, Toward::Nearest);
            format!("{} × {} to {torque}", group.count, group.thread)
        })
        .collect();
    format!("Cover screws: {}", each.join(", "))
}

/// The title of a picture of a seat's scatter: what share drops in.
pub fn scatter_title(seat: &crate::plan::scatter::SeatScatter, system: System) -> String {
    scatter::answer(seat, system)
}
