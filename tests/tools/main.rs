//! What pushes a part home: threads, screws, presses, the wall behind the part, and the play left in a bearing.
#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "../checked/mod.rs"]
mod checked;

mod clearance;
mod clearance_tables;
mod designations;
mod presses;
mod screw;
mod stop;
mod thread_sizes;
mod wall;
mod wall_properties;

use checked::reference_rows::{self, Row, number};
use seatwise::quantity::{Force, Length, Pressure, Torque};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::megapascal;
use uom::si::torque::newton_meter;

fn rows(file: &str) -> Vec<Row> {
    reference_rows::read(&format!("mechanics/{file}"))
}

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
fn um(length: f64) -> Length {
    Length::new::<micrometer>(length)
}
fn mpa(pressure: f64) -> Pressure {
    Pressure::new::<megapascal>(pressure)
}
fn newtons(force: f64) -> Force {
    Force::new::<newton>(force)
}
fn newton_metres(torque: f64) -> Torque {
    Torque::new::<newton_meter>(torque)
}

fn close(got: f64, want: f64, relative: f64, what: &str) {
    assert!((got - want).abs() <= relative * want.abs(), "{what}: {got}, wanted {want}");
}
