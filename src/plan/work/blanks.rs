//! What is read at each step of a seat, and where the work stops until it is so.

use super::{Blank, StepKind, WorkStep};
use crate::job::AnyValue;
use crate::plan::model::{Member, Plan, SeatPlan, Verdict, Window};
use crate::plan::sentence::{Sentence, say};
use crate::plan::steps::alarm;
use crate::quantity::{Cases, Length, Time, Toward};

/// A step with its readings and its hold point.
pub(super) fn step(plan: &Plan<'_>, seat: &SeatPlan, kind: StepKind, text: Sentence) -> WorkStep {
    let (hold_point, blanks) = match kind {
        StepKind::Prepare => prepare(seat),
        StepKind::Warm => (None, vec![kept("in at"), kept("out at"), warm(seat)]),
        StepKind::Chill => (None, vec![kept("in at"), kept("out at"), cold(seat)]),
        StepKind::Place => place(plan, seat),
        StepKind::Push => (None, vec![push(seat)]),
        StepKind::Finish => finish(plan, seat),
        StepKind::Check
        | StepKind::Stack
        | StepKind::Depth
        | StepKind::Gap
        | StepKind::Ring
        | StepKind::Seal
        | StepKind::SealPress
        | StepKind::SealDepth
        | StepKind::Screws => (None, Vec::new()),
    };
    WorkStep { hold_point, blanks, ..WorkStep::new(kind, text) }
}

pub(super) fn kept(what: &str) -> Blank {
    Blank { what: what.to_owned(), wanted: None }
}

fn prepare(seat: &SeatPlan) -> (Option<Sentence>, Vec<Blank>) {
    let blanks = vec![size(&seat.inner), size(&seat.outer), kept("both at (temperature)")];
    (
        Some(say("Go on only if both sizes lie within what the plan was made for; else plan again with the readings.")),
        blanks,
    )
}

fn size(member: &Member) -> Blank {
    let wanted = say("")
        .value(AnyValue::Size(member.smallest), Toward::Nearest)
        .text(" to ")
        .value(AnyValue::Size(member.largest), Toward::Nearest);
    Blank { what: format!("{} at 20 °C", member.name), wanted: Some(wanted) }
}

/// What the warmed part must measure. Of one treated part, the temperature on arrival that clears the tightest case; of two, the
/// one that the plan counts on, since each part's own limit holds only while the other is as planned.
fn warm(seat: &SeatPlan) -> Blank {
    let planned = seat.warm.as_ref().map(|soak| say("planned ").temperature(soak.end, Toward::Nearest));
    let alone = seat.clears_at.outer.filter(|_| clears(seat) && seat.chill.is_none());
    let needed = alone.map(|needed| say("").temperature(needed, Toward::Up).text(" or more at the seat"));
    Blank { what: format!("{} measures", seat.outer.name), wanted: needed.or(planned) }
}

/// As [`warm`], of the chilled part.
fn cold(seat: &SeatPlan) -> Blank {
    let planned = seat.chill.as_ref().map(|soak| say("planned ").temperature(soak.end, Toward::Nearest));
    let alone = seat.clears_at.inner.filter(|_| clears(seat) && seat.warm.is_none());
    let needed = alone.map(|needed| say("").temperature(needed, Toward::Down).text(" or colder at the seat"));
    Blank { what: format!("{} measures", seat.inner.name), wanted: needed.or(planned) }
}

fn clears(seat: &SeatPlan) -> bool {
    seat.verdict == Verdict::DropsIn
}

fn place(plan: &Plan<'_>, seat: &SeatPlan) -> (Option<Sentence>, Vec<Blank>) {
    let treated = match (&seat.warm, &seat.chill) {
        (Some(_), Some(_)) => "both parts are as warm and as cold as planned".to_owned(),
        (Some(_), None) => format!("the {} is as warm as planned", seat.outer.name),
        (None, _) => format!("the {} is as cold as planned", seat.inner.name),
    };
    let hold = match (clears(seat), seat.warm.is_some() && seat.chill.is_some()) {
        (true, true) => "Go on only if the temperatures above were reached; else put it back in and wait.".to_owned(),
        (true, false) => "Go on only if the temperature above was reached; else put it back in and wait.".to_owned(),
        (false, _) => format!("Go on only if the press stands ready and {treated}."),
    };
    let wanted = match seat.window.tightest {
        Window::Lasts(time) if time > plan.job.bench.carry => Some(say("less than ").duration(time, Toward::Down)),
        Window::Lasts(_) | Window::Always | Window::Beyond(_) => planned_carry(plan),
    };
    (Some(say(hold)), vec![Blank { what: "from medium to seat".to_owned(), wanted }])
}

/// The time on the way that the plan counts with; none where it counts with none.
fn planned_carry(plan: &Plan<'_>) -> Option<Sentence> {
    let carry = plan.job.bench.carry;
    (carry > Time::default()).then(|| say("planned ").duration(carry, Toward::Down))
}

/// The highest torque of a jig or force of a press, and what it must stay below.
fn push(seat: &SeatPlan) -> Blank {
    let screw = seat.means.as_ref().and_then(|means| means.screw.as_ref());
    if let Some(screw) = screw {
        let stop = screw.stop.map(|(stop, _)| say("never above ").value(AnyValue::Torque(stop), Toward::Down));
        return Blank { what: "highest torque".to_owned(), wanted: stop };
    }
    let pressed = seat.at_bore.clearance.tightest < Length::default();
    let wanted = pressed.then(|| say("stop at ").value(AnyValue::Force(alarm(seat)), Toward::Down));
    Blank { what: "highest force".to_owned(), wanted }
}

fn finish(plan: &Plan<'_>, seat: &SeatPlan) -> (Option<Sentence>, Vec<Blank>) {
    let turns = if plan.job.part.kind.is_bearing() { " and it turns freely" } else { "" };
    let hold = say(format!("Sign off only if no feeler goes behind it anywhere{turns}."));
    let mut blanks = vec![kept("thickest feeler that goes in")];
    blanks.extend(plan.bush_closes(seat).map(closed));
    (Some(hold), blanks)
}

/// The bore of a bush, which is smaller once it is in.
fn closed(by: &Cases<Length>) -> Blank {
    let wanted = say("smaller by ")
        .small(by.loosest, Toward::Nearest)
        .text(" to ")
        .small(by.tightest, Toward::Nearest)
        .text(" than before");
    Blank { what: "bore of the bush".to_owned(), wanted: Some(wanted) }
}
