//! How long a plan takes, in memory, from a checked job and from its text.

#![allow(clippy::unwrap_used, reason = "the jobs are examples that the tests plan")]

use seatwise::stock::Library;
use seatwise::{job, plan, report};

fn main() {
    divan::main();
}

const JOBS: [(&str, &str); 3] = [
    ("chill and warm", include_str!("../examples/pump-case.toml")),
    ("chill", include_str!("../examples/iron-hub.toml")),
    ("press", include_str!("../examples/core-plug.toml")),
];

fn text(name: &str) -> &'static str {
    JOBS.iter().find(|(known, _)| *known == name).map_or("", |(_, text)| text)
}

#[divan::bench(args = JOBS.map(|(name, _)| name))]
fn plan_a_checked_job(bencher: divan::Bencher, name: &str) {
    let job = job::check(text(name), &Library::default()).unwrap();
    bencher.bench(|| plan::plan(divan::black_box(&job)).unwrap());
}

#[divan::bench(args = JOBS.map(|(name, _)| name))]
fn check_a_job(bencher: divan::Bencher, name: &str) {
    let library = Library::default();
    bencher.bench(|| job::check(divan::black_box(text(name)), &library).unwrap());
}

#[divan::bench(args = JOBS.map(|(name, _)| name))]
fn write_a_plan_as_json(bencher: divan::Bencher, name: &str) {
    let job = job::check(text(name), &Library::default()).unwrap();
    let plan = plan::plan(&job).unwrap();
    bencher.bench(|| report::json::plan(divan::black_box(&plan)).unwrap());
}
