//! The cover's screws as steps.

use super::{Blank, Stage, StepKind, WorkStep};
use crate::job::AnyValue;
use crate::plan::fasteners::FastenersPlan;
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Ratio, Toward};
use uom::si::ratio::ratio;

/// By hand, round after round, and once more.
pub(super) fn stage(plan: &FastenersPlan) -> Stage {
    let order: Vec<String> = plan.order.iter().map(|number| (number + 1).to_string()).collect();
    let first = say(format!(
        "Run all screws in by hand. Each round in this order, by the numbers of the picture of the cover: {}.",
        order.join(" → ")
    ));
    let mut steps = vec![WorkStep::new(StepKind::Screws, first)];
    steps.extend(plan.stages.iter().map(|share| WorkStep::new(StepKind::Screws, round(plan, *share))));
    let last = say("Last, once round at the full torque, until none turns any more.");
    let spanner = Blank { what: "torque spanner no.".to_owned(), wanted: None };
    let none_turns = Some(say("Go on only when no screw turns any more."));
    steps.push(WorkStep { hold_point: none_turns, blanks: vec![spanner], ..WorkStep::new(StepKind::Screws, last) });
    Stage { title: "Cover screws".to_owned(), seat: None, steps }
}

fn round(plan: &FastenersPlan, share: f64) -> Sentence {
    let opening =
        say("Round at ").value(AnyValue::Share(Ratio::new::<ratio>(share)), Toward::Nearest).text(" of the torque: ");
    let each = plan.groups.iter().enumerate().fold(opening, |sentence, (number, group)| {
        let comma = if number > 0 { ", " } else { "" };
        sentence
            .text(format!("{comma}{} × {} to ", group.count, group.thread))
            .value(AnyValue::Torque(group.torque * share), Toward::Nearest)
    });
    each.text(".")
}
