//! The file of media as written.

use serde::Deserialize;
use std::ops::Range;
use std::sync::Arc;
use toml::Spanned;
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
use crate::stock::recover::{self, KeyFault, Step};

pub(super) const FILE: &str = "materials/media.toml";
pub(super) const TEXT: &str = include_str!("../../../materials/media.toml");

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFile {
    medium: Vec<Spanned<RawMedium>>,
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
    default_c: Option<Spanned<f64>>,
    low_c: Spanned<f64>,
    high_c: Spanned<f64>,
    tolerance_k: Spanned<f64>,
    source: Source,
    status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFilm {
    low_w_m2k: Spanned<f64>,
    high_w_m2k: Spanned<f64>,
    radiates: bool,
    #[serde(default)]
    resting_face_only: bool,
    law: Option<Spanned<RawLaw>>,
    air_m_s: Option<Spanned<[f64; 2]>>,
    blower_w: Option<Spanned<[f64; 2]>>,
    factor: Option<Spanned<[f64; 2]>>,
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
    low_w: Spanned<f64>,
    high_w: Spanned<f64>,
    source: Source,
    status: Status,
}

/// Widest temperatures of a medium, °C: absolute zero, and more than any shop has.
const TEMPERATURE_C: (f64, f64) = (-273.15, 2000.0);
/// Fastest air, m/s.
const FASTEST: f64 = 50.0;

/// Every medium of a file, checked, or all that is wrong with it.
pub(super) fn read(text: &str) -> Result<Vec<Medium>, Vec<MediumFileError>> {
    let (file, keys) = recover::read::<RawFile>(text, TEXT);
    let (mut media, mut errors) = (Vec::new(), Vec::new());
    let mut ids = Vec::new();
    for (place, raw) in file.into_iter().flat_map(|file| file.medium).enumerate() {
        let spoiled = keys.iter().any(|fault| fault.path.contains(&Step::Item(place)));
        ids.push(raw.get_ref().id.clone());
        let mut check = Check { id: raw.get_ref().id.clone(), faults: Vec::new() };
        media.extend(check.medium(raw.span(), raw.into_inner()));
        // Of a medium with a wrong key only what stands in its own text is said, and nothing of how its parts go together.
        let own = |fault: &MediumFileError| fault.span.as_ref().is_some_and(|span| span.start <= text.len());
        errors.extend(check.faults.into_iter().filter(|fault| own(fault) && !(spoiled && fault.together)));
    }
    errors.extend(keys.iter().map(|fault| of_key(fault, &ids)));
    errors.sort_by_key(|error| error.span.as_ref().map_or(0, |span| span.start));
    if errors.is_empty() { Ok(media) } else { Err(errors) }
}

/// A wrong key, with the medium and the table in which it stands.
fn of_key(fault: &KeyFault, ids: &[String]) -> MediumFileError {
    let mut place = String::new();
    for step in &fault.path {
        match step {
            Step::Item(item) if fault.message == "`id` is missing" => place = format!("medium {}", item + 1),
            Step::Item(item) => place = ids.get(*item).cloned().unwrap_or_else(|| format!("medium {}", item + 1)),
            Step::Key(key) if place.is_empty() => place.clone_from(key),
            Step::Key(key) => place.push_str(&format!(", `{key}`")),
        }
    }
    let place = if place.is_empty() { String::new() } else { format!("{place}: ") };
    let allowed = fault.message.split_once(" is none of: ").and_then(|(_, known)| known.split(';').next());
    MediumFileError {
        message: format!("{place}{}", fault.message),
        span: Some(fault.at.clone()),
        allowed: allowed.map(str::to_owned),
        together: false,
    }
}

/// Checks on behalf of one medium, which go on after a mistake.
struct Check {
    id: String,
    faults: Vec<MediumFileError>,
}

impl Check {
    fn fault(&mut self, at: Range<usize>, what: &str, together: bool) {
        let message = format!("{}: {what}", self.id);
        self.faults.push(MediumFileError { message, span: Some(at), allowed: None, together });
    }

    /// A value that lies outside what is allowed.
    fn outside(&mut self, key: &str, (value, at): (String, Range<usize>), allowed: &str) {
        let message = format!("{}: `{key}` is {value} but must be {allowed}", self.id);
        self.faults.push(MediumFileError {
            message,
            span: Some(at),
            allowed: Some(allowed.to_owned()),
            together: false,
        });
    }

    fn medium(&mut self, at: Range<usize>, raw: RawMedium) -> Option<Medium> {
        let parts = (raw.temperature, raw.film, raw.target, raw.power);
        let (temperature, transfer) = match parts {
            (Some(temperature), Some(film), None, None) => {
                (self.range("temperature", temperature), self.film(film).map(Transfer::Film))
            }
            (None, None, Some(target), Some(power)) => {
                (self.range("target", target), self.power(power).map(Transfer::Power))
            }
            _ => {
                self.fault(at, "needs `temperature` and `film`, or `target` and `power`", true);
                return None;
            }
        };
        Some(Medium(Arc::new(Properties {
            temperature: temperature?,
            transfer: transfer?,
            id: raw.id,
            phrase: raw.phrase,
            names: raw.names,
            direction: raw.direction,
            residue: raw.leaves,
            hazards: raw.cautions,
            notes: raw.notes,
        })))
    }

    fn range(&mut self, table: &str, raw: RawTemperature) -> Option<TemperatureRange> {
        let before = self.faults.len();
        let (low, high) = (*raw.low_c.get_ref(), *raw.high_c.get_ref());
        if !(low > TEMPERATURE_C.0 && low < TEMPERATURE_C.1) {
            let allowed = format!("between {} and {} °C", TEMPERATURE_C.0, TEMPERATURE_C.1);
            self.outside(&format!("{table}.low_c"), (low.to_string(), raw.low_c.span()), &allowed);
        }
        if !(high >= low && high < TEMPERATURE_C.1) {
            let allowed = format!("at least `low_c`, {low}, and below {} °C", TEMPERATURE_C.1);
            self.outside(&format!("{table}.high_c"), (high.to_string(), raw.high_c.span()), &allowed);
        }
        if let Some(default) = raw.default_c.as_ref().filter(|usual| !(low..=high).contains(usual.get_ref())) {
            let value = (default.get_ref().to_string(), default.span());
            self.outside(
                &format!("{table}.default_c"),
                value,
                &format!("from `low_c` to `high_c`, {low} to {high} °C"),
            );
        }
        let tolerance = *raw.tolerance_k.get_ref();
        if !(tolerance > 0.0 && tolerance.is_finite()) {
            let value = (tolerance.to_string(), raw.tolerance_k.span());
            self.outside(&format!("{table}.tolerance_k"), value, "more than 0 K");
        }
        let celsius = ThermodynamicTemperature::new::<degree_celsius>;
        (self.faults.len() == before).then(|| TemperatureRange {
            default: raw.default_c.map(|usual| celsius(usual.into_inner())),
            low: celsius(low),
            high: celsius(high),
            tolerance: TemperatureInterval::new::<kelvin>(tolerance),
            provenance: Provenance { source: raw.source, status: raw.status },
        })
    }

    /// The correlation, with what its slow and its quick end are multiplied by.
    fn law(&mut self, raw: &RawFilm) -> Option<Law> {
        let stray = [&raw.air_m_s, &raw.blower_w, &raw.factor].into_iter().flatten().next();
        let Some(law) = &raw.law else {
            let Some(stray) = stray else { return Some(Law::Stated) };
            self.fault(stray.span(), "`air_m_s`, `blower_w` and `factor` belong to a `law`", true);
            return None;
        };
        let factors = match &raw.factor {
            Some(factor) => self.rising("factor", *factor.get_ref(), factor.span())?,
            None => (1.0, 1.0),
        };
        match (law.get_ref(), &raw.air_m_s, &raw.blower_w) {
            (RawLaw::Air, Some(speeds), None) => {
                let [still, wind] = *speeds.get_ref();
                if !(0.0 <= still && still <= wind && wind <= FASTEST) {
                    let value = (format!("{still} to {wind}"), speeds.span());
                    self.outside("film.air_m_s", value, &format!("slow and quick, 0 to {FASTEST} m/s"));
                    return None;
                }
                Some(Law::Air { speeds_m_s: (still, wind), factors })
            }
            (RawLaw::Stream, None, Some(blower)) => {
                let (weak, strong) = self.rising("blower_w", *blower.get_ref(), blower.span())?;
                Some(Law::Stream { powers: (Power::new::<watt>(weak), Power::new::<watt>(strong)) })
            }
            (RawLaw::BoilingNitrogen, None, None) => Some(Law::BoilingNitrogen { factors }),
            _ => {
                let needs = "law \"air\" needs `air_m_s`, slow and quick, \"air stream\" needs `blower_w`, and \"boiling \
                             nitrogen\" takes neither";
                self.fault(law.span(), needs, true);
                None
            }
        }
    }

    fn film(&mut self, raw: RawFilm) -> Option<Film> {
        let ends = [*raw.low_w_m2k.get_ref(), *raw.high_w_m2k.get_ref()];
        let (ends, law) = (self.rising("film", ends, raw.low_w_m2k.span()), self.law(&raw));
        let (low, high) = ends?;
        Some(Film {
            low: HeatTransfer::new::<watt_per_square_meter_kelvin>(low),
            high: HeatTransfer::new::<watt_per_square_meter_kelvin>(high),
            radiates: raw.radiates,
            resting_face_only: raw.resting_face_only,
            law: law?,
            provenance: Provenance { source: raw.source, status: raw.status },
        })
    }

    fn power(&mut self, raw: RawPower) -> Option<HeatingPower> {
        let ends = [*raw.low_w.get_ref(), *raw.high_w.get_ref()];
        let (low, high) = self.rising("power", ends, raw.low_w.span())?;
        Some(HeatingPower {
            low: Power::new::<watt>(low),
            high: Power::new::<watt>(high),
            provenance: Provenance { source: raw.source, status: raw.status },
        })
    }

    fn rising(&mut self, key: &str, [low, high]: [f64; 2], at: Range<usize>) -> Option<(f64, f64)> {
        if low > 0.0 && low <= high && high.is_finite() {
            return Some((low, high));
        }
        self.outside(key, (format!("{low} to {high}"), at), "positive and rise");
        None
    }
}
