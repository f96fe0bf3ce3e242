//! What was read and found on the parts.

use crate::assembly::readings::Widest;
use crate::job::{AnyValue, Feel, Job, RemovedThrough};
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::inspection::{FormPlan, InspectionPlan, LEAST_LEAD_IN_MM, Reuse};
use crate::plan::sentence::say;
use crate::quantity::{Length, Toward};
use uom::si::length::{micrometer, millimeter};

const FORM_SOURCE: &str = "cylindricity of half IT5 on the radius for a bearing seat, rule of bearing handbooks (from memory); IT5 of \
                           ISO 286-1";
const RUN_OUT_SOURCE: &str =
    "run-out of a bearing seat within IT6, rule of bearing handbooks (from memory); IT6 of ISO 286-1";

/// Directions with which an oval is hardly missed.
const ENOUGH_DIRECTIONS: usize = 3;

pub(super) fn of_job(job: &Job, plan: &InspectionPlan, found: &mut Vec<Caution>) {
    for form in &plan.forms {
        out_of_round(form, found);
        tapered(form, found);
        few_directions(form, found);
    }
    bearing(job, plan, found);
    measured(job, plan, found);
}

/// What a difference of two readings may be off by its last digits, µm: a form of just what is allowed is allowed.
const ROUNDING_UM: f64 = 0.001;

fn is_more(found: Length, allowed: Length) -> bool {
    (found - allowed).get::<micrometer>() > ROUNDING_UM
}

fn out_of_round(plan: &FormPlan, found: &mut Vec<Caution>) {
    let Some(out) = plan.form.out_of_round.filter(|out| is_more(*out, plan.allowed)) else { return };
    let sentence = say(format!("{} seat: the {} is out of round by ", plan.seat.name(), plan.name))
        .small(out, Toward::Up)
        .text(", more than the ")
        .small(plan.allowed, Toward::Down)
        .text(
            " that a bearing seat may have. A thin ring takes its form: the raceway becomes oval, and one side holds less than \
             the other. The middle case is that of the mean diameter, the other two those of the extremes. Bore it true, sleeve it, or \
             fit it only where the maker allows it.",
        );
    found.push(Caution::new("seat-out-of-round", Level::Warning, sentence, FORM_SOURCE));
}

fn tapered(plan: &FormPlan, found: &mut Vec<Caution>) {
    let Some(taper) = plan.form.taper.filter(|taper| is_more(*taper, plan.allowed)) else { return };
    let place = match plan.form.widest {
        Some(Widest::Mouth) => "largest at the first depth",
        Some(Widest::Bottom) => "largest at the last depth",
        _ => "largest between its ends",
    };
    let sentence = say(format!("{} seat: the {} is tapered by ", plan.seat.name(), plan.name))
        .small(taper, Toward::Up)
        .text(", more than ")
        .small(plan.allowed, Toward::Down)
        .text(format!(", and {place}: the ring sits on part of its width, tilts, and creeps sooner."));
    found.push(Caution::new("seat-tapered", Level::Warning, sentence, FORM_SOURCE));
}

fn few_directions(plan: &FormPlan, found: &mut Vec<Caution>) {
    if plan.readings.directions() >= ENOUGH_DIRECTIONS {
        return;
    }
    let sentence = say(format!(
        "{} seat: the {} was read in {} direction{} only; the largest and the smallest diameter may lie between them. Read three or \
         more. No two-point gauge sees a form of three lobes.",
        plan.seat.name(),
        plan.name,
        plan.readings.directions(),
        if plan.readings.directions() == 1 { "" } else { "s" }
    ));
    found.push(Caution::new("few-directions", Level::Note, sentence, PRACTICE));
}

fn bearing(job: &Job, plan: &InspectionPlan, found: &mut Vec<Caution>) {
    let Some(inspection) = job.inspection.as_ref().filter(|_| plan.reuse == Some(Reuse::Replace)) else { return };
    let mut reasons = Vec::new();
    if let Some(feel) = inspection.feel.filter(|feel| *feel != Feel::Smooth) {
        reasons.push(format!("it feels {}", feel.name()));
    }
    if inspection.removed == Some(RemovedThrough::RollingElements) {
        reasons.push("it was taken out through its rolling elements, which dents the raceways".to_owned());
    }
    let sentence = say(format!("replace the bearing: {}.", reasons.join(", and ")));
    found.push(Caution::new("replace-bearing", Level::Warning, sentence, PRACTICE));
}

fn measured(job: &Job, plan: &InspectionPlan, found: &mut Vec<Caution>) {
    if let Some((run_out, allowed)) = plan.run_out.filter(|(run_out, allowed)| run_out > allowed) {
        let sentence = say("shaft seat: it runs out by ")
            .small(run_out, Toward::Up)
            .text(", more than ")
            .small(allowed, Toward::Down)
            .text(". Look for a bent shaft or a burr under the other bearing before the new one goes on.");
        found.push(Caution::new("shaft-runs-out", Level::Warning, sentence, RUN_OUT_SOURCE));
    }
    let Some(inspection) = &job.inspection else { return };
    let least = Length::new::<millimeter>(LEAST_LEAD_IN_MM);
    if let Some(length) = inspection.lead_in.filter(|length| *length < least) {
        let sentence = say("the chamfer at the mouth is ")
            .value(AnyValue::RoughSize(length), Toward::Nearest)
            .text(" long, less than ")
            .value(AnyValue::RoughSize(least), Toward::Nearest)
            .text(": the ring's edge may shave the seat and start askew. Break the edge by hand before fitting.");
        found.push(Caution::new("short-lead-in", Level::Caution, sentence, PRACTICE));
    }
    let Some(track) = &plan.lip_track else { return };
    let (low, high) = track.wanted;
    if let Some(ra) = inspection.lip_track.filter(|ra| *ra < low || *ra > high) {
        let effect = if ra > high { "it wears the lip" } else { "it carries no oil under the lip" };
        let sentence = say("the track of the seal's lip has Ra ")
            .small(ra, Toward::Nearest)
            .text(", outside ")
            .small(low, Toward::Nearest)
            .text(" to ")
            .small(high, Toward::Nearest)
            .text(format!(": {effect}. Polish or grind it without feed, so that no spiral is left."));
        found.push(Caution::new("lip-track", Level::Caution, sentence, track.source.clone()));
    }
}
