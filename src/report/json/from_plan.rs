//! A plan's quantities in the units that the names of the document state.

use super::document::*;
use super::seal::SealAloneDocument;
use super::units::{celsius, mm, mpa, newtons, range, reason, seconds, um};
use super::{basis, fasteners, figures, inspection, push, scatter, seal, section_heat, stack};
use crate::job::ServiceEnd;
use crate::plan::seal::SealAlonePlan;
use crate::plan::{ClearsAt, GripTime, Plan, SeatPlan, ServiceFit, Soak, Source, Verdict, Window};
use crate::quantity::{Cases, Length, System};
use crate::report::words;
use uom::si::area::square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::mass::{gram, kilogram};
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::torque::newton_meter;
use uom::si::volume::liter;

const NO_GRIP: &str = "nothing is chilled or warmed, or the part does not grip within four hours";
const NEVER_CLEARS: &str = "nothing is chilled or warmed, no hold in this medium gives this case its placing clearance, or two holds \
                            would have to be longer at once";
const NO_SHARE: &str = "nothing is treated in a medium of its own temperature, or no hold that clears is known";
const NEVER_GOES: &str =
    "the placing clearance does not go at the temperature of the shop, or outlasts the time computed";
const NO_LOCK: &str = "warming or cooling both parts together does not bring this case to zero clearance";
const NO_STRESS: &str = "there is no interference, and so no stress, in this case";
const NOT_DRAWN: &str = "no parts were drawn; ask for them with --draws";
const NO_TEMPERATURE: &str = "no temperature within the material's table does it";

pub(super) fn document(plan: &Plan<'_>) -> PlanDocument {
    PlanDocument {
        format: "seatwise.plan/1",
        job: JobDocument::new(&plan.job.heading),
        verdict: verdict(plan.verdict),
        internal_clearance: plan.internal_clearance.as_ref().map(push::internal_clearance),
        seal: plan.seal.as_ref().map(seal::document),
        stack: plan.stack.as_ref().map(stack::document),
        seats: plan.seats.iter().map(|seat| seat_document(plan, seat)).collect(),
        fasteners: plan.fasteners.as_ref().map(fasteners::fasteners),
        inspection: plan.inspection.as_ref().map(inspection::inspection),
        uneven_wall: plan.uneven_wall.as_ref().map(inspection::uneven_wall),
        cautions: plan.cautions.iter().map(caution).collect(),
        entries: plan.job.entries.iter().map(entry).collect(),
        assumptions: plan.job.assumptions.iter().map(assumption).collect(),
        sources: plan.sources.iter().map(source).collect(),
        scatter: plan.scatter.as_ref().map(scatter::scatter),
        scatter_reason: plan.scatter.is_none().then_some(NOT_DRAWN),
    }
}

/// A plan of a shaft seal alone.
pub(super) fn seal_alone(plan: &SealAlonePlan<'_>) -> SealAloneDocument {
    let heading = &plan.job.heading;
    SealAloneDocument {
        format: "seatwise.seal/1",
        job: JobDocument {
            title: heading.title.clone(),
            reference: heading.reference.clone(),
            revision: heading.revision.clone(),
        },
        seal: seal::document(&plan.seal),
        cautions: plan.cautions.iter().map(caution).collect(),
        entries: plan.job.entries.iter().map(entry).collect(),
        assumptions: plan.job.assumptions.iter().map(assumption).collect(),
        sources: plan.sources.iter().map(source).collect(),
    }
}

fn source(source: &Source) -> SourceDocument {
    SourceDocument { what: source.what.clone(), text: source.text.clone() }
}

fn seat_document(plan: &Plan<'_>, seat: &SeatPlan) -> SeatDocument {
    let time_to_clear = range(seat.time_to_clear.map(|time| time.map(seconds)));
    let share_at_clear = range(seat.share_at_clear.map(|share| share.map(figures)));
    let window = range(seat.window.map(window_s));
    let never = Cases { tightest: None, middle: None, loosest: None };
    let grip = range(seat.grip.map_or(never, |grip| grip.times.map(grip_s)));
    let lock = range(seat.lock.map(|lock| lock.map(celsius)));
    SeatDocument {
        seat: seat.seat.name(),
        nominal_mm: mm(seat.nominal),
        verdict: verdict(seat.verdict),
        fit: fit(seat),
        chill: seat.chill.as_ref().map(|soak| soak_document(plan, soak)),
        warm: seat.warm.as_ref().map(|soak| soak_document(plan, soak)),
        at_bore: AtBoreDocument {
            after_s: seconds(plan.job.bench.carry),
            inner_c: celsius(seat.at_bore.inner),
            outer_c: celsius(seat.at_bore.outer),
            clearance_um: range(seat.at_bore.clearance.map(um)),
            placing_clearance_um: um(seat.history.placing_clearance),
            pressure_mpa: range(seat.at_bore.pressure.map(mpa)),
            force_n: range(seat.at_bore.force.map(newtons)),
        },
        time_to_clear_reason: reason(&time_to_clear, NEVER_CLEARS),
        time_to_clear_s: time_to_clear,
        share_at_clear_reason: reason(&share_at_clear, NO_SHARE),
        share_at_clear,
        window_reason: reason(&window, NEVER_GOES),
        window_s: window,
        grip_reason: reason(&grip, NO_GRIP),
        grip_s: grip,
        grip_one_sided_s: seat.grip.and_then(|grip| grip_s(grip.one_sided)),
        grip_at_latest_s: seat.grip.and_then(|grip| grip.at_latest).and_then(grip_s),
        held_until_lock: seat.grip.is_some_and(|grip| matches!(grip.times.tightest, GripTime::FreeUntilLock(_))),
        chilling_shortens: seat.grip.is_some_and(|grip| grip.chilling_shortens),
        frees_at_c: seat.grip.and_then(|grip| grip.frees_at).map(celsius),
        lock_reason: reason(&lock, NO_LOCK),
        lock_c: lock,
        press: press(plan, seat),
        standing: push::standing(&seat.force_course),
        liner: seat.liner.as_ref().map(push::liner),
        wall: seat.wall.as_ref().map(push::wall),
        means: seat.means.as_ref().map(push::means),
        removal: push::removal(&seat.removal),
        tighter: seat.tighter.as_ref().map(push::tighter),
        service: seat.service.iter().map(service).collect(),
        clears_at: clears_at(seat.clears_at),
        driver: seat
            .driver
            .map(|driver| DriverDocument { inside_mm: mm(driver.inside), outside_mm: mm(driver.outside) }),
        section_heat: seat.section_heat.as_ref().ok().map(|heat| section_heat::document(plan, heat)),
        section_heat_reason: seat.section_heat.as_ref().err().map(ToString::to_string),
        basis: basis::document(plan, seat),
    }
}

fn fit(seat: &SeatPlan) -> FitDocument {
    let limits = |smallest: Length, largest: Length| LimitsDocument {
        lower: um(smallest - seat.nominal),
        upper: um(largest - seat.nominal),
    };
    FitDocument {
        inner_limits_um: limits(seat.inner.smallest, seat.inner.largest),
        inner_basis: seat.inner.basis.clone(),
        outer_limits_um: limits(seat.outer.smallest, seat.outer.largest),
        outer_basis: seat.outer.basis.clone(),
        interference_um: range(seat.fit.clearance.map(|clearance| um(-clearance))),
        effective_interference_um: range(seat.fit.effective_interference.map(um)),
        uncertainty_um: seat.fit.uncertainty.map(um),
        undecided: seat.fit.undecided(),
    }
}

fn soak_document(plan: &Plan<'_>, soak: &Soak) -> SoakDocument {
    SoakDocument {
        part: words::piece(plan.job, soak.piece).to_owned(),
        medium: soak.medium.clone(),
        medium_c: celsius(soak.medium_temperature),
        model: if soak.in_section { "section" } else { "lumped" },
        biot: figures(soak.biot),
        radiates: soak.radiates,
        film_w_m2k: figures(soak.film.get::<watt_per_square_meter_kelvin>()),
        time_constant_s: soak.time_constant.map(seconds),
        hold_s: seconds(soak.hold),
        end_c: celsius(soak.end),
        end_quick_c: celsius(soak.end_quick),
        mass_kg: figures(soak.mass.get::<kilogram>()),
        area_m2: figures(soak.area.get::<square_meter>()),
        bodies: if soak.three_bodies { 3 } else { 1 },
        ring_difference_k: soak.ring_difference.map(|step| figures(step.get::<step_kelvin>())),
        time_error_share: soak.time_error.map(|error| figures(error.largest())),
        share_reached: soak.share_reached.map(figures),
        medium_drift_k: soak.medium_drift.map(|step| figures(step.get::<step_kelvin>())),
        middle_lag_s: seconds(soak.middle_lag),
        enough_after_s: soak.enough_after.map(seconds),
        coolant_kg: soak.coolant.map(|used| figures(used.mass.get::<kilogram>())),
        coolant_l: soak.coolant.map(|used| figures(used.volume.get::<liter>())),
        water_g: soak.water.map(|water| figures(water.get::<gram>())),
    }
}

fn press(plan: &Plan<'_>, seat: &SeatPlan) -> PressDocument {
    let yield_factor = range(seat.press.yield_factor.map(|factor| factor.map(figures)));
    PressDocument {
        pressure_mpa: range(seat.press.pressure.map(mpa)),
        force_n: range(seat.press.force.map(newtons)),
        hoop_outer_mpa: range(seat.press.hoop_outer.map(mpa)),
        yield_factor_reason: reason(&yield_factor, NO_STRESS),
        yield_factor,
        weaker_part: seat.press.weaker.to_owned(),
        elastic_limit_um: um(seat.press.elastic_limit),
        friction_low: figures(plan.job.press.friction.0),
        friction_high: figures(plan.job.press.friction.1),
        elastic_limit_tresca_um: seat.press.elastic_limit_tresca.map(um),
        length_mm: mm(seat.press.length),
        shape: push::shape(&seat.press.shape),
        ring_change_um: seat.press.ring_change.map(|change| range(change.map(um))),
        takes_set: seat.press.takes_set.as_ref().map(push::takes_set),
        flow_high_mpa: seat.press.flow_high.map(|(flow, _)| mpa(flow)),
        plastic_ratio_high: seat.press.flow_high.map(|(_, ratio)| figures(ratio)),
    }
}

fn service(state: &ServiceFit) -> ServiceDocument {
    ServiceDocument {
        state: match state.end {
            ServiceEnd::Coldest => "coldest",
            ServiceEnd::Hottest => "hottest",
        },
        inner_c: celsius(state.inner),
        outer_c: celsius(state.outer),
        interference_um: range(state.clearance.map(|clearance| um(-clearance))),
        yields_um: state.yields.map(um),
        holds_n: range(state.holds_force.map(newtons)),
        holds_nm: range(state.holds_torque.map(|torque| figures(torque.get::<newton_meter>()))),
    }
}

fn clears_at(needed: ClearsAt) -> ClearsAtDocument {
    let either_missing = needed.inner.is_none() || needed.outer.is_none();
    ClearsAtDocument {
        inner_c: needed.inner.map(celsius),
        outer_c: needed.outer.map(celsius),
        reason: either_missing.then(|| NO_TEMPERATURE.to_owned()),
    }
}

fn caution(caution: &crate::plan::Caution) -> CautionDocument {
    CautionDocument {
        code: caution.code(),
        level: caution.level().word(),
        signal: caution.signal(),
        text: words::sentence(caution.sentence(), System::Metric),
        source: caution.source().to_owned(),
        forbids: caution.forbids(),
    }
}

fn entry(entry: &crate::job::Entry) -> EntryDocument {
    EntryDocument {
        key: entry.key.clone(),
        typed: entry.typed.clone(),
        metric: words::value(&entry.value, System::Metric),
        inch: words::value(&entry.value, System::Inch),
    }
}

fn assumption(assumption: &crate::job::Assumption) -> AssumptionDocument {
    AssumptionDocument {
        what: assumption.what.to_string(),
        value: words::value(&assumption.value, System::Metric),
        why: assumption.why.to_string(),
    }
}

fn verdict(verdict: Verdict) -> VerdictDocument {
    match verdict {
        Verdict::DropsIn => VerdictDocument::DropsIn,
        Verdict::SomeWillNot => VerdictDocument::SomeWillNot,
        Verdict::Press => VerdictDocument::Press,
        Verdict::DoNot => VerdictDocument::DoNot,
    }
}

fn grip_s(time: GripTime) -> Option<f64> {
    match time {
        GripTime::DoesNotGoIn => Some(0.0),
        GripTime::Grips(time) | GripTime::FreeUntilLock(time) => Some(seconds(time)),
        GripTime::StaysFree => None,
    }
}

fn window_s(window: Window) -> Option<f64> {
    match window {
        Window::Lasts(time) => Some(seconds(time)),
        Window::Always | Window::Beyond(_) => None,
    }
}
