//! The order of work for a seal.

use super::Beside;
use super::model::SealPlan;
use crate::job::{AnyValue, PassesOver, Seal, SealBody, SealLips};
use crate::plan::sentence::{Sentence, say};
use crate::plan::work::StepKind;
use crate::quantity::{Length, Toward};
use crate::stock::seal_seats::SealCase;

/// What to do, with what sort of step each is.
pub(super) fn steps(beside: &Beside<'_>, seal: &Seal, body: &SealBody, plan: &SealPlan) -> Vec<(StepKind, Sentence)> {
    let mut steps = vec![order(beside, seal, plan), look(body), lubricate(seal, body)];
    steps.extend(cover(body));
    steps.extend(worn(body, plan));
    if body.sealant {
        steps.push(sealant(seal));
    }
    let mut steps: Vec<(StepKind, Sentence)> = steps.into_iter().map(|step| (StepKind::Seal, step)).collect();
    steps.push((StepKind::SealPress, press(body, plan)));
    steps.push((StepKind::SealDepth, measure(plan)));
    steps
}

/// When the seal goes in, and that it goes in as it is.
fn order(beside: &Beside<'_>, seal: &Seal, plan: &SealPlan) -> Sentence {
    let Some(bearing) = beside.bearing else { return as_it_is(say(""), plan, "The seal is") };
    let (with_ring, then_ring) =
        if beside.ring { (" and its retaining ring", ", then its retaining ring") } else { ("", "") };
    let when = match (seal.fitted_first, plan.shares_bore) {
        (true, true) => format!(
            "Seal first, then the {bearing}{with_ring}, in the same bore: press the seal home, measure it, and only then warm or \
             chill anything."
        ),
        (true, false) => format!("Seal first, then the {bearing}{with_ring}."),
        (false, true) => format!(
            "The {bearing} first{then_ring}, then the seal, in the same bore: let all come to one temperature before the seal \
             goes in."
        ),
        (false, false) => format!("The {bearing} first{then_ring}, then the seal."),
    };
    as_it_is(say(when), plan, " The seal itself is")
}

/// That it goes in as it is.
fn as_it_is(sentence: Sentence, plan: &SealPlan, opening: &'static str) -> Sentence {
    sentence
        .text(opening)
        .text(" neither chilled nor warmed, and goes in at the temperature of the shop; its lip bears ")
        .temperature(plan.coldest, Toward::Up)
        .text(" to ")
        .temperature(plan.hottest, Toward::Down)
        .text(".")
}

fn look(body: &SealBody) -> Sentence {
    let case = match body.case {
        SealCase::Rubber => "the rubber of the case for cuts",
        SealCase::Metal => "the case for dents",
    };
    say(format!(
        "Look at the lip for nicks, at {case}, at the spring; at bore and shaft for burrs, scratches along the way in, and a lead-in \
         without a sharp edge. Lip to the oil: the side with the spring faces what is kept in."
    ))
}

fn lubricate(seal: &Seal, body: &SealBody) -> Sentence {
    let outside = match body.case {
        _ if body.sealant && !seal.fitted_first => "Leave the outside of the case dry for the sealant",
        SealCase::Rubber => "Oil the rubber outside thinly",
        SealCase::Metal => "Oil the case thinly",
    };
    match body.lips {
        SealLips::Single => say(format!("{outside}, and oil or grease the lip with what it will run in: never dry.")),
        SealLips::Double => say(format!(
            "{outside}, oil the lip with what it will run in, and fill the space between the two lips to a third to a half with \
             grease (common practice): full, it would be pressed out by its own warmth."
        )),
    }
}

fn cover(body: &SealBody) -> Option<Sentence> {
    let what = body.passes_over.filter(|thing| *thing != PassesOver::PlainShaft)?;
    Some(say(format!(
        "The lip goes over a {}: cover it with a thin sleeve or tape, oiled, and turn the shaft as it passes.",
        what.name()
    )))
}

/// Where the lip runs when the old one has worn a track.
fn worn(body: &SealBody, plan: &SealPlan) -> Option<Sentence> {
    let shift = plan.shift?;
    let size = |sentence: Sentence, length: Length| sentence.value(AnyValue::Size(length), Toward::Nearest);
    let sentence =
        size(say("The shaft has a track worn by the old lip: let the new lip run "), shift).text(" beside it");
    let sentence = if plan.stand.moved > Length::default() {
        sentence.text(
            ", by pressing the seal that much deeper than the old one lay; see that nothing behind it is in the way.",
        )
    } else if against_shoulder(body) {
        size(sentence.text(", with a ring of "), shift)
            .text(" between the seal and its shoulder: the seal then stands that much nearer the face.")
    } else {
        sentence.text(
            ", by pressing the seal that much less deep than the old one lay: what is behind it leaves no room to go deeper.",
        )
    };
    Some(sentence.text(
        " The depths given here include it. If the fingernail still catches where the lip would run, use a sleeve or another \
         shaft.",
    ))
}

fn against_shoulder(body: &SealBody) -> bool {
    body.shoulder.is_some_and(|shoulder| body.depth >= shoulder)
}

fn press(body: &SealBody, plan: &SealPlan) -> Sentence {
    let sentence = say("Press it in square and in one go with a flat driver of ")
        .value(AnyValue::RoughSize(plan.driver), Toward::Down)
        .text(" outside that bears on the outer edge of the case, never on the lip or its spring");
    let sentence = match plan.force {
        Some(force) => sentence
            .text("; expect ")
            .value(AnyValue::Force(force.least), Toward::Down)
            .text(" to ")
            .value(AnyValue::Force(force.most), Toward::Up)
            .text(" (a rough estimate)"),
        None => sentence,
    };
    match against_shoulder(body) {
        true if plan.shift.is_some() => sentence.text(", until it sits against the ring on its shoulder."),
        true => sentence.text(", until it sits against its shoulder."),
        false if plan.stand.below_face.abs() < Length::new::<uom::si::length::micrometer>(1.0) => {
            sentence.text(", until it is flush with the face.")
        }
        false => sentence
            .text(", until the face that goes in first is ")
            .value(AnyValue::Size(plan.stand.reached), Toward::Nearest)
            .text(" below the face of the housing."),
    }
}

/// How its depth is measured, and what the reading means.
fn measure(plan: &SealPlan) -> Sentence {
    say("Measure from the face of the housing to the outer edge of the case at four places: seated, it reads ")
        .value(AnyValue::Size(plan.reading.0), Toward::Nearest)
        .text(" to ")
        .value(AnyValue::Size(plan.reading.1), Toward::Nearest)
        .text(
            " (below zero it stands proud; the width of the seal may be off by that much). A reading that is less by some amount means \
             that it is still out by that amount; readings that differ by more than 0.1 mm show a seal that sits askew (common practice).",
        )
}

fn sealant(seal: &Seal) -> Sentence {
    if seal.fitted_first {
        say(
            "No sealant on the bore: the bearing would wipe it off as it passes and carry it into its raceways. If there must be some, put \
             a thin ring on the seal's own edge of the case alone (common practice).",
        )
    } else {
        say(
            "Sealant as a thin ring on the inner half of the lead-in only, so that the seal pushes the surplus outward and none reaches \
             bearing or lip (common practice).",
        )
    }
}
