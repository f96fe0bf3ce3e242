//! The wall behind the part.

use super::model::{ShapeFactor, WallModel, WallPlan};
use super::wall_section::{self, Under};
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

/// The wall of a housing seat when the part, which sits with `interference`, is pushed against it with `needed`; none where
/// there is no shoulder. Where the section of the seat was computed it tells, else an annular plate.
pub(in crate::plan) fn wall(
    job: &Job,
    shape: &ShapeFactor,
    (needed, interference): (Force, Length),
) -> Result<Option<WallPlan>, PlanError> {
    let Some(plate) = plate(job, needed)? else { return Ok(None) };
    let Some((seat, housing)) = shape.wall.as_ref().zip(job.housing.as_ref()) else { return Ok(Some(plate)) };
    let under = Under { strength: strength(&housing.material), reserve: reserve(housing), needed, interference };
    // The plate knows the mean shear around the ring, which needs no more than the thickness.
    let thickness = housing.shoulder.map(|shoulder| shoulder.wall).unwrap_or_default();
    Ok(Some(wall_section::of(seat, &under, (job.part.outside, thickness), plate)))
}

/// The same as an annular plate.
fn plate(job: &Job, needed: Force) -> Result<Option<WallPlan>, PlanError> {
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
            supports: None,
            as_plate: None,
            model: WallModel::Plate,
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
        supports: None,
        as_plate: Some(force / (reserve * more)),
        model: WallModel::Plate,
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
