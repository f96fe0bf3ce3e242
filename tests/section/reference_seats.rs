//! Seats against independent finite elements. Their pressure is known to be 0.029 % low.

use crate::rows::{self, Row, in_mm, in_mpa, near, number};
use seatwise::section::{Section, State};
use std::sync::LazyLock;

/// The rows, each solved once for all tests.
static SOLVED: LazyLock<Vec<(Row, State)>> = LazyLock::new(|| {
    let solved = |row: Row| {
        let state = rows::model(&rows::section(&row)).solve(&rows::loads(&row)).unwrap();
        (row, state)
    };
    rows::rows(include_str!("../reference/section/fe_cases.csv")).into_iter().map(solved).collect()
});

fn cases(closed: bool) -> impl Iterator<Item = &'static (Row, State)> {
    SOLVED.iter().filter(move |(row, _)| (number(row, "p_mean_MPa") > 0.0) == closed)
}

#[test]
fn pressure_and_closing_of_closed_seats() {
    let mut closed = 0;
    for (row, state) in cases(true) {
        let (seat, bore) = (&state.contacts[0], state.parts[0].inside.as_ref().unwrap());
        closed += 1;
        near(row, "p_mean_MPa", in_mpa(seat.mean_pressure), 0.005);
        near(row, "normal_force_N", seat.normal_force.value, 0.005);
        near(row, "contact_width_mm", in_mm(seat.length), 1e-9);
        near(row, "dbore_mean_mm", in_mm(bore.mean), 0.005);
        near(row, "dbore_mid_mm", in_mm(bore.at_raceway), 0.01);
        near(row, "dOD_housing_mid_mm", in_mm(state.parts[1].outside.at(rows::mm(8.0))), 0.005);
        // A5 has friction, which holds the ends back.
        let at_ends = if row["case"] == "A5" { 0.02 } else { 0.005 };
        near(row, "dbore_back_mm", in_mm(bore.along[0].change), at_ends);
        near(row, "dbore_front_mm", in_mm(bore.along.last().unwrap().change), at_ends);
        assert!((seat.touching - 1.0).abs() < 1e-12, "{} is open somewhere", row["case"]);
    }
    assert_eq!(closed, 21);
}

#[test]
fn clearance_of_open_seats() {
    let mut open = 0;
    for (row, state) in cases(false) {
        open += 1;
        let expected = number(row, "clearance_dia_mm");
        for clearance in [state.contacts[0].mean_clearance, state.contacts[0].least_clearance] {
            assert!((in_mm(clearance) - expected).abs() < 1e-4, "{}: {}", row["case"], in_mm(clearance));
        }
        assert!(state.contacts[0].normal_force.value.abs() < 1e-12);
        let bore = state.parts[0].inside.as_ref().unwrap();
        assert!((in_mm(bore.mean) - number(row, "dbore_mean_mm")).abs() < 1e-5, "{}", row["case"]);
    }
    assert_eq!(open, 2);
}

/// Further than 2 mm from both ends of the contact. The rows are of the reference's second mesh, which at 2 mm is 3 %
/// below its fourth (`fe_convergence.csv`, B3 and B4), so that 3 % is asked for up to 3 mm and 2 % beyond. The fourth mesh
/// is held to 1 %, at 2 mm too, in a test of its own.
#[test]
fn pressure_along_the_seat() {
    let (mut near_ends, mut inside) = (0, 0);
    let profiles = rows::rows(include_str!("../reference/section/fe_profiles.csv"));
    for (case, state) in cases(true) {
        for row in &profiles {
            let (z, chamfer) = (number(row, "z_from_shoulder_mm"), number(case, "chamfer_mm"));
            let from_end = (z - chamfer).min(16.0 - chamfer - z);
            // A5 has friction.
            let same = row["case"] == case["case"] && case["case"] != "A5";
            if !same || from_end < 2.001 {
                continue;
            }
            let share = if from_end > 3.0 { 0.02 } else { 0.03 };
            *(if from_end > 3.0 { &mut inside } else { &mut near_ends }) += 1;
            near(row, "p_MPa", in_mpa(state.contacts[0].pressure_at(rows::mm(z)).unwrap()), share);
            near(row, "d_ring_OD_mm", in_mm(state.parts[0].outside.at(rows::mm(z))), 0.005);
            let housing = state.parts[1].inside.as_ref().unwrap();
            near(row, "d_housing_bore_mm", in_mm(housing.at(rows::mm(z))), 0.005);
        }
    }
    assert_eq!((near_ends, inside), (40, 92));
}

/// Seats of the study of convergence that are without friction.
fn named(case: &str) -> Option<Section> {
    let (outside, front, back, chamfer, groove) = match case {
        "A3" => (90.0, 0.0, rows::open(), 0.0, None),
        "A8" => (90.0, 0.0, rows::open(), 1.0, Some(rows::groove())),
        "A9" => (90.0, 10.0, rows::open(), 0.0, None),
        "B3" => (80.0, 0.0, rows::wall(5.0, 40.0), 0.0, None),
        "B4" => (80.0, 10.0, rows::wall(5.0, 40.0), 0.0, None),
        _ => return None,
    };
    Some(rows::plain(rows::ring(chamfer, groove), rows::housing(outside, front, back)))
}

/// The finest mesh of the reference, at 2, 8 and 14 mm. In A8 two of these lie 1 mm from the end of a chamfer, where the
/// reference itself still moves.
#[test]
fn pressure_on_the_finest_reference_mesh() {
    let mut compared = 0;
    for row in rows::rows(include_str!("../reference/section/fe_convergence.csv")) {
        let Some(section) = named(&row["case"]).filter(|_| row["mesh_level"] == "4") else { continue };
        let state = rows::model(&section).solve(&rows::pressed(&[0.03], &[0.0; 2], 0.0)).unwrap();
        compared += 1;
        near(&row, "p_mean_MPa", in_mpa(state.contacts[0].mean_pressure), 0.001);
        near(&row, "dbore_mean_mm", in_mm(state.parts[0].inside.as_ref().unwrap().mean), 0.001);
        for (z, column) in [(2.0, "p_at_2mm"), (8.0, "p_at_8mm"), (14.0, "p_at_14mm")] {
            let share = if row["case"] == "A8" && column != "p_at_8mm" { 0.05 } else { 0.01 };
            near(&row, column, in_mpa(state.contacts[0].pressure_at(rows::mm(z)).unwrap()), share);
        }
    }
    assert_eq!(compared, 5);
}

/// A second program, without the first one's bias.
#[test]
fn pressure_of_the_second_check() {
    let rows = rows::rows(include_str!("../reference/section/second_check.csv"));
    assert_eq!(rows.len(), 6);
    for row in &rows {
        let thickness = number(row, "back_wall_mm");
        let back = if thickness > 0.0 { rows::wall(thickness, number(row, "hole_mm")) } else { rows::open() };
        let section =
            rows::plain(rows::ring(0.0, None), rows::housing(number(row, "Do_mm"), number(row, "front_mm"), back));
        let state = rows::model(&section).solve(&rows::pressed(&[0.03], &[0.0; 2], 0.0)).unwrap();
        near(row, "p_mean_MPa", in_mpa(state.contacts[0].mean_pressure), 0.001);
    }
}
