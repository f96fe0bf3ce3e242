//! The working of a plan, for a class or a reviewer: each result as a formula, with the numbers put in, and its source.
//!
//! The numbers are those of the plan. Nothing is computed here; tests put the values into the formulas and compare.

mod fit;
mod formula;
mod heat;
#[cfg(feature = "cli")]
mod html;
mod model;
mod play;
mod press;
mod seat;
mod service;
mod text;

#[cfg(feature = "cli")]
pub(super) use html::{escaped, html_result, math_of_symbol, mathml_of_value, page};
pub(super) use seat::{Seat, Which, in_words, line, of, symbol, v};
pub(super) use text::{in_text, markdown_result, shown, text_result};

pub use formula::{Formula, Symbol};
#[cfg(feature = "cli")]
pub use html::html;
pub use model::{Line, Part, Value, Way, Working};
pub use text::{markdown, text};

use crate::plan::{Level, Plan};
use crate::quantity::System;
use crate::report::words;

/// What every working says.
pub const DEFER: &str = "A calculation only: the maker's manual, local codes and licensed practice go before it.";

/// How a working is to be read.
pub const LEGEND: &str = "Every number is the plan's own, computed with all its figures; what is printed is rounded, so that the \
                          last figure of a sum done by hand may differ by one.";

/// The working of a plan; the words of its answer and cautions are in `system`.
pub fn working(plan: &Plan<'_>, system: System) -> Working {
    let heading = &plan.job.heading;
    let revision = heading.revision.as_ref().map(|revision| format!("revision {revision}"));
    let title = [Some(heading.title.clone()).filter(|title| !title.is_empty()), heading.reference.clone(), revision];
    let mut parts: Vec<Part> = Vec::new();
    for (number, plan_of_seat) in plan.seats.iter().enumerate() {
        let seat = Seat { plan, seat: plan_of_seat, number, system };
        let name = seat.capital();
        let mut add = |what: &str, lines: Vec<Line>| {
            if !lines.is_empty() {
                parts.push(Part { heading: format!("{name} seat: {what}"), lines });
            }
        };
        add("fit at 20 °C", fit::lines(seat));
        add("temperatures and clearance, tightest case", heat::lines(seat));
        add("pressing at the temperature of the shop, tightest case", press::lines(seat));
        add("service", service::lines(seat));
    }
    let play = play::lines(plan);
    if !play.is_empty() {
        parts.push(Part { heading: "Internal clearance of the bearing".to_owned(), lines: play });
    }
    Working {
        title: title.into_iter().flatten().collect::<Vec<_>>().join(", "),
        answer: plan.seats.iter().map(|seat| super::plot_title(plan, seat, system)).collect(),
        parts,
        cautions: cautions(plan, system),
    }
}

/// Dangers and warnings: what is left of them stands in the plan.
fn cautions(plan: &Plan<'_>, system: System) -> Vec<String> {
    let grave = plan.cautions.iter().filter(|caution| matches!(caution.level(), Level::Danger | Level::Warning));
    grave
        .map(|caution| format!("{}: {}", caution.signal().to_uppercase(), words::sentence(caution.sentence(), system)))
        .collect()
}
