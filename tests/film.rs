//! Film coefficients, air and nitrogen against independent libraries, and properties that must always hold.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod reference_rows;

use proptest::prelude::*;
use reference_rows::Row;
use seatwise::quantity::{
    Area, HeatTransfer, Length, Mass, Pressure, TemperatureInterval, ThermodynamicTemperature, celsius,
};
use seatwise::thermal::*;
use uom::si::f64::{Energy, HeatFluxDensity, Velocity, Volume};
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, millimeter};
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::velocity::meter_per_second;

/// Rows of a reference file whose quantity starts with `kind`; a kind without rows is a mistake of the test.
fn rows(file: &str, kind: &str) -> Vec<Row> {
    let all = reference_rows::read(&format!("film/{file}.csv")).into_iter();
    let rows: Vec<Row> = all.filter(|row| row["quantity"].starts_with(kind)).collect();
    assert!(!rows.is_empty(), "{file} has no rows of {kind}");
    rows
}

fn value(row: &Row) -> f64 {
    row["value"].parse().unwrap()
}

/// The number after `key=` in the inputs, such as `D=0.05 m;dT=50 K`, or in a call, such as `f(Pr=0.7,Gr=12)`.
fn given(row: &Row, key: &str) -> f64 {
    try_given(row, key).unwrap_or_else(|| panic!("{key} in {row:?}"))
}

fn try_given(row: &Row, key: &str) -> Option<f64> {
    let key = format!("{key}=");
    let part = row["inputs"].split(';').find_map(|part| part.trim().strip_prefix(key.as_str()))?;
    part.split(' ').next()?.parse().ok()
}

#[track_caller]
fn close(row: &Row, got: f64, relative: f64) {
    let off = got / value(row) - 1.0;
    assert!(off.abs() <= relative, "{} {}: got {got}, want {}, off {off:e}", row["id"], row["quantity"], value(row));
}

fn at_kelvin(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(t)
}
fn step(t: f64) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_step>(t)
}
fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
fn metres(length: f64) -> Length {
    Length::new::<meter>(length)
}
fn pascals(p: f64) -> Pressure {
    Pressure::new::<pascal>(p)
}
fn speed(v: f64) -> Option<Velocity> {
    Some(Velocity::new::<meter_per_second>(v))
}
fn w_m2k(film: HeatTransfer) -> f64 {
    film.get::<watt_per_square_meter_kelvin>()
}
fn w_m2(flux: HeatFluxDensity) -> f64 {
    flux.get::<watt_per_square_meter>()
}

fn still(air_c: f64, axis: Axis) -> AirAround {
    AirAround { air: celsius(air_c), pressure: pascals(101_325.0), air_speed: None, axis }
}

/// The outer ring of a bearing of 62 mm.
fn ring() -> RoundPart {
    Ring { bore: mm(52.0), outside: mm(62.0), width: mm(16.0) }.into()
}

fn plug(outside: f64, length: f64) -> RoundPart {
    Plug { outside: mm(outside), length: mm(length) }.into()
}

fn boss(back_wall: Option<BackWall>) -> RoundPart {
    Boss { bore: mm(62.0), outside: mm(90.0), length: mm(21.0), back_wall }.into()
}

fn mean(part: &RoundPart, around: &AirAround, surface_k: f64) -> f64 {
    w_m2k(part_in_air(part, around, at_kelvin(surface_k)).unwrap().mean)
}

#[path = "film/air.rs"]
mod air;
#[path = "film/boiling.rs"]
mod boiling;
#[path = "film/convection.rs"]
mod convection;
#[path = "film/evaporation.rs"]
mod evaporation;
#[path = "film/law.rs"]
mod law;
#[path = "film/part.rs"]
mod part;
