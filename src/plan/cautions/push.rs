//! Force, torque, the wall, and what presses.

use crate::job::{AnyValue, Job, Piece};
use crate::mechanics::{STATIC_RATING_CAUTION, share_of_static_rating};
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::model::SeatPlan;
use crate::plan::push::{HowNear, MeansPlan, ScrewPlan, StopReason, WallModel, WallPlan};
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Force, Ratio, Toward};
use uom::si::ratio::ratio;

const SHAPE_SOURCE: &str = "finite elements of blind and through seats, 62 mm ring, housings of 75 to 120 mm outside \
                            (fits/seat_shapes.csv)";
const COMPUTED_SOURCE: &str =
    "own finite elements of the section; within 0.1 % of independent ones (tests/reference/section)";
const SHAFT_SOURCE: &str =
    "thick-wall rings (Lamé): a shaft as wide as the ring is the softest, a rigid one the stiffest";
const WALL_SOURCE: &str = "annular plate, edge held, Timoshenko and Woinowsky-Krieger; within 5 % of finite elements at its \
                           root (tests/reference/mechanics)";
const WALL_SECTION_SOURCE: &str = "own finite elements of the section: force and moment at the wall's root; within 3 % of independent \
                                   ones in deflection (tests/reference/section)";
const SCREW_SOURCE: &str =
    "balance of the thread's flank, ISO 724 sizes, ISO 898-1 proof stress; both ends of the friction";

/// What can go wrong while it is pushed.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    shape(seat, found);
    if let Some(wall) = &seat.wall {
        weak_wall(seat, wall, found);
    }
    match &seat.means {
        Some(means) => with_means(seat, means, found),
        None => too_small(seat, seat.at_bore.force.tightest, job.press.capacity, found),
    }
    right_ring(job, seat, found);
}

fn force(value: Force) -> AnyValue {
    AnyValue::Force(value)
}

fn opening(seat: &SeatPlan) -> String {
    format!("{} seat: ", seat.seat.name())
}

fn share(value: f64) -> AnyValue {
    AnyValue::Share(Ratio::new::<ratio>(value))
}

/// What the plane formula leaves out, and how well the factor on it is known.
fn shape(seat: &SeatPlan, found: &mut Vec<Caution>) {
    let shape = &seat.press.shape;
    let presses = seat.press.pressure.tightest.value > 0.0;
    let Some(known) = shape.known_words().filter(|_| presses) else { return };
    let text = format!(
        "{}the seat is stiffer than two rings of equal width. Pressure, force and change of the ring are those of the plane \
         formula times {} ({known}), the high end in the tightest case.",
        opening(seat),
        shape.words()
    );
    let text = match shape.at_shoulder {
        Some((_, most)) if most > 1.05 => {
            let kind = if shape.known == HowNear::Computed { "" } else { "up to " };
            format!("{text} The ring closes unevenly: at the shoulder {kind}{most:.1} times the mean.")
        }
        _ => text,
    };
    if shape.known == HowNear::Computed {
        found.push(Caution::new("seat-shape", Level::Note, say(text), COMPUTED_SOURCE));
        return;
    }
    let source = if shape.at_shoulder.is_some() { SHAPE_SOURCE } else { SHAFT_SOURCE };
    found.push(Caution::new("seat-shape", Level::Note, say(text), source));
}

fn weak_wall(seat: &SeatPlan, wall: &WallPlan, found: &mut Vec<Caution>) {
    let needed = seat.at_bore.force.tightest;
    let Some(allowable) = wall.allowable.filter(|allowable| needed > *allowable) else { return };
    let sentence = say(opening(seat) + "the tightest case may need ")
        .value(force(needed), Toward::Up)
        .text(", but the wall behind it is good for ")
        .value(force(allowable), Toward::Down)
        .text(format!(
            " (strength over stress {:.1}). Support the wall from behind right under the ring, or clear the fit by chill or \
             warmth; do not pull a jig up against it.",
            wall.reserve
        ));
    let source = match wall.model {
        WallModel::Plate => WALL_SOURCE,
        WallModel::Section => WALL_SECTION_SOURCE,
    };
    found.push(Caution::new("weak-wall", Level::Warning, sentence, source));
}

fn with_means(seat: &SeatPlan, means: &MeansPlan, found: &mut Vec<Caution>) {
    too_small(seat, means.needed, means.available, found);
    if let Some(words) = means.words {
        found.push(Caution::new("hammer", Level::Warning, say(format!("{}{words}.", opening(seat))), PRACTICE));
    }
    if let Some(screw) = &means.screw {
        weak_screw(seat, screw, found);
        crossing(seat, screw, found);
    }
}

fn too_small(seat: &SeatPlan, needed: Force, available: Option<Force>, found: &mut Vec<Caution>) {
    let Some(available) = available.filter(|available| needed > *available) else { return };
    let sentence = say(opening(seat) + "the tightest case may need ")
        .value(force(needed), Toward::Up)
        .text(", more than the press gives, ")
        .value(force(available), Toward::Down)
        .text(". It would stop half-way. Clear the fit by chill or warmth, or find a larger press.");
    found.push(Caution::new("press-too-small", Level::Warning, sentence, "press force of this plan"));
}

fn weak_screw(seat: &SeatPlan, screw: &ScrewPlan, found: &mut Vec<Caution>) {
    let Some(used) = screw.rod_share.filter(|share| *share > 1.0) else { return };
    let sentence = named(seat, screw)
        .text(" would bear ")
        .value(share(used), Toward::Up)
        .text(" of its proof stress, twist included: it takes a set or breaks. Take a larger or stronger screw.");
    found.push(Caution::new("weak-screw", Level::Warning, sentence, SCREW_SOURCE));
}

fn crossing(seat: &SeatPlan, screw: &ScrewPlan, found: &mut Vec<Caution>) {
    let Some((stop, reason)) = screw.stop.filter(|_| screw.crosses) else { return };
    let other = match reason {
        StopReason::Wall => "Oil the thread, measure the travel rather than the torque, and support the wall.",
        StopReason::Rod => "Oil the thread, and take a larger or stronger screw.",
    };
    let sentence = named(seat, screw)
        .text(" may need ")
        .value(AnyValue::Torque(screw.running.1), Toward::Up)
        .text(" to move the part, but ")
        .value(AnyValue::Torque(stop), Toward::Down)
        .text(format!(" may already be too much for {}, depending on its friction. {other}", reason.words()));
    found.push(Caution::new("torque-cannot-tell", Level::Warning, sentence, SCREW_SOURCE));
}

fn named(seat: &SeatPlan, screw: &ScrewPlan) -> Sentence {
    let class = screw.class.as_ref().map(|class| format!(" ({class})")).unwrap_or_default();
    say(format!("{}the {} screw{class}", opening(seat), screw.thread))
}

/// Force must not go through the rolling elements.
fn right_ring(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    if !job.part.kind.is_bearing() {
        return;
    }
    let ring = if seat.inner.piece == Piece::Part { "outer" } else { "inner" };
    let sentence = say(format!(
        "{}push on the {ring} ring only, with a driver that is square and clear of seal and cage. Force through the rolling \
         elements dents the raceways.",
        opening(seat)
    ));
    let other = if seat.inner.piece == Piece::Part { job.shaft.is_some() } else { job.housing.is_some() };
    let sentence = if other {
        sentence.text(" Where it goes into the housing and onto the shaft at once, the driver must bear on both rings.")
    } else {
        sentence
    };
    let needed = seat.at_bore.force.tightest;
    let used = job.part.static_rating.and_then(|rating| share_of_static_rating(needed, rating).ok());
    let Some(used) = used.filter(|used| *used > 0.0) else {
        found.push(Caution::new("push-right-ring", Level::Caution, sentence, PRACTICE));
        return;
    };
    let sentence =
        sentence.text(" The force of this plan is ").value(share(used), Toward::Up).text(" of the static load rating.");
    found.push(Caution::new("push-right-ring", Level::Caution, sentence, STATIC_RATING_CAUTION));
}
