//! Temperature of one piece against time: in its medium, then in shop air.

use super::PlanError;
use super::model::Soak;
use crate::job::{Hold, Job, Piece, SETTLED_WITHIN_SHARE, Treatment};
use crate::quantity::{Area, HeatTransfer, TemperatureInterval, ThermodynamicTemperature, Time, warming};
use crate::stock::Material;
use crate::thermal::{BackWall, Body, Boss, History, Plug, Ring, ShaftLength, Shape, Stage, Until};
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::{hour, second};

/// Longest time that a piece may take to its target temperature.
const LONGEST_H: f64 = 72.0;

/// Temperature of a piece. Time zero is when the pieces leave their media.
pub(super) struct Track {
    shop: f64,
    warmed: Option<Warmed>,
}

struct Warmed {
    hold: f64,
    in_medium: History,
    on_bench: History,
    bench_end: f64,
}

impl Track {
    /// A piece that stays at the temperature of the shop.
    fn still(shop: ThermodynamicTemperature) -> Self {
        Self { shop: shop.get::<kelvin>(), warmed: None }
    }

    /// Time that the piece spends in its medium, s.
    pub(super) fn hold(&self) -> f64 {
        self.warmed.as_ref().map_or(0.0, |warmed| warmed.hold)
    }

    /// Temperature in kelvin `time` seconds after leaving the medium; negative times are in it.
    pub(super) fn kelvin_at(&self, time: f64) -> f64 {
        let Some(warmed) = &self.warmed else { return self.shop };
        if time < 0.0 {
            let since_start = time + warmed.hold;
            if since_start <= 0.0 { self.shop } else { warmed.in_medium.kelvin_at(since_start) }
        } else if time >= warmed.bench_end {
            self.shop
        } else {
            warmed.on_bench.kelvin_at(time)
        }
    }
}

/// A piece's track, and the soak that a report shows when it is treated.
pub(super) struct Treated {
    pub(super) track: Track,
    pub(super) soak: Option<Soak>,
}

/// Follows one piece through its treatment, with the ends of the film ranges that leave the least in hand: slow in the
/// medium, quick in shop air.
pub(super) fn treat(job: &Job, piece: Piece, treatment: Option<&Treatment>) -> Result<Treated, PlanError> {
    let Some(treatment) = treatment else {
        return Ok(Treated { track: Track::still(job.bench.temperature), soak: None });
    };
    let subject = Subject::new(job, piece)?;
    let slow = subject.history(job, treatment, Pace::Slow, until(job, treatment))?;
    let (hold, end) = slow.end();
    let quick_until = match treatment.hold {
        // A piece that is taken out by its temperature is taken out sooner when it is quicker.
        Hold::Reaches(_) => until(job, treatment),
        Hold::For(_) | Hold::Settled => Until::Elapsed(hold),
    };
    let (_, end_quick) = subject.history(job, treatment, Pace::Quick, quick_until)?.end();
    let on_bench = subject.bench(job, end)?;
    let soak = subject.soak(treatment, &slow, (hold, end, end_quick));
    let bench_end = on_bench.end().0.get::<second>();
    let warmed = Warmed { hold: hold.get::<second>(), in_medium: slow, on_bench, bench_end };
    Ok(Treated { track: Track { shop: job.bench.temperature.get::<kelvin>(), warmed: Some(warmed) }, soak: Some(soak) })
}

fn until(job: &Job, treatment: &Treatment) -> Until {
    match treatment.hold {
        Hold::For(time) => Until::Elapsed(time),
        Hold::Reaches(target) => Until::Reaches { target, longest: Time::new::<hour>(LONGEST_H) },
        Hold::Settled => Until::Settled { within: settled_within(treatment.temperature, job.bench.temperature) },
    }
}

/// Two per cent of the way.
fn settled_within(from: ThermodynamicTemperature, to: ThermodynamicTemperature) -> TemperatureInterval {
    let way = warming(from, to).get::<step_kelvin>().abs() * SETTLED_WITHIN_SHARE;
    TemperatureInterval::new::<step_kelvin>(way.max(0.01))
}

/// Which end of the film range.
#[derive(Clone, Copy)]
enum Pace {
    Slow,
    Quick,
}

impl Pace {
    fn of(self, range: (HeatTransfer, HeatTransfer)) -> HeatTransfer {
        match self {
            Self::Slow => range.0,
            Self::Quick => range.1,
        }
    }

    /// The other end: what slows the medium down is quick air around the rest of the piece.
    fn opposite(self) -> Self {
        match self {
            Self::Slow => Self::Quick,
            Self::Quick => Self::Slow,
        }
    }

    fn emissivity(self, material: &Material) -> f64 {
        match self {
            Self::Slow => material.emissivity().low,
            Self::Quick => material.emissivity().high,
        }
    }
}

/// Whether the piece exchanges radiation beside convection; a piece that is heated from within stands in air.
fn radiates(treatment: &Treatment) -> bool {
    treatment.medium.film().is_none_or(|film| film.radiates)
}

/// Film and surroundings of a body that a plate warms on a share of its surface while the rest loses heat to the air:
/// the heat flows add up, so both are weighted by film and share.
fn mixed(
    (share, film, plate): (f64, HeatTransfer, ThermodynamicTemperature),
    (air_film, air): (HeatTransfer, ThermodynamicTemperature),
) -> (HeatTransfer, ThermodynamicTemperature) {
    let (by_plate, by_air) = (film * share, air_film * (1.0 - share));
    let whole = by_plate + by_air;
    let weight = (by_plate / whole).get::<uom::si::ratio::ratio>();
    let kelvins = air.get::<kelvin>() + weight * warming(plate, air).get::<step_kelvin>();
    (whole, ThermodynamicTemperature::new::<kelvin>(kelvins))
}

/// A piece with its shape.
struct Subject<'j> {
    piece: Piece,
    material: &'j Material,
    mass: crate::quantity::Mass,
    shape: Shape,
    /// One end face, on which the piece may rest.
    face: Area,
}

impl<'j> Subject<'j> {
    fn new(job: &'j Job, piece: Piece) -> Result<Self, PlanError> {
        let part = &job.part;
        let (material, shape, mass) = match (piece, &job.housing, &job.shaft) {
            (Piece::Housing, Some(housing), _) => {
                let back_wall =
                    housing.shoulder.map(|shoulder| BackWall { thickness: shoulder.wall, hole: Some(shoulder.inside) });
                let boss = Boss { bore: part.outside, outside: housing.outside, length: housing.length, back_wall };
                (&housing.material, boss.shape()?, housing.mass)
            }
            (Piece::Shaft, _, Some(shaft)) => {
                let outside = part.bore.unwrap_or(part.outside);
                let length = ShaftLength { outside, bore: shaft.inside, length: shaft.length };
                (&shaft.material, length.shape()?, shaft.mass)
            }
            _ => (&part.material, part_shape(job)?, Some(part.mass)),
        };
        let mass = mass.unwrap_or(shape.volume * material.density());
        let length = match (piece, &job.housing, &job.shaft) {
            (Piece::Housing, Some(housing), _) => housing.length,
            (Piece::Shaft, _, Some(shaft)) => shaft.length,
            _ => part.width,
        };
        Ok(Self { piece, material, mass, face: shape.volume / length, shape })
    }

    fn body(&self, pace: Pace) -> Body<'_> {
        Body {
            mass: self.mass,
            area: self.shape.area,
            heat_capacity: self.material.heat_capacity(),
            conductivity: self.material.conductivity(),
            emissivity: pace.emissivity(self.material),
            path: self.shape.path,
        }
    }

    fn history(&self, job: &Job, treatment: &Treatment, pace: Pace, until: Until) -> Result<History, PlanError> {
        let (film, surroundings) = match self.resting_share(treatment) {
            None => (pace.of(treatment.film), treatment.temperature),
            Some(share) => mixed(
                (share, pace.of(treatment.film), treatment.temperature),
                (pace.opposite().of(job.bench.film), job.bench.temperature),
            ),
        };
        let stage = Stage { surroundings, film, radiates: radiates(treatment), power: treatment.power, until };
        History::run(&self.body(pace), job.bench.temperature, &[stage]).map_err(|error| self.fails(job, error))
    }

    /// Share of the surface that a plate touches, when the medium touches no more than that.
    fn resting_share(&self, treatment: &Treatment) -> Option<f64> {
        let resting = treatment.medium.film().is_some_and(|film| film.resting_face_only);
        resting.then(|| (self.face / self.shape.area).get::<uom::si::ratio::ratio>())
    }

    fn bench(&self, job: &Job, start: ThermodynamicTemperature) -> Result<History, PlanError> {
        let stage = Stage {
            surroundings: job.bench.temperature,
            film: Pace::Quick.of(job.bench.film),
            radiates: true,
            power: crate::quantity::Power::new::<watt>(0.0),
            until: Until::Settled { within: TemperatureInterval::new::<step_kelvin>(BENCH_SETTLED_K) },
        };
        History::run(&self.body(Pace::Quick), start, &[stage]).map_err(|error| self.fails(job, error))
    }

    fn fails(&self, job: &Job, error: crate::thermal::ThermalError) -> PlanError {
        let piece = match self.piece {
            Piece::Part => job.part.kind.noun(),
            Piece::Housing => "housing",
            Piece::Shaft => "shaft",
        };
        PlanError::Temperature { piece, error }
    }

    fn soak(
        &self,
        treatment: &Treatment,
        slow: &History,
        (hold, end, end_quick): (Time, ThermodynamicTemperature, ThermodynamicTemperature),
    ) -> Soak {
        let record = slow.stage(0);
        let powered = treatment.power.get::<watt>() > 0.0;
        Soak {
            piece: self.piece,
            medium: treatment.medium.id().to_owned(),
            phrase: treatment.medium.phrase().to_owned(),
            medium_temperature: treatment.temperature,
            hold_rule: treatment.hold,
            biot: record.map_or(0.0, |record| record.biot),
            film: treatment.film.0,
            radiates: radiates(treatment),
            time_constant: record.map(|record| record.time_constant).filter(|_| !powered),
            hold,
            end,
            end_quick,
            mass: self.mass,
            area: self.shape.area,
        }
    }
}

/// Distance from the shop's temperature at which a piece on the bench counts as back, K. Small beside any clearance: a
/// steel ring of 100 mm changes by 0.1 µm over it.
const BENCH_SETTLED_K: f64 = 0.1;

fn part_shape(job: &Job) -> Result<Shape, PlanError> {
    let part = &job.part;
    let Some(bore) = part.bore else {
        return Ok(Plug { outside: part.outside, length: part.width }.shape()?);
    };
    let mut shape = Ring { bore, outside: part.outside, width: part.width }.shape()?;
    if let Some(inside) = part.outer_ring_inside.filter(|_| part.kind.is_bearing()) {
        // Heat goes into each ring of a bearing from its own faces, not through the whole section.
        shape.path = Ring { bore: inside, outside: part.outside, width: part.width }.shape()?.path;
    }
    Ok(shape)
}
