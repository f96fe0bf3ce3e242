//! Equally wide rings in section: plane stress is exact for them, however many, solid or hollow, warm or cold, closed or open.

use super::section_rows::{self as rows, Row, elastic, in_mm, in_mpa, mm, number};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::section::{Back, Chamfers, Housing, Liner, Loads, RingSection, Seat, Section, Shaft, Support};

pub const SETS: &[Set] = &[
    Set {
        family: "Section of a seat",
        title: "Equally wide rings",
        allowed: "0.01 % of the value; 1e-9 mm where it is zero",
        checks: equally_wide,
    },
    Set {
        family: "Section of a seat",
        title: "Largest stresses of equally wide rings",
        allowed: "1 %: stress at a surface is read from inside the elements",
        checks: largest,
    },
];

fn material(row: &Row, k: usize) -> (f64, f64) {
    (number(row, &format!("E{k}_MPa")) / 1e3, number(row, &format!("nu{k}")))
}

fn loads(row: &Row, bodies: usize) -> Loads {
    let strain = |k: usize| number(row, &format!("alpha{k}_perK")) * number(row, &format!("dT{k}_K"));
    let interference: Vec<f64> = (1..bodies).map(|k| number(row, &format!("delta{k}_mm"))).collect();
    rows::pressed(&interference, &(1..=bodies).map(strain).collect::<Vec<f64>>(), 0.0)
}

/// Equally wide rings of a row, the outermost as housing.
fn in_housing(row: &Row, bodies: usize) -> Section {
    let d = |k: usize| number(row, &format!("d{k}_mm"));
    let chamfers = Chamfers { back: mm(0.0), front: mm(0.0) };
    let (bore, outside, width) = (mm(d(0)), mm(d(1)), mm(number(row, "L_mm")));
    let ring = RingSection { bore, outside, width, chamfers, groove: None, material: elastic(material(row, 1)) };
    let back = Back::Open { beyond: mm(0.0) };
    let housing =
        Housing { outside: mm(d(bodies)), step: None, front: mm(0.0), back, material: elastic(material(row, bodies)) };
    let thickness = mm((d(2) - d(1)) / 2.0);
    let liner =
        (bodies == 3).then(|| Liner { thickness, front: mm(0.0), bonded: false, material: elastic(material(row, 2)) });
    Section { ring, liner, seat: Seat::Housing(housing), support: Support::Free }
}

/// Equally wide rings of a row, the innermost as shaft.
fn on_shaft(row: &Row, bodies: usize) -> Section {
    let d = |k: usize| number(row, &format!("d{k}_mm"));
    let chamfers = Chamfers { back: mm(0.0), front: mm(0.0) };
    let (bore, outside, width) = (mm(d(bodies - 1)), mm(d(bodies)), mm(number(row, "L_mm")));
    let ring = RingSection { bore, outside, width, chamfers, groove: None, material: elastic(material(row, bodies)) };
    let bore = (d(0) > 0.0).then(|| mm(d(0)));
    let (front, behind) = (mm(0.0), mm(0.0));
    let shaft = Shaft { bore, front, behind, shoulder: None, material: elastic(material(row, 1)) };
    let thickness = mm((d(2) - d(1)) / 2.0);
    let liner =
        (bodies == 3).then(|| Liner { thickness, front: mm(0.0), bonded: false, material: elastic(material(row, 2)) });
    Section { ring, liner, seat: Seat::Shaft(shaft), support: Support::Free }
}

/// The section of a row, and how many bodies it has.
pub fn section_of(row: &Row) -> (Section, usize) {
    let bodies = number(row, "n_rings") as usize;
    let housing = number(row, "d0_mm") > 15.0;
    (if housing { in_housing(row, bodies) } else { on_shaft(row, bodies) }, bodies)
}

pub fn all_rows() -> Vec<Row> {
    rows::rows(include_str!("../reference/section/rings.csv"))
}

fn equally_wide() -> Vec<Check> {
    let mut sheet = Sheet::of("section/rings.csv");
    for row in all_rows() {
        let (section, bodies) = section_of(&row);
        let state = rows::model(&section).solve(&loads(&row, bodies)).unwrap();
        sheet.row(format!("{}, {}", row["case"], row["note"]));
        let mut near = |column: &str, found: f64| sheet.column(&row, column, found, [1e-4, 1e-9]);
        for k in 1..bodies {
            let (contact, pressure) = (&state.contacts[k - 1], format!("p{k}_MPa"));
            if number(&row, &pressure) > 0.0 {
                near(&pressure, in_mpa(contact.mean_pressure));
            } else {
                near(&format!("gap{k}_dia_mm"), in_mm(contact.mean_clearance));
            }
        }
        near(&format!("dd{bodies}_out_mm"), in_mm(state.parts[bodies - 1].outside.mean));
        if let Some(inside) = &state.parts[0].inside {
            near("dd1_in_mm", in_mm(inside.mean));
        }
    }
    sheet.done()
}

/// Stresses are exact at the surfaces.
fn largest() -> Vec<Check> {
    let mut sheet = Sheet::of("section/rings.csv");
    for row in all_rows() {
        if number(&row, "n_rings") < 3.0 || number(&row, "d0_mm") < 15.0 {
            continue;
        }
        let peaks = rows::model(&in_housing(&row, 3)).stresses(&loads(&row, 3)).unwrap();
        sheet.row(format!("{}, {}", row["case"], row["note"]));
        sheet.column(&row, "vm3_in_MPa", in_mpa(peaks[2].von_mises.stress), [0.01, 0.0]);
    }
    sheet.done()
}
