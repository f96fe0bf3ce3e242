//! Several bodies, frost, wraps and the stated error of the lumped model against independent solutions and limits.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod reference_rows;

use proptest::prelude::*;
use reference_rows::{Row, given, number};
use seatwise::quantity::{Area, HeatTransfer, Length, Mass, Power, Pressure, ThermodynamicTemperature, Time};
use seatwise::stock::Curve;
use seatwise::thermal::*;
use uom::si::area::square_meter;
use uom::si::energy::joule;
use uom::si::f64::{HeatCapacity, MassDensity, ThermalConductance};
use uom::si::heat_capacity::joule_per_kelvin;
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass::{gram, kilogram};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::mass_flux::kilogram_per_square_meter_second;
use uom::si::power::watt;
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermal_conductance::watt_per_kelvin;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::second;

fn rows(file: &str) -> Vec<Row> {
    reference_rows::read(&format!("bodies/{file}"))
}

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}
fn at_kelvin(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(t)
}
fn seconds(t: f64) -> Time {
    Time::new::<second>(t)
}
fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
fn watts(power: f64) -> Power {
    Power::new::<watt>(power)
}
fn film(h: f64) -> HeatTransfer {
    HeatTransfer::new::<watt_per_square_meter_kelvin>(h)
}
fn constant(value: f64) -> Curve {
    Curve::constant(value, 20.0, 2000.0).unwrap()
}
/// Heat capacity that rises from 150 J/(kg K) at 70 K to 520 at 400 K in a straight line.
fn rising_capacity() -> Curve {
    Curve::new(&[(70.0, 150.0), (400.0, 520.0)]).unwrap()
}
/// Contraction of carbon steel in outline: 1.95e-3 to 77 K (published low-temperature table for SAE 1020).
fn steel_expansion() -> Curve {
    Curve::new(&[(70.0, -1.95e-3), (195.0, -1.06e-3), (293.15, 0.0), (500.0, 2.5e-3)]).unwrap()
}

fn body(mass: f64, heat_capacity: &Curve, start_k: f64) -> NetworkBody<'_> {
    NetworkBody { mass: Mass::new::<kilogram>(mass), heat_capacity, start: at_kelvin(start_k), power: watts(0.0) }
}

/// A surface to the first of the surroundings, nothing but a film on it.
fn surface<'a>(body: usize, area: f64, h: f64) -> Exchange<'a> {
    Exchange {
        body,
        with: Partner::Surroundings(0),
        area: Area::new::<square_meter>(area),
        film: SurfaceFilm::Constant(film(h)),
        emissivity: 0.0,
        inside: None,
        wrap: Wrap::none(),
        moisture: None,
    }
}

fn link<'a>(one: usize, other: usize, conductance: f64) -> Link<'a> {
    let conductance = Conductance::Constant(ThermalConductance::new::<watt_per_kelvin>(conductance));
    Link { between: (one, other), conductance }
}

fn alone<'a>(body: NetworkBody<'a>, surroundings_k: f64, exchange: Exchange<'a>) -> Network<'a> {
    Network {
        bodies: vec![body],
        surroundings: vec![at_kelvin(surroundings_k)],
        exchanges: vec![exchange],
        links: vec![],
    }
}

fn kelvin_at(history: &NetworkHistory, body: usize, time: f64) -> f64 {
    history.temperature_at(body, seconds(time)).unwrap().get::<kelvin>()
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
