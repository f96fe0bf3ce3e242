//! What to measure in a stack, what the reading means, and what mends it.

use super::model::BedPlan;
use crate::assembly::stack::Change;
use crate::job::{AnyValue, Bed};
use crate::plan::sentence::{Sentence, say};
use crate::plan::work::StepKind;
use crate::quantity::{Length, Toward};

/// How near a depth is read in a shop, mm: common practice, no published source.
const READ_WITHIN: &str = "0.02 mm";

pub(super) fn steps(bed: &Bed, plan: &BedPlan) -> Vec<(StepKind, Sentence)> {
    let mut steps = vec![(StepKind::Stack, before(bed))];
    steps.extend(after_pressing(plan).map(|step| (StepKind::Depth, step)));
    steps.push((StepKind::Gap, gap(plan)));
    steps.push((StepKind::Ring, ring(bed, plan)));
    steps
}

fn size(sentence: Sentence, length: Length, toward: Toward) -> Sentence {
    sentence.value(AnyValue::Size(length), toward)
}

fn between(sentence: Sentence, (least, most): (Length, Length)) -> Sentence {
    size(size(sentence, least, Toward::Nearest).text(" to "), most, Toward::Nearest)
}

fn before(bed: &Bed) -> Sentence {
    let names: Vec<&str> = bed.parts.iter().map(|part| part.name.as_str()).collect();
    say(format!(
        "Before anything goes in, measure the seat and each part ({}, ring) at one temperature and write them down.",
        names.join(", ")
    ))
}

/// The reading from the face to the bearing, and what it means.
fn after_pressing(plan: &BedPlan) -> Option<Sentence> {
    let reading = plan.reading?;
    let sentence = say(
        "After pressing, when all is at one temperature, measure from the face to the bearing at four places: seated, it reads ",
    );
    Some(
        size(between(sentence, reading).text(". A reading under "), reading.0, Toward::Nearest).text(format!(
            " is still out by what is missing, or more. Within these limits your own figures decide: it should read depth less parts, and \
             what it is short of that, beyond {READ_WITHIN}, the bearing is still out."
        )),
    )
}

fn gap(plan: &BedPlan) -> Sentence {
    between(say("The gap between the last part and the wall of the groove that holds the ring is then "), plan.gap)
        .text(": the ring needs its own thickness of it. Measure it with the ring and feelers.")
}

/// Whether the ring goes in, or what is to be changed first.
fn ring(bed: &Bed, plan: &BedPlan) -> Sentence {
    let home = |sentence: Sentence| {
        sentence.text(" Put the ring in with its sharp edge to the wall, and turn it in its groove to see that it sits all round.")
    };
    match plan.change {
        Change::None => home(say("The play is as wanted in every case.")),
        Change::Fixed { least, most } if most < Length::default() => {
            let sentence = size(say("Take at least "), -most, Toward::Up);
            let sentence =
                if least < most { size(sentence.text(" and at most "), -least, Toward::Down) } else { sentence };
            sentence.text(format!(
                " off the stack, or cut the groove that much nearer the face, so that every case closes: {}.",
                takes(bed, -most)
            ))
        }
        Change::Fixed { least, most } => {
            home(between(say("One shim in every assembly mends it, as thick as "), (least, most)).text("."))
        }
        Change::Chosen { least, most } if most <= Length::default() => {
            let wanted = (plan.least_wanted, plan.most_wanted.unwrap_or(plan.least_wanted));
            let sentence = between(
                say(
                    "Every assembly is too full, and no one thickness suits all. Take off for each the thickness of the ring and a play \
                     of ",
                ),
                wanted,
            );
            between(
                sentence.text(", less the measured gap. For the emptiest to the fullest assembly that is "),
                (-most, -least),
            )
            .text(format!(": {}.", takes(bed, -least)))
        }
        Change::Chosen { least, most } => {
            let wanted = (plan.least_wanted, plan.most_wanted.unwrap_or(plan.least_wanted));
            let sentence = between(
                say(
                    "No one shim suits every case. Choose it for each assembly: the measured gap, less the thickness of the ring, less \
                     a play of ",
                ),
                wanted,
            );
            home(
                between(sentence.text(". For the fullest to the emptiest assembly that is "), (least, most))
                    .text(if least < Length::default() { "; below zero, that much is to be taken off." } else { "." }),
            )
        }
    }
}

/// Where this thickness is best taken off: from a part that can give it.
fn takes(bed: &Bed, thickness: Length) -> &'static str {
    let gives = |name: &str| bed.parts.iter().any(|part| part.is(name) && part.size.least > thickness);
    if gives("shim") {
        "a thinner shim"
    } else if gives("spacer") {
        "a shorter spacer"
    } else {
        "a deeper seat; never grind the bearing"
    }
}
