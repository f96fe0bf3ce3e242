//! The tables of a scatter against histories of every draw.

use crate::jobs::{BATH, HEATER, NITROGEN, OIL, job};
use seatwise::plan::Method;
use seatwise::plan::scatter::{InputKind, OneByOne, Output, Random, seat_models};
use seatwise::quantity::Time;
use uom::si::length::micrometer;
use uom::si::time::second;

/// Largest difference of a table from the history that it stands for, µm.
const SAME_UM: f64 = 0.1;

/// As many parts of a job as are asked for: their clearance at the seat, and their clearance when they are said to have
/// just the placing clearance left.
fn compare(text: &str, parts: u64) {
    let job = job(text);
    let placing = job.bench.placing_clearance.get::<micrometer>();
    for model in seat_models(&job, Method::Plane, &OneByOne).unwrap() {
        assert!(model.is_treated(), "a part that is neither chilled nor warmed has no tables");
        assert!(model.table_error().get::<micrometer>() <= SAME_UM);
        for part in 0..parts {
            let inputs = model.draw(&mut Random::new(41, part));
            let drawn = model.evaluate(&inputs);
            let after =
                |time| model.clearance_directly(&inputs, Time::new::<second>(time)).unwrap().get::<micrometer>();
            let (tabled, directly) = (drawn[Output::Clearance.index()] * 1e6, after(inputs[InputKind::Carry.index()]));
            assert!((tabled - directly).abs() <= SAME_UM, "{}: {tabled} against {directly} µm", job.heading.title);
            let window = drawn[Output::Window.index()];
            // A few are enough: the time is read from the same tables.
            if part % 10 == 0 && window > 0.0 && window.is_finite() {
                let left = after(window);
                assert!(
                    (left - placing).abs() <= 2.0 * SAME_UM,
                    "{}: {left} µm left, not {placing}",
                    job.heading.title
                );
            }
        }
    }
}

#[test]
fn a_bearing_from_the_freezer_into_a_housing_from_the_oven() {
    compare(include_str!("../../examples/pump-case.toml"), 200);
}

#[test]
fn a_bearing_from_the_freezer_until_it_has_settled_in_moist_air() {
    compare(include_str!("../../examples/iron-hub.toml"), 200);
}

#[test]
fn a_bearing_on_a_hot_plate_until_it_has_a_temperature() {
    compare(include_str!("../../examples/fan-shaft.toml"), 200);
}

#[test]
fn a_bush_in_boiling_nitrogen() {
    compare(NITROGEN, 200);
    // Taken out while it still boils as a film, or has just gone on to boil in bubbles.
    compare(&NITROGEN.replace("5 min", "70 s"), 100);
}

#[test]
fn a_bearing_of_three_bodies_in_a_cold_bath_and_in_moist_air() {
    // With a film that is drawn as well the tables have twenty times as many histories, too many for a debug build.
    compare(&format!("{BATH}[scatter]\nfilm = \"fixed\"\n"), 40);
}

/// The rings that lead are hotter than the one that counts, so that the corners of the table lie beyond the bath.
#[test]
fn a_bearing_of_three_bodies_in_an_oil_bath_for_a_shaft() {
    compare(&format!("{OIL}[scatter]\nfilm = \"fixed\"\nhold = \"30 %\"\n"), 40);
}

#[test]
fn a_bearing_of_three_bodies_on_a_heater() {
    compare(HEATER, 100);
}
