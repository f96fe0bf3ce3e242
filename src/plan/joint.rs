//! One joint of the job, with inner and outer part told apart: the same code plans both seats.

use super::PlanError;
use super::liner;
use super::model::{Member, SeatKind};
use super::sizes::{SizeBand, at_reference};
use crate::job::{Job, Piece, Treatment};
use crate::mechanics::Ring;
use crate::quantity::Length;
use crate::stock::{Curve, Material};
use std::borrow::Cow;

/// A part of a joint as the plan needs it.
pub(super) struct Side<'j> {
    pub(super) name: &'static str,
    pub(super) piece: Piece,
    /// Material at the joint: that of the liner where there is one.
    pub(super) material: &'j Material,
    /// How its diameter at the joint changes with its temperature.
    pub(super) expansion: Cow<'j, Curve>,
    pub(super) size: SizeBand,
    /// The plain ring that stands for it in the press calculation.
    pub(super) ring: Ring,
    /// Its wall as it is; none for a solid part.
    pub(super) wall: Option<Length>,
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
        let nominal = job.part.outside;
        let material = housing.bore_material();
        let lined = liner::bore(job, housing);
        let own = lined.map(|lined| liner::expansion(&lined, housing)).transpose()?.flatten();
        let expansion = own.map_or(Cow::Borrowed(material.expansion()), Cow::Owned);
        let inner_size = at_reference(outside_size, job.part.material.expansion())?;
        let outer_size = at_reference(&housing.size, &expansion)?;
        let seat = match lined {
            Some(lined) => lined.stands_for()?,
            None => ring(Some(nominal), housing.thinner_outside(), material),
        };
        Ok(Joint {
            seat: SeatKind::Housing,
            nominal,
            inner: Side {
                name: if job.part.kind.is_bearing() { "outer ring" } else { job.part.kind.noun() },
                piece: Piece::Part,
                material: &job.part.material,
                expansion: Cow::Borrowed(job.part.material.expansion()),
                size: inner_size,
                ring: ring(job.part.outer_ring_inside, nominal, &job.part.material),
                wall: wall(job.part.outer_ring_inside, nominal),
                treatment: treatment(job.chill.as_ref(), Piece::Part),
                roughness_rz: job.part.roughness_rz,
            },
            outer: Side {
                name: if lined.is_some() { "liner bore" } else { "housing bore" },
                piece: Piece::Housing,
                material,
                expansion,
                size: outer_size,
                ring: seat,
                wall: wall(Some(nominal), housing.thinner_outside()),
                treatment: treatment(job.warm.as_ref(), Piece::Housing),
                roughness_rz: housing.roughness_rz,
            },
        })
    })())
}

fn shaft_joint(job: &Job) -> Option<Result<Joint<'_>, PlanError>> {
    let (shaft, bore_size, nominal) = (job.shaft.as_ref()?, job.part.bore_size.as_ref()?, job.part.bore?);
    Some((|| {
        let inner_size = at_reference(&shaft.size, shaft.material.expansion())?;
        let outer_size = at_reference(bore_size, job.part.material.expansion())?;
        Ok(Joint {
            seat: SeatKind::Shaft,
            nominal,
            inner: Side {
                name: "shaft",
                piece: Piece::Shaft,
                material: &shaft.material,
                expansion: Cow::Borrowed(shaft.material.expansion()),
                size: inner_size,
                ring: ring(shaft.inside, nominal, &shaft.material),
                wall: wall(shaft.inside, nominal),
                treatment: treatment(job.chill.as_ref(), Piece::Shaft),
                roughness_rz: shaft.roughness_rz,
            },
            outer: Side {
                name: if job.part.kind.is_bearing() { "inner ring bore" } else { "bush bore" },
                piece: Piece::Part,
                material: &job.part.material,
                expansion: Cow::Borrowed(job.part.material.expansion()),
                size: outer_size,
                ring: ring(Some(nominal), job.part.inner_ring_outside, &job.part.material),
                wall: wall(Some(nominal), job.part.inner_ring_outside),
                treatment: treatment(job.warm.as_ref(), Piece::Part),
                roughness_rz: job.part.roughness_rz,
            },
        })
    })())
}

fn wall(inside: Option<Length>, outside: Length) -> Option<Length> {
    inside.map(|inside| 0.5 * (outside - inside))
}

fn ring(inside: Option<Length>, outside: Length, material: &Material) -> Ring {
    Ring { inside, outside, elastic_modulus: material.elastic_modulus(), poisson: material.poisson_ratio() }
}
