//! The back wall as a plate.

use super::mechanics_units::{in_mm, in_mpa, mm, mpa};
use super::reference_rows::{Row, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::mechanics::*;
use seatwise::quantity::Force;
use uom::si::force::newton;

pub const SETS: &[Set] = &[
    Set {
        family: "Pushing home",
        title: "Back wall, plate theory",
        allowed: "1e-6 of the value: the rows have seven digits; 1e-9 MPa where a free edge has no stress",
        checks: plates,
    },
    Set {
        family: "Pushing home",
        title: "Back wall, finite elements",
        allowed: "stress 5 %; deflection 15 % with a fixed edge, 1 % with a simple one: the plate's own shortfall, as the \
                  documentation of `Wall::under` says. The stress at the hole of a fixed wall is told there to be a third off \
                  and is not compared here",
        checks: plates_by_elements,
    },
];

/// Wall and zone of a row that gives radii.
fn of_row(row: &Row) -> (Wall, LoadZone, Edge) {
    let get = |column: &str| number(row, column);
    let wall = Wall {
        edge: mm(2.0 * get("a_mm")),
        hole: Some(mm(2.0 * get("b_mm"))),
        thickness: mm(get("t_mm")),
        elastic_modulus: mpa(get("E_MPa")),
        poisson: get("nu"),
    };
    let zone = LoadZone { inside: mm(2.0 * get("r0_mm")), outside: mm(2.0 * get("r1_mm")) };
    (wall, zone, if row["edge"] == "fixed" { Edge::Fixed } else { Edge::Simple })
}

/// The pushed wall of a row.
pub fn state(row: &Row) -> WallState {
    let (wall, zone, edge) = of_row(row);
    wall.under(Force::new::<newton>(number(row, "F_N")), &zone, edge).unwrap()
}

fn plates() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/wall_plate.csv");
    for row in read("mechanics/wall_plate.csv") {
        let got = state(&row);
        sheet.row(row["case"].clone());
        let mut same = |column: &str, computed: f64| sheet.column(&row, column, computed, [1e-6, 0.0]);
        same("w_bend_mm", in_mm(got.bending));
        same("w_shear_mm", in_mm(got.shear));
        same("w_theory_total_mm", in_mm(got.deflection()));
        same("st_hole_edge_theory_MPa", in_mpa(got.at_hole.hoop));
        same("mean_shear_outer_MPa", in_mpa(got.edge_shear));
        let root = in_mpa(got.at_edge.radial);
        if row["edge"] == "fixed" {
            same("sr_outer_edge_theory_MPa", root);
        } else {
            sheet.within(("radial stress at the edge", "MPa"), [0.0, root], 1e-9);
        }
        sheet.within(("radial stress at the hole", "MPa"), [0.0, in_mpa(got.at_hole.radial)], 1e-9);
    }
    sheet.done()
}

fn plates_by_elements() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/wall_plate.csv");
    for row in read("mechanics/wall_plate.csv") {
        let got = state(&row);
        sheet.row(row["case"].clone());
        let deflection = in_mm(got.deflection());
        if row["edge"] == "fixed" {
            sheet.column(&row, "sr_outer_edge_fe_linearised_MPa", in_mpa(got.at_edge.radial), [0.05, 0.0]);
            sheet.column(&row, "w_fe_mm", deflection, [0.15, 0.0]);
        } else {
            sheet.column(&row, "st_hole_edge_fe_linearised_MPa", in_mpa(got.at_hole.hoop), [0.05, 0.0]);
            sheet.column(&row, "w_fe_mm", deflection, [0.01, 0.0]);
        }
    }
    sheet.done()
}
