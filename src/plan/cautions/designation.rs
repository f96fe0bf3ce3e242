//! What a designation says that no open standard explains.

use crate::job::Job;
use crate::plan::caution::{Caution, Level};
use crate::plan::sentence::say;

/// Suffixes from which nothing was taken.
pub(super) fn of_job(job: &Job, found: &mut Vec<Caution>) {
    let suffixes = &job.part.unread_suffixes;
    if suffixes.is_empty() {
        return;
    }
    let (is, from, it) =
        if suffixes.len() == 1 { ("is no symbol", "it", "it") } else { ("are no symbols", "them", "they") };
    let sentence = say(format!(
        "{} of the designation {is} of an open standard, and nothing was taken from {from}. Look up with the bearing's maker what {it} may \
         say of closure, internal clearance, class, cage or coating, and state it in the job: closure, internal_clearance, \
         outside_limits, material.",
        suffixes.join(" and "),
    ));
    found.push(Caution::new("suffix-not-read", Level::Caution, sentence, "DIN 623-1, from memory"));
}
