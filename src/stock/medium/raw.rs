//! The file of media as written.

use serde::Deserialize;
use std::sync::Arc;
use uom::si::f64::{HeatTransfer, Power, TemperatureInterval, ThermodynamicTemperature};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::{
    Direction, Film, Hazard, HeatingPower, Law, Medium, MediumFileError, Properties, Residue, TemperatureRange,
    Transfer,
};
use crate::stock::material::{Provenance, Source, Status};

pub(super) const FILE: &str = "materials/media.toml";
pub(super) const TEXT: &str = include_str!("../../../materials/media.toml");

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFile {
    medium: Vec<RawMedium>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawMedium {
    id: String,
    phrase: String,
    names: Vec<String>,
    direction: Direction,
    leaves: Residue,
    cautions: Vec<Hazard>,
    notes: Vec<String>,
    /// Of the medium.
    temperature: Option<RawTemperature>,
    film: Option<RawFilm>,
    /// Of the part, for a medium that generates heat in it.
    target: Option<RawTemperature>,
    power: Option<RawPower>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawTemperature {
    default_c: Option<f64>,
    low_c: f64,
    high_c: f64,
    tolerance_k: f64,
    source: Source,
    status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFilm {
    low_w_m2k: f64,
    high_w_m2k: f64,
    radiates: bool,
    #[serde(default)]
    resting_face_only: bool,
    law: Option<RawLaw>,
    air_m_s: Option<[f64; 2]>,
    blower_w: Option<[f64; 2]>,
    factor: Option<[f64; 2]>,
    source: Source,
    status: Status,
}

#[derive(Clone, Copy, Deserialize)]
enum RawLaw {
    #[serde(rename = "air")]
    Air,
    #[serde(rename = "air stream")]
    Stream,
    #[serde(rename = "boiling nitrogen")]
    BoilingNitrogen,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawPower {
    low_w: f64,
    high_w: f64,
    source: Source,
    status: Status,
}

/// Every medium of a file, checked.
pub(super) fn read(text: &str) -> Result<Vec<Medium>, MediumFileError> {
    let file: RawFile = toml::from_str(text)
        .map_err(|error| MediumFileError { message: error.message().to_owned(), span: error.span() })?;
    file.medium.into_iter().map(checked).collect()
}

fn fault(id: &str, what: &str) -> MediumFileError {
    MediumFileError { message: format!("{id}: {what}"), span: None }
}

fn checked(raw: RawMedium) -> Result<Medium, MediumFileError> {
    let (temperature, transfer) = match (raw.temperature, raw.film, raw.target, raw.power) {
        (Some(temperature), Some(f), None, None) => (temperature, Transfer::Film(film(&raw.id, f)?)),
        (None, None, Some(target), Some(p)) => (target, Transfer::Power(power(&raw.id, p)?)),
        _ => return Err(fault(&raw.id, "needs `temperature` and `film`, or `target` and `power`")),
    };
    Ok(Medium(Arc::new(Properties {
        temperature: range(&raw.id, temperature)?,
        transfer,
        id: raw.id,
        phrase: raw.phrase,
        names: raw.names,
        direction: raw.direction,
        residue: raw.leaves,
        hazards: raw.cautions,
        notes: raw.notes,
    })))
}

fn range(id: &str, raw: RawTemperature) -> Result<TemperatureRange, MediumFileError> {
    let celsius = ThermodynamicTemperature::new::<degree_celsius>;
    let inside = raw.default_c.is_none_or(|default| raw.low_c <= default && default <= raw.high_c);
    if !(raw.low_c <= raw.high_c && raw.low_c > -273.15 && raw.high_c < 2000.0 && inside && raw.tolerance_k > 0.0) {
        return Err(fault(id, "temperatures must rise, hold the default between them, and have a tolerance"));
    }
    Ok(TemperatureRange {
        default: raw.default_c.map(celsius),
        low: celsius(raw.low_c),
        high: celsius(raw.high_c),
        tolerance: TemperatureInterval::new::<kelvin>(raw.tolerance_k),
        provenance: Provenance { source: raw.source, status: raw.status },
    })
}

/// The correlation, with what its slow and its quick end are multiplied by.
fn law(id: &str, raw: &RawFilm) -> Result<Law, MediumFileError> {
    let Some(law) = raw.law else {
        let alone = raw.air_m_s.is_none() && raw.factor.is_none() && raw.blower_w.is_none();
        let belongs = "`air_m_s`, `blower_w` and `factor` belong to a `law`";
        return if alone { Ok(Law::Stated) } else { Err(fault(id, belongs)) };
    };
    let [slow, quick] = raw.factor.unwrap_or([1.0, 1.0]);
    rising(id, "factor", slow, quick)?;
    match (law, raw.air_m_s, raw.blower_w) {
        (RawLaw::Air, Some([still, wind]), None) if 0.0 <= still && still <= wind && wind <= 50.0 => {
            Ok(Law::Air { speeds_m_s: (still, wind), factors: (slow, quick) })
        }
        (RawLaw::Stream, None, Some([weak, strong])) => {
            rising(id, "blower_w", weak, strong)?;
            Ok(Law::Stream { powers: (Power::new::<watt>(weak), Power::new::<watt>(strong)) })
        }
        (RawLaw::BoilingNitrogen, None, None) => Ok(Law::BoilingNitrogen { factors: (slow, quick) }),
        _ => {
            let needs = "law \"air\" needs `air_m_s`, slow and quick, 0 to 50 m/s, \"air stream\" needs `blower_w`, and \
                         \"boiling nitrogen\" takes neither";
            Err(fault(id, needs))
        }
    }
}

fn film(id: &str, raw: RawFilm) -> Result<Film, MediumFileError> {
    rising(id, "film", raw.low_w_m2k, raw.high_w_m2k)?;
    Ok(Film {
        low: HeatTransfer::new::<watt_per_square_meter_kelvin>(raw.low_w_m2k),
        high: HeatTransfer::new::<watt_per_square_meter_kelvin>(raw.high_w_m2k),
        radiates: raw.radiates,
        resting_face_only: raw.resting_face_only,
        law: law(id, &raw)?,
        provenance: Provenance { source: raw.source, status: raw.status },
    })
}

fn power(id: &str, raw: RawPower) -> Result<HeatingPower, MediumFileError> {
    rising(id, "power", raw.low_w, raw.high_w)?;
    Ok(HeatingPower {
        low: Power::new::<watt>(raw.low_w),
        high: Power::new::<watt>(raw.high_w),
        provenance: Provenance { source: raw.source, status: raw.status },
    })
}

fn rising(id: &str, key: &str, low: f64, high: f64) -> Result<(), MediumFileError> {
    let met = low > 0.0 && low <= high && high.is_finite();
    if met { Ok(()) } else { Err(fault(id, &format!("`{key}` is {low} to {high} but must be positive and rise"))) }
}
