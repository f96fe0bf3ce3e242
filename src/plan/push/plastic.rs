//! A ductile outer part that yields in the tightest case.

use super::model::Plastic;
use super::presser::Presser;
use crate::mechanics::{Criterion, FlowRule, MechanicsError, Part, PlasticHub};
use crate::plan::PlanError;
use crate::quantity::Length;
use uom::si::ratio::ratio;

/// What is left of pressure and interference; none where all stays elastic, the weaker part is brittle or the inner one, or
/// the wall yields all through.
pub(super) fn plastic(
    presser: &Presser<'_>,
    weaker: Part,
    interference: Length,
    factor: Option<f64>,
) -> Result<Option<Plastic>, PlanError> {
    let yields = factor.is_some_and(|factor| factor < presser.shape.pressure.0);
    let ductile = presser.outer_strength.criterion != Criterion::LargestTension;
    if !(yields && ductile && weaker == Part::Outer) {
        return Ok(None);
    }
    let hub = PlasticHub {
        joint: presser.at(interference),
        hub_yield: presser.outer_strength.limit,
        inner_yield: presser.inner_strength.limit,
        rule: FlowRule::ModifiedShearStress,
    };
    match hub.solve() {
        Ok(state) => Ok(Some(Plastic {
            pressure: state.pressure,
            share: state.plastic_share.get::<ratio>(),
            lost: state.permanent_set,
        })),
        // Beyond the theory there is nothing to say but that the limit is passed, which a caution says.
        Err(MechanicsError::BeyondPlastic { .. } | MechanicsError::InnerYields { .. }) => Ok(None),
        Err(error) => Err(error.into()),
    }
}
