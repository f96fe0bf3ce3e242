//! A shaft seal: its fit, its lip, its bore and shaft, and its neighbour.

use crate::job::{AnyValue, Job, Seal};
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::seal::{Demand, SealPlan};
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Length, Toward};
use crate::stock::seal_seats::SealCase;

/// What is said of a seal beside its place.
pub(super) fn of_job(job: &Job, seal: &Seal, plan: &SealPlan, found: &mut Vec<Caution>) {
    of_seal(seal, plan, found);
    shared(seal, plan, found);
    cold(job, seal, plan, found);
    sealant(job, seal, found);
    capacity(job, plan, found);
}

/// What is said of a seal, whatever it sits beside.
pub(super) fn of_seal(seal: &Seal, plan: &SealPlan, found: &mut Vec<Caution>) {
    loose(seal, plan, found);
    lip_speed(seal, plan, found);
    demands(plan, found);
}

/// A seal that has no interference in part of its limits.
fn loose(seal: &Seal, plan: &SealPlan, found: &mut Vec<Caution>) {
    let Some(fit) = plan.interference.filter(|fit| fit.loosest <= Length::default()) else { return };
    let another = match seal.body.as_deref().map(|body| body.case) {
        Some(SealCase::Metal) => "beyond H8 take a seal with a rubber case, a sleeve, or sealant on the bore",
        // Rubber makes up for more than metal does, and that is counted already.
        Some(SealCase::Rubber) | None => {
            "beyond H8 the bore wants a sleeve; sealant on the bore makes up for a little, if the maker of the seal allows it"
        }
    };
    let sentence = say("The seal may be loose in its bore: from ")
        .small(fit.loosest, Toward::Down)
        .text(" to ")
        .small(fit.tightest, Toward::Nearest)
        .text(format!(
            " of interference where every case should have some. It would turn, leak past its outside, or walk out. Measure the bore, \
             which is {}; {another}.",
            plan.bore_basis
        ));
    found.push(Caution::new("seal-loose", Level::Warning, sentence, plan.allowance_source.clone()));
}

/// A bore that is made for a bearing, not for a seal.
fn shared(seal: &Seal, plan: &SealPlan, found: &mut Vec<Caution>) {
    if !plan.shares_bore {
        return;
    }
    let way = if seal.fitted_first {
        "it is pressed along the whole seat of the bearing, whose finish it must not spoil; oil it well"
    } else {
        "the bearing goes in past the place of the seal, whose surface it must not score"
    };
    let mut sentence = say(format!("The seal shares the bearing's bore ({}): {way}.", plan.bore_basis));
    if let Some(fit) = plan.interference {
        sentence = sentence
            .text(" Its interference there is ")
            .small(fit.loosest, Toward::Down)
            .text(" to ")
            .small(fit.tightest, Toward::Up);
        sentence = sentence.text(", where a bore of H8 is what seals are made for.");
    }
    found.push(Caution::new("seal-shares-bore", Level::Note, sentence, plan.allowance_source.clone()));
}

const SPEED_SOURCE: &str = "charts of permissible lip speed in the manner of DIN 3760 (from memory); makers differ";

/// A lip that runs faster than its elastomer is used for.
fn lip_speed(seal: &Seal, plan: &SealPlan, found: &mut Vec<Caution>) {
    let Some(run) = plan.lip_speed else { return };
    let lip = seal.lip.id();
    let Some((safe, limit)) = run.safe.zip(run.limit) else {
        let sentence = say(format!("No speed limit for a lip of {lip} is known here: the shaft passes it at "))
            .value(AnyValue::SurfaceSpeed(run.speed), Toward::Up)
            .text("; ask its maker.");
        found.push(Caution::new("seal-lip-speed", Level::Note, sentence, SPEED_SOURCE));
        return;
    };
    if run.speed <= safe {
        return;
    }
    let over = run.speed > limit;
    let sentence = say("The shaft passes the lip at ")
        .value(AnyValue::SurfaceSpeed(run.speed), Toward::Up)
        .text(format!("; {lip} is used up to "))
        .value(AnyValue::SurfaceSpeed(safe), Toward::Down)
        .text(" by some makers and up to ")
        .value(AnyValue::SurfaceSpeed(limit), Toward::Down)
        .text(" by others, in plenty of oil and without pressure")
        .text(if over {
            ", and beyond that by none. The lip would overheat, harden and crack: take another elastomer, or ask the maker of the \
             seal."
        } else {
            ". Ask the maker of the seal."
        });
    let level = if over { Level::Warning } else { Level::Caution };
    found.push(Caution::new("seal-lip-speed", level, sentence, SPEED_SOURCE));
}

/// A bore or a shaft that is not what a seal asks for.
fn demands(plan: &SealPlan, found: &mut Vec<Caution>) {
    for demand in plan.demands.iter().filter(|demand| demand.met == Some(false)) {
        let Some(given) = demand.given.clone() else { continue };
        let sentence = wanted(
            say(format!("Seat of the seal, {}: ", demand.what))
                .value(given, Toward::Nearest)
                .text(" where it should be "),
            demand,
        );
        let sentence = sentence
            .text(". Put it right before the seal goes in; a new seal leaks on a wrong seat as the old one did.");
        found.push(Caution::new("seal-seat", Level::Caution, sentence, demand.source.clone()));
    }
}

/// "0.2 µm to 0.8 µm", "at least 45 HRC" or "at most 0.5 mm".
fn wanted(sentence: Sentence, demand: &Demand) -> Sentence {
    match (demand.low.clone(), demand.high.clone()) {
        (Some(low), Some(high)) => sentence.value(low, Toward::Nearest).text(" to ").value(high, Toward::Nearest),
        (Some(low), None) => sentence.text("at least ").value(low, Toward::Nearest),
        (None, Some(high)) => sentence.text("at most ").value(high, Toward::Nearest),
        (None, None) => sentence.text("otherwise"),
    }
}

/// A lip that meets a neighbour colder than it bears.
fn cold(job: &Job, seal: &Seal, plan: &SealPlan, found: &mut Vec<Caution>) {
    let Some(chill) = job.chill.as_ref().filter(|_| seal.fitted_first) else { return };
    let medium = chill.temperature;
    if medium >= plan.coldest {
        return;
    }
    let sentence = say(format!("The chilled {} may come to ", job.part.kind.noun()))
        .temperature(medium, Toward::Nearest)
        .text(format!(" and then stands beside the seal, whose {} bears ", seal.lip.id()))
        .temperature(plan.coldest, Toward::Up)
        .text(
            " at the coldest. Do not let the two touch and do not bend the lip until it is warm again, or fit the seal after the bearing.",
        );
    found.push(Caution::new(
        "seal-cold-neighbour",
        Level::Warning,
        sentence,
        seal.lip.coldest().provenance.to_string(),
    ));
}

/// Sealant that the bearing would wipe off.
fn sealant(job: &Job, seal: &Seal, found: &mut Vec<Caution>) {
    let asked = seal.body.as_deref().is_some_and(|body| body.sealant);
    if asked && seal.fitted_first {
        let sentence = say(format!(
            "Sealant on a bore through which the {} still has to pass is wiped into it: fit the seal after it, or put the sealant on the \
             edge of the seal's case alone.",
            job.part.kind.noun()
        ));
        found.push(Caution::new("seal-sealant", Level::Warning, sentence, PRACTICE));
    }
}

/// A press that may not do.
fn capacity(job: &Job, plan: &SealPlan, found: &mut Vec<Caution>) {
    let Some((force, capacity)) = plan.force.zip(job.press.capacity) else { return };
    if force.most > capacity {
        let sentence = say("The seal may need up to ")
            .value(AnyValue::Force(force.most), Toward::Up)
            .text(" to go in (a rough estimate), and the press gives ")
            .value(AnyValue::Force(capacity), Toward::Down)
            .text(". Look for a lead-in that is missing before you look for a larger press.");
        found.push(Caution::new("seal-force", Level::Caution, sentence, PRACTICE));
    }
}
