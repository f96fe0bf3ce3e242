//! Sizes and stress areas of threads.

use super::reference_rows::{Row, number, read};
use super::screws::half_a_digit;
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::quantity::Length;
use seatwise::stock::threads::Thread;
use uom::si::area::{square_inch, square_millimeter};
use uom::si::length::{inch, millimeter};

pub const SETS: &[Set] = &[
    Set {
        family: "Pushing home",
        title: "Printed sizes of threads",
        allowed: "half of 0.001 mm or 0.0001 in; a whole 0.0001 in of the root of unified threads, which comes from rounded \
                  heights. Figures that are misprinted, by the file's column `misprint`, are left out",
        checks: sizes,
    },
    Set {
        family: "Pushing home",
        title: "Printed stress areas of threads",
        allowed: "half a unit of the last digit, or of the third where zeros are left out; of unified threads also what \
                  rounding the pitch diameter to 0.0001 in makes of it",
        checks: areas,
    },
];

/// A printed diameter of a thread.
pub struct PrintedSize {
    pub column: &'static str,
    /// As computed, in the unit of the row.
    pub computed: f64,
    /// What the printed figure may be off.
    pub allowed: f64,
    /// Whether the file says that the figure is wrong.
    pub misprint: bool,
}

/// The diameters that a row prints.
pub fn printed_sizes(row: &Row) -> Vec<PrintedSize> {
    let thread = Thread::parse(&row["designation"]).unwrap();
    let metric = row["unit"] == "mm";
    let size = |length: Length| if metric { length.get::<millimeter>() } else { length.get::<inch>() };
    let half = if metric { 0.5e-3 } else { 0.5e-4 };
    [
        ("d2", thread.pitch_diameter(), 1.0),
        ("d3", thread.root_diameter(), if metric { 1.0 } else { 2.0 }),
        ("d1", thread.minor_diameter(), 1.0),
    ]
    .into_iter()
    .filter(|(column, ..)| !row[*column].is_empty())
    .map(|(column, length, share)| PrintedSize {
        column,
        computed: size(length),
        allowed: 1.01 * half * share,
        misprint: row["misprint"].starts_with(column),
    })
    .collect()
}

fn unit(row: &Row) -> [&'static str; 2] {
    if row["unit"] == "mm" { ["mm", "mm²"] } else { ["in", "in²"] }
}

fn sizes() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/thread_sizes.csv");
    for row in read("mechanics/thread_sizes.csv") {
        sheet.row(row["designation"].clone());
        sheet.source(&row["source"], &row["status"]);
        for printed in printed_sizes(&row).into_iter().filter(|printed| !printed.misprint) {
            let values = [number(&row, printed.column), printed.computed];
            sheet.within((printed.column, unit(&row)[0]), values, printed.allowed);
        }
    }
    sheet.done()
}

fn areas() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/thread_sizes.csv");
    for row in read("mechanics/thread_sizes.csv").iter().filter(|row| !row["area"].is_empty()) {
        let (thread, printed) = (Thread::parse(&row["designation"]).unwrap(), number(row, "area"));
        // The tables work from pitch diameters rounded to 0.0001 in: π/2 d times half of that, besides the last digit.
        let of_pitch_diameter = std::f64::consts::FRAC_PI_2 * thread.stress_diameter().get::<inch>() * 0.5e-4;
        // Some areas are printed without their last zeros, but all have three digits or more.
        let third_digit = 0.5 * 10_f64.powf(printed.log10().floor() - 2.0);
        let allowed = half_a_digit(&row["area"]).min(third_digit) + of_pitch_diameter;
        sheet.row(row["designation"].clone());
        sheet.source(&row["source"], &row["status"]);
        sheet.within(("area", unit(row)[1]), [printed, thread.stress_area().get::<square_inch>()], allowed);
    }
    for row in read("mechanics/worked_examples.csv").iter().filter(|row| row["quantity"] == "A_s") {
        let area = Thread::parse(&row["example"]).unwrap().stress_area().get::<square_millimeter>();
        sheet.row(format!("{}, {}", row["id"], row["example"]));
        sheet.source(&row["source"], &row["status"]);
        sheet.within(("area", "mm²"), [number(row, "printed"), area], half_a_digit(&row["printed"]) * 1.000_001);
        let recomputed = number(row, "recomputed");
        sheet.source("the same example, recomputed apart", "computed apart");
        sheet.within(("recomputed", "mm²"), [recomputed, area], 3e-6 * recomputed);
    }
    sheet.done()
}
