//! Materials: what a part is made of, each property with its source.
//!
//! [`embedded`] gives a material that comes with the crate, [`Material::parse`] reads a user's file of the same form,
//! [`from_room_values`] makes one from the handful of values that a job may state. All three end in the same
//! [`Material`], whose tables are never extrapolated.

mod check;
mod error;
mod family;
mod lookup;
mod names;
mod provenance;
mod raw;
mod room;
mod tables;

pub use error::{DataError, MaterialError, UnknownName};
pub use family::Family;
pub use lookup::{LookupError, embedded, embedded_aliases, embedded_ids, embedded_text};
pub(crate) use lookup::{is_named, nearest_names, normalised};
pub use provenance::{Provenance, Source, Status};
pub(crate) use raw::RawLimit;
pub use room::{RoomValues, from_room_values};

use serde::Deserialize;
use serde::de::value::StrDeserializer;
use std::sync::Arc;
use uom::si::f64::{MassDensity, Pressure, Ratio, ThermodynamicTemperature};
use uom::si::{
    mass_density::kilogram_per_cubic_meter, pressure::pascal, ratio::ratio, thermodynamic_temperature::kelvin,
};

use super::curve::{Curve, CurveError};

/// Reference temperature of every size and of every expansion table, K (20 °C, ISO 1).
pub const REFERENCE_K: f64 = 293.15;

/// Lowest and highest value of a property that varies from piece to piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Lowest value.
    pub low: f64,
    /// Highest value.
    pub high: f64,
}

/// What a stated strength means.
#[derive(Clone, Copy, Debug, Deserialize, Eq, PartialEq)]
pub enum StrengthKind {
    /// 0.2 % proof stress.
    #[serde(rename = "0.2 % proof")]
    Proof02,
    /// 0.1 % proof stress.
    #[serde(rename = "0.1 % proof")]
    Proof01,
    /// Yield stress, as polymers and soft steels show it.
    #[serde(rename = "yield")]
    Yield,
    /// Tensile strength of a brittle material: it breaks without yielding.
    #[serde(rename = "tensile, brittle")]
    TensileBrittle,
    /// Flexural strength of a brittle material: it breaks without yielding.
    #[serde(rename = "flexural, brittle")]
    FlexuralBrittle,
}

impl StrengthKind {
    /// The kind of this name, as the files of materials write it; or else the names that there are, in words.
    pub(crate) fn read(name: &str) -> Result<Self, String> {
        Self::deserialize(StrDeserializer::<serde::de::value::Error>::new(name)).map_err(|error| {
            let said = error.to_string();
            said.split_once("expected ").map_or(said.clone(), |(_, names)| names.to_owned())
        })
    }

    /// Whether the material breaks at this stress instead of yielding.
    pub fn is_brittle(self) -> bool {
        matches!(self, Self::TensileBrittle | Self::FlexuralBrittle)
    }
}

/// Stress at room temperature that a part must stay below, and what it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// The stress.
    pub value: Pressure,
    /// Proof stress, yield or breaking strength.
    pub kind: StrengthKind,
}

/// Coldest or hottest that something may get, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct TemperatureLimit {
    /// The limit.
    pub temperature: ThermodynamicTemperature,
    /// What happens beyond it.
    pub reason: String,
    /// Where the limit comes from.
    pub provenance: Provenance,
}

/// On which side of its temperature a [`TemperatureCaution`] applies.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Side {
    /// When the part gets colder.
    Below,
    /// When the part gets hotter.
    Above,
}

/// Something that the fitter must know when the part passes a temperature that does not forbid the job.
#[derive(Clone, Debug, PartialEq)]
pub struct TemperatureCaution {
    /// Below or above.
    pub side: Side,
    /// Temperature from which it applies.
    pub temperature: ThermodynamicTemperature,
    /// What to know and do.
    pub text: String,
    /// Where it comes from.
    pub provenance: Provenance,
}

impl TemperatureCaution {
    /// Whether a part at `temperature` is concerned.
    pub fn applies_at(&self, temperature: ThermodynamicTemperature) -> bool {
        match self.side {
            Side::Below => temperature < self.temperature,
            Side::Above => temperature > self.temperature,
        }
    }
}

/// A material whose properties have been checked: finite, in physical range, with a source on each.
///
/// Density, Poisson's ratio and strength are room-temperature values and are used at every temperature. The tables of
/// expansion, heat capacity and conductivity reach at least from [`coldest`](Self::coldest) to
/// [`hottest`](Self::hottest).
#[derive(Clone, Debug)]
pub struct Material(Arc<Properties>);

impl PartialEq for Material {
    fn eq(&self, other: &Self) -> bool {
        // A list names the same few materials again and again.
        Arc::ptr_eq(&self.0, &other.0) || self.0 == other.0
    }
}

/// The properties of a material, which its copies share.
#[derive(Debug, PartialEq)]
struct Properties {
    id: String,
    names: Vec<String>,
    family: Family,
    about: String,
    density_kg_m3: f64,
    modulus_pa: Curve,
    poisson_ratio: f64,
    strength: Strength,
    expansion: Curve,
    heat_capacity: Curve,
    conductivity: Curve,
    emissivity: Bounds,
    surface: String,
    coldest: TemperatureLimit,
    hottest: TemperatureLimit,
    cautions: Vec<TemperatureCaution>,
    sources: Vec<(&'static str, Provenance)>,
}

impl Material {
    /// Lower-case name with hyphens, the stem of the material's file.
    pub fn id(&self) -> &str {
        &self.0.id
    }

    /// Other names, standard designations among them.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.names.iter().map(String::as_str)
    }

    /// Family, for friction.
    pub fn family(&self) -> Family {
        self.0.family
    }

    /// One line that says what it is and in which condition.
    pub fn about(&self) -> &str {
        &self.0.about
    }

    /// Density at room temperature.
    pub fn density(&self) -> MassDensity {
        MassDensity::new::<kilogram_per_cubic_meter>(self.0.density_kg_m3)
    }

    /// Elastic (Young's) modulus at 20 °C.
    pub fn elastic_modulus(&self) -> Pressure {
        Pressure::new::<pascal>(self.0.modulus_pa.at_inside(REFERENCE_K))
    }

    /// Elastic modulus at a temperature: from a table where the file has one, else the value at 20 °C, which overstates
    /// a hot part by some per cent and understates a chilled one.
    ///
    /// # Errors
    /// [`CurveError::Outside`] beyond the table, or beyond the material's own limits where there is none.
    pub fn elastic_modulus_at(&self, temperature: ThermodynamicTemperature) -> Result<Pressure, CurveError> {
        self.0.modulus_pa.at(temperature.get::<kelvin>()).map(Pressure::new::<pascal>)
    }

    /// Poisson's ratio.
    pub fn poisson_ratio(&self) -> f64 {
        self.0.poisson_ratio
    }

    /// Yield or breaking stress at room temperature.
    pub fn strength(&self) -> Strength {
        self.0.strength
    }

    /// Relative change of length from 20 °C, dimensionless, against temperature in K; exactly zero at 293.15 K.
    pub fn expansion(&self) -> &Curve {
        &self.0.expansion
    }

    /// Relative change of length from 20 °C to `temperature`; negative for a chilled part.
    ///
    /// # Errors
    /// [`CurveError::Outside`] beyond the table.
    pub fn expansion_from_20c(&self, temperature: ThermodynamicTemperature) -> Result<Ratio, CurveError> {
        self.0.expansion.at(temperature.get::<kelvin>()).map(Ratio::new::<ratio>)
    }

    /// Heat capacity in J/(kg K) against temperature in K.
    pub fn heat_capacity(&self) -> &Curve {
        &self.0.heat_capacity
    }

    /// Thermal conductivity in W/(m K) against temperature in K.
    pub fn conductivity(&self) -> &Curve {
        &self.0.conductivity
    }

    /// Total emissivity, lowest and highest over the finishes that [`surface`](Self::surface) names.
    pub fn emissivity(&self) -> Bounds {
        self.0.emissivity
    }

    /// Finishes that the range of emissivity covers.
    pub fn surface(&self) -> &str {
        &self.0.surface
    }

    /// Coldest that the material may get.
    pub fn coldest(&self) -> &TemperatureLimit {
        &self.0.coldest
    }

    /// Hottest that the material may get.
    pub fn hottest(&self) -> &TemperatureLimit {
        &self.0.hottest
    }

    /// Notes for temperatures that are allowed and need care.
    pub fn cautions(&self) -> &[TemperatureCaution] {
        &self.0.cautions
    }

    /// Every property's key in the file with where its value comes from, in the order of the file.
    pub fn sources(&self) -> impl Iterator<Item = (&'static str, &Provenance)> {
        self.0.sources.iter().map(|(property, provenance)| (*property, provenance))
    }
}
