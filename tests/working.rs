//! The working of a plan: its numbers are the plan's, and its formulas give its results.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;
#[path = "working/exercise.rs"]
mod exercise;
#[path = "working/recompute.rs"]
mod recompute;

use binary::{done, run};
use seatwise::job::{self, Job};
use seatwise::plan::{self, Method};
use seatwise::quantity::System;
use seatwise::report::working::{Line, Value, Way, working};
use seatwise::report::{self};
use seatwise::stock::Library;
use std::fs;
use std::path::Path;

/// Examples with a seat: every kind of seat, fit, treatment and service that the program knows.
const EXAMPLES: [&str; 12] = [
    "bronze-bush",
    "conveyor-drive",
    "core-plug",
    "fan-shaft",
    "gear-cover",
    "half-hour-freezer",
    "inch-gearbox",
    "iron-hub",
    "lined-bore",
    "pump-case",
    "trailer-hub",
    "warm-measured",
];

/// A bush that has yielded, whose pressure has a formula of its own.
const YIELDED: &str = "../tests/ledger/jobs/set-bush";

fn example(name: &str) -> Job {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("examples/{name}.toml"));
    job::check(&fs::read_to_string(path).unwrap(), &Library::default()).unwrap()
}

/// What a number of the JSON plan is in SI units: the unit is in its name, or in that of the object around it.
fn factor(pointer: &str) -> (f64, f64) {
    let units = [("_um_m", 1e-6), ("_um", 1e-6), ("_mm", 1e-3), ("_mpa", 1e6), ("_nm", 1.0), ("_n", 1.0), ("_s", 1.0)];
    for name in pointer.rsplit('/') {
        if name.ends_with("_c") {
            return (1.0, 273.15);
        }
        if let Some((_, factor)) = units.iter().find(|(end, _)| name.ends_with(end)) {
            return (*factor, 0.0);
        }
    }
    (1.0, 0.0)
}

/// Each result of each example with its plan in JSON. Two rings of equal width do for a formula, and the section of one
/// example has factors of its own.
fn each_line(check: impl Fn(&str, &serde_json::Value, &Line)) {
    let mut formulas = 0;
    for name in EXAMPLES.into_iter().chain([YIELDED]) {
        let job = example(name);
        let method = if name == "gear-cover" { Method::Auto } else { Method::Plane };
        let plan = plan::plan_by(&job, method).unwrap();
        let json: serde_json::Value = serde_json::from_str(&report::json::plan(&plan).unwrap()).unwrap();
        for line in working(&plan, System::Metric).parts.iter().flat_map(|part| &part.lines) {
            formulas += usize::from(matches!(line.way, Way::Formula(_)));
            check(name, &json, line);
        }
    }
    assert!(formulas > 150, "only {formulas} formulas were looked at");
}

#[test]
fn every_formula_gives_the_result_of_the_plan() {
    each_line(|name, _, line| {
        let Way::Formula(_) = &line.way else { return };
        let (worked, planned) = (line.evaluate().unwrap(), line.result.amount.si());
        // A clearance is a difference of diameters: a hundred-thousandth of a micrometre is their last digit.
        let allowed = 1e-9 * planned.abs() + 1e-11;
        assert!((worked - planned).abs() <= allowed, "{name}, {}: {worked} is not {planned}", line.what);
    });
}

#[test]
fn every_value_and_result_stands_in_the_json_plan_where_it_says() {
    each_line(|name, json, line| {
        for Value { amount, at, meaning, .. } in line.put_in.iter().chain([&line.result]) {
            let number = json.pointer(at).unwrap_or_else(|| panic!("{name}: no {at}")).as_f64();
            let number = number.unwrap_or_else(|| panic!("{name}: {at} is no number"));
            let (factor, zero) = factor(at);
            let planned = number * factor + zero;
            let allowed = 6e-6 * (planned - zero).abs() + 1e-15;
            assert!((amount.si() - planned).abs() <= allowed, "{name}, {meaning}: {} at {at}", amount.si());
        }
    });
}

#[test]
fn a_seal_alone_is_told_to_have_no_seat_and_not_to_lack_its_bearing() {
    let run = run(&["working", "examples/mixer-seal.toml"], "");
    assert_eq!((run.code, run.out.as_str()), (2, ""));
    assert!(run.err.contains("holds a shaft seal alone") && run.err.contains("seatwise card"), "{}", run.err);
}

/// Numbers of a text with the unit that follows each; a number that is part of a word is none.
fn numbers(text: &str) -> Vec<(f64, f64, String)> {
    let units = [
        "mm", "µm", "µm/m", "°C", "GPa", "MPa", "N", "kN", "N·m", "s", "in", "thou", "µin/in", "°F", "Mpsi", "psi",
        "lbf", "in·lb",
    ];
    let words: Vec<&str> = text.split_whitespace().map(|word| word.trim_matches(['(', ')', ',', ';', '²'])).collect();
    let unit = |word: Option<&&str>| word.filter(|word| units.contains(word)).map_or("", |word| word).to_owned();
    let number = |(place, word): (usize, &&str)| {
        let value: f64 = word.parse().ok()?;
        let decimals = word.split_once('.').map_or(0, |(_, after)| after.len() as i32);
        Some((value, 10f64.powi(-decimals), unit(words.get(place + 1))))
    };
    words.iter().enumerate().filter_map(number).collect()
}

/// How many SI units a printed unit is, and the name's ending of what it is the unit of.
fn printed(unit: &str) -> (f64, f64, &'static [&'static str]) {
    const PSI: f64 = 4.448_221_615_260_5 / (0.0254 * 0.0254);
    match unit {
        "mm" => (1e-3, 0.0, &["_mm"]),
        "in" => (0.0254, 0.0, &["_mm"]),
        "µm" => (1e-6, 0.0, &["_um"]),
        "thou" => (25.4e-6, 0.0, &["_um"]),
        "µm/m" | "µin/in" => (1e-6, 0.0, &["_um_m"]),
        "°C" => (1.0, 273.15, &["_c"]),
        "°F" => (5.0 / 9.0, 273.15 - 32.0 * 5.0 / 9.0, &["_c"]),
        "GPa" => (1e9, 0.0, &["_mpa"]),
        "MPa" => (1e6, 0.0, &["_mpa"]),
        "Mpsi" => (1e6 * PSI, 0.0, &["_mpa"]),
        "psi" => (PSI, 0.0, &["_mpa"]),
        "N" => (1.0, 0.0, &["_n"]),
        "kN" => (1e3, 0.0, &["_n"]),
        "lbf" => (4.448_221_615_260_5, 0.0, &["_n"]),
        "N·m" => (1.0, 0.0, &["_nm"]),
        "in·lb" => (4.448_221_615_260_5 * 0.0254, 0.0, &["_nm"]),
        "s" => (1.0, 0.0, &["_s"]),
        _ => (1.0, 0.0, &[]),
    }
}

/// Every number of a JSON value in SI units, with the ending of its name.
fn leaves(value: &serde_json::Value, pointer: &str, into: &mut Vec<(String, f64)>) {
    match value {
        serde_json::Value::Object(members) => {
            members.iter().for_each(|(name, value)| leaves(value, &format!("{pointer}/{name}"), into));
        }
        serde_json::Value::Array(items) => {
            items.iter().enumerate().for_each(|(i, value)| leaves(value, &format!("{pointer}/{i}"), into));
        }
        serde_json::Value::Number(number) => into.push((pointer.to_owned(), number.as_f64().unwrap())),
        _ => {}
    }
}

/// Whether a printed number is a number of the plan, rounded.
fn is_of_the_plan((value, step, unit): &(f64, f64, String), plan: &[(String, f64)]) -> bool {
    let (per_unit, zero, endings) = printed(unit);
    let (si, allowed) = (value * per_unit + zero, 0.5 * step * per_unit);
    plan.iter().any(|(pointer, number)| {
        let (factor, shift) = factor(pointer);
        let plain = factor.to_bits() == 1f64.to_bits() && shift.to_bits() == 0;
        let kind = if endings.is_empty() {
            plain
        } else {
            pointer.rsplit('/').any(|name| endings.iter().any(|end| name.ends_with(end)))
        };
        // Six figures of the JSON may lie on the other side of a half.
        kind && (number * factor + shift - si).abs() <= allowed * 1.001 + 6e-6 * number.abs() * factor
    })
}

#[test]
fn every_number_that_is_put_in_or_comes_out_is_a_number_of_the_json_plan() {
    for name in ["bronze-bush", "inch-gearbox", "conveyor-drive"] {
        let file = format!("examples/{name}.toml");
        let json = done(&["plan", &file, "--model", "plane", "--format", "json"]);
        let mut plan = Vec::new();
        leaves(&serde_json::from_str(&json).unwrap(), "", &mut plan);
        for system in ["metric", "inch"] {
            let text = done(&["working", &file, "--model", "plane", "--units", system]);
            let mut found = 0;
            // Rows of arithmetic, and the values of results that no formula gives.
            for row in text.lines().filter(|row| row.starts_with("        ") && row.contains(" = ")) {
                let is_formula = row
                    .trim_start()
                    .split(" = ")
                    .nth(1)
                    .is_some_and(|right| numbers(right).iter().all(|n| n.2.is_empty()))
                    && !row.trim_start().starts_with('=');
                if is_formula && row.contains(['·', '/', '−']) {
                    continue;
                }
                for number in numbers(row) {
                    // The one and the two of formulas such as 1 + ε.
                    let of_formula =
                        number.2.is_empty() && (number.0 - number.0.round()).abs() < 1e-12 && number.0 <= 2.0;
                    assert!(of_formula || is_of_the_plan(&number, &plan), "{name}, {system}: {number:?} in {row}");
                    found += 1;
                }
            }
            assert!(found > 60, "{name}: only {found} numbers were found");
        }
    }
}

/// Every text of a JSON value.
fn strings(value: &serde_json::Value, into: &mut String) {
    match value {
        serde_json::Value::Object(members) => members.values().for_each(|value| strings(value, into)),
        serde_json::Value::Array(items) => items.iter().for_each(|value| strings(value, into)),
        serde_json::Value::String(text) => {
            into.push_str(text);
            into.push('\n');
        }
        _ => {}
    }
}

/// Quantities of a text that the JSON plan has neither as a number nor in its words. A text rounds towards the safe side, so that
/// its last digit may be one off.
fn strangers(text: &str, plan: &serde_json::Value) -> Vec<(f64, f64, String)> {
    let (mut values, mut words) = (Vec::new(), String::new());
    leaves(plan, "", &mut values);
    strings(plan, &mut words);
    let told = numbers(&words);
    let is_told =
        |number: &(f64, f64, String)| told.iter().any(|known| known.2 == number.2 && (known.0 - number.0).abs() < 1e-9);
    let is_known = |(value, step, unit): &(f64, f64, String)| {
        let least = value.abs().log10().floor() as i32;
        // A whole number may be rounded to two figures: 4600 lbf, 85 kN.
        let step = if *step >= 1.0 && value.abs() >= 100.0 { 10f64.powi(least - 1) } else { *step };
        is_of_the_plan(&(*value, 2.0 * step, unit.clone()), &values)
            || is_of_the_plan(&(-*value, 2.0 * step, unit.clone()), &values)
    };
    let all = numbers(text).into_iter().filter(|(_, _, unit)| !unit.is_empty() && unit != "s");
    all.filter(|number| !is_told(number) && !is_known(number)).collect()
}

#[test]
fn every_quantity_of_the_text_of_a_plan_is_a_number_of_the_json_plan() {
    for name in ["pump-case", "iron-hub", "inch-gearbox", "conveyor-drive", "gear-cover"] {
        let file = format!("examples/{name}.toml");
        let text = done(&["plan", &file, "--units", "metric"]);
        let plan = serde_json::from_str(&done(&["plan", &file, "--format", "json"])).unwrap();
        assert!(numbers(&text).len() > 100, "{name}");
        let found = strangers(&text, &plan);
        assert!(found.is_empty(), "{name}: {found:?}");
    }
}

#[test]
fn a_number_that_is_not_in_the_plan_would_be_found_out() {
    let plan = vec![("/seats/0/press/force_n/tightest".to_owned(), 3107.72)];
    assert!(is_of_the_plan(&(3.108, 1e-3, "kN".to_owned()), &plan));
    assert!(!is_of_the_plan(&(3.109, 1e-3, "kN".to_owned()), &plan));
    assert!(!is_of_the_plan(&(3107.7, 0.1, "MPa".to_owned()), &plan));
}

#[test]
fn the_working_of_the_bronze_bush() {
    insta::assert_snapshot!(done(&["working", "examples/bronze-bush.toml"]));
}

#[test]
fn a_page_has_its_formulas_in_mathml_and_neither_script_nor_anything_fetched() {
    let page = done(&["working", "examples/bronze-bush.toml", "--format", "html"]);
    assert!(page.matches("<math").count() > 50 && page.contains("<mfrac>"));
    for foreign in ["<script", "http", "src=", "@import"] {
        assert!(!page.contains(foreign), "the page has {foreign}");
    }
    assert!(page.split("url(").skip(1).all(|rest| rest.starts_with("data:font/otf;base64,")), "the fonts are in it");
    assert!(page.contains("prefers-color-scheme:dark") && page.contains("Seatwise Sans"), "as a card looks");
    assert!(!page.contains("T_"), "a symbol has its index below it");
    for tag in ["math", "mrow", "mtd", "mfrac", "msub", "article", "dl"] {
        let (opened, closed) = (page.matches(&format!("<{tag}")).count(), page.matches(&format!("</{tag}>")).count());
        assert_eq!(opened, closed, "{tag}");
    }
}

#[test]
fn markdown_and_text_have_the_same_arithmetic() {
    let rows = |format: &str| -> Vec<String> {
        let out = done(&["working", "examples/bronze-bush.toml", "--format", format]);
        out.lines().map(str::trim).filter(|row| row.starts_with("= ")).map(str::to_owned).collect()
    };
    assert!(rows("text").len() > 20);
    assert_eq!(rows("text"), rows("markdown"));
}

#[test]
fn a_job_with_a_mistake_is_refused_as_a_plan_is() {
    let run = run(&["working", "-"], "[bearing]\nkind = \"plain bush\"\n");
    assert_eq!(run.code, 2);
    assert_eq!(run.out, "");
    assert!(run.err.contains("outside"), "{}", run.err);
}
