//! The order in which screws are tightened.

use super::mm;
use proptest::prelude::*;
use seatwise::assembly::screws::{Place, circle, nearest_pair, opposite_first};
use seatwise::quantity::Length;
use uom::si::length::millimeter;

fn each_once(order: &[usize], count: usize) -> bool {
    let mut sorted = order.to_vec();
    sorted.sort_unstable();
    sorted == (0..count).collect::<Vec<_>>()
}

/// Divisions by which two screws of a circle miss standing opposite.
fn off_opposite(one: usize, other: usize, count: usize) -> f64 {
    let apart = (one as f64 - other as f64).rem_euclid(count as f64);
    (apart - count as f64 / 2.0).abs()
}

#[test]
fn on_circles_of_any_count_each_screw_comes_once_and_its_opposite_next() {
    for count in (1..=60).chain([97, 128, 199, 200]) {
        for turned in [0.0, 11.3] {
            let order = opposite_first(&circle(count, mm(317.0), turned).unwrap());
            assert!(each_once(&order, count), "{count}: {order:?}");
            let sound = if count % 2 == 0 {
                paired(&order, count, 1e-9)
            } else {
                // One of an odd count has no partner; the others pair up before and after it.
                let around =
                    |alone: usize| paired(&order[..alone], count, 0.5) && paired(&order[alone + 1..], count, 0.5);
                (0..count).step_by(2).any(around)
            };
            assert!(sound, "{count}, turned {turned}: {order:?}");
        }
    }
}

/// Whether every two in a row stand opposite, within some divisions of the circle.
fn paired(order: &[usize], count: usize, within: f64) -> bool {
    order.chunks(2).all(|pair| pair.len() == 2 && off_opposite(pair[0], pair[1], count) <= within + 1e-9)
}

#[test]
fn the_first_four_of_a_circle_of_fours_stand_a_quarter_apart() {
    for count in (4..=96).step_by(4) {
        let order = opposite_first(&circle(count, mm(200.0), 0.0).unwrap());
        let mut first = order[..4].to_vec();
        first.sort_unstable();
        assert_eq!(first, [0, count / 4, count / 2, 3 * count / 4], "{count}");
    }
}

fn pattern() -> impl Strategy<Value = Vec<Place>> {
    let point = (-200.0..200.0f64, -200.0..200.0f64);
    prop::collection::vec(point.prop_map(|(x, y)| Place { x: mm(x), y: mm(y) }), 0..40)
}

proptest! {
    #[test]
    fn any_pattern_has_each_screw_once(places in pattern()) {
        prop_assert!(each_once(&opposite_first(&places), places.len()));
    }

    #[test]
    fn moving_or_enlarging_the_pattern_does_not_change_the_order(
        count in 1usize..40, dx in -500.0..500.0, dy in -500.0..500.0, scale in 0.1..20.0,
    ) {
        let places = circle(count, mm(100.0), 7.0).unwrap();
        let moved: Vec<Place> =
            places.iter().map(|place| Place { x: scale * place.x + mm(dx), y: scale * place.y + mm(dy) }).collect();
        prop_assert_eq!(opposite_first(&moved), opposite_first(&places));
    }

    #[test]
    fn heads_that_stand_in_each_other_are_found(places in pattern(), head in 1.0..60.0) {
        let heads = vec![mm(head); places.len()];
        let least = places.iter().enumerate()
            .flat_map(|(number, one)| places[number + 1..].iter().map(move |other| one.distance(other)))
            .fold(None, |least: Option<Length>, next| Some(least.map_or(next, |least| least.min(next))));
        match (nearest_pair(&places, &heads), least) {
            (Some((one, other, distance, needed)), Some(least)) => {
                prop_assert!(one < other && (distance - least).abs().get::<millimeter>() < 1e-9);
                prop_assert!(distance < needed);
            }
            (None, Some(least)) => prop_assert!(least >= mm(head - 1e-9)),
            (found, None) => prop_assert!(found.is_none()),
        }
    }
}
