//! The JSON of every example holds to the schema that `seatwise schema` prints.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

use seatwise::stock::Library;
use seatwise::{job, plan, report};
use std::fs;
use std::path::Path;

fn schema() -> serde_json::Value {
    serde_json::from_str(&report::json::schema().unwrap()).unwrap()
}

fn examples() -> Vec<(String, serde_json::Value)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples");
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|extension| extension == "toml") {
            let text = fs::read_to_string(&path).unwrap();
            if job::is_seal_alone(&text) {
                continue; // a plan of another format
            }
            let job = job::check(&text, &Library::default()).unwrap();
            let text = report::json::plan(&plan::plan(&job).unwrap()).unwrap();
            found.push((path.display().to_string(), serde_json::from_str(&text).unwrap()));
        }
    }
    found
}

#[test]
fn every_plan_holds_to_the_schema() {
    let validator = jsonschema::validator_for(&schema()).unwrap();
    let examples = examples();
    assert!(examples.len() >= 5);
    for (name, plan) in examples {
        let errors: Vec<String> = validator.iter_errors(&plan).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{name}: {errors:?}");
    }
}

#[test]
fn the_plan_of_a_seal_alone_holds_to_its_own_schema() {
    let schema: serde_json::Value = serde_json::from_str(&report::json::seal_schema().unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let rubber = include_str!("../examples/mixer-seal.toml");
    let unlike = "[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\ncase = \"metal\"\nshoulder = \"6 mm\"\ndrain = \"5 mm\"\nsealant = \"yes\"\n";
    for text in [rubber, unlike, "[seal]\nsize = \"4x10x2\"\nlip = \"NBR\"\n"] {
        let job = job::check_seal(text).unwrap();
        let plan = plan::seal::plan_alone(&job).unwrap().unwrap();
        let good: serde_json::Value = serde_json::from_str(&report::json::seal_alone(&plan).unwrap()).unwrap();
        let errors: Vec<String> = validator.iter_errors(&good).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{errors:?}\n{text}");
        let mut wrong = good.clone();
        wrong["seal"]["depth_mm"] = "7".into();
        let mut missing = good;
        missing["seal"].as_object_mut().unwrap().remove("steps");
        assert!(!validator.is_valid(&wrong) && !validator.is_valid(&missing));
    }
}

#[test]
fn the_schema_refuses_what_is_not_a_plan() {
    let validator = jsonschema::validator_for(&schema()).unwrap();
    let (_, good) = examples().swap_remove(0);
    let mut wrong_verdict = good.clone();
    wrong_verdict["verdict"] = "perhaps".into();
    let mut no_seats = good.clone();
    no_seats.as_object_mut().unwrap().remove("seats");
    let mut text_for_number = good;
    text_for_number["seats"][0]["nominal_mm"] = "62".into();
    for wrong in [wrong_verdict, no_seats, text_for_number] {
        assert!(!validator.is_valid(&wrong));
    }
}

#[test]
fn a_null_range_entry_always_has_its_reason() {
    for (name, plan) in examples() {
        for seat in plan["seats"].as_array().unwrap() {
            for (range, reason) in
                [("time_to_clear_s", "time_to_clear_reason"), ("window_s", "window_reason"), ("lock_c", "lock_reason")]
            {
                let some_null = ["tightest", "middle", "loosest"].iter().any(|case| seat[range][case].is_null());
                assert_eq!(some_null, seat[reason].is_string(), "{name}: {range}");
            }
        }
    }
}
