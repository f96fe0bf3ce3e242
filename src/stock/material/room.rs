//! A material from the few room-temperature values that a job may state.

use std::sync::Arc;
use uom::si::f64::{
    MassDensity, Pressure, SpecificHeatCapacity, TemperatureCoefficient, ThermalConductivity, ThermodynamicTemperature,
};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, megapascal};
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

use super::{Bounds, Family, Material, MaterialError, Properties, Provenance, REFERENCE_K, Strength, TemperatureLimit};
use crate::stock::curve::Curve;

/// Range in which a mean coefficient of unknown range is used, °C. Common practice, no published source: over it the
/// coefficient of metals changes by less than about 5 % from its mean over 20 to 100 °C.
const USUAL_RANGE_C: (f64, f64) = (-40.0, 120.0);

/// Room-temperature values of a material that has no file.
#[derive(Clone, Debug)]
pub struct RoomValues {
    /// Family, for friction.
    pub family: Family,
    /// Density.
    pub density: MassDensity,
    /// Elastic modulus.
    pub elastic_modulus: Pressure,
    /// Poisson's ratio, above 0 and below 0.5.
    pub poisson_ratio: f64,
    /// Yield or breaking stress.
    pub strength: Strength,
    /// Mean coefficient of linear expansion over the range of use.
    pub mean_expansion: TemperatureCoefficient,
    /// Heat capacity.
    pub heat_capacity: SpecificHeatCapacity,
    /// Thermal conductivity.
    pub conductivity: ThermalConductivity,
    /// Total emissivity; 0.05 to 0.95, which covers any surface, when not stated.
    pub emissivity: Option<Bounds>,
    /// Lowest temperature at which the values may be used; -40 °C when not stated.
    pub coldest: Option<ThermodynamicTemperature>,
    /// Highest temperature at which the values may be used; 120 °C when not stated.
    pub hottest: Option<ThermodynamicTemperature>,
    /// Where the values come from; a material without is marked "no source given".
    pub source: Option<String>,
}

/// A material with constant properties, valid from its stated coldest to its hottest temperature only.
///
/// A constant coefficient overstates the contraction of metals in deep cold (steel in liquid nitrogen by a third), so
/// widen the range only for a mean coefficient that was stated for it.
///
/// # Errors
/// [`MaterialError::Value`] when a value is out of its physical range or the range does not include 20 °C.
pub fn from_room_values(id: &str, values: &RoomValues) -> Result<Material, MaterialError> {
    let limits = check(id, values)?;
    let (cold, hot) = limits;
    let alpha = values.mean_expansion.get::<per_kelvin>();
    let constant = |value| flat(id, value, limits);
    let provenance = Provenance::of_user(values.source.as_deref());
    let expansion = [(cold, alpha * (cold - REFERENCE_K)), (REFERENCE_K, 0.0), (hot, alpha * (hot - REFERENCE_K))];
    Ok(Material(Arc::new(Properties {
        id: id.to_owned(),
        names: Vec::new(),
        family: values.family,
        about: "stated in the job by room-temperature values".to_owned(),
        density_kg_m3: values.density.get::<kilogram_per_cubic_meter>(),
        modulus_pa: constant(values.elastic_modulus.get::<uom::si::pressure::pascal>())?,
        poisson_ratio: values.poisson_ratio,
        strength: values.strength,
        expansion: Curve::new(&expansion).map_err(|error| fault(id, "coldest", &error.to_string(), "in order"))?,
        heat_capacity: constant(values.heat_capacity.get::<joule_per_kilogram_kelvin>())?,
        conductivity: constant(values.conductivity.get::<watt_per_meter_kelvin>())?,
        emissivity: values.emissivity.unwrap_or(ANY_SURFACE),
        surface: "as stated in the job".to_owned(),
        coldest: limit(values.coldest, USUAL_RANGE_C.0, &provenance),
        hottest: limit(values.hottest, USUAL_RANGE_C.1, &provenance),
        cautions: Vec::new(),
        sources: sources(values, &provenance),
    })))
}

/// Emissivity that covers any surface from polished metal to paint.
const ANY_SURFACE: Bounds = Bounds { low: 0.05, high: 0.95 };

fn flat(id: &str, value: f64, (cold, hot): (f64, f64)) -> Result<Curve, MaterialError> {
    Curve::constant(value, cold, hot).map_err(|error| fault(id, "coldest", &error.to_string(), "below hottest"))
}

fn limit(stated: Option<ThermodynamicTemperature>, usual_c: f64, provenance: &Provenance) -> TemperatureLimit {
    let usual = ThermodynamicTemperature::new::<degree_celsius>(usual_c);
    TemperatureLimit {
        temperature: stated.unwrap_or(usual),
        reason: "end of the range for which the stated values are taken as good".to_owned(),
        provenance: match stated {
            Some(_) => provenance.clone(),
            None => Provenance::of_practice("range in which a mean coefficient may be used when none is stated"),
        },
    }
}

fn sources(values: &RoomValues, stated: &Provenance) -> Vec<(&'static str, Provenance)> {
    let properties =
        ["density", "elastic_modulus", "poisson_ratio", "strength", "expansion", "heat_capacity", "conductivity"];
    let mut list: Vec<_> = properties.into_iter().map(|property| (property, stated.clone())).collect();
    let emissivity = match values.emissivity {
        Some(_) => stated.clone(),
        None => Provenance::of_practice("range that covers any surface"),
    };
    list.push(("emissivity", emissivity));
    list.push(("coldest", limit(values.coldest, USUAL_RANGE_C.0, stated).provenance));
    list.push(("hottest", limit(values.hottest, USUAL_RANGE_C.1, stated).provenance));
    list
}

/// The coldest and hottest temperature in K, when every value is in the range of some real solid.
fn check(id: &str, values: &RoomValues) -> Result<(f64, f64), MaterialError> {
    let emissivity = values.emissivity.unwrap_or(ANY_SURFACE);
    let cold = values.coldest.map_or(USUAL_RANGE_C.0, |t| t.get::<degree_celsius>());
    let hot = values.hottest.map_or(USUAL_RANGE_C.1, |t| t.get::<degree_celsius>());
    let rows = [
        ("density", values.density.get::<kilogram_per_cubic_meter>(), 500.0, 23_000.0, "kg/m³"),
        ("elastic_modulus", values.elastic_modulus.get::<gigapascal>(), 0.05, 700.0, "GPa"),
        ("poisson_ratio", values.poisson_ratio, 0.0, 0.5, ""),
        ("strength", values.strength.value.get::<megapascal>(), 1.0, 5000.0, "MPa"),
        ("mean_expansion", values.mean_expansion.get::<per_kelvin>() * 1e6, 0.0, 400.0, "µm/(m K)"),
        ("heat_capacity", values.heat_capacity.get::<joule_per_kilogram_kelvin>(), 5.0, 5000.0, "J/(kg K)"),
        ("conductivity", values.conductivity.get::<watt_per_meter_kelvin>(), 0.01, 3000.0, "W/(m K)"),
        ("emissivity (low)", emissivity.low, 0.0, emissivity.high + 1e-12, ""),
        ("emissivity (high)", emissivity.high, 0.0, 1.0, ""),
        ("coldest", cold, -269.15, 20.0, "°C"),
        ("hottest", hot, 20.0, 1500.0, "°C"),
    ];
    for (property, value, low, high, unit) in rows {
        if !(value > low && value < high) {
            let allowed = format!("above {low} and below {high} {unit}");
            return Err(fault(id, property, &format!("{value} {unit}"), allowed.trim_end()));
        }
    }
    let absolute = |celsius| ThermodynamicTemperature::new::<degree_celsius>(celsius).get::<kelvin>();
    Ok((absolute(cold), absolute(hot)))
}

fn fault(id: &str, property: &str, value: &str, allowed: &str) -> MaterialError {
    MaterialError::Value {
        id: id.to_owned(),
        property: property.to_owned(),
        value: value.trim_end().to_owned(),
        allowed: allowed.to_owned(),
        span: None,
    }
}
