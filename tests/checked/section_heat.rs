//! Temperatures in the section of parts that are chilled or warmed by themselves.

use super::section_rows::{self as rows, Row, mm, number, rows};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::quantity::{HeatTransfer, ThermodynamicTemperature, Time, celsius};
use seatwise::section::heat::{Conduction, Exposed, Face, FaceLaw, Faces, HeatHistory, Property, Solid, Stage, Until};
use seatwise::section::{Accuracy, Model, RingSection, Section};
use uom::si::f64::MassDensity;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

const ALLOWED: &str = "0.05 K";

pub const SETS: &[Set] = &[
    Set {
        family: "Section of a seat",
        title: "Temperatures of a ring and a boss alone",
        allowed: ALLOWED,
        checks: ring_and_boss,
    },
    Set {
        family: "Section of a seat",
        title: "Temperatures of a set of rings alone",
        allowed: ALLOWED,
        checks: ring_set,
    },
];

pub fn seconds(value: f64) -> Time {
    Time::new::<second>(value)
}

pub fn in_celsius(temperature: ThermodynamicTemperature) -> f64 {
    temperature.get::<degree_celsius>()
}

pub fn film(coefficient: f64, surroundings_c: f64) -> Exposed {
    Exposed::film(HeatTransfer::new::<watt_per_square_meter_kelvin>(coefficient), celsius(surroundings_c))
}

/// A solid of constant properties.
pub fn solid(density: f64, capacity: f64, conductivity: f64, expansion: f64) -> Solid {
    Solid {
        density: MassDensity::new::<kilogram_per_cubic_meter>(density),
        capacity: Property::constant(capacity),
        conductivity: Property::constant(conductivity),
        strain: Property::line(expansion, 293.15),
    }
}

pub fn steel() -> Solid {
    solid(7810.0, 460.0, 40.0, 12.5e-6)
}

pub fn aluminium() -> Solid {
    solid(2700.0, 900.0, 150.0, 23.2e-6)
}

/// Ring and boss of the reference rows; a ring set has another bore.
pub fn reference_section(ring_bore: f64) -> Section {
    let ring = RingSection { bore: mm(ring_bore), ..rows::ring(0.0, None) };
    rows::plain(ring, rows::housing(90.0, 0.0, rows::wall(5.0, 40.0)))
}

/// The history of a row's part, long enough for all of its rows.
fn history<'c>(conduction: &'c Conduction<'c>, row: &Row, lasting: f64) -> HeatHistory<'c> {
    let around = film(number(row, "h_W_m2K"), number(row, "T_env_C"));
    let air = film(10.0, 20.0);
    let faces = if row["environment"] == "hot plate" {
        Faces::all(FaceLaw::Exposed(&air)).with(Face::Back, FaceLaw::Exposed(&around))
    } else {
        Faces::all(FaceLaw::Exposed(&around))
    };
    let stage = Stage { around: vec![faces; 2], seating: None, until: Until::Elapsed(seconds(lasting)) };
    let start = conduction.uniform(&[celsius(number(row, "T0_C")); 2]).unwrap();
    conduction.run(&start, &[stage]).unwrap()
}

fn add(sheet: &mut Sheet, row: &Row, history: &HeatHistory<'_>) {
    let part = usize::from(row["body"] == "boss");
    let found = history.part(part, seconds(number(row, "t_s"))).unwrap();
    sheet.row(format!("{} in {}, {} s", row["body"], row["environment"], row["t_s"]));
    for (column, temperature) in
        [("T_mean_C", Some(found.mean)), ("T_OD_surface_C", Some(found.outside)), ("T_bore62_surface_C", found.inside)]
    {
        if !row[column].is_empty() {
            sheet.column(row, column, in_celsius(temperature.unwrap()), [0.0, 0.05]);
        }
    }
}

/// Bodies of one model, so that one history serves all of them.
fn transient(bodies: &[&str], ring_bore: f64, ring: Solid) -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/transient.csv");
    let all = rows(include_str!("../reference/mechanics/transient.csv"));
    let model = Model::new(&reference_section(ring_bore), Accuracy::Coarse).unwrap();
    let conduction = Conduction::new(&model, &[ring, aluminium()]).unwrap();
    for environment in ["freezer", "fan", "dry-ice bath", "LN2 film boiling", "oven", "hot plate"] {
        let here = |row: &&Row| row["environment"] == environment && bodies.contains(&row["body"].as_str());
        let these: Vec<&Row> = all.iter().filter(here).collect();
        let last = these.iter().map(|row| number(row, "t_s")).fold(0.0, f64::max);
        let history = history(&conduction, these[0], last);
        these.into_iter().for_each(|row| add(&mut sheet, row, &history));
    }
    sheet.done()
}

fn ring_and_boss() -> Vec<Check> {
    transient(&["ring", "boss"], 52.0, steel())
}

fn ring_set() -> Vec<Check> {
    transient(&["ringset"], 30.0, solid(0.7 * 7810.0, 460.0, 40.0, 12.5e-6))
}
