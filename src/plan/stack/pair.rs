use super::model::PairPlan;
use crate::assembly::stack::{Chain, Groove, Link, Way, axial_play};
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
    let mut plan = PairPlan {
        shoulders: (pair.shoulders.least, pair.shoulders.most),
        spacer: (pair.spacer.least, pair.spacer.most),
        difference,
        axial_play: fitted(job, play)?,
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

fn steps(plan: &PairPlan) -> Vec<Sentence> {
    let zero = Length::default();
    let size = |sentence: Sentence, length: Length| sentence.value(AnyValue::Size(length), Toward::Nearest);
    let middle = plan.difference.middle;
    let order = if middle > zero {
        size(
            say(
                "Drive the first bearing home to its shoulder by its outer ring, put the spacer in, and drive the second one, by both \
                 rings at once, only until its inner ring touches the spacer: its outer ring then stands ",
            ),
            middle,
        )
        .text(" off its shoulder. Never drive both outer rings home.")
    } else if middle < zero {
        size(say("Add a shim of "), -middle).text(
            " to the spacer before the axle is tightened; then drive both outer rings home. Without it the axle draws the inner rings \
             together.",
        )
    } else {
        say("Drive both outer rings home; the spacer then touches both inner rings.")
    };
    vec![
        say(
            "Measure the spacer and the distance of the shoulders with the same gauge, at one temperature, before anything is driven in.",
        ),
        order,
        say(
            "Tighten the axle by hand and turn: it must run freely with a trace of end play; if it drags, the sign of the difference is wrong.",
        ),
    ]
}
