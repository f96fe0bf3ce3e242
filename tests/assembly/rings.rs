//! Retaining rings against `retaining_rings.csv`, and what the tables have in common.

use super::{in_mm, mm, near};
use crate::checked::prove;
use seatwise::quantity::Nanometres;
use seatwise::stock::retaining_rings::{RetainingRing, RingPlace, ring, table};

#[test]
fn every_ring_of_a_bore_is_that_of_the_reference_table() {
    let count = prove("Retaining rings, DIN 472").len();
    assert_eq!(count, 3 * table().unwrap().iter().filter(|ring| ring.place == RingPlace::Bore).count());
}

/// Printed rows of DIN 471, typed from a reproduction apart from the embedded table: shaft, thickness, groove, width, land.
const SHAFT_ROWS: [(f64, f64, f64, f64, f64); 8] = [
    (8.0, 0.8, 7.6, 0.9, 0.6),
    (9.0, 1.0, 8.6, 1.1, 0.6),
    (10.0, 1.0, 9.6, 1.1, 0.6),
    (12.0, 1.0, 11.5, 1.1, 0.8),
    (14.0, 1.0, 13.4, 1.1, 0.9),
    (15.0, 1.0, 14.3, 1.1, 1.1),
    (17.0, 1.0, 16.2, 1.1, 1.2),
    (18.0, 1.2, 17.0, 1.3, 1.5),
];

#[test]
fn rings_of_shafts_are_those_of_a_printed_table_and_their_land_is_three_times_the_groove() {
    for (size, thickness, groove, width, land) in SHAFT_ROWS {
        let found = ring(RingPlace::Shaft, Nanometres::from_mm(size)).unwrap().unwrap();
        assert_eq!(found.thickness, Nanometres::from_mm(thickness), "{size}");
        assert_eq!(found.groove, Nanometres::from_mm(groove), "{size}");
        assert_eq!(found.width, Nanometres::from_mm(width), "{size}");
        // The table prints the land to a tenth, rounded up or to the nearest.
        near(in_mm(found.least_land()), land, 0.051, &found.to_string());
    }
}

#[test]
fn sizes_and_thicknesses_rise_together_and_every_groove_lets_its_ring_in() {
    for place in [RingPlace::Bore, RingPlace::Shaft] {
        let rings: Vec<&RetainingRing> = table().unwrap().iter().filter(|ring| ring.place == place).collect();
        for pair in rings.windows(2) {
            assert!(pair[0].size < pair[1].size && pair[0].thickness <= pair[1].thickness, "{} {}", pair[0], pair[1]);
            assert!(pair[0].groove < pair[1].groove, "{} {}", pair[0], pair[1]);
        }
        for ring in rings {
            let depth = ring.groove_depth();
            assert!(depth > mm(0.05) && depth < 0.04 * ring.size.length() + mm(0.2), "{ring}: groove {depth:?} deep");
            assert!(ring.width.length() - ring.thickness.length() >= mm(0.0999), "{ring}");
        }
    }
}

#[test]
fn a_size_that_is_not_made_has_no_ring() {
    for size in [7.0, 49.0, 61.0, 121.0] {
        assert_eq!(ring(RingPlace::Bore, Nanometres::from_mm(size)).unwrap(), None, "{size}");
    }
}
