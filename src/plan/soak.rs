//! What a report says of a soak.

use super::PlanError;
use super::model::{ConsumedCoolant, Soak};
use super::run::Run;
use super::surroundings::{Pace, radiates};
use super::track::Soaking;
use crate::quantity::{Area, HeatTransfer, ThermodynamicTemperature, Time, warming};
use crate::stock::medium::Hazard;
use crate::thermal::{Coolant, dry_ice_sublimed, nitrogen_evaporated, radiation_coefficient, time_error};
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Share of the full change at which waiting longer gains nothing that a shop could measure.
pub(super) const ENOUGH_SHARE: f64 = 0.95;

/// Share of the full change at which the error of the model is stated: where a plan takes a piece out.
const ERROR_AT_SHARE: f64 = 0.9;

/// How a soak ended.
pub(super) struct Ends {
    pub(super) hold: Time,
    pub(super) end: ThermodynamicTemperature,
    pub(super) end_quick: ThermodynamicTemperature,
}

pub(super) fn soak(course: &Soaking<'_, '_>, slow: &Run, on_bench: &Run, ends: &Ends) -> Result<Soak, PlanError> {
    let (job, subject, treatment) = (course.job, course.subject, course.treatment);
    let start = job.bench.temperature;
    let middle = mean(start, ends.end);
    let film = film_at(course, Pace::Slow, middle)?;
    let biot = biot(course, film.convective + film.radiative, middle);
    let powered = treatment.power.get::<watt>() > 0.0;
    let whole = warming(treatment.temperature, start).get::<step_kelvin>();
    let share = warming(ends.end, start).get::<step_kelvin>() / whole;
    let share_reached = (!powered && share.is_finite()).then_some(share);
    Ok(Soak {
        piece: subject.piece,
        medium: treatment.medium.id().to_owned(),
        phrase: treatment.medium.phrase().to_owned(),
        medium_temperature: treatment.temperature,
        hold_rule: treatment.hold,
        biot,
        film: film.convective,
        radiates: radiates(treatment),
        time_constant: if powered { None } else { Some(time_constant(course, Pace::Slow, middle)?) },
        hold: ends.hold,
        end: ends.end,
        end_quick: ends.end_quick,
        mass: subject.mass,
        area: subject.shape.area,
        three_bodies: slow.ring_difference().is_some(),
        ring_difference: slow.ring_difference(),
        time_error: subject.error_shape().and_then(|shape| time_error(shape, biot, ERROR_AT_SHARE).ok()),
        share_reached,
        enough_after: enough_after(course, slow, share_reached),
        coolant: coolant(course, slow, ends.hold)?,
        water: job.bench.humidity.map(|_| on_bench.water()),
    })
}

/// Time at which the piece has come so far that waiting longer gains nothing.
fn enough_after(course: &Soaking<'_, '_>, slow: &Run, share_reached: Option<f64>) -> Option<Time> {
    share_reached?;
    let start = course.job.bench.temperature;
    let way = ENOUGH_SHARE * warming(course.treatment.temperature, start);
    let target = start + way;
    slow.first_time_at(course.counts, target).or_else(|| course.until(Pace::Slow, target).ok().map(|(_, time)| time))
}

/// What evaporates from a cryogen to take up the heat of the piece; losses of the vessel come on top.
fn coolant(course: &Soaking<'_, '_>, slow: &Run, hold: Time) -> Result<Option<ConsumedCoolant>, PlanError> {
    let hazards = course.treatment.medium.hazards();
    let heat = slow.heat_given(hold);
    let (coolant, used) = if hazards.contains(&Hazard::Cryogen) {
        (Coolant::Nitrogen, nitrogen_evaporated(heat, None)?)
    } else if hazards.contains(&Hazard::DryIce) {
        (Coolant::DryIce, dry_ice_sublimed(heat)?)
    } else {
        return Ok(None);
    };
    Ok(Some(ConsumedCoolant { coolant, mass: used.mass, volume: used.volume }))
}

/// Convection and linearised radiation at a temperature of the surface.
struct Films {
    convective: HeatTransfer,
    radiative: HeatTransfer,
}

fn film_at(course: &Soaking<'_, '_>, pace: Pace, surface: ThermodynamicTemperature) -> Result<Films, PlanError> {
    let place = course.place(pace);
    let main = place.plate.as_ref().unwrap_or(&place.around);
    let radiative = if main.emissivity > 0.0 {
        radiation_coefficient(main.emissivity, surface, main.temperature)?
    } else {
        HeatTransfer::default()
    };
    Ok(Films { convective: main.film.at(surface)?, radiative })
}

fn biot(course: &Soaking<'_, '_>, film: HeatTransfer, at: ThermodynamicTemperature) -> f64 {
    let conductivity = course.subject.material.conductivity().at_inside(at.get::<kelvin>());
    film.value * course.subject.shape.path.length.value / conductivity
}

/// Time constant with the film at a temperature, `m c / (A h_eff)`.
pub(super) fn time_constant(
    course: &Soaking<'_, '_>,
    pace: Pace,
    at: ThermodynamicTemperature,
) -> Result<Time, PlanError> {
    let films = film_at(course, pace, at)?;
    let (subject, film) = (course.subject, films.convective + films.radiative);
    let wrapped = film.value / (1.0 + film.value * course.place(pace).around.wrap.resistance_m2k_w());
    let inside = 1.0 + biot(course, film, at) / subject.shape.path.divisor;
    let area: Area = if course.place(pace).plate.is_some() { subject.face } else { subject.shape.area };
    let capacity = subject.mass.value * subject.material.heat_capacity().at_inside(at.get::<kelvin>());
    Ok(Time::new::<uom::si::time::second>(capacity * inside / (wrapped * area.value)))
}

fn mean(a: ThermodynamicTemperature, b: ThermodynamicTemperature) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(0.5 * (a.get::<kelvin>() + b.get::<kelvin>()))
}
