//! The factor of a seat, computed in its section.

use super::model::{HowNear, SeatWall, ShapeFactor};
use super::solved::SolvedSeats;
use crate::job::{Housing as JobHousing, Job, Liner as JobLiner, RacewayGroove, Shaft as JobShaft, Step as JobStep};
use crate::mechanics::{Joint, PressFit, Ring};
use crate::plan::PlanError;
use crate::plan::model::SeatKind;
use crate::quantity::{Force, Length, Ratio};
use crate::section::{
    Accuracy, Back, Chamfers, Elastic, Groove, Housing, Liner, Loads, Model, RingSection, Seat, Section, SectionError,
    Shaft, State, Step, Support,
};
use crate::stock::Material;
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::ratio::ratio;

/// Interference over diameter at which the factor is computed; stresses are in proportion, so any will do.
const TRIAL_SHARE: f64 = 1e-4;
/// Push at which a wall is computed, N; its stresses are in proportion too.
const TRIAL_PUSH_N: f64 = 1000.0;

/// The sections that a job may mean, around or in one ring.
pub(in crate::plan) struct Shaped {
    pub(in crate::plan) seats: Vec<Section>,
    /// Whether the job gives the length of the seat.
    pub(in crate::plan) length_stated: bool,
}

/// The sections that a job may mean; none for a part without a bore, which is no ring.
pub(in crate::plan) fn sections(job: &Job, seat: SeatKind, joint: &Joint) -> Option<Shaped> {
    let (ring, seats, length_stated) = match (seat, &job.housing, &job.shaft) {
        (SeatKind::Housing, Some(housing), _) => (&joint.inner, housings(job, housing), housing.length_stated),
        (SeatKind::Shaft, _, Some(shaft)) => (&joint.outer, shafts(job, shaft, joint), shaft.length_stated),
        _ => return None,
    };
    let ring = ring_section(job, seat, ring)?;
    let liner = job.housing.as_ref().filter(|_| seat == SeatKind::Housing).and_then(|housing| housing.liner.as_ref());
    let section =
        |seat| Section { ring, liner: liner.map(|liner| lining(job, liner, &seat)), seat, support: Support::Free };
    let mut seats: Vec<Section> = seats.into_iter().map(section).collect();
    // A seat as long as the ring is the same either way.
    seats.dedup();
    Some(Shaped { seats, length_stated })
}

/// A liner runs along the whole bore.
fn lining(job: &Job, liner: &JobLiner, seat: &Seat) -> Liner {
    let front = match seat {
        Seat::Housing(housing) => housing.front,
        Seat::Shaft(shaft) => shaft.front,
    };
    Liner {
        thickness: 0.5 * (liner.outside - job.part.outside),
        front,
        bonded: liner.interference.is_none(),
        material: of_material(&liner.material),
    }
}

fn of_material(material: &Material) -> Elastic {
    Elastic { modulus: material.elastic_modulus(), poisson: material.poisson_ratio() }
}

/// The factors of the seats that a job may mean; none where there is no section.
pub(super) fn factors(
    job: &Job,
    seat: SeatKind,
    joint: &Joint,
    solved: &SolvedSeats,
) -> Result<Option<ShapeFactor>, PlanError> {
    let Some(shaped) = sections(job, seat, joint) else { return Ok(None) };
    of(joint, seat == SeatKind::Shaft, job.part.width, &shaped.seats, (solved, job.press.friction.1))
}

fn housings(job: &Job, housing: &JobHousing) -> Vec<Seat> {
    let (width, none) = (job.part.width, Length::default());
    let material = of_material(&housing.material);
    let step = |front: Length| {
        let of = |step: &JobStep| Step { outside: step.outside, position: width + front - step.from_front };
        housing.step.as_ref().map(of)
    };
    let seat =
        |front, back| Seat::Housing(Housing { outside: housing.outside, step: step(front), front, back, material });
    match housing.shoulder {
        Some(shoulder) => {
            let hole = (shoulder.inside > none).then_some(shoulder.inside);
            vec![seat(housing.length - width - shoulder.wall, Back::Wall { thickness: shoulder.wall, hole })]
        }
        None => {
            // The job does not say on which side a longer boss goes on: all in front, or half on either side.
            let over = housing.length - width;
            vec![
                seat(over, Back::Open { beyond: none }),
                seat(0.5 * over, Back::Open { beyond: (0.5 * over).max(none) }),
            ]
        }
    }
}

/// Longer on either side alike, or on one side.
fn shafts(job: &Job, shaft: &JobShaft, joint: &Joint) -> Vec<Seat> {
    let (width, none) = (job.part.width, Length::default());
    let over = shaft.length - width;
    let seat = |front, behind| {
        Seat::Shaft(Shaft { bore: joint.inner.inside, front, behind, shoulder: None, material: elastic(&joint.inner) })
    };
    vec![seat(over, none), seat(0.5 * over, (0.5 * over).max(none))]
}

/// The ring with its chamfers; with a groove it has the area of the plain ring that stands for it.
fn ring_section(job: &Job, seat: SeatKind, ring: &Ring) -> Option<RingSection> {
    let (width, shape) = (job.part.width, &job.part.ring_shape);
    let out = shape.groove.map_or(Length::default(), |groove| 2.0 * groove.mean_depth(width));
    let (bore, outside) = match seat {
        SeatKind::Housing => (ring.inside? - out, ring.outside),
        SeatKind::Shaft => (ring.inside?, ring.outside + out),
    };
    let groove = |RacewayGroove { depth, width, middle }| Groove { depth, width, middle };
    Some(RingSection {
        bore,
        outside,
        width,
        chamfers: Chamfers { back: shape.chamfer, front: shape.chamfer },
        groove: shape.groove.map(groove),
        material: elastic(ring),
    })
}

fn elastic(ring: &Ring) -> Elastic {
    Elastic { modulus: ring.elastic_modulus, poisson: ring.poisson }
}

/// The span of the factors of several seats around, or in, one ring.
fn of(
    joint: &Joint,
    outer: bool,
    width: Length,
    seats: &[Section],
    (solved, friction): (&SolvedSeats, f64),
) -> Result<Option<ShapeFactor>, PlanError> {
    let interference = joint.diameter * TRIAL_SHARE;
    let plane = Joint { interference, ..*joint }.solve()?;
    let mut factors = Vec::with_capacity(seats.len());
    for section in seats {
        let liner = section.liner.map(|liner| Liner { bonded: true, ..liner });
        let section = &Section { liner, ..*section };
        factors.push(solved.of(section, friction, || {
            let model = Model::new(section, Accuracy::Normal)?;
            let state = model.solve(&trial(section, joint.diameter))?;
            let wall = wall(&model, &state, interference)?;
            let span = friction_ends(section, joint.diameter, friction)?;
            let factor = factor(&state, &plane, (joint.diameter, width), outer).with(span);
            Ok::<_, PlanError>(ShapeFactor { wall, ..factor })
        })?);
    }
    Ok(factors.into_iter().reduce(ShapeFactor::either))
}

/// A fit of the ring that presses, whatever that of the job does.
fn trial(section: &Section, diameter: Length) -> Loads {
    let (mut interference, none) = (vec![diameter * TRIAL_SHARE], Ratio::new::<ratio>(0.0));
    let mut strain = vec![none; 2];
    // A liner adds a part and a seam. Only what the ring adds to it is asked for, which goes through a seam that bears already as
    // through one that is bonded.
    if section.liner.is_some() {
        interference.push(Length::default());
        strain.push(none);
    }
    Loads { interference, strain, axial: Force::default() }
}

/// The least and the most that friction makes of the force in a section, over that without.
pub(in crate::plan) fn friction_ends(
    section: &Section,
    diameter: Length,
    friction: f64,
) -> Result<(f64, f64), SectionError> {
    // Against a shoulder the ring is held until it has gripped.
    let held = matches!(section.seat, Seat::Housing(Housing { back: Back::Wall { .. }, .. }));
    // Shares of one another, which a coarse section gives as well.
    let section = Section { support: Support::Free, ..*section };
    Ok(Model::new(&section, Accuracy::Coarse)?.friction_span(&trial(&section, diameter), friction)?.ends(held))
}

/// The wall behind the ring under the fit, and under a push with either face of the housing at rest.
fn wall(model: &Model, state: &State, interference: Length) -> Result<Option<SeatWall>, SectionError> {
    let Some(fitted) = state.wall else { return Ok(None) };
    let push = Force::new::<newton>(TRIAL_PUSH_N);
    let on_front = model.pushed_wall(Support::Front, push)?;
    let on_back = model.pushed_wall(Support::Back { opening: None }, push)?;
    let of = |(on_front, on_back)| SeatWall { interference, fitted, push, on_front, on_back };
    Ok(on_front.zip(on_back).map(of))
}

/// What the section gives over what two rings of equal width give.
fn factor(state: &State, plane: &PressFit, (diameter, width): (Length, Length), ring_is_outer: bool) -> ShapeFactor {
    let contact = &state.contacts[0];
    let force = (contact.normal_force / (plane.pressure * PI * diameter * width)).get::<ratio>();
    let pressure = (contact.mean_pressure / plane.pressure).get::<ratio>();
    let surface = if ring_is_outer { Some(&state.parts[1].outside) } else { state.parts[0].inside.as_ref() };
    let change = if ring_is_outer { Some(plane.outside_change()) } else { plane.bore_change() };
    // A ring has both; without one of them the force says as much.
    let (closing, at_shoulder) = surface.zip(change).map_or((force, None), |(surface, plane)| {
        let first = surface.along.first().map(|at| (at.change / surface.mean).get::<ratio>());
        ((surface.at_raceway / plane).get::<ratio>(), first)
    });
    ShapeFactor {
        force: (force, force),
        pressure: (pressure, pressure),
        closing: (closing, closing),
        at_shoulder: at_shoulder.map(|share| (share, share)),
        wall: None,
        known: HowNear::Computed,
    }
}
