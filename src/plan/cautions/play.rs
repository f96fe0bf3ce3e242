//! The internal clearance of a bearing.

use crate::job::Job;
use crate::plan::caution::{Caution, Level};
use crate::plan::push::InternalClearancePlan;
use crate::plan::sentence::say;
use crate::quantity::{Length, Toward};

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
    let sentence = say(format!("The bearing may have no play left {when}: down to "))
        .small(play.running.least, Toward::Down)
        .text(". It would run hot and fail early.");
    let sentence = match (&play.better_group, &play.group) {
        (Some(better), Some(group)) if better != group => sentence
            .text(format!(" Group {better} in place of {group} keeps play in every case; or choose a looser fit.")),
        (Some(better), None) => {
            sentence.text(format!(" Group {better} keeps play in every case; or choose a looser fit."))
        }
        _ => sentence.text(" No group of the table keeps play in every case: choose a looser fit."),
    };
    let level = if play.running.most < Length::default() { Level::Danger } else { Level::Warning };
    found.push(Caution::new("internal-clearance", level, sentence, SOURCE));
}
