use crate::job::Job;
use crate::plan::caution::{Caution, Level};
use crate::plan::limits::{self, Limit};
use crate::plan::model::{Grip, GripTime, SeatPlan};
use crate::plan::sentence::say;
use crate::quantity::{ThermodynamicTemperature, Toward};
use crate::stock::medium::{Direction, Hazard, Medium, embedded_media};
use uom::si::time::second;

const EXCHANGE: &str = "exchange of heat over the closing gap, air and radiation; early by up to 5 % against finite elements \
                        (tests/reference/bore)";

/// Time in the seat below which the part must be home in one movement.
const ONE_MOVEMENT_S: f64 = 60.0;

/// What happens once the part stands in its seat.
pub(super) fn of_seat(job: &Job, seat: &SeatPlan, found: &mut Vec<Caution>) {
    let Some(grip) = seat.grip else { return };
    match grip.times.tightest {
        GripTime::Grips(time) if time.get::<second>() < ONE_MOVEMENT_S => grips_soon(seat, &grip, found),
        GripTime::FreeUntilLock(time) => {
            let sentence = say(format!(
                "{} seat: the part stays free in its seat until both have come to the lock temperature, ",
                seat.seat.name()
            ))
            .text("about ")
            .duration(time, Toward::Up)
            .text(" in the tightest case. Hold it against its stop until it grips, or it will creep back.");
            found.push(Caution::new("hold-until-lock", Level::Caution, sentence, EXCHANGE));
        }
        GripTime::Grips(_) | GripTime::DoesNotGoIn | GripTime::StaysFree => {}
    }
    if grip.chilling_shortens {
        chilling_shortens(seat, &grip, found);
    }
    stops_half_way(job, seat, &grip, found);
}

fn grips_soon(seat: &SeatPlan, grip: &Grip, found: &mut Vec<Caution>) {
    let GripTime::Grips(time) = grip.times.tightest else { return };
    let mut sentence =
        say(format!("{} seat: once it stands in its seat the tightest case grips ", seat.seat.name())).after(time);
    // What grips at once cannot grip sooner on one side.
    let one_sided = match grip.one_sided {
        GripTime::Grips(one_sided) if time.get::<second>() >= 1.0 => Some(one_sided),
        _ => None,
    };
    if let Some(one_sided) = one_sided {
        sentence = sentence.text(", or ").after(one_sided).text(" if it lies on one side");
    }
    let sentence = sentence.text(". It must be home in one movement; do not stop to look.");
    found.push(Caution::new("grips-soon", Level::Caution, sentence, EXCHANGE));
}

fn chilling_shortens(seat: &SeatPlan, grip: &Grip, found: &mut Vec<Caution>) {
    let sentence = say(format!(
        "{} seat: chilling makes it worse. The cold part draws the warm one down and grips sooner",
        seat.seat.name()
    ));
    let sentence = match grip.unchilled {
        Some(GripTime::Grips(time) | GripTime::FreeUntilLock(time)) => sentence
            .text("; left at the temperature of the shop it would go in as well and stay free for ")
            .duration(time, Toward::Down),
        _ => sentence.text("; left at the temperature of the shop it would go in as well and stay free for hours"),
    };
    let sentence = sentence.text(". Leave the chill out.");
    found.push(Caution::new("chilling-shortens", Level::Warning, sentence, EXCHANGE));
}

fn stops_half_way(job: &Job, seat: &SeatPlan, grip: &Grip, found: &mut Vec<Caution>) {
    let opening = say(format!("{} seat: if it stops half-way, do not hammer. ", seat.seat.name()));
    let sentence = match grip.frees_at {
        Some(temperature) => {
            let colder = temperature < job.bench.temperature;
            let toward = if colder { Toward::Down } else { Toward::Up };
            let sentence = opening.text("Both parts brought together to ").temperature(temperature, toward);
            if let Some(limit) = limit_passed(job, seat, (temperature, colder)) {
                sentence
                    .text(format!(" would free the tightest case, but that is beyond the limit of the {}, ", limit.of))
                    .temperature(limit.limit.temperature, if colder { Toward::Up } else { Toward::Down })
                    .text(": it must be pressed on, or drawn.")
            } else if is_given(job, (temperature, colder)) {
                sentence.text(" free the tightest case; see the limits first.")
            } else {
                sentence
                    .text(" would free the tightest case, but no usual medium gives that to parts that stand together: it must ")
                    .text("be pressed on, or drawn.")
            }
        }
        None => opening
            .text("No common temperature of both parts frees the tightest case: it must be pressed on, or drawn."),
    };
    found.push(Caution::new("stops-half-way", Level::Note, sentence, EXCHANGE));
}

/// The strictest limit of either part that stands between the shop and a temperature.
fn limit_passed<'j>(
    job: &'j Job,
    seat: &SeatPlan,
    (temperature, colder): (ThermodynamicTemperature, bool),
) -> Option<Limit<'j>> {
    let pieces = [seat.inner.piece, seat.outer.piece].into_iter();
    if colder {
        let passed = pieces.flat_map(|piece| limits::cold(job, piece)).filter(|it| it.limit.temperature > temperature);
        passed.reduce(|a, b| if a.limit.temperature >= b.limit.temperature { a } else { b })
    } else {
        let all = pieces.flat_map(|piece| limits::hot(job, seat.seat, piece));
        let passed = all.filter(|it| it.limit.temperature < temperature);
        passed.reduce(|a, b| if a.limit.temperature <= b.limit.temperature { a } else { b })
    }
}

/// Whether a medium of the library or of the job brings parts that stand together to a temperature, or past it.
///
/// A cryogenic liquid is none: its temperature cannot be set, and a seat with a part stuck in it is not put into one.
fn is_given(job: &Job, (temperature, colder): (ThermodynamicTemperature, bool)) -> bool {
    let own = job.chill.iter().chain(&job.warm).map(|treatment| treatment.medium.clone());
    let gives = |medium: &Medium| {
        let range = medium.temperature();
        match medium.direction() {
            Direction::Chill => colder && range.low <= temperature && !medium.hazards().contains(&Hazard::Cryogen),
            Direction::Warm => !colder && range.high >= temperature,
            Direction::Air => false,
        }
    };
    embedded_media().unwrap_or_default().into_iter().chain(own).any(|medium| gives(&medium))
}
