//! Sizes at temperature, their inverses and measured sizes.

use super::*;
use crate::checked::heat::straight;

#[test]
fn the_trunnion_contracts_as_the_textbook_prints() {
    // A. Kaw, "Numerical Methods with Applications", trunnion problem (numbers from memory): 12.363 in, from 80 °F to
    // -108 °F with a constant 6.47e-6 per °F contracts 0.01504 in.
    let curve = straight(6.47e-6 * 1.8);
    let size = Length::new::<inch>(12.363);
    let at = |f: f64| change_of(size, &curve, ThermodynamicTemperature::new::<degree_fahrenheit>(f)).unwrap();
    let contraction = (at(-108.0) - at(80.0)).get::<inch>();
    assert!((contraction + 0.01504).abs() < 0.000005, "{contraction}");
}

#[test]
fn size_at_temperature_uses_the_interval_from_20_degrees() {
    // 62 mm, 23e-6 per K, 100 °C: 80 K above 20 °C gives 114.08 um. The absolute temperature would give 532 um, the
    // radius 57 um.
    let grown = change_of(mm(62.0), &straight(23e-6), celsius(100.0)).unwrap();
    assert!((grown.get::<micrometer>() - 114.08).abs() < 1e-9);
    let hot = diameter_at(mm(62.0), &straight(23e-6), celsius(100.0)).unwrap();
    assert!((hot - mm(62.11408)).abs() < mm(1e-12));
    assert!((diameter_at(mm(62.0), &straight(23e-6), celsius(20.0)).unwrap() - mm(62.0)).abs() < mm(1e-12));
    assert!(diameter_at(mm(62.0), &straight(23e-6), celsius(400.0)).is_err());
    assert!(diameter_at(mm(-62.0), &straight(23e-6), celsius(40.0)).is_err());
}

#[test]
fn free_growth_of_the_ring_matches_the_finite_element_rows() {
    prove("Free growth of a ring");
}

#[test]
fn the_temperature_for_a_change_is_the_inverse_and_its_range_is_told() {
    let curve = straight(12e-6);
    let t = temperature_for_strain(&curve, -1e-3).unwrap().get::<degree_celsius>();
    assert!((t - (20.0 - 1000.0 / 12.0)).abs() < 1e-6, "{t}");
    assert!((temperature_for_strain(&curve, 0.0).unwrap().get::<degree_celsius>() - 20.0).abs() < 1e-9);
    let said = temperature_for_strain(&curve, -0.01).unwrap_err().to_string();
    assert!(said.contains("-200.0 °C") && said.contains("-2.640"), "{said}");
    assert!(temperature_for_strain(&curve, f64::NAN).is_err());
    // A curve that turns: the solution nearest to 20 °C counts.
    let turning = Curve::new(&[(100.0, 1e-4), (200.0, -2e-4), (293.15, 0.0), (400.0, 3e-4)]).unwrap();
    assert!(temperature_for_strain(&turning, -1e-4).unwrap() > at_kelvin(200.0));
}

#[test]
fn parts_lock_at_the_temperature_where_their_sizes_meet() {
    // Ring 62.010 mm of steel in a bore of 61.990 mm of aluminium: 20 um over 62 mm at 11e-6 per K, about 29 K above 20 °C.
    let (steel, aluminium) = (straight(12e-6), straight(23e-6));
    let exact = 0.020 / (61.990 * 23e-6 - 62.010 * 12e-6);
    let lock = contact_temperature(mm(62.010), &steel, mm(61.990), &aluminium).unwrap();
    assert!((lock.get::<degree_celsius>() - 20.0 - exact).abs() < 1e-6, "{lock:?}");
    // A loose ring locks below 20 °C; with the materials exchanged above it.
    assert!(contact_temperature(mm(61.990), &steel, mm(62.010), &aluminium).unwrap() < celsius(20.0));
    assert!(contact_temperature(mm(61.990), &aluminium, mm(62.010), &steel).unwrap() > celsius(20.0));
    // The same material never meets unless it already does; far too loose is out of the tables.
    assert_eq!(contact_temperature(mm(61.990), &steel, mm(62.010), &steel), None);
    assert_eq!(contact_temperature(mm(62.0), &steel, mm(62.0), &steel), Some(celsius(20.0)));
    assert_eq!(contact_temperature(mm(60.0), &steel, mm(62.0), &aluminium), None);
    assert_eq!(contact_temperature(mm(-60.0), &steel, mm(62.0), &aluminium), None);
    // Of two meetings the one nearest to 20 °C counts: the outer part is 50 mm near 244 K and near 307 K.
    let dip = Curve::new(&[(193.15, 0.0), (293.15, 2e-3), (333.15, -2e-3), (393.15, -4e-3)]).unwrap();
    let still = Curve::constant(0.0, 100.0, 400.0).unwrap();
    let nearest = contact_temperature(mm(50.0), &still, mm(49.95), &dip).unwrap();
    assert!((300.0..315.0).contains(&nearest.get::<kelvin>()), "{nearest:?}");
}

#[test]
fn a_reading_is_brought_to_20_degrees_by_part_and_gauge() {
    let (aluminium, steel) = (straight(23e-6), straight(12e-6));
    let warm = |part_temperature, gauge_temperature| Measurement {
        reading: mm(62.0),
        part_temperature,
        part_expansion: &aluminium,
        gauge_temperature,
        gauge_expansion: &steel,
    };
    // Both at 30 °C: the part is 62 mm long on a scale 0.12 per mille long, itself 0.23 per mille too large.
    let size = size_at_reference(&warm(celsius(30.0), celsius(30.0))).unwrap();
    let by_hand = 62.0 * (1.0 + 120e-6) / (1.0 + 230e-6);
    assert!((size - mm(by_hand)).abs() < mm(1e-9), "{size:?}");
    assert!(size_at_reference(&warm(celsius(30.0), celsius(20.0))).unwrap() < size);
    assert!(size_at_reference(&warm(celsius(20.0), celsius(30.0))).unwrap() > mm(62.0));
    assert!(size_at_reference(&warm(celsius(500.0), celsius(30.0))).is_err());
}

proptest! {
    #[test]
    fn a_reading_and_its_correction_undo_each_other(
        size in 1.0..500.0, part in -190.0..300.0_f64, gauge in 5.0..45.0_f64, alpha in 1e-6..40e-6,
    ) {
        let (part_curve, gauge_curve) = (straight(alpha), straight(11.5e-6));
        let hot = diameter_at(mm(size), &part_curve, celsius(part)).unwrap();
        let scale = diameter_at(mm(1.0), &gauge_curve, celsius(gauge)).unwrap();
        let measurement = Measurement {
            reading: mm(1.0) * (hot / scale).value,
            part_temperature: celsius(part),
            part_expansion: &part_curve,
            gauge_temperature: celsius(gauge),
            gauge_expansion: &gauge_curve,
        };
        let back: f64 = (size_at_reference(&measurement).unwrap() / mm(size)).value;
        prop_assert!((back - 1.0).abs() < 1e-12);
    }

    #[test]
    fn colder_is_never_bigger(size in 1.0..500.0, low in -190.0..300.0_f64, high in -190.0..300.0_f64) {
        // The shape of a real curve: flat towards the cold.
        let curve = Curve::new(&[
            (77.0, -4.0e-3), (120.0, -3.7e-3), (200.0, -2.1e-3), (293.15, 0.0), (400.0, 2.6e-3), (600.0, 8e-3),
        ]).unwrap();
        let (cold, hot) = (celsius(low.min(high)), celsius(low.max(high)));
        let at = |t| diameter_at(mm(size), &curve, t).unwrap();
        prop_assert!(at(cold) <= at(hot));
    }
}
