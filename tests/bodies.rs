//! Several bodies, frost, wraps and the stated error of the lumped model against independent solutions and limits.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod checked;

use checked::networks::{
    alone, at_kelvin, body, celsius, constant, film, kelvin_at, link, mm, moist_air, rising_capacity, seconds, surface,
    through_the_collapse, watts,
};
use checked::prove;
use proptest::prelude::*;
use seatwise::quantity::{Area, Mass, Pressure};
use seatwise::stock::Curve;
use seatwise::thermal::*;
use uom::si::area::square_meter;
use uom::si::energy::joule;
use uom::si::f64::{HeatCapacity, ThermalConductance};
use uom::si::heat_capacity::joule_per_kelvin;
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::micrometer;
use uom::si::mass::{gram, kilogram};
use uom::si::mass_flux::kilogram_per_square_meter_second;
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermal_conductance::watt_per_kelvin;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::second;

/// Contraction of carbon steel in outline: 1.95e-3 to 77 K (published low-temperature table for SAE 1020).
fn steel_expansion() -> Curve {
    Curve::new(&[(70.0, -1.95e-3), (195.0, -1.06e-3), (293.15, 0.0), (500.0, 2.5e-3)]).unwrap()
}

#[path = "bodies/bearing.rs"]
mod bearing;
#[path = "bodies/frost.rs"]
mod frost;
#[path = "bodies/model_error.rs"]
mod model_error;
#[path = "bodies/network.rs"]
mod network;
#[path = "bodies/wrap.rs"]
mod wrap;
