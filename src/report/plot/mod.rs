//! Clearance of one seat against time, force against depth, and the scatter of parts, as pictures: SVG or PNG, from the same drawing.
//!
//! Owns the page and everything on it; computes nothing of the fit. Colours are those of [`palette`]. Each line has
//! its name beside it, so there is no legend; each thing that colour tells is told by dash, weight or shape as well.

mod along;
mod axes;
mod bands;
mod column;
mod compose;
mod contour;
mod dash;
mod describe;
mod flags;
mod font;
mod force;
mod frame;
mod layout;
mod lines;
mod log;
mod markers;
pub mod palette;
mod pen;
mod png;
mod readings;
mod scatter;
mod scene;
mod screws;
mod seat;
mod section;
mod stroke;
mod svg;
mod sweep;
#[cfg(test)]
mod tests;
mod units;
mod ways;

pub use section::{SectionPicture, Shown, section_png, section_svg};

use crate::plan::arrangement::Arrangement;
use crate::plan::clearance_history::ClearanceHistory;
use crate::plan::fasteners::FastenersPlan;
use crate::plan::log::PieceLog;
use crate::plan::options::SeatWays;
use crate::plan::push::ForceCourse;
use crate::plan::scatter::SeatScatter;
use crate::quantity::System;
use crate::report::sweep::Step;
use font::Fonts;
use scene::Picture;
use thiserror::Error;

/// What to draw.
#[derive(Clone, Copy, Debug)]
pub struct PlotRequest<'a> {
    /// The curves and moments.
    pub history: &'a ClearanceHistory,
    /// The verdict in a sentence; wrapped to the width of the page.
    pub title: &'a str,
    /// Which joint it is, in smaller type; may be empty.
    pub subtitle: &'a str,
    /// Units of the clearance axis: µm or thousandths of an inch.
    pub system: System,
}

/// Why a history cannot be drawn.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum PlotError {
    /// There is nothing to draw.
    #[error("the history has no points; a plot needs at least one")]
    NoPoints,
    /// Times run backwards.
    #[error("point {point} of the history lies before the point in front of it; put the points in order of time")]
    Disordered {
        /// Number of the point, from 1.
        point: usize,
    },
    /// A number is not finite or absurdly large.
    #[error("{what} is {value} {unit}, but a plot shows at most {largest} {unit} either way")]
    OutOfRange {
        /// Which number.
        what: String,
        /// Its value.
        value: f64,
        /// Largest value either way that is drawn.
        largest: f64,
        /// Unit of both.
        unit: &'static str,
    },
    /// A moment has no place on the time axis.
    #[error("a moment at {at_s} s lies outside the history, which runs from {from_s} s to {to_s} s")]
    MomentOutside {
        /// Time of the moment, s.
        at_s: f64,
        /// Start of the history, s.
        from_s: f64,
        /// End of the history, s.
        to_s: f64,
    },
    /// There are more moments than the page has room for.
    #[error("the history has {count} moments, but a plot has room for {most}; leave some out")]
    TooManyMoments {
        /// Moments given.
        count: usize,
        /// Moments that fit.
        most: usize,
    },
    /// Title and subtitle would fill the page.
    #[error("title and subtitle take {lines} lines, but a plot has room for {most}; shorten them")]
    TitleTooLong {
        /// Lines taken.
        lines: usize,
        /// Lines that fit.
        most: usize,
    },
    /// Screws stand so close, against the size of their pattern, that their numbers would cover each other.
    #[error(
        "the screws stand so close that the picture would be {wanted:.0} px wide, but the most is {largest:.0} px; the order \
         stands in the plan's text"
    )]
    ScrewsTooClose {
        /// Width that would be needed, px.
        wanted: f64,
        /// Largest width, px.
        largest: f64,
    },
    /// The embedded font cannot be read: a damaged build.
    #[error("the font inside this program cannot be read; install the program again")]
    Font,
    /// The drawing library refused.
    #[error("the picture could not be written: {0}")]
    Backend(String),
}

/// The picture as an SVG document with its font inside, a title and a description for screen readers.
///
/// # Errors
/// Any [`PlotError`]: a history that is empty, out of order or not finite, or words that do not fit.
pub fn svg(request: &PlotRequest) -> Result<String, PlotError> {
    svg::svg(&clearance(request, &Fonts::load()?)?)
}

/// The picture as the bytes of a PNG file, two px for each px of the SVG.
///
/// # Errors
/// As [`svg`].
pub fn png(request: &PlotRequest) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&clearance(request, &fonts)?, &fonts)
}

/// The picture as an element of a page that has the fonts of the pictures, for reports that hold several.
pub(crate) fn inline_svg(request: &PlotRequest) -> Result<String, PlotError> {
    svg::inline(&clearance(request, &Fonts::load()?)?)
}

/// As [`inline_svg`], force against depth.
pub(crate) fn inline_force_svg(request: &ForceRequest) -> Result<String, PlotError> {
    svg::inline(&force::picture(request, &Fonts::load()?)?)
}

/// As [`inline_svg`], the order of tightening.
pub(crate) fn inline_screws_svg(request: &ScrewsRequest) -> Result<String, PlotError> {
    svg::inline(&screws::picture(request, &Fonts::load()?)?)
}

/// As [`inline_svg`], the seat in half section.
pub(crate) fn inline_seat_svg(request: &SeatRequest<'_>) -> Result<String, PlotError> {
    svg::inline(&seat::picture(request, &Fonts::load()?)?)
}

/// What to draw of the seats of a job.
#[derive(Clone, Copy, Debug)]
pub(crate) struct SeatRequest<'a> {
    /// Where the parts lie.
    pub(crate) arrangement: &'a Arrangement,
    /// What it is; wrapped to the width of the page.
    pub(crate) title: &'a str,
    /// mm and µm, or inches and thousandths.
    pub(crate) system: System,
}

/// The fonts of the pictures as rules of CSS.
pub(crate) fn font_faces() -> String {
    svg::font_faces()
}

fn clearance(request: &PlotRequest, fonts: &Fonts) -> Result<Picture, PlotError> {
    let scene = compose::compose(request, fonts)?;
    Ok(Picture { scene, title: request.title.to_owned(), description: describe::describe(request) })
}

/// What to draw of the force.
#[derive(Clone, Copy, Debug)]
pub struct ForceRequest<'a> {
    /// Forces of the tightest case.
    pub course: &'a ForceCourse,
    /// The answer in a sentence; wrapped to the width of the page.
    pub title: &'a str,
    /// Which joint it is; may be empty.
    pub subtitle: &'a str,
    /// kN over mm, or lbf over inches.
    pub system: System,
}

/// Force against depth as an SVG document.
///
/// # Errors
/// [`PlotError::OutOfRange`] for a force that no press has, [`PlotError::Font`], [`PlotError::Backend`].
pub fn force_svg(request: &ForceRequest) -> Result<String, PlotError> {
    svg::svg(&force::picture(request, &Fonts::load()?)?)
}

/// Force against depth as the bytes of a PNG file.
///
/// # Errors
/// As [`force_svg`].
pub fn force_png(request: &ForceRequest) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&force::picture(request, &fonts)?, &fonts)
}

/// What to draw of the screws of a cover.
#[derive(Clone, Copy, Debug)]
pub struct ScrewsRequest<'a> {
    /// The screws and their order.
    pub plan: &'a FastenersPlan,
    /// The answer in a sentence; wrapped to the width of the page.
    pub title: &'a str,
    /// Which job it is; may be empty.
    pub subtitle: &'a str,
    /// N·m, or in·lb and ft·lb.
    pub system: System,
}

/// The order of tightening as an SVG document.
///
/// # Errors
/// [`PlotError::ScrewsTooClose`], [`PlotError::NoPoints`], [`PlotError::Font`], [`PlotError::Backend`].
pub fn screws_svg(request: &ScrewsRequest) -> Result<String, PlotError> {
    svg::svg(&screws::picture(request, &Fonts::load()?)?)
}

/// The order of tightening as the bytes of a PNG file.
///
/// # Errors
/// As [`screws_svg`].
pub fn screws_png(request: &ScrewsRequest) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&screws::picture(request, &fonts)?, &fonts)
}

/// What to draw of a scatter.
#[derive(Clone, Copy, Debug)]
pub struct ScatterRequest<'a> {
    /// The scatter of one seat.
    pub scatter: &'a SeatScatter,
    /// The answer in a sentence; wrapped to the width of the page.
    pub title: &'a str,
    /// Which joint it is; may be empty.
    pub subtitle: &'a str,
    /// µm or thousandths of an inch.
    pub system: System,
}

/// Parts over their clearance, and what decides it, as an SVG document.
///
/// # Errors
/// [`PlotError::NoPoints`] where every part has the same clearance, [`PlotError::Font`], [`PlotError::Backend`].
pub fn scatter_svg(request: &ScatterRequest) -> Result<String, PlotError> {
    svg::svg(&scatter::picture(request, &Fonts::load()?)?)
}

/// Parts over their clearance, and what decides it, as the bytes of a PNG file.
///
/// # Errors
/// As [`scatter_svg`].
pub fn scatter_png(request: &ScatterRequest) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&scatter::picture(request, &fonts)?, &fonts)
}

/// What to draw of a log.
#[derive(Clone, Copy, Debug)]
pub struct LogRequest<'a> {
    /// The readings of one piece, with the curves.
    pub piece: &'a PieceLog,
    /// The answer in a sentence; wrapped to the width of the page.
    pub title: &'a str,
    /// Which job it is; may be empty.
    pub subtitle: &'a str,
    /// °C or °F.
    pub system: System,
}

/// Readings over the expected and the fitted curve as an SVG document.
///
/// # Errors
/// [`PlotError::NoPoints`], [`PlotError::Font`], [`PlotError::Backend`].
pub fn log_svg(request: &LogRequest<'_>) -> Result<String, PlotError> {
    svg::svg(&log::picture(request, &Fonts::load()?)?)
}

/// Readings over the expected and the fitted curve as the bytes of a PNG file.
///
/// # Errors
/// As [`log_svg`].
pub fn log_png(request: &LogRequest<'_>) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&log::picture(request, &fonts)?, &fonts)
}

/// What to draw of the ways of a seat.
#[derive(Clone, Copy, Debug)]
pub struct WaysRequest<'a> {
    /// The ways, with their map.
    pub seat: &'a SeatWays,
    /// The ways in words, best first, each with its rank; they stand below the picture.
    pub ways: &'a [String],
    /// The answer in a sentence; wrapped to the width of the page.
    pub title: &'a str,
    /// Which job it is; may be empty.
    pub subtitle: &'a str,
    /// µm over °C, or thousandths of an inch over °F.
    pub system: System,
}

/// The trade-off between chilling and warming, with the ways in it, as an SVG document.
///
/// # Errors
/// [`PlotError::NoPoints`], [`PlotError::TitleTooLong`], [`PlotError::Font`], [`PlotError::Backend`].
pub fn ways_svg(request: &WaysRequest<'_>) -> Result<String, PlotError> {
    svg::svg(&ways::picture(request, &Fonts::load()?)?)
}

/// The same as the bytes of a PNG file.
///
/// # Errors
/// As [`ways_svg`].
pub fn ways_png(request: &WaysRequest<'_>) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&ways::picture(request, &fonts)?, &fonts)
}

/// A key that a sweep goes over.
#[derive(Clone, Debug)]
pub struct SweepKey {
    /// The key of the job.
    pub name: String,
    /// Its values as typed, in the order of the sweep.
    pub values: Vec<String>,
    /// The same as numbers with their common unit; none where they are names, such as classes.
    pub numbers: Option<(Vec<f64>, String)>,
}

/// What to draw of a sweep.
#[derive(Clone, Copy)]
pub struct SweepRequest<'a> {
    /// One key or two; the last one changes from step to step.
    pub keys: &'a [SweepKey],
    /// The plans, one for each value or pair of values.
    pub steps: &'a [Step<'a>],
    /// Which seat of each plan.
    pub seat: usize,
    /// What it is; wrapped to the width of the page.
    pub title: &'a str,
    /// Which job it is; may be empty.
    pub subtitle: &'a str,
    /// µm or thousandths of an inch.
    pub system: System,
}

/// Clearance over the values of a key, or contours of it over those of two, as an SVG document.
///
/// # Errors
/// [`PlotError::NoPoints`], [`PlotError::TitleTooLong`], [`PlotError::Font`], [`PlotError::Backend`].
pub fn sweep_svg(request: &SweepRequest<'_>) -> Result<String, PlotError> {
    svg::svg(&sweep::picture(request, &Fonts::load()?)?)
}

/// The same as the bytes of a PNG file.
///
/// # Errors
/// As [`sweep_svg`].
pub fn sweep_png(request: &SweepRequest<'_>) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&sweep::picture(request, &fonts)?, &fonts)
}
