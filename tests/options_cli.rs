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

#[test]
fn a_share_of_the_parts_may_be_asked_for_and_the_list_says_so() {
    let text = hub(&["--share", "99 %"]).out;
    assert_eq!(text, hub(&["--share", "0.99", "--seed", "1"]).out, "99 % and 0.99 are the same share");
    for words in ["99 % of 100000 parts drawn with seed 1", "Of all parts", "95 % confidence", "the tightest case has"]
    {
        assert!(text.replace("\n      ", " ").replace('\n', " ").contains(words), "{words}: {text}");
    }
    let json: Value = serde_json::from_str(&hub(&["--share", "0.99", "--format", "json"]).out).unwrap();
    assert_eq!(json["aim"], serde_json::json!({ "share": 0.99, "seed": 1, "draws": 100_000 }));
    let way = &json["seats"][0]["ways"][0];
    assert!(way["share"]["drops_in"].as_f64().unwrap() >= 0.99, "{way}");
    assert!(way["share"]["tightest_clearance_um"].as_f64() < way["clearance_um"].as_f64());
    for (share, says) in [("1", "has no unit"), ("20 %", "from 50"), ("most", "--share")] {
        let run = run(&[&["options", HUB, "--share", share][..], &SHOP].concat(), "");
        assert!(run.code == 2 && run.err.contains(says) && run.out.is_empty(), "{share}: {}", run.err);
    }
}

#[test]
fn the_ways_are_drawn_with_their_ranks_limits_and_contours() {
    let folder = tempfile::tempdir().unwrap();
    for name in ["ways.svg", "ways.png"] {
        let path = folder.path().join(name);
        hub(&["--plot", path.to_str().unwrap()]);
        let drawn = std::fs::read(&path).unwrap();
        if name.ends_with("png") {
            assert!(drawn.starts_with(b"\x89PNG") && drawn.len() > 10_000);
            continue;
        }
        let svg = String::from_utf8(drawn).unwrap();
        for words in ["too hot", "touches", "drops in from here", "1", "2", "housing when it reaches the seat, °C"] {
            assert!(svg.lines().any(|line| line.contains(words)), "{words} is not in the picture");
        }
        // A file that exists is not written over.
        assert_eq!(run(&[&["options", HUB, "--plot", path.to_str().unwrap()][..], &SHOP].concat(), "").code, 2);
    }
    let refused = run(&[&["options", HUB, "--plot", "ways.gif"][..], &SHOP].concat(), "");
    assert!(refused.code == 2 && refused.err.contains(".svg or .png"), "{}", refused.err);
}
