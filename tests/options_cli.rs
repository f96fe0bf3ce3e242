//! `seatwise options` as it is run.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{Run, run};
use serde_json::Value;

const HUB: &str = "examples/iron-hub.toml";
const SHOP: [&str; 4] = ["--with", "freezer", "--with", "oven"];

fn hub(more: &[&str]) -> Run {
    let run = run(&[&["options", HUB][..], &SHOP, more].concat(), "");
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run
}

#[test]
fn the_list_of_the_iron_hub() {
    insta::assert_snapshot!(hub(&[]).out);
}

#[test]
fn the_list_of_the_iron_hub_in_inch_units() {
    let out = hub(&["--units", "inch"]).out;
    assert!(!out.contains("°C") && !out.contains("µm") && out.contains("thou"), "{out}");
    insta::assert_snapshot!(out);
}

#[test]
fn the_list_of_a_fan_shaft_with_every_medium() {
    insta::assert_snapshot!(run(&["options", "examples/fan-shaft.toml"], "").out);
}

#[test]
fn json_and_csv_hold_every_way_with_the_same_numbers() {
    let json: Value = serde_json::from_str(&hub(&["--format", "json"]).out).unwrap();
    assert_eq!(json["format"], "seatwise.options/1");
    let ways = json["seats"][0]["ways"].as_array().unwrap().clone();
    let csv = hub(&["--format", "csv"]).out;
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let head = reader.headers().unwrap().clone();
    let column = |name: &str| head.iter().position(|known| known == name).unwrap();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!((rows.len(), ways.len()), (4, 4));
    for (row, way) in rows.iter().zip(&ways) {
        for (name, pointer) in [
            ("clearance_um", "/clearance_um"),
            ("ready_after_s", "/ready_after_s"),
            ("force_n", "/force_n"),
            ("warm_c", "/warm/setting_c"),
            ("chill_end_c", "/chill/end_c"),
            ("free_in_seat_s", "/free_in_seat_s"),
        ] {
            let cell = row[column(name)].to_owned();
            let value = way.pointer(pointer).and_then(Value::as_f64);
            assert_eq!(cell.parse::<f64>().ok(), value, "{name} of {}", way["way"]);
        }
        assert!(way["cautions"].as_array().unwrap().iter().any(|caution| caution["code"] == "defer"));
    }
}

#[test]
fn a_list_with_cryogens_carries_their_cautions() {
    let out = run(&["options", "examples/bronze-bush.toml", "--with", "LN2"], "").out;
    assert!(out.contains("DANGER") && out.contains("Liquid nitrogen burns"), "{out}");
    assert!(out.contains("to gas"), "what boils away is stated: {out}");
}

#[test]
fn what_is_no_medium_is_refused_on_the_command_line_and_in_the_job() {
    for (with, says) in [("fridge", "fridge"), ("still-air", "neither chills nor warms")] {
        let run = run(&["options", HUB, "--with", with], "");
        assert_eq!((run.code, run.out.as_str()), (2, ""));
        assert!(run.err.contains(says) && run.err.contains("seatwise media"), "{}", run.err);
    }
    let job = std::fs::read_to_string(std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(HUB)).unwrap();
    for (shop, says) in [
        ("media = [\"fridge\"]", "fridge"),
        ("media = [\"fan\"]", "neither chills nor warms"),
        ("media = []", "empty list"),
        ("media = \"oven\"", "must be a list"),
        ("media = [1]", "bare number"),
        ("mediums = [\"oven\"]", "did you mean `media`"),
    ] {
        let run = run(&["options", "-"], &format!("{job}\n[shop]\n{shop}\n"));
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{shop}");
        assert!(run.err.contains(says) && run.err.contains("standard input:"), "{shop}: {}", run.err);
    }
}

#[test]
fn a_job_with_mistakes_and_an_output_that_exists_are_refused() {
    assert_eq!(run(&["options", "-"], "title = 3").code, 2);
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("ways.txt");
    std::fs::write(&out, "old").unwrap();
    let arguments = [&["options", HUB, "-o", out.to_str().unwrap()][..], &SHOP].concat();
    assert_eq!(run(&arguments, "").code, 2);
    assert_eq!(std::fs::read_to_string(&out).unwrap(), "old");
    let forced = [&arguments[..], &["--force"]].concat();
    assert_eq!(run(&forced, "").code, 0);
    assert!(std::fs::read_to_string(&out).unwrap().contains("best first"));
}
