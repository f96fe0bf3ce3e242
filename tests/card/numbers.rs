//! Every number of a card is one of the plan.

use crate::{binary, card, plain, seen_of_page};
use std::collections::BTreeSet;

const JOBS: [&str; 8] = [
    "examples/pump-case.toml",
    "examples/gear-cover.toml",
    "examples/core-plug.toml",
    "examples/fan-shaft.toml",
    "examples/inch-gearbox.toml",
    "examples/conveyor-drive.toml",
    "examples/trailer-hub.toml",
    "examples/mixer-seal.toml",
];

/// What a number is followed by when it is a quantity that the shop works by.
const UNITS: [&str; 16] =
    ["µm", "mm", "thou", "in", "°C", "°F", "s", "min", "h", "N", "kN", "lbf", "N·m", "in·lb", "ft·lb", "MPa"];

/// Whole numbers with sign and decimals, each with the word behind it.
fn numbers(text: &str) -> Vec<(String, String)> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let ends = |c: char| !(c.is_ascii_digit() || c == '-' || c == '.');
    let mut found = Vec::new();
    for (place, word) in words.iter().enumerate() {
        for piece in word.split(ends) {
            let number = piece.trim_end_matches(['.', '-']);
            if number.contains(|c: char| c.is_ascii_digit()) {
                let behind = words.get(place + 1).unwrap_or(&"").trim_end_matches([',', '.', ';', ':', ')', '"', '|']);
                found.push((number.to_owned(), behind.to_owned()));
            }
        }
    }
    found
}

#[test]
fn every_number_of_a_card_stands_in_the_plan() {
    for job in JOBS {
        let seen = seen_of_page(&card(job, &[]));
        let text = plain(&binary::done(&["plan", job]));
        let json = binary::done(&["plan", job, "--format", "json"]);
        let quantities: BTreeSet<(String, String)> = numbers(&text).into_iter().collect();
        let mut known: BTreeSet<String> = quantities.iter().map(|(number, _)| number.clone()).collect();
        known.extend(numbers(&json).into_iter().map(|(number, _)| number.trim_end_matches(".0").to_owned()));
        known.insert(env!("CARGO_PKG_VERSION").to_owned());
        let shown = numbers(&seen);
        assert!(shown.len() > 40, "{job}: only {} numbers were found", shown.len());
        for (number, behind) in shown {
            if UNITS.contains(&behind.as_str()) {
                let same = quantities.contains(&(number.clone(), behind.clone()));
                assert!(same, "{job}: the plan's text has no {number} {behind}");
            } else {
                assert!(known.contains(&number), "{job}: the plan has no {number} (before {behind:?})");
            }
        }
    }
}

#[test]
fn the_comparison_would_find_a_number_that_is_not_the_plans() {
    let wrong = numbers("Hold it 9 s, at 81 °C.");
    assert_eq!(wrong, [("9".to_owned(), "s".to_owned()), ("81".to_owned(), "°C".to_owned())]);
    let text = plain(&binary::done(&["plan", "examples/pump-case.toml"]));
    let quantities: BTreeSet<(String, String)> = numbers(&text).into_iter().collect();
    assert!(quantities.contains(&wrong[0]) && !quantities.contains(&wrong[1]));
}
