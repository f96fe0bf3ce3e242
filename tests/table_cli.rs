//! `seatwise table` as it is run: the chart for the wall.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{done, run};
use serde_json::Value;
use std::collections::BTreeMap;

const PUMP: &str = "examples/pump-case.toml";

fn cells(csv: &str) -> Vec<BTreeMap<String, String>> {
    csv::Reader::from_reader(csv.as_bytes()).deserialize().map(Result::unwrap).collect()
}

#[test]
fn the_chart_of_the_pump_case() {
    insta::assert_snapshot!(done(&["table", PUMP]));
}

#[test]
fn the_chart_of_a_fan_shaft_in_inch_units() {
    insta::assert_snapshot!(done(&["table", "examples/fan-shaft.toml", "--units", "inch"]));
}

#[test]
fn a_printed_page_fetches_nothing_runs_nothing_and_escapes_what_was_typed() {
    let job = std::fs::read_to_string(std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(PUMP)).unwrap();
    let job = job.replace("Rear bearing and seal", "<script>alert(1)</script> & \\\"seal\\\"");
    let run = run(&["table", "-", "--format", "html"], &job);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    for word in ["<script", "http:", "https:", "src=", "url(", "@import", "onload"] {
        assert!(!run.out.contains(word), "the page holds {word}");
    }
    assert!(run.out.contains("&lt;script&gt;") && run.out.contains("&amp;"));
    let text = done(&["table", PUMP]);
    for word in ["GOES:", "RACE", "PRESS", "NO", "Cautions", "eye protection", "locks at 87 °C", "80 °C"] {
        assert!(run.out.contains(word) && text.contains(word), "{word}");
    }
}

#[test]
fn a_cell_is_what_the_plan_of_that_job_says() {
    let out = done(&["table", PUMP, "--outer", "60 °C|75 °C", "--format", "csv", "--with", "freezer"]);
    let rows = cells(&out);
    assert_eq!(rows.len(), 3 * 2);
    let job = std::fs::read_to_string(std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(PUMP)).unwrap();
    let warm = job
        .replace("temperature = \"80 °C\"\nhold = \"1 h 30 min\"", "temperature = \"100 °C\"\nuntil = \"75 °C\"")
        .replace("hold = \"2 h\"", "until = \"settled\"");
    let planned = run(&["plan", "-", "--format", "json"], &warm);
    let plan: Value = serde_json::from_str(&planned.out).unwrap();
    let cell = rows.iter().find(|row| row["outer_c"] == "75" && row["inner_medium"] == "domestic-freezer").unwrap();
    for (name, pointer) in [
        ("clearance_um", "/seats/0/at_bore/clearance_um/tightest"),
        ("free_in_seat_s", "/seats/0/grip_s/tightest"),
        ("lock_c", "/seats/0/lock_c/tightest"),
    ] {
        let wanted = plan.pointer(pointer).and_then(Value::as_f64).unwrap();
        let got: f64 = cell[name].parse().unwrap();
        assert!((got - wanted).abs() <= 1e-5 * wanted.abs(), "{name}: {got}, planned {wanted}");
    }
    // The window counts from leaving the oven, the time in hand from the seat, 20 s later.
    let window = plan.pointer("/seats/0/window_s/tightest").and_then(Value::as_f64).unwrap();
    assert!((cell["in_hand_s"].parse::<f64>().unwrap() - (window - 20.0)).abs() < 0.01);
}

#[test]
fn hotter_rows_never_have_less_clearance() {
    let rows = cells(&done(&["table", "examples/fan-shaft.toml", "--format", "csv"]));
    let mut media: Vec<&str> = rows.iter().map(|row| row["inner_medium"].as_str()).collect();
    media.dedup();
    for medium in ["shop", "domestic-freezer", "dry-ice"] {
        assert!(media.contains(&medium));
        let column: Vec<f64> = rows
            .iter()
            .filter(|row| row["inner_medium"] == medium)
            .filter_map(|row| row["clearance_um"].parse().ok())
            .collect();
        assert!(column.len() > 6 && column.windows(2).all(|pair| pair[0] < pair[1]), "{medium}: {column:?}");
    }
    let beyond = rows.iter().find(|row| row["outer_c"] == "130").unwrap();
    assert!(beyond["verdict"] == "do not" && beyond["reason"].contains("limit of 120 °C"));
}

#[test]
fn what_is_no_range_of_temperatures_is_refused() {
    for (outer, says) in [
        ("60 °C..120 °C", "in how many values"),
        ("60 °C..120 °F/3", "different units"),
        ("60..120/3", "--outer"),
        ("60 °C..900 °C/3", "225 °C"),
        ("hot", "--outer"),
    ] {
        let run = run(&["table", PUMP, "--outer", outer], "");
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{outer}");
        assert!(run.err.contains(says) && run.err.contains("help"), "{outer}: {}", run.err);
    }
}
