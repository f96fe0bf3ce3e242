use super::caution::{Caution, Level};
use super::clearance::is_enough;
use super::model::Verdict;
use crate::quantity::{Cases, Length};

/// What the clearance at the seat allows.
pub(super) fn from_clearance(at_bore: &Cases<Length>, placing: Length) -> Verdict {
    if is_enough(at_bore.tightest, placing) {
        Verdict::DropsIn
    } else if is_enough(at_bore.middle, placing) {
        Verdict::SomeWillNot
    } else {
        Verdict::Press
    }
}

/// A caution that forbids the job outweighs what the clearance allows.
pub(super) fn with_cautions(verdict: Verdict, cautions: &[Caution]) -> Verdict {
    if cautions.iter().any(|caution| caution.level() == Level::Danger && caution.forbids()) {
        Verdict::DoNot
    } else {
        verdict
    }
}
