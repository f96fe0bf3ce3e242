//! The named colours of a card, for light and dark screens; the pictures on it keep those of [`crate::report::plot`].
//!
//! Chosen by us. The panels of signal words take the safety colours red, orange and yellow as ISO 3864-4 and ANSI Z535.1 use
//! them (the shades are ours), each with a lightness of its own, so that a greyscale print keeps them apart; the word says it
//! anyway.

use crate::report::plot::palette::{Colour, INK, MIDDLE, MUTED, PAPER, rgb};

/// The colours of one kind of screen.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scheme {
    /// Background of the page.
    pub(super) paper: Colour,
    /// Background of the verdict and the tables' heads.
    pub(super) tint: Colour,
    /// Text.
    pub(super) ink: Colour,
    /// Text of second rank.
    pub(super) muted: Colour,
    /// The verdict's bar and the numbers of steps.
    pub(super) accent: Colour,
    /// Lines, boxes to tick and to write in.
    pub(super) rule: Colour,
}

/// On white paper and light screens.
pub(super) const LIGHT: Scheme =
    Scheme { paper: PAPER, tint: rgb(0xF0F3F6), ink: INK, muted: MUTED, accent: MIDDLE, rule: rgb(0x7A828A) };
/// On dark screens.
pub(super) const DARK: Scheme = Scheme {
    paper: rgb(0x15191E),
    tint: rgb(0x222932),
    ink: rgb(0xEDEFF1),
    muted: rgb(0xB4BCC5),
    accent: rgb(0x9CC4EE),
    rule: rgb(0x808A95),
};

/// Panel of a signal word, and the word on it.
pub(super) const DANGER: (Colour, Colour) = (rgb(0xA81E1E), PAPER);
/// See [`DANGER`].
pub(super) const WARNING: (Colour, Colour) = (rgb(0xF08C1A), rgb(0x000000));
/// See [`DANGER`].
pub(super) const CAUTION: (Colour, Colour) = (rgb(0xFBDD4A), rgb(0x000000));

/// See [`DANGER`].
pub(super) const NOTICE: (Colour, Colour) = (rgb(0x1F5A9E), PAPER);

/// The colours as custom properties of CSS.
pub(super) fn properties(scheme: &Scheme) -> String {
    let named = [
        ("paper", scheme.paper),
        ("tint", scheme.tint),
        ("ink", scheme.ink),
        ("muted", scheme.muted),
        ("accent", scheme.accent),
        ("rule", scheme.rule),
    ];
    named.map(|(name, colour)| format!("--{name}:{};", hex(colour))).concat()
}

/// The panels of the signal words, the same on every screen.
pub(super) fn panels() -> String {
    let named = [("danger", DANGER), ("warning", WARNING), ("caution", CAUTION), ("notice", NOTICE)];
    // The mark in the triangle is the panel seen through it, as ANSI Z535.4 draws it (from memory).
    let rules = |(name, (panel, word)): (&str, (Colour, Colour))| {
        let (panel, word) = (hex(panel), hex(word));
        format!(".{name}>b{{background:{panel};color:{word}}}.{name} .mark{{stroke:{panel};stroke-width:2.2}}")
    };
    named.map(rules).concat()
}

fn hex(colour: Colour) -> String {
    format!("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue)
}

#[cfg(test)]
mod tests {
    use super::{CAUTION, DANGER, DARK, LIGHT, NOTICE, WARNING};

    /// WCAG 2.2, criterion 1.4.3: text.
    const TEXT: f64 = 4.5;
    /// WCAG 2.2, criterion 1.4.11: boxes and lines that carry meaning.
    const LINES: f64 = 3.0;

    #[test]
    fn words_and_boxes_stand_out_on_light_and_dark_screens() {
        for scheme in [LIGHT, DARK] {
            for ground in [scheme.paper, scheme.tint] {
                for text in [scheme.ink, scheme.muted, scheme.accent] {
                    let contrast = text.contrast(ground);
                    assert!(contrast >= TEXT, "{text:?} on {ground:?} has {contrast}");
                }
                let contrast = scheme.rule.contrast(ground);
                assert!(contrast >= LINES, "{:?} on {ground:?} has {contrast}", scheme.rule);
            }
        }
    }

    #[test]
    fn signal_words_stand_out_on_their_panels_and_the_panels_from_each_other_in_grey() {
        let panels = [DANGER, WARNING, CAUTION];
        for (panel, word) in panels.into_iter().chain([NOTICE]) {
            assert!(word.contrast(panel) >= TEXT, "{panel:?}: {}", word.contrast(panel));
        }
        for pair in panels.windows(2) {
            let apart = pair[1].0.lightness() - pair[0].0.lightness();
            assert!(apart >= 15.0, "{:?} and {:?} are {apart} apart", pair[0].0, pair[1].0);
        }
    }
}
