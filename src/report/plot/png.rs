//! The picture as PNG, two px for each px of the drawing, so that it is sharp on a phone and in print.
//!
//! Every shape is a set of closed outlines, and a px takes the share of the colour that the outlines cover of it:
//! plotters 0.3.7 by itself rounds a bitmap's corners to whole px, so curves would be rough. Letters are the font's
//! own outlines: its `ab_glyph` feature sets each letter without its left bearing and takes the line height for the
//! type size, so lines would differ from the SVG in spacing and in width.

use super::PlotError;
use super::font::Fonts;
use super::palette::Colour;
use super::scene::{Picture, Point, Scene, Shape, Text, at};
use super::stroke;
use super::svg::{failed, rgb};
use ab_glyph::{Font, Glyph, PxScale, ScaleFont};
use ab_glyph_rasterizer::{Rasterizer, point};
use plotters::prelude::{BitMapBackend, DrawingBackend};
use plotters::style::Color;

/// Px of the file for each px of the drawing.
const SCALE: f64 = 2.0;
const BYTES_PER_PX: usize = 3;

/// Draws the picture as the bytes of a PNG file.
pub(super) fn png(picture: &Picture, fonts: &Fonts) -> Result<Vec<u8>, PlotError> {
    let scene = &picture.scene;
    let size = ((scene.width * SCALE).ceil() as u32, (scene.height * SCALE).ceil() as u32);
    let mut pixels = vec![0xFF; size.0 as usize * size.1 as usize * BYTES_PER_PX];
    {
        let mut canvas = Canvas { backend: BitMapBackend::with_buffer(&mut pixels, size), fonts };
        canvas.paint(scene)?;
    }
    encoded(&pixels, size)
}

struct Canvas<'a> {
    backend: BitMapBackend<'a>,
    fonts: &'a Fonts,
}

impl Canvas<'_> {
    fn paint(&mut self, scene: &Scene) -> Result<(), PlotError> {
        for shape in &scene.shapes {
            match shape {
                Shape::Fill { outline, colour } => self.cover(&[scaled(outline)], *colour)?,
                Shape::Line { points, width, colour } => {
                    self.cover(&stroke::outlines(&scaled(points), width * SCALE), *colour)?;
                }
                Shape::Text(text) => self.write(text)?,
            }
        }
        self.backend.present().map_err(failed)
    }

    /// Colours each px by the share of it that lies inside `outlines`, which all turn the same way.
    fn cover(&mut self, outlines: &[Vec<Point>], colour: Colour) -> Result<(), PlotError> {
        let corners = || outlines.iter().flatten();
        let least = |pick: fn(&Point) -> f64| corners().map(pick).fold(f64::INFINITY, f64::min).floor() - 1.0;
        let most = |pick: fn(&Point) -> f64| corners().map(pick).fold(f64::NEG_INFINITY, f64::max).ceil() + 2.0;
        if corners().next().is_none() {
            return Ok(());
        }
        let (left, top) = (least(|p| p.x), least(|p| p.y));
        let size = (most(|p| p.x) - left, most(|p| p.y) - top);
        let mut area = Rasterizer::new(size.0 as usize, size.1 as usize);
        let place = |p: &Point| point((p.x - left) as f32, (p.y - top) as f32);
        for outline in outlines {
            for (from, to) in outline.iter().zip(outline.iter().cycle().skip(1)) {
                area.draw_line(place(from), place(to));
            }
        }
        let mut outcome = Ok(());
        area.for_each_pixel_2d(|x, y, share| {
            if outcome.is_ok() {
                outcome = self.blend((left as i32 + x as i32, top as i32 + y as i32), share, colour);
            }
        });
        outcome
    }

    fn blend(&mut self, place: (i32, i32), share: f32, colour: Colour) -> Result<(), PlotError> {
        if share <= 0.0 {
            return Ok(());
        }
        let colour = rgb(colour).mix(f64::from(share.min(1.0))).to_backend_color();
        self.backend.draw_pixel(place, colour).map_err(failed)
    }

    fn write(&mut self, text: &Text) -> Result<(), PlotError> {
        let font = self.fonts.get(text.weight);
        let em = (text.size * SCALE) as f32;
        // ab_glyph counts the size of a font as its line height.
        let height = PxScale::from(em * font.height_unscaled() / font.units_per_em().unwrap_or(1.0));
        let set = font.as_scaled(height);
        let (mut x, y) = ((text.start.x * SCALE) as f32, (text.start.y * SCALE) as f32);
        for letter in text.text.chars() {
            let id = font.glyph_id(letter);
            self.letter(font, id.with_scale_and_position(height, ab_glyph::point(x, y)), text.colour)?;
            x += set.h_advance(id);
        }
        Ok(())
    }

    fn letter(&mut self, font: &impl Font, glyph: Glyph, colour: Colour) -> Result<(), PlotError> {
        let Some(outline) = font.outline_glyph(glyph) else { return Ok(()) };
        let corner = outline.px_bounds().min;
        let mut outcome = Ok(());
        outline.draw(|x, y, share| {
            if outcome.is_ok() {
                outcome = self.blend((corner.x as i32 + x as i32, corner.y as i32 + y as i32), share, colour);
            }
        });
        outcome
    }
}

fn scaled(points: &[Point]) -> Vec<Point> {
    points.iter().map(|p| at(p.x * SCALE, p.y * SCALE)).collect()
}

fn encoded(pixels: &[u8], (width, height): (u32, u32)) -> Result<Vec<u8>, PlotError> {
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, width, height);
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    // In flat colours no filter is both quicker and a sixth smaller than the adaptive choice (tried on the examples).
    encoder.set_filter(png::Filter::NoFilter);
    let mut writer = encoder.write_header().map_err(failed)?;
    writer.write_image_data(pixels).map_err(failed)?;
    writer.finish().map_err(failed)?;
    Ok(file)
}
