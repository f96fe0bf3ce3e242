//! Force of the tightest case against time.

use super::model::ForceCourse;
use super::presser::Presser;
use crate::plan::PlanError;
use crate::quantity::{Force, Length, Time};

/// The force to push on a part that has stopped half-way, from the interference it has come to at each time; at full depth.
pub(in crate::plan) fn course(
    presser: &Presser<'_>,
    at_shop: Force,
    standing: &[(Time, Length)],
    depth: Length,
) -> Result<ForceCourse, PlanError> {
    let force = |&(time, interference): &(Time, Length)| Ok((time, presser.tightest_force(interference)?));
    let after = standing.iter().map(force).collect::<Result<Vec<_>, PlanError>>()?;
    Ok(ForceCourse { at_shop, after, depth })
}
