//! Diameters and stress areas of threads are those of printed tables; strengths and nuts follow the standards.

use super::{close, half_a_digit, mm, number, printed, rows};
use seatwise::quantity::Length;
use seatwise::stock::threads::{Series, Thread, hexagon_nut, strength_class, strength_classes, threads};
use uom::si::area::{square_inch, square_millimeter};
use uom::si::length::{inch, millimeter};
use uom::si::pressure::{megapascal, psi};

#[test]
fn diameters_and_stress_areas_are_the_printed_ones() {
    let (mut sizes, mut areas) = (0, 0);
    for row in rows("thread_sizes.csv") {
        let thread = Thread::parse(&row["designation"]).unwrap();
        let metric = row["unit"] == "mm";
        let size = |length: Length| {
            if metric { length.get::<millimeter>() } else { length.get::<inch>() }
        };
        // Printed to 0.001 mm or 0.0001 in, half a unit; the roots of unified threads come from rounded heights, one unit.
        let half = if metric { 0.5e-3 } else { 0.5e-4 };
        for (column, got, share) in [
            ("d2", thread.pitch_diameter(), 1.0),
            ("d3", thread.root_diameter(), if metric { 1.0 } else { 2.0 }),
            ("d1", thread.minor_diameter(), 1.0),
        ] {
            if row[column].is_empty() {
                continue;
            }
            let off = (size(got) - number(&row, column)).abs();
            let is_misprint = row["misprint"].starts_with(column);
            assert_eq!(off <= 1.01 * half * share, !is_misprint, "{column} {got:?}: {row:?}");
            sizes += 1;
        }
        if !row["area"].is_empty() {
            // The tables work from pitch diameters rounded to 0.0001 in: π/2 d times half of that, besides the last digit.
            let of_pitch_diameter = std::f64::consts::FRAC_PI_2 * thread.stress_diameter().get::<inch>() * 0.5e-4;
            // Some areas are printed without their last zeros, but all have three digits or more.
            let third_digit = 0.5 * 10_f64.powf(number(&row, "area").log10().floor() - 2.0);
            let last_digit = half_a_digit(&row["area"]).min(third_digit);
            let off = (thread.stress_area().get::<square_inch>() - number(&row, "area")).abs();
            assert!(off <= last_digit + of_pitch_diameter, "{row:?}: off by {off}");
            areas += 1;
        }
    }
    assert_eq!((sizes, areas), (3 * 14 + 3 * 20 + 6, 26));
}

#[test]
fn metric_stress_areas_round_to_the_printed_ones() {
    let mut seen = 0;
    for row in rows("worked_examples.csv").iter().filter(|row| row["quantity"] == "A_s") {
        let area = Thread::parse(&row["example"]).unwrap().stress_area().get::<square_millimeter>();
        printed(area, row, "printed");
        close(area, number(row, "recomputed"), 3e-6, &row["example"]);
        seen += 1;
    }
    assert_eq!(seen, 5);
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
