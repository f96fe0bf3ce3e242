//! Thermal results against independent solutions, textbook examples and properties that must always hold.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod reference_rows;

use proptest::prelude::*;
use reference_rows::{Row, given, number};
use seatwise::quantity::{
    Area, HeatTransfer, Length, Mass, Power, TemperatureInterval, ThermodynamicTemperature, Time,
};
use seatwise::stock::Curve;
use seatwise::thermal::*;
use uom::si::area::square_meter;
use uom::si::f64::MassDensity;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{inch, meter, micrometer, millimeter};
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit, kelvin};
use uom::si::time::{hour, second};
use uom::si::volume::cubic_meter;

fn rows(file: &str) -> Vec<Row> {
    reference_rows::read(&format!("thermal_exact/{file}"))
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
fn constant(value: f64) -> Curve {
    Curve::constant(value, 50.0, 2000.0).unwrap()
}

/// A body of constant properties.
struct Lump {
    mass: f64,
    area: f64,
    capacity: Curve,
    conductivity: Curve,
    emissivity: f64,
    path: ConductionPath,
}

impl Lump {
    fn new(mass: f64, area: f64, c: f64) -> Self {
        let path = ConductionPath::none();
        Self { mass, area, capacity: constant(c), conductivity: constant(40.0), emissivity: 0.0, path }
    }

    fn body(&self) -> Body<'_> {
        Body {
            mass: Mass::new::<kilogram>(self.mass),
            area: Area::new::<square_meter>(self.area),
            heat_capacity: &self.capacity,
            conductivity: &self.conductivity,
            emissivity: self.emissivity,
            path: self.path,
        }
    }

    fn run(&self, start_k: f64, stages: &[Stage<'_>]) -> Result<History, ThermalError> {
        History::run(&self.body(), at_kelvin(start_k), stages)
    }
}

fn stage(surroundings_k: f64, film: f64, until: Until) -> Stage<'static> {
    let film = HeatTransfer::new::<watt_per_square_meter_kelvin>(film).into();
    let power = Power::new::<watt>(0.0);
    Stage { surroundings: at_kelvin(surroundings_k), film, radiates: false, power, until }
}

fn elapsed(time: f64) -> Until {
    Until::Elapsed(seconds(time))
}
fn reaches(target_k: f64) -> Until {
    Until::Reaches { target: at_kelvin(target_k), longest: seconds(1e12) }
}

/// The same value written as a table that is not quite constant, so that the solver and not the closed form is used.
fn barely_varying(value: f64) -> Curve {
    Curve::new(&[(50.0, value), (2000.0, value * (1.0 + 1e-13))]).unwrap()
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
