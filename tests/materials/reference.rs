//! Against published values; each row of `tests/reference/thermal` names its source and why its tolerance is what it is.

use crate::checked::materials::{change, tolerance};
use crate::checked::prove;
use crate::checked::reference_rows::{Row, number, read};
use seatwise::stock::material::{REFERENCE_K, embedded};

fn expansion_rows() -> Vec<Row> {
    read("thermal/expansion.csv")
}

#[test]
fn expansion_agrees_with_published_tables_fits_and_means() {
    prove("Thermal expansion");
    assert!(expansion_rows().iter().filter(|row| row["independent"] == "yes").count() >= 20);
}

#[test]
fn every_metal_that_goes_into_liquid_nitrogen_has_a_published_row_there() {
    let rows = expansion_rows();
    for id in [
        "carbon-steel",
        "bearing-steel",
        "aluminium-6061-t6",
        "cast-aluminium",
        "stainless-304",
        "stainless-440c",
        "titanium-6al-4v",
        "invar",
        "copper",
    ] {
        assert!(rows.iter().any(|row| row["material"] == id && number(row, "to_k") < 81.0), "{id}");
    }
}

/// The likely mistake: one coefficient, the mean over 20 to 100 °C, for every temperature.
#[test]
fn a_constant_coefficient_fails_every_cold_row() {
    let mut tried = 0;
    for row in expansion_rows().iter().filter(|row| number(row, "to_k") < 200.0 && row["quantity"] == "dl_l") {
        let material = embedded(&row["material"]).unwrap();
        let mean = material.expansion().at(373.15).unwrap() / 80.0;
        let got = change(row, |t| mean * (t - REFERENCE_K));
        let gap = (got - number(row, "value")).abs();
        assert!(gap > tolerance(row), "{row:?}: the row cannot see the mistake");
        tried += 1;
    }
    assert!(tried >= 25, "{tried}");
}

/// The size of that mistake, published for the same curves: steel 34 %, aluminium 31 %, 304 23 %, titanium 14 % at 77 K
/// with coefficients of 12.0, 23.6, 16.0 and 8.6e-6 per K (thermal reference notes).
#[test]
fn the_table_saves_what_the_notes_say_a_constant_coefficient_would_cost() {
    for (id, coefficient, percent) in [
        ("carbon-steel", 12.0e-6, 34.0),
        ("aluminium-6061-t6", 23.6e-6, 31.0),
        ("stainless-304", 16.0e-6, 23.0),
        ("titanium-6al-4v", 8.6e-6, 14.0),
    ] {
        let contraction = embedded(id).unwrap().expansion().at(77.355).unwrap();
        let error = (coefficient * (77.355 - REFERENCE_K) / contraction - 1.0) * 100.0;
        assert!((error - percent).abs() < 0.6, "{id}: {error:.1} %, printed {percent}");
    }
}

/// A mean over a range starting at 20 °C is not the local coefficient at its end.
#[test]
fn mean_and_local_coefficients_are_told_apart() {
    let steel = embedded("carbon-steel").unwrap();
    let at = |t: f64| steel.expansion().at(t).unwrap();
    let local = (at(562.0) - at(560.0)) / 2.0;
    let mean = at(561.0) / (561.0 - REFERENCE_K);
    // ASME II-D Table TE-1, group 1, 550 °F: A 8.2e-6, B 7.3e-6 per °F.
    assert!((local / 1.476e-5 - 1.0).abs() < 0.01 && (mean / 1.314e-5 - 1.0).abs() < 0.01, "{local:e} {mean:e}");
}

#[test]
fn heat_capacity_conductivity_and_modulus_agree_with_published_values() {
    assert_eq!(prove("Heat capacity, conductivity, modulus").len(), 34);
}

/// Copper at 100 K holds two thirds of the heat that it holds at room temperature: a constant value misses the row.
#[test]
fn a_constant_heat_capacity_fails_the_cold_rows() {
    for (id, t, published) in
        [("carbon-steel", 77.0, 147.0), ("copper", 100.0, 252.0), ("stainless-304", 77.355, 205.8)]
    {
        let capacity = embedded(id).unwrap().heat_capacity().clone();
        assert!((capacity.at(t).unwrap() / published - 1.0).abs() < 0.01, "{id}");
        assert!(capacity.at(REFERENCE_K).unwrap() / published > 1.3, "{id}");
    }
}

/// Plausibility, not validation: handbooks round, and many of these values were recalled.
#[test]
fn room_values_lie_within_a_tenth_of_the_handbooks() {
    prove("Room values of handbooks");
}
