//! Errors for programs: `seatwise.error/1` on standard error under `--format json`.

use super::bad::{cases, sound_job};
use super::binary::{Run, done, run};
use super::*;
use serde_json::Value;

fn schema() -> jsonschema::Validator {
    let schema: Value = serde_json::from_str(&done(&["schema", "error"])).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

fn document(run: &Run) -> Value {
    assert_eq!((run.code, run.out.as_str()), (2, ""));
    serde_json::from_str(&run.err).unwrap_or_else(|error| panic!("{error}: {}", run.err))
}

#[test]
fn several_mistakes_of_a_job_come_in_one_run_each_with_its_place() {
    let text = sound_job().replace("\"62 mm\"", "\"62\"").replace("cast-aluminium", "gold").replace("50 %", "150 %");
    let found = document(&run(&["plan", "-", "--format", "json"], &text));
    assert_eq!((found["format"].as_str(), found["exit_code"].as_u64()), (Some("seatwise.error/1"), Some(2)));
    let errors = found["errors"].as_array().unwrap();
    assert!(errors.len() >= 3, "{found:#}");
    let lines: Vec<&str> = text.lines().collect();
    for error in errors {
        let (line, column) = (error["line"].as_u64().unwrap() as usize, error["column"].as_u64().unwrap() as usize);
        let value = error["value"].as_str().unwrap();
        let there: String = lines[line - 1].chars().skip(column - 1).collect();
        assert!(there.starts_with(value) && !value.is_empty(), "{error:#}");
        assert_eq!(error["file"], "standard input");
        assert!(!error["message"].as_str().unwrap().is_empty() && !error["help"].as_str().unwrap().is_empty());
    }
    let units = &errors[0];
    assert_eq!((units["line"].as_u64(), units["value"].as_str()), (Some(5), Some("62")));
}

#[test]
fn ranges_and_choices_are_told_apart_from_the_message() {
    for (from, to, allowed) in [
        ("\"62 mm\"", "\"5000 mm\"", "from 1 mm to 3150 mm"),
        ("\"2 h\"", "\"100 h\"", "from 1 s to 72 h"),
        ("\"20 °C\"", "\"68 °C\"", "from "),
        ("\"ball bearing\"", "\"ball\"", "ball bearing"),
        ("bore =", "boar =", "bore"),
    ] {
        let text = sound_job().replacen(from, to, 1);
        let found = document(&run(&["plan", "-", "--format", "json"], &text));
        let told: Vec<&str> =
            found["errors"].as_array().unwrap().iter().filter_map(|e| e["allowed"].as_str()).collect();
        assert!(told.iter().any(|told| told.contains(allowed)), "{to}: {found:#}");
    }
    let flag = document(&run(&["exercise", "--level", "9", "--format", "json"], ""));
    assert_eq!(flag["errors"][0]["allowed"], "a whole number from 1 to 3");
    let shape = document(&run(&["schema", "plann", "--format=json"], ""));
    assert!(shape["errors"][0]["message"].is_string(), "{shape:#}");
}

#[test]
fn mistakes_of_several_files_come_together() {
    let folder = folder();
    let one = written(&folder, "one.toml", sound_job().replace("\"62 mm\"", "\"62\""));
    let two = written(&folder, "two.toml", sound_job().replace("\"N7\"", "\"Q7\""));
    let found = document(&run(&["compare", as_str(&one), as_str(&two), "no-such.toml", "--format", "json"], ""));
    assert!(found["errors"][0]["file"] == "no-such.toml", "{found:#}");
    let found = document(&run(&["compare", as_str(&one), as_str(&two), "--format", "json"], ""));
    let files: Vec<&str> = found["errors"].as_array().unwrap().iter().map(|e| e["file"].as_str().unwrap()).collect();
    assert_eq!(files, [as_str(&one), as_str(&two)]);
}

/// Commands without `--format json` are left out: for them the flag itself is the mistake.
#[test]
fn every_bad_input_of_the_catalogue_holds_to_the_schema_and_says_the_same() {
    let validator = schema();
    let mut tried = 0;
    for case in cases() {
        let words: Vec<&str> = case.words.iter().map(String::as_str).collect();
        let takes_json = [
            "plan",
            "options",
            "sweep",
            "compare",
            "section",
            "limits",
            "pair",
            "materials",
            "media",
            "log",
            "exercise",
        ];
        if !takes_json.contains(&words[0]) || words.contains(&"--format") {
            continue;
        }
        let found = document(&case.run(&["--format", "json"]));
        let errors: Vec<String> = validator.iter_errors(&found).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{}: {errors:?}", case.name);
        let told = case.run(&[]).err;
        for error in found["errors"].as_array().unwrap() {
            let first: String =
                error["message"].as_str().unwrap().split_whitespace().take(3).collect::<Vec<_>>().join(" ");
            let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(told.contains(&first), "{}: {first} is not in\n{told}", case.name);
        }
        tried += 1;
    }
    assert!(tried >= 50, "only {tried}");
    for wrong in ["{}", "{\"format\": \"seatwise.error/1\", \"exit_code\": 2, \"errors\": []}"] {
        assert!(!validator.is_valid(&serde_json::from_str(wrong).unwrap()), "{wrong}");
    }
}
