use crate::job::AnyValue;
use crate::job::{Job, Piece};
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::model::{SeatKind, SeatPlan, Soak};
use crate::plan::sentence::say;
use crate::quantity::Toward;

/// Biot number up to which one body with its internal resistance is close in time.
///
/// Exact conduction in walls and cylinders against the corrected single body: see the tests of `thermal`.
const BIOT_LIMIT: f64 = 1.0;

/// Biot number from which the rings of a bearing no longer cool together.
const BIOT_ONE_BODY: f64 = 0.1;

/// Where the models stop being trustworthy.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    for soak in seat.chill.iter().chain(&seat.warm) {
        biot(job, seat, soak, found);
    }
    let shoulder = job.housing.as_ref().is_some_and(|housing| housing.shoulder.is_some());
    if seat.seat == SeatKind::Housing && shoulder && seat.press.pressure.tightest.value > 0.0 {
        let sentence = say(
            "housing seat: the plane formula for two rings of equal width is used. In a blind bore with a shoulder, pressure \
             and press force are higher than it says: 10 to 37 % of the true value is missing in comparable seats.",
        );
        found.push(Caution::new("plane-formula", Level::Note, sentence, SECTION_SOURCE));
    }
    found.extend(one_sided(job, seat));
    let both = job.housing.is_some() && job.shaft.is_some();
    if both && seat.seat == SeatKind::Housing {
        let sentence = say(
            "The two seats are planned as two operations, the other part of each being at the temperature of the shop. \
             Fit the tighter seat first, and let all come to one temperature in between.",
        );
        found.push(Caution::new("two-seats", Level::Note, sentence, PRACTICE));
    }
}

const SECTION_SOURCE: &str = "finite elements of blind and through seats, 62 mm ring, housings of 75 to 120 mm outside \
                              (tests/reference/mechanics)";

fn biot(job: &Job, seat: &SeatPlan, soak: &Soak, found: &mut Vec<Caution>) {
    let bearing = soak.piece == Piece::Part && job.part.kind.is_bearing();
    if soak.biot > BIOT_LIMIT {
        let sentence = say(format!("{} seat: the Biot number {} is ", seat.seat.name(), soak.phrase))
            .value(AnyValue::Number(soak.biot), Toward::Nearest)
            .text(", above 1: the piece is far from one temperature while it changes. Times are a rough guide; hold it longer.");
        found.push(Caution::new("not-one-temperature", Level::Caution, sentence, PRACTICE));
    } else if bearing && soak.biot > BIOT_ONE_BODY {
        let sentence = say(format!("{} seat: {} the rings of a bearing do not change together: ", seat.seat.name(), soak.phrase))
            .text("the exposed ring leads and the other follows. Hold it until boiling or bubbling has died down, or longer than planned.");
        found.push(Caution::new("rings-differ", Level::Caution, sentence, PRACTICE));
    }
}

/// A bearing whose inner ring alone warms loses internal clearance.
fn one_sided(job: &Job, seat: &SeatPlan) -> Option<Caution> {
    let warm = seat.warm.as_ref()?;
    let induced = warm.time_constant.is_none();
    (induced && warm.piece == Piece::Part && job.part.kind.is_bearing()).then(|| {
        let sentence = say(
            "shaft seat: an induction heater warms the inner ring first, and the internal clearance closes while it leads. \
             Warm gently, and feel that the bearing turns.",
        );
        Caution::new("inner-ring-leads", Level::Caution, sentence, PRACTICE)
    })
}
