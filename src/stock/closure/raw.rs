//! The file of elastomers and closures as written.

use serde::Deserialize;
use std::sync::LazyLock;
use uom::si::f64::ThermodynamicTemperature;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::{Closure, ClosureKind, Elastomer, Exposure};
use crate::stock::material::{DataError, Provenance, RawLimit, Source, Status, TemperatureLimit};

const FILE: &str = "materials/elastomers.toml";
const TEXT: &str = include_str!("../../../materials/elastomers.toml");

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFile {
    elastomer: Vec<RawElastomer>,
    unknown_elastomer: RawUnknown,
    closure: Vec<RawClosure>,
    precision: RawPrecision,
    stabilisation: Vec<RawClass>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawElastomer {
    id: String,
    names: Vec<String>,
    coldest: RawLimit,
    hottest: RawLimit,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawUnknown {
    ids: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawClosure {
    kind: ClosureKind,
    hottest: RawLimit,
    exposure: Option<Vec<RawExposure>>,
    exposure_source: Option<Source>,
    exposure_status: Option<Status>,
    grease: Option<String>,
    grease_source: Option<Source>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawExposure {
    c: f64,
    hours: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawPrecision {
    hottest: RawLimit,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawClass {
    class: String,
    hottest: RawLimit,
}

/// The file with its limits as quantities.
pub(super) struct File {
    pub elastomers: Vec<Elastomer>,
    pub precision: TemperatureLimit,
    pub stabilisation: Vec<(String, TemperatureLimit)>,
    closures: Vec<RawClosure>,
    /// Ids of those assumed when the seal's material is not stated.
    assumed: Vec<String>,
}

/// The embedded file, read once.
pub(super) fn file() -> Result<&'static File, DataError> {
    static READ: LazyLock<Result<File, DataError>> = LazyLock::new(read);
    READ.as_ref().map_err(DataError::clone)
}

fn read() -> Result<File, DataError> {
    let raw: RawFile = toml::from_str(TEXT).map_err(|error| fault(error.message()))?;
    Ok(File {
        elastomers: raw.elastomer.into_iter().map(elastomer).collect(),
        precision: raw.precision.hottest.to_limit(),
        stabilisation: raw.stabilisation.into_iter().map(|c| (c.class, c.hottest.to_limit())).collect(),
        closures: raw.closure,
        assumed: raw.unknown_elastomer.ids,
    })
}

fn fault(message: &str) -> DataError {
    DataError { file: FILE, message: message.to_owned() }
}

fn elastomer(raw: RawElastomer) -> Elastomer {
    Elastomer { id: raw.id, names: raw.names, coldest: raw.coldest.to_limit(), hottest: raw.hottest.to_limit() }
}

impl File {
    /// The closure of that kind with the limits of its seals.
    pub fn closure(&self, kind: ClosureKind, elastomer: Option<Elastomer>) -> Result<Closure, DataError> {
        let seals = match (kind, &elastomer) {
            (ClosureKind::ElastomerSeals, Some(stated)) => Some((stated.coldest.clone(), stated.hottest.clone())),
            (ClosureKind::ElastomerSeals, None) => Some(self.least_tolerant()?),
            _ => None,
        };
        let found = self.closures.iter().find(|closure| closure.kind == kind);
        let raw = found.ok_or_else(|| fault(&format!("no closure of kind `{kind}`")))?;
        let own = raw.hottest.to_limit();
        let (coldest, hottest) = match seals {
            Some((cold, hot)) if hot.temperature < own.temperature => (Some(cold), hot),
            Some((cold, _)) => (Some(cold), own),
            None => (None, own),
        };
        let exposures = raw.exposure.as_ref().zip(raw.exposure_source.clone()).zip(raw.exposure_status.clone());
        let grease = raw.grease.clone().zip(raw.grease_source.clone());
        Ok(Closure {
            kind,
            elastomer,
            coldest,
            hottest,
            exposures: exposures
                .map(|((list, source), status)| (list.iter().map(exposure).collect(), Provenance { source, status })),
            grease: grease.map(|(note, source)| (note, Provenance { source, status: Status::Practice })),
        })
    }

    /// Coldest and hottest of seals of unstated material: on each side the elastomer that bears least.
    fn least_tolerant(&self) -> Result<(TemperatureLimit, TemperatureLimit), DataError> {
        let assumed = || self.elastomers.iter().filter(|e| self.assumed.contains(&e.id));
        let kelvin = |limit: &TemperatureLimit| limit.temperature.value;
        let coldest = assumed().max_by(|a, b| kelvin(&a.coldest).total_cmp(&kelvin(&b.coldest)));
        let hottest = assumed().min_by(|a, b| kelvin(&a.hottest).total_cmp(&kelvin(&b.hottest)));
        let unstated = |e: &Elastomer, limit: &TemperatureLimit| TemperatureLimit {
            reason: format!("the seal material is not stated, so {} is assumed: {}", e.id, limit.reason),
            ..limit.clone()
        };
        match (coldest, hottest) {
            (Some(cold), Some(hot)) => Ok((unstated(cold, &cold.coldest), unstated(hot, &hot.hottest))),
            _ => Err(fault("no elastomer to assume for seals of unstated material")),
        }
    }
}

fn exposure(raw: &RawExposure) -> Exposure {
    Exposure { temperature: ThermodynamicTemperature::new::<degree_celsius>(raw.c), hours: raw.hours }
}
