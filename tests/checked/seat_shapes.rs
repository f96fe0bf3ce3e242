//! What the plane formula misses by the shape of a seat: the range that is stated for it, beside finite elements.
//!
//! A range has no single value to compare. Its middle stands as computed, and half its width, with what the elements' mesh adds,
//! is the allowed error.

use super::mechanics_units::{in_mm, in_mpa, joint, mm, ring};
use super::reference_rows::{Row, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::mechanics::*;
use seatwise::stock::seat_shapes::{self, SeatRow};

const RANGE: &str = "the value of the elements lies in the stated range: its middle is shown as computed, half its width, and \
                     0.02 % for the elements' mesh, as allowed";

pub const SETS: &[Set] = &[
    Set { family: "Press fits", title: "Seats by their shape, ranges", allowed: RANGE, checks: seats },
    Set {
        family: "Press fits",
        title: "Seats by their shape, noted errors",
        allowed: "as above, with 0.13 % for what is noted to 0.1 %",
        checks: noted,
    },
];

/// The elements' pressure is 0.029 % low by construction; what is left of that is 0.02 % at most.
pub const BIAS: f64 = 1.000_29;
const MESH: f64 = 2e-4;

pub fn table() -> &'static [SeatRow] {
    seat_shapes::table().unwrap()
}

/// Ring of this bore in an aluminium housing, interference in mm.
pub fn seat(bore: f64, outside: f64, interference: f64) -> Joint {
    joint(ring(bore, 62.0, 208e3, 0.3), ring(62.0, outside, 70e3, 0.33), interference)
}

pub fn shape(wall: f64, hole: f64, front: f64, chamfer: f64) -> SeatShape {
    let back = if wall > 0.0 { Back::Wall { thickness: mm(wall), hole: mm(hole) } } else { Back::Flush };
    SeatShape { back, front: mm(front), chamfer: mm(chamfer) }
}

fn shape_of(row: &Row, chamfer: f64) -> SeatShape {
    let blank_is_zero = |column: &str| if row[column].is_empty() { 0.0 } else { number(row, column) };
    shape(blank_is_zero("back_wall_mm"), blank_is_zero("hole_mm"), number(row, "front_mm"), chamfer)
}

/// Bore of the plain ring that has the pressure of the grooved ring in a through bore, row A7.
fn grooved() -> f64 {
    let (mut low, mut high) = (52.0, 56.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        let pressure = in_mpa(seat(middle, 90.0, 0.03).solve().unwrap().pressure);
        if pressure > 6.4675 * BIAS { low = middle } else { high = middle }
    }
    low
}

/// A value of the elements, and the range that must hold it.
fn range(sheet: &mut Sheet, what: &str, expected: f64, span: Span, slack: f64) {
    let middle = 0.5 * (span.lowest + span.highest);
    sheet.within((what, ""), [expected, middle], 0.5 * (span.highest - span.lowest) + slack);
}

fn seats() -> Vec<Check> {
    let (groove, mut sheet) = (grooved(), Sheet::of("mechanics/seats.csv"));
    for row in read("mechanics/seats.csv") {
        let get = |column: &str| number(&row, column);
        // A7 itself gives the ring that stands for a grooved one.
        if get("p_mean_MPa") <= 0.0 || row["case"] == "A7" {
            continue;
        }
        let growth = 62.0 * (12.5e-6 * (get("T_ring_C") - 20.0) - 23.2e-6 * (get("T_housing_C") - 20.0));
        let bore = if row["groove"] == "1" { groove } else { 52.0 };
        let joint = seat(bore, get("Do_mm"), get("delta_mm") + growth);
        let plane = joint.solve().unwrap();
        let found = seat_factor(&joint, &shape_of(&row, get("chamfer_mm")), table()).unwrap();
        let found = found.with_friction(get("mu")).unwrap();
        sheet.row(row["case"].clone());
        let pressure = BIAS * get("p_mean_MPa") / in_mpa(plane.pressure);
        range(&mut sheet, "pressure over the plane formula's", pressure, found.pressure, MESH);
        let force = in_mpa(plane.pressure) * std::f64::consts::PI * 62.0 * 16.0;
        range(&mut sheet, "force over the plane formula's", BIAS * get("normal_force_N") / force, found.force, MESH);
        let closing = get("dbore_elastic_mm") / in_mm(plane.bore_change().unwrap());
        // A diameter is good to 1e-4 of its own change, of which the thermal part is most in the rows with temperatures.
        let slack = MESH + 1e-4 * (get("dbore_mean_mm") / get("dbore_elastic_mm")).abs();
        range(&mut sheet, "closing over the plane formula's", closing, found.closing, slack);
        if bore < 52.1 && get("chamfer_mm") <= 0.0 && get("mu") <= 0.0 && growth.abs() < 1e-9 {
            let mean = get("dbore_mean_mm");
            let (back, front) = (get("dbore_back_mm") / mean, get("dbore_front_mm") / mean);
            range(&mut sheet, "closing at the shoulder over the mean", back, found.at_shoulder.unwrap(), 1e-3);
            range(&mut sheet, "closing at the front over the mean", front, found.at_front.unwrap(), 1e-3);
        }
    }
    sheet.done()
}

fn noted() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/seats_noted.csv");
    for row in read("mechanics/seats_noted.csv") {
        let joint = seat(52.0, number(&row, "Do_mm"), 0.03);
        let found = seat_factor(&joint, &shape_of(&row, 0.0), table()).unwrap();
        let found = found.with_friction(number(&row, "mu")).unwrap();
        // Noted to 0.1 %: half of that, times the square of the factor, 1.6² at most.
        let factor = |column: &str| 1.0 / (1.0 + number(&row, column) / 100.0);
        sheet.row(row["case"].clone());
        range(&mut sheet, "force over the plane formula's", factor("err_p_pct"), found.force, 1.3e-3);
        range(&mut sheet, "closing over the plane formula's", factor("err_dbore_pct"), found.closing, 1.3e-3);
    }
    sheet.done()
}
