//! The section of a seat to scale: deformation magnified, stress in bands, pressure along the seat below.

mod deformed;
mod diagram;
mod key;
mod leaders;
mod page;
mod readings;

use super::font::Fonts;
use super::scene::Picture;
use super::{PlotError, png, svg};
use crate::plan::drawing::SectionPlan;
use crate::quantity::System;

/// What to draw of a section.
#[derive(Clone, Copy, Debug)]
pub struct SectionPicture<'a> {
    /// The section.
    pub seat: &'a SectionPlan,
    /// Which job it is; may be empty.
    pub title: &'a str,
    /// What the bands show.
    pub show: Shown,
    /// mm, µm and MPa, or in, thou and psi.
    pub system: System,
}

/// What the bands of a section show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// Equivalent stress after von Mises.
    VonMises,
    /// Hoop stress.
    Hoop,
    /// Radial displacement by the fit, outward.
    RadialDisplacement,
}

/// The section as an SVG document.
///
/// # Errors
/// [`PlotError::TitleTooLong`], [`PlotError::Font`], [`PlotError::Backend`].
pub fn section_svg(request: &SectionPicture) -> Result<String, PlotError> {
    svg::svg(&picture(request, &Fonts::load()?)?)
}

/// The section as the bytes of a PNG file.
///
/// # Errors
/// As [`section_svg`].
pub fn section_png(request: &SectionPicture) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    png::png(&picture(request, &fonts)?, &fonts)
}

fn picture(request: &SectionPicture, fonts: &Fonts) -> Result<Picture, PlotError> {
    let title = readings::title(request);
    let scene = page::compose(request, &title, fonts)?;
    Ok(Picture { scene, title, description: readings::description(request) })
}
