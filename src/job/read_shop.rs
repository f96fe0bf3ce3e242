//! The shop and the service.

use super::entry::AnyValue;
use super::model::{Bench, Part, PartKind, ServiceEnd, ServiceState};
use super::read_treatment::{film, usual_film};
use super::section::{Notes, Section};
use crate::quantity::{
    self, AngularVelocity, Length, Pressure, TemperatureInterval, ThermodynamicTemperature, Time, celsius,
};
use crate::stock::Library;
use crate::thermal::standard_pressure;
use uom::si::angular_velocity::revolution_per_minute;
use uom::si::f64::Volume;
use uom::si::length::{meter, micrometer};
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;
use uom::si::volume::cubic_meter;

pub(super) const BENCH_KEYS: [&str; 7] =
    ["temperature", "humidity", "carry", "film", "placing_clearance", "elevation", "room"];
pub(super) const SERVICE_KEYS: [&str; 4] = ["coldest", "hottest", "ring_difference", "speed"];

/// Range of shop temperatures, °C.
const SHOP_C: (f64, f64) = (-30.0, 50.0);

/// Smallest default placing clearance, µm, and its share of the diameter for large seats.
///
/// Common practice, no published source: a few hundredths of a millimetre are wanted by hand; 15 µm is the least at
/// which a small ring still drops in, and large rings need about 0.00015 of their diameter.
const PLACING: (f64, f64) = (15.0, 0.000_15);

/// Temperature of the shop, read first because every other section leans on it.
pub(super) fn shop_temperature(section: Option<&Section<'_>>, notes: &mut Notes) -> ThermodynamicTemperature {
    let usual = celsius(20.0);
    let Some(found) = section.and_then(|section| section.quantity("temperature", quantity::temperature, notes)) else {
        if section.is_none_or(|section| !section.has("temperature")) {
            let why = "not stated: the reference temperature of ISO 1";
            notes.assume("bench.temperature", AnyValue::Temperature(usual), why);
        }
        return usual;
    };
    let value = found.value.get::<degree_celsius>();
    if !(SHOP_C.0..=SHOP_C.1).contains(&value) {
        let message =
            format!("`bench.temperature` is {value:.1} °C but must lie from {} °C to {} °C", SHOP_C.0, SHOP_C.1);
        notes.problem(found.at, message, "check the unit: °C or °F");
    }
    found.value
}

pub(super) fn bench(
    section: Option<&Section<'_>>,
    temperature: ThermodynamicTemperature,
    seat: Length,
    library: &Library,
    notes: &mut Notes,
) -> Option<Bench> {
    let air = library.medium("still-air").ok()?;
    let still = air.film()?;
    let film = match section {
        Some(section) => film(section, still, notes)?,
        None => usual_film("bench.film", still, notes),
    };
    Some(Bench {
        temperature,
        humidity: section.and_then(|section| section.quantity("humidity", quantity::share, notes)).map(|s| s.value),
        carry: carry(section, notes)?,
        film,
        placing_clearance: placing_clearance(section, seat, notes)?,
        placing_is_stated: section.is_some_and(|section| section.has("placing_clearance")),
        pressure: pressure(section, notes)?,
        room: room(section, notes)?,
    })
}

/// Air pressure at the elevation of the shop.
fn pressure(section: Option<&Section<'_>>, notes: &mut Notes) -> Option<Pressure> {
    let Some(section) = section.filter(|section| section.has("elevation")) else {
        return standard_pressure(Length::default()).ok();
    };
    let before = notes.entries.len();
    let found = section.quantity("elevation", quantity::length, notes)?;
    // Heights above the sea are told in metres and feet, not as sizes of parts are.
    for entry in &mut notes.entries[before..] {
        entry.value = AnyValue::Elevation(found.value);
    }
    match standard_pressure(found.value) {
        Ok(pressure) if found.value.get::<meter>() <= HIGHEST_M => Some(pressure),
        _ => {
            let message =
                format!("`bench.elevation` is {} m but must lie from 0 to {HIGHEST_M} m", found.value.get::<meter>());
            notes.problem(found.at, message, "give the height of the shop above the sea");
            None
        }
    }
}

/// Volume of the room; `None` only when it was given and could not be read.
fn room(section: Option<&Section<'_>>, notes: &mut Notes) -> Option<Option<Volume>> {
    let Some(section) = section.filter(|section| section.has("room")) else { return Some(None) };
    let words = section.words("room", "write the volume of the room, such as \"60 m3\"", notes)?;
    match quantity::volume(words.text) {
        Ok(entered) if (5.0..=1e6).contains(&entered.value.get::<cubic_meter>()) => {
            let value = AnyValue::Text(format!("{} m³", entered.value.get::<cubic_meter>()));
            section.enter("room", words.text, value, entered.system, notes);
            Some(Some(entered.value))
        }
        Ok(entered) => {
            let message = format!(
                "`bench.room` is {} m³ but must lie from 5 m³ to 1000000 m³",
                entered.value.get::<cubic_meter>()
            );
            notes.problem(words.at, message, "give the volume of the room: length x width x height");
            None
        }
        Err(error) => {
            notes.problem(words.part(error.at), format!("`bench.room`: {}", error.problem), error.help);
            None
        }
    }
}

/// Highest shop, m: above it the films of air are not covered.
const HIGHEST_M: f64 = 4000.0;

fn carry(section: Option<&Section<'_>>, notes: &mut Notes) -> Option<Time> {
    if let Some(section) = section.filter(|section| section.has("carry")) {
        let found = section.quantity("carry", quantity::duration, notes)?;
        let seconds = found.value.get::<second>();
        if !(0.0..=3600.0).contains(&seconds) {
            let message = format!("`bench.carry` is {seconds} s but must lie from 0 s to 3600 s");
            notes.problem(found.at, message, "give the time from the medium to the mouth of the seat");
            return None;
        }
        return Some(found.value);
    }
    let value = Time::new::<second>(10.0);
    let why = "common practice, no published source: the medium stands beside the bench; state carry";
    notes.assume("bench.carry", AnyValue::Duration(value), why);
    Some(value)
}

fn placing_clearance(section: Option<&Section<'_>>, seat: Length, notes: &mut Notes) -> Option<Length> {
    if let Some(section) = section.filter(|section| section.has("placing_clearance")) {
        let found = section.small_length("placing_clearance", notes)?;
        let micrometres = found.value.get::<micrometer>();
        if !(0.0..=500.0).contains(&micrometres) {
            let message = format!("`bench.placing_clearance` is {micrometres} um but must lie from 0 to 500 um");
            notes.problem(found.at, message, "give the clearance that lets the part drop in by hand");
            return None;
        }
        return Some(found.value);
    }
    let value = Length::new::<micrometer>(PLACING.0.max(PLACING.1 * seat.get::<micrometer>()));
    let why = "common practice, no published source: 15 um, or 0.00015 of the diameter when that is more; state \
               placing_clearance under [bench]";
    notes.assume("bench.placing_clearance", AnyValue::SmallLength(value), why);
    Some(value)
}

/// Fastest shaft, rpm.
const FASTEST_RPM: f64 = 200_000.0;

/// The speed of the shaft; `None` only when it was refused.
pub(super) fn speed(section: &Section<'_>, notes: &mut Notes) -> Option<Option<AngularVelocity>> {
    if !section.has("speed") {
        return Some(None);
    }
    let found = section.quantity("speed", quantity::speed_of_turning, notes)?;
    let rpm = found.value.get::<revolution_per_minute>();
    if rpm <= FASTEST_RPM {
        return Some(Some(found.value));
    }
    let message = format!("`{}` is {rpm:.0} rpm but must lie from 0 rpm to {FASTEST_RPM} rpm", section.path("speed"));
    notes.problem(found.at, message, "give the speed at which shaft and inner ring turn together");
    None
}

/// Usual difference of the rings, K: the inner ring, from which heat gets away less easily, is the warmer one.
const RINGS_DIFFER_K: (f64, f64) = (0.0, 10.0);

/// By how much the inner ring runs warmer than the outer one; nothing for a part without rings. `None` only when it was
/// refused.
pub(super) fn ring_difference(
    section: &Section<'_>,
    kind: PartKind,
    notes: &mut Notes,
) -> Option<Option<(TemperatureInterval, TemperatureInterval)>> {
    let step = TemperatureInterval::new::<step_kelvin>;
    if !section.has("ring_difference") {
        if !kind.is_bearing() {
            return Some(None);
        }
        let why = "common practice, no published source: the inner ring runs a little warmer; state ring_difference";
        let value = AnyValue::Text(format!("{} K to {} K", RINGS_DIFFER_K.0, RINGS_DIFFER_K.1));
        notes.assume(section.path("ring_difference"), value, why);
        return Some(Some((step(RINGS_DIFFER_K.0), step(RINGS_DIFFER_K.1))));
    }
    let found = section.quantity("ring_difference", quantity::temperature_step, notes)?;
    let kelvins = found.value.get::<step_kelvin>();
    if kind.is_bearing() && (-100.0..=100.0).contains(&kelvins) {
        return Some(Some((found.value, found.value)));
    }
    let path = section.path("ring_difference");
    let message =
        format!("`{path}` is {kelvins} K but must lie from -100 K to 100 K, and only a bearing has two rings");
    notes.problem(found.at, message, "give by how much the inner ring is warmer than the outer one");
    None
}

pub(super) fn service(section: &Section<'_>, part: &Part, notes: &mut Notes) -> Vec<ServiceState> {
    let ends = [("coldest", ServiceEnd::Coldest), ("hottest", ServiceEnd::Hottest)];
    let states: Vec<_> = ends.into_iter().filter_map(|(key, end)| service_state(section, key, end, notes)).collect();
    if let [cold, hot] = states.as_slice()
        && cold.part > hot.part
    {
        let message = format!("the coldest state is warmer than the hottest, for the {}", part.kind.noun());
        notes.problem(section.place("coldest"), message, "exchange the two, or check their signs");
    }
    states
}

fn service_state(section: &Section<'_>, key: &str, end: ServiceEnd, notes: &mut Notes) -> Option<ServiceState> {
    if !section.is_table(key) {
        let found = section.quantity(key, quantity::temperature, notes)?;
        let all = in_service(found.value, &found.at, &section.path(key), notes)?;
        return Some(ServiceState { end, part: all, housing: all, shaft: all });
    }
    let table = section.section(key, &["part", "housing", "shaft"], notes)?;
    table.missing("part", "give the temperature of the part, and of the housing or shaft where they differ", notes);
    let mut read = |key: &str| {
        let found = table.quantity(key, quantity::temperature, notes)?;
        in_service(found.value, &found.at, &table.path(key), notes)
    };
    let part = read("part")?;
    Some(ServiceState { end, part, housing: read("housing").unwrap_or(part), shaft: read("shaft").unwrap_or(part) })
}

fn in_service(
    value: ThermodynamicTemperature,
    at: &std::ops::Range<usize>,
    path: &str,
    notes: &mut Notes,
) -> Option<ThermodynamicTemperature> {
    let celsius = value.get::<degree_celsius>();
    if (-200.0..=400.0).contains(&celsius) {
        return Some(value);
    }
    let message = format!("`{path}` is {celsius:.1} °C but must lie from -200 °C to 400 °C");
    notes.problem(at.clone(), message, "check the number and its unit");
    None
}
