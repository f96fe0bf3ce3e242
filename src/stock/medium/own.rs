//! A medium of a shop's own: another one with the film that its readings gave, and its text.

use super::{Film, Law, Medium, Properties, Transfer};
use crate::stock::material::Provenance;
use std::sync::Arc;
use toml::{Table, Value};
use uom::si::f64::{HeatTransfer, ThermodynamicTemperature};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Digits that a film is written with; its range is widened to them.
const DIGITS: i32 = 4;

impl Medium {
    /// The same medium under another id, with a film of its own in place of a correlation; the stream of a blower still carries no
    /// more than its power. None for a medium that does not act through the surface.
    pub(crate) fn with_film(
        &self,
        id: &str,
        temperature: ThermodynamicTemperature,
        range: (HeatTransfer, HeatTransfer),
        provenance: Provenance,
    ) -> Option<Self> {
        let film = self.film()?;
        let law = match film.law {
            Law::Stream { .. } => film.law,
            Law::Stated | Law::Air { .. } | Law::BoilingNitrogen { .. } => Law::Stated,
        };
        let film = Film { low: range.0, high: range.1, law, provenance, ..film.clone() };
        let known = Properties::clone(&self.0);
        let mut own = Properties { id: id.to_owned(), names: Vec::new(), transfer: Transfer::Film(film), ..known };
        own.temperature.default = Some(temperature);
        Some(Self(Arc::new(own)))
    }

    /// The text of a file with this medium alone, as [`Medium::parse`] reads it. None for a medium that does not act through the
    /// surface.
    pub fn to_toml(&self) -> Option<String> {
        let film = self.film()?;
        let words = |texts: &[&str]| Value::Array(texts.iter().map(|text| Value::from(*text)).collect());
        let celsius = |t: ThermodynamicTemperature| Value::Float(hundredths(t.get::<degree_celsius>()));
        let mut table = Table::new();
        table.insert("id".into(), self.0.id.as_str().into());
        table.insert("phrase".into(), self.0.phrase.as_str().into());
        table.insert("names".into(), words(&self.names().collect::<Vec<_>>()));
        table.insert("direction".into(), self.0.direction.word().into());
        table.insert("leaves".into(), self.0.residue.word().into());
        table.insert("cautions".into(), words(&self.0.hazards.iter().map(|hazard| hazard.code()).collect::<Vec<_>>()));
        table.insert("notes".into(), words(&self.notes().collect::<Vec<_>>()));
        let mut temperature = sourced(&self.0.temperature.provenance);
        if let Some(default) = self.0.temperature.default {
            temperature.insert("default_c".into(), celsius(default));
        }
        temperature.insert("low_c".into(), celsius(self.0.temperature.low));
        temperature.insert("high_c".into(), celsius(self.0.temperature.high));
        temperature.insert("tolerance_k".into(), hundredths(self.0.temperature.tolerance.get::<kelvin>()).into());
        table.insert("temperature".into(), temperature.into());
        table.insert("film".into(), written(film).into());
        let file: Table = [("medium".to_owned(), Value::Array(vec![table.into()]))].into_iter().collect();
        toml::to_string(&file).ok()
    }
}

fn written(film: &Film) -> Table {
    let pair = |(a, b): (f64, f64)| Value::Array(vec![a.into(), b.into()]);
    let mut table = sourced(&film.provenance);
    table.insert("low_w_m2k".into(), outward(film.low, f64::floor).into());
    table.insert("high_w_m2k".into(), outward(film.high, f64::ceil).into());
    table.insert("radiates".into(), film.radiates.into());
    table.insert("resting_face_only".into(), film.resting_face_only.into());
    match film.law {
        Law::Stated => {}
        Law::Air { speeds_m_s, factors } => {
            table.insert("law".into(), "air".into());
            table.insert("air_m_s".into(), pair(speeds_m_s));
            table.insert("factor".into(), pair(factors));
        }
        Law::Stream { powers: (weak, strong) } => {
            table.insert("law".into(), "air stream".into());
            table.insert("blower_w".into(), pair((weak.get::<watt>(), strong.get::<watt>())));
        }
        Law::BoilingNitrogen { factors } => {
            table.insert("law".into(), "boiling nitrogen".into());
            table.insert("factor".into(), pair(factors));
        }
    }
    table
}

fn sourced(provenance: &Provenance) -> Table {
    let text = |text: String| Value::from(text);
    [("source", text(provenance.source.to_string())), ("status", text(provenance.status.to_string()))]
        .map(|(key, value)| (key.to_owned(), value))
        .into_iter()
        .collect()
}

fn hundredths(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}

/// Rounded to the digits that are written, away from the middle of its range.
fn outward(film: HeatTransfer, round: impl Fn(f64) -> f64) -> f64 {
    let value = film.get::<watt_per_square_meter_kelvin>();
    let scale = 10_f64.powi(DIGITS - 1 - value.abs().log10().floor() as i32);
    round(value * scale) / scale
}

#[cfg(test)]
mod tests {
    use crate::stock::medium::{Medium, embedded_media};

    #[test]
    fn every_medium_with_a_film_survives_being_written_and_read() {
        let mut count = 0;
        for medium in embedded_media().unwrap().iter().filter(|medium| medium.film().is_some()) {
            let text = medium.to_toml().unwrap();
            assert_eq!(Medium::parse(&text).unwrap(), std::slice::from_ref(medium), "{text}");
            count += 1;
        }
        assert!(count > 10, "{count}");
    }

    #[test]
    fn a_file_that_is_none_says_what_is_wrong() {
        let refused = |text: &str| Medium::parse(text).unwrap_err();
        assert!(refused("[[medium]]\nid = \"x\"\n").span().is_some());
        let falls = embedded_media().unwrap()[0].to_toml().unwrap().replace("low_w_m2k = 3.0", "low_w_m2k = 30.0");
        assert!(
            refused(&falls).to_string().contains("`film` is 30 to 8 but must be positive and rise"),
            "{}",
            refused(&falls)
        );
    }
}
