//! Where yielding begins in either part of a joint, by both criteria.

use super::elastic::Part;
use super::error::MechanicsError;
use super::joint::Joint;
use crate::quantity::{Length, Pressure, positive};
use uom::si::pressure::pascal;

/// Interference, as a share of the diameter, on which the start of yielding is worked out; any small one does.
const TRIAL_SHARE: f64 = 1e-4;

/// Interference and contact pressure of one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Onset {
    /// Diametral interference.
    pub interference: Length,
    /// Contact pressure.
    pub pressure: Pressure,
}

/// Where a part of a joint begins to yield.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YieldStart {
    /// By von Mises.
    pub von_mises: Onset,
    /// By Tresca; never later.
    pub tresca: Onset,
}

/// Interference and pressure at which one part of a joint begins to yield, whatever the other does.
///
/// Stresses are in proportion to the interference, so `δ_yield = δ Y/σ_v(δ)` for any δ. For a hub of the diameter ratio
/// k, `p = Y (k² - 1)/(2 k²)` by Tresca and `p = Y (k² - 1)/√(3 k⁴ + 1)` by von Mises; for a solid shaft `p = Y` by both.
/// The interference of `joint` itself does not matter.
///
/// **Valid for** what [`Joint::solve`] is valid for, and a ductile part.
///
/// # Errors
/// As for [`Joint::solve`]; a strength that is not positive.
///
/// **Source**: Lamé's stresses at the surfaces, with the two criteria.
pub fn yield_start(joint: &Joint, part: Part, yield_strength: Pressure) -> Result<YieldStart, MechanicsError> {
    let limit = positive("yield strength", yield_strength.get::<pascal>(), "Pa")?;
    let trial = joint.diameter * TRIAL_SHARE;
    let fit = Joint { interference: trial, ..*joint }.solve()?;
    let state = match part {
        Part::Inner => fit.inner,
        Part::Outer => fit.outer,
    };
    let onset = |stress: Pressure| -> Result<Onset, MechanicsError> {
        let factor = limit / positive("equivalent stress", stress.get::<pascal>(), "Pa")?;
        Ok(Onset { interference: trial * factor, pressure: fit.pressure * factor })
    };
    Ok(YieldStart { von_mises: onset(state.von_mises())?, tresca: onset(state.tresca())? })
}
