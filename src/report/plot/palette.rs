//! The named colours of the reports.
//!
//! Chosen by us. Blue against orange-brown keeps apart for the common kinds of colour blindness, and every colour that
//! carries meaning has its own lightness, so that a greyscale print keeps them apart too. The tests hold the palette
//! to contrast ratios of WCAG 2.1: 4.5 for text (criterion 1.4.3), 3 for lines (criterion 1.4.11).

/// A colour of the sRGB space.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
}

/// A colour from its six hexadecimal digits.
pub(crate) const fn rgb(hex: u32) -> Colour {
    Colour { red: (hex >> 16) as u8, green: (hex >> 8) as u8, blue: hex as u8 }
}

/// Paper, and the outline that keeps a marker clear of its line.
pub const PAPER: Colour = rgb(0xFFFFFF);
/// Text, markers and the line of contact.
pub const INK: Colour = rgb(0x1A1A1A);
/// Text of second rank: axes, subtitle, names of regions.
pub const MUTED: Colour = rgb(0x595959);
/// Hairlines that lead from a moment to its label.
pub const HAIRLINE: Colour = rgb(0x808080);
/// Grid behind the curves; decoration, so it needs no contrast.
pub const GRID: Colour = rgb(0xE2E2E2);
/// Area between the tightest and the loosest case.
pub const BAND: Colour = rgb(0xDDE8F3);
/// The middle case.
pub const MIDDLE: Colour = rgb(0x0B2F5C);
/// The tightest case.
pub const TIGHTEST: Colour = rgb(0x963E00);
/// The loosest case.
pub const LOOSEST: Colour = rgb(0x2C78BA);

/// The lightest and the darkest band of a section.
const BANDS: (Colour, Colour) = (rgb(0xF1F6FB), MIDDLE);

/// Colour of a band of a section: from light for the lowest value, share 0, to dark for the highest, share 1, so that the
/// bands keep their order without colour.
pub fn band(share: f64) -> Colour {
    mixed(BANDS, share)
}

/// Near nothing, and the darkest band, of what is above nothing.
const ABOVE: (Colour, Colour) = (rgb(0xFCF3EA), rgb(0x6E2C00));
/// The same of what is below it; as light at each share as what is above.
const BELOW: (Colour, Colour) = (rgb(0xEDF5FC), rgb(0x0F3D73));

/// Colour of a band of a quantity with a sign: light at nothing, share 0; brown and darker to share 1, blue and darker to share -1.
///
/// Both sides are alike in lightness, so that in grey, or to who sees no hues, it is the size that is read: the sign stands in
/// the key's words, in the numbers on the lines, and in the line of nothing.
pub fn band_with_sign(share: f64) -> Colour {
    mixed(if share < 0.0 { BELOW } else { ABOVE }, share.abs())
}

fn mixed((low, high): (Colour, Colour), share: f64) -> Colour {
    let mixed =
        |from: u8, to: u8| (f64::from(from) + share.clamp(0.0, 1.0) * (f64::from(to) - f64::from(from))).round() as u8;
    Colour { red: mixed(low.red, high.red), green: mixed(low.green, high.green), blue: mixed(low.blue, high.blue) }
}

impl Colour {
    /// Relative luminance, 0 for black to 1 for white.
    ///
    /// **Source**: WCAG 2.1, definition of "relative luminance", with the sRGB threshold 0.04045 of IEC 61966-2-1.
    pub fn luminance(self) -> f64 {
        0.2126 * linear(self.red) + 0.7152 * linear(self.green) + 0.0722 * linear(self.blue)
    }

    /// Contrast ratio with `other`, 1 to 21.
    ///
    /// **Source**: WCAG 2.1, definition of "contrast ratio".
    pub fn contrast(self, other: Self) -> f64 {
        let (a, b) = (self.luminance(), other.luminance());
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    /// Lightness L*, 0 for black to 100 for white.
    ///
    /// **Source**: CIE 1976 L*a*b*, from memory.
    pub fn lightness(self) -> f64 {
        let y = self.luminance();
        if y > (6.0_f64 / 29.0).powi(3) { 116.0 * y.cbrt() - 16.0 } else { y * (29.0_f64 / 3.0).powi(3) }
    }
}

fn linear(channel: u8) -> f64 {
    let c = f64::from(channel) / 255.0;
    if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
}
