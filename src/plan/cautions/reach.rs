use super::{Caution, Level, PRACTICE};
use crate::job::Job;
use crate::plan::model::{SeatPlan, Verdict, Window};
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Length, Time, Toward};
use uom::si::time::second;

const EXPANSION: &str = "thermal expansion of both materials (see sources)";

/// Time in hand, beyond carrying, below which the job is a race.
const COMFORTABLE_S: f64 = 10.0;

/// Whether the planned chill and warm-up reach what they are for.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    if seat.chill.is_none() && seat.warm.is_none() {
        return;
    }
    does_not_clear(seat, found);
    short_window(job, seat, found);
}

fn does_not_clear(seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(remedy) = seat.remedy else { return };
    let middle_too = seat.verdict >= Verdict::Press;
    let (code, case) = if middle_too {
        ("does-not-clear-middle", "even the middle case")
    } else {
        ("does-not-clear-tightest", "the tightest case")
    };
    let left = seat.at_bore.clearance.tightest;
    let mut sentence =
        say(format!("{} seat: {case} does not get the placing clearance. The tightest lacks ", seat.seat.name()))
            .small(remedy.short_by, Toward::Up);
    if left < Length::default() {
        sentence = sentence.text(", with ").small(-left, Toward::Up).text(" of interference left");
    }
    found.push(Caution::new(code, Level::Warning, ways(seat, sentence), EXPANSION));
}

/// Names the temperature of either part that would do it.
fn ways(seat: &SeatPlan, sentence: Sentence) -> Sentence {
    let Some(remedy) = seat.remedy else { return sentence };
    let inner = |sentence: Sentence| match remedy.inner_at {
        Some(at) => {
            sentence.text(format!("the {} at ", seat.inner.name)).temperature(at, Toward::Down).text(" or colder")
        }
        None => sentence,
    };
    let outer = |sentence: Sentence| match remedy.outer_at {
        Some(at) => {
            sentence.text(format!("the {} at ", seat.outer.name)).temperature(at, Toward::Up).text(" or warmer")
        }
        None => sentence,
    };
    match (remedy.inner_at, remedy.outer_at) {
        (None, None) => sentence.text(". No temperature of either part alone, within its material's table, clears it."),
        (Some(_), None) => inner(sentence.text(". It would clear with ")).text(" on arrival; see the limits first."),
        (None, Some(_)) => outer(sentence.text(". It would clear with ")).text(" on arrival; see the limits first."),
        (Some(_), Some(_)) => outer(inner(sentence.text(". It would clear with ")).text(", or "))
            .text(", on arrival; see the limits first."),
    }
}

fn short_window(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Window::Lasts(window) = seat.window.tightest else { return };
    let in_hand = window - job.bench.carry;
    if in_hand.get::<second>() > COMFORTABLE_S || window.get::<second>() <= 0.0 || in_hand < Time::default() {
        return;
    }
    let sentence = say(format!("{} seat: the tightest case has ", seat.seat.name()))
        .duration(window, Toward::Down)
        .text(" in shop air, and carrying takes ")
        .duration(job.bench.carry, Toward::Up)
        .text(". Rehearse the placing dry, or bring the medium closer.");
    found.push(Caution::new("short-window", Level::Caution, sentence, PRACTICE));
}
