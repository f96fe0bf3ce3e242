//! The section solver against finite elements of other programs.

use super::section_rows::{self as rows, Row, in_mm, in_mpa, number};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::section::{Section, State, Support, WallState};
use std::sync::LazyLock;

pub const SETS: &[Set] = &[
    Set {
        family: "Section of a seat",
        title: "Seats, pressed",
        allowed: "0.5 % of pressure, force and sizes; closing at the raceway 1 %; ends of the seat with friction 2 %",
        checks: closed_seats,
    },
    Set {
        family: "Section of a seat",
        title: "Seats, open",
        allowed: "clearance 0.1 µm, bore 0.01 µm",
        checks: open_seats,
    },
    Set {
        family: "Section of a seat",
        title: "Pressure and sizes along the seat",
        allowed: "pressure 2 %, and 3 % from 2 to 3 mm off the ends, where the rows' own mesh is 3 % below a finer one; \
                  diameters 0.5 %. Nearer to the ends nothing is compared",
        checks: profiles,
    },
    Set {
        family: "Section of a seat",
        title: "Seats on the finest mesh",
        allowed: "mean pressure and closing 0.1 %, pressure at a place 1 %, and 5 % at 1 mm from a chamfer's end",
        checks: finest_mesh,
    },
    Set { family: "Section of a seat", title: "Seats by a second program", allowed: "0.1 %", checks: second_program },
    Set {
        family: "Section of a seat",
        title: "Back walls, pushed",
        allowed: "deflection and bending 3 %; membrane stress, a small difference of large ones, 1 % where the front \
                  rests and 6 % where the back does",
        checks: pushed_walls,
    },
];

/// The rows, each solved once.
pub static SOLVED: LazyLock<Vec<(Row, State)>> = LazyLock::new(|| {
    let solved = |row: Row| {
        let state = rows::model(&rows::section(&row)).solve(&rows::loads(&row)).unwrap();
        (row, state)
    };
    rows::rows(include_str!("../reference/section/fe_cases.csv")).into_iter().map(solved).collect()
});

pub fn cases(closed: bool) -> impl Iterator<Item = &'static (Row, State)> {
    SOLVED.iter().filter(move |(row, _)| (number(row, "p_mean_MPa") > 0.0) == closed)
}

fn closed_seats() -> Vec<Check> {
    let mut sheet = Sheet::of("section/fe_cases.csv");
    for (row, state) in cases(true) {
        let (seat, bore) = (&state.contacts[0], state.parts[0].inside.as_ref().unwrap());
        sheet.row(row["case"].clone());
        let mut near = |column: &str, computed: f64, share: f64| sheet.column(row, column, computed, [share, 0.0]);
        near("p_mean_MPa", in_mpa(seat.mean_pressure), 0.005);
        near("normal_force_N", seat.normal_force.value, 0.005);
        near("contact_width_mm", in_mm(seat.length), 1e-9);
        near("dbore_mean_mm", in_mm(bore.mean), 0.005);
        near("dbore_mid_mm", in_mm(bore.at_raceway), 0.01);
        near("dOD_housing_mid_mm", in_mm(state.parts[1].outside.at(rows::mm(8.0))), 0.005);
        // A5 has friction, which holds the ends back.
        let at_ends = if row["case"] == "A5" { 0.02 } else { 0.005 };
        near("dbore_back_mm", in_mm(bore.along[0].change), at_ends);
        near("dbore_front_mm", in_mm(bore.along.last().unwrap().change), at_ends);
    }
    sheet.done()
}

fn open_seats() -> Vec<Check> {
    let mut sheet = Sheet::of("section/fe_cases.csv");
    for (row, state) in cases(false) {
        sheet.row(row["case"].clone());
        let seat = &state.contacts[0];
        for (what, clearance) in [("mean clearance", seat.mean_clearance), ("least clearance", seat.least_clearance)] {
            sheet.within((what, "mm"), [number(row, "clearance_dia_mm"), in_mm(clearance)], 1e-4);
        }
        sheet.column(row, "dbore_mean_mm", in_mm(state.parts[0].inside.as_ref().unwrap().mean), [0.0, 1e-5]);
    }
    sheet.done()
}

/// Distance of a place from the nearer end of the contact, mm.
pub fn from_end(case: &Row, z: f64) -> f64 {
    let chamfer = number(case, "chamfer_mm");
    (z - chamfer).min(16.0 - chamfer - z)
}

/// Further than 2 mm from both ends of the contact. The rows are of the reference's second mesh, which at 2 mm is 3 %
/// below its fourth (`fe_convergence.csv`, B3 and B4), so that 3 % is asked for up to 3 mm and 2 % beyond. The fourth mesh
/// is held to 1 %, at 2 mm too, in a set of its own.
fn profiles() -> Vec<Check> {
    let mut sheet = Sheet::of("section/fe_profiles.csv");
    let profiles = rows::rows(include_str!("../reference/section/fe_profiles.csv"));
    // A5 has friction.
    for (case, state) in cases(true).filter(|(case, _)| case["case"] != "A5") {
        for row in profiles.iter().filter(|row| row["case"] == case["case"]) {
            let z = number(row, "z_from_shoulder_mm");
            if from_end(case, z) < 2.001 {
                continue;
            }
            let share = if from_end(case, z) > 3.0 { 0.02 } else { 0.03 };
            sheet.row(format!("{}, {z} mm from the shoulder", row["case"]));
            let place = rows::mm(z);
            sheet.column(row, "p_MPa", in_mpa(state.contacts[0].pressure_at(place).unwrap()), [share, 0.0]);
            sheet.column(row, "d_ring_OD_mm", in_mm(state.parts[0].outside.at(place)), [0.005, 0.0]);
            let housing = state.parts[1].inside.as_ref().unwrap();
            sheet.column(row, "d_housing_bore_mm", in_mm(housing.at(place)), [0.005, 0.0]);
        }
    }
    sheet.done()
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
fn finest_mesh() -> Vec<Check> {
    let mut sheet = Sheet::of("section/fe_convergence.csv");
    for row in rows::rows(include_str!("../reference/section/fe_convergence.csv")) {
        let Some(section) = named(&row["case"]).filter(|_| row["mesh_level"] == "4") else { continue };
        let state = rows::model(&section).solve(&rows::pressed(&[0.03], &[0.0; 2], 0.0)).unwrap();
        sheet.row(row["case"].clone());
        sheet.column(&row, "p_mean_MPa", in_mpa(state.contacts[0].mean_pressure), [0.001, 0.0]);
        let bore = state.parts[0].inside.as_ref().unwrap();
        sheet.column(&row, "dbore_mean_mm", in_mm(bore.mean), [0.001, 0.0]);
        for (z, column) in [(2.0, "p_at_2mm"), (8.0, "p_at_8mm"), (14.0, "p_at_14mm")] {
            let share = if row["case"] == "A8" && column != "p_at_8mm" { 0.05 } else { 0.01 };
            let pressure = in_mpa(state.contacts[0].pressure_at(rows::mm(z)).unwrap());
            let expected = number(&row, column);
            sheet.within((column, "MPa"), [expected, pressure], share * expected);
        }
    }
    sheet.done()
}

/// A second program, without the first one's bias.
fn second_program() -> Vec<Check> {
    let mut sheet = Sheet::of("section/second_check.csv");
    for row in rows::rows(include_str!("../reference/section/second_check.csv")) {
        let thickness = number(&row, "back_wall_mm");
        let back = if thickness > 0.0 { rows::wall(thickness, number(&row, "hole_mm")) } else { rows::open() };
        let housing = rows::housing(number(&row, "Do_mm"), number(&row, "front_mm"), back);
        let model = rows::model(&rows::plain(rows::ring(0.0, None), housing));
        let state = model.solve(&rows::pressed(&[0.03], &[0.0; 2], 0.0)).unwrap();
        sheet.row(row["case"].clone());
        sheet.column(&row, "p_mean_MPa", in_mpa(state.contacts[0].mean_pressure), [0.001, 0.0]);
    }
    sheet.done()
}

/// Inside diameter of what the back face of the reference rests on. Their notes do not give it: they hold all nodes
/// outside some radius, and this one brings all five rows to 2 %, of both outsides and all thicknesses.
pub const OPENING: f64 = 68.8;

fn pushed(row: &Row) -> WallState {
    let support =
        if row["support"] == "front" { Support::Front } else { Support::Back { opening: Some(rows::mm(OPENING)) } };
    let seat = rows::housing(number(row, "Do_mm"), 0.0, rows::wall(number(row, "t_mm"), 40.0));
    let section = Section { support, ..rows::plain(rows::ring(0.0, None), seat) };
    let loads = rows::pressed(&[-0.1], &[0.0; 2], number(row, "F_N"));
    rows::model(&section).solve(&loads).unwrap().wall.unwrap()
}

/// The pushed walls, each solved once.
pub static PUSHED: LazyLock<Vec<(Row, WallState)>> = LazyLock::new(|| {
    let solved = |row: Row| (row.clone(), pushed(&row));
    rows::rows(include_str!("../reference/section/fe_plate_housing.csv")).into_iter().map(solved).collect()
});

fn pushed_walls() -> Vec<Check> {
    let mut sheet = Sheet::of("section/fe_plate_housing.csv");
    for (row, wall) in PUSHED.iter() {
        sheet.row(row["case"].clone());
        sheet.column(row, "w_hole_edge_abs_mm", in_mm(wall.edge_deflection), [0.03, 0.0]);
        sheet.column(row, "w_hole_edge_rel_outer_mm", in_mm(wall.edge_deflection_from_rim), [0.03, 0.0]);
        // Ours is positive where it pulls on the side of the ring.
        sheet.column(row, "st_r20_bending_MPa", -in_mpa(wall.edge_bending), [0.03, 0.0]);
        // A small difference of large numbers where the support is not quite the same.
        let share = if row["support"] == "front" { 0.01 } else { 0.06 };
        sheet.column(row, "st_r20_membrane_MPa", in_mpa(wall.edge_membrane), [share, 0.0]);
    }
    sheet.done()
}
