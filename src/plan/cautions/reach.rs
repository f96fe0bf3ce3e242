use crate::job::Job;
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::clearance::is_enough;
use crate::plan::limits;
use crate::plan::model::{SeatPlan, Verdict, Window};
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Length, Time, Toward};
use uom::si::time::second;

const EXPANSION: &str = "thermal expansion of both materials (see sources)";

/// Time in hand, beyond carrying, up to which even a race has to be rehearsed.
///
/// Common practice, no published source.
const REHEARSED_S: f64 = 10.0;

/// Whether the planned chill and warm-up reach what they are for, and what would.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let short_by = seat.history.placing_clearance - seat.at_bore.clearance.tightest;
    if !is_enough(seat.at_bore.clearance.tightest, seat.history.placing_clearance) {
        if seat.is_treated() {
            found.push(does_not_clear(job, seat, short_by));
        } else {
            let opening = say(format!("{} seat: neither part is chilled or warmed. ", seat.seat.name()));
            found.push(Caution::new("would-clear", Level::Note, ways(job, seat, opening), EXPANSION));
        }
    }
    short_window(job, seat, found);
}

fn does_not_clear(job: &Job, seat: &SeatPlan, short_by: Length) -> Caution {
    let middle_too = seat.verdict >= Verdict::Press;
    let (code, case) = if middle_too {
        ("does-not-clear-middle", "even the middle case")
    } else {
        ("does-not-clear-tightest", "the tightest case")
    };
    let left = seat.at_bore.clearance.tightest;
    let mut sentence =
        say(format!("{} seat: {case} does not get the placing clearance. The tightest lacks ", seat.seat.name()))
            .small(short_by, Toward::Up);
    if left < Length::default() {
        sentence = sentence.text(", with ").small(-left, Toward::Up).text(" of interference left");
    }
    let sentence = ways(job, seat, sentence.text(". "));
    let sentence = match seat.time_to_clear.tightest.zip(seat.longest_hold()) {
        Some((needed, planned)) if needed > planned => sentence
            .text(" Held for ")
            .duration(needed, Toward::Up)
            .text(" instead, it has that clearance as it comes out; hold it longer still for the way to the seat."),
        _ => sentence,
    };
    Caution::new(code, Level::Warning, sentence, EXPANSION)
}

/// Names the temperature of either part that would clear the tightest case, and whether a limit stands in the way.
fn ways(job: &Job, seat: &SeatPlan, sentence: Sentence) -> Sentence {
    let needed = seat.clears_at;
    let (inner, outer) = (needed.inner.is_some(), needed.outer.is_some());
    if !inner && !outer {
        return sentence.text("No temperature of either part alone, within its material's table, clears it.");
    }
    let sentence = sentence.text("The tightest case would clear with ");
    let sentence = with_inner(job, seat, sentence);
    let sentence = if inner && outer { sentence.text(", or ") } else { sentence };
    with_outer(job, seat, sentence).text(", on arrival.")
}

fn with_inner(job: &Job, seat: &SeatPlan, sentence: Sentence) -> Sentence {
    let Some(needed) = seat.clears_at.inner else { return sentence };
    let sentence =
        sentence.text(format!("the {} at ", seat.inner.name)).temperature(needed, Toward::Down).text(" or colder");
    match limits::coldest(&limits::cold(job, seat.inner.piece)).filter(|limit| needed < *limit) {
        Some(limit) => sentence.text(" (beyond its limit of ").temperature(limit, Toward::Up).text(")"),
        None => sentence,
    }
}

fn with_outer(job: &Job, seat: &SeatPlan, sentence: Sentence) -> Sentence {
    let Some(needed) = seat.clears_at.outer else { return sentence };
    let sentence =
        sentence.text(format!("the {} at ", seat.outer.name)).temperature(needed, Toward::Up).text(" or warmer");
    match limits::hottest(&limits::hot(job, seat.seat, seat.outer.piece)).filter(|limit| needed > *limit) {
        Some(limit) => sentence.text(" (beyond the limit of ").temperature(limit, Toward::Down).text(")"),
        None => sentence,
    }
}

fn short_window(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Window::Lasts(window) = seat.window.tightest else { return };
    let in_hand = window - job.bench.carry;
    if in_hand.get::<second>() > REHEARSED_S || window.get::<second>() <= 0.0 || in_hand < Time::default() {
        return;
    }
    let sentence = say(format!("{} seat: the tightest case has ", seat.seat.name()))
        .duration(window, Toward::Down)
        .text(" in shop air, and carrying takes ")
        .duration(job.bench.carry, Toward::Up)
        .text(". Rehearse the placing dry, or bring the medium closer.");
    found.push(Caution::new("short-window", Level::Caution, sentence, PRACTICE));
}
