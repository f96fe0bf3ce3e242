//! Where a shaft seal comes to lie.

use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::seal::{Overlap, SealPlan};
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Length, Toward};
use uom::si::length::micrometer;

/// What a length may be off by the last digits of a calculation, µm.
const ROUNDING_UM: f64 = 0.5;

fn is_more(length: Length) -> bool {
    length.get::<micrometer>() > ROUNDING_UM
}

fn size(sentence: Sentence, length: Length) -> Sentence {
    sentence.value(AnyValue::Size(length), Toward::Nearest)
}

/// A seal that stands proud, cannot go as deep as asked, or covers a hole.
pub(super) fn of_job(plan: &SealPlan, found: &mut Vec<Caution>) {
    let stand = plan.stand;
    let (proud, stop) = (-stand.below_face, stand.reached - stand.moved);
    if is_more(stand.short_by) {
        let sentence = size(say("The seal is to go "), stop + stand.short_by);
        let sentence = size(sentence.text(" below the face, but the shoulder is at "), stop);
        let sentence = size(sentence.text(": it stops "), stand.short_by).text(" short");
        let sentence = if is_more(proud) {
            let sentence = size(sentence.text(" and stands "), proud).text(" proud of the face");
            sentence.text(if is_more(-stand.moved) { ", the ring before the shoulder included." } else { "." })
        } else {
            sentence.text(".")
        };
        found.push(Caution::new(
            "seal-shoulder",
            Level::Warning,
            sentence.text(" Do not press on against the shoulder: the case bends and the lip runs out of true."),
            PRACTICE,
        ));
    } else if is_more(proud) {
        let sentence =
            size(say("The seal would stand "), proud).text(" proud of the face: a cover over it would push it askew.");
        let sentence = sentence.text(if is_more(-stand.moved) {
            " That is where its lip clears the worn track: take a narrower seal, or sleeve the shaft and leave the seal where it was."
        } else {
            " Press it deeper, or take a narrower one; depth counts to the face that goes in first."
        });
        found.push(Caution::new("seal-proud", Level::Caution, sentence, PRACTICE));
    }
    drain(plan, found);
    // Clear of what stands nearest to the face it is clear of all.
    let nearest = plan.overlaps.iter().min_by(|one, other| one.stands.0.value.total_cmp(&other.stands.0.value));
    if let Some(overlap) = nearest {
        meets(overlap, found);
    }
}

/// A seal that would lie where a ring or a bearing stands.
fn meets(overlap: &Overlap, found: &mut Vec<Caution>) {
    let span = |sentence: Sentence, (from, to)| size(size(sentence, from).text(" to "), to);
    let sentence = span(say("The seal would lie from "), overlap.seal);
    let sentence =
        span(sentence.text(format!(" below the face, and the {} may stand from ", overlap.what)), overlap.stands);
    let sentence = size(sentence.text(": they overlap by "), overlap.by);
    let sentence = if overlap.seal.0 < overlap.stands.0 {
        size(sentence.text(". Press the seal no deeper than "), overlap.stands.0)
            .text(", or take a narrower one; pressed on, it pushes against what is behind it.")
    } else {
        sentence.text(". Check both depths and the order in which they go in before anything is pressed.")
    };
    found.push(Caution::new(
        "seal-meets-neighbour",
        Level::Warning,
        sentence,
        "depths and widths as the job gives them",
    ));
}

fn drain(plan: &SealPlan, found: &mut Vec<Caution>) {
    let stand = plan.stand;
    let Some((behind, asked)) = stand.drain_behind.zip(stand.drain_behind_asked) else { return };
    if asked >= Length::default() && behind >= Length::default() {
        return;
    }
    let sentence = size(say("A hole behind the seal begins "), behind + stand.reached);
    let sentence = size(sentence.text(" below the face, and the seal is to go to "), stand.reached + stand.short_by);
    let sentence = sentence.text(": it would be blocked, and what gathers behind the lip would find its way past it.");
    let sentence = if behind >= Length::default() {
        size(sentence.text(" At the depth that the shoulder allows it stays open by "), behind).text(".")
    } else {
        size(sentence.text(" Keep the seal to "), behind + stand.reached).text(" or less.")
    };
    found.push(Caution::new("seal-drain", Level::Warning, sentence, PRACTICE));
}
