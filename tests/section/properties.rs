//! What must hold for every seat.

use crate::rows::{self, mm};
use proptest::prelude::{ProptestConfig, prop_assert, proptest};
use seatwise::section::{Accuracy, Back, Model, Section, State};

fn section(outside: f64, front: f64, wall: f64, chamfer: f64) -> Section {
    let back = if wall > 2.0 { rows::wall(wall, 40.0) } else { Back::Open { beyond: mm(4.0 * wall) } };
    rows::plain(rows::ring(chamfer, None), rows::housing(outside, front, back))
}

fn solved(section: &Section, interference: f64, strain: f64) -> State {
    let model = Model::new(section, Accuracy::Coarse).unwrap();
    model.solve(&rows::pressed(&[interference], &[0.0, strain], 0.0)).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    #[test]
    fn more_interference_or_a_thicker_boss_never_holds_less(
        outside in 68.0..140.0, front in -10.0..20.0, wall in 0.0..8.0, chamfer in 0.0..2.0,
        interference in -0.02..0.08, strain in -5e-4..5e-4, more in 0.0..0.05, thicker in 0.0..30.0,
    ) {
        let seat = section(outside, front, wall, chamfer);
        let state = solved(&seat, interference, strain);
        let force = state.contacts[0].normal_force.value;
        for at in &state.contacts[0].pressure {
            prop_assert!(at.pressure.value >= 0.0, "{at:?}");
        }
        prop_assert!(state.contacts[0].mean_clearance.value >= 0.0 && state.contacts[0].least_clearance.value >= 0.0);
        let tighter = solved(&seat, interference + more, strain).contacts[0].normal_force.value;
        prop_assert!(tighter >= force * (1.0 - 1e-12), "{tighter} {force}");
        let stiffer = solved(&section(outside + thicker, front, wall, chamfer), interference, strain);
        // The mesh is not the same, which may take 0.1 %.
        prop_assert!(stiffer.contacts[0].normal_force.value >= force * 0.999, "{stiffer:?} {force}");
    }
}
