//! What a report says of a soak.

use super::PlanError;
use super::model::{ConsumedCoolant, Soak};
use super::run::Run;
use super::soaking::Soaking;
use super::surroundings::{Pace, radiates};
use crate::quantity::{ThermodynamicTemperature, Time, warming};
use crate::stock::medium::Hazard;
use crate::thermal::{Coolant, dry_ice_sublimed, nitrogen_evaporated, time_error};
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
    let film = course.film_at(Pace::Slow, middle)?;
    let biot = course.biot(film.convective + film.radiative, middle);
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
        in_section: false,
        biot,
        film: film.convective,
        radiates: radiates(treatment),
        time_constant: if powered { None } else { Some(course.time_constant(Pace::Slow, middle)?) },
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
        medium_drift: slow.medium_drift(),
        middle_lag: course.middle_lag(middle),
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
    slow.first_time_at(course.counts, target).or_else(|| course.time_to(Pace::Slow, target).ok())
}

/// What evaporates from a cryogen to take up the heat of the piece; losses of the vessel come on top.
fn coolant(course: &Soaking<'_, '_>, slow: &Run, hold: Time) -> Result<Option<ConsumedCoolant>, PlanError> {
    let hazards = course.treatment.medium.hazards();
    let heat = slow.heat_given(course.subject.material.heat_capacity(), hold);
    let (coolant, used) = if hazards.contains(&Hazard::Cryogen) {
        (Coolant::Nitrogen, nitrogen_evaporated(heat, None)?)
    } else if hazards.contains(&Hazard::DryIce) {
        (Coolant::DryIce, dry_ice_sublimed(heat)?)
    } else {
        return Ok(None);
    };
    Ok(Some(ConsumedCoolant { coolant, mass: used.mass, volume: used.volume }))
}

fn mean(a: ThermodynamicTemperature, b: ThermodynamicTemperature) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(0.5 * (a.get::<kelvin>() + b.get::<kelvin>()))
}
