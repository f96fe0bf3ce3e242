//! A job card: one page that stands alone, to print and take to the bench, with the numbers behind it on the page after.

mod figures;
mod palette;
mod view;

use super::plot::PlotError;
use crate::plan::Plan;
use crate::plan::seal::SealAlonePlan;
use crate::quantity::System;
use minijinja::{Environment, context};
use thiserror::Error;
use view::View;

/// The paper that a card is printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216 A4.
    A4,
    /// US letter.
    Letter,
}

impl Paper {
    /// The name that CSS has for it.
    fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "letter",
        }
    }
}

/// How a card is made.
#[derive(Clone, Copy, Debug)]
pub struct CardRequest<'a> {
    /// Units of every number.
    pub system: System,
    /// Paper to print on.
    pub paper: Paper,
    /// The date on it in place of the job's; without either a blank is left to write in.
    pub date: Option<&'a str>,
}

/// Why a card cannot be made.
#[derive(Debug, Error)]
pub enum CardError {
    /// A picture cannot be drawn.
    #[error(transparent)]
    Plot(#[from] PlotError),
    /// The template, which is part of the program, is faulty.
    #[error("the page could not be set: {0}")]
    Template(#[from] minijinja::Error),
}

/// The card of a job: no script, nothing fetched, readable in black and white. The same plan gives the same bytes.
///
/// # Errors
/// [`CardError::Plot`] for a picture that has no room for its words.
pub fn html(plan: &Plan<'_>, request: &CardRequest<'_>) -> Result<String, CardError> {
    render(&View::of_plan(plan, request)?, request)
}

/// The card of a shaft seal alone.
///
/// # Errors
/// None in practice: it has no pictures.
pub fn seal_alone(plan: &SealAlonePlan<'_>, request: &CardRequest<'_>) -> Result<String, CardError> {
    render(&View::of_seal(plan, request), request)
}

/// The named colours as custom properties, for light and dark screens and for paper: every page of the program has these.
pub(super) fn colours() -> String {
    let (light, dark) = (palette::properties(&palette::LIGHT), palette::properties(&palette::DARK));
    format!(":root{{{light}}}@media screen and (prefers-color-scheme:dark){{:root{{{dark}}}}}")
}

fn render(view: &View, request: &CardRequest<'_>) -> Result<String, CardError> {
    let mut environment = Environment::new();
    environment.set_trim_blocks(true);
    environment.set_lstrip_blocks(true);
    // A name that ends in .html has its values escaped.
    environment.add_template("card.html", include_str!("card.html"))?;
    let safe = |text: String| minijinja::Value::from_safe_string(text);
    let style = context! {
        rules => safe(include_str!("card.css").to_owned()),
        fonts => safe(super::plot::font_faces()),
        colours => safe(colours()),
        panels => safe(palette::panels()),
        paper => request.paper.name(),
    };
    let version = env!("CARGO_PKG_VERSION");
    Ok(environment.get_template("card.html")?.render(context! { style, version, card => view })?)
}
