//! Everything that is made of a text, whatever the text.

use super::can_be_underlined;
use jsonschema::Validator;
use seatwise::job::{self, Job};
use seatwise::plan::drawing::{self, Moment, SectionCase, SectionRequest};
use seatwise::plan::scatter::{self, OneByOne, Request};
use seatwise::plan::{self, Method, Plan, chart, options, seal};
use seatwise::quantity::System;
use seatwise::report::{self, working};
use seatwise::stock::Library;
use seatwise::stock::medium::Medium;
use serde_json::Value;
use std::sync::LazyLock;

/// What became of a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// It is no sound job.
    Refused,
    /// A sound job that cannot be planned, with the reason.
    Unplannable,
    /// A plan came of it.
    Planned,
}

/// Bytes of a report: what a page of text can make, whatever the page says. A history or a mesh that grew out of hand would show.
const LONGEST_REPORT: usize = 1_000_000;

/// Checks and plans a text, and prints the plan. Panics where something is not as it must be.
pub fn of(text: &str, library: &Library) -> Fate {
    of_typed(text, library, text)
}

/// The same for a text whose words stand in all of `typed`, such as that of a material.
pub fn of_typed(text: &str, library: &Library, typed: &str) -> Fate {
    if job::is_seal_alone(text) {
        return of_seal(text);
    }
    let job = match job::check(text, library) {
        Ok(job) => job,
        Err(problems) => {
            for problem in problems.iter() {
                assert!(can_be_underlined(text, &problem.at), "{problem:?}");
                assert!(!problem.message.is_empty() && !problem.help.is_empty(), "{problem:?}");
            }
            return Fate::Refused;
        }
    };
    match plan::plan(&job) {
        Ok(plan) => {
            printed(&plan, job.system, typed);
            Fate::Planned
        }
        Err(error) => {
            assert!(!error.to_string().contains("NaN") && !error.help().is_empty(), "{error}");
            Fate::Unplannable
        }
    }
}

fn of_seal(text: &str) -> Fate {
    let Ok(job) = job::check_seal(text) else { return Fate::Refused };
    match seal::plan_alone(&job) {
        Ok(Some(plan)) => {
            sound(&report::json::seal_alone(&plan).unwrap(), &SEAL);
            readable(&report::text::seal_alone(&plan, job.system, false), text);
            readable(&report::csv::seal_alone(&plan).unwrap(), text);
            Fate::Planned
        }
        Ok(None) => Fate::Unplannable,
        Err(error) => {
            assert!(!error.help().is_empty(), "{error}");
            Fate::Unplannable
        }
    }
}

fn printed(plan: &Plan<'_>, system: System, typed: &str) {
    sound(&report::json::plan(plan).unwrap(), &PLAN);
    let other = if system == System::Inch { System::Metric } else { System::Inch };
    for system in [system, other] {
        readable(&report::text::plan(plan, system), typed);
    }
    readable(&report::text::short(plan, system), typed);
    readable(&report::csv::plan(plan).unwrap(), typed);
    readable(&working::text(&working::working(plan, system), system), typed);
}

/// The rest of what a job is good for: slower, so for some jobs only.
pub fn more_of(text: &str, library: &Library, media: &[Medium]) {
    let Ok(job) = job::check(text, library) else { return };
    let Ok(plan) = plan::plan_by(&job, Method::Plane) else { return };
    printed(&plan, job.system, text);
    if let Ok(ways) = options::options(&job, &options::media_at_hand(&job, media, media)) {
        readable(&report::options::text(&job, &ways, job.system, true), text);
        readable(&report::options::json(&job, &ways).unwrap(), text);
    }
    if let Ok(charts) = chart::charts(&job, &chart::usual_rows(&job), &media[..1]) {
        readable(&report::chart::text(&charts, job.system), text);
    }
    sections(&job, text);
    scattered(&job, text);
}

fn sections(job: &Job, text: &str) {
    for moment in [Moment::Room, Moment::Bore, Moment::Hottest, Moment::Coldest] {
        let request = SectionRequest { seat: None, moment, case: SectionCase::Tightest };
        match drawing::draw(job, &request) {
            Ok(seats) => {
                readable(&report::section::text(job, &seats, job.system), text);
                readable(&report::section::json(job, &seats).unwrap(), text);
            }
            Err(error) => assert!(!error.to_string().contains("NaN"), "{error}"),
        }
    }
}

fn scattered(job: &Job, text: &str) {
    let request = Request { draws: 100, seed: 1, force_limit: None, method: Method::Plane };
    if let Ok(scatter) = scatter::scatter(job, &request, &OneByOne) {
        readable(&report::scatter::csv(&scatter).unwrap(), text);
    }
}

/// Of a sensible length, and as the schema says: what is no finite number is written as null, which few places allow.
fn sound(json: &str, schema: &Validator) {
    assert!(json.len() < LONGEST_REPORT, "{} bytes", json.len());
    let value: Value = serde_json::from_str(json).unwrap();
    let wrong: Vec<String> =
        schema.iter_errors(&value).map(|error| format!("{}: {error}", error.instance_path())).collect();
    assert!(wrong.is_empty(), "{wrong:?}");
}

fn validator(schema: Result<String, serde_json::Error>) -> Validator {
    jsonschema::validator_for(&serde_json::from_str(&schema.unwrap()).unwrap()).unwrap()
}

static PLAN: LazyLock<Validator> = LazyLock::new(|| validator(report::json::schema()));
static SEAL: LazyLock<Validator> = LazyLock::new(|| validator(report::json::seal_schema()));

/// Of a sensible length, and no word in it stands for a number that is none, unless it was typed.
pub fn readable(text: &str, typed: &str) {
    assert!(text.len() < LONGEST_REPORT, "{} bytes", text.len());
    for line in text.lines() {
        let wrong = |word: &str| matches!(word, "NaN" | "-NaN" | "inf" | "-inf" | "+inf");
        let mut words = line.split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '+'));
        assert!(!words.any(|word| wrong(word) && !typed.contains(word)), "{line}");
    }
}
