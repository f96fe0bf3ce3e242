//! The heat of a seat by conduction in its section, where one temperature for each piece is not enough.
//!
//! **Which pieces.** A bush, a housing and a shaft are drawn whole, and followed in their section through medium and shop air. A
//! bearing is more than the ring that is drawn: it comes to the seat as its three bodies say, and its ring goes on in the
//! section there. A piece on a plate, in a wrap, in a medium that warms with it, heated from within, with a mass of its own or
//! cold in moist air is left to the bodies as well.

mod apart;
mod model;
mod race;
mod solids;

pub use model::{OneBody, PieceHeat, Race, SectionHeat, Spread, UnevenStress, WithoutSection};

use super::PlanError;
use super::clearance::Diameters;
use super::histories::Treated;
use super::joint::{Joint, Side};
use super::model::Soak;
use super::push::sections;
use super::subject::Subject;
use crate::job::Job;
use crate::mechanics;
use crate::quantity::Length;
use crate::section::heat::{Conduction, HeatError};
use crate::section::{Accuracy, Model, Section};
use apart::Followed;
use uom::si::time::second;

/// Interference of the rings from which the section is made, as a share of the diameter; its sizes do not hang on it.
const TRIAL_SHARE: f64 = 1e-4;

/// Error in time from which one body is not enough, and from which a caution speaks of it.
pub(super) const TIME_ERROR: f64 = 0.05;

/// Biot number up to which the error of one body was checked (tests/reference/bodies).
pub(super) const CHECKED_BIOT: f64 = 1.0;

/// When a section is followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum When {
    /// Never: one temperature for each body.
    Never,
    /// Where the job gives the length of the seat, and the time of a piece that can be followed may be off by more than 5 % as
    /// one body, or its Biot number is above 1, to which that error was checked.
    Needed,
    /// Wherever a piece can be followed.
    Always,
}

/// Why a section has no history; a plan does without then.
enum Without {
    Heat(String),
    Plan(PlanError),
}

impl From<HeatError> for Without {
    fn from(error: HeatError) -> Self {
        Self::Heat(error.to_string())
    }
}

impl From<crate::section::SectionError> for Without {
    fn from(error: crate::section::SectionError) -> Self {
        Self::Heat(error.to_string())
    }
}

impl From<PlanError> for Without {
    fn from(error: PlanError) -> Self {
        Self::Plan(error)
    }
}

impl From<crate::thermal::ThermalError> for Without {
    fn from(error: crate::thermal::ThermalError) -> Self {
        Self::Plan(error.into())
    }
}

/// Follows the section of a seat, and lets the tracks of its pieces go by it. `one_body` is the same seat without.
pub(super) fn follow(
    job: &Job,
    joint: &Joint<'_>,
    (inner, outer): (&mut Treated, &mut Treated),
    (when, one_body): (When, OneBody),
) -> Result<Result<SectionHeat, WithoutSection>, PlanError> {
    let soaks = [inner.soak.as_ref(), outer.soak.as_ref()];
    let needs = |soak: &Soak| {
        soak.biot > CHECKED_BIOT
            || soak.time_error.is_some_and(|error| error.needs_section || error.largest() > TIME_ERROR)
    };
    if when == When::Needed && !soaks.into_iter().flatten().any(needs) {
        return Ok(Err(WithoutSection::OneBodyIsEnough));
    }
    if job.housing.as_ref().is_some_and(|housing| housing.liner.is_some()) {
        return Ok(Err(WithoutSection::Lined));
    }
    let subjects = [Subject::new(job, joint.inner.piece)?, Subject::new(job, joint.outer.piece)?];
    let sides = [&joint.inner, &joint.outer];
    let mut parts: [Option<Followed>; 2] = [None, None];
    for (k, part) in parts.iter_mut().enumerate() {
        *part = match (soaks[k], sides[k].treatment) {
            (Some(soak), Some(treatment)) => apart::followed(job, joint.seat, &subjects[k], (treatment, soak))?,
            _ => None,
        };
    }
    let wanted = |soak: &Soak| when == When::Always || needs(soak);
    if !parts.iter().zip(soaks).any(|(part, soak)| part.is_some() && soak.is_some_and(wanted)) {
        return Ok(Err(WithoutSection::NoPiece));
    }
    let Some(section) = section(job, joint, when) else { return Ok(Err(WithoutSection::NotDrawn)) };
    let seat = Seat { job, joint, sides, subjects, parts, arrives: [one_body.inner, one_body.outer] };
    match seat.follow(&section, one_body) {
        Ok((heat, curves)) => {
            for (treated, curve) in [inner, outer].into_iter().zip(curves) {
                if let Some(curve) = curve {
                    treated.go_by(curve);
                }
            }
            Ok(Ok(heat))
        }
        Err(Without::Heat(why)) => Ok(Err(WithoutSection::NotFollowed(why))),
        Err(Without::Plan(error)) => Err(error),
    }
}

/// The section of the seat; of a longer boss the one that goes on at the front alone.
fn section(job: &Job, joint: &Joint<'_>, when: When) -> Option<Section> {
    let rings = mechanics::Joint {
        inner: joint.inner.ring,
        outer: joint.outer.ring,
        diameter: joint.nominal,
        length: job.part.width,
        interference: joint.nominal * TRIAL_SHARE,
    };
    let shaped = sections(job, joint.seat, &rings)?;
    let wanted = when == When::Always || shaped.length_stated;
    shaped.seats.into_iter().next().filter(|_| wanted)
}

/// A seat whose section is followed.
struct Seat<'a, 'j> {
    job: &'j Job,
    joint: &'a Joint<'j>,
    sides: [&'a Side<'j>; 2],
    subjects: [Subject<'j>; 2],
    parts: [Option<Followed>; 2],
    /// How warm each body comes to the seat, as one temperature.
    arrives: [crate::quantity::ThermodynamicTemperature; 2],
}

/// Temperatures (K) that count for the fit against time (s) since the medium was left.
type Curve = Vec<(f64, f64)>;

impl Seat<'_, '_> {
    fn follow(&self, section: &Section, one_body: OneBody) -> Result<(SectionHeat, [Option<Curve>; 2]), Without> {
        // Half as many elements each way as for stress: temperatures are smooth where stress is not.
        let model = Model::new(section, Accuracy::Coarse)?;
        let solids = [solids::solid(self.sides[0])?, solids::solid(self.sides[1])?];
        let conduction = Conduction::new(&model, &solids)?;
        let history = self.apart(&conduction)?;
        let left = self.longest_hold();
        let carry = left + self.job.bench.carry.get::<second>();
        let mut pieces = Vec::new();
        let mut curves = [None, None];
        for (part, curve) in curves.iter_mut().enumerate().filter(|(part, _)| self.parts[*part].is_some()) {
            let side = self.sides[part];
            pieces.push(PieceHeat {
                piece: side.piece,
                end: self.spread(&history, part, left)?,
                at_bore: self.spread(&history, part, carry)?,
                one_body_end: self.parts[part].as_ref().map(|followed| followed.one_body_end).unwrap_or_default(),
                stress: self.stress(&history, part)?,
            });
            *curve = Some(self.curve(&history, part, left)?);
        }
        let start = self.at_seat(&history, carry)?;
        let (race, along) = self.race(&conduction, &start)?;
        Ok((SectionHeat { pieces, along, one_body, race }, curves))
    }

    fn longest_hold(&self) -> f64 {
        self.parts.iter().flatten().map(|part| part.hold).fold(0.0, f64::max)
    }

    /// Interference of the cases at 20 °C, on the diameter.
    fn interference(&self) -> crate::quantity::Cases<Length> {
        let at_20 = crate::quantity::reference_temperature().value;
        Diameters::new(self.joint)
            .clearance(at_20, at_20)
            .map(|clearance| Length::new::<uom::si::length::meter>(-clearance))
    }
}
