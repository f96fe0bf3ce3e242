//! The wall behind the part.

use super::model::WallPlan;
use crate::job::{Housing, Job};
use crate::mechanics::{AllowableForce, Edge, LoadZone, Wall};
use crate::plan::PlanError;
use crate::plan::strength::strength;
use crate::quantity::{Force, Length};
use uom::si::force::newton;

/// Strength over stress that is kept at the wall: of a ductile and of a brittle or cast one.
///
/// Common practice, no published source: 1.5 against yielding, 2 against cracking.
const RESERVE: (f64, f64) = (1.5, 2.0);
/// Thickness over span from which the hole of a wall bears more than the root of the fixed plate, and by how much: see
/// [`Wall::under`].
const THICK: f64 = 0.5;
const THICK_MORE: f64 = 1.19;

/// The wall of a housing seat when the part is pushed against it with `needed`; none where there is no shoulder.
pub(in crate::plan) fn wall(job: &Job, needed: Force) -> Result<Option<WallPlan>, PlanError> {
    let Some((housing, shoulder)) = job.housing.as_ref().and_then(|h| h.shoulder.map(|s| (h, s))) else {
        return Ok(None);
    };
    // A liner ends at the wall, so that the wall spans the hole around the liner.
    let bore = housing.liner.as_ref().map_or(job.part.outside, |liner| liner.outside);
    let ring = job.part.outer_ring_inside.unwrap_or_default();
    let zone = LoadZone { inside: ring.max(shoulder.inside), outside: job.part.outside };
    let wall = Wall {
        edge: bore,
        hole: (shoulder.inside > Length::default()).then_some(shoulder.inside),
        thickness: shoulder.wall,
        elastic_modulus: housing.material.elastic_modulus(),
        poisson: housing.material.poisson_ratio(),
    };
    let face_pressure = zone.face_pressure(needed)?;
    let strength = strength(&housing.material);
    let reserve = reserve(housing);
    // The only refusal left is a wall thicker than its span: no plate, and no limit from bending.
    let Ok(AllowableForce { force, place }) = wall.allowable_force(&zone, &strength, Edge::Fixed) else {
        let none = WallPlan {
            allowable: None,
            allowable_free: None,
            reserve,
            place: None,
            root_stress: None,
            gives_per_newton: Length::default(),
            deflection: None,
            face_pressure,
        };
        return Ok(Some(none));
    };
    let state = wall.under(needed, &zone, Edge::Fixed)?;
    let free = wall.allowable_force(&zone, &strength, Edge::Simple)?.force;
    let more = if wall.thickness_share() > THICK { THICK_MORE } else { 1.0 };
    Ok(Some(WallPlan {
        allowable: Some(force / (reserve * more)),
        allowable_free: Some(free / reserve),
        reserve: reserve * more,
        place: Some(place),
        root_stress: Some(state.at_edge.von_mises()),
        gives_per_newton: wall.under(Force::new::<newton>(1.0), &zone, Edge::Fixed)?.deflection(),
        deflection: Some(state.deflection()),
        face_pressure,
    }))
}

fn reserve(housing: &Housing) -> f64 {
    if housing.material.strength().kind.is_brittle() { RESERVE.1 } else { RESERVE.0 }
}
