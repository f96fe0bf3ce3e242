//! A checked job with other treatments: what a search tries, without reading the text again.

use super::model::{FilmChoice, Hold, Housing, Job, Piece, RestsOn, Size, Treatment};
use crate::fit::Limits;
use crate::quantity::{Deviations, Nanometres, Power, ThermodynamicTemperature};
use crate::stock::material::Material;
use crate::stock::medium::{Direction, Law, Medium, MediumError, Transfer, embedded};
use thiserror::Error;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

/// Why a job cannot be treated so.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum TreatmentError {
    /// The wrong piece would be treated.
    #[error("{0}")]
    Piece(&'static str),
    /// The medium is not known, or cannot have that temperature.
    #[error(transparent)]
    Medium(#[from] MediumError),
    /// A heater whose power nobody has stated.
    #[error("the power of the {id} is not known; state it in the job, medium = \"{id}\" with power = \"1 kW\"")]
    Power {
        /// The medium.
        id: String,
    },
    /// The temperature lies on the wrong side of the shop's.
    #[error("{id} at {asked:.1} °C lies on the wrong side of the shop's {shop:.1} °C")]
    Side {
        /// The medium.
        id: String,
        /// Temperature of the treatment, °C.
        asked: f64,
        /// Temperature of the shop, °C.
        shop: f64,
    },
    /// A property of the material is not known at that temperature.
    #[error("the {property} of {material} is known from {from:.1} °C to {to:.1} °C, not at {asked:.1} °C")]
    Uncovered {
        /// Which property.
        property: &'static str,
        /// Of which material.
        material: String,
        /// Coldest of its table, °C.
        from: f64,
        /// Hottest of its table, °C.
        to: f64,
        /// Temperature that the treatment leads to, °C.
        asked: f64,
    },
}

impl Job {
    /// The same job with these treatments in place of its own.
    ///
    /// What was typed or assumed for its own treatments is left out of the entries and the assumptions.
    ///
    /// # Errors
    /// [`TreatmentError`] when a treatment would make a joint tighter, treats a piece that the job has not, or leads to
    /// where its material is not known.
    pub fn with_treatments(&self, chill: Option<Treatment>, warm: Option<Treatment>) -> Result<Self, TreatmentError> {
        for (direction, treatment) in [(Direction::Chill, &chill), (Direction::Warm, &warm)] {
            if let Some(treatment) = treatment {
                self.check_treatment(direction, treatment)?;
            }
        }
        let kept = |key: &str| !key.starts_with("chill.") && !key.starts_with("warm.");
        let mut job = Self { chill, warm, ..self.clone() };
        job.entries.retain(|entry| kept(&entry.key));
        job.assumptions.retain(|assumption| kept(&assumption.what));
        Ok(job)
    }

    /// The same job with one seat only, that in the housing or that on the shaft; none where it has no such seat.
    pub fn with_seat_only(&self, seat: Piece) -> Option<Self> {
        let mut job = self.clone();
        match seat {
            Piece::Housing => job.shaft = None,
            Piece::Shaft => job.housing = None,
            Piece::Part => return None,
        }
        (job.housing.is_some() || job.shaft.is_some()).then_some(job)
    }

    /// The same job with one pair of parts of exact sizes at 20 °C at a seat, the inner part and the bore of the outer one.
    pub(crate) fn with_pair(&self, seat: Piece, inner: Nanometres, outer: Nanometres) -> Self {
        let exact = |size| {
            let none = Deviations { lower: Nanometres(0), upper: Nanometres(0) };
            Size::Limits { limits: Limits::stated(size, none), basis: "a drawn part".to_owned() }
        };
        let mut job = self.clone();
        match seat {
            Piece::Shaft => {
                job.part.bore_size = Some(exact(outer));
                job.shaft.iter_mut().for_each(|shaft| shaft.size = exact(inner));
            }
            Piece::Housing | Piece::Part => {
                job.part.outside_size = Some(exact(inner));
                job.housing.iter_mut().for_each(|housing| housing.size = exact(outer));
            }
        }
        job
    }

    /// `piece` in `medium`: as the job has it where it puts that piece into that medium, or else all round in the medium,
    /// bare, with the film of the medium's data. Without a temperature, that of the job or the medium's own.
    ///
    /// # Errors
    /// [`TreatmentError`] when the medium cannot have that temperature, or its power is not known.
    pub fn treatment_in(
        &self,
        piece: Piece,
        medium: &Medium,
        temperature: Option<ThermodynamicTemperature>,
        hold: Hold,
    ) -> Result<Treatment, TreatmentError> {
        let stated = self.chill.iter().chain(&self.warm);
        let mut stated = stated.filter(|own| own.medium.id() == medium.id() && own.piece == piece);
        let own = stated.next();
        let powered = matches!(medium.transfer(), Transfer::Power(_));
        let temperature = match own {
            _ if powered => self.bench.temperature,
            Some(own) => medium.at(temperature.or(Some(own.temperature)))?,
            None => medium.at(temperature)?,
        };
        match own {
            Some(own) => Ok(Treatment { temperature, hold, ..own.clone() }),
            None if powered => Err(TreatmentError::Power { id: medium.id().to_owned() }),
            None => usual(piece, medium, temperature, hold),
        }
    }

    fn check_treatment(&self, direction: Direction, treatment: &Treatment) -> Result<(), TreatmentError> {
        self.check_piece(direction, treatment.piece)?;
        let (leads_to, shop) = (leads_to(treatment), self.bench.temperature);
        let wrong = if direction == Direction::Chill { leads_to >= shop } else { leads_to <= shop };
        if wrong || treatment.medium.direction() != direction {
            return Err(TreatmentError::Side {
                id: treatment.medium.id().to_owned(),
                asked: leads_to.get::<degree_celsius>(),
                shop: shop.get::<degree_celsius>(),
            });
        }
        self.materials_of(treatment.piece).try_for_each(|material| covered(material, leads_to))
    }

    fn check_piece(&self, direction: Direction, piece: Piece) -> Result<(), TreatmentError> {
        let (housing, shaft) = (self.housing.is_some(), self.shaft.is_some());
        let refusal = match (direction, piece) {
            (Direction::Chill, Piece::Housing) => "chilling the housing makes the joint tighter",
            (Direction::Warm, Piece::Shaft) => "warming the shaft makes the joint tighter",
            (Direction::Chill, Piece::Part) if !housing => "a chilled part is tighter on its shaft",
            (Direction::Warm, Piece::Part) if !shaft => "a warmed part is tighter in its housing",
            (_, Piece::Housing) if !housing => "there is no housing in this job",
            (_, Piece::Shaft) if !shaft => "there is no shaft in this job",
            _ => return Ok(()),
        };
        Err(TreatmentError::Piece(refusal))
    }

    /// What a piece is made of, itself first; nothing where the job does not have it.
    pub fn materials_of(&self, piece: Piece) -> impl Iterator<Item = &Material> {
        let part = (piece == Piece::Part).then_some(&self.part.material);
        let housing = self.housing.as_ref().filter(|_| piece == Piece::Housing);
        let shaft = self.shaft.as_ref().filter(|_| piece == Piece::Shaft).map(|shaft| &shaft.material);
        part.into_iter().chain(housing.into_iter().flat_map(Housing::materials)).chain(shaft)
    }
}

/// The temperature that the piece may come to.
fn leads_to(treatment: &Treatment) -> ThermodynamicTemperature {
    match treatment.hold {
        Hold::Reaches(target) => target,
        Hold::For(_) | Hold::Settled => treatment.temperature,
    }
}

fn usual(
    piece: Piece,
    medium: &Medium,
    temperature: ThermodynamicTemperature,
    hold: Hold,
) -> Result<Treatment, TreatmentError> {
    let still_air = embedded("still-air")?;
    let film = medium.film().or(still_air.film());
    let Some(film) = film.cloned() else { return Err(TreatmentError::Power { id: medium.id().to_owned() }) };
    let blower = match film.law {
        Law::Stream { powers } => Some(powers),
        Law::Stated | Law::Air { .. } | Law::BoilingNitrogen { .. } => None,
    };
    Ok(Treatment {
        piece,
        medium: medium.clone(),
        temperature,
        film: FilmChoice::OfMedium(film),
        wrap: None,
        rests_on: RestsOn::Grate,
        store: None,
        power: Power::default(),
        blower,
        hold,
    })
}

fn covered(material: &Material, temperature: ThermodynamicTemperature) -> Result<(), TreatmentError> {
    let tables = [
        ("thermal expansion", material.expansion()),
        ("heat capacity", material.heat_capacity()),
        ("thermal conductivity", material.conductivity()),
    ];
    for (property, table) in tables {
        if table.at(temperature.get::<kelvin>()).is_err() {
            let (from, to) = table.range();
            return Err(TreatmentError::Uncovered {
                property,
                material: material.id().to_owned(),
                from: from - 273.15,
                to: to - 273.15,
                asked: temperature.get::<degree_celsius>(),
            });
        }
    }
    Ok(())
}
