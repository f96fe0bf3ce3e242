//! Where a pressed liner comes free of its housing.

use super::{SOURCE, STEP_K, bore, state};
use crate::job::{Housing, Job};
use crate::mechanics::{Held, LinedBore};
use crate::plan::PlanError;
use crate::quantity::{Pressure, ThermodynamicTemperature, reference_temperature};
use crate::stock::Material;
use crate::stock::material::{Provenance, TemperatureLimit};
use uom::si::thermodynamic_temperature::kelvin;

/// Temperature to which the end of a liner's hold is found, K.
const TOLERANCE_K: f64 = 0.01;

/// Common temperatures at which a pressed liner bears no more, nearest to that of reference; none where that is not reached within
/// the materials' tables.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FreeFrom {
    /// From here upwards: a housing that expands more leaves its liner when warm.
    pub hot: Option<ThermodynamicTemperature>,
    /// From here downwards: a liner that shrinks more leaves its housing when cold.
    pub cold: Option<ThermodynamicTemperature>,
}

/// How hot a housing may get before its pressed liner comes free; none where it never does, or is cast in.
pub(in crate::plan) fn hottest(job: &Job) -> Option<TemperatureLimit> {
    let housing = job.housing.as_ref()?;
    let liner = housing.liner.as_ref()?;
    // What cannot be computed is an error of `plan`, which asks for the same temperature.
    let temperature = free_from(&bore(job, housing)?, housing, &liner.material).ok()?.hot?;
    Some(TemperatureLimit {
        temperature,
        reason:
            "the pressed liner with its least interference comes free: it may turn or come out, and the bore grows no further \
             than the liner alone"
                .to_owned(),
        provenance: Provenance::of_calculation(
            SOURCE,
            "from the liner's least interference and the expansion of both materials",
        ),
    })
}

/// Where a liner comes free, upwards and downwards.
pub(super) fn free_from(bore: &LinedBore, housing: &Housing, liner: &Material) -> Result<FreeFrom, PlanError> {
    let Held::Pressed(_) = bore.held else { return Ok(FreeFrom::default()) };
    let (inner, outer) = (liner.expansion().range(), housing.material.expansion().range());
    let bears = |at_k: f64| -> Result<bool, PlanError> {
        let at = ThermodynamicTemperature::new::<kelvin>(at_k);
        Ok(state(bore, housing, liner, at, Pressure::default())?.between > Pressure::default())
    };
    Ok(FreeFrom {
        hot: end_of_hold(bears, inner.1.min(outer.1))?.map(ThermodynamicTemperature::new::<kelvin>),
        cold: end_of_hold(bears, inner.0.max(outer.0))?.map(ThermodynamicTemperature::new::<kelvin>),
    })
}

/// The first temperature (K) from that of reference towards `last` at which it does not bear, on the side where it still does.
///
/// Looked for step by step: a difference of two expansions need not grow all the way.
fn end_of_hold(bears: impl Fn(f64) -> Result<bool, PlanError>, last: f64) -> Result<Option<f64>, PlanError> {
    let first = reference_temperature().get::<kelvin>();
    let steps = ((last - first).abs() / STEP_K).ceil().max(1.0);
    let count = steps as u32;
    let mut held = first;
    for step in 1..=count {
        let next = first + (last - first) * f64::from(step) / steps;
        if bears(next)? {
            held = next;
            continue;
        }
        let mut free = next;
        while (free - held).abs() > TOLERANCE_K {
            let middle = 0.5 * (free + held);
            if bears(middle)? { held = middle } else { free = middle }
        }
        return Ok(Some(held));
    }
    Ok(None)
}
