//! Worked cases of the trade, from the job's text to what the user must hear.
//!
//! The figures to compare with come from simple constant-coefficient models worked out apart from this crate: expansion of
//! steel 12.0, light alloy 23.0, grey iron 10.5 and magnesium 26 µm/(m·K); moduli 206, 70, 110 and 45 GPa. They are
//! rough: sizes and interferences count to about 5 % or 2 µm, times only by their order. Where equal constants matter,
//! the job states its own materials; where this crate's model differs, the test says why.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod assembly;
mod bad_input;
mod bushes;
mod cover;
mod engineer;
mod in_section;
mod instructor;
mod limits;
mod liner;
mod mechanic;
mod pushing;
mod seal_place;
mod treatment;

use seatwise::stock::Library;
use seatwise::{job, plan, report};
use serde_json::Value;

/// Constants of the worked cases as materials of the job; density, heat capacity and conductivity are textbook figures.
const STEEL: &str = r#"{ name = "case steel", family = "steel", density = "7810 kg/m3", modulus = "206 GPa", poisson = "0.3", strength = "1500 MPa", expansion = "12.0 um/mK", heat_capacity = "460 J/kgK", conductivity = "40 W/mK", coldest = "-80 °C", hottest = "200 °C", source = "worked case" }"#;
const ALLOY: &str = r#"{ name = "case alloy", family = "light alloy", density = "2700 kg/m3", modulus = "70 GPa", poisson = "0.33", strength = "160 MPa", expansion = "23.0 um/mK", heat_capacity = "900 J/kgK", conductivity = "150 W/mK", hottest = "200 °C", source = "worked case" }"#;
const IRON: &str = r#"{ name = "case iron", family = "cast iron", density = "7200 kg/m3", modulus = "110 GPa", poisson = "0.26", strength = "200 MPa", strength_kind = "0.2 % proof", expansion = "10.5 um/mK", heat_capacity = "500 J/kgK", conductivity = "50 W/mK", hottest = "250 °C", source = "worked case" }"#;
const MAGNESIUM: &str = r#"{ name = "case magnesium", family = "light alloy", density = "1800 kg/m3", modulus = "45 GPa", poisson = "0.35", strength = "100 MPa", expansion = "26 um/mK", heat_capacity = "1000 J/kgK", conductivity = "70 W/mK", source = "worked case" }"#;

/// Names of the constants above, as they stand for themselves in a job's text.
fn job_text(text: &str) -> String {
    let named = [("$STEEL", STEEL), ("$ALLOY", ALLOY), ("$IRON", IRON), ("$MAGNESIUM", MAGNESIUM)];
    named.into_iter().fold(text.to_owned(), |text, (name, material)| text.replace(name, material))
}

/// A bearing of this designation, of exact size and open, in a seat of exact interference.
fn exact(designation: &str, interference_um: u32, boss_mm: u32, housing: &str) -> String {
    format!(
        "title = \"Worked case\"\n[bearing]\ndesignation = \"{designation}\"\nmaterial = $STEEL\nclosure = \"open\"\n\
         chamfer = \"0 mm\"\noutside_limits = \"0/0 um\"\n[housing]\nbore_limits = \"-{interference_um}/-{interference_um} um\"\n\
         outside = \"{boss_mm} mm\"\nmaterial = {housing}\n"
    )
}

fn oven(at: &str, hold: &str) -> String {
    format!("[warm]\npart = \"housing\"\nmedium = \"oven\"\ntemperature = \"{at}\"\n{hold}\n")
}

/// Long enough that the slow end of the film range has settled too.
const LONG: &str = "hold = \"48 h\"";

fn freezer(hold: &str) -> String {
    format!("[chill]\npart = \"bearing\"\nmedium = \"freezer\"\n{hold}\n")
}

const AT_ONCE: &str = "[bench]\ncarry = \"0 s\"\n";

fn planned(text: &str) -> Value {
    let text = job_text(text);
    let job = job::check(&text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    serde_json::from_str(&report::json::plan(&plan::plan(&job).unwrap()).unwrap()).unwrap()
}

/// What the terminal shows, on one line, so that words can be looked for across its breaks.
fn shown(text: &str) -> String {
    let job = job::check(&job_text(text), &Library::default()).unwrap();
    let page = report::text::plan(&plan::plan(&job).unwrap(), job.system);
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Everything that is said when a job is refused.
fn refused(text: &str) -> String {
    job::check(&job_text(text), &Library::default()).expect_err("the job was accepted").to_string()
}

fn number(value: &Value, pointer: &str) -> f64 {
    let found = value.pointer(pointer).unwrap_or_else(|| panic!("no {pointer}"));
    found.as_f64().unwrap_or_else(|| panic!("{pointer} is {found}"))
}

/// A figure of the first seat.
fn figure(plan: &Value, pointer: &str) -> f64 {
    number(&plan["seats"][0], pointer)
}

/// Holds to 5 % or 2 (µm or K), whichever is more: as close as the worked figures are meant.
fn roughly(got: f64, wanted: f64) {
    within(got, wanted, (0.05 * wanted.abs()).max(2.0));
}

fn within(got: f64, wanted: f64, tolerance: f64) {
    assert!((got - wanted).abs() <= tolerance, "{got}, wanted {wanted} within {tolerance}");
}

fn caution<'p>(plan: &'p Value, code: &str) -> Option<&'p str> {
    let cautions = plan["cautions"].as_array().unwrap();
    cautions.iter().find(|caution| caution["code"] == code).map(|caution| caution["text"].as_str().unwrap())
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
