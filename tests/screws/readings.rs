//! Mean, out-of-round and taper from a table of readings.

use super::mm;
use super::reference_rows::{number as cell, read};
use proptest::prelude::*;
use seatwise::assembly::readings::{Readings, ReadingsError, Widest};
use seatwise::quantity::Length;
use uom::si::length::{micrometer, millimeter};

fn table(rows: &[Vec<f64>]) -> Result<Readings, ReadingsError> {
    Readings::new(rows.iter().map(|row| row.iter().copied().map(mm).collect()).collect())
}

fn um(length: Option<Length>) -> f64 {
    length.unwrap().get::<micrometer>()
}

#[test]
fn mean_out_of_round_and_taper_are_those_of_numpy() {
    for row in read("assembly/readings.csv") {
        let rows: Vec<Vec<f64>> = row["readings"]
            .split('|')
            .map(|depth| depth.split(' ').map(|reading| reading.parse().unwrap()).collect())
            .collect();
        let form = table(&rows).unwrap().form();
        assert!((form.mean.get::<millimeter>() - cell(&row, "mean_mm")).abs() < 1e-8, "{row:?}");
        assert!((um(form.out_of_round) - cell(&row, "out_of_round_um")).abs() < 1e-5, "{row:?}");
        match row["taper_um"].as_str() {
            "" => assert_eq!(form.taper, None),
            taper => assert!((um(form.taper) - taper.parse::<f64>().unwrap()).abs() < 1e-5, "{row:?}"),
        }
    }
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
