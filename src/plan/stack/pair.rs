use super::model::{Binds, PairPlan, SpacerFit};
use crate::assembly::stack::{Chain, Ends, Groove, Link, Way, axial_play};
use crate::job::{AnyValue, BearingPair, Job, PartKind};
use crate::plan::PlanError;
use crate::plan::push::InternalClearancePlan;
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Length, Toward};
use crate::stock::dimensions::{Raceways, RollingElement};

pub(super) fn plan(job: &Job, pair: &BearingPair, play: Option<&InternalClearancePlan>) -> Result<PairPlan, PlanError> {
    let chain = Chain::new(vec![
        Link { least: pair.spacer.least, most: pair.spacer.most, way: Way::Opens },
        Link { least: pair.shoulders.least, most: pair.shoulders.most, way: Way::Fills },
    ])?;
    let difference = chain.worst_case();
    let axial_play = fitted(job, play)?;
    let mut plan = PairPlan {
        shoulders: (pair.shoulders.least, pair.shoulders.most),
        spacer: (pair.spacer.least, pair.spacer.most),
        difference,
        fit: fit(difference),
        binds: axial_play.map(|play| binds(difference, play)),
        axial_play,
        steps: Vec::new(),
    };
    plan.steps = steps(&plan);
    Ok(plan)
}

/// Axial play of a deep groove ball bearing as fitted.
fn fitted(job: &Job, play: Option<&InternalClearancePlan>) -> Result<Option<(Length, Length)>, PlanError> {
    let Some((play, bore)) = play.zip(job.part.bore).filter(|_| job.part.kind == PartKind::BallBearing) else {
        return Ok(None);
    };
    let ball = Raceways::estimate(bore, job.part.outside, RollingElement::Ball)?.element;
    let axial = |radial: Length| axial_play(radial.max(Length::default()), ball, Groove::default());
    Ok(Some((axial(play.fitted.least)?, axial(play.fitted.most)?)))
}

fn fit(difference: Ends) -> SpacerFit {
    let zero = Length::default();
    match (difference.least, difference.most) {
        (least, most) if least >= zero && most <= zero => SpacerFit::Equal,
        (least, _) if least >= zero => SpacerFit::Longer,
        (_, most) if most <= zero => SpacerFit::Shorter,
        _ => SpacerFit::Either,
    }
}

/// The play of one bearing is what the two take up: half of it each, from the middle of their outer rings.
fn binds(difference: Ends, (least, most): (Length, Length)) -> Binds {
    let worst = difference.most.max(-difference.least);
    let best = difference.least.max(-difference.most).max(Length::default());
    if best > most {
        Binds::Always
    } else if worst > least {
        Binds::Sometimes
    } else {
        Binds::Never
    }
}

const STOP_AT_SPACER: &str = "drive the first bearing home to its shoulder by its outer ring, put the spacer in, and drive the second \
                              one, by both rings at once, only until its inner ring touches the spacer";
const NEVER_BOTH: &str = " off its shoulder. Never drive both outer rings home.";

fn order(plan: &PairPlan) -> Sentence {
    let size = |sentence: Sentence, length: Length| sentence.value(AnyValue::Size(length), Toward::Nearest);
    let span = |sentence: Sentence, least: Length, most: Length| {
        if least < most { size(size(sentence, least).text(" to "), most) } else { size(sentence, most) }
    };
    let Ends { least, most, .. } = plan.difference;
    match plan.fit {
        SpacerFit::Equal => say("Drive both outer rings home; the spacer then touches both inner rings."),
        SpacerFit::Longer => span(
            say(format!("The spacer is the longer one: {STOP_AT_SPACER}. Its outer ring then stands ")),
            least,
            most,
        )
        .text(NEVER_BOTH),
        SpacerFit::Shorter => {
            span(say("Add a shim to the spacer before the axle is tightened, as thick as it is short, "), -most, -least)
                .text("; then drive both outer rings home. Without it the axle draws the inner rings together.")
        }
        SpacerFit::Either => {
            let sentence = size(say("Within its limits the spacer may be up to "), most);
            let sentence = size(sentence.text(" too long or up to "), -least).text(
                " too short, so that the readings decide. Too short: add a shim as thick as it is short, and drive both outer rings \
                 home. Too long: ",
            );
            sentence.text(format!("{STOP_AT_SPACER}; its outer ring then stands the difference")).text(NEVER_BOTH)
        }
    }
}

fn steps(plan: &PairPlan) -> Vec<Sentence> {
    vec![
        say(
            "Measure the spacer and the distance of the shoulders with the same gauge, at one temperature, before anything is driven in.",
        ),
        order(plan),
        say(
            "Tighten the axle by hand and turn: it must run freely with a trace of end play. If it drags, the inner rings are pushed apart or drawn together: slacken it, and \
             measure spacer and shoulders again.",
        ),
    ]
}
