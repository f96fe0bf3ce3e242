//! Seals and stacks through the built program.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{done, run};
use serde_json::Value;

#[test]
fn the_plan_of_a_seal_and_a_stack_is_printed_and_given_as_json() {
    let page = done(&["plan", "examples/conveyor-drive.toml"]);
    for words in ["What to do, shaft seal 30x62x7", "Axial stack, DIN 472 62x2", "play left, worst cases"] {
        assert!(page.contains(words), "{words}");
    }
    let wide = page.lines().find(|line| line.chars().count() > 100);
    assert_eq!(wide, None, "a line is too wide");
    let json: Value =
        serde_json::from_str(&done(&["plan", "examples/conveyor-drive.toml", "--format", "json"])).unwrap();
    assert_eq!(json["stack"]["ring"]["closes"], "always");
    assert_eq!(json["seal"]["name"], "30x62x7");
    let short = done(&["plan", "examples/conveyor-drive.toml", "--detail", "short"]);
    assert!(short.contains("What to do, axial stack") && !short.contains("Axial stack, DIN 472"));
}

#[test]
fn a_job_without_seal_sizes_or_stack_has_neither() {
    let json: Value = serde_json::from_str(&done(&["plan", "examples/pump-case.toml", "--format", "json"])).unwrap();
    assert!(json["seal"].is_null() && json["stack"].is_null());
}

#[test]
fn a_seal_alone_is_planned_without_a_bearing() {
    // 35x52x7, a track on the shaft: 1 mm beside it, driver 51.6 mm, flush, not chilled, lip to the oil.
    let page = done(&["plan", "examples/mixer-seal.toml"]);
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in [
        "neither chilled nor warmed",
        "Lip to the oil",
        "51.6 mm outside",
        "8.000 mm below the face",
        "1.000 mm beside it, by pressing the seal that much deeper",
    ] {
        assert!(page.contains(words), "{words}");
    }
    let json: Value = serde_json::from_str(&done(&["plan", "examples/mixer-seal.toml", "--format", "json"])).unwrap();
    assert_eq!(json["format"], "seatwise.seal/1");
    assert_eq!(json["seal"]["shift_mm"], 1.0);
    let schema: Value = serde_json::from_str(&done(&["schema", "seal"])).unwrap();
    assert!(jsonschema::validator_for(&schema).unwrap().is_valid(&json));
    let of_plans: Value = serde_json::from_str(&done(&["schema"])).unwrap();
    assert!(!jsonschema::validator_for(&of_plans).unwrap().is_valid(&json), "a seal alone is no plan of a seat");
    let table = done(&["plan", "examples/mixer-seal.toml", "--format", "csv"]);
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let place = reader.headers().unwrap().iter().position(|name| name == "driver_mm").unwrap();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!((rows.len(), &rows[0][place]), (1, "51.6"));
    for flag in ["--plot", "--force-plot"] {
        let run = run(&["plan", "examples/mixer-seal.toml", flag, "x.svg"], "");
        assert!(run.code == 2 && run.out.is_empty() && run.err.contains("seal alone"), "{flag}: {}", run.err);
    }
    assert_eq!(run(&["plan", "examples/mixer-seal.toml", "--require", "drops-in"], "").code, 3);
    assert!(!std::path::Path::new("x.svg").exists());
    let refused = run(&["plan", "-"], "[seal]\nlip = \"NBR\"\nfitted = \"before the bearing\"\n[servise]\n");
    for words in ["`servise`", "this job has none", "`seal.inside` is missing"] {
        assert!(refused.code == 2 && refused.err.contains(words), "{words}: {}", refused.err);
    }
}

#[test]
fn a_groove_outside_the_bore_is_refused_at_its_line_and_nothing_is_written() {
    let job = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/conveyor-drive.toml")).unwrap();
    let run = run(&["plan", "-"], &job.replace("9.35 mm", "26 mm"));
    assert_eq!((run.code, run.out.as_str()), (2, ""));
    for words in ["26 mm to 28.15 mm below the face", "from_face"] {
        assert!(run.err.contains(words), "{}", run.err);
    }
}

#[test]
fn a_sweep_over_the_depth_of_the_seat_is_a_sweep_like_any_other() {
    let page =
        done(&["sweep", "examples/conveyor-drive.toml", "--over", "stack.depth=27.4 mm ±0.05 mm|27.5 mm ±0.05 mm"]);
    assert!(page.contains("27.4 mm") && page.contains("27.5 mm"), "{page}");
}
