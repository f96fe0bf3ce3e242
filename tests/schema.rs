//! The JSON of every example holds to the schema that `seatwise schema` prints.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

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
fn a_plan_with_everything_beside_the_seat_holds_to_the_schema() {
    let text = "title = \"All\"\n[bearing]\ndesignation = \"6206\"\nclosure = \"open\"\n[housing]\nbore_limits = \"N7\"\n\
                wall = \"7 mm to 25 mm\"\nlength = \"30 mm\"\nmaterial = \"cast-aluminium\"\n[seal]\nsize = \"30x62x7\"\n\
                lip = \"NBR\"\nfitted = \"after the bearing\"\ndepth = \"12 mm\"\nworn_track = \"0.4 mm\"\n[stack]\n\
                depth = \"27.5 mm\"\ngroove = { from_face = \"9.35 mm\" }\nspacer = [\"0.1 mm ±0.01 mm\", \"0.2 mm ±0.01 mm\"]\n\
                shim = [\"0.1 mm\", \"0.1 mm\"]\nplay = { least = \"0.05 mm\", most = \"0.4 mm\" }\n\
                pair = { shoulders = \"60 mm ±0.02 mm\", spacer = \"60 mm ±0.02 mm\" }\n[fasteners]\nthread = \"M6\"\n\
                count = 5\ncircle = \"120 mm\"\n[inspection]\nbearing = \"used\"\n";
    let job = job::check(text, &Library::default()).unwrap_or_else(|error| panic!("{error}"));
    let plan = report::json::plan(&plan::plan(&job).unwrap()).unwrap();
    let plan: serde_json::Value = serde_json::from_str(&plan).unwrap();
    let validator = jsonschema::validator_for(&schema()).unwrap();
    let errors: Vec<String> = validator.iter_errors(&plan).map(|error| error.to_string()).collect();
    assert!(errors.is_empty(), "{errors:?}");
    for pointer in [
        "/uneven_wall/thin_side",
        "/seal/overlaps/0",
        "/stack/ring/dimensions/6",
        "/stack/pair/binds",
        "/fasteners/groups/0/round_torques_nm/0",
    ] {
        let found = plan.pointer(pointer).unwrap_or_else(|| panic!("no {pointer}"));
        assert!(!found.is_null(), "{pointer}");
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

/// What the program prints of lists holds to the schema of its name, and the schema refuses one field more or less.
#[test]
fn lists_hold_to_the_schemas_of_their_names() {
    let folder = tempfile::tempdir().unwrap();
    let list = folder.path().join("list.csv");
    let job = "bearing.designation,housing.bore_limits,housing.outside,housing.material,reference\n";
    fs::write(&list, format!("{job}6205,N7,80 mm,cast-aluminium,0417\n6205,Q99,80 mm,cast-aluminium,\n")).unwrap();
    let (hub, pump, list) = ("examples/iron-hub.toml", "examples/pump-case.toml", list.to_str().unwrap());
    let printed: [(&str, &[&str]); 5] = [
        ("options", &["options", hub, "--with", "freezer", "--with", "oven"]),
        ("options", &["options", hub, "--with", "LN2", "--share", "0.99"]),
        ("sweep", &["sweep", pump, "--over", "housing.bore_limits=N7|P7"]),
        ("compare", &["compare", pump, hub]),
        ("batch", &["batch", list]),
    ];
    for (name, arguments) in printed {
        let schema = serde_json::from_str(&report::schemas::schema(name).unwrap().unwrap()).unwrap();
        let validator = jsonschema::validator_for(&schema).unwrap();
        let run = binary::run(&[arguments, &["--format", "json"]].concat(), "");
        let texts = if name == "batch" { run.out.lines().collect() } else { vec![run.out.as_str()] };
        for text in texts {
            let document: serde_json::Value = serde_json::from_str(text).unwrap();
            let errors: Vec<String> = validator.iter_errors(&document).map(|error| error.to_string()).collect();
            assert!(errors.is_empty(), "{arguments:?}: {errors:?}");
            let mut more = document.clone();
            more["more"] = true.into();
            let mut less = document.clone();
            less.as_object_mut().unwrap().remove("format");
            assert!(!validator.is_valid(&more) && !validator.is_valid(&less), "{name}");
        }
    }
    assert!(report::schemas::names().all(|name| !binary::done(&["schema", name]).is_empty()));
    assert_eq!(binary::done(&["schema"]), report::json::schema().unwrap(), "the plan's is the usual one");
    assert_eq!(binary::run(&["schema", "plans"], "").code, 2);
    assert!(report::schemas::schema("plans").is_none());
}
