//! A scene onto a plotters backend: shapes here, letters as the format asks.

use super::PlotError;
use super::palette::Colour;
use super::scene::{Point, Scene, Shape, Text};
use plotters::prelude::DrawingBackend;
use plotters::style::{Color, RGBColor, ShapeStyle};

/// Paints `scene`, one px of it becoming `scale` px of the backend; `letters` writes a text.
pub(super) fn paint<B: DrawingBackend>(
    scene: &Scene,
    backend: &mut B,
    scale: f64,
    letters: impl Fn(&mut B, &Text) -> Result<(), PlotError>,
) -> Result<(), PlotError> {
    for shape in &scene.shapes {
        match shape {
            Shape::Fill { outline, colour } => {
                let style = ShapeStyle { color: rgb(*colour).to_rgba(), filled: true, stroke_width: 0 };
                backend.fill_polygon(whole(outline, scale), &style).map_err(failed)?;
            }
            Shape::Line { points, width, colour } => {
                let stroke_width = (width * scale).round().max(1.0) as u32;
                let style = ShapeStyle { color: rgb(*colour).to_rgba(), filled: false, stroke_width };
                backend.draw_path(whole(points, scale), &style).map_err(failed)?;
            }
            Shape::Text(text) => letters(backend, text)?,
        }
    }
    backend.present().map_err(failed)
}

/// Whole px. Points that fall together are merged: the bitmap backend divides by the length of each piece.
fn whole(points: &[Point], scale: f64) -> Vec<(i32, i32)> {
    let mut whole: Vec<(i32, i32)> =
        points.iter().map(|p| ((p.x * scale).round() as i32, (p.y * scale).round() as i32)).collect();
    whole.dedup();
    whole
}

pub(super) fn rgb(colour: Colour) -> RGBColor {
    RGBColor(colour.red, colour.green, colour.blue)
}

pub(super) fn failed(error: impl std::error::Error) -> PlotError {
    PlotError::Backend(error.to_string())
}
