//! Screws of the cover: too much torque, too little thread, a slip of the unit.

use crate::assembly::screws::UnitSlip;
use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::fasteners::{FastenersPlan, GroupPlan, STRIP_RESERVE, StripPlan};
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Force, Length, Ratio, Torque, Toward};
use uom::si::ratio::ratio;

const PRELOAD_SOURCE: &str =
    "balance of the thread's flank, both ends of the friction and of the tool; proof stress of ISO 898-1 or SAE J429";
const STRIP_SOURCE: &str = "shear areas of FED-STD-H28/2 and VDI 2230 (from memory, held against a printed table), threads at least \
                            metal; reserve of 1.25: common practice, no published source";

/// What can go wrong when the cover is screwed on.
pub(super) fn of_job(plan: &FastenersPlan, found: &mut Vec<Caution>) {
    let several = plan.groups.len() > 1;
    for (number, group) in plan.groups.iter().enumerate() {
        let name = if several {
            format!("{} cover screws (kind {})", group.thread, number + 1)
        } else {
            format!("{} cover screws", group.thread)
        };
        unit(group, &name, found);
        above_proof(group, &name, found);
        threads(group, &name, found);
        estimated(group, &name, found);
    }
}

fn torque(value: Torque) -> AnyValue {
    AnyValue::Torque(value)
}

fn force(value: Force) -> AnyValue {
    AnyValue::Force(value)
}

fn unit(group: &GroupPlan, name: &str, found: &mut Vec<Caution>) {
    let Some(slip) = group.slip else { return };
    let (much, other, meant) = match slip {
        UnitSlip::InchPoundsMeant(other) => ("far too much", other, "in·lb taken for ft·lb"),
        UnitSlip::FootPoundsMeant(other) => ("far too little", other, "ft·lb taken for in·lb"),
    };
    let sentence = say(format!("{name}: "))
        .value(torque(group.torque), Toward::Nearest)
        .text(format!(" is {much} for this size, and a factor of 12 away, "))
        .value(torque(other), Toward::Nearest)
        .text(format!(" would suit it: were {meant}? Look it up again before a spanner is set."));
    found.push(Caution::new("torque-unit", Level::Warning, sentence, PRACTICE));
}

fn limit(group: &GroupPlan, sentence: Sentence) -> Sentence {
    let Some((most, because)) = group.torque_limit else { return sentence };
    sentence
        .text(" With this friction and tool, torques up to ")
        .value(torque(most), Toward::Down)
        .text(format!(" stay below every limit; the first is {}.", because.words()))
}

fn above_proof(group: &GroupPlan, name: &str, found: &mut Vec<Caution>) {
    // An estimate keeps below the proof load by its making.
    let Some(proof) = group.proof_load.filter(|_| group.stated) else { return };
    let class = group.class.as_deref().unwrap_or_default();
    let opening = || say(format!("{name} ({class}): ")).value(torque(group.torque), Toward::Nearest);
    if group.preload.least > proof {
        let breaks = group.tensile_load.is_some_and(|tensile| group.preload.least > tensile);
        let end = if breaks { " and would tear it off." } else { " and stretches it for good." };
        let sentence = opening()
            .text(" pulls with ")
            .value(force(group.preload.least), Toward::Down)
            .text(" or more, above the proof load of ")
            .value(force(proof), Toward::Down)
            .text(format!(" in every case,{end}"));
        found.push(Caution::new("torque-above-proof", Level::Warning, limit(group, sentence), PRELOAD_SOURCE));
    } else if group.preload.most > proof {
        let sentence = opening()
            .text(" may pull with up to ")
            .value(force(group.preload.most), Toward::Up)
            .text(" where it is slippery, above the proof load of ")
            .value(force(proof), Toward::Down)
            .text(". Do not oil the threads unless the maker says so, and do not use a stretched screw again.");
        found.push(Caution::new("torque-may-pass-proof", Level::Caution, limit(group, sentence), PRELOAD_SOURCE));
    }
}

fn threads(group: &GroupPlan, name: &str, found: &mut Vec<Caution>) {
    let Some(strip) = &group.strip else { return };
    let needed = |sentence: Sentence| {
        sentence
            .value(AnyValue::RoughSize(strip.needed), Toward::Up)
            .text(format!(" of full thread would give a reserve of {STRIP_RESERVE} at this torque"))
    };
    let Some((length, reserve)) = group.engagement.zip(strip.reserve) else {
        let sentence = needed(say(format!("{name}: the length of engagement is not stated; in {} ", strip.material)))
            .text(". Measure how deep the screws go in with full threads, and state engagement.");
        found.push(Caution::new("engagement-unknown", Level::Note, sentence, STRIP_SOURCE));
        return;
    };
    if reserve >= STRIP_RESERVE || !group.stated {
        return;
    }
    let sentence = needed(weak(group, name, strip, (length, reserve)).text(" "))
        .text("; use longer screws where the hole allows, a thread insert, or less torque.");
    let (code, level) =
        if reserve < 1.0 { ("threads-strip", Level::Warning) } else { ("threads-little-reserve", Level::Caution) };
    found.push(Caution::new(code, level, limit(group, sentence), STRIP_SOURCE));
}

fn weak(group: &GroupPlan, name: &str, strip: &StripPlan, (length, reserve): (Length, f64)) -> Sentence {
    let bears = strip.loads.map(|loads| loads.least()).unwrap_or_default();
    say(format!("{name}: in "))
        .value(AnyValue::RoughSize(length), Toward::Nearest)
        .text(format!(" of {} the threads bear ", strip.material))
        .value(force(bears), Toward::Down)
        .text(", ")
        .value(AnyValue::Share(Ratio::new::<ratio>(reserve)), Toward::Down)
        .text(" of the highest preload, ")
        .value(force(group.preload.most), Toward::Up)
        .text(if reserve < 1.0 { ": they may be torn out." } else { ": little is in hand." })
}

fn estimated(group: &GroupPlan, name: &str, found: &mut Vec<Caution>) {
    let Some(because) = group.limited_by else { return };
    let sentence = say(format!("{name}: "))
        .value(torque(group.torque), Toward::Down)
        .text(format!(
            " is an estimate, the most that {} allows. A gasket, a thin cover or a soft boss may want less: the maker's value \
             goes before it.",
            because.words()
        ));
    found.push(Caution::new("torque-estimated", Level::Caution, sentence, "VDI 2230 Part 1, from memory; ISO 898-1"));
}
