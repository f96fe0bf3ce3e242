//! The section of a seat at a moment: what its picture, its table and its deck are made from.

mod model;
mod moment;
mod shoulder;

pub use model::{
    Closing, DrawingError, Moment, PlaneSeat, SectionCase, SectionPlan, SectionRequest, ShoulderLoad, for_deck,
    over_plane,
};

use super::joint::{self, Joint};
use super::model::SeatKind;
use super::push::{Presser, Shaped, SolvedSeats, sections};
use super::{Method, PlanError, plan_by};
use crate::job::{Housing, Job};
use crate::mechanics;
use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::section::{Accuracy, Loads, Model, Peak, Section, State, Support, SurfaceChange};
use moment::At;
use std::f64::consts::PI;

/// Computes the sections of a job's seats, or of the one that is asked for.
///
/// # Errors
/// [`DrawingError`]: a seat or a state of service that the job does not have, a part without a bore, a section that cannot be
/// divided.
pub fn draw(job: &Job, request: &SectionRequest) -> Result<Vec<SectionPlan>, DrawingError> {
    let joints = joint::joints(job)?;
    let asked = |joint: &&Joint<'_>| request.seat.is_none_or(|seat| seat == joint.seat);
    let chosen: Vec<&Joint<'_>> = joints.iter().filter(asked).collect();
    if let Some(seat) = request.seat.filter(|_| chosen.is_empty()) {
        return Err(DrawingError::NoSeat { seat: seat.name() });
    }
    // Temperatures do not hang on the pressure, so the quick method finds them.
    let plan = plan_by(job, Method::Plane)?;
    let seat = |joint: &Joint<'_>| {
        let planned = plan.seats.iter().find(|seat| seat.seat == joint.seat);
        let planned = planned.ok_or(DrawingError::NoSeat { seat: joint.seat.name() })?;
        of_seat(job, joint, At::new(job, joint, planned, request)?)
    };
    chosen.into_iter().map(seat).collect()
}

fn of_seat(job: &Job, joint: &Joint<'_>, at: At) -> Result<SectionPlan, DrawingError> {
    let width = job.part.width;
    let rings = mechanics::Joint {
        inner: joint.inner.ring,
        outer: joint.outer.ring,
        diameter: joint.nominal,
        length: width,
        interference: at.interference,
    };
    let shaped = sections(job, joint.seat, &rings).ok_or(DrawingError::NoRing { part: job.part.kind.noun() })?;
    let Shaped { seats, length_stated } = shaped;
    if seats.iter().any(|section| section.liner.is_some()) {
        return Err(DrawingError::Lined);
    }
    let loads =
        Loads { interference: vec![at.interference], strain: vec![Ratio::default(); 2], axial: Force::default() };
    let mut models = Vec::with_capacity(seats.len());
    for section in seats {
        let section = with_rest(section, job.housing.as_ref());
        let model = Model::new(&section, Accuracy::Normal).map_err(PlanError::from)?;
        let whole = model.whole(&loads).map_err(PlanError::from)?;
        models.push((section, model, whole));
    }
    let pressure = |state: &State| state.contacts[0].mean_pressure;
    let other = models.iter().map(|(_, _, whole)| pressure(&whole.0)).reduce(Pressure::min);
    // Of the ways in which a longer seat may be meant, the stiffest is drawn.
    let stiffest = models.into_iter().max_by(|a, b| pressure(&a.2.0).value.total_cmp(&pressure(&b.2.0).value));
    let (section, model, (state, peaks, field)) =
        stiffest.ok_or(DrawingError::NoRing { part: job.part.kind.noun() })?;
    let plain = PlaneSeat::new(&rings, joint.seat, at.friction)?;
    let force = state.contacts[0].normal_force * at.friction;
    let presser = Presser::new(job, joint, (Method::Auto, &SolvedSeats::default()))?;
    let (_, shape) = presser.stiffness()?;
    Ok(SectionPlan {
        seat: joint.seat,
        nominal: joint.nominal,
        ring: ring_name(joint),
        parts: [joint.inner.name, joint.outer.name].map(bare),
        materials: [joint.inner.material.id(), joint.outer.material.id()].map(str::to_owned),
        width,
        section,
        length_stated,
        softer: other.filter(|other| *other < pressure(&state) * SAME),
        force,
        force_most: force.max(plain.force * shape.force.1),
        rolls: job.part.kind.is_bearing(),
        closing: closing(joint.seat, &state, width),
        shoulder: shoulder::shoulder(&model, &state, &at)?,
        field,
        moment: at.moment,
        case: at.case,
        temperatures: [at.inner, at.outer],
        interference: at.interference,
        friction: at.friction,
        plane: plain,
        peaks: both(peaks),
        state,
    })
}

/// Share of a pressure within which two readings of the same seat count as one.
const SAME: f64 = 0.9995;

/// The section on the bench on which the ring is pushed home.
fn with_rest(section: Section, housing: Option<&Housing>) -> Section {
    let shoulder = housing.is_some_and(|housing| housing.shoulder.is_some());
    let support = if shoulder { Support::Back { opening: None } } else { Support::Free };
    Section { support, ..section }
}

/// A section of ring and seat has two bodies, so there are two.
fn both(peaks: Vec<Peak>) -> [Option<Peak>; 2] {
    let mut peaks = peaks.into_iter();
    [peaks.next(), peaks.next()]
}

fn bare(name: &'static str) -> &'static str {
    name.strip_suffix(" bore").unwrap_or(name)
}

fn ring_name(joint: &Joint<'_>) -> &'static str {
    bare(if joint.seat == SeatKind::Housing { joint.inner.name } else { joint.outer.name })
}

/// How far the surface of the ring that rolls or slides comes in, or goes out.
fn closing(seat: SeatKind, state: &State, width: Length) -> Option<Closing> {
    let of = |surface: &SurfaceChange, sign: f64| Closing {
        front: surface.at(width) * sign,
        middle: surface.at(width * 0.5) * sign,
        back: surface.at(Length::default()) * sign,
        raceway: surface.at_raceway * sign,
        mean: surface.mean * sign,
    };
    match seat {
        SeatKind::Housing => state.parts[0].inside.as_ref().map(|inside| of(inside, -1.0)),
        SeatKind::Shaft => Some(of(&state.parts[1].outside, 1.0)),
    }
}

impl PlaneSeat {
    fn new(rings: &mechanics::Joint, seat: SeatKind, friction: f64) -> Result<Self, PlanError> {
        let fit = rings.solve()?;
        let closing = match seat {
            SeatKind::Housing => fit.bore_change().map(|change| -change),
            SeatKind::Shaft => Some(fit.outside_change()),
        };
        Ok(Self {
            pressure: fit.pressure,
            force: fit.pressure * PI * rings.diameter * rings.length * friction,
            closing,
            von_mises: [fit.inner.von_mises(), fit.outer.von_mises()],
            hoop: [fit.inner.at_inside.hoop.max(fit.inner.at_outside.hoop), fit.outer.at_inside.hoop],
        })
    }
}
