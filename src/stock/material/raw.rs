//! The material file as written: shapes for serde, nothing checked but keys, types, sources and statuses.

use serde::Deserialize;
use toml::Spanned;
use uom::si::f64::ThermodynamicTemperature;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::{Family, Provenance, Source, Status, StrengthKind, TemperatureLimit};

/// Rows of temperature (K) and value.
///
/// Rows are of any length here: an array type would let a row of three pass without a word.
pub(super) type RawTable = Spanned<Vec<Spanned<Vec<f64>>>>;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawMaterial {
    pub names: Spanned<Vec<String>>,
    pub family: Family,
    pub about: String,
    pub density: RawDensity,
    pub elastic_modulus: RawModulus,
    pub poisson_ratio: RawPoisson,
    pub strength: RawStrength,
    pub expansion: RawExpansion,
    pub heat_capacity: RawHeatCapacity,
    pub conductivity: RawConductivity,
    pub emissivity: RawEmissivity,
    pub coldest: RawLimit,
    pub hottest: RawLimit,
    #[serde(default)]
    pub caution: Vec<Spanned<RawCaution>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawDensity {
    pub kg_m3: Spanned<f64>,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawModulus {
    pub gpa: Option<Spanned<f64>>,
    pub table_k_gpa: Option<RawTable>,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawPoisson {
    pub value: Spanned<f64>,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawStrength {
    pub mpa: Spanned<f64>,
    pub kind: StrengthKind,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawExpansion {
    pub table_k_um_m: RawTable,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawHeatCapacity {
    pub j_kgk: Option<Spanned<f64>>,
    pub between_c: Option<Spanned<Vec<f64>>>,
    pub table_k_j_kgk: Option<RawTable>,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawConductivity {
    pub w_mk: Option<Spanned<f64>>,
    pub between_c: Option<Spanned<Vec<f64>>>,
    pub table_k_w_mk: Option<RawTable>,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawEmissivity {
    pub low: Spanned<f64>,
    pub high: Spanned<f64>,
    pub surface: String,
    pub source: Source,
    pub status: Status,
}

/// A limit as the material, elastomer and closure files write it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RawLimit {
    pub c: Spanned<f64>,
    pub reason: String,
    pub source: Source,
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawCaution {
    pub below_c: Option<f64>,
    pub above_c: Option<f64>,
    pub text: String,
    pub source: Source,
    pub status: Status,
}

impl RawLimit {
    /// The limit as stated; the caller has checked the temperature, or a test has.
    pub fn to_limit(&self) -> TemperatureLimit {
        TemperatureLimit {
            temperature: ThermodynamicTemperature::new::<degree_celsius>(*self.c.get_ref()),
            reason: self.reason.clone(),
            provenance: Provenance { source: self.source.clone(), status: self.status.clone() },
        }
    }
}

impl RawMaterial {
    /// Source of every section, in the order of the file.
    pub fn sources(&self) -> Vec<(&'static str, Provenance)> {
        let of = |source: &Source, status: &Status| Provenance { source: source.clone(), status: status.clone() };
        vec![
            ("density", of(&self.density.source, &self.density.status)),
            ("elastic_modulus", of(&self.elastic_modulus.source, &self.elastic_modulus.status)),
            ("poisson_ratio", of(&self.poisson_ratio.source, &self.poisson_ratio.status)),
            ("strength", of(&self.strength.source, &self.strength.status)),
            ("expansion", of(&self.expansion.source, &self.expansion.status)),
            ("heat_capacity", of(&self.heat_capacity.source, &self.heat_capacity.status)),
            ("conductivity", of(&self.conductivity.source, &self.conductivity.status)),
            ("emissivity", of(&self.emissivity.source, &self.emissivity.status)),
            ("coldest", of(&self.coldest.source, &self.coldest.status)),
            ("hottest", of(&self.hottest.source, &self.hottest.status)),
        ]
    }
}
