//! The section of a seat at a moment: what its picture, its table and its deck are made from.

mod lined;
mod model;
mod moment;
mod shoulder;

pub use model::{
    Closing, DrawingError, Moment, PlaneSeat, Seam, SectionCase, SectionPlan, SectionRequest, ShoulderLoad, for_deck,
    over_plane,
};

use super::joint::{self, Joint};
use super::model::SeatKind;
use super::push::{Presser, Shaped, SolvedSeats, friction_ends, has_section, sections};
use super::{Method, PlanError, plan_by};
use crate::job::{Housing, Job};
use crate::mechanics;
use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::section::{Accuracy, Field, Loads, Model, Peak, Section, SectionError, State, Support, SurfaceChange};
use lined::Lined;
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
    let lined = Lined::new(job, joint, &at);
    let mut models = Vec::with_capacity(seats.len());
    for section in seats {
        let section = with_rest(section, job.housing.as_ref());
        models.push(Solved::new(section, lined.as_ref(), &at).map_err(PlanError::from)?);
    }
    let pressure = |state: &State| state.contacts[0].mean_pressure;
    let other = models.iter().map(|solved| pressure(&solved.whole.0)).reduce(Pressure::min);
    let plain = PlaneSeat::new(&rings, joint.seat, at.friction)?;
    let plain = lined.as_ref().map_or(Ok(plain.clone()), |lined| lined.beside(plain))?;
    let most = most_force(job, joint, (lined.is_some(), &plain, &at), &models)?;
    // Of the ways in which a longer seat may be meant, the stiffest is drawn.
    let stiffest = models.into_iter().max_by(|a, b| pressure(&a.whole.0).value.total_cmp(&pressure(&b.whole.0).value));
    let Solved { section, model, loads, fitted, whole: (state, peaks, field) } =
        stiffest.ok_or(DrawingError::NoRing { part: job.part.kind.noun() })?;
    let force = state.contacts[0].normal_force * at.friction;
    Ok(SectionPlan {
        seat: joint.seat,
        nominal: joint.nominal,
        ring: ring_name(joint),
        parts: parts(joint, lined.is_some()),
        materials: materials(job, joint, lined.as_ref()),
        width,
        section,
        length_stated,
        softer: other.filter(|other| *other < pressure(&state) * SAME),
        force,
        force_most: force.max(most),
        rolls: job.part.kind.is_bearing(),
        closing: closing(joint.seat, &state, width),
        shoulder: shoulder::shoulder(&model, &state, &at, &loads)?,
        field,
        moment: at.moment,
        case: at.case,
        temperatures: [at.inner, at.outer],
        interference: at.interference,
        interferences: loads.interference,
        seam: lined.zip(fitted).map(|(lined, bore)| Seam {
            interference: lined.interference,
            bonded: lined.is_bonded(),
            bore,
        }),
        friction: at.friction,
        plane: plain,
        peaks,
        state,
    })
}

/// The most that pressing may take, with what friction in the seat and the ways in which it may be meant make of it.
fn most_force(
    job: &Job,
    joint: &Joint<'_>,
    (lined, plain, at): (bool, &PlaneSeat, &At),
    models: &[Solved],
) -> Result<Force, DrawingError> {
    let presser = |method| Presser::new(job, joint, (method, &SolvedSeats::default()));
    // What the ring adds to a liner is asked for apart from how that was fitted.
    if lined {
        return Ok(plain.force * presser(Method::Auto)?.stiffness()?.1.force.1);
    }
    let bounds = presser(Method::Plane)?;
    let (_, bounds) = bounds.stiffness()?;
    if !has_section(job, joint.seat, bounds) {
        return Ok(plain.force * bounds.force.1);
    }
    // The sections are solved as they are drawn.
    let mut most = Force::default();
    for Solved { section, whole: (state, ..), .. } in models {
        let (_, more) = friction_ends(section, joint.nominal, job.press.friction.1).map_err(PlanError::from)?;
        most = most.max(state.contacts[0].normal_force * at.friction * more);
    }
    Ok(most)
}

/// Share of a pressure within which two readings of the same seat count as one.
const SAME: f64 = 0.9995;

/// The section on the bench on which the ring is pushed home.
fn with_rest(section: Section, housing: Option<&Housing>) -> Section {
    let shoulder = housing.is_some_and(|housing| housing.shoulder.is_some());
    let support = if shoulder { Support::Back { opening: None } } else { Support::Free };
    Section { support, ..section }
}

/// One of the sections that a job may mean, with what its fit does to it.
struct Solved {
    section: Section,
    model: Model,
    loads: Loads,
    /// How the bore of a liner changed as that was fitted.
    fitted: Option<SurfaceChange>,
    whole: (State, Vec<Peak>, Field),
}

impl Solved {
    fn new(section: Section, lined: Option<&Lined<'_>>, at: &At) -> Result<Self, SectionError> {
        let model = Model::new(&section, Accuracy::Normal)?;
        let (model, loads, fitted) = match lined {
            Some(lined) => lined.finish(model, at.interference)?,
            None => {
                let (interference, strain) = (vec![at.interference], vec![Ratio::default(); 2]);
                (model, Loads { interference, strain, axial: Force::default() }, None)
            }
        };
        let whole = model.whole(&loads)?;
        Ok(Self { section, model, loads, fitted, whole })
    }
}

/// Names of the parts from the inside outward.
fn parts(joint: &Joint<'_>, lined: bool) -> Vec<&'static str> {
    let mut parts = vec![bare(joint.inner.name), bare(joint.outer.name)];
    if lined {
        parts.push(SeatKind::Housing.name());
    }
    parts
}

/// Ids of their materials.
fn materials(job: &Job, joint: &Joint<'_>, lined: Option<&Lined<'_>>) -> Vec<String> {
    let around = lined.and(job.housing.as_ref()).map(|housing| &housing.material);
    let touching = lined.map_or(joint.outer.material, Lined::material);
    [Some(joint.inner.material), Some(touching), around].into_iter().flatten().map(|of| of.id().to_owned()).collect()
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
            von_mises: vec![fit.inner.von_mises(), fit.outer.von_mises()],
            hoop: vec![fit.inner.at_inside.hoop.max(fit.inner.at_outside.hoop), fit.outer.at_inside.hoop],
            seam: None,
        })
    }
}
