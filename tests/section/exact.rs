//! Solutions that are known exactly.

use crate::rows::{self, Row, elastic, in_mm, in_mpa, mm, near, number};
use seatwise::section::{Back, Chamfers, Housing, Liner, Loads, RingSection, Seat, Section, Shaft, State, Support};

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

fn compare(row: &Row, bodies: usize, state: &State) {
    for k in 1..bodies {
        let (contact, pressure) = (&state.contacts[k - 1], format!("p{k}_MPa"));
        if number(row, &pressure) > 0.0 {
            near(row, &pressure, in_mpa(contact.mean_pressure), 1e-4);
        } else {
            near(row, &format!("gap{k}_dia_mm"), in_mm(contact.mean_clearance), 1e-4);
        }
    }
    near(row, &format!("dd{bodies}_out_mm"), in_mm(state.parts[bodies - 1].outside.mean), 1e-4);
    if let Some(inside) = &state.parts[0].inside {
        near(row, "dd1_in_mm", in_mm(inside.mean), 1e-4);
    }
}

/// Plane stress is exact for equally wide rings, however many, solid or hollow, warm or cold, closed or open.
#[test]
fn equally_wide_rings() {
    let (mut housings, mut shafts, mut liners) = (0, 0, 0);
    for row in rows::rows(include_str!("../reference/section/rings.csv")) {
        let bodies = number(&row, "n_rings") as usize;
        let section = if number(&row, "d0_mm") > 15.0 { in_housing(&row, bodies) } else { on_shaft(&row, bodies) };
        match section.seat {
            Seat::Housing(_) => housings += 1,
            Seat::Shaft(_) => shafts += 1,
        }
        liners += usize::from(section.liner.is_some());
        let state = rows::model(&section).solve(&loads(&row, bodies)).unwrap();
        compare(&row, bodies, &state);
    }
    assert!(housings > 5 && shafts > 3 && liners > 5, "{housings} {shafts} {liners}");
}

/// Far from its ends a long seat is plane. Without friction and without an axial hold both parts are free to grow
/// along the axis, so the limit is plane stress, whatever the ends look like.
#[test]
fn the_middle_of_a_long_seat_is_plane() {
    let short = rows::plain(rows::ring(0.0, None), rows::housing(90.0, 0.0, rows::open()));
    let loads = rows::pressed(&[0.03], &[0.0; 2], 0.0);
    let plane = rows::model(&short).solve(&loads).unwrap();
    let ring = RingSection { width: mm(240.0), ..rows::ring(1.0, None) };
    let long = rows::plain(ring, rows::housing(90.0, 20.0, rows::wall(8.0, 40.0)));
    let middle = rows::model(&long).solve(&loads).unwrap().contacts[0].pressure_at(mm(120.0)).unwrap();
    let off = middle / plane.contacts[0].mean_pressure;
    assert!((off.value - 1.0).abs() < 5e-4, "{off:?}");
}

/// A seat whose parts expand alike only grows: no pressure, no stress, every diameter by its share.
#[test]
fn equal_expansion_makes_no_stress() {
    let section = rows::plain(rows::ring(1.0, Some(rows::groove())), rows::housing(80.0, 4.0, rows::wall(5.0, 0.0)));
    let (model, loads) = (rows::model(&section), rows::pressed(&[0.0], &[1e-3; 2], 0.0));
    let state = model.solve(&loads).unwrap();
    let grown = in_mm(state.parts[1].outside.at(mm(8.0)));
    assert!((grown / 0.080 - 1.0).abs() < 1e-9, "{grown}");
    for part in model.stresses(&loads).unwrap() {
        // Hindered, the strain would make 208 MPa and more.
        assert!(in_mpa(part.von_mises.stress) < 1e-6, "{part:?}");
    }
}

/// Stresses of equally wide rings, exact at the surfaces.
#[test]
fn largest_stresses_of_equally_wide_rings() {
    let mut compared = 0;
    for row in rows::rows(include_str!("../reference/section/rings.csv")) {
        if number(&row, "n_rings") < 3.0 || number(&row, "d0_mm") < 15.0 {
            continue;
        }
        let model = rows::model(&in_housing(&row, 3));
        let peaks = model.stresses(&loads(&row, 3)).unwrap();
        compared += 1;
        near(&row, "vm3_in_MPa", in_mpa(peaks[2].von_mises.stress), 0.01);
    }
    assert!(compared >= 3);
}
