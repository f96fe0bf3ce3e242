//! How long a million drawn parts take, tables and sensitivities included, on every core.

#![allow(clippy::unwrap_used, reason = "the jobs are examples that the tests plan")]

use rayon::prelude::*;
use seatwise::job::{self, Job};
use seatwise::plan::Method;
use seatwise::plan::scatter::{OneByOne, Request, Worker, scatter, seat_models};
use seatwise::stock::Library;

const DRAWS: u64 = 1_000_000;

struct Cores;

impl Worker for Cores {
    fn each<R: Send>(&self, count: usize, task: impl Fn(usize) -> R + Sync + Send) -> Vec<R> {
        (0..count).into_par_iter().map(task).collect()
    }
}

fn main() {
    divan::main();
}

const PRESS: &str = include_str!("../examples/core-plug.toml");
const CHILL: &str = include_str!("../examples/iron-hub.toml");
const BOTH: &str = include_str!("../examples/pump-case.toml");

fn checked(text: &str) -> Job {
    job::check(text, &Library::default()).unwrap()
}

fn million(bencher: divan::Bencher, text: &str, method: Method) {
    let job = checked(text);
    let request = Request { draws: DRAWS, seed: 1, force_limit: None, method };
    bencher.bench(|| scatter(divan::black_box(&job), &request, &Cores).unwrap());
}

const JOBS: [(&str, &str); 3] = [("press", PRESS), ("chill", CHILL), ("chill and warm", BOTH)];

#[divan::bench(args = JOBS.map(|(name, _)| name), sample_count = 10)]
fn lumped(bencher: divan::Bencher, name: &str) {
    let text = JOBS.iter().find(|(known, _)| *known == name).map_or("", |(_, text)| text);
    million(bencher, text, Method::Plane);
}

#[divan::bench(sample_count = 10)]
fn section(bencher: divan::Bencher) {
    million(bencher, BOTH, Method::Section);
}

#[divan::bench(sample_count = 10)]
fn tables_alone(bencher: divan::Bencher) {
    let job = checked(BOTH);
    bencher.bench(|| seat_models(divan::black_box(&job), Method::Plane, &Cores).unwrap());
}

#[divan::bench(sample_count = 5)]
fn one_core(bencher: divan::Bencher) {
    let job = checked(BOTH);
    let request = Request { draws: DRAWS, seed: 1, force_limit: None, method: Method::Plane };
    bencher.bench(|| scatter(divan::black_box(&job), &request, &OneByOne).unwrap());
}
