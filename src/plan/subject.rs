//! One piece of the job as a body that takes up and gives off heat.

use super::PlanError;
use super::liner;
use crate::job::{Job, PartKind, Piece};
use crate::quantity::{Area, Length, Mass, ThermodynamicTemperature};
use crate::stock::Material;
use crate::stock::closure::ClosureKind;
use crate::thermal::{
    AirAround, BackWall, BallContact, BearingBodies, Boss, ErrorShape, FilmLaw, Plug, Ring, RoundPart, Seal,
    ShaftLength, Shape, ThermalError,
};
use std::sync::{Mutex, PoisonError};

/// A piece with its shape, ready to be chilled or warmed.
pub(super) struct Subject<'j> {
    pub(super) piece: Piece,
    pub(super) material: &'j Material,
    pub(super) mass: Mass,
    pub(super) shape: Shape,
    /// The outline that air or a bath flows around.
    pub(super) round: RoundPart,
    /// One end face, on which the piece may rest.
    pub(super) face: Area,
    /// Height when it rests on that face: its width or length.
    pub(super) height: Length,
    /// Outside diameter.
    pub(super) outside: Length,
    /// A bearing as three bodies.
    pub(super) rings: Option<BearingBodies>,
    pub(super) in_air: LastInAir,
}

/// The film that was asked for last: both ends of a range often differ in a factor alone.
#[derive(Default)]
pub(super) struct LastInAir(Mutex<Option<(AirAround, ThermodynamicTemperature, FilmLaw)>>);

impl<'j> Subject<'j> {
    pub(super) fn new(job: &'j Job, piece: Piece) -> Result<Self, PlanError> {
        match (piece, &job.housing, &job.shaft) {
            (Piece::Housing, Some(_), _) => Self::housing(job),
            (Piece::Shaft, _, Some(_)) => Self::shaft(job),
            _ => Self::part(job),
        }
    }

    fn housing(job: &'j Job) -> Result<Self, PlanError> {
        let Some(housing) = &job.housing else { return Self::part(job) };
        let back_wall =
            housing.shoulder.map(|shoulder| BackWall { thickness: shoulder.wall, hole: Some(shoulder.inside) });
        let outside = housing.even_outside();
        let boss = Boss { bore: job.part.outside, outside, length: housing.length, back_wall };
        let shape = boss.shape()?;
        Ok(Self {
            piece: Piece::Housing,
            material: &housing.material,
            mass: housing.mass.unwrap_or(shape.volume * housing.material.density() * liner::heat_share(job, housing)),
            face: shape.volume / housing.length,
            height: housing.length,
            shape,
            round: RoundPart::Boss(boss),
            outside,
            rings: None,
            in_air: LastInAir::default(),
        })
    }

    fn shaft(job: &'j Job) -> Result<Self, PlanError> {
        let Some(shaft) = &job.shaft else { return Self::part(job) };
        let outside = job.part.bore.unwrap_or(job.part.outside);
        let shape = ShaftLength { outside, bore: shaft.inside, length: shaft.length }.shape()?;
        Ok(Self {
            piece: Piece::Shaft,
            material: &shaft.material,
            mass: shaft.mass.unwrap_or(shape.volume * shaft.material.density()),
            face: shape.volume / shaft.length,
            height: shaft.length,
            shape,
            round: RoundPart::Plug(Plug { outside, length: shaft.length }),
            outside,
            rings: None,
            in_air: LastInAir::default(),
        })
    }

    fn part(job: &'j Job) -> Result<Self, PlanError> {
        let part = &job.part;
        let (round, mut shape) = match part.bore {
            None => {
                let plug = Plug { outside: part.outside, length: part.width };
                (RoundPart::Plug(plug), plug.shape()?)
            }
            Some(bore) => {
                let ring = Ring { bore, outside: part.outside, width: part.width };
                (RoundPart::Ring(ring), ring.shape()?)
            }
        };
        let face = shape.volume / part.width;
        if let Some(inside) = part.outer_ring_inside.filter(|_| part.kind.is_bearing()) {
            // Heat goes into each ring of a bearing from its own faces, not through the whole section.
            shape.path = Ring { bore: inside, outside: part.outside, width: part.width }.shape()?.path;
        }
        Ok(Self {
            piece: Piece::Part,
            material: &part.material,
            mass: part.mass,
            shape,
            round,
            face,
            height: part.width,
            outside: part.outside,
            rings: rings(job),
            in_air: LastInAir::default(),
        })
    }

    /// Its film in air, from `start` to the temperature of the air, times a factor.
    pub(super) fn film_in_air(
        &self,
        around: &AirAround,
        start: ThermodynamicTemperature,
        factor: f64,
    ) -> Result<FilmLaw, ThermalError> {
        let mut last = self.in_air.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, _, film)) = last.as_ref().filter(|(air, from, _)| air == around && *from == start) {
            return film.times(factor);
        }
        let film = FilmLaw::in_air(&self.round, around, start)?;
        let law = film.times(factor);
        *last = Some((*around, start, film));
        law
    }

    /// The shape by which the error of one body is bounded.
    pub(super) fn error_shape(&self) -> Option<ErrorShape> {
        match self.round {
            RoundPart::Ring(ring) => ErrorShape::of_ring(&ring).ok(),
            RoundPart::Plug(plug) => ErrorShape::of_plug(&plug).ok(),
            RoundPart::Boss(boss) => {
                ErrorShape::of_ring(&Ring { bore: boss.bore, outside: boss.outside, width: boss.length }).ok()
            }
        }
    }
}

/// A ball bearing as three bodies; a roller bearing has no rule for its sections yet.
fn rings(job: &Job) -> Option<BearingBodies> {
    let part = &job.part;
    let (bore, closure) = (part.bore?, part.closure.as_ref()?);
    let open = closure.kind() == ClosureKind::Open;
    (part.kind == PartKind::BallBearing).then_some(BearingBodies {
        bore,
        outside: part.outside,
        width: part.width,
        mass: part.mass,
        shares: None,
        seal: if open { Seal::Open } else { Seal::Closed },
        contact: if open { BallContact::Dry } else { BallContact::Greased },
    })
}
