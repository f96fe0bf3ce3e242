//! Fundamental deviations of ISO 286-1 in every grade that a cell serves.

use super::fits::{EXACT, band, exact, sizes_of};
use super::fits_rows::{Row, class, mm, rows, um};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::fit::*;
use seatwise::quantity::Nanometres;

pub const SETS: &[Set] = &[
    Set { family: "Fits", title: "Fundamental deviations of shafts", allowed: EXACT, checks: shafts },
    Set { family: "Fits", title: "Fundamental deviations of holes", allowed: EXACT, checks: holes },
    Set { family: "Fits", title: "Holes P to ZC up to IT7", allowed: EXACT, checks: with_delta },
];

fn limits(nominal: Nanometres, name: &str) -> Result<Limits, FitError> {
    limits_of_size(nominal, class(name))
}

/// The grades to try for the `grades` cell of a reference row.
fn grades_of(cell: &str) -> &'static [&'static str] {
    match cell {
        "all" | "all listed" | "IT4..IT7 and others" => &["5", "6", "7", "8", "9", "11", "13"],
        "j5,j6" => &["5", "6"],
        "j7" | "IT7" => &["7"],
        "j8" | "IT8" => &["8"],
        "IT6" => &["6"],
        "IT4..IT7" => &["4", "5", "6", "7"],
        "up to IT3 and above IT7" => &["1", "3", "8", "12"],
        "up to IT8" => &["3", "4", "5", "6", "7", "8"],
        "above IT8" => &["9", "10", "13"],
        "above IT7" => &["8", "9", "10", "13"],
        other => panic!("no grades are known for {other}"),
    }
}

/// One row of a table of fundamental deviations in every grade that it serves.
fn add(sheet: &mut Sheet, row: &Row, letter: &str) {
    sheet.row(format!("{}, {}, {}", row.text("letter"), row.text("grades"), band(row)));
    sheet.source(row.text("source"), row.text("status"));
    for grade in grades_of(row.text("grades")) {
        for nominal in sizes_of(row) {
            let excepted = row.text("note").starts_with("not") && nominal <= mm(1.0);
            let got = limits(nominal, &format!("{letter}{grade}"));
            assert_eq!(got.is_err(), excepted, "{letter}{grade} at {} mm: {row:?}", nominal.mm());
            let Ok(got) = got else { continue };
            let (lower, upper) = (got.deviations.lower, got.deviations.upper);
            let (expected, computed) = match row.text("deviation") {
                "EI" | "ei" => (um(row.number("value_um")), lower),
                "es" => (um(row.number("value_um")), upper),
                "ES" => (es_of(row, grade), upper),
                // Both limits are alike, and the cell gives no number.
                _ => {
                    assert_eq!(-lower, upper, "{row:?}");
                    continue;
                }
            };
            exact(
                sheet,
                &format!("{} of {letter}{grade} at {} mm", row.text("deviation"), nominal.mm()),
                expected,
                computed,
            );
        }
    }
}

/// ES of a hole from the printed cell: plus IT(n) - IT(n-1) where the cell says Delta, and the printed exception of M6.
fn es_of(row: &Row, grade: &str) -> Nanometres {
    let cell = row.text("value_um");
    let Some(figure) = cell.strip_suffix("+Delta") else { return um(row.number("value_um")) };
    if row.text("letter") == "M" && grade == "6" && row.text("over_mm") == "250" {
        return um(-9.0);
    }
    um(figure.parse().unwrap()) + delta(row, grade)
}

fn delta(row: &Row, grade: &str) -> Nanometres {
    let width = |grade: i32| limits(mm(row.number("up_to_incl_mm")), &format!("H{grade}")).unwrap().width();
    let grade: i32 = grade.parse().unwrap();
    width(grade) - width(grade - 1)
}

fn shafts() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/fundamental_deviations_shafts.csv");
    for row in rows("fundamental_deviations_shafts.csv") {
        let letter = row.text("letter");
        add(&mut sheet, &row, if letter.starts_with("j5") { "j" } else { letter.trim_end_matches(['7', '8']) });
    }
    sheet.done()
}

fn holes() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/fundamental_deviations_holes.csv");
    let is_rule = |row: &Row| ["Delta", "P..ZC"].contains(&row.text("letter"));
    for row in rows("fundamental_deviations_holes.csv").iter().filter(|row| !is_rule(row)) {
        add(&mut sheet, row, row.text("letter"));
    }
    sheet.done()
}

/// P to ZC up to IT7 take the figure of the coarser grades plus the printed Delta of their grade and band.
fn with_delta() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/fundamental_deviations_holes.csv");
    let table = rows("fundamental_deviations_holes.csv");
    let deltas: Vec<&Row> = table.iter().filter(|row| row.text("letter") == "Delta").collect();
    assert_eq!(deltas.len(), 78);
    for row in table.iter().filter(|row| row.text("grades") == "above IT7") {
        let inside = |delta: &&&Row| {
            delta.number("over_mm") <= row.number("over_mm")
                && row.number("up_to_incl_mm") <= delta.number("up_to_incl_mm")
        };
        sheet.row(format!("{}, {}", row.text("letter"), band(row)));
        sheet.source(row.text("source"), row.text("status"));
        for delta in deltas.iter().filter(inside).filter(|delta| delta.text("grades") != "IT8") {
            let name = format!("{}{}", row.text("letter"), delta.text("grades").trim_start_matches("IT"));
            let upper = limits(mm(row.number("up_to_incl_mm")), &name).unwrap().deviations.upper;
            let expected = um(row.number("value_um")) + um(delta.number("value_um"));
            exact(&mut sheet, &format!("ES of {name}"), expected, upper);
        }
    }
    sheet.done()
}
