//! Limits of size, bearing rings and inch fits: the same to the nanometre.

use super::fits_rows::{Row, class, mm, opt_um, rows, um};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::fit::*;
use seatwise::quantity::{Deviations, Nanometres, Ratio};
use seatwise::stock::dimensions::{Designation, SINGLE_ROW_FILL, SINGLE_ROW_FILL_SPREAD, estimated_mass};
use seatwise::stock::retaining_rings::{RingPlace, ring};
use uom::si::{mass::kilogram, ratio::ratio};

pub const EXACT: &str = "none: both are the same whole number of nanometres";

pub const SETS: &[Set] = &[
    Set { family: "Fits", title: "Limits of size, ISO 286-1", allowed: EXACT, checks: limits },
    Set { family: "Fits", title: "Standard tolerances, ISO 286-1", allowed: EXACT, checks: grades },
    Set { family: "Fits", title: "Bearing rings, ISO 492", allowed: EXACT, checks: bearing_rings },
    Set { family: "Fits", title: "Inch fits, ANSI B4.1", allowed: EXACT, checks: inch_fits },
    Set {
        family: "Fits",
        title: "Masses of bearings",
        allowed: "6 %, the spread that the estimate states for itself",
        checks: masses,
    },
    Set { family: "Fits", title: "Retaining rings, DIN 472", allowed: EXACT, checks: retaining_rings },
];

/// Just above the lower edge of a band, in its middle, and exactly on its upper edge.
pub fn sizes_of(row: &Row) -> [Nanometres; 3] {
    let (over, to) = (mm(row.number("over_mm")), mm(row.number("up_to_incl_mm")));
    [over + Nanometres(1), Nanometres((over.0 + to.0) / 2), to]
}

pub fn band(row: &Row) -> String {
    format!("{} to {} mm", row.text("over_mm"), row.text("up_to_incl_mm"))
}

pub fn exact(sheet: &mut Sheet, what: &str, expected: Nanometres, computed: Nanometres) {
    sheet.within((what, "µm"), [expected.um(), computed.um()], 0.0);
}

fn limits() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/limits_spotcheck.csv");
    for row in rows("limits_spotcheck.csv") {
        let name = row.text("tolerance_class");
        sheet.row(format!("{name}, {}", band(&row)));
        sheet.source(row.text("source"), row.text("status"));
        for nominal in sizes_of(&row) {
            let got = limits_of_size(nominal, class(name)).unwrap().deviations;
            for (what, computed, column) in [("upper", got.upper, "upper_um"), ("lower", got.lower, "lower_um")] {
                if let Some(expected) = opt_um(row.text(column)) {
                    exact(&mut sheet, &format!("{what} at {} mm", nominal.mm()), expected, computed);
                }
            }
        }
    }
    sheet.done()
}

/// IT14 to IT18 are not given for sizes up to 1 mm.
pub fn coarse_and_tiny(grade: &str, nominal: Nanometres) -> bool {
    nominal <= mm(1.0) && grade.len() == 2 && grade >= "14"
}

fn grades() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/it_grades.csv");
    for row in rows("it_grades.csv") {
        let grade = row.text("grade").trim_start_matches("IT");
        sheet.row(format!("IT{grade}, {}", band(&row)));
        sheet.source(row.text("source"), row.text("status"));
        for nominal in sizes_of(&row).into_iter().filter(|nominal| !coarse_and_tiny(grade, *nominal)) {
            for letter in ["H", "h", "JS", "js"] {
                let width = limits_of_size(nominal, class(&format!("{letter}{grade}"))).unwrap().width();
                exact(
                    &mut sheet,
                    &format!("{letter}{grade} at {} mm", nominal.mm()),
                    um(row.number("value_um")),
                    width,
                );
            }
        }
    }
    sheet.done()
}

fn bearing_rings() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/bearing_rings.csv");
    for row in rows("bearing_rings.csv") {
        let ring_class = RingClass::parse(row.text("class")).unwrap();
        let (quantity, ring) = (row.text("quantity"), row.text("ring"));
        sheet.row(format!("{}, {ring} ring, {quantity}, {}", row.text("class"), band(&row)));
        sheet.source(row.text("source"), row.text("status"));
        for nominal in sizes_of(&row) {
            let got = match quantity {
                "mean bore deviation" => ring_limits(nominal, ring_class, Ring::Inner),
                "mean outside diameter deviation" => ring_limits(nominal, ring_class, Ring::Outer),
                _ => ring_width_limits(nominal, mm(16.0), ring_class),
            };
            let Deviations { lower, upper } = got.unwrap().deviations;
            exact(&mut sheet, &format!("upper at {} mm", nominal.mm()), um(row.number("upper_um")), upper);
            exact(&mut sheet, &format!("lower at {} mm", nominal.mm()), um(row.number("lower_um")), lower);
        }
    }
    sheet.done()
}

/// ANSI B4.1 gives hole, shaft and interference in thousandths of an inch: 25.4 µm, exact in nanometres.
fn inch_fits() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/ansi_b41.csv");
    for row in rows("ansi_b41.csv") {
        sheet.row(format!("{}, {} to {} in", row.text("class"), row.text("over_in"), row.text("to_in")));
        sheet.source(row.text("source"), row.text("status"));
        let thou = |column| Nanometres::from_um(row.number(column) * 25.4);
        let part = |low, high| Limits::stated(mm(25.4), Deviations { lower: thou(low), upper: thou(high) });
        let band = clearance_band(&part("hole_low_thou", "hole_high_thou"), &part("shaft_low_thou", "shaft_high_thou"));
        exact(&mut sheet, "most interference", thou("max_interference_thou"), -band.tightest);
        exact(&mut sheet, "least interference", thou("min_interference_thou"), -band.loosest);
    }
    sheet.done()
}

fn retaining_rings() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/retaining_rings.csv");
    for row in rows("retaining_rings.csv") {
        let bore = mm(row.number("bore_d1_mm"));
        let found = ring(RingPlace::Bore, bore).unwrap().unwrap();
        sheet.row(format!("bore {} mm", bore.mm()));
        sheet.source(row.text("source"), row.text("status"));
        for (what, computed, column) in [
            ("thickness", found.thickness, "thickness_s_mm"),
            ("groove", found.groove, "groove_d2_mm"),
            ("width of the groove", found.width, "groove_width_m_mm"),
        ] {
            sheet.within((what, "mm"), [mm(row.number(column)).mm(), computed.mm()], 0.0);
        }
    }
    sheet.done()
}

/// The mass of a bearing by the space that it fills, beside the figures of makers.
fn masses() -> Vec<Check> {
    let mut sheet = Sheet::of("fits/bearing_masses.csv");
    for row in rows("bearing_masses.csv") {
        let bearing = Designation::parse(row.text("designation")).unwrap();
        let [bore, outside, width] = [bearing.bore, bearing.outside, bearing.width].map(Nanometres::length);
        let mass = estimated_mass(bore, outside, width, Ratio::new::<ratio>(SINGLE_ROW_FILL)).unwrap();
        let known = row.number("mass_kg");
        sheet.row(row.text("designation"));
        sheet.within(("mass", "kg"), [known, mass.get::<kilogram>()], SINGLE_ROW_FILL_SPREAD * known);
    }
    sheet.done()
}
