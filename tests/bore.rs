//! Two parts in the seat that exchange heat over the closing gap, against finite elements and against what must hold.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod reference_rows;

use proptest::prelude::*;
use reference_rows::{Row, number};
use seatwise::quantity::{Area, Cases, HeatTransfer, Length, Mass, ThermodynamicTemperature, Time};
use seatwise::stock::Curve;
use seatwise::thermal::bore::{
    AirConductivity, Course, Exchange, Freeing, Gap, Insertion, Joint, Placement, SeatBody, SeatSizes, StaysFree,
    still_air_conductivity,
};
use seatwise::thermal::*;
use std::f64::consts::PI;
use uom::si::area::square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

fn rows(file: &str) -> Vec<Row> {
    reference_rows::read(&format!("bore/{file}"))
}

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}
fn seconds(t: f64) -> Time {
    Time::new::<second>(t)
}
fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
fn um(length: f64) -> Length {
    Length::new::<micrometer>(length)
}
fn film(h: f64) -> HeatTransfer {
    HeatTransfer::new::<watt_per_square_meter_kelvin>(h)
}
fn constant(value: f64) -> Curve {
    Curve::constant(value, 60.0, 700.0).unwrap()
}
/// ΔL/L of a constant coefficient (1/K).
fn linear(coefficient: f64) -> Curve {
    Curve::new(&[(60.0, coefficient * (60.0 - 293.15)), (700.0, coefficient * (700.0 - 293.15))]).unwrap()
}

/// A material and the shape of a part.
#[derive(Clone, Debug)]
struct Part {
    mass: f64,
    capacity: Curve,
    conductivity: Curve,
    expansion: Curve,
    emissivity: f64,
    radiates: bool,
    to_joint: ConductionPath,
    free_area: f64,
    film: f64,
    start: f64,
}

impl Part {
    /// `[rho, c, k, coefficient]` and the volume (m³) and free area (m²).
    fn new([rho, c, k, coefficient]: [f64; 4], volume: f64, free_area: f64, start: f64) -> Self {
        Self {
            mass: rho * volume,
            capacity: constant(c),
            conductivity: constant(k),
            expansion: linear(coefficient),
            emissivity: 0.3,
            radiates: true,
            to_joint: ConductionPath::none(),
            free_area,
            film: 10.0,
            start,
        }
    }

    fn body(&self) -> SeatBody<'_> {
        SeatBody {
            mass: Mass::new::<kilogram>(self.mass),
            heat_capacity: &self.capacity,
            conductivity: &self.conductivity,
            expansion: &self.expansion,
            emissivity: self.emissivity,
            to_joint: self.to_joint,
            to_air: ConductionPath::none(),
            free_area: Area::new::<square_meter>(self.free_area),
            film: film(self.film),
            radiates: self.radiates,
            start: celsius(self.start),
        }
    }
}

/// Density, heat capacity, conductivity, expansion; inputs of the finite-element rows.
const STEEL: [f64; 4] = [7810.0, 460.0, 40.0, 12.5e-6];
const ALUMINIUM: [f64; 4] = [2700.0, 900.0, 150.0, 23.2e-6];
const IRON: [f64; 4] = [7200.0, 500.0, 50.0, 10.5e-6];

/// Area of an annulus between two radii, mm, in m².
fn annulus(inside: f64, outside: f64) -> f64 {
    PI * (outside * outside - inside * inside) * 1e-6
}
/// Curved surface of a radius and length, mm, in m².
fn curved(radius: f64, length: f64) -> f64 {
    2.0 * PI * radius * length * 1e-6
}

/// A ring whose outside is the joint.
fn ring(material: [f64; 4], (inside, outside): (f64, f64), width: f64, start: f64) -> Part {
    let face = annulus(inside, outside);
    Part::new(material, face * width * 1e-3, curved(inside, width) + 2.0 * face, start)
}

/// A boss round the joint, as long as the joint.
fn boss(material: [f64; 4], (inside, outside): (f64, f64), length: f64, start: f64) -> Part {
    let face = annulus(inside, outside);
    Part::new(material, face * length * 1e-3, curved(outside, length) + 2.0 * face, start)
}

/// Both parts of one insertion.
#[derive(Clone, Debug)]
struct Seat {
    inner: Part,
    outer: Part,
    diameter: f64,
    length: f64,
    interference_um: f64,
}

impl Seat {
    fn exchange<'a>(&'a self, gap: Gap<'a>) -> Exchange<'a> {
        Exchange {
            inner: self.inner.body(),
            outer: self.outer.body(),
            joint: Joint { diameter: mm(self.diameter), length: mm(self.length) },
            gap,
            shop: celsius(20.0),
        }
    }

    fn sizes(&self) -> SeatSizes {
        sizes(self.diameter, self.interference_um)
    }

    fn run(&self, placement: Placement, longest: f64) -> Insertion<'_> {
        self.exchange(Gap::usual(placement)).run(self.sizes(), seconds(longest)).unwrap()
    }

    /// Seconds until the concentric ring grips.
    fn grip(&self) -> Option<f64> {
        grip(&self.run(Placement::Concentric, 7200.0))
    }
}

fn sizes(diameter: f64, interference_um: f64) -> SeatSizes {
    SeatSizes { inner_at_20: mm(diameter), outer_at_20: mm(diameter) - um(interference_um) }
}

fn grip(insertion: &Insertion) -> Option<f64> {
    insertion.grip().map(|time| time.get::<second>())
}

fn in_celsius((inner, outer): (ThermodynamicTemperature, ThermodynamicTemperature)) -> (f64, f64) {
    (inner.get::<degree_celsius>(), outer.get::<degree_celsius>())
}

/// A steel ring 52 by 42 mm, 15 mm wide, in an aluminium boss of 70 or 90 mm.
fn light_alloy(boss_outside: f64, ring_start: f64, boss_start: f64, interference_um: f64) -> Seat {
    Seat {
        inner: ring(STEEL, (21.0, 26.0), 15.0, ring_start),
        outer: boss(ALUMINIUM, (26.0, boss_outside / 2.0), 20.0, boss_start),
        diameter: 52.0,
        length: 15.0,
        interference_um,
    }
}

#[path = "bore/answers.rs"]
mod answers;
#[path = "bore/properties.rs"]
mod properties;
#[path = "bore/races.rs"]
mod races;
#[path = "bore/refused.rs"]
mod refused;
