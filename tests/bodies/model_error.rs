//! The stated error of the lumped model against every row of the exact solutions.

use super::*;
use crate::checked::lumped_bound::{Exact, exact_rows};
use std::collections::BTreeMap;

#[test]
fn the_bound_holds_for_every_row_and_is_close_to_the_worst_of_each_class() {
    prove("Stated error of the lumped model");
    let mut classes: BTreeMap<String, (f64, f64)> = BTreeMap::new();
    let rows = exact_rows();
    for row in &rows {
        let (error, bound) = (row.error(), row.bound());
        assert_eq!(bound.needs_section, row.path_biot() > 1.0);
        if row.path_biot() > 1.0 {
            continue;
        }
        // By shape, decade of the Biot number and half of the way.
        let band = (row.path_biot().log10() - 1e-9).ceil();
        let key = format!("{} {band} {}", row.class, row.left > 0.6);
        let entry = classes.entry(key).or_default();
        // How much of the bound is used, and the largest bound of the class.
        *entry = (entry.0.max(error.abs() / bound.largest()), entry.1.max(bound.largest()));
    }
    for (class, (used, bound)) in &classes {
        // The row that comes nearest uses a third of the bound or more. Below 0.2 % the ratio is of no interest.
        assert!(*used > 1.0 / 3.0 || *bound < 2e-3, "{class}: {used} of {bound}");
    }
    assert!(rows.len() > 800 && classes.len() > 30, "{} {}", rows.len(), classes.len());
}

#[test]
fn half_and_nine_tenths_of_the_way_are_right_within_three_per_cent_up_to_biot_one() {
    let mut worst = 0.0_f64;
    let (capacity, conductivity) = (constant(1000.0), constant(40.0));
    let lumped_rows = exact_rows().into_iter().filter(|row| !matches!(row.shape, ErrorShape::Short { .. }));
    let mut count = 0;
    for row in lumped_rows
        .filter(|row| row.path_biot() <= 1.0 && ((row.left - 0.5).abs() < 1e-9 || (row.left - 0.1).abs() < 1e-9))
    {
        // L = 10 mm, k = 40 W/(m K), 3600 kg/m³ and 1 kJ/(kg K).
        let inside = Some(Inside { path: row.path, conductivity: &conductivity });
        let exchange = Exchange { inside, ..surface(0, 1.0, 4000.0 * row.biot) };
        let network = alone(body(3600.0 * row.volume_over_area, &capacity, 393.15), 293.15, exchange);
        let second_of = |fourier: f64| fourier * 3.6e6 * 1e-4 / 40.0;
        let history = network.run(seconds(1.2 * second_of(row.fourier))).unwrap();
        let time = history.first_time_at(0, at_kelvin(293.15 + 100.0 * row.left)).unwrap().get::<second>();
        let off = time / second_of(row.fourier) - 1.0;
        worst = worst.max(off.abs());
        assert!(off.abs() < 0.03, "{} Bi {} θ {}: {off}", row.class, row.path_biot(), row.left);
        // The network gives what the closed form of the other test gives.
        // A step may err by 1e-5 of the way, which at a tenth left is 4e-5 of the time.
        assert!((off - row.error()).abs() < 5e-5, "{off} {}", row.error());
        count += 1;
    }
    assert!(count > 80 && worst > 0.015, "{count} {worst}");
}

/// Mean temperature of a wall by its series, independent of the tables: roots of `ζ tan ζ = Bi` by bisection.
fn wall_mean(biot: f64, fourier: f64) -> f64 {
    let term = |n: u32| {
        let base = f64::from(n) * std::f64::consts::PI;
        let (mut low, mut high) = (base, base + std::f64::consts::FRAC_PI_2);
        for _ in 0..80 {
            let middle = 0.5 * (low + high);
            // Rising through zero on even branches, falling on odd ones.
            let excess = middle * middle.sin() - biot * middle.cos();
            if (excess < 0.0) == (n.is_multiple_of(2)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        let z = 0.5 * (low + high);
        4.0 * z.sin().powi(2) / (z * (2.0 * z + (2.0 * z).sin())) * (-z * z * fourier).exp()
    };
    (0..40).map(term).sum()
}

#[test]
fn the_series_worked_here_agrees_with_the_tables() {
    let wall = |row: &Exact| matches!(row.shape, ErrorShape::Wall);
    let mut count = 0;
    for row in exact_rows().iter().filter(|row| wall(row)) {
        assert!((wall_mean(row.biot, row.fourier) - row.left).abs() < 1e-7, "{} {}", row.biot, row.fourier);
        count += 1;
    }
    assert!(count > 80);
}

#[test]
fn the_bound_grows_with_the_biot_number_and_says_when_the_section_is_needed() {
    let shapes = [
        ErrorShape::Wall,
        ErrorShape::Cylinder,
        ErrorShape::RingBothFaces { bore_share: 0.8 },
        ErrorShape::RingOutside { bore_share: 0.6 },
        ErrorShape::RingBore { bore_share: 0.7 },
        ErrorShape::of_plug(&Plug { outside: mm(20.0), length: mm(30.0) }).unwrap(),
        ErrorShape::of_ring(&Ring { bore: mm(30.0), outside: mm(50.0), width: mm(14.0) }).unwrap(),
    ];
    for shape in shapes {
        let at = |biot: f64, done: f64| time_error(shape, biot, done).unwrap();
        assert!(at(0.0, 0.5).largest().abs() < 1e-15);
        assert!(at(0.5, 0.9).largest() > at(0.2, 0.9).largest() && at(0.5, 0.1).late > at(0.5, 0.9).late);
        assert!(!at(1.0, 0.5).needs_section && at(1.01, 0.5).needs_section);
        assert!(time_error(shape, 11.0, 0.5).is_err() && time_error(shape, f64::NAN, 0.5).is_err());
        assert!(time_error(shape, 0.5, 0.0).is_err() && time_error(shape, 0.5, 1.0).is_err());
    }
    assert!(time_error(ErrorShape::RingBothFaces { bore_share: 0.3 }, 0.5, 0.5).is_err());
    assert!(time_error(ErrorShape::RingBore { bore_share: 0.6 }, 0.5, 0.5).is_err());
}
