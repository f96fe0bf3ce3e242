//! A ductile outer part that yields in the tightest case.

use super::model::Plastic;
use crate::mechanics::{Criterion, FlowRule, Joint, MechanicsError, Part, PlasticHub, Strength};
use crate::plan::PlanError;
use uom::si::ratio::ratio;

/// What is left of pressure and interference of a joint whose weaker part has this strength over stress (`factor`).
///
/// None where all stays elastic, the weaker part is brittle or the inner one, or the wall yields all through.
pub(super) fn plastic(
    joint: Joint,
    (inner, outer): (&Strength, &Strength),
    weaker: Part,
    factor: Option<f64>,
) -> Result<Option<Plastic>, PlanError> {
    let yields = factor.is_some_and(|factor| factor < 1.0);
    let ductile = outer.criterion != Criterion::LargestTension;
    if !(yields && ductile && weaker == Part::Outer) {
        return Ok(None);
    }
    let hub =
        PlasticHub { joint, hub_yield: outer.limit, inner_yield: inner.limit, rule: FlowRule::ModifiedShearStress };
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
