//! A piece in its medium, at either end of every range, for as long as the job says.

use super::PlanError;
use super::place::Place;
use super::run::Run;
use super::subject::Subject;
use super::surroundings::{self, Pace};
use crate::job::{Hold, Job, SETTLED_WITHIN_SHARE, Treatment};
use crate::quantity::{HeatTransfer, TemperatureInterval, ThermodynamicTemperature, Time, warming};
use crate::thermal::{BearingPart, ThermalError, Until, radiation_coefficient};
use std::sync::Arc;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::{hour, second};

/// Longest time that a piece may take to its target temperature.
const LONGEST_H: f64 = 72.0;

/// Longest time in shop air that is followed, s.
pub(super) const LONGEST_ON_BENCH_S: f64 = 4.0 * 3600.0;

/// Film from which the rings of a bearing no longer follow together, W/(m² K): the balls pass less than that.
///
/// A ring of 62 mm has about 50 cm² of surface, and about 0.2 W/K of contact with its balls: see the bodies of
/// [`crate::thermal`].
const THREE_BODIES_FROM: f64 = 30.0;

/// Where a piece is put, at the slow and the quick end of every range.
pub(super) type Places = Arc<[Place; 2]>;

/// A piece in its medium.
pub(super) struct Soaking<'a, 'j> {
    pub(super) job: &'j Job,
    pub(super) subject: &'a Subject<'j>,
    pub(super) treatment: &'j Treatment,
    pub(super) counts: BearingPart,
    /// Where the piece is put, at both ends of every range: a film's table is made once.
    places: Places,
    /// How many bodies the piece is, where that is settled beforehand.
    bodies: Option<usize>,
}

impl<'a, 'j> Soaking<'a, 'j> {
    pub(super) fn new(
        job: &'j Job,
        subject: &'a Subject<'j>,
        treatment: &'j Treatment,
        counts: BearingPart,
    ) -> Result<Self, PlanError> {
        let at = |pace| Place::new(job, subject, treatment, pace).map_err(|error| error.of(job, subject.piece));
        let places = Arc::new([at(Pace::Slow)?, at(Pace::Quick)?]);
        Ok(Self { job, subject, treatment, counts, places, bodies: None })
    }

    /// The same piece in the same medium once more.
    pub(super) fn again(
        job: &'j Job,
        subject: &'a Subject<'j>,
        treatment: &'j Treatment,
        (counts, places): (BearingPart, Places),
    ) -> Self {
        Self { job, subject, treatment, counts, places, bodies: None }
    }

    /// Where the piece is put, for another time.
    pub(super) fn places(&self) -> Places {
        Arc::clone(&self.places)
    }

    /// The same at one place between the ends of every range, whatever pace is asked for afterwards, as so many bodies.
    pub(super) fn between(
        job: &'j Job,
        subject: &'a Subject<'j>,
        treatment: &'j Treatment,
        (counts, share, bodies): (BearingPart, f64, Option<usize>),
    ) -> Result<Self, PlanError> {
        let place = Place::new(job, subject, treatment, Pace::Between(share));
        let place = place.map_err(|error| error.of(job, subject.piece))?;
        Ok(Self { job, subject, treatment, counts, places: Arc::new([place.clone(), place]), bodies })
    }

    /// Where the piece is put.
    pub(super) fn place(&self, pace: Pace) -> &Place {
        let [slow, quick] = &*self.places;
        match pace {
            Pace::Slow | Pace::Between(_) => slow,
            Pace::Quick => quick,
        }
    }

    /// Temperatures at the start: three where the rings of a bearing part company.
    fn start(&self, place: &Place) -> Vec<ThermodynamicTemperature> {
        let film = place.around.film.extremes().1.get::<watt_per_square_meter_kelvin>();
        let apart = place.is_all_round() && (film >= THREE_BODIES_FROM || self.treatment.power.get::<watt>() > 0.0);
        let bodies = if apart && self.subject.rings.is_some() { 3 } else { 1 };
        vec![self.job.bench.temperature; self.bodies.unwrap_or(bodies)]
    }

    /// How many bodies the piece is followed as.
    pub(super) fn bodies(&self, pace: Pace) -> usize {
        self.start(self.place(pace)).len()
    }

    /// The piece in its medium for a time.
    pub(super) fn follow(&self, pace: Pace, time: Time) -> Result<Run, PlanError> {
        let place = self.place(pace);
        Run::new(self.subject, place, &self.start(place), time).map_err(|error| error.of(self.job, self.subject.piece))
    }

    /// The piece in its medium until the hold of the job is over, and how long that took.
    pub(super) fn held(&self, pace: Pace) -> Result<(Run, Time), PlanError> {
        match self.treatment.hold {
            Hold::For(time) => Ok((self.follow(pace, time)?, time)),
            Hold::Reaches(target) => self.until(pace, target),
            Hold::Settled => {
                let left = settled_within(self.treatment.temperature, self.job.bench.temperature);
                let side =
                    warming(self.job.bench.temperature, self.treatment.temperature).get::<step_kelvin>().signum();
                let target = self.treatment.temperature + side * left;
                self.until(pace, target)
            }
        }
    }

    /// The piece in its medium until the body that counts has a temperature.
    pub(super) fn until(&self, pace: Pace, target: ThermodynamicTemperature) -> Result<(Run, Time), PlanError> {
        let (place, start) = (self.place(pace), self.job.bench.temperature);
        if self.start(place).len() == 1 && place.is_simple(self.subject, start) {
            let longest = Time::new::<hour>(LONGEST_H);
            return Run::lump(self.subject, place, start, Until::Reaches { target, longest })
                .map_err(|error| error.of(self.job, self.subject.piece));
        }
        let reached = self.time_to(pace, target)?;
        Ok((self.follow(pace, reached)?, reached))
    }

    /// When the body that counts has a temperature: the time is lengthened until it has.
    pub(super) fn time_to(&self, pace: Pace, target: ThermodynamicTemperature) -> Result<Time, PlanError> {
        let longest = Time::new::<hour>(LONGEST_H);
        let (place, start) = (self.place(pace), self.job.bench.temperature);
        if self.start(place).len() == 1 && place.is_simple(self.subject, start) {
            return Ok(self.until(pace, target)?.1);
        }
        let mut time = self.likely_time(pace, target)?;
        loop {
            let run = self.follow(pace, time)?;
            if let Some(reached) = run.first_time_at(self.counts, target) {
                return Ok(reached);
            }
            if time >= longest {
                let error = ThermalError::NotReachable {
                    target_k: target.get::<kelvin>(),
                    start_k: self.job.bench.temperature.get::<kelvin>(),
                    at_most_k: run.kelvin_at(self.counts, time.get::<second>()),
                };
                return Err(PlanError::from(error).of(self.job, self.subject.piece));
            }
            // A heater that is followed too far leaves the material's table, a medium never does.
            let longer = if self.treatment.power.get::<watt>() > 0.0 { 1.25 } else { 2.0 };
            time = (longer * time).min(longest);
        }
    }

    /// A guess of the time to a temperature, from the film half-way.
    fn likely_time(&self, pace: Pace, target: ThermodynamicTemperature) -> Result<Time, PlanError> {
        let start = self.job.bench.temperature;
        let way = warming(target, start).get::<step_kelvin>().abs();
        let power = self.treatment.power.get::<watt>();
        if power > 0.0 {
            let stored = self.subject.mass.value * self.heat_capacity_at(start) * way;
            return Ok(Time::new::<second>((0.3 * stored / power).max(1.0)));
        }
        let constant = self.time_constant(pace, from_kelvin(0.5 * (start.value + target.value)))?;
        let whole = warming(self.treatment.temperature, start).get::<step_kelvin>().abs().max(1e-6);
        let left = (1.0 - way / whole).clamp(1e-4, 1.0);
        Ok((1.3 * constant * -left.ln()).max(Time::new::<second>(1.0)))
    }

    fn heat_capacity_at(&self, temperature: ThermodynamicTemperature) -> f64 {
        self.subject.material.heat_capacity().at_inside(temperature.get::<kelvin>())
    }

    /// The piece in shop air after its hold.
    pub(super) fn bench(&self, in_medium: &Run) -> Result<Run, PlanError> {
        self.bench_from(&in_medium.end(), Pace::Quick)
    }

    /// The piece in shop air with these temperatures at the start.
    pub(super) fn bench_from(&self, start: &[ThermodynamicTemperature], pace: Pace) -> Result<Run, PlanError> {
        // From the medium's own temperature, so that a longer hold meets the very same film. A table of a scatter begins beyond
        // it in the corners of its grid, where no piece arrives, and the film must reach that too.
        let medium = Some(self.treatment.temperature).filter(|_| self.treatment.power.get::<watt>() <= 0.0);
        let from = from_kelvin(farthest(start.iter().copied().chain(medium), self.job));
        let around = surroundings::shop_air(self.job, self.subject, from, pace)?;
        let place = Place::in_air(around);
        Run::new(self.subject, &place, start, Time::new::<second>(LONGEST_ON_BENCH_S))
            .map_err(|error| error.of(self.job, self.subject.piece))
    }

    /// Convection and linearised radiation at a temperature of the surface.
    pub(super) fn film_at(&self, pace: Pace, surface: ThermodynamicTemperature) -> Result<Films, PlanError> {
        let main = self.place(pace).main();
        let radiative = if main.emissivity > 0.0 {
            radiation_coefficient(main.emissivity, surface, main.temperature)?
        } else {
            HeatTransfer::default()
        };
        Ok(Films { convective: main.film.at(surface)?, radiative })
    }

    /// Biot number with a film, the conductivity at a temperature.
    pub(super) fn biot(&self, film: HeatTransfer, at: ThermodynamicTemperature) -> f64 {
        let conductivity = self.subject.material.conductivity().at_inside(at.get::<kelvin>());
        film.value * self.place(Pace::Slow).main_path(self.subject).length.value / conductivity
    }

    /// How long the innermost place is behind the mean: `L²/(2 n a)` with the way L, its divisor n and the diffusivity a.
    ///
    /// While a wall, a cylinder or a sphere warms evenly, its temperature is a parabola over the radius; n is 3, 4 and 5. It
    /// is the same for any film, and holds once the change has gone through (after about `L²/(5 a)`).
    pub(super) fn middle_lag(&self, at: ThermodynamicTemperature) -> Time {
        let (path, material) = (self.place(Pace::Slow).main_path(self.subject), self.subject.material);
        let conductivity = material.conductivity().at_inside(at.get::<kelvin>());
        let stored = material.density().value * self.heat_capacity_at(at);
        Time::new::<second>(path.length.value.powi(2) * stored / (2.0 * path.divisor * conductivity))
    }

    /// Time constant with the film at a temperature, `m c / (A h_eff)`.
    pub(super) fn time_constant(&self, pace: Pace, at: ThermodynamicTemperature) -> Result<Time, PlanError> {
        let films = self.film_at(pace, at)?;
        let (subject, film) = (self.subject, films.convective + films.radiative);
        let place = self.place(pace);
        let wrapped = film.value / (1.0 + film.value * place.around.wrap.resistance_m2k_w());
        let inside = 1.0 + self.biot(film, at) / place.main_path(subject).divisor;
        let area = place.main_area(subject);
        let capacity = subject.mass.value * self.heat_capacity_at(at);
        Ok(Time::new::<second>(capacity * inside / (wrapped * area.value)))
    }
}

/// Convection and linearised radiation.
pub(super) struct Films {
    pub(super) convective: HeatTransfer,
    pub(super) radiative: HeatTransfer,
}

/// The temperature (K) farthest from the shop's: the film's table must reach it.
fn farthest(all: impl Iterator<Item = ThermodynamicTemperature>, job: &Job) -> f64 {
    let shop = job.bench.temperature.get::<kelvin>();
    all.map(|t| t.get::<kelvin>()).fold(shop, |far, t| if (t - shop).abs() > (far - shop).abs() { t } else { far })
}

/// Two per cent of the way.
fn settled_within(from: ThermodynamicTemperature, to: ThermodynamicTemperature) -> TemperatureInterval {
    let way = warming(from, to).get::<step_kelvin>().abs() * SETTLED_WITHIN_SHARE;
    TemperatureInterval::new::<step_kelvin>(way.max(0.01))
}

pub(super) fn from_kelvin(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(value)
}
