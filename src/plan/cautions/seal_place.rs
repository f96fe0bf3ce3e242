//! Where a shaft seal comes to lie.

use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::seal::SealPlan;
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
    let proud = -stand.below_face;
    if is_more(stand.short_by) {
        let sentence = size(say("The seal is to go "), stand.reached + stand.short_by);
        let sentence = size(sentence.text(" below the face, but the shoulder is at "), stand.reached);
        let sentence = size(sentence.text(": it stops "), stand.short_by).text(" short");
        let sentence = if is_more(proud) {
            size(sentence.text(" and stands "), proud).text(" proud of the face.")
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
        let sentence = size(say("The seal would stand "), proud)
            .text(" proud of the face: a cover over it would push it askew. Press it deeper, or take a narrower one.");
        found.push(Caution::new("seal-proud", Level::Caution, sentence, PRACTICE));
    }
    drain(plan, found);
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
