//! Limits of size and clearance bands against published rows, through the public interface.
//!
//! Each reference file keeps the source of every row. The rows of `limits_spotcheck.csv` were typed as limits and not
//! calculated, so they are the real test of the rules; the tables of grades and deviations come from the same rows as
//! the embedded files and prove the copying. Every comparison is exact to the nanometre.
#![allow(clippy::unwrap_used, reason = "helpers of tests stop at the first surprise")]

mod checked;

use checked::fits::{coarse_and_tiny, sizes_of};
use checked::fits_rows::{class, mm, rows, um};
use checked::prove;
use proptest::prelude::*;
use seatwise::fit::*;
use seatwise::quantity::{Deviations, Nanometres};

fn limits(nominal_mm: f64, name: &str) -> Limits {
    limits_of_size(mm(nominal_mm), class(name)).unwrap_or_else(|error| panic!("{nominal_mm} {name}: {error}"))
}

fn deviations_um(nominal_mm: f64, name: &str) -> (f64, f64) {
    let Deviations { lower, upper } = limits(nominal_mm, name).deviations;
    (lower.um(), upper.um())
}

#[test]
fn every_published_limit_is_met_to_the_nanometre() {
    assert_eq!(prove("Limits of size, ISO 286-1").len(), 3 * (2 * 289 + 1));
}

#[test]
fn the_four_limits_of_the_corrigendum_to_iso_286_2_are_met() {
    // ISO 286-2:1988/Cor.1:2006, each the one limit that it corrects.
    assert_eq!(deviations_um(320.0, "A13").1.to_string(), "2090");
    assert_eq!(deviations_um(100.0, "E8").1.to_string(), "126");
    assert_eq!(deviations_um(20.0, "R10").1.to_string(), "-28");
    assert_eq!(deviations_um(300.0, "f9").0.to_string(), "-186");
}

#[test]
fn every_standard_tolerance_is_the_width_of_h_and_js() {
    prove("Standard tolerances, ISO 286-1");
    let table = rows("it_grades.csv");
    assert_eq!(table.len(), 404);
    for row in table {
        let grade = row.text("grade").trim_start_matches("IT").to_owned();
        for nominal in sizes_of(&row) {
            for letter in ["H", "h", "JS", "js"] {
                let got = limits_of_size(nominal, class(&format!("{letter}{grade}")));
                assert_eq!(got.is_err(), coarse_and_tiny(&grade, nominal), "{letter} {row:?}");
            }
        }
    }
}

#[test]
fn every_fundamental_deviation_of_a_shaft_stands_in_every_grade_that_it_serves() {
    assert!(prove("Fundamental deviations of shafts").len() > 10_000);
}

#[test]
fn every_fundamental_deviation_of_a_hole_stands_in_every_grade_that_it_serves() {
    assert!(prove("Fundamental deviations of holes").len() > 10_000);
}

#[test]
fn p_to_zc_up_to_it7_take_the_coarser_figure_plus_delta() {
    prove("Holes P to ZC up to IT7");
}

#[test]
fn estimated_masses_lie_within_the_stated_spread_of_known_ones() {
    let checks = prove("Masses of bearings");
    assert_eq!(checks.len(), 18);
    // A spread far wider than the rows need would prove nothing.
    assert!(checks.iter().any(|check| (check.computed - check.expected).abs() > 0.75 * check.allowed[0]));
}

#[test]
fn likely_mistakes_are_caught() {
    for (nominal, name, wanted, mistake) in [
        (62.0, "N7", (-39.0, -9.0), "Delta left out gives -50/-20"),
        (62.0, "P7", (-51.0, -21.0), "Delta left out gives -62/-32"),
        (100.0, "N7", (-45.0, -10.0), "neighbouring band"),
        (62.0, "K7", (-21.0, 9.0), "Delta left out gives -32/-2"),
        (80.0, "H7", (0.0, 30.0), "edge read in the upper band gives 35"),
        (80.000_001, "H7", (0.0, 35.0), "edge read in the lower band gives 30"),
        (300.0, "M6", (-41.0, -9.0), "the rule gives -43/-11"),
        (300.0, "M7", (-52.0, 0.0), "the exception of M6 spread to M7"),
        (250.0, "M6", (-37.0, -8.0), "the exception of M6 spread to the band below"),
        (3.0, "N9", (-29.0, -4.0), "the rule of larger sizes gives -25/0"),
        (3.1, "N9", (-30.0, 0.0), "the figure of small sizes"),
        (50.0, "JS8", (-19.5, 19.5), "half micrometre rounded away"),
        (20.0, "JS7", (-10.5, 10.5), "half micrometre rounded away"),
        (600.0, "js7", (-35.0, 35.0), "js refused above 500 mm"),
        (60.0, "r6", (41.0, 60.0), "intermediate band ignored"),
        (70.0, "r6", (43.0, 62.0), "intermediate band ignored"),
        (60.0, "R7", (-60.0, -30.0), "intermediate band ignored"),
        (70.0, "R7", (-62.0, -32.0), "intermediate band ignored"),
        (60.0, "k3", (0.0, 5.0), "k of IT4 to IT7 used in every grade"),
        (60.0, "k6", (2.0, 21.0), "k of other grades"),
        (60.0, "k8", (0.0, 46.0), "k of IT4 to IT7 used in every grade"),
        (2.0, "H01", (0.0, 0.3), "tenths of a micrometre lost"),
        (60.0, "j6", (-7.0, 12.0), "j taken as js"),
        (60.0, "J6", (-6.0, 13.0), "J taken as the mirror of j"),
        (600.0, "N7", (-114.0, -44.0), "Delta used above 500 mm"),
        (2.0, "K9", (-25.0, 0.0), "K refused above IT8 everywhere"),
    ] {
        assert_eq!(format!("{:?}", deviations_um(nominal, name)), format!("{wanted:?}"), "{name} {nominal}: {mistake}");
    }
}

#[test]
fn a_gap_of_the_standard_is_refused_with_what_is_given_and_the_nearest_class() {
    for (nominal, name, given, nearest) in [
        (20.0, "t7", "over 24 mm, up to and including 3150 mm", "u7"),
        (24.0, "t7", "over 24 mm", "u7"),
        (14.0, "v6", "over 14 mm, up to and including 500 mm", "x6"),
        (18.0, "Y7", "over 18 mm", "Z7"),
        (50.0, "K9", "up to and including 3 mm and over 500 mm, up to and including 3150 mm", "K8"),
        (20.0, "cd8", "up to and including 10 mm", "d8"),
        (600.0, "j6", "up to and including 500 mm", "js6"),
        (50.0, "j8", "up to and including 3 mm", "j7"),
        (50.0, "J9", "J is given in the grades 6, 7, 8 only", "J8"),
        (50.0, "K2", "Delta, which K needs", "K3"),
        (0.8, "H14", "IT14 is given over 1 mm", "H13"),
        (0.8, "a9", "over 1 mm", "c9"),
        (1.0, "N9", "over 1 mm", "N8"),
        (600.0, "H01", "IT01 is given up to and including 500 mm", "H1"),
        (600.0, "x7", "up to and including 500 mm", "u7"),
    ] {
        let error = limits_of_size(mm(nominal), class(name)).unwrap_err();
        let said = error.to_string();
        let FitError::ClassNotGiven { nearest: Some(offered), .. } = error else { panic!("{name} {nominal}: {said}") };
        assert!(said.ends_with(&format!("help: the nearest class given at this size is {offered}")), "{said}");
        assert!(said.contains(given) && said.starts_with(name), "{said}");
        assert_eq!(offered.to_string(), nearest, "{name} {nominal}");
        assert!(limits_of_size(mm(nominal), offered).is_ok());
    }
}

/// A clearance letter is no stand-in for one of interference: at no size, grade or letter is one offered for the other.
#[test]
fn what_is_offered_for_a_missing_class_fits_as_loosely_or_tightly() {
    const LOOSE: &str = "ABCDEFGH";
    let mut letters_offered = 0;
    for letter in Letter::ALL {
        for feature in [Feature::Hole, Feature::Shaft] {
            for grade in Grade::all() {
                for nominal in [0.8, 2.0, 14.0, 24.0, 50.0, 200.0, 600.0, 3000.0] {
                    let class = ToleranceClass::new(feature, letter, grade);
                    let Err(FitError::ClassNotGiven { nearest: Some(offered), .. }) =
                        limits_of_size(mm(nominal), class)
                    else {
                        continue;
                    };
                    let loose = |class: ToleranceClass| LOOSE.contains(&class.symbol().to_uppercase()[..1]);
                    assert_eq!(loose(class), loose(offered), "{class} {nominal} mm: {offered}");
                    assert!(offered.grade().steps_to(grade) <= 3, "{class} {nominal} mm: {offered}");
                    letters_offered += usize::from(offered.letter() != letter);
                }
            }
        }
    }
    assert!(letters_offered > 20, "{letters_offered} offers of another letter");
}

#[test]
fn sizes_outside_the_standard_are_refused() {
    for nominal in [0.0, -1.0, 3_150.000_001, f64::NAN, f64::INFINITY] {
        let said = limits_of_size(mm(nominal), class("H7")).unwrap_err().to_string();
        assert!(said.contains("at most 3150 mm"), "{said}");
    }
    assert!(limits_of_size(mm(3150.0), class("H7")).is_ok());
    assert!(limits_of_size(Nanometres(1), class("H7")).is_ok());
}

#[test]
fn limits_say_which_cells_they_come_from_and_whether_any_is_from_memory() {
    let n7 = limits(62.0, "N7").source;
    assert_eq!(
        n7.to_string(),
        "ISO 286-1: IT7 over 50 mm, up to and including 80 mm; deviation N over 50 mm, up to and including 80 mm; Delta 11 µm"
    );
    assert!(!n7.from_memory, "Delta is IT7 - IT6 of published cells");
    assert!(limits(380.0, "X9").source.from_memory);
    assert!(limits(1100.0, "H12").source.from_memory);
    assert!(!limits(1100.0, "H7").source.from_memory);
    assert!(ring_limits(mm(30.0), RingClass::P4, Ring::Inner).unwrap().source.from_memory);
}

#[test]
fn every_ring_row_is_met_to_the_nanometre() {
    assert_eq!(prove("Bearing rings, ISO 492").len(), 2 * 3 * 139);
}

#[test]
fn rings_are_told_apart_and_sizes_beyond_the_table_refused() {
    let of =
        |nominal, ring| ring_limits(mm(nominal), RingClass::Normal, ring).map(|limits| limits.deviations.lower.um());
    // 62 mm: outer ring -13, inner ring -15; 160 mm: outer -25, inner -25; 140 mm: outer -18, inner -25.
    assert_eq!(format!("{:?}", (of(62.0, Ring::Outer).unwrap(), of(62.0, Ring::Inner).unwrap())), "(-13.0, -15.0)");
    assert_eq!(format!("{:?}", (of(140.0, Ring::Outer).unwrap(), of(160.0, Ring::Outer).unwrap())), "(-18.0, -25.0)");
    let said = of(2000.0, Ring::Outer).unwrap_err().to_string();
    assert!(said.contains("outer ring with an outside of 2000 mm") && said.contains("including 1000 mm"), "{said}");
    let said = ring_width_limits(mm(30.0), mm(16.0), RingClass::P4).unwrap_err().to_string();
    assert!(said.contains("P6 or P5"), "{said}");
}

#[test]
fn a_normal_ring_in_an_n7_housing_is_a_transition_fit() {
    let outer_ring = ring_limits(mm(62.0), RingClass::Normal, Ring::Outer).unwrap();
    let band = clearance_band(&limits(62.0, "N7"), &outer_ring);
    assert_eq!((band.tightest, band.middle, band.loosest), (um(-39.0), um(-17.5), um(4.0)));
    assert_eq!(FitKind::of(&band), FitKind::Transition);
}

#[test]
fn interference_of_every_inch_row_is_met() {
    assert_eq!(prove("Inch fits, ANSI B4.1").len(), 2 * 93);
}

#[test]
fn preferred_fits_are_of_the_kind_that_ansi_b42_names() {
    for row in rows("ansi_b42_preferred.csv") {
        for fit in [row.text("hole_basis"), row.text("shaft_basis")] {
            let (hole, shaft) = fit.split_once('/').unwrap();
            // Over 3 mm: below, H7/p6 is a transition fit (note of the row).
            for nominal in [4.0, 10.0, 24.0, 62.0, 180.0, 499.0] {
                let band = clearance_band(&limits(nominal, hole), &limits(nominal, shaft));
                let kind = FitKind::of(&band).to_string();
                let named = row.text("kind").split(':').next().unwrap().to_owned() + " fit";
                assert_eq!(kind, named, "{fit} at {nominal} mm: {row:?}");
            }
        }
    }
    let small = clearance_band(&limits(2.0, "H7"), &limits(2.0, "p6"));
    assert_eq!(FitKind::of(&small), FitKind::Transition);
}

proptest! {
    #[test]
    fn the_width_of_every_class_is_its_grade(nm in 1_i64..3_150_000_000, letter in 0..28_usize, hole: bool, step in 0..20_usize) {
        let feature = if hole { Feature::Hole } else { Feature::Shaft };
        let grade = Grade::all().nth(step).unwrap();
        let asked = ToleranceClass::new(feature, Letter::ALL[letter], grade);
        if let Ok(got) = limits_of_size(Nanometres(nm), asked) {
            let plain = limits_of_size(Nanometres(nm), ToleranceClass::new(Feature::Hole, Letter::H, grade)).unwrap();
            prop_assert_eq!(got.width(), plain.width());
            prop_assert!(got.width() > Nanometres(0));
        }
    }

    #[test]
    fn letters_a_to_h_of_hole_and_shaft_mirror_each_other(nm in 1_i64..3_150_000_000, letter in 0..11_usize, step in 0..20_usize) {
        let grade = Grade::all().nth(step).unwrap();
        let of = |feature| limits_of_size(Nanometres(nm), ToleranceClass::new(feature, Letter::ALL[letter], grade)).ok();
        let mirrored = of(Feature::Shaft).map(|shaft| (-shaft.deviations.upper, -shaft.deviations.lower));
        prop_assert_eq!(of(Feature::Hole).map(|hole| (hole.deviations.lower, hole.deviations.upper)), mirrored);
    }

    #[test]
    fn a_tighter_letter_never_loosens_a_shaft(nm in 1_000_001_i64..500_000_000, a in 0..28_usize, b in 0..28_usize) {
        // Without j, which crosses js by a few micrometres either way.
        let grade = Grade::parse("7").unwrap();
        let lower = |at: usize| {
            limits_of_size(Nanometres(nm), ToleranceClass::new(Feature::Shaft, Letter::ALL[at], grade)).map(|l| l.deviations.lower)
        };
        let has_j = [a, b].iter().any(|at| Letter::ALL[*at] == Letter::J);
        if let (false, Ok(loose), Ok(tight)) = (has_j, lower(a.min(b)), lower(a.max(b))) {
            prop_assert!(loose <= tight);
        }
    }
}
