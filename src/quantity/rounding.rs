//! Rounding to the side that is safe.

/// The side to which a printed number is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Toward {
    /// To the nearer step, halves away from zero: for sizes and other plain statements.
    Nearest,
    /// To the greater value (towards +∞): for a force that must be available, or a temperature to heat to.
    Up,
    /// To the smaller value (towards -∞): for seconds in hand, or a temperature to chill to.
    Down,
}

/// Share of a step that is arithmetic noise: 4.4 kN that arrives as 4400.000000000001 N stays 4.4 kN.
const NOISE: f64 = 1e-9;

/// `value` rounded to a whole multiple of `step`, such as an oven's 87.3 °C up to 90 °C by steps of 5.
///
/// A value on the grid stays there, float noise included. **Valid for** a finite `step` above 0; with any other step
/// `value` comes back as it is.
pub fn to_step(value: f64, step: f64, toward: Toward) -> f64 {
    if !(step.is_finite() && step > 0.0 && value.is_finite()) {
        return value;
    }
    let steps = whole_steps(value / step, toward);
    // 3 × 0.1 is not 0.3, 3 / 10 is
    let per_unit = (1.0 / step).round();
    if step < 1.0 && (per_unit * step - 1.0).abs() < NOISE { steps / per_unit } else { steps * step }
}

fn whole_steps(steps: f64, toward: Toward) -> f64 {
    let nearest = steps.round();
    let on_grid = (steps - nearest).abs() <= NOISE * steps.abs().max(1.0);
    let whole = match toward {
        _ if on_grid => nearest,
        Toward::Nearest => nearest,
        Toward::Up => steps.ceil(),
        Toward::Down => steps.floor(),
    };
    // no "-0 µm"
    whole + 0.0
}

/// A rounded number and the decimals that its step needs.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rounded {
    pub(super) value: f64,
    pub(super) step: f64,
}

/// `value` rounded to `figures` significant figures, but not finer than `finest`.
pub(super) fn to_figures(value: f64, figures: i32, finest: f64, toward: Toward) -> Rounded {
    let once = to_step(value, figure_step(value, figures, finest), toward);
    // 996 goes up to 1000, which has a coarser step
    Rounded { value: once, step: figure_step(once, figures, finest) }
}

fn figure_step(value: f64, figures: i32, finest: f64) -> f64 {
    let magnitude = (value.abs().log10() + NOISE).floor().clamp(-30.0, 30.0) as i32;
    10f64.powi(magnitude + 1 - figures).max(finest)
}

/// Number of decimals of a step that is a power of ten.
pub(super) fn decimals(step: f64) -> usize {
    (-step.log10()).round().clamp(0.0, 12.0) as usize
}
