//! Seats on shafts: no reference rows, so what mechanics demands of them.

use crate::rows::{self, elastic, in_mm, in_mpa, mm};
use seatwise::section::{Chamfers, Groove, RingSection, Seat, Section, Shaft, State, Support};

/// An inner ring of 30/38 mm, 16 mm wide, with a groove on its outside.
fn ring() -> RingSection {
    let groove = Groove { depth: mm(1.2), width: mm(7.0), middle: mm(8.0) };
    RingSection {
        bore: mm(30.0),
        outside: mm(38.0),
        width: mm(16.0),
        chamfers: Chamfers { back: mm(1.0), front: mm(1.0) },
        groove: Some(groove),
        material: elastic(rows::STEEL),
    }
}

fn seat(bore: Option<f64>, front: f64, behind: f64, shoulder: Option<f64>) -> Section {
    let shaft = Shaft {
        bore: bore.map(mm),
        front: mm(front),
        behind: mm(behind),
        shoulder: shoulder.map(mm),
        material: elastic((206.0, 0.3)),
    };
    Section { ring: ring(), liner: None, seat: Seat::Shaft(shaft), support: Support::Back { opening: None } }
}

fn solved(section: &Section, axial: f64) -> State {
    rows::model(section).solve(&rows::pressed(&[0.012], &[0.0; 2], axial)).unwrap()
}

#[test]
fn a_ring_on_a_shaft_grows_and_a_longer_or_thicker_shaft_holds_more() {
    let pressure = |section: &Section| in_mpa(solved(section, 0.0).contacts[0].mean_pressure);
    let hollow = pressure(&seat(Some(15.0), 0.0, 0.0, None));
    let solid = pressure(&seat(None, 0.0, 0.0, None));
    let longer = pressure(&seat(None, 20.0, 20.0, None));
    let shoulder = pressure(&seat(None, 20.0, 20.0, Some(35.0)));
    assert!(hollow < solid && solid < longer && longer < shoulder, "{hollow} {solid} {longer} {shoulder}");
    let state = solved(&seat(None, 20.0, 20.0, Some(35.0)), 0.0);
    assert!(state.parts[0].inside.is_none() && in_mm(state.parts[0].outside.at(mm(8.0))) < 0.0);
    assert!(in_mm(state.parts[1].outside.at_raceway) > 0.0);
    assert!(state.contacts[0].pressure.iter().all(|at| in_mpa(at.pressure) >= 0.0));
}

/// Far from its ends a long shaft does not matter: its length is worth nothing more.
#[test]
fn a_shaft_twice_as_long_is_the_same() {
    let pressure = |length: f64| in_mpa(solved(&seat(None, length, length, None), 0.0).contacts[0].mean_pressure);
    let (long, longer) = (pressure(60.0), pressure(120.0));
    assert!((long / longer - 1.0).abs() < 1e-4, "{long} {longer}");
}

/// A push on the shoulder bends it away from the ring and pulls at its root on the ring's side.
#[test]
fn a_push_on_the_shoulder_bends_it() {
    let state = solved(&seat(None, 10.0, 4.0, Some(42.0)), 5000.0);
    let wall = state.wall.unwrap();
    assert!(in_mm(wall.edge_deflection) > 0.0 && in_mm(wall.edge_deflection_from_rim) > 0.0, "{wall:?}");
    assert!(in_mpa(wall.root_bending) > 0.0, "{wall:?}");
}
