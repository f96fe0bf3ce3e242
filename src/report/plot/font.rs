//! The embedded typeface, and how wide it sets a line.
//!
//! Widths come from the font itself, so that the placing of labels holds for both formats: the browser sets the same
//! embedded font, and the bitmap is drawn from the same outlines (see [`super::png`]).

use super::PlotError;
use ab_glyph::{Font, FontRef};

/// Name of the embedded family in an SVG. It is no installed font's name, so no other font can stand in for it.
pub(super) const FAMILY: &str = "Seatwise Sans";
pub(super) const REGULAR: &[u8] = include_bytes!("../fonts/seatwise-sans-regular.otf");
pub(super) const BOLD: &[u8] = include_bytes!("../fonts/seatwise-sans-bold.otf");

/// Height of a capital letter in units of the type size: 2048 of 2816 font units.
pub(super) const CAP_HEIGHT: f64 = 2048.0 / 2816.0;
/// Room above the baseline, in units of the type size, that no letter without an accent exceeds.
pub(super) const ASCENT: f64 = 0.78;
/// Room below the baseline, in units of the type size.
pub(super) const DESCENT: f64 = 0.22;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Weight {
    Regular,
    Bold,
}

pub(super) struct Fonts {
    regular: FontRef<'static>,
    bold: FontRef<'static>,
}

impl Fonts {
    pub(super) fn load() -> Result<Self, PlotError> {
        let read = |bytes| FontRef::try_from_slice(bytes).map_err(|_| PlotError::Font);
        Ok(Self { regular: read(REGULAR)?, bold: read(BOLD)? })
    }

    pub(super) fn get(&self, weight: Weight) -> &FontRef<'static> {
        match weight {
            Weight::Regular => &self.regular,
            Weight::Bold => &self.bold,
        }
    }

    /// Width in px of `text` at `size` px to the em.
    pub(super) fn width(&self, text: &str, size: f64, weight: Weight) -> f64 {
        let font = self.get(weight);
        let units: f32 = text.chars().map(|c| font.h_advance_unscaled(font.glyph_id(c))).sum();
        f64::from(units) / f64::from(font.units_per_em().unwrap_or(1.0)) * size
    }

    /// Lines of at most `width` px; a word that is longer by itself is broken.
    pub(super) fn wrap(&self, text: &str, size: f64, weight: Weight, width: f64) -> Vec<String> {
        let mut lines = Vec::new();
        let mut line = String::new();
        for word in text.split(|c: char| c.is_whitespace() || c.is_control()).filter(|word| !word.is_empty()) {
            let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
            if self.width(&longer, size, weight) <= width {
                line = longer;
                continue;
            }
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            for letter in word.chars() {
                if !line.is_empty() && self.width(&format!("{line}{letter}"), size, weight) > width {
                    lines.push(std::mem::take(&mut line));
                }
                line.push(letter);
            }
        }
        if !line.is_empty() {
            lines.push(line);
        }
        lines
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A hyphen instead of a minus would pass by eye and fail here; so would an empty box for a letter.
    #[test]
    fn both_weights_hold_every_sign_that_the_reports_print() {
        let fonts = Fonts::load().unwrap();
        for weight in [Weight::Regular, Weight::Bold] {
            for sign in "AZaz09µμ−°±·×≤≥Δ→–—’“”éß½łř".chars() {
                assert_ne!(fonts.get(weight).glyph_id(sign).0, 0, "{weight:?} lacks {sign}");
            }
        }
    }

    /// Advance of the figure 0 read from the `hmtx` table by fontTools: 1760 (regular) and 1938 (bold) of 2816 units.
    #[test]
    fn widths_are_the_advances_of_the_font() {
        let fonts = Fonts::load().unwrap();
        assert!((fonts.width("00", 2816.0, Weight::Regular) - 2.0 * 1760.0).abs() < 0.5);
        assert!((fonts.width("00", 2816.0, Weight::Bold) - 2.0 * 1938.0).abs() < 0.5);
    }

    #[test]
    fn wrapped_lines_fit_and_lose_no_word() {
        let fonts = Fonts::load().unwrap();
        let text = "drops in, with 13 s in hand: Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft";
        let lines = fonts.wrap(text, 28.0, Weight::Bold, 300.0);
        assert!(lines.iter().all(|line| fonts.width(line, 28.0, Weight::Bold) <= 300.0), "{lines:?}");
        let bare = |text: &str| text.replace(' ', "");
        assert_eq!(bare(&lines.concat()), bare(text));
        assert!(fonts.wrap(" \n\u{1}", 28.0, Weight::Bold, 300.0).is_empty());
    }
}
