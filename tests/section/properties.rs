//! What must hold for every seat.

use crate::rows::{self, elastic, mm};
use proptest::prelude::{ProptestConfig, prop_assert, proptest};
use seatwise::section::{
    Accuracy, Back, Chamfers, Contact, Groove, Housing, Liner, Model, PartChange, RingSection, Seat, Section, State,
    Step, Support,
};

fn section(outside: f64, front: f64, wall: f64, chamfer: f64) -> Section {
    let back = if wall > 2.0 { rows::wall(wall, 40.0) } else { Back::Open { beyond: mm(4.0 * wall) } };
    rows::plain(rows::ring(chamfer, None), rows::housing(outside, front, back))
}

fn coarse(section: &Section) -> Model {
    Model::new(section, Accuracy::Coarse).unwrap()
}

fn solved(model: &Model, interference: f64, strain: f64) -> State {
    model.solve(&rows::pressed(&[interference], &[0.0, strain], 0.0)).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    #[test]
    fn more_interference_or_a_thicker_boss_never_holds_less(
        outside in 68.0..140.0, front in -10.0..20.0, wall in 0.0..8.0, chamfer in 0.0..2.0,
        interference in -0.02..0.08, strain in -5e-4..5e-4, more in 0.0..0.05, thicker in 0.0..30.0,
    ) {
        let seat = coarse(&section(outside, front, wall, chamfer));
        let state = solved(&seat, interference, strain);
        let force = state.contacts[0].normal_force.value;
        for at in &state.contacts[0].pressure {
            prop_assert!(at.pressure.value >= 0.0, "{at:?}");
        }
        prop_assert!(state.contacts[0].mean_clearance.value >= 0.0 && state.contacts[0].least_clearance.value >= 0.0);
        let tighter = solved(&seat, interference + more, strain).contacts[0].normal_force.value;
        prop_assert!(tighter >= force * (1.0 - 1e-12), "{tighter} {force}");
        let stiffer = solved(&coarse(&section(outside + thicker, front, wall, chamfer)), interference, strain);
        // The mesh is not the same, which may take 0.1 %.
        prop_assert!(stiffer.contacts[0].normal_force.value >= force * 0.999, "{stiffer:?} {force}");
    }
}

/// Sizes of every kind, most of them odd: an answer of finite numbers or a refusal, never a panic.
#[test]
fn odd_sizes_are_solved_or_refused() {
    let pick = |seed: &mut u64, from: &[f64]| {
        // Knuth's linear congruential generator (MMIX).
        *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        mm(from[(*seed >> 33) as usize % from.len()])
    };
    let (mut seed, mut solved) = (1, 0);
    for round in 0..40 {
        let mut of = |from: &[f64]| pick(&mut seed, from);
        let chamfers = Chamfers { back: of(&[0.0, 1e-6, 0.3, 1.0]), front: of(&[0.0, 2e-4, 1.0, 2.0]) };
        let groove =
            Groove { depth: of(&[1e-3, 0.5, 2.0]), width: of(&[0.01, 4.0, 8.0]), middle: of(&[2.0, 8.0, 100.0]) };
        let has = |length: seatwise::quantity::Length| length > mm(0.5);
        let ring = RingSection {
            bore: of(&[1.0, 30.0, 60.0, 61.9]),
            outside: of(&[62.0, 62.0000001, 61.9999]),
            width: of(&[0.5, 7.0, 16.0, 300.0]),
            chamfers,
            groove: has(of(&[0.0, 1.0])).then_some(groove),
            material: elastic(rows::STEEL),
        };
        let hole = of(&[0.0, 1e-3, 20.0, 60.0, 61.9]);
        let wall = Back::Wall { thickness: of(&[0.02, 3.0, 40.0]), hole: has(hole).then_some(hole) };
        let back = if has(of(&[0.0, 1.0])) { wall } else { Back::Open { beyond: of(&[0.0, 1e-6, 5.0, 100.0]) } };
        let bonded = round % 2 == 0;
        let liner = Liner {
            thickness: of(&[0.05, 4.0]),
            front: of(&[-3.0, 0.0, 1e-5, 9.0]),
            bonded,
            material: elastic((110.0, 0.0)),
        };
        let front = of(&[-6.0, -1e-6, 0.0, 1e-6, 4.0, 200.0]);
        let step =
            Step { outside: mm([62.7, 90.0, 120.0][round % 3]), position: mm([-1e-6, 3.0, -8.0, 12.0][round / 3 % 4]) };
        let step = (round % 4 < 2).then_some(step);
        let seat = Seat::Housing(Housing {
            outside: of(&[62.5, 90.0, 400.0]),
            step,
            front,
            back,
            material: elastic((70.0, 0.49)),
        });
        let liner = has(of(&[0.0, 1.0])).then_some(liner);
        let section = Section { ring, liner, seat, support: Support::Back { opening: None } };
        let Ok(model) = Model::new(&section, Accuracy::Coarse) else { continue };
        let contacts = 1 + usize::from(liner.is_some());
        let loads = rows::pressed(&vec![0.01; contacts], &vec![1e-4; contacts + 1], 0.0);
        let (state, peaks, _) = model.whole(&loads).unwrap();
        solved += 1;
        let seen = |contact: &Contact| contact.normal_force.value.is_finite() && contact.normal_force.value >= 0.0;
        // A bonded seam may pull.
        let pressed = if bonded { 1 } else { contacts };
        assert!(state.contacts[..pressed].iter().all(seen), "{section:?}");
        let surface = |part: &PartChange| part.outside.along.iter().all(|at| at.change.value.is_finite());
        assert!(state.parts.iter().all(surface), "{section:?}");
        assert!(peaks.iter().all(|peak| peak.von_mises.stress.value.is_finite()));
    }
    assert!(solved > 5, "{solved}");
}
