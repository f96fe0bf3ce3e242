//! Bodies chilled and warmed by themselves, against independent finite elements and exact solutions.

use crate::checked::prove;
pub use crate::checked::section_heat::{aluminium, film, in_celsius, reference_section, seconds, solid, steel};

#[test]
fn a_ring_and_a_boss_alone_follow_the_reference_within_a_twentieth_of_a_kelvin() {
    let checks = prove("Temperatures of a ring and a boss alone");
    for body in ["ring ", "boss "] {
        let means = checks.iter().filter(|check| check.row.starts_with(body) && check.what == "T_mean").count();
        assert!(means >= 25, "{means} rows of {body}");
    }
}

#[test]
fn a_ring_set_alone_follows_the_reference_within_a_twentieth_of_a_kelvin() {
    let checks = prove("Temperatures of a set of rings alone");
    assert!(checks.iter().filter(|check| check.what == "T_mean").count() >= 25);
}
