//! The picture as SVG: it stands alone, with the font inside and words for a screen reader.

use super::PlotError;
use super::font::{BOLD, FAMILY, REGULAR, Weight};
use super::palette::{Colour, PAPER};
use super::scene::{Picture, Point, Scene, Shape, Text};
use base64::{Engine, engine::general_purpose::STANDARD};
use plotters::prelude::{DrawingBackend, IntoFont, SVGBackend};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{Color, FontStyle, RGBColor, ShapeStyle, TextStyle};

/// The backend writes whole numbers, so it is given a page ten times as large: tenths of a px stay visible.
const SCALE: f64 = 10.0;
/// The backend writes the type size divided by this (plotters-svg 0.3.7, `draw_text`).
const SIZE_PER_EM: f64 = 1.24;
/// The backend hangs a text anchored at its top this far above the baseline, in em (same place).
const BASELINE_BELOW_TOP: f64 = 0.76;

/// Draws the picture as an SVG document.
pub(super) fn svg(picture: &Picture) -> Result<String, PlotError> {
    Ok(format!("{}{}", head(picture), body(picture)?))
}

/// Draws the picture as an element of a page that has the fonts of [`font_faces`].
pub(super) fn inline(picture: &Picture) -> Result<String, PlotError> {
    let Scene { width, height, .. } = picture.scene;
    let view = format!("0 0 {} {}", width * SCALE, (height * SCALE).ceil());
    let (title, description) = (escaped(&picture.title), escaped(&picture.description));
    Ok(format!(
        "<svg role=\"img\" viewBox=\"{view}\"><title>{title}</title><desc>{description}</desc>\n{}",
        body(picture)?
    ))
}

/// What is drawn, and the end of the document.
fn body(picture: &Picture) -> Result<String, PlotError> {
    let scene = &picture.scene;
    let mut drawn = String::new();
    {
        let size = ((scene.width * SCALE) as u32, (scene.height * SCALE).ceil() as u32);
        let mut backend = SVGBackend::with_string(&mut drawn, size);
        paint(scene, &mut backend)?;
    }
    let body = drawn.split_once(">\n").ok_or_else(|| PlotError::Backend("no SVG came back".to_owned()))?.1;
    Ok(body.to_owned())
}

fn paint(scene: &Scene, backend: &mut SVGBackend) -> Result<(), PlotError> {
    let size = (whole(scene.width), whole(scene.height));
    backend.draw_rect((0, 0), size, &style(PAPER, 0), true).map_err(failed)?;
    for shape in &scene.shapes {
        match shape {
            Shape::Fill { outline, colour } => {
                backend.fill_polygon(coordinates(outline), &style(*colour, 0)).map_err(failed)?;
            }
            Shape::Line { points, width, colour } => {
                let style = style(*colour, whole(*width).unsigned_abs());
                backend.draw_path(coordinates(points), &style).map_err(failed)?;
            }
            Shape::Text(text) => write_text(backend, text)?,
        }
    }
    backend.present().map_err(failed)
}

fn style(colour: Colour, stroke_width: u32) -> ShapeStyle {
    ShapeStyle { color: rgb(colour).to_rgba(), filled: stroke_width == 0, stroke_width }
}

fn whole(px: f64) -> i32 {
    (px * SCALE).round() as i32
}

fn coordinates(points: &[Point]) -> Vec<(i32, i32)> {
    points.iter().map(|p| (whole(p.x), whole(p.y))).collect()
}

pub(super) fn rgb(colour: Colour) -> RGBColor {
    RGBColor(colour.red, colour.green, colour.blue)
}

pub(super) fn failed(error: impl std::error::Error) -> PlotError {
    PlotError::Backend(error.to_string())
}

fn write_text(backend: &mut SVGBackend, text: &Text) -> Result<(), PlotError> {
    let weight = if text.weight == Weight::Bold { FontStyle::Bold } else { FontStyle::Normal };
    let family = format!("{FAMILY}, sans-serif");
    let font = (family.as_str(), text.size * SCALE * SIZE_PER_EM).into_font().style(weight);
    let colour = rgb(text.colour);
    let style = TextStyle::from(font).color(&colour).pos(Pos::new(HPos::Left, VPos::Top));
    let top = text.start.y - BASELINE_BELOW_TOP * text.size;
    let place = (whole(text.start.x), whole(top));
    backend.draw_text(&text.text, &style, place).map_err(failed)
}

/// The opening of the document in place of the backend's own.
fn head(picture: &Picture) -> String {
    let Scene { width, height, .. } = picture.scene;
    let view = format!("0 0 {} {}", width * SCALE, (height * SCALE).ceil());
    let title = escaped(&picture.title);
    let description = escaped(&picture.description);
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{width}\" height=\"{height}\" viewBox=\"{view}\">\n\
         <title>{title}</title>\n<desc>{description}</desc>\n<style>\n{}</style>\n",
        font_faces()
    )
}

/// The embedded fonts as rules of CSS.
pub(super) fn font_faces() -> String {
    let fonts = [(REGULAR, 400), (BOLD, 700)].map(|(bytes, weight)| {
        let data = STANDARD.encode(bytes);
        format!(
            "@font-face{{font-family:\"{FAMILY}\";font-weight:{weight};\
             src:url(data:font/otf;base64,{data}) format(\"opentype\")}}\n"
        )
    });
    fonts.concat()
}

/// Text as XML takes it; control characters, which XML forbids, become spaces.
fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '&' => escaped.push_str("&amp;"),
            c if c.is_control() || matches!(c, '\u{FFFE}' | '\u{FFFF}') => escaped.push(' '),
            c => escaped.push(c),
        }
    }
    escaped
}
