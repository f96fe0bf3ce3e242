use crate::job::{AnyValue, Job, Piece};
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::in_section::{CHECKED_BIOT, PieceHeat, TIME_ERROR};
use crate::plan::model::{SeatKind, SeatPlan, Soak};
use crate::plan::sentence::say;
use crate::quantity::{Ratio, Toward};
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as step_kelvin;

/// Difference of the rings from which it is worth saying, K.
const RINGS_DIFFER_K: f64 = 5.0;

/// Where the models stop being trustworthy.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    for soak in seat.chill.iter().chain(&seat.warm) {
        if !soak.in_section {
            one_temperature(seat, soak, found);
        }
        rings(seat, soak, found);
    }
    for piece in seat.section_heat.iter().flat_map(|heat| &heat.pieces) {
        uneven_heat(job, seat, piece, found);
    }
    let both = job.housing.is_some() && job.shaft.is_some();
    if both && seat.seat == SeatKind::Housing {
        let sentence = say(
            "The two seats are planned as two operations, the other part of each being at the temperature of the shop. \
             Fit the tighter seat first, and let all come to one temperature in between.",
        );
        found.push(Caution::new("two-seats", Level::Note, sentence, PRACTICE));
    }
}

const ERROR_SOURCE: &str = "exact conduction in walls, cylinders and rings (tests/reference/bodies)";

/// Biot number up to which a piece may be taken as one temperature where no bound of the error is computed: F. P. Incropera and
/// D. P. DeWitt, Fundamentals of Heat and Mass Transfer, from memory.
const SMALL_BIOT: f64 = 0.1;

/// How far off the time may be because each body has one temperature.
fn one_temperature(seat: &SeatPlan, soak: &Soak, found: &mut Vec<Caution>) {
    let opening = say(format!("{} seat: the Biot number {} is ", seat.seat.name(), soak.phrase))
        .value(AnyValue::Number(soak.biot), Toward::Nearest);
    let share = |off: f64| AnyValue::Share(Ratio::new::<ratio>(off));
    let far = ": the piece is far from one temperature while it changes, and is not followed in its section here; its times may \
               be off by ";
    let instead = ". Hold it longer, or ask for the plan of this job alone with the length of the seat in it.";
    let (level, sentence) = match soak.time_error {
        Some(error) if error.needs_section => {
            let off = share(error.largest());
            (Level::Caution, opening.text(far).text("about ").value(off, Toward::Up).text(instead))
        }
        Some(error) if error.largest() > TIME_ERROR => {
            let sentence = opening.text(", and its times may be off by ").value(share(error.largest()), Toward::Up);
            (Level::Note, sentence.text(" because the piece is taken as one temperature."))
        }
        // Too thick a wall, or too quick a film, for the solutions that the bound was fitted to.
        None if soak.biot > CHECKED_BIOT => {
            (Level::Caution, opening.text(far).text("more than this plan can tell").text(instead))
        }
        None if soak.biot > SMALL_BIOT => {
            let text = ", where one temperature is meant for a tenth or less, and no bound of its error is computed for a wall as \
                        thick as this: take the times as rough, and measure.";
            (Level::Note, opening.text(text))
        }
        _ => return,
    };
    found.push(Caution::new("not-one-temperature", level, sentence, ERROR_SOURCE));
}

/// Share of its strength from which the stress of uneven heat is a warning: half of a brittle piece, two thirds of a ductile one.
///
/// Common practice, no published source: the reserves that a wall is given too.
const STRAINED: (f64, f64) = (0.5, 1.0 / 1.5);

const UNEVEN_SOURCE: &str = "conduction and stress of the free piece in its section, elastic; discs and cylinders within 0.5 % of closed \
                             forms; strength of the material's file at 20 °C";

/// What a quench or a quick warm-up does to a piece that is not of one temperature.
fn uneven_heat(job: &Job, seat: &SeatPlan, piece: &PieceHeat, found: &mut Vec<Caution>) {
    let stress = &piece.stress;
    let limit = if stress.brittle { STRAINED.0 } else { STRAINED.1 };
    if stress.share < limit {
        return;
    }
    let name = match piece.piece {
        Piece::Part => job.part.kind.noun(),
        Piece::Housing => "housing",
        Piece::Shaft => "shaft",
    };
    let (kind, end) = if stress.brittle { ("tension", "crack") } else { ("stress", "take a set or warp") };
    let sentence = say(format!("{} seat: the {name} is so uneven in temperature that the {kind} in it comes to ", seat.seat.name()))
        .value(AnyValue::Pressure(stress.stress), Toward::Up)
        .text(", ")
        .value(AnyValue::Share(Ratio::new::<ratio>(stress.share)), Toward::Up)
        .text(" of its strength, after ")
        .value(AnyValue::Duration(stress.after), Toward::Nearest)
        .text(format!(
            ". Corners, casting flaws and old welds add to it: it may {end}. Warm or cool it slowly, in steps, or choose a milder \
             medium."
        ));
    found.push(Caution::new("uneven-heat-stress", Level::Warning, sentence, UNEVEN_SOURCE));
}

/// A bearing whose rings part company on the way.
fn rings(seat: &SeatPlan, soak: &Soak, found: &mut Vec<Caution>) {
    let Some(difference) = soak.ring_difference.filter(|d| d.get::<step_kelvin>().abs() >= RINGS_DIFFER_K) else {
        return;
    };
    if soak.piece != Piece::Part {
        return;
    }
    let inner_warmer = difference.get::<step_kelvin>() > 0.0;
    let step = AnyValue::TemperatureStep(if inner_warmer { difference } else { -difference });
    let sentence = say(format!("{} seat: {} the inner ring is up to ", seat.seat.name(), soak.phrase))
        .value(step, Toward::Up)
        .text(if inner_warmer { " warmer" } else { " colder" })
        .text(" than the outer one on the way; the temperatures of this plan are those of the ring that fits.");
    let sentence = if inner_warmer && soak.share_reached.is_none() {
        sentence.text(" The internal clearance closes meanwhile: warm gently, and feel that the bearing turns.")
    } else {
        sentence.text(" Hold it until boiling or bubbling has died down, so that no ring moves on the bench.")
    };
    found.push(Caution::new("rings-differ", Level::Caution, sentence, THREE_BODIES));
}

const THREE_BODIES: &str = "outer ring, rolling elements and inner ring as three bodies; contact between them is an \
                            estimate, within a factor of three";
