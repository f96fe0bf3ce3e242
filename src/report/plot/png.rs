//! The picture as PNG, two px for each px of the drawing, so that it is sharp on a phone and in print.
//!
//! It is painted at twice that and averaged, because the bitmap backend works in whole px. Letters are painted here:
//! plotters 0.3.7 with its `ab_glyph` feature sets each letter without its left bearing and takes the line height for
//! the type size, so lines would differ from the SVG in spacing and in width.

use super::compose::compose;
use super::font::Fonts;
use super::paint::{failed, paint, rgb};
use super::scene::{Scene, Text};
use super::{PlotError, PlotRequest};
use ab_glyph::{Font, Glyph, PxScale, ScaleFont, point};
use plotters::prelude::{BitMapBackend, DrawingBackend};
use plotters::style::Color;

/// Px of the file for each px of the drawing.
const SCALE: usize = 2;
/// Painted px for each px of the file, across and down.
const FINER: usize = 2;
const BYTES_PER_PX: usize = 3;

/// Draws the picture as the bytes of a PNG file.
pub(super) fn png(request: &PlotRequest) -> Result<Vec<u8>, PlotError> {
    let fonts = Fonts::load()?;
    let scene = compose(request, &fonts)?;
    let (width, height) = size(&scene);
    let painted = painted(&scene, &fonts, (width * FINER, height * FINER))?;
    encoded(&averaged(&painted, width), (width, height))
}

/// Width and height of the file in px.
fn size(scene: &Scene) -> (usize, usize) {
    (scene.width.ceil() as usize * SCALE, scene.height.ceil() as usize * SCALE)
}

fn painted(scene: &Scene, fonts: &Fonts, (width, height): (usize, usize)) -> Result<Vec<u8>, PlotError> {
    let mut pixels = vec![0xFF; width * height * BYTES_PER_PX];
    {
        let mut backend = BitMapBackend::with_buffer(&mut pixels, (width as u32, height as u32));
        let scale = (SCALE * FINER) as f64;
        paint(scene, &mut backend, scale, |backend, text| write_text(backend, text, fonts, scale as f32))?;
    }
    Ok(pixels)
}

fn write_text<B: DrawingBackend>(backend: &mut B, text: &Text, fonts: &Fonts, scale: f32) -> Result<(), PlotError> {
    let font = fonts.get(text.weight);
    let em = text.size as f32 * scale;
    // ab_glyph counts the size of a font as its line height.
    let height = PxScale::from(em * font.height_unscaled() / font.units_per_em().unwrap_or(1.0));
    let scaled = font.as_scaled(height);
    let mut x = text.start.x as f32 * scale;
    for letter in text.text.chars() {
        let id = font.glyph_id(letter);
        let glyph = id.with_scale_and_position(height, point(x, text.start.y as f32 * scale));
        write_glyph(backend, font, glyph, text)?;
        x += scaled.h_advance(id);
    }
    Ok(())
}

fn write_glyph<B: DrawingBackend>(
    backend: &mut B,
    font: &impl Font,
    glyph: Glyph,
    text: &Text,
) -> Result<(), PlotError> {
    let Some(outline) = font.outline_glyph(glyph) else { return Ok(()) };
    let corner = outline.px_bounds().min;
    let colour = rgb(text.colour);
    let mut outcome = Ok(());
    outline.draw(|x, y, coverage| {
        if outcome.is_ok() && coverage > 0.0 {
            let place = (corner.x as i32 + x as i32, corner.y as i32 + y as i32);
            outcome = backend.draw_pixel(place, colour.mix(f64::from(coverage.min(1.0))).to_backend_color());
        }
    });
    outcome.map_err(failed)
}

/// Each px of the file as the mean of the px painted for it.
fn averaged(painted: &[u8], width: usize) -> Vec<u8> {
    let line = width * FINER * BYTES_PER_PX;
    let count = (FINER * FINER) as u32;
    let mean = |lines: &[u8], start: usize| {
        let places = (0..FINER).flat_map(|y| (0..FINER).map(move |x| y * line + x * BYTES_PER_PX));
        let sum: u32 = places.map(|place| u32::from(lines[start + place])).sum();
        ((sum + count / 2) / count) as u8
    };
    let of_lines = |lines: &[u8]| -> Vec<u8> {
        let starts = (0..width).flat_map(|x| (0..BYTES_PER_PX).map(move |c| x * FINER * BYTES_PER_PX + c));
        starts.map(|start| mean(lines, start)).collect()
    };
    painted.chunks_exact(line * FINER).flat_map(of_lines).collect()
}

fn encoded(pixels: &[u8], (width, height): (usize, usize)) -> Result<Vec<u8>, PlotError> {
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, width as u32, height as u32);
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header().map_err(failed)?;
    writer.write_image_data(pixels).map_err(failed)?;
    writer.finish().map_err(failed)?;
    Ok(file)
}
