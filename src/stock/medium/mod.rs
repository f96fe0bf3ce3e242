//! Media: what chills or warms a part, and the air around it.

mod file_error;
mod own;
mod raw;

use serde::Deserialize;
use std::collections::HashMap;
use std::sync::{Arc, LazyLock};
use thiserror::Error;
use uom::si::f64::{HeatTransfer, Power, TemperatureInterval, ThermodynamicTemperature};
use uom::si::thermodynamic_temperature::degree_celsius;

pub use file_error::MediumFileError;

use super::material::{DataError, Provenance, UnknownName, is_named, nearest_names, normalised};

/// What a medium does to a part.
#[derive(Clone, Copy, Debug, Deserialize, Eq, PartialEq)]
#[serde(rename_all = "lowercase")]
pub enum Direction {
    /// Makes it colder than the shop.
    Chill,
    /// Makes it hotter than the shop.
    Warm,
    /// Lets it drift back to the shop's temperature.
    Air,
}

impl Direction {
    /// The word of the file.
    fn word(self) -> &'static str {
        match self {
            Self::Chill => "chill",
            Self::Warm => "warm",
            Self::Air => "air",
        }
    }
}

/// What a medium leaves on the part.
#[derive(Clone, Copy, Debug, Deserialize, Eq, PartialEq)]
#[serde(rename_all = "lowercase")]
pub enum Residue {
    /// Stays dry.
    Nothing,
    /// Water: rust.
    Water,
    /// Oil: lower friction.
    Oil,
    /// Alcohol: degreased and flammable until it has dried.
    Solvent,
}

impl Residue {
    /// The word of the file.
    fn word(self) -> &'static str {
        match self {
            Self::Nothing => "nothing",
            Self::Water => "water",
            Self::Oil => "oil",
            Self::Solvent => "solvent",
        }
    }
}

/// Dangers of a medium; each has its own caution in the plan.
#[derive(Clone, Copy, Debug, Deserialize, Eq, Ord, PartialEq, PartialOrd)]
#[serde(rename_all = "kebab-case")]
pub enum Hazard {
    /// Liquid gas: cold burns, splashing, bursting of closed vessels.
    Cryogen,
    /// Solid carbon dioxide: cold burns, bursting of closed vessels, a gas that poisons before it suffocates.
    DryIce,
    /// Vapour that may catch fire.
    FlammableSolvent,
    /// A part too cold to touch.
    ColdPart,
    /// A part too hot to touch.
    HotPart,
    /// Hot oil: burns, fire, spitting when a wet or frosted part goes in.
    HotOil,
    /// Steam and boiling water.
    Steam,
    /// Magnetic field and a part left magnetised.
    InductionMagnetism,
    /// Gas that displaces air.
    Asphyxiation,
}

impl Hazard {
    /// Stable code, for reports and other programs.
    pub fn code(self) -> &'static str {
        match self {
            Self::Cryogen => "cryogen",
            Self::DryIce => "dry-ice",
            Self::FlammableSolvent => "flammable-solvent",
            Self::ColdPart => "cold-part",
            Self::HotPart => "hot-part",
            Self::HotOil => "hot-oil",
            Self::Steam => "steam",
            Self::InductionMagnetism => "induction-magnetism",
            Self::Asphyxiation => "asphyxiation",
        }
    }
}

/// Temperatures that a medium can have; for [`Transfer::Power`], that the part may be brought to.
#[derive(Clone, Debug, PartialEq)]
pub struct TemperatureRange {
    /// Temperature when the job states none; `None` when it must.
    pub default: Option<ThermodynamicTemperature>,
    /// Lowest that may be set.
    pub low: ThermodynamicTemperature,
    /// Highest that may be set.
    pub high: ThermodynamicTemperature,
    /// How far the true temperature may lie from the one asked for, either way.
    pub tolerance: TemperatureInterval,
    /// Where it comes from.
    pub provenance: Provenance,
}

/// How the film coefficient follows from size and temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law {
    /// It does not: the stated range is used.
    Stated,
    /// Free convection of air on each face of the part, and a wind.
    Air {
        /// Speed of the air at the slow and at the quick end, m/s.
        speeds_m_s: (f64, f64),
        /// What the correlation is multiplied by at the slow and at the quick end.
        factors: (f64, f64),
    },
    /// A stream of air that a blower heats: it cannot give the part more than its power carries.
    Stream {
        /// Power of the blower at the slow and at the quick end.
        powers: (Power, Power),
    },
    /// The boiling curve of liquid nitrogen.
    BoilingNitrogen {
        /// What film boiling is multiplied by at the slow and at the quick end.
        factors: (f64, f64),
    },
}

/// Film coefficient on the part's surface.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// Lowest, without radiation.
    pub low: HeatTransfer,
    /// Highest, without radiation.
    pub high: HeatTransfer,
    /// Whether radiation from the surroundings comes on top.
    pub radiates: bool,
    /// Whether the medium touches the face that the part rests on, and nothing else; the rest stands in shop air.
    pub resting_face_only: bool,
    /// How it follows from size and temperature, where a correlation is at hand; `low` and `high` are then typical values.
    pub law: Law,
    /// Where it comes from.
    pub provenance: Provenance,
}

/// Power that goes into a part.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatingPower {
    /// Least.
    pub low: Power,
    /// Most.
    pub high: Power,
    /// Where it comes from.
    pub provenance: Provenance,
}

/// How heat gets into or out of the part.
#[derive(Clone, Debug, PartialEq)]
pub enum Transfer {
    /// Through the surface.
    Film(Film),
    /// Generated in the part until it reaches its target.
    Power(HeatingPower),
}

/// A medium.
#[derive(Clone, Debug)]
pub struct Medium(Arc<Properties>);

impl PartialEq for Medium {
    fn eq(&self, other: &Self) -> bool {
        // A list names the same few media again and again.
        Arc::ptr_eq(&self.0, &other.0) || self.0 == other.0
    }
}

/// What is known of a medium, which its copies share.
#[derive(Clone, Debug, PartialEq)]
struct Properties {
    id: String,
    phrase: String,
    names: Vec<String>,
    direction: Direction,
    residue: Residue,
    hazards: Vec<Hazard>,
    notes: Vec<String>,
    temperature: TemperatureRange,
    transfer: Transfer,
}

/// Why a medium cannot be used as asked.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum MediumError {
    /// No medium has that id or name.
    #[error(transparent)]
    Unknown(#[from] UnknownName),
    /// The job must state a temperature.
    #[error("{id} needs a temperature, {low:.0} to {high:.0} °C")]
    NoTemperature {
        /// Medium.
        id: String,
        /// Lowest, °C.
        low: f64,
        /// Highest, °C.
        high: f64,
    },
    /// The stated temperature is not one that the medium can have.
    #[error("{id} is asked to be at {asked:.1} °C but can be at {low:.1} to {high:.1} °C")]
    OutOfRange {
        /// Medium.
        id: String,
        /// Asked for, °C.
        asked: f64,
        /// Lowest, °C.
        low: f64,
        /// Highest, °C.
        high: f64,
    },
    /// The embedded file is faulty; a test rules it out for a released crate.
    #[error(transparent)]
    File(#[from] DataError),
}

impl Medium {
    /// The media of a file such as `materials/media.toml`.
    ///
    /// # Errors
    /// The first of [`Self::check`]'s errors.
    pub fn parse(text: &str) -> Result<Vec<Self>, MediumFileError> {
        let unnamed = || MediumFileError {
            message: "the media could not be checked".to_owned(),
            span: None,
            allowed: None,
            together: false,
        };
        Self::check(text).map_err(|errors| errors.into_iter().next().unwrap_or_else(unnamed))
    }

    /// The same with every mistake of the file.
    ///
    /// # Errors
    /// Each [`MediumFileError`] with the bytes of the text to underline, in the order of the text: unknown or missing keys, values
    /// of another kind or out of range, and values that contradict one another.
    pub fn check(text: &str) -> Result<Vec<Self>, Vec<MediumFileError>> {
        raw::read(text)
    }

    /// Whether this is its id or one of its names.
    pub fn is_called(&self, id_or_name: &str) -> bool {
        let asked = normalised(id_or_name);
        is_named(&self.0.id, &asked) || self.0.names.iter().any(|name| is_named(name, &asked))
    }

    /// Lower-case name with hyphens.
    pub fn id(&self) -> &str {
        &self.0.id
    }

    /// Where the part is, in words: "in the oven", "on the hot plate".
    pub fn phrase(&self) -> &str {
        &self.0.phrase
    }

    /// Other names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.names.iter().map(String::as_str)
    }

    /// Chills, warms, or is the air of the shop.
    pub fn direction(&self) -> Direction {
        self.0.direction
    }

    /// What it leaves on the part.
    pub fn residue(&self) -> Residue {
        self.0.residue
    }

    /// Dangers, in the order of the file.
    pub fn hazards(&self) -> &[Hazard] {
        &self.0.hazards
    }

    /// What the fitter should know about it.
    pub fn notes(&self) -> impl Iterator<Item = &str> {
        self.0.notes.iter().map(String::as_str)
    }

    /// Temperatures that it can have.
    pub fn temperature(&self) -> &TemperatureRange {
        &self.0.temperature
    }

    /// How heat gets into or out of the part.
    pub fn transfer(&self) -> &Transfer {
        &self.0.transfer
    }

    /// Film coefficient, for a medium that acts through the surface.
    pub fn film(&self) -> Option<&Film> {
        match &self.0.transfer {
            Transfer::Film(film) => Some(film),
            Transfer::Power(_) => None,
        }
    }

    /// Source of every value, by key of the file.
    pub fn sources(&self) -> impl Iterator<Item = (&'static str, &Provenance)> {
        let transfer = match &self.0.transfer {
            Transfer::Film(film) => ("film", &film.provenance),
            Transfer::Power(power) => ("power", &power.provenance),
        };
        [("temperature", &self.0.temperature.provenance), transfer].into_iter()
    }

    /// The temperature to plan with: the one that the job states, or the medium's own.
    ///
    /// # Errors
    /// [`MediumError::NoTemperature`] when neither exists, [`MediumError::OutOfRange`] when the medium cannot have it.
    pub fn at(&self, stated: Option<ThermodynamicTemperature>) -> Result<ThermodynamicTemperature, MediumError> {
        let celsius = |t: ThermodynamicTemperature| t.get::<degree_celsius>();
        let range = &self.0.temperature;
        let (id, low, high) = (self.0.id.clone(), celsius(range.low), celsius(range.high));
        match stated.or(range.default) {
            None => Err(MediumError::NoTemperature { id, low, high }),
            // Half a hundredth of a degree: what a temperature loses on its way through °F and K.
            Some(t) if celsius(t) >= low - 0.005 && celsius(t) <= high + 0.005 => Ok(t),
            Some(t) => Err(MediumError::OutOfRange { id, asked: celsius(t), low, high }),
        }
    }
}

/// The embedded media, in the order of the file.
///
/// # Errors
/// [`DataError`] when the embedded file is faulty.
pub fn embedded_media() -> Result<Vec<Medium>, DataError> {
    media().cloned()
}

/// The embedded media, read once.
fn media() -> Result<&'static Vec<Medium>, DataError> {
    static READ: LazyLock<Result<Vec<Medium>, MediumFileError>> = LazyLock::new(|| Medium::parse(raw::TEXT));
    READ.as_ref().map_err(|error| DataError { file: raw::FILE, message: error.to_string() })
}

/// The embedded medium of that id or plain name; case, spaces, hyphens and full stops do not matter.
///
/// # Errors
/// [`MediumError::Unknown`] with the nearest ids.
///
/// # Examples
/// ```
/// let medium = seatwise::stock::medium::embedded("LN2")?;
/// assert_eq!(medium.id(), "liquid-nitrogen");
/// # Ok::<(), seatwise::stock::medium::MediumError>(())
/// ```
pub fn embedded(id_or_name: &str) -> Result<Medium, MediumError> {
    static BY_NAME: LazyLock<HashMap<String, Medium>> = LazyLock::new(|| {
        let media = media().map(Vec::as_slice).unwrap_or_default();
        let names = |medium: &Medium| medium.names().chain([medium.id()]).map(normalised).collect::<Vec<_>>();
        // The first of two with one name stays.
        let all = media.iter().rev().flat_map(|medium| names(medium).into_iter().map(|name| (name, medium.clone())));
        all.collect()
    });
    let media = media()?;
    if let Some(medium) = BY_NAME.get(&normalised(id_or_name)) {
        return Ok(medium.clone());
    }
    let known = media
        .iter()
        .flat_map(|medium| medium.names().chain([medium.id()]).map(|name| (name, medium.id())).collect::<Vec<_>>());
    let nearest = nearest_names(id_or_name, known);
    Err(UnknownName { what: "medium", asked: id_or_name.to_owned(), nearest }.into())
}
