use super::StackError;
use crate::quantity::Length;
use uom::si::length::millimeter;

/// Grooves of a deep groove ball bearing: their radius over the ball's diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Groove {
    /// Of the inner ring.
    pub inner: f64,
    /// Of the outer ring.
    pub outer: f64,
}

impl Default for Groove {
    /// 0.52 for both, the figure of bearing handbooks (from memory).
    fn default() -> Self {
        Self { inner: 0.52, outer: 0.52 }
    }
}

/// Axial play of a deep groove ball bearing from its radial play, both across the whole way: `A = (f_i + f_o - 1) D_w`,
/// `cos α = 1 - P_r/(2 A)`, `P_a = 2 A sin α`.
///
/// A bearing without radial play has no axial play. **Valid for** a play up to 2 A, without load.
///
/// # Errors
/// [`StackError::Bearing`] for a negative play, one beyond 2 A, or grooves that do not hold the ball.
///
/// **Source**: geometry of the free contact angle, T. A. Harris, Rolling Bearing Analysis (from memory).
pub fn axial_play(radial: Length, ball: Length, groove: Groove) -> Result<Length, StackError> {
    let distance = (groove.inner + groove.outer - 1.0) * ball;
    let share = (radial / (2.0 * distance)).value;
    let sound = ball > Length::default() && distance > Length::default() && (0.0..=1.0).contains(&share);
    if !sound {
        return Err(StackError::Bearing {
            play: radial.get::<millimeter>(),
            ball: ball.get::<millimeter>(),
            inner: groove.inner,
            outer: groove.outer,
        });
    }
    let cosine = 1.0 - share;
    Ok(2.0 * distance * (1.0 - cosine * cosine).sqrt())
}
