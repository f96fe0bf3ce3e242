//! Internal clearance of bearings, and what a shaft seal asks of bore and shaft.

use super::fits::exact;
use super::fits_rows::{mm, um};
use super::mechanics_units;
use super::reference_rows::{Row, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::stock::dimensions::ClearanceGroup;
use seatwise::stock::iso5753::{BearingFamily, ClearanceRow, tables};
use seatwise::stock::seal_seats::{Asked, SealRow, asked};

pub const SETS: &[Set] = &[
    Set {
        family: "Fits",
        title: "Internal clearance, ISO 5753-1",
        allowed: "none. Figures in which the texts differ, by the file's column `differs`, are left out",
        checks: internal_clearance,
    },
    Set {
        family: "Fits",
        title: "Shaft seals: allowances and surfaces",
        allowed: "none: the same figures",
        checks: seal_figures,
    },
    Set {
        family: "Fits",
        title: "Shaft seals: straight length of the bore",
        allowed: "1e-9 mm behind the seal; 0.101 mm of its length, one row of which is printed 0.1 mm above its own rule",
        checks: seal_lengths,
    },
];

pub fn family(row: &Row) -> BearingFamily {
    if row["family"] == "roller" { BearingFamily::CylindricalRoller } else { BearingFamily::DeepGrooveBall }
}

pub fn group(name: &str) -> ClearanceGroup {
    ClearanceGroup::ALL.into_iter().find(|group| format!("{group:?}") == name).unwrap()
}

/// What the program has for both ends of the band of a row, and nothing of the next.
pub fn clearances(row: &Row) -> [(f64, &'static ClearanceRow); 2] {
    [number(row, "over_mm") + 0.001, number(row, "to_mm")].map(|bore| {
        let found = tables().unwrap().clearance(family(row), group(&row["group"]), mm(bore)).unwrap();
        (bore, found)
    })
}

fn internal_clearance() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/internal_clearance.csv");
    for row in read("fits/internal_clearance.csv").iter().filter(|row| row["differs"].is_empty()) {
        sheet.row(format!("{}, {}, {} to {} mm", row["family"], row["group"], row["over_mm"], row["to_mm"]));
        sheet.source(&row["source"], &row["status"]);
        for (bore, found) in clearances(row) {
            exact(&mut sheet, &format!("least at {bore} mm"), um(number(row, "min_um")), found.least);
            exact(&mut sheet, &format!("most at {bore} mm"), um(number(row, "max_um")), found.most);
        }
    }
    sheet.done()
}

/// What a row of the reference is of: the quantity and the case, or nothing where the program does not use it.
pub fn asked_of(what: &str) -> Option<(Asked, &'static str)> {
    Some(match what {
        "seal OD above bore nominal, metal case" => (Asked::OutsideAllowance, "metal"),
        "seal OD above bore nominal, rubber covered" => (Asked::OutsideAllowance, "rubber"),
        "housing bore roughness Ra, rubber covered" => (Asked::BoreRa, "rubber"),
        "housing bore roughness Rz, rubber covered" => (Asked::BoreRz, "rubber"),
        "housing bore roughness Ra, metal case" => (Asked::BoreRa, "metal"),
        "housing bore roughness Rz, metal case" => (Asked::BoreRz, "metal"),
        "shaft lead-in chamfer, shaft diameter minus chamfer diameter" => (Asked::ShaftLeadIn, ""),
        "shaft roughness Ra" => (Asked::ShaftRa, ""),
        "shaft hardness min, general" => (Asked::ShaftHardness, ""),
        "shaft hardness min, surface speed above 4 m/s or dirt" => (Asked::ShaftHardnessFast, ""),
        _ => return None,
    })
}

fn cell(row: &Row, column: &str) -> Option<f64> {
    (!row[column].is_empty()).then(|| number(row, column))
}

/// What the program has just inside either end of the band of a row; a row without a band is for any size.
pub fn seal_rows(row: &Row) -> Vec<(f64, &'static SealRow)> {
    let Some((quantity, case)) = asked_of(&row["quantity"]) else { return Vec::new() };
    let (over, to) = (cell(row, "over_mm"), cell(row, "up_to_incl_mm"));
    let find = |size: f64| (size, asked(quantity, case, mechanics_units::mm(size)).unwrap().unwrap());
    vec![find(over.map_or(50.0, |over| over + 0.001)), find(to.unwrap_or(50.0))]
}

fn seal_figures() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/seal_housing.csv");
    for row in read("fits/seal_housing.csv") {
        let unit = if row["unit"] == "mm" {
            "mm"
        } else if row["unit"] == "um" {
            "µm"
        } else {
            "HRC"
        };
        sheet.row(format!("{} {} {}", row["quantity"], row["over_mm"], row["up_to_incl_mm"]).trim_end().to_owned());
        sheet.source(&row["source"], &row["status"]);
        for (size, found) in seal_rows(&row) {
            for (what, expected, computed) in
                [("least", cell(&row, "min_or_value"), found.low), ("most", cell(&row, "max"), found.high)]
            {
                assert_eq!(expected.is_some(), computed.is_some(), "{what} at {size} mm: {row:?}");
                if let Some(values) = expected.zip(computed) {
                    sheet.within((&format!("{what} at {size} mm"), unit), values.into(), 0.0);
                }
            }
        }
    }
    sheet.done()
}

fn seal_lengths() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/seal_housing.csv");
    let figure = |quantity| asked(quantity, "", mechanics_units::mm(7.0)).unwrap().unwrap().low.unwrap();
    let (share, above) = (figure(Asked::SeatShare), figure(Asked::SeatAbove));
    for row in read("fits/seal_housing.csv") {
        let Some(width) = row["quantity"].strip_prefix("housing depth min for seal width b=") else { continue };
        let width: f64 = width.split(' ').next().unwrap().parse().unwrap();
        sheet.row(format!("width {width} mm"));
        sheet.source(&row["source"], &row["status"]);
        // 0.85 x 12 is 10.2 where the page prints 10.3.
        sheet.within(("length", "mm"), [number(&row, "min_or_value"), share * width], 0.101);
        sheet.within(("with what stands behind", "mm"), [number(&row, "max"), width + above], 1e-9);
    }
    sheet.done()
}
