//! The order of work for one seat, with this job's numbers.

use super::answer::{in_hand, whither};
use super::dial::between_marks;
use super::model::{Driver, GripTime, Plan, SeatKind, SeatPlan, Soak, Verdict, Window};
use super::push::ALARM;
use super::sentence::{Sentence, say};
use super::work::StepKind;
use crate::job::{AnyValue, Hold, Job, Piece};
use crate::quantity::{Force, Length, Toward};
use uom::si::length::millimeter;
use uom::si::time::second;

/// How far a driver stays inside the bore, or clear of the shaft, mm.
///
/// Common practice, no published source.
const DRIVER_SPARE_MM: f64 = 0.5;

/// The driver that bears on the ring that is pushed, clear of seal and cage; none for a part without rings of its own.
pub(super) fn driver(job: &Job, seat: SeatKind) -> Option<Driver> {
    let part = &job.part;
    let (bore, ring) = part.bore.zip(part.outer_ring_inside).filter(|_| part.kind.is_bearing())?;
    let spare = Length::new::<millimeter>(DRIVER_SPARE_MM);
    let (inside, outside) = match seat {
        SeatKind::Housing => (ring, part.outside - spare),
        SeatKind::Shaft => (bore + spare, part.inner_ring_outside),
    };
    Some(Driver { inside, outside })
}

/// How long to hold the part against its stop.
fn hold(seat: &SeatPlan, sentence: Sentence) -> Sentence {
    let held = match seat.grip.map(|grip| grip.times.tightest) {
        Some(GripTime::Grips(time) | GripTime::FreeUntilLock(time)) => Some(time),
        Some(GripTime::DoesNotGoIn | GripTime::StaysFree) | None => None,
    };
    match held {
        Some(time) => sentence
            .text(", and hold it against its stop until it grips, ")
            .duration(time, Toward::Up)
            .text(" or more."),
        None => sentence.text(", and hold it against its stop until both parts are at one temperature."),
    }
}

/// When to stop pressing: at the force that nothing explains, or at what the press gives where that comes first.
fn press_home(seat: &SeatPlan, sentence: Sentence) -> Sentence {
    let given = seat.means.as_ref().and_then(|means| means.available);
    match given.filter(|given| *given < seat.at_bore.force.tightest) {
        Some(given) => sentence
            .text(", more than the press gives. If it stands still at ")
            .value(AnyValue::Force(given), Toward::Down)
            .text(", take it out again."),
        None => sentence
            .text(". If ")
            .value(AnyValue::Force(alarm(seat)), Toward::Down)
            .text(" is needed before it is home, stop and find out why."),
    }
}

/// Force at which to stop before the part is home.
pub(super) fn alarm(seat: &SeatPlan) -> Force {
    seat.means.as_ref().map_or(seat.at_bore.force.tightest * ALARM, |means| means.alarm)
}

/// What the jig's spanner feels, and where it stops.
fn with_jig(seat: &SeatPlan, sentence: Sentence) -> Sentence {
    let Some(screw) = seat.means.as_ref().and_then(|means| means.screw.as_ref()) else { return sentence };
    let sentence = if screw.running.1.value > 0.0 {
        sentence
            .text(format!(" On the {} jig that is up to ", screw.thread))
            .value(AnyValue::Torque(screw.running.1), Toward::Up)
            .text("; it is home when the torque rises and nothing moves any more")
    } else {
        sentence
            .text(format!(" The {} jig turns lightly until it is home; then the torque rises at once", screw.thread))
    };
    let sentence = match &screw.landing {
        Some(landing) => sentence
            .text(": from first touch to the stop torque it may take only ")
            .value(AnyValue::Angle(landing.turn_to_limit), Toward::Down)
            .text(" of a turn, so turn slowly."),
        None => sentence.text("."),
    };
    match screw.stop {
        Some((stop, reason)) => sentence
            .text(" Never go above ")
            .value(AnyValue::Torque(stop), Toward::Down)
            .text(format!(": more would be too much for {}.", reason.words())),
        None => sentence,
    }
}

impl Plan<'_> {
    /// What to do, in order. Empty when the job must not be done as planned.
    pub fn steps(&self, seat: &SeatPlan) -> Vec<Sentence> {
        self.seat_steps(seat).into_iter().map(|(_, step)| step).collect()
    }

    /// What to do, in order, with what sort of step each is.
    pub(super) fn seat_steps(&self, seat: &SeatPlan) -> Vec<(StepKind, Sentence)> {
        if self.verdict == Verdict::DoNot {
            return Vec::new();
        }
        let prepare = "Clean both seats, take off burrs, check the lead-in, and measure both parts at one temperature.";
        let mut steps = vec![(StepKind::Prepare, say(prepare))];
        steps.extend(seat.warm.as_ref().map(|soak| (StepKind::Warm, self.warm(seat, soak))));
        steps.extend(seat.chill.as_ref().map(|soak| (StepKind::Chill, self.soak(soak))));
        steps.extend(self.place(seat).map(|step| (StepKind::Place, step)));
        steps.push((StepKind::Push, self.drive(seat)));
        steps.push((StepKind::Finish, self.finish(seat)));
        steps
    }

    /// Warming, with the mark of the dial where the temperature lies between two.
    fn warm(&self, seat: &SeatPlan, soak: &Soak) -> Sentence {
        let sentence = self.soak(soak);
        let treatment = self.job.warm.as_ref().filter(|warm| warm.piece == soak.piece);
        match treatment.and_then(|warm| between_marks(self.job, seat.seat, warm)) {
            Some(mark) => sentence.text(" Set the dial to ").temperature(mark, Toward::Down).text("."),
            None => sentence,
        }
    }

    fn piece(&self, piece: Piece) -> &'static str {
        match piece {
            Piece::Part => self.job.part.kind.noun(),
            Piece::Housing => "housing",
            Piece::Shaft => "shaft",
        }
    }

    fn soak(&self, soak: &Soak) -> Sentence {
        let chills = soak.end < self.job.bench.temperature;
        let (verb, toward) = if chills { ("Chill", Toward::Down) } else { ("Warm", Toward::Up) };
        let powered = soak.time_constant.is_none();
        let opening = say(format!("{verb} the {} {}", self.piece(soak.piece), soak.phrase));
        let opening = if powered { opening } else { opening.text(" at ").temperature(soak.medium_temperature, toward) };
        let reached = if chills { "; it comes out at " } else { "; it comes out at about " };
        match soak.hold_rule {
            Hold::Reaches(target) => opening
                .text(" until it measures ")
                .temperature(target, toward)
                .text(", about ")
                .duration(soak.hold, Toward::Up)
                .text("."),
            Hold::For(_) | Hold::Settled => opening
                .text(" for ")
                .duration(soak.hold, Toward::Up)
                .text(reached)
                .temperature(soak.end, Toward::Nearest)
                .text("."),
        }
    }

    fn place(&self, seat: &SeatPlan) -> Option<Sentence> {
        if !seat.is_treated() {
            return None;
        }
        let ready = "Have driver, oil and gloves ready. Place it ";
        let sentence = if self.job.bench.carry.get::<second>() < 1.0 {
            say(format!("{ready}as soon as it is out"))
        } else {
            say(format!("{ready}within ")).duration(self.job.bench.carry, Toward::Down).text(" of taking it out")
        };
        Some(match (seat.window.tightest, in_hand(seat.window.tightest, self.job.bench.carry)) {
            (Window::Lasts(window), Some(spare)) if spare.value > 0.0 => sentence
                .text("; the placing clearance is gone after ")
                .duration(window, Toward::Down)
                .text(" in the tightest case, so ")
                .duration(spare, Toward::Down)
                .text(" are in hand."),
            _ => sentence.text("; every second of delay costs clearance."),
        })
    }

    fn drive(&self, seat: &SeatPlan) -> Sentence {
        let pushed = if seat.inner.piece == Piece::Part { "outer ring" } else { "inner ring" };
        let by = if self.job.part.kind.is_bearing() { format!(" by the {pushed}") } else { String::new() };
        if seat.verdict == Verdict::DropsIn && !seat.is_treated() {
            let square = if by.is_empty() { "square".to_owned() } else { format!("square and{by}") };
            return say(format!(
                "Slide it home {} by hand, {square}, with a film of oil on both seats. If it sticks it tilts, or a burr holds \
                 it: take it out and look, and do not force it.",
                whither(seat)
            ));
        }
        let sentence = self.drive_home(seat, &by);
        with_jig(seat, self.with_driver(seat, sentence))
    }

    /// The face that the driver bears on: the ring that is pushed, clear of seal and cage.
    fn with_driver(&self, seat: &SeatPlan, sentence: Sentence) -> Sentence {
        let Some(driver) = &seat.driver else { return sentence };
        sentence
            .text(" The driver is at least ")
            .value(AnyValue::RoughSize(driver.inside), Toward::Up)
            .text(" inside and at most ")
            .value(AnyValue::RoughSize(driver.outside), Toward::Down)
            .text(" outside.")
    }

    fn drive_home(&self, seat: &SeatPlan, by: &str) -> Sentence {
        let force = AnyValue::Force(seat.at_bore.force.tightest);
        match seat.verdict {
            Verdict::DropsIn => hold(seat, say(format!("Push it home {} in one movement{by}", whither(seat)))),
            _ if seat.at_bore.clearance.tightest >= Length::default() => {
                say(format!("Push it home {}{by} in one movement; it may need a light push throughout.", whither(seat)))
            }
            _ => press_home(
                seat,
                say(format!("Press it {}{by}, square and without stopping; expect up to ", whither(seat)))
                    .value(force, Toward::Up),
            ),
        }
    }

    fn finish(&self, seat: &SeatPlan) -> Sentence {
        let what = if self.job.part.kind.is_bearing() { ", and that the bearing turns freely" } else { "" };
        let stop = if seat.seat == SeatKind::Housing && self.job.housing.as_ref().is_some_and(|h| h.shoulder.is_some())
        {
            "shoulder"
        } else {
            "stop"
        };
        let treated = seat.chill.is_some() || seat.warm.is_some();
        let (opening, oil) = if treated {
            ("When all is at one temperature again, check", "wipe off water and oil the seat against rust")
        } else {
            ("Check", "oil the seat against rust")
        };
        say(format!("{opening} that it sits against its {stop} all round{what}; {oil}."))
    }
}
