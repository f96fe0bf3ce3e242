//! Solutions that are known exactly.

use crate::checked::prove;
use crate::checked::section_rings::{all_rows, section_of};
use crate::rows::{self, in_mm, in_mpa, mm};
use seatwise::section::{RingSection, Seat};

#[test]
fn equally_wide_rings() {
    prove("Equally wide rings");
    let sections: Vec<_> = all_rows().iter().map(|row| section_of(row).0).collect();
    let housings = sections.iter().filter(|section| matches!(section.seat, Seat::Housing(_))).count();
    let liners = sections.iter().filter(|section| section.liner.is_some()).count();
    assert!(housings > 5 && sections.len() - housings > 3 && liners > 5, "{housings} {liners} of {}", sections.len());
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

#[test]
fn largest_stresses_of_equally_wide_rings() {
    assert!(prove("Largest stresses of equally wide rings").len() >= 3);
}
