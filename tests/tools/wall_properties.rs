//! What must hold for every wall.

use super::{close, mm, mpa, newtons};
use proptest::prelude::*;
use seatwise::mechanics::*;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::megapascal;

/// A wall of 80 mm with a hole (or none) and a zone between them.
fn any_wall() -> impl Strategy<Value = (Wall, LoadZone)> {
    let shares = (prop::option::of(0.05..0.8_f64), 0.0..0.7_f64, 0.01..1.0_f64, 0.02..1.0_f64, 0.0..0.5_f64);
    shares.prop_map(|(hole, start, width, thickness, poisson)| {
        let inner = hole.unwrap_or(0.0);
        let from = inner + start * (1.0 - inner);
        let to = from + (0.02 + 0.98 * width) * (1.0 - from);
        let wall = Wall {
            edge: mm(80.0),
            hole: hole.map(|share| mm(80.0 * share)),
            thickness: mm(40.0 * (1.0 - inner) * thickness),
            elastic_modulus: mpa(110e3),
            poisson,
        };
        (wall, LoadZone { inside: mm(80.0 * from), outside: mm(80.0 * to) })
    })
}

proptest! {
    #[test]
    fn a_thicker_wall_never_bears_less_nor_gives_way_more((wall, zone) in any_wall(), thinner in 0.05..0.999_f64) {
        let thin = Wall { thickness: wall.thickness * thinner, ..wall };
        for edge in [Edge::Fixed, Edge::Simple] {
            for strength in [Strength::brittle(mpa(100.0)), Strength::ductile(mpa(100.0))] {
                let bears = |wall: &Wall| wall.allowable_force(&zone, &strength, edge).unwrap().force;
                prop_assert!(bears(&wall) > bears(&thin));
            }
            let state = |wall: &Wall| wall.under(newtons(1e3), &zone, edge).unwrap();
            let (thick, thin) = (state(&wall), state(&thin));
            prop_assert!(thick.deflection() < thin.deflection());
            prop_assert!(thick.at_edge.radial.abs() <= thin.at_edge.radial.abs());
        }
    }

    #[test]
    fn the_fixed_edge_is_stiffer_and_answers_are_numbers_in_proportion((wall, zone) in any_wall(), force in 1.0..1e6_f64) {
        let at = |force: f64, edge| wall.under(newtons(force), &zone, edge).unwrap();
        let (fixed, simple) = (at(force, Edge::Fixed), at(force, Edge::Simple));
        prop_assert!(fixed.bending.get::<meter>() >= 0.0 && fixed.bending <= simple.bending);
        prop_assert_eq!(fixed.shear, simple.shear);
        prop_assert!(fixed.at_edge.radial.get::<megapascal>() <= 0.0);
        let double = at(2.0 * force, Edge::Fixed);
        close(double.bending.get::<meter>(), 2.0 * fixed.bending.get::<meter>(), 1e-12, "deflection");
        for value in [simple.at_hole.hoop, simple.at_edge.hoop, fixed.at_hole.radial, fixed.edge_shear] {
            prop_assert!(value.get::<megapascal>().is_finite());
        }
    }

    #[test]
    fn at_the_allowable_force_no_looked_at_stress_is_above_the_strength((wall, zone) in any_wall(), limit in 10.0..500.0_f64) {
        let allowed = wall.allowable_force(&zone, &Strength::brittle(mpa(limit)), Edge::Fixed).unwrap();
        let state = wall.under(allowed.force, &zone, Edge::Fixed).unwrap();
        prop_assert!(allowed.force.get::<newton>().is_finite());
        for stress in [state.at_edge.radial, state.at_edge.hoop, state.at_hole.radial, state.at_hole.hoop, state.edge_shear] {
            prop_assert!(stress.get::<megapascal>().abs() <= limit * (1.0 + 1e-9));
        }
    }
}
