//! Film coefficients, air and nitrogen against independent libraries, and properties that must always hold.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod checked;

use checked::prove;
use checked::reference_rows::Row;
use checked::surfaces::{given, metres, pascals, rows, step, value, w_m2, w_m2k};
use proptest::prelude::*;
use seatwise::quantity::{Area, HeatTransfer, Length, Mass, ThermodynamicTemperature, celsius};
use seatwise::thermal::*;
use uom::si::f64::{Energy, Velocity, Volume};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, millimeter};
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::velocity::meter_per_second;

#[track_caller]
fn close(row: &Row, got: f64, relative: f64) {
    let off = got / value(row) - 1.0;
    assert!(off.abs() <= relative, "{} {}: got {got}, want {}, off {off:e}", row["id"], row["quantity"], value(row));
}

fn at_kelvin(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(t)
}
fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
fn speed(v: f64) -> Option<Velocity> {
    Some(Velocity::new::<meter_per_second>(v))
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
