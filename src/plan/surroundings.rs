//! What surrounds a piece: film, radiation, wrap and moisture, at the end of their ranges that is asked for.

use super::PlanError;
use super::subject::Subject;
use crate::job::{FilmChoice, Job, Treatment, Wrapping};
use crate::quantity::{HeatTransfer, Length, ThermodynamicTemperature};
use crate::stock::medium::{Film, Law};
use crate::thermal::{
    AirAround, Axis, FilmLaw, MoistAir, NitrogenPool, ThermalError, Wrap, nitrogen_boiling_point, part_in_air,
};
use std::ops::{Add, Mul};
use uom::si::f64::Velocity;
use uom::si::length::millimeter;
use uom::si::ratio::ratio;
use uom::si::velocity::meter_per_second;

/// Which end of every range.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Pace {
    /// The piece follows its surroundings slowly.
    Slow,
    /// It follows them quickly.
    Quick,
    /// Between the two, from 0 for slow to 1 for quick: a draw of a scatter.
    Between(f64),
}

impl Pace {
    pub(super) fn of<T: Add<Output = T> + Mul<f64, Output = T>>(self, (slow, quick): (T, T)) -> T {
        match self {
            Self::Slow => slow,
            Self::Quick => quick,
            Self::Between(share) => slow * (1.0 - share) + quick * share,
        }
    }

    /// Between two speeds of air, m/s: by their roots, for the film of a stream grows with about the root of its speed.
    fn speed(self, (slow, quick): (f64, f64)) -> f64 {
        self.of((slow.sqrt(), quick.sqrt())).powi(2)
    }

    /// How far it is from the slow end to the quick one.
    pub(super) fn share(self) -> f64 {
        match self {
            Self::Slow => 0.0,
            Self::Quick => 1.0,
            Self::Between(share) => share,
        }
    }

    /// The other end: what slows a plate down is quick air around the rest of the piece.
    pub(super) fn opposite(self) -> Self {
        match self {
            Self::Slow => Self::Quick,
            Self::Quick => Self::Slow,
            Self::Between(share) => Self::Between(1.0 - share),
        }
    }
}

/// One of the surroundings of a piece.
#[derive(Clone)]
pub(super) struct Surroundings {
    pub(super) temperature: ThermodynamicTemperature,
    pub(super) film: FilmLaw,
    pub(super) emissivity: f64,
    pub(super) wrap: Wrap,
    pub(super) moisture: Option<MoistAir>,
}

/// The medium that treats a piece.
pub(super) fn medium(
    job: &Job,
    subject: &Subject<'_>,
    treatment: &Treatment,
    pace: Pace,
) -> Result<Surroundings, PlanError> {
    let start = job.bench.temperature;
    let boils = matches!(&treatment.film, FilmChoice::OfMedium(Film { law: Law::BoilingNitrogen { .. }, .. }));
    let temperature = if boils { nitrogen_boiling_point(job.bench.pressure)? } else { treatment.temperature };
    Ok(Surroundings {
        temperature,
        film: film(job, subject, &treatment.film, pace, (start, temperature))?,
        emissivity: emissivity(subject, radiates(treatment), pace),
        wrap: treatment.wrap.map_or(Ok(Wrap::none()), |wrapping| wrap(wrapping, (start, treatment.temperature)))?,
        moisture: None,
    })
}

/// The air of the shop around a piece at `start`; its wrap is taken off there, and moisture gets at it.
pub(super) fn shop_air(
    job: &Job,
    subject: &Subject<'_>,
    start: ThermodynamicTemperature,
    pace: Pace,
) -> Result<Surroundings, PlanError> {
    let air = job.bench.temperature;
    let moisture = job.bench.humidity.map(|humidity| MoistAir::new(air, humidity.get::<ratio>(), job.bench.pressure));
    Ok(Surroundings {
        temperature: air,
        film: film(job, subject, &job.bench.film, pace, (start, air))?,
        emissivity: emissivity(subject, true, pace),
        wrap: Wrap::none(),
        moisture: moisture.transpose()?,
    })
}

/// Whether the piece exchanges radiation beside convection; one that is heated from within stands in air.
pub(super) fn radiates(treatment: &Treatment) -> bool {
    treatment.medium.film().is_none_or(|film| film.radiates)
}

fn emissivity(subject: &Subject<'_>, radiates: bool, pace: Pace) -> f64 {
    let bounds = subject.material.emissivity();
    if radiates { pace.of((bounds.low, bounds.high)) } else { 0.0 }
}

fn film(
    job: &Job,
    subject: &Subject<'_>,
    choice: &FilmChoice,
    pace: Pace,
    (start, surroundings): (ThermodynamicTemperature, ThermodynamicTemperature),
) -> Result<FilmLaw, ThermalError> {
    match choice {
        FilmChoice::Stated(film) => FilmLaw::constant(*film),
        FilmChoice::OfMedium(Film { law: Law::Stated | Law::Stream { .. }, low, high, .. }) => {
            FilmLaw::constant(pace.of((*low, *high)))
        }
        FilmChoice::OfMedium(Film { law: Law::Air { speeds_m_s, factors }, .. }) => {
            let around = air_around(job, surroundings, pace.speed(*speeds_m_s));
            subject.film_in_air(&around, start, pace.of(*factors))
        }
        FilmChoice::OfMedium(Film { law: Law::BoilingNitrogen { factors }, .. }) => {
            let mut pool = NitrogenPool::new(subject.outside);
            pool.film_factor = pace.of(*factors);
            pool.pressure = job.bench.pressure;
            FilmLaw::in_nitrogen(&pool, start)
        }
    }
}

fn air_around(job: &Job, air: ThermodynamicTemperature, speed: f64) -> AirAround {
    AirAround {
        air,
        pressure: job.bench.pressure,
        air_speed: (speed > 0.0).then(|| Velocity::new::<meter_per_second>(speed)),
        axis: Axis::Vertical,
    }
}

/// Film of the air of the shop on a surface at one temperature.
pub(super) fn shop_film_at(
    job: &Job,
    subject: &Subject<'_>,
    surface: ThermodynamicTemperature,
    pace: Pace,
) -> Result<HeatTransfer, ThermalError> {
    let air = job.bench.temperature;
    match &job.bench.film {
        // One temperature needs no table.
        FilmChoice::OfMedium(Film { law: Law::Air { speeds_m_s, factors }, .. }) => {
            let around = air_around(job, air, pace.speed(*speeds_m_s));
            Ok(part_in_air(&subject.round, &around, surface)?.mean * pace.of(*factors))
        }
        choice => film(job, subject, choice, pace, (surface, air))?.at(surface),
    }
}

/// Thickness of a bag's film, of three sheets of paper and of a box's wall, mm, and of the air that lies in each.
///
/// Common practice, no published source.
const BAG_MM: (f64, f64) = (0.08, 2.0);
const PAPER_MM: (f64, f64) = (0.3, 1.0);
const BOX_MM: (f64, f64) = (3.0, 8.0);

/// Conductivity of corrugated cardboard, W/(m K), from memory of textbook tables (0.06 to 0.07).
const CARDBOARD_W_MK: f64 = 0.064;

/// Effective emissivity between metal and the wrap, as for a bare ring in paper or plastic (estimate).
const WRAP_EMISSIVITY: f64 = 0.25;

fn wrap(
    wrapping: Wrapping,
    (start, end): (ThermodynamicTemperature, ThermodynamicTemperature),
) -> Result<Wrap, ThermalError> {
    let mm = Length::new::<millimeter>;
    let (layer, air) = match wrapping {
        Wrapping::PlasticBag => (Wrap::plastic_bag(mm(BAG_MM.0))?, BAG_MM.1),
        Wrapping::Paper => (Wrap::paper(mm(PAPER_MM.0))?, PAPER_MM.1),
        Wrapping::CardboardBox => (Wrap::layer(mm(BOX_MM.0), CARDBOARD_W_MK)?, BOX_MM.1),
    };
    let kelvins = 0.5 * (start.value + end.value);
    let mean = ThermodynamicTemperature::new::<uom::si::thermodynamic_temperature::kelvin>(kelvins);
    Ok(layer.and(Wrap::still_air(mm(air), mean, WRAP_EMISSIVITY)?))
}
