//! A shaft seal that goes in without a bearing.

use super::{Beside, SealPlan, of};
use crate::job::SealJob;
use crate::plan::caution::Caution;
use crate::plan::{PlanError, Source, cautions, sources};

/// The answer to a job of a shaft seal alone: it is pressed in, so that there is no verdict beyond that.
#[derive(Clone, Debug)]
pub struct SealAlonePlan<'j> {
    /// The job that was planned.
    pub job: &'j SealJob,
    /// The seal.
    pub seal: SealPlan,
    /// What can go wrong or hurt someone, gravest first.
    pub cautions: Vec<Caution>,
    /// Where the numbers come from.
    pub sources: Vec<Source>,
}

/// Plans a checked job of a shaft seal alone; none for a seal without sizes, which the check rules out.
///
/// # Errors
/// [`PlanError`] when an embedded table is faulty.
pub fn plan_alone(job: &SealJob) -> Result<Option<SealAlonePlan<'_>>, PlanError> {
    let beside = Beside { bearing: None, housing: None, in_bore: Vec::new(), ring: false, speed: None };
    let Some(seal) = of(&job.seal, &beside)? else { return Ok(None) };
    let cautions = cautions::of_seal_alone(&job.seal, &seal);
    Ok(Some(SealAlonePlan { job, seal, cautions, sources: sources::of_seal(&job.seal) }))
}
