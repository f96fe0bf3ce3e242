//! Seats against independent finite elements. Their pressure is known to be 0.029 % low.

use crate::checked::prove;
use crate::checked::seats::{cases, from_end};
use crate::rows::{self, number};

#[test]
fn pressure_and_closing_of_closed_seats() {
    assert_eq!(prove("Seats, pressed").len(), 8 * 21);
    for (row, state) in cases(true) {
        assert!((state.contacts[0].touching - 1.0).abs() < 1e-12, "{} is open somewhere", row["case"]);
    }
}

#[test]
fn clearance_of_open_seats() {
    assert_eq!(prove("Seats, open").len(), 3 * 2);
    for (_, state) in cases(false) {
        assert!(state.contacts[0].normal_force.value.abs() < 1e-12);
    }
}

#[test]
fn pressure_along_the_seat() {
    assert_eq!(prove("Pressure and sizes along the seat").len(), 3 * (40 + 92));
    let profiles = rows::rows(include_str!("../reference/section/fe_profiles.csv"));
    let near_ends = cases(true).filter(|(case, _)| case["case"] != "A5").flat_map(|(case, _)| {
        let of_case = profiles.iter().filter(move |row| row["case"] == case["case"]);
        of_case.map(move |row| from_end(case, number(row, "z_from_shoulder_mm")))
    });
    assert_eq!(near_ends.filter(|distance| (2.001..=3.0).contains(distance)).count(), 40);
}

#[test]
fn pressure_on_the_finest_reference_mesh() {
    assert_eq!(prove("Seats on the finest mesh").len(), 5 * 5);
}

#[test]
fn pressure_of_the_second_check() {
    assert_eq!(prove("Seats by a second program").len(), 6);
}
