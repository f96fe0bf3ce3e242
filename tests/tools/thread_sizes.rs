//! Diameters and stress areas of threads are those of printed tables; strengths and nuts follow the standards.

use super::{close, mm, number, rows};
use crate::checked::prove;
use crate::checked::threads::printed_sizes;
use seatwise::stock::threads::{Series, Thread, hexagon_nut, strength_class, strength_classes, threads};
use uom::si::length::inch;
use uom::si::pressure::{megapascal, psi};

#[test]
fn diameters_and_stress_areas_are_the_printed_ones() {
    prove("Printed sizes of threads");
    assert_eq!(prove("Printed stress areas of threads").len(), 26 + 2 * 5);
    let mut sizes = 0;
    for row in rows("thread_sizes.csv") {
        for printed in printed_sizes(&row) {
            let off = (printed.computed - number(&row, printed.column)).abs();
            assert_eq!(off <= printed.allowed, !printed.misprint, "{} of {row:?}", printed.column);
            sizes += 1;
        }
    }
    assert_eq!(sizes, 3 * 14 + 3 * 20 + 6);
}

#[test]
fn pitches_fall_from_coarse_to_fine_and_sizes_rise() {
    let all = threads().unwrap();
    for pair in all.windows(2).filter(|pair| pair[0].series == pair[1].series) {
        assert!(pair[0].nominal <= pair[1].nominal, "{pair:?}");
    }
    let finer = [Series::MetricFine, Series::UnifiedFine, Series::UnifiedExtraFine];
    for thread in all.iter().filter(|thread| finer.contains(&thread.series)) {
        let coarser = |other: &&Thread| {
            other.series < thread.series
                && other.series.is_metric() == thread.series.is_metric()
                && (other.nominal - thread.nominal).abs() < mm(1e-3)
        };
        for other in all.iter().filter(coarser) {
            assert!(other.pitch > thread.pitch && other.stress_area() < thread.stress_area(), "{thread:?} {other:?}");
        }
    }
}

#[test]
fn strengths_follow_class_and_size() {
    for (name, size, wanted) in [("8.8", 16.0, 580.0), ("class 8.8", 16.001, 600.0), ("ISO 898-1 10.9", 24.0, 830.0)] {
        close(strength_class(name, mm(size)).unwrap().proof.get::<megapascal>(), wanted, 1e-12, name);
    }
    for name in ["5", "grade 5", "SAE grade 5", "SAE J429 Grade 5", "gr. 5"] {
        // psi of uom has seven digits.
        let proof = strength_class(name, mm(25.4)).unwrap().proof.get::<psi>();
        assert!((proof - 85_000.0).abs() < 0.1, "{proof}");
        let proof = strength_class(name, mm(28.575)).unwrap().proof.get::<psi>();
        assert!((proof - 74_000.0).abs() < 0.1, "{proof}");
    }
    let said = strength_class("9.8", mm(20.0)).unwrap_err().to_string();
    assert!(said.contains("20.00 mm") && said.contains("up to and including 16 mm"), "{said}");
    for name in ["", "7.7", "grade 6", "steel"] {
        let said = strength_class(name, mm(10.0)).unwrap_err().to_string();
        assert!(said.contains("ISO 898-1 class 8.8") && said.contains("SAE J429 grade 8"), "{said}");
    }
    assert!(strength_class("8.8", mm(f64::NAN)).is_err());
}

#[test]
fn proof_stress_is_near_the_yield_strength_that_the_class_names() {
    // The name of an ISO class is tensile strength over 100 and yield ratio; the least values may be a little above.
    for class in strength_classes().unwrap() {
        let (proof, limit) = (class.proof.get::<megapascal>(), class.yield_strength.get::<megapascal>());
        assert!((0.85..0.97).contains(&(proof / limit)), "{class:?}");
        if class.standard == "ISO 898-1" {
            let (tensile, ratio) = class.class.split_once('.').unwrap();
            let nominal = 100.0 * tensile.parse::<f64>().unwrap();
            let share = ratio.parse::<f64>().unwrap() / 10.0;
            assert!((1.0..1.06).contains(&(class.tensile.get::<megapascal>() / nominal)), "{class:?}");
            assert!((1.0..1.07).contains(&(limit / (nominal * share))), "{class:?}");
        }
    }
}

#[test]
fn every_metric_thread_has_a_nut_and_the_faces_are_those_of_the_reference() {
    for thread in threads().unwrap().iter().filter(|thread| thread.series.is_metric()) {
        assert!(hexagon_nut(thread).unwrap().is_some(), "{thread:?}");
    }
    for row in rows("screw_jig.csv") {
        let nut = hexagon_nut(&Thread::parse(&row["thread"]).unwrap()).unwrap().unwrap();
        assert_eq!(nut.across_flats, mm(number(&row, "nut_af_mm")));
        assert_eq!(nut.hole, mm(number(&row, "hole_mm")));
    }
    assert!(hexagon_nut(&Thread::parse("#10-32").unwrap()).unwrap().is_none());
    let half_inch = hexagon_nut(&Thread::parse("1/2-20").unwrap()).unwrap().unwrap();
    assert!((half_inch.across_flats.get::<inch>() - 0.75).abs() < 1e-12);
}
