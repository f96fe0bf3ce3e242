//! Mean, out-of-round and taper from a table of readings.

use crate::checked::prove;
use crate::checked::stacks::table;
use proptest::prelude::*;
use seatwise::assembly::readings::{ReadingsError, Widest};
use uom::si::length::micrometer;

#[test]
fn mean_out_of_round_and_taper_are_those_of_numpy() {
    prove("Mean, out-of-round and taper of readings");
}

#[test]
fn the_widest_depth_is_named() {
    let widest =
        |means: &[f64]| table(&means.iter().map(|mean| vec![*mean, *mean]).collect::<Vec<_>>()).unwrap().form().widest;
    assert_eq!(widest(&[30.01, 30.005, 30.0]), Some(Widest::Mouth));
    assert_eq!(widest(&[30.0, 30.005, 30.01]), Some(Widest::Bottom));
    assert_eq!(widest(&[30.0, 30.01, 30.0]), Some(Widest::Between));
    assert_eq!(widest(&[30.0]), None);
}

#[test]
fn readings_that_make_no_table_are_refused() {
    assert_eq!(table(&[vec![30.0]]), Err(ReadingsError::TooFew { count: 1 }));
    assert_eq!(table(&[]), Err(ReadingsError::TooFew { count: 0 }));
    assert_eq!(table(&[vec![], vec![30.0, 30.1]]), Err(ReadingsError::Ragged { row: 2, count: 2, wanted: 0 }));
    assert_eq!(table(&[vec![30.0, 30.0], vec![30.0]]), Err(ReadingsError::Ragged { row: 2, count: 1, wanted: 2 }));
    assert!(matches!(table(&[vec![30.0, -1.0]]), Err(ReadingsError::NotPositive { row: 1, column: 2, .. })));
    assert!(matches!(table(&[vec![30.0, f64::NAN]]), Err(ReadingsError::NotPositive { .. })));
}

proptest! {
    #[test]
    fn the_form_does_not_depend_on_order_and_the_mean_lies_inside(
        rows in (1usize..6, 2usize..7).prop_flat_map(|(rows, columns)| {
            prop::collection::vec(prop::collection::vec(20.0..20.1f64, columns), rows)
        }),
    ) {
        let form = table(&rows).unwrap().form();
        let mut turned = rows.clone();
        turned.reverse();
        turned.iter_mut().for_each(|row| row.reverse());
        let other = table(&turned).unwrap().form();
        prop_assert!(form.smallest <= form.mean && form.mean <= form.largest);
        prop_assert!((form.mean - other.mean).abs().get::<micrometer>() < 1e-6);
        prop_assert_eq!(form.out_of_round, other.out_of_round);
        prop_assert_eq!(form.taper.is_some(), rows.len() > 1);
        prop_assert!(form.out_of_round.unwrap() <= form.largest - form.smallest);
    }
}
