//! `seatwise sweep` and `seatwise compare` as they are run.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{done, run};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

const PUMP: &str = "examples/pump-case.toml";

fn rows(csv: &str) -> Vec<BTreeMap<String, String>> {
    csv::Reader::from_reader(csv.as_bytes()).deserialize().map(Result::unwrap).collect()
}

fn pump() -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(PUMP)).unwrap()
}

#[test]
fn a_sweep_over_the_oven() {
    insta::assert_snapshot!(done(&["sweep", PUMP, "--over", "warm.temperature=60 °C..100 °C/5"]));
}

#[test]
fn each_step_is_the_plan_of_the_job_with_that_value() {
    let out = done(&[
        "sweep",
        PUMP,
        "--over",
        "housing.bore_limits=M7|N7",
        "--over",
        "bench.carry=10 s..60 s/3",
        "--format",
        "csv",
    ]);
    let steps = rows(&out);
    assert_eq!(steps.len(), 6);
    for step in &steps {
        let text = pump()
            .replace("\"N7\"", &format!("\"{}\"", step["housing.bore_limits"]))
            .replace("carry = \"20 s\"", &format!("carry = \"{}\"", step["bench.carry"]));
        let planned = run(&["plan", "-", "--format", "csv"], &text);
        assert_eq!(planned.code, 0, "{}", planned.err);
        for (name, cell) in &rows(&planned.out)[0] {
            assert_eq!(&step[name], cell, "{name} of {} {}", step["housing.bore_limits"], step["bench.carry"]);
        }
    }
    let json: Value = serde_json::from_str(&done(&[
        "sweep",
        PUMP,
        "--over",
        "housing.bore_limits=M7|N7",
        "--over",
        "bench.carry=10 s..60 s/3",
        "--format",
        "json",
    ]))
    .unwrap();
    assert_eq!(json["format"], "seatwise.sweep/1");
    for (json, csv) in json["steps"].as_array().unwrap().iter().zip(&steps) {
        assert_eq!(json["values"]["bench.carry"], csv["bench.carry"].as_str());
        let force = json["seats"][0]["press_force_n_tightest"].as_f64().unwrap();
        assert_eq!(force.to_string(), csv["press_force_n_tightest"]);
    }
}

#[test]
fn a_hotter_case_never_has_less_clearance_and_crosses_zero_where_it_locks() {
    // The question of the instructor: at what temperature of the case does the clearance line pass zero?
    let job = "[bearing]\ndesignation = \"6205\"\nclosure = \"open\"\noutside_limits = \"0/0 um\"\n[housing]\n\
               bore_limits = \"-30/-30 um\"\noutside = \"90 mm\"\nmaterial = \"cast-aluminium\"\n[warm]\npart = \
               \"housing\"\nmedium = \"oven\"\ntemperature = \"200 °C\"\nuntil = \"30 °C\"\n[bench]\ncarry = \"0 s\"\n";
    let run = run(&["sweep", "-", "--over", "warm.until=30 °C..110 °C/17", "--format", "csv"], job);
    assert_eq!(run.code, 0, "{}", run.err);
    let clear: Vec<f64> =
        rows(&run.out).iter().map(|row| row["at_bore_clearance_um_tightest"].parse().unwrap()).collect();
    assert!(clear.windows(2).all(|pair| pair[0] < pair[1]), "{clear:?}");
    // 30 µm over 52 mm at 23 µm/(m·K) is 25 K above the shop; cast alloy is a little less than that.
    let crosses = clear.iter().position(|clear| *clear >= 0.0).unwrap();
    assert!((3..=5).contains(&crosses), "passes zero between 40 and 55 °C: {clear:?}");
}

#[test]
fn a_value_that_is_no_value_is_shown_at_its_place_in_the_job_and_nothing_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("sweep.csv");
    let out_name = out.to_str().unwrap();
    for (over, says) in [
        ("warm.temperature=60 °C..400 °C/5", "warm.temperature = 230 °C:29"),
        ("housing.bore_limits=N7|Q77", "Q77"),
        ("bearing.colour=red|blue", "has no `colour`"),
        ("bearing.designation.x=1|2", "not a table"),
        ("=1|2", "no key of a job"),
        ("warm.temperature", "no ="),
    ] {
        let run = run(&["sweep", PUMP, "--over", over, "-o", out_name], "");
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{over}");
        assert!(run.err.contains(says) && run.err.contains("help"), "{over}: {}", run.err);
        assert!(!out.exists());
    }
    let three = ["bench.carry=1 s|2 s", "chill.hold=1 h|2 h", "warm.hold=1 h|2 h"];
    let run = run(&["sweep", PUMP, "--over", three[0], "--over", three[1], "--over", three[2]], "");
    assert!(run.code == 2 && run.err.contains("at most 2"), "{}", run.err);
}

#[test]
fn plans_stand_side_by_side_and_what_differs_is_marked() {
    let folder = tempfile::tempdir().unwrap();
    let hotter = folder.path().join("cooler-case.toml");
    fs::write(&hotter, pump().replace("\"80 °C\"", "\"70 °C\"").replace("\"NBR contact seals\"", "\"shields\""))
        .unwrap();
    let out = done(&["compare", PUMP, hotter.to_str().unwrap()]);
    insta::assert_snapshot!(out);
    let line = |name: &str| out.lines().find(|line| line.contains(name)).unwrap_or_else(|| panic!("no {name}"));
    assert!(line("warm.temperature").trim_start().starts_with("<>"));
    assert!(line("bearing.closure").contains("shields"), "words count as well as numbers");
    assert!(line("clearance, tightest").trim_start().starts_with("<>"));
    assert!(!line("force pressed cold").contains("<>") && !line("locks at").contains("<>"));

    let json: Value =
        serde_json::from_str(&done(&["compare", PUMP, hotter.to_str().unwrap(), "--format", "json"])).unwrap();
    let differs: Vec<&str> =
        json["seats"][0]["differs"].as_array().unwrap().iter().map(|name| name.as_str().unwrap()).collect();
    assert!(differs.contains(&"warm_end_c") && !differs.contains(&"press_force_n_tightest"), "{differs:?}");

    let same = done(&["compare", PUMP, PUMP]);
    assert!(!same.lines().skip(1).any(|line| line.contains("<>")), "{same}");
    assert!(same.contains("Nothing."));
}

#[test]
fn jobs_with_different_seats_are_compared_seat_by_seat_and_a_bad_one_is_named() {
    let out = done(&["compare", PUMP, "examples/fan-shaft.toml", "--units", "inch"]);
    assert!(out.contains("no such seat") && out.contains("housing seat") && out.contains("shaft seat"), "{out}");
    assert_eq!(rows(&done(&["compare", PUMP, "examples/fan-shaft.toml", "--format", "csv"])).len(), 2);
    let run = run(&["compare", PUMP, "-"], "title = 3");
    assert!(run.code == 2 && run.err.contains("standard input"), "{}", run.err);
}

/// One key, two keys with numbers, a key of names beside one of numbers, and one of names alone.
#[test]
fn a_sweep_is_drawn_as_lines_or_as_contours() {
    let folder = tempfile::tempdir().unwrap();
    let (oven, carry) = ("warm.temperature=50 °C..80 °C/3", "bench.carry=10 s..600 s/3");
    let class = "housing.bore_limits=M7|N7";
    for (name, over, words) in [
        ("one", &[oven][..], &["warm.temperature, °C", "tightest", "loosest", "drops in"][..]),
        ("two", &[oven, carry], &["bench.carry, s", "warm.temperature, °C", "touches", "Contours"]),
        ("mixed", &[class, oven], &["M7", "N7", "one line for each housing.bore_limits"]),
        ("turned", &[oven, class], &["M7", "N7", "one line for each housing.bore_limits"]),
        ("names", &[class], &["M7", "N7", "middle"]),
    ] {
        let path = folder.path().join(format!("{name}.svg"));
        let flags: Vec<&str> = over.iter().flat_map(|over| ["--over", over]).collect();
        done(&[&["sweep", PUMP, "--plot", path.to_str().unwrap()][..], &flags].concat());
        let svg = fs::read_to_string(&path).unwrap();
        for words in words {
            assert!(svg.lines().any(|line| line.contains(words)), "{words} is not in the picture of {name}");
        }
        assert!(!svg.contains("NaN") && !svg.contains("inf"), "{name}");
    }
}
