//! The factor of a seat, computed in its section.

use super::model::{HowNear, ShapeFactor};
use super::solved::SolvedSeats;
use crate::job::{Housing as JobHousing, Job, Shaft as JobShaft};
use crate::mechanics::{Joint, PressFit, Ring};
use crate::plan::PlanError;
use crate::quantity::{Force, Length, Ratio};
use crate::section::{
    Accuracy, Back, Chamfers, Elastic, Housing, Liner, Loads, Model, RingSection, Seat, Section, Shaft, State, Support,
};
use crate::stock::Material;
use std::f64::consts::PI;
use uom::si::ratio::ratio;

/// Interference over diameter at which the factor is computed; stresses are in proportion, so any will do.
const TRIAL_SHARE: f64 = 1e-4;

/// The factors of the housings that the job may mean; none for a part without a bore, which is no ring.
pub(super) fn in_housing(
    job: &Job,
    housing: &JobHousing,
    joint: &Joint,
    solved: &SolvedSeats,
) -> Result<Option<ShapeFactor>, PlanError> {
    let (width, none) = (job.part.width, Length::default());
    let material = of_material(&housing.material);
    let seat = |front, back| Seat::Housing(Housing { outside: housing.outside, front, back, material });
    let seats = match housing.shoulder {
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
    };
    let liner =
        housing.liner.as_ref().map(|liner| (0.5 * (liner.outside - job.part.outside), of_material(&liner.material)));
    of(joint, (&joint.inner, false), width, (&seats, liner), (solved, job.press.friction.1))
}

/// The factors of the shafts that the job may mean: longer on either side alike, or on one side.
pub(super) fn on_shaft(
    job: &Job,
    shaft: &JobShaft,
    joint: &Joint,
    solved: &SolvedSeats,
) -> Result<Option<ShapeFactor>, PlanError> {
    let (width, none) = (job.part.width, Length::default());
    let over = shaft.length - width;
    let seat = |front, behind| {
        Seat::Shaft(Shaft { bore: joint.inner.inside, front, behind, shoulder: None, material: elastic(&joint.inner) })
    };
    let seats = [seat(over, none), seat(0.5 * over, (0.5 * over).max(none))];
    of(joint, (&joint.outer, true), width, (&seats, None), (solved, job.press.friction.1))
}

fn of_material(material: &Material) -> Elastic {
    Elastic { modulus: material.elastic_modulus(), poisson: material.poisson_ratio() }
}

fn elastic(ring: &Ring) -> Elastic {
    Elastic { modulus: ring.elastic_modulus, poisson: ring.poisson }
}

/// The span of the factors of several seats around, or in, one ring.
fn of(
    joint: &Joint,
    (ring, outer): (&Ring, bool),
    width: Length,
    (seats, liner): (&[Seat], Option<(Length, Elastic)>),
    (solved, friction): (&SolvedSeats, f64),
) -> Result<Option<ShapeFactor>, PlanError> {
    let Some(bore) = ring.inside else { return Ok(None) };
    let interference = joint.diameter * TRIAL_SHARE;
    let plane = Joint { interference, ..*joint }.solve()?;
    let ring = RingSection {
        bore,
        outside: ring.outside,
        width,
        chamfers: Chamfers { back: Length::default(), front: Length::default() },
        groove: None,
        material: elastic(ring),
    };
    // A liner adds a part and a seam, at which it lies without interference: only what the ring adds to it is asked for.
    let mut loads =
        Loads { interference: vec![interference], strain: vec![Ratio::new::<ratio>(0.0); 2], axial: Force::default() };
    if liner.is_some() {
        loads.interference.push(Length::default());
        loads.strain.push(Ratio::new::<ratio>(0.0));
    }
    let mut factors = Vec::with_capacity(seats.len());
    for seat in seats {
        let front = match seat {
            Seat::Housing(housing) => housing.front,
            Seat::Shaft(shaft) => shaft.front,
        };
        let liner = liner.map(|(thickness, material)| Liner { thickness, front, material });
        let section = Section { ring, liner, seat: *seat, support: Support::Free };
        factors.push(solved.of(&section, friction, || {
            let state = Model::new(&section, Accuracy::Normal)?.solve(&loads)?;
            // Shares of one another, which a coarse section gives as well.
            let span = Model::new(&section, Accuracy::Coarse)?.friction_span(&loads, friction)?.ends();
            Ok::<_, PlanError>(factor(&state, &plane, (joint.diameter, width), outer).with(span))
        })?);
    }
    Ok(factors.into_iter().reduce(ShapeFactor::either))
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
        known: HowNear::Computed,
    }
}
