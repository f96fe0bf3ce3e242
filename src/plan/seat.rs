//! One seat, from its fit to its service.

use super::basis::{self, Basis};
use super::clearance::{Course, Diameters, EACH, from_kelvin};
use super::clearance_history::ClearanceHistory;
use super::grip::{self, Seated};
use super::histories::{Histories, Treated};
use super::holds;
use super::in_section::{self, OneBody, SectionHeat, WithoutSection};
use super::joint::{Joint, Side};
use super::liner::{self, Strained};
use super::model::{AtBore, ClearsAt, Fit, SeatKind, SeatPlan, ServiceFit, Window};
use super::push::{self, Presser};
use super::steps;
use super::verdict;
use super::{Extent, Method, PlanError, SolvedSeats};
use crate::fit::{self, FitKind};
use crate::job::{Job, ServiceEnd, ServiceState};
use crate::quantity::{
    Cases, Length, Nanometres, Pressure, ThermodynamicTemperature, Time, Torque, reference_temperature,
};
use crate::thermal::temperature_for_strain;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;
use uom::si::torque::newton_meter;

pub(super) fn plan(
    job: &Job,
    joint: &Joint<'_>,
    method: (Method, &SolvedSeats),
    extent: Extent,
) -> Result<SeatPlan, PlanError> {
    let diameters = Diameters::new(joint);
    let presser = Presser::new(job, joint, method)?;
    let (inner, outer, section_heat) = heated(job, joint, (&diameters, &presser, &method.1.histories), extent.heat)?;
    let placing = placing(job, joint, &diameters);
    let course = course(&diameters, (&inner, &outer), placing);
    let fit = fit_at_reference(job, joint, &diameters)?;
    let at_bore = at_bore(job, joint, &course, &presser)?;
    let (window, within) = (course.window(), course.time_to_clear());
    let soaks = (inner.soak.as_ref(), outer.soak.as_ref());
    let lock = diameters.lock();
    let shop = job.bench.temperature.get::<kelvin>();
    let frees_at = lock.tightest.filter(|_| diameters.clearance(shop, shop).tightest < 0.0);
    let grip = grip::grip(job, joint, &at_bore, (latest(&course, window.tightest), frees_at, extent.pages), soaks)?;
    let (mut grip, seated) = grip.unzip();
    if let Some((grip, race)) = grip.as_mut().zip(section_heat.as_ref().ok().and_then(|heat| heat.race.as_ref())) {
        grip.go_by(race);
    }
    let shown = seated.as_ref().filter(|_| extent.pages);
    let standing = shown.map_or(Ok(Vec::new()), |seated| standing(job, joint, seated))?;
    let holds = holds::shortest(job, joint, &course, within);
    let press = at_shop(job, joint, &diameters, &presser)?;
    let service = service(job, joint, (&diameters, &presser))?;
    let needed = at_bore.force.tightest;
    let tight = effective(job, joint, &at_bore.clearance)?.tightest.max(Length::default());
    let wall = if joint.seat == SeatKind::Housing { push::wall(job, &press.shape, (needed, tight))? } else { None };
    let warm = outer.soak.as_ref().map(|soak| soak.end_quick);
    let strained = || strained(job, joint, &presser, (&press, &service, warm));
    let liner = if joint.seat == SeatKind::Housing { liner::plan(job, &press.pressure, strained)? } else { None };
    let loose = service.iter().any(|state: &ServiceFit| state.clearance.loosest > Length::default());
    let basis = basis(job, joint, &diameters, &at_bore)?;
    let history = if extent.pages {
        let in_seat = seated.map(|seated| seated.curves()).unwrap_or_default();
        course.history(&window, &within, job.bench.carry, in_seat)
    } else {
        ClearanceHistory::empty(placing)
    };
    Ok(SeatPlan {
        basis,
        force_course: push::course(&presser, press.force.tightest, &standing, press.length)?,
        means: push::means(job, needed, wall.as_ref())?,
        removal: push::removal(job, joint, press.force, freed(job, joint, &diameters, &lock))?,
        tighter: if loose { push::tighter(job, joint, press.elastic_limit) } else { None },
        wall,
        liner,
        seat: joint.seat,
        nominal: joint.nominal,
        verdict: verdict::from_clearance(&at_bore.clearance, placing),
        inner: joint.inner.member(),
        outer: joint.outer.member(),
        history,
        clears_at: clears_at(job, joint, &diameters, &at_bore),
        grip,
        press,
        service,
        lock,
        fit,
        at_bore,
        window,
        time_to_clear: holds.times,
        share_at_clear: holds.shares,
        section_heat,
        driver: steps::driver(job, joint.seat),
        chill: inner.soak,
        warm: outer.soak,
    })
}

/// What a search asks first: whether a plan can be what it looks for at all, without what takes most of the time.
pub(super) struct Arrives {
    /// Clearance of the tightest case when it reaches the seat.
    pub(super) clearance: Length,
    /// Time in shop air until its placing clearance is gone.
    pub(super) window: Window,
}

/// The same numbers as in [`plan`].
pub(super) fn arrives(job: &Job, joint: &Joint<'_>, solved: &SolvedSeats) -> Result<Arrives, PlanError> {
    let diameters = Diameters::new(joint);
    let follow = |side: &Side<'_>| solved.histories.follow(job, joint.seat, side.piece, side.treatment);
    let (inner, outer) = (follow(&joint.inner)?, follow(&joint.outer)?);
    let placing = placing(job, joint, &diameters).get::<meter>();
    let course = Course { diameters: &diameters, inner: &inner, outer: &outer, placing };
    let clearance = metres(course.at(job.bench.carry.get::<second>())).tightest;
    Ok(Arrives { clearance, window: course.window().tightest })
}

/// The clearance with which the tightest case is to arrive: that of the job, so that it is home before it grips.
///
/// None where both parts of a clearance fit stay at the temperature of the shop, unless the job states one: nothing grips there,
/// and the part goes in by hand.
pub(super) fn placing(job: &Job, joint: &Joint<'_>, diameters: &Diameters<'_>) -> Length {
    let untreated = joint.inner.treatment.is_none() && joint.outer.treatment.is_none();
    let shop = job.bench.temperature.get::<kelvin>();
    if untreated && !job.bench.placing_is_stated && diameters.clearance(shop, shop).tightest >= 0.0 {
        return Length::default();
    }
    job.bench.placing_clearance
}

fn course<'a, 'j>(
    diameters: &'a Diameters<'j>,
    (inner, outer): (&'a Treated, &'a Treated),
    placing: Length,
) -> Course<'a, 'j> {
    Course { diameters, inner: &inner.track, outer: &outer.track, placing: placing.get::<meter>() }
}

/// Both parts with their treatment, in their section where that is wanted.
fn heated(
    job: &Job,
    joint: &Joint<'_>,
    (diameters, presser, histories): (&Diameters<'_>, &Presser<'_>, &Histories),
    when: in_section::When,
) -> Result<(Treated, Treated, Result<SectionHeat, WithoutSection>), PlanError> {
    let mut inner = histories.treat(job, joint.seat, joint.inner.piece, joint.inner.treatment)?;
    let mut outer = histories.treat(job, joint.seat, joint.outer.piece, joint.outer.treatment)?;
    if inner.soak.is_none() && outer.soak.is_none() {
        return Ok((inner, outer, Err(WithoutSection::Untreated)));
    }
    if when == in_section::When::Never {
        return Ok((inner, outer, Err(WithoutSection::NotAsked)));
    }
    let at_bore = at_bore(job, joint, &course(diameters, (&inner, &outer), placing(job, joint, diameters)), presser)?;
    let grip = grip::grip(job, joint, &at_bore, (None, None, false), (inner.soak.as_ref(), outer.soak.as_ref()))?;
    let one_body = OneBody {
        inner: at_bore.inner,
        outer: at_bore.outer,
        clearance: at_bore.clearance.tightest,
        grip: grip.and_then(|(grip, _)| grip.times.tightest.at()),
    };
    let heat = in_section::follow(job, joint, (&mut inner, &mut outer), (when, one_body))?;
    Ok((inner, outer, heat))
}

/// How warm the parts are at the latest moment to start pushing.
fn latest(course: &Course<'_, '_>, window: Window) -> Option<grip::Arrival> {
    let Window::Lasts(time) = window else { return None };
    let time = time.get::<second>();
    let arrival = grip::Arrival {
        inner: from_kelvin(course.inner.kelvin_at(time)),
        outer: from_kelvin(course.outer.kelvin_at(time)),
    };
    (time > 0.0).then_some(arrival)
}

fn metres(cases: Cases<f64>) -> Cases<Length> {
    cases.map(Length::new::<meter>)
}

fn fit_at_reference(job: &Job, joint: &Joint<'_>, diameters: &Diameters<'_>) -> Result<Fit, PlanError> {
    let reference = reference_temperature().get::<kelvin>();
    let clearance = metres(diameters.clearance(reference, reference));
    let effective = effective(job, joint, &clearance)?;
    let uncertainty = match (joint.inner.size.uncertainty, joint.outer.size.uncertainty) {
        (None, None) => None,
        (inner, outer) => Some(inner.unwrap_or_default() + outer.unwrap_or_default()),
    };
    let read_over = joint.inner.size.mean.is_some() || joint.outer.size.mean.is_some();
    let kind = FitKind::of(&clearance.map(Nanometres::from_length));
    Ok(Fit { clearance, effective_interference: effective, kind, uncertainty, read_over })
}

/// Interference that bears, with the rough peaks smoothed away where the roughness of both surfaces is known.
pub(super) fn effective(job: &Job, joint: &Joint<'_>, clearance: &Cases<Length>) -> Result<Cases<Length>, PlanError> {
    let Some((inner, outer)) = joint.inner.roughness_rz.zip(joint.outer.roughness_rz) else {
        return Ok(clearance.map(|clearance| -clearance));
    };
    clearance.try_map(|clearance| Ok(fit::effective_interference(-clearance, inner, outer, job.press.smoothing)?))
}

fn at_bore(job: &Job, joint: &Joint<'_>, course: &Course<'_, '_>, presser: &Presser<'_>) -> Result<AtBore, PlanError> {
    let carry = job.bench.carry.get::<second>();
    let clearance = metres(course.at(carry));
    let (pressure, force) = presser.pressure_and_force(&effective(job, joint, &clearance)?)?;
    Ok(AtBore {
        inner: from_kelvin(course.inner.kelvin_at(carry)),
        outer: from_kelvin(course.outer.kelvin_at(carry)),
        clearance,
        pressure,
        force,
    })
}

/// Pressing of a joint with both parts at the temperature of the shop.
pub(super) fn at_shop_of(job: &Job, joint: &Joint<'_>, presser: &Presser<'_>) -> Result<push::Pressing, PlanError> {
    at_shop(job, joint, &Diameters::new(joint), presser)
}

/// Pressing with both parts at the temperature of the shop.
fn at_shop(
    job: &Job,
    joint: &Joint<'_>,
    diameters: &Diameters<'_>,
    presser: &Presser<'_>,
) -> Result<push::Pressing, PlanError> {
    let shop = job.bench.temperature.get::<kelvin>();
    let clearance = metres(diameters.clearance(shop, shop));
    presser.pressing(&effective(job, joint, &clearance)?)
}

fn basis(job: &Job, joint: &Joint<'_>, diameters: &Diameters<'_>, at_bore: &AtBore) -> Result<Basis, PlanError> {
    let shop = job.bench.temperature;
    let clearance = metres(diameters.clearance(shop.get::<kelvin>(), shop.get::<kelvin>()));
    let of = |state: &ServiceState| (state.of(joint.inner.piece), state.of(joint.outer.piece));
    let service: Vec<basis::Pair> = job.service.iter().map(of).collect();
    let temperatures = (shop, (at_bore.inner, at_bore.outer), service.as_slice());
    let interference = (effective(job, joint, &clearance)?, turning(job, joint)?);
    Ok(basis::basis(joint, diameters, temperatures, interference))
}

fn clears_at(job: &Job, joint: &Joint<'_>, diameters: &Diameters<'_>, at_bore: &AtBore) -> ClearsAt {
    let wanted = placing(job, joint, diameters).get::<meter>();
    let inner_strain = diameters.inner_strain_for(wanted, at_bore.outer.get::<kelvin>(), EACH.tightest);
    let outer_strain = diameters.outer_strain_for(wanted, at_bore.inner.get::<kelvin>(), EACH.tightest);
    // A strain beyond the table is no mistake here: it says that this part alone cannot do it.
    ClearsAt {
        inner: temperature_for_strain(&joint.inner.expansion, inner_strain).ok(),
        outer: temperature_for_strain(&joint.outer.expansion, outer_strain).ok(),
    }
}

/// What a joint on a turning shaft loses of its interference.
pub(super) fn turning(job: &Job, joint: &Joint<'_>) -> Result<Length, PlanError> {
    let Some(speed) = job.speed.filter(|_| joint.seat == SeatKind::Shaft) else { return Ok(Length::default()) };
    let outer = joint.outer.ring.growth_at(joint.outer.material.density(), speed)?;
    let inner = joint.inner.ring.growth_at(joint.inner.material.density(), speed)?;
    Ok(outer.inside.unwrap_or_default() - inner.outside)
}

/// Interference that bears after the part has stood in its seat for some times, tightest case.
fn standing(job: &Job, joint: &Joint<'_>, seated: &Seated<'_>) -> Result<Vec<(Time, Length)>, PlanError> {
    let bears =
        |(time, clearance): (Time, Length)| Ok((time, effective(job, joint, &Cases::same(clearance))?.tightest));
    seated.standing().into_iter().map(bears).collect()
}

/// Temperatures of the outer part alone, and of both together, that leave the tightest case just free.
fn freed(
    job: &Job,
    joint: &Joint<'_>,
    diameters: &Diameters<'_>,
    lock: &Cases<Option<ThermodynamicTemperature>>,
) -> (Option<ThermodynamicTemperature>, Option<ThermodynamicTemperature>) {
    let strain = diameters.outer_strain_for(0.0, job.bench.temperature.get::<kelvin>(), EACH.tightest);
    (temperature_for_strain(&joint.outer.expansion, strain).ok(), lock.tightest)
}

/// The states in which the liner of a bore and the housing around it are strained.
fn strained(
    job: &Job,
    joint: &Joint<'_>,
    presser: &Presser<'_>,
    (press, service, warm): (&push::Pressing, &[ServiceFit], Option<ThermodynamicTemperature>),
) -> Result<Vec<Strained>, PlanError> {
    let (low, high) = press.shape.pressure;
    let both = |pressure: Pressure| Some((pressure * (low / high), pressure));
    let shop = Strained {
        when: "at the temperature of the shop",
        in_service: false,
        housing: job.bench.temperature,
        ring: both(press.pressure.tightest),
    };
    let warm = warm.map(|housing| Strained { when: "while it is warm", in_service: false, housing, ring: None });
    let in_service = |state: &ServiceFit| {
        let (pressure, _) = presser.pressure_and_force(&effective(job, joint, &state.clearance)?)?;
        let when = match state.end {
            ServiceEnd::Coldest => "coldest in service",
            ServiceEnd::Hottest => "hottest in service",
        };
        Ok(Strained { when, in_service: true, housing: state.outer, ring: both(pressure.tightest) })
    };
    let service: Vec<Strained> = service.iter().map(in_service).collect::<Result<_, PlanError>>()?;
    Ok([shop].into_iter().chain(warm).chain(service).collect())
}

/// The fit at each end of service; a part that yields has then yielded as far as any of them, and fitting it, take it.
fn service(
    job: &Job,
    joint: &Joint<'_>,
    (diameters, presser): (&Diameters<'_>, &Presser<'_>),
) -> Result<Vec<ServiceFit>, PlanError> {
    let turning = turning(job, joint)?;
    let at = |(inner, outer): (ThermodynamicTemperature, ThermodynamicTemperature)| {
        metres(diameters.clearance(inner.get::<kelvin>(), outer.get::<kelvin>()))
    };
    let of = |state: &ServiceState| (state.of(joint.inner.piece), state.of(joint.outer.piece));
    let clearances: Vec<Cases<Length>> =
        job.service.iter().map(|state| at(of(state)).map(|clearance| clearance + turning)).collect();
    let fitted = effective(job, joint, &at((job.bench.temperature, job.bench.temperature)))?;
    let bears = clearances.iter().map(|clearance| effective(job, joint, clearance));
    let bears = bears.collect::<Result<Vec<_>, PlanError>>()?;
    let states: Vec<Cases<Length>> = std::iter::once(fitted).chain(bears.iter().copied()).collect();
    let lasting = presser.lasting(&states)?;
    let lost = presser.set(fitted.tightest)?.map_or(Length::default(), |set| set.lost);
    let fit = |((state, clearance), bears): ((&ServiceState, Cases<Length>), &Cases<Length>)| {
        let (inner, outer) = of(state);
        let yields = presser.set(bears.tightest)?.map(|set| (set.lost - lost).max(Length::default()));
        let holds_force = presser.held(bears, job.press.friction.0, &lasting)?;
        let holds_torque = holds_force.map(|force| Torque::new::<newton_meter>((force * joint.nominal * 0.5).value));
        Ok(ServiceFit {
            end: state.end,
            inner,
            outer,
            clearance,
            bears: bears.tightest,
            yields,
            holds_elastically: lasting.loosest <= Length::default(),
            holds_force,
            holds_torque,
        })
    };
    job.service.iter().zip(clearances).zip(&bears).map(fit).collect()
}
