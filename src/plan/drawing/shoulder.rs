//! The shoulder while the ring is pushed against it.

use super::ShoulderLoad;
use super::moment::At;
use crate::plan::PlanError;
use crate::quantity::Force;
use crate::section::{Loads, Model, State};

/// Fit alone, and fit with the force of pressing home on the shoulder.
pub(super) fn shoulder(
    model: &Model,
    state: &State,
    at: &At,
    loads: &Loads,
) -> Result<Option<ShoulderLoad>, PlanError> {
    let Some(fitted) = state.wall.filter(|_| at.moment.pushes()) else { return Ok(None) };
    let force = state.contacts[0].normal_force * at.friction;
    if force <= Force::default() {
        return Ok(None);
    }
    let pushed = model.solve(&Loads { axial: force, ..loads.clone() })?.wall;
    Ok(pushed.map(|pushed| ShoulderLoad { force, fitted, pushed }))
}
