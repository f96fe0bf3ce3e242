//! The pictures of a card.

use crate::plan::{Plan, SeatPlan};
use crate::quantity::System;
use crate::report::plot::{self, ForceRequest, PlotError, PlotRequest, ScrewsRequest, SeatRequest};
use crate::report::screws_title;
use minijinja::Value;
use serde::Serialize;

/// A picture and its name.
#[derive(Serialize)]
pub(super) struct Figure {
    svg: Value,
    name: String,
}

/// The seats in section; then of each, clearance against time where something is treated, else force against depth; then the cover's screws.
pub(super) fn all(plan: &Plan<'_>, system: System) -> Result<Vec<Figure>, PlotError> {
    let mut figures = vec![in_section(plan, system)?];
    for seat in &plan.seats {
        figures.push(of_seat(seat, system)?);
    }
    if let Some(fasteners) = &plan.fasteners {
        let title = screws_title(fasteners, system);
        let request = ScrewsRequest { plan: fasteners, title: &title, subtitle: "", system };
        match plot::inline_screws_svg(&request) {
            Ok(svg) => figures.push(figure(svg, title.clone())),
            // The order stands in the steps as well.
            Err(PlotError::ScrewsTooClose { .. }) => {}
            Err(error) => return Err(error),
        }
    }
    Ok(figures)
}

fn in_section(plan: &Plan<'_>, system: System) -> Result<Figure, PlotError> {
    const TITLE: &str = "The seat in section";
    let arrangement = plan.arrangement();
    let svg = plot::inline_seat_svg(&SeatRequest { arrangement: &arrangement, title: TITLE, system })?;
    Ok(figure(svg, TITLE.to_owned()))
}

fn of_seat(seat: &SeatPlan, system: System) -> Result<Figure, PlotError> {
    let name = seat.seat.name();
    if seat.chill.is_none() && seat.warm.is_none() {
        let title = format!("Force against depth, {name} seat");
        let request = ForceRequest { course: &seat.force_course, title: &title, subtitle: "", system };
        let svg = plot::inline_force_svg(&request)?;
        return Ok(figure(svg, title));
    }
    let title = format!("Clearance against time, {name} seat");
    let request = PlotRequest { history: &seat.history, title: &title, subtitle: "", system };
    let svg = plot::inline_svg(&request)?;
    Ok(figure(svg, title))
}

fn figure(svg: String, name: String) -> Figure {
    Figure { svg: Value::from_safe_string(svg), name }
}
