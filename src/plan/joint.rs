//! One joint of the job, with inner and outer part told apart: the same code plans both seats.

use super::PlanError;
use super::model::{Member, SeatKind};
use super::sizes::{SizeBand, at_reference};
use crate::job::{Job, Piece, Treatment};
use crate::mechanics::Ring;
use crate::quantity::Length;
use crate::stock::Material;

/// A part of a joint as the plan needs it.
pub(super) struct Side<'j> {
    pub(super) name: &'static str,
    pub(super) piece: Piece,
    pub(super) material: &'j Material,
    pub(super) size: SizeBand,
    /// The plain ring that stands for it in the press calculation.
    pub(super) ring: Ring,
    pub(super) treatment: Option<&'j Treatment>,
    pub(super) roughness_rz: Option<Length>,
}

impl Side<'_> {
    pub(super) fn member(&self) -> Member {
        Member {
            name: self.name,
            piece: self.piece,
            material: self.material.id().to_owned(),
            smallest: self.size.smallest.length(),
            largest: self.size.largest.length(),
            basis: self.size.basis.clone(),
        }
    }
}

/// A joint: what goes in, and what it goes into.
pub(super) struct Joint<'j> {
    pub(super) seat: SeatKind,
    pub(super) nominal: Length,
    pub(super) inner: Side<'j>,
    pub(super) outer: Side<'j>,
}

/// The joints of a job, housing first.
pub(super) fn joints(job: &Job) -> Result<Vec<Joint<'_>>, PlanError> {
    [housing_joint(job).transpose()?, shaft_joint(job).transpose()?].into_iter().flatten().map(Ok).collect()
}

fn treatment(treatment: Option<&Treatment>, piece: Piece) -> Option<&Treatment> {
    treatment.filter(|treatment| treatment.piece == piece)
}

fn housing_joint(job: &Job) -> Option<Result<Joint<'_>, PlanError>> {
    let (housing, outside_size) = (job.housing.as_ref()?, job.part.outside_size.as_ref()?);
    Some((|| {
        let inner_size = at_reference(outside_size, &job.part.material)?;
        let outer_size = at_reference(&housing.size, &housing.material)?;
        let nominal = job.part.outside;
        Ok(Joint {
            seat: SeatKind::Housing,
            nominal,
            inner: Side {
                name: if job.part.kind.is_bearing() { "outer ring" } else { job.part.kind.noun() },
                piece: Piece::Part,
                material: &job.part.material,
                size: inner_size,
                ring: ring(job.part.outer_ring_inside, nominal, &job.part.material),
                treatment: treatment(job.chill.as_ref(), Piece::Part),
                roughness_rz: job.part.roughness_rz,
            },
            outer: Side {
                name: "housing bore",
                piece: Piece::Housing,
                material: &housing.material,
                size: outer_size,
                ring: ring(Some(nominal), housing.outside, &housing.material),
                treatment: treatment(job.warm.as_ref(), Piece::Housing),
                roughness_rz: housing.roughness_rz,
            },
        })
    })())
}

fn shaft_joint(job: &Job) -> Option<Result<Joint<'_>, PlanError>> {
    let (shaft, bore_size, nominal) = (job.shaft.as_ref()?, job.part.bore_size.as_ref()?, job.part.bore?);
    Some((|| {
        let inner_size = at_reference(&shaft.size, &shaft.material)?;
        let outer_size = at_reference(bore_size, &job.part.material)?;
        Ok(Joint {
            seat: SeatKind::Shaft,
            nominal,
            inner: Side {
                name: "shaft",
                piece: Piece::Shaft,
                material: &shaft.material,
                size: inner_size,
                ring: ring(shaft.inside, nominal, &shaft.material),
                treatment: treatment(job.chill.as_ref(), Piece::Shaft),
                roughness_rz: shaft.roughness_rz,
            },
            outer: Side {
                name: if job.part.kind.is_bearing() { "inner ring bore" } else { "bush bore" },
                piece: Piece::Part,
                material: &job.part.material,
                size: outer_size,
                ring: ring(Some(nominal), job.part.inner_ring_outside, &job.part.material),
                treatment: treatment(job.warm.as_ref(), Piece::Part),
                roughness_rz: job.part.roughness_rz,
            },
        })
    })())
}

fn ring(inside: Option<Length>, outside: Length, material: &Material) -> Ring {
    Ring { inside, outside, elastic_modulus: material.elastic_modulus(), poisson: material.poisson_ratio() }
}
