//! The tables of a scatter against plain histories of every draw.

use crate::jobs::{BATH, HEATER, NITROGEN, job};
use seatwise::plan::Method;
use seatwise::plan::scatter::{InputKind, OneByOne, Output, Random, seat_models};
use seatwise::quantity::Time;
use uom::si::length::micrometer;
use uom::si::time::second;

/// Largest difference of a table from the history that it stands for, µm.
const SAME_UM: f64 = 0.1;
/// Draws of each job.
const PARTS: u64 = 200;

fn compare(text: &str) {
    let job = job(text);
    let t0 = std::time::Instant::now();
    for model in seat_models(&job, Method::Plane, &OneByOne).unwrap() {
        eprintln!("{} made {}", job.heading.title, t0.elapsed().as_secs_f64());
        let (mut worst, mut worst_window) = (0.0_f64, 0.0_f64);
        let start = std::time::Instant::now();
        for part in 0..PARTS {
            let inputs = model.draw(&mut Random::new(41, part));
            let drawn = model.evaluate(&inputs);
            let at = |seconds| model.clearance_directly(&inputs, Time::new::<second>(seconds)).unwrap();
            let directly = at(inputs[InputKind::Carry.index()]).get::<micrometer>();

            worst = worst.max((drawn[Output::Clearance.index()] * 1e6 - directly).abs());
        }
        eprintln!("{worst} {worst_window} {:?} {}", model.table_error(), start.elapsed().as_secs_f64());
        assert!(worst <= SAME_UM, "{}: {worst} µm", job.heading.title);
    }
}

#[test]
fn every_draw_of_a_freezer_and_an_oven_is_that_of_its_own_histories() {
    compare(include_str!("../../examples/pump-case.toml"));
}

#[test]
fn iron_hub() {
    compare(include_str!("../../examples/iron-hub.toml"));
}

#[test]
fn fan_shaft() {
    compare(include_str!("../../examples/fan-shaft.toml"));
}

#[test]
fn nitrogen() {
    compare(NITROGEN);
}

#[test]
fn bath() {
    compare(BATH);
}

#[test]
fn heater() {
    compare(HEATER);
}
