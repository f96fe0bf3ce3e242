//! Where a piece is put while it is treated: what is around it, what it lies on, and how much heat that can take.

use super::PlanError;
use super::subject::Subject;
use super::surroundings::{self, Pace, Surroundings};
use crate::job::{Job, RestsOn, Treatment};
use crate::quantity::{Area, Power, ThermodynamicTemperature, warming};
use crate::thermal::{ConductionPath, FilmLaw, LoadedMedium, METAL_SHELF, Wrap, stream_film};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Largest Biot number at which a film may be read at the mean temperature of the body instead of at its surface.
const FILM_AT_MEAN_BIOT: f64 = 0.1;

/// What a piece is put into.
#[derive(Clone)]
pub(super) struct Place {
    /// What is around it.
    pub(super) around: Surroundings,
    /// The part of its surface that this does not reach.
    pub(super) covered: Area,
    /// What else it exchanges heat with.
    pub(super) beside: Option<Beside>,
    /// Heat put in: into the inner ring of a bearing.
    pub(super) power: Power,
    /// The medium, where it is not large against the piece.
    pub(super) medium: Option<LoadedMedium>,
}

/// A second thing that a piece exchanges heat with.
#[derive(Clone)]
pub(super) struct Beside {
    pub(super) what: Surroundings,
    pub(super) area: Area,
    /// The way inside the piece; none where it is that of the whole piece.
    pub(super) path: Option<ConductionPath>,
    /// Whether this, and not what is around, treats the piece.
    pub(super) leads: bool,
    /// Whether it belongs to the medium, and warms or cools with it.
    pub(super) of_medium: bool,
}

impl Place {
    /// A piece in the air of the shop.
    pub(super) fn in_air(around: Surroundings) -> Self {
        Self { around, covered: Area::default(), beside: None, power: Power::default(), medium: None }
    }

    /// Where a treatment puts the piece, at one end of every range.
    pub(super) fn new(job: &Job, subject: &Subject<'_>, treatment: &Treatment, pace: Pace) -> Result<Self, PlanError> {
        let medium = surroundings::medium(job, subject, treatment, pace)?;
        if treatment.medium.film().is_some_and(|film| film.resting_face_only) {
            return Self::on_plate(job, subject, treatment, (pace, medium));
        }
        if let Some(powers) = treatment.blower {
            return Self::in_stream(job, subject, treatment, (pace, medium, pace.of(powers)));
        }
        let (covered, beside) = match treatment.rests_on {
            RestsOn::Grate => (Area::default(), None),
            // A tray lets no heat through at the one end, and is not there at the other.
            RestsOn::Tray => (subject.face * (1.0 - pace.share()), None),
            RestsOn::Shelf => (subject.face, Some(Beside::shelf(subject, medium.temperature, pace)?)),
        };
        let store = treatment.store.map(|store| {
            LoadedMedium::new(treatment.temperature, store.capacity, store.holding, job.bench.temperature)
        });
        Ok(Self { around: medium, covered, beside, power: treatment.power, medium: store.transpose()? })
    }

    /// A plate that touches one face; the rest stands in shop air, which slows it most where that is quick.
    fn on_plate(
        job: &Job,
        subject: &Subject<'_>,
        treatment: &Treatment,
        (pace, plate): (Pace, Surroundings),
    ) -> Result<Self, PlanError> {
        let beside = Beside {
            what: plate,
            area: subject.face,
            path: Some(ConductionPath::one_face(subject.height)),
            leads: true,
            of_medium: false,
        };
        let around = Self::losses(job, subject, treatment, pace)?;
        let power = treatment.power;
        Ok(Self { around, covered: subject.face, beside: Some(beside), power, medium: None })
    }

    /// A stream of hot air of limited power; at the slow end the whole surface loses heat to the shop beside it.
    fn in_stream(
        job: &Job,
        subject: &Subject<'_>,
        treatment: &Treatment,
        (pace, mut stream, blower): (Pace, Surroundings, Power),
    ) -> Result<Self, PlanError> {
        let (area, rise) = (subject.shape.area, warming(treatment.temperature, job.bench.temperature));
        let film = stream_film(stream.film.extremes().1, area, blower, rise)?;
        stream.film = FilmLaw::constant(film)?;
        let losing = area * (1.0 - pace.share());
        let beside = if losing > Area::default() {
            let what = Self::losses(job, subject, treatment, pace)?;
            Some(Beside { what, area: losing, path: None, leads: false, of_medium: false })
        } else {
            None
        };
        Ok(Self { around: stream, covered: Area::default(), beside, power: treatment.power, medium: None })
    }

    fn losses(job: &Job, subject: &Subject<'_>, treatment: &Treatment, pace: Pace) -> Result<Surroundings, PlanError> {
        let mut air = surroundings::shop_air(job, subject, treatment.temperature, pace.opposite())?;
        air.moisture = None;
        Ok(air)
    }

    /// Whether one thing surrounds the whole piece, and stays as it is.
    pub(super) fn is_all_round(&self) -> bool {
        self.beside.is_none() && self.covered <= Area::default()
    }

    /// Whether `subject` here is one body in one steady fluid, dry and bare, whose film may be read at its mean
    /// temperature.
    pub(super) fn is_simple(&self, subject: &Subject<'_>, start: ThermodynamicTemperature) -> bool {
        let around = &self.around;
        let bare = around.moisture.is_none() && around.wrap.resistance_m2k_w() <= 0.0;
        let steady = self.is_all_round() && self.medium.is_none();
        let film = around.film.extremes().1.get::<watt_per_square_meter_kelvin>();
        let conductivity = subject.material.conductivity().at_inside(start.get::<kelvin>());
        bare && steady && film * subject.shape.path.length.value <= FILM_AT_MEAN_BIOT * conductivity
    }

    fn leading(&self) -> Option<&Beside> {
        self.beside.as_ref().filter(|beside| beside.leads)
    }

    /// What treats the piece.
    pub(super) fn main(&self) -> &Surroundings {
        self.leading().map_or(&self.around, |beside| &beside.what)
    }

    /// The surface through which it does.
    pub(super) fn main_area(&self, subject: &Subject<'_>) -> Area {
        self.leading().map_or(subject.shape.area - self.covered, |beside| beside.area)
    }

    /// The way of the heat that it brings, inside the piece.
    pub(super) fn main_path(&self, subject: &Subject<'_>) -> ConductionPath {
        self.leading().and_then(|beside| beside.path).unwrap_or(subject.shape.path)
    }
}

impl Beside {
    fn shelf(subject: &Subject<'_>, temperature: ThermodynamicTemperature, pace: Pace) -> Result<Self, PlanError> {
        Ok(Self {
            what: Surroundings {
                temperature,
                film: FilmLaw::constant(pace.of((METAL_SHELF.low(), METAL_SHELF.high())))?,
                emissivity: 0.0,
                wrap: Wrap::none(),
                moisture: None,
            },
            area: subject.face,
            path: Some(ConductionPath::one_face(subject.height)),
            leads: false,
            of_medium: true,
        })
    }
}
