//! The plain ring that stands for a bearing ring.

#![allow(clippy::unwrap_used)]

mod mechanics_units;

use mechanics_units::{close, in_mm, in_mpa, joint, mm, ring};
use seatwise::mechanics::*;

/// Deep groove outer ring of a 62 mm bearing: shoulder 52 mm, width 16 mm.
fn groove(radius: f64, depth: f64) -> Groove {
    Groove { width: mm(16.0), shoulder: mm(52.0), radius: mm(radius), depth: mm(depth) }
}

#[test]
fn by_share_each_ring_takes_fifteen_percent_of_the_difference() {
    // 30/62: 0.15 × 32 = 4.8 mm each.
    close(in_mm(outer_ring_inside(mm(30.0), mm(62.0))), 52.4, 1e-12, "outer");
    close(in_mm(inner_ring_outside(mm(30.0), mm(62.0))), 39.6, 1e-12, "inner");
}

#[test]
fn a_groove_takes_its_own_area_from_the_section() {
    let plain = groove(5.0, 0.0);
    close(in_mm(plain.outer_ring_inside(mm(62.0)).unwrap()), 52.0, 1e-12, "no depth, no groove");
    // Half round, as deep as its radius: π r²/2 = 39.2699 mm² over 16 mm is 2.4544 mm of the wall on either side.
    let half = groove(5.0, 5.0);
    let lost = std::f64::consts::PI * 25.0 / 2.0 / 16.0;
    let wide = Groove { shoulder: mm(50.0), ..half };
    close(in_mm(wide.outer_ring_inside(mm(62.0)).unwrap()), 50.0 + 2.0 * lost, 1e-12, "outer");
    close(in_mm(wide.inner_ring_outside(mm(30.0)).unwrap()), 50.0 - 2.0 * lost, 1e-12, "inner");
    // Flat grooves are a parabola, two thirds of depth times chord.
    let chord = 2.0 * (0.02_f64 * (10.0 - 0.02)).sqrt();
    let flat = in_mm(groove(5.0, 0.02).outer_ring_inside(mm(62.0)).unwrap()) - 52.0;
    close(flat / 2.0, 2.0 / 3.0 * chord * 0.02 / 16.0, 2e-3, "flat");
}

#[test]
fn sections_without_a_wall_are_refused() {
    let said = |groove: Groove, outside: f64| groove.outer_ring_inside(mm(outside)).unwrap_err().to_string();
    assert!(said(groove(5.0, 5.0), 62.0).contains("outside must be larger"), "groove through the wall");
    assert!(said(groove(5.0, 5.1), 80.0).contains("depth of the groove"));
    assert!(said(groove(9.0, 8.0), 80.0).contains("width of the groove"));
    assert!(groove(0.0, 0.0).outer_ring_inside(mm(62.0)).is_err());
    assert!(groove(f64::NAN, 1.0).inner_ring_outside(mm(30.0)).is_err());
    assert!(Groove { shoulder: mm(-52.0), ..groove(5.0, 1.0) }.inner_ring_outside(mm(30.0)).is_err());
}

#[test]
fn one_plain_ring_gives_both_pressure_and_closing_of_a_grooved_one() {
    // Independent finite elements, row A7: ring 52/62 with a raceway groove (its dimensions are not stated) in an aluminium
    // housing of 90 mm, 0.030 mm: 6.4675 MPa, mean closing of the bore 0.0124532 mm.
    let at = |inside: f64| joint(ring(inside, 62.0, 208e3, 0.3), ring(62.0, 90.0, 70e3, 0.33), 0.03).solve().unwrap();
    let (mut low, mut high) = (52.0, 56.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if in_mpa(at(middle).pressure) > 6.4675 { low = middle } else { high = middle }
    }
    close(in_mm(at(low).bore_change().unwrap()), -0.0124532, 2e-3, "closing");
    // Were the groove left out, pressure and closing would be 5 and 8 % off.
    assert!(in_mpa(at(52.0).pressure) > 1.05 * 6.4675 && in_mm(at(52.0).bore_change().unwrap()) > 0.93 * -0.0124532);
}
