//! Designations are read as a shop writes them, and diameters and stress areas are those of printed tables.

use super::{half_a_digit, mm, number, printed, rows};
use proptest::prelude::*;
use seatwise::stock::threads::{Series, Thread, hexagon_nut, strength_class, threads};
use uom::si::area::{square_inch, square_millimeter};
use uom::si::length::{inch, millimeter};
use uom::si::pressure::{megapascal, psi};

fn named(text: &str) -> String {
    Thread::parse(text).unwrap_or_else(|error| panic!("{error}")).designation
}

#[test]
fn designations_are_read_as_a_shop_writes_them() {
    for (wanted, spellings) in [
        ("M10", vec!["M10", "m10", " M 10 ", "M10x1.5", "M10 × 1,5", "M10-1.5", "M10 X 1.50 mm"]),
        ("M10×1.25", vec!["M10x1.25", "m10 x 1,25", "M10*1.25", "M10 × 1.25"]),
        ("M10×1", vec!["M10x1", "M10 × 1", "M10 x 1.0", "M10-1"]),
        ("M3.5", vec!["M3.5", "M3,5"]),
        (
            "1/2-13 UNC",
            vec![
                "1/2-13",
                "1/2-13 UNC",
                "1/2\"-13 unc",
                "1/2 - 13",
                "UNC 1/2-13",
                "0.5-13",
                ".500-13",
                "1/2 UNC",
                "1/2 in-13",
            ],
        ),
        ("3/8-24 UNF", vec!["3/8-24 UNF", "3/8-24", "3/8 – 24 UNF", "3/8 UNF", ".375-24"]),
        ("#10-32 UNF", vec!["#10-32", "10-32", "No. 10-32", "no 10-32 UNF", "# 10 - 32", ".190-32"]),
        ("#8-32 UNC", vec!["8-32", "#8-32 UNC"]),
        ("1-8 UNC", vec!["1-8", "1\"-8 UNC", "1 UNC"]),
        ("1-1/8-7 UNC", vec!["1-1/8-7", "1 1/8-7 UNC", "1-1/8 UNC", "1.125-7"]),
        ("2-4.5 UNC", vec!["2-4.5", "2-4 1/2", "2 UNC"]),
        ("1/2-28 UNEF", vec!["1/2-28", "1/2-28 UNEF", "1/2 UNEF"]),
    ] {
        for spelling in spellings {
            assert_eq!(named(spelling), wanted, "{spelling}");
        }
    }
}

#[test]
fn every_thread_reads_back_from_its_own_designation_and_no_two_are_alike() {
    for thread in threads().unwrap() {
        assert_eq!(&Thread::parse(&thread.designation).unwrap(), thread);
        let twins = threads().unwrap().iter().filter(|other| {
            other.series.is_metric() == thread.series.is_metric()
                && (other.nominal - thread.nominal).abs() < mm(1e-3)
                && (other.pitch - thread.pitch).abs() < mm(1e-6)
        });
        assert_eq!(twins.count(), 1, "{thread:?}");
    }
}

#[test]
fn an_unknown_thread_is_refused_with_the_nearest_known() {
    for (text, wanted) in [
        ("M11", "nearest known are M10, M12"),
        ("M10x1.2", "nearest known are M10×1.25, M10×1, M10"),
        ("1/2-14", "nearest known are 1/2-13 UNC, 1/2-20 UNF"),
        ("5/8-24 UNC", "nearest known are 5/8-11 UNC"),
        ("M60", "nearest known are M48"),
        ("#10-34", "nearest known are #10-32 UNF"),
    ] {
        let said = Thread::parse(text).unwrap_err().to_string();
        assert!(said.contains(wanted) && said.contains(text), "{said}");
    }
    for text in
        ["", "M", "10", "Mx", "M10x", "M-10", "1/0-13", "NaN-13", "Minf", "M1e1", "bolt", "#-32", "½-13", "M10x1.25x2"]
    {
        let said = Thread::parse(text).unwrap_err().to_string();
        assert!(said.contains("write M10, M10x1.25, 1/2-13"), "{said}");
    }
}

#[test]
fn diameters_and_stress_areas_are_the_printed_ones() {
    let (mut sizes, mut areas) = (0, 0);
    for row in rows("thread_sizes.csv") {
        let thread = Thread::parse(&row["designation"]).unwrap();
        let metric = row["unit"] == "mm";
        let size = |length: seatwise::quantity::Length| {
            if metric { length.get::<millimeter>() } else { length.get::<inch>() }
        };
        // Metric diameters are printed to 0.001 mm, unified ones to 0.0001 in, some without their last zero; the tables
        // round half-way cases either way and unified pitches before they subtract: one unit.
        let unit = if metric { 1e-3 } else { 1e-4 };
        for (column, got) in
            [("d2", thread.pitch_diameter()), ("d3", thread.root_diameter()), ("d1", thread.minor_diameter())]
        {
            let is_misprint = column == "d1" && !row["misprint"].is_empty();
            if row[column].is_empty() {
                continue;
            }
            let off = (size(got) - number(&row, column)).abs();
            // Roots of numbered sizes up to #6 are printed for an older root, a hair deeper.
            let old_root = column == "d3" && matches!(&row["designation"][..2], "#4" | "#5" | "#6");
            assert_eq!(off <= 1.0001 * unit, !(is_misprint || old_root), "{column} {got:?}: {row:?}");
            sizes += 1;
        }
        if !row["area"].is_empty() {
            // Three digits, and one more below 0.02: half a unit of the last printed digit, but at least of the third one.
            let area = number(&row, "area");
            let third = 0.5 * 10_f64.powf(area.log10().floor() - 2.0);
            let off = (thread.stress_area().get::<square_inch>() - area).abs();
            assert!(off <= half_a_digit(&row["area"]).max(third), "{row:?}: off by {off}");
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
        super::close(area, number(row, "recomputed"), 3e-6, &row["example"]);
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
    let m = |name: &str, size: f64| strength_class(name, mm(size)).unwrap().proof.get::<megapascal>();
    assert_eq!(
        [m("8.8", 16.0), m("class 8.8", 16.001), m("ISO 898-1 10.9", 24.0)].map(f64::round),
        [580.0, 600.0, 830.0]
    );
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
    for class in seatwise::stock::threads::strength_classes().unwrap() {
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

proptest! {
    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,24}") {
        let _ = Thread::parse(&text);
        let _ = strength_class(&text, mm(10.0));
    }

    #[test]
    fn texts_of_the_right_letters_neither(text in "[M#Xx0-9./, UNCEF-]{0,14}") {
        let _ = Thread::parse(&text);
    }
}
