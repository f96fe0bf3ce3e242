//! The internal clearance of a bearing.

use crate::job::Job;
use crate::plan::caution::{Caution, Level};
use crate::plan::push::InternalClearancePlan;
use crate::plan::sentence::say;
use crate::quantity::Toward;

const SOURCE: &str = "ISO 5753-1 groups; closing of the rings by thick-wall formulas; raceways by the rule of bearing handbooks \
                      (from memory)";

/// Whether the bearing keeps its play.
pub(super) fn of_job(job: &Job, play: &InternalClearancePlan, found: &mut Vec<Caution>) {
    if play.running.may_be_negative() {
        negative(play, found);
    }
    let missing = match (&play.outer_ring, &play.inner_ring) {
        (Some(_), None) => "the fit on the shaft, which takes from it as well",
        (None, Some(_)) => "the fit in the housing, which takes from it as well",
        _ => return,
    };
    if job.part.internal_play.is_some() {
        let text = format!("The internal clearance left is not the whole story: this job does not describe {missing}.");
        found.push(Caution::new("internal-clearance-incomplete", Level::Note, say(text), SOURCE));
    }
}

fn negative(play: &InternalClearancePlan, found: &mut Vec<Caution>) {
    let when = if play.fitted.may_be_negative() { "once it is fitted" } else { "when it runs warm" };
    let sentence = if play.usual.may_be_negative() {
        say(format!("The bearing may have no play left {when}: "))
            .small(play.usual.least, Toward::Down)
            .text(" to ")
            .small(play.usual.most, Toward::Up)
            .text(" in 997 of 1000, ")
            .small(play.running.least, Toward::Down)
            .text(" at the worst. It would run hot and fail early.")
    } else {
        say(format!("Where every size is at its worst, the bearing has no play left {when}: "))
            .small(play.running.least, Toward::Down)
            .text("; 997 of 1000 keep ")
            .small(play.usual.least, Toward::Down)
            .text(" or more.")
    };
    let instead = play.group.as_ref().map(|group| format!(" in place of {group}")).unwrap_or_default();
    let advice = match (&play.usual_group, &play.sure_group) {
        (Some(usual), Some(sure)) if usual == sure => {
            format!(" Group {sure}{instead} keeps play in every case; or choose a looser fit.")
        }
        (Some(usual), Some(sure)) => {
            format!(" Group {usual}{instead} keeps play in 997 of 1000, {sure} in every case; or choose a looser fit.")
        }
        (Some(usual), None) => {
            format!(" Group {usual}{instead} keeps play in 997 of 1000, none in every case; or choose a looser fit.")
        }
        (None, Some(sure)) => format!(" Group {sure}{instead} keeps play in every case."),
        (None, None) => " No group of the table keeps play: choose a looser fit.".to_owned(),
    };
    let level = match () {
        () if play.usual.is_negative() => Level::Danger,
        () if play.usual.may_be_negative() => Level::Warning,
        () => Level::Caution,
    };
    found.push(Caution::new("internal-clearance", level, sentence.text(advice), SOURCE));
}
