//! Screws of a cover and readings of a seat: published values, properties, and the program as a user runs it.
#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "../binary/mod.rs"]
mod binary;
#[path = "../checked/mod.rs"]
mod checked;
mod jobs;
mod order;
mod picture;
mod preload;
mod readings;
mod refused;
mod strip;

use seatwise::quantity::{Force, Length, Pressure, Torque};
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use serde_json::Value;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::torque::newton_meter;

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
fn mpa(pressure: f64) -> Pressure {
    Pressure::new::<megapascal>(pressure)
}
fn newtons(force: f64) -> Force {
    Force::new::<newton>(force)
}
fn newton_metres(torque: f64) -> Torque {
    Torque::new::<newton_meter>(torque)
}

/// Holds within a share of the value.
fn near(got: f64, wanted: f64, share: f64, what: &str) {
    assert!((got / wanted - 1.0).abs() <= share, "{what}: {got}, wanted {wanted} within {} %", 100.0 * share);
}

/// A job with these lines for the rest; the housing's bore is a class.
fn job_text(rest: &str) -> String {
    format!(
        "title = \"Cover\"\n[bearing]\ndesignation = \"6205\"\nclosure = \"open\"\n[housing]\nbore_limits = \"N7\"\n\
         outside = \"80 mm\"\nlength = \"15 mm\"\nmaterial = \"cast-aluminium\"\n{rest}\n"
    )
}

/// The plan of a job as JSON.
fn planned(text: &str) -> Value {
    let job = job::check(text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    serde_json::from_str(&report::json::plan(&plan::plan(&job).unwrap()).unwrap()).unwrap()
}

/// Everything that is said when a job is refused.
fn refused(text: &str) -> String {
    job::check(text, &Library::default()).expect_err("the job was accepted").to_string()
}

fn caution<'p>(plan: &'p Value, code: &str) -> Option<&'p str> {
    let cautions = plan["cautions"].as_array().unwrap();
    cautions.iter().find(|caution| caution["code"] == code).map(|caution| caution["text"].as_str().unwrap())
}

fn number(value: &Value, pointer: &str) -> f64 {
    let found = value.pointer(pointer).unwrap_or_else(|| panic!("no {pointer}"));
    found.as_f64().unwrap_or_else(|| panic!("{pointer} is {found}"))
}

/// The text has all the words; a number among them is not the end of another, and has no sign that is not asked for.
fn says(text: &str, words: &[&str]) {
    for words in words {
        let begins = |at: usize| {
            !words.starts_with(|c: char| c.is_ascii_digit())
                || !text[..at].ends_with(|c: char| "-.".contains(c) || c.is_ascii_digit())
        };
        assert!(text.match_indices(words).any(|(at, _)| begins(at)), "\"{words}\" is not in: {text}");
    }
}
