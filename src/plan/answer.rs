//! The answer in one sentence a seat, the same words in every output.

use super::caution::Caution;
use super::model::{GripTime, Plan, SeatKind, SeatPlan, Verdict, Window};
use super::options;
use super::sentence::{Sentence, say};
use crate::job::{AnyValue, PartKind};
use crate::quantity::{Cases, Length, Time, Toward};
use uom::si::time::second;

impl Plan<'_> {
    /// The answer for one seat: what happens, with the number that decides it.
    pub fn answer(&self, seat: &SeatPlan) -> Sentence {
        let noun = self.job.part.kind.noun();
        let opening = say(format!("The {noun} "));
        let answer = match seat.verdict {
            Verdict::DropsIn => race(seat, self.job.bench.carry, drops_in(seat, opening)),
            Verdict::SomeWillNot => some_will_not(seat, opening),
            Verdict::Press => press(seat, opening),
            Verdict::DoNot => self.forbidden(),
        };
        let answer = if seat.fit.undecided() { answer.text(UNDECIDED) } else { answer };
        unread(&self.job.part.unread_suffixes, answer)
    }

    /// How far the bore of a bush closes in its housing; none for other parts and seats, and where nothing presses.
    pub fn bush_closes<'s>(&self, seat: &'s SeatPlan) -> Option<&'s Cases<Length>> {
        let is_bush = seat.seat == SeatKind::Housing && self.job.part.kind == PartKind::PlainBush;
        let closes = seat.press.ring_change.as_ref().filter(|_| is_bush);
        closes.filter(|closes| closes.tightest > Length::default())
    }

    /// The finding that forbids the job.
    fn forbidden(&self) -> Sentence {
        match self.cautions.iter().find(|caution| caution.forbids()).map(Caution::sentence) {
            Some(sentence) => sentence.clone(),
            None => say("A limit is passed; see the cautions."),
        }
    }
}

const UNDECIDED: &str = " But the measurement cannot decide whether the joint is loose or tight: measure again, more \
                         finely, before you rely on this.";

/// What of the designation was not read: it may mean another closure or clearance than the plan counts with.
fn unread(suffixes: &[String], answer: Sentence) -> Sentence {
    if suffixes.is_empty() {
        return answer;
    }
    answer.text(format!(
        " Of the designation, {} was not read: closure, clearance and class are those of the job, or assumed.",
        suffixes.join(" and ")
    ))
}

/// That it is a race, where it drops in with less time than the list of ways calls enough.
fn race(seat: &SeatPlan, carry: Time, answer: Sentence) -> Sentence {
    let (in_hand_enough, in_seat_enough) = options::comfortable();
    let at_seat = in_hand(seat.window.tightest, carry).is_some_and(|time| time < in_hand_enough);
    let in_seat = seat.free_in_seat().is_some_and(|time| time < in_seat_enough);
    let [in_hand_enough, in_seat_enough] = [in_hand_enough, in_seat_enough].map(|time| time.get::<second>());
    let lacks = match (at_seat, in_seat) {
        (false, false) => return answer,
        (true, false) => format!("less than {in_hand_enough:.0} s in hand at the seat"),
        (false, true) => format!("less than {in_seat_enough:.0} s free in the seat"),
        (true, true) => {
            format!(
                "less than {in_hand_enough:.0} s in hand at the seat, and less than {in_seat_enough:.0} s free in it"
            )
        }
    };
    answer.text(format!(" It is a race: {lacks}."))
}

/// "into the housing" or "onto the shaft".
pub(super) fn whither(seat: &SeatPlan) -> &'static str {
    match seat.seat {
        SeatKind::Housing => "into the housing",
        SeatKind::Shaft => "onto the shaft",
    }
}

/// How the part goes when nothing holds it back.
fn verb(seat: &SeatPlan) -> &'static str {
    match seat.seat {
        SeatKind::Housing => "drop in",
        SeatKind::Shaft => "slide on",
    }
}

/// A clearance fit without chill or warmth: there is no hurry, and nothing that grips.
fn by_hand(seat: &SeatPlan, opening: Sentence) -> Sentence {
    opening
        .text(format!(
            "goes {} by hand at the temperature of the shop: the fit is loose in every case, with ",
            whither(seat)
        ))
        .small(seat.at_bore.clearance.tightest, Toward::Down)
        .text(" to ")
        .small(seat.at_bore.clearance.loosest, Toward::Up)
        .text(" of clearance. Nothing has to be chilled, warmed or pressed.")
}

fn drops_in(seat: &SeatPlan, opening: Sentence) -> Sentence {
    if !seat.is_treated() {
        return by_hand(seat, opening);
    }
    let verb = if seat.seat == SeatKind::Housing { "drops" } else { "slides" };
    let sentence = opening
        .text(format!("{verb} {} with ", whither(seat)))
        .small(seat.at_bore.clearance.tightest, Toward::Down)
        .text(" of clearance in the tightest case");
    let sentence = match seat.window.tightest {
        Window::Lasts(time) => {
            sentence.text(", if it is placed within ").duration(time, Toward::Down).text(" of being taken out.")
        }
        Window::Always | Window::Beyond(_) => sentence.text("."),
    };
    match seat.grip.map(|grip| grip.times.tightest) {
        Some(GripTime::Grips(time)) => sentence.text(" In the seat it grips ").after(time).text("."),
        Some(GripTime::FreeUntilLock(time)) => {
            sentence.text(" In the seat it stays free for about ").duration(time, Toward::Down).text(".")
        }
        Some(GripTime::DoesNotGoIn | GripTime::StaysFree) | None => sentence,
    }
}

fn some_will_not(seat: &SeatPlan, opening: Sentence) -> Sentence {
    let left = seat.at_bore.clearance.tightest;
    let sentence = opening
        .text(format!("goes {} freely with ", whither(seat)))
        .small(seat.at_bore.clearance.middle, Toward::Down)
        .text(" of clearance in the middle case, but ");
    if left >= Length::default() {
        return sentence
            .text("the tightest case has only ")
            .small(left, Toward::Down)
            .text(format!(", too little to {} unaided; be ready to press.", verb(seat)));
    }
    sentence
        .text("the tightest case keeps ")
        .small(-left, Toward::Up)
        .text(" of interference; be ready to press with up to ")
        .value(AnyValue::Force(seat.at_bore.force.tightest), Toward::Up)
        .text(".")
}

fn press(seat: &SeatPlan, opening: Sentence) -> Sentence {
    let left = seat.at_bore.clearance.tightest;
    if left >= Length::default() {
        return opening
            .text(format!("has to be pushed {}: the tightest case has only ", whither(seat)))
            .small(left, Toward::Down)
            .text(format!(" of clearance, too little to {} unaided.", verb(seat)));
    }
    let sentence = opening
        .text(format!("has to be pressed {}: up to ", whither(seat)))
        .value(AnyValue::Force(seat.at_bore.force.tightest), Toward::Up)
        .text(" for ")
        .small(-left, Toward::Up)
        .text(" of interference in the tightest case");
    if seat.is_treated() {
        sentence
            .text(" (cold-pressed at the temperature of the shop: up to ")
            .value(AnyValue::Force(seat.press.force.tightest), Toward::Up)
            .text(").")
    } else {
        sentence.text(".")
    }
}

/// Time in hand at the seat, when there is a window.
pub(super) fn in_hand(window: Window, carry: Time) -> Option<Time> {
    match window {
        Window::Lasts(time) if time > carry => Some(time - carry),
        Window::Lasts(_) => Some(Time::default()),
        Window::Always | Window::Beyond(_) => None,
    }
}
