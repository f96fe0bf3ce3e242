//! Designations are read as a shop writes them; whatever else is refused with the nearest known.

use super::mm;
use proptest::prelude::*;
use seatwise::stock::threads::{Thread, strength_class, threads};

fn named(text: &str) -> String {
    Thread::parse(text).unwrap_or_else(|error| panic!("{error}")).designation
}

#[test]
fn designations_are_read_as_a_shop_writes_them() {
    for (wanted, spellings) in [
        (
            "M10",
            vec![
                "M10",
                "m10",
                " M 10 ",
                "M10x1.5",
                "M10 × 1,5",
                "M10-1.5",
                "M10-6g",
                "M10 6g",
                "M10-5g6g",
                "M10 X 1.50 mm",
            ],
        ),
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
                "1/2-13 UNC-2A",
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
    for text in [
        "",
        "M",
        "10",
        "Mx",
        "M10x",
        "M-10",
        "1/0-13",
        "NaN-13",
        "Minf",
        "M1e1",
        "bolt",
        "#-32",
        "½-13",
        "M10x1.25x2",
        "#NaN-32",
        "#inf-32",
        "6g",
        "-6g",
    ] {
        let said = Thread::parse(text).unwrap_err().to_string();
        assert!(said.contains("write M10, M10x1.25, 1/2-13"), "{said}");
    }
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
