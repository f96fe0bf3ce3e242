//! Thermal results against independent solutions, textbook examples and properties that must always hold.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod checked;

use checked::heat::{
    Lump, at_kelvin, barely_varying, body_of_series, celsius, elapsed, outer_only, over, reaches, rows, run_of_series,
    seconds, stage,
};
use checked::prove;
use checked::reference_rows::{Row, given, number};
use proptest::prelude::*;
use seatwise::quantity::{Length, Mass, Power, TemperatureInterval, ThermodynamicTemperature, Time};
use seatwise::stock::Curve;
use seatwise::thermal::*;
use uom::si::area::square_meter;
use uom::si::f64::MassDensity;
use uom::si::length::{inch, meter, micrometer, millimeter};
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit, kelvin};
use uom::si::time::second;
use uom::si::volume::cubic_meter;

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
#[path = "thermal/lumped_body.rs"]
mod lumped_body;
#[path = "thermal/moist_air.rs"]
mod moist_air;
#[path = "thermal/properties.rs"]
mod properties;
#[path = "thermal/shapes.rs"]
mod shapes;
#[path = "thermal/sizes.rs"]
mod sizes;
