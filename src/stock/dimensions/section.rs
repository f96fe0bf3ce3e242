use crate::quantity::Length;
use thiserror::Error;
use uom::si::length::millimeter;

/// Thickness of each ring of a rolling bearing, with its groove smeared out, over the difference of outside and bore.
///
/// Common practice, no published source.
pub const RING_SHARE: f64 = 0.15;

/// Ball diameter over the difference of outside and bore of a deep groove ball bearing.
///
/// Common practice; the outer raceway is then (4 D + d)/5, the rule of bearing handbooks (from memory).
pub const BALL_SHARE: f64 = 0.3;

/// Roller diameter over the difference of outside and bore of a cylindrical roller bearing.
///
/// The outer raceway is then (3 D + d)/4, the rule of bearing handbooks (from memory).
pub const ROLLER_SHARE: f64 = 0.25;

/// What rolls in a bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RollingElement {
    /// Balls in deep grooves.
    Ball,
    /// Cylindrical rollers.
    Roller,
}

/// Diameters of the raceways and the rolling elements of a radial bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raceways {
    /// Raceway of the inner ring, at the bottom of its groove.
    pub inner: Length,
    /// Raceway of the outer ring, at the bottom of its groove.
    pub outer: Length,
    /// One ball or roller.
    pub element: Length,
}

/// Sizes between which no bearing fits.
#[derive(Clone, Debug, Error, PartialEq)]
#[error(
    "a bore of {bore_mm} mm and an outside of {outside_mm} mm leave no room for a bearing\n  help: give a bore above zero \
     and an outside above the bore"
)]
pub struct RacewayError {
    /// Bore, mm.
    pub bore_mm: f64,
    /// Outside, mm.
    pub outside_mm: f64,
}

impl Raceways {
    /// Estimated from the boundary dimensions: `D_w = s (D - d)`, raceways `(D + d)/2 ± D_w`, with the share s of the
    /// rolling element.
    ///
    /// **Valid for** single-row bearings of the common series, within some 5 % of (D - d); light series have smaller
    /// elements. Measure where it matters.
    ///
    /// # Errors
    /// [`RacewayError`] for sizes that make no bearing.
    ///
    /// **Source**: [`BALL_SHARE`], [`ROLLER_SHARE`]; the width of the band is an estimate, no published source.
    pub fn estimate(bore: Length, outside: Length, element: RollingElement) -> Result<Self, RacewayError> {
        let (bore_mm, outside_mm) = (bore.get::<millimeter>(), outside.get::<millimeter>());
        if !(bore_mm > 0.0 && outside_mm > bore_mm && outside_mm.is_finite()) {
            return Err(RacewayError { bore_mm, outside_mm });
        }
        let share = match element {
            RollingElement::Ball => BALL_SHARE,
            RollingElement::Roller => ROLLER_SHARE,
        };
        let (element, pitch) = (share * (outside - bore), (outside + bore) / 2.0);
        Ok(Self { inner: pitch - element, outer: pitch + element, element })
    }
}
