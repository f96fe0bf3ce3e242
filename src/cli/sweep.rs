use super::args::{PlanFormat, SweepFlags};
use super::failure::{Failure, named};
use super::options::{JOB, drawn};
use super::output::{NamedBytes, Output};
use super::{DONE, Outcome, input, spread};
use crate::job::{self, Job, put};
use crate::plan::{self, Method, SeatKind, SolvedSeats};
use crate::quantity::System;
use crate::report::plot::{self, SweepKey, SweepRequest};
use crate::report::sweep::{self as report, Step};
use crate::stock::Library;
use std::path::Path;

/// Keys that one sweep may go over, and plans that it may make.
const MOST_KEYS: usize = 2;
const MOST_STEPS: usize = 10_000;

struct Over {
    key: String,
    values: Vec<String>,
}

pub(super) fn run(flags: &SweepFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.shown.own)?;
    let text = input::text(&flags.job, JOB)?;
    let over = flags.over.iter().map(|text| read(text)).collect::<Result<Vec<_>, _>>()?;
    let combinations = combinations(&over)?;
    let keys: Vec<String> = over.iter().map(|over| over.key.clone()).collect();
    let name = named(&flags.job);
    let jobs = combinations
        .iter()
        .map(|values| job_with(&name, &text, &keys, values, &library))
        .collect::<Result<Vec<_>, _>>()?;
    let solved = SolvedSeats::default();
    let steps = jobs.iter().zip(combinations).map(|(job, values)| step(job, &keys, values, &solved));
    let steps = steps.collect::<Result<Vec<_>, _>>()?;
    let first = jobs.first();
    let system = flags.shown.units.or(first.map_or_else(Default::default, |job| job.system));
    let title = first.map_or("", |job| job.heading.title.as_str());
    let mut files = Vec::new();
    if let Some(path) = &flags.plot {
        let keys: Vec<SweepKey> = over.into_iter().map(axis).collect();
        files.extend(pictures(path, &keys, &steps, (title, system))?);
    }
    let text = match flags.shown.format {
        PlanFormat::Text => report::text(title, &keys, &steps, output.layout(system)),
        PlanFormat::Json => report::json(title, &keys, &steps).map_err(Failure::unprintable)?,
        PlanFormat::Csv => report::csv(&keys, &steps).map_err(Failure::unprintable)?,
    };
    Ok(Outcome { text: Some(text), files, code: DONE })
}

fn axis(over: Over) -> SweepKey {
    let numbers = spread::numbers(&over.values);
    SweepKey { name: over.key, values: over.values, numbers }
}

/// One picture a seat.
fn pictures(
    path: &Path,
    keys: &[SweepKey],
    steps: &[Step<'_>],
    (subtitle, system): (&str, System),
) -> Result<Vec<NamedBytes>, Failure> {
    let seats: Vec<SeatKind> = steps.first().iter().flat_map(|step| step.plan.seats.iter().map(|s| s.seat)).collect();
    let names: Vec<&str> = keys.iter().map(|key| key.name.as_str()).collect();
    drawn(path, &seats, |seat, svg| {
        let title = format!("Clearance over {}, {} seat", names.join(" and "), seats[seat].name());
        let request = SweepRequest { keys, steps, seat, title: &title, subtitle, system };
        if svg { plot::sweep_svg(&request).map(String::into_bytes) } else { plot::sweep_png(&request) }
    })
}

fn read(text: &str) -> Result<Over, Failure> {
    let help = "write --over \"warm.temperature=60 °C..120 °C/7\"";
    let (key, values) =
        text.split_once('=').ok_or_else(|| Failure::plain(format!("--over: \"{text}\" has no ="), help))?;
    Ok(Over { key: key.trim().to_owned(), values: spread::values("--over", values)? })
}

/// Every value of the first key with every value of the second.
fn combinations(over: &[Over]) -> Result<Vec<Vec<String>>, Failure> {
    if over.len() > MOST_KEYS {
        let message = format!("--over is given {} times, and at most {MOST_KEYS} are allowed", over.len());
        return Err(Failure::plain(message, "sweep two keys at a time; for more, list the jobs in a batch"));
    }
    if over.len() == MOST_KEYS && over[0].key == over[1].key {
        return Err(Failure::plain(format!("--over names `{}` twice", over[0].key), "give its values in one --over"));
    }
    let count: usize = over.iter().map(|over| over.values.len()).product();
    if count > MOST_STEPS {
        let message = format!("--over asks for {count} plans, and at most {MOST_STEPS} are made");
        return Err(Failure::plain(message, "take fewer values"));
    }
    Ok(over.iter().fold(vec![Vec::new()], |rows, over| {
        let with = |row: &Vec<String>| {
            let row = row.clone();
            over.values.iter().map(move |value| [row.clone(), vec![value.clone()]].concat())
        };
        rows.iter().flat_map(with).collect()
    }))
}

/// The job with these values in its text, checked as any job is.
fn job_with(name: &str, text: &str, keys: &[String], values: &[String], library: &Library) -> Result<Job, Failure> {
    let mut text = text.to_owned();
    for (key, value) in keys.iter().zip(values) {
        text = put(&text, key, value)
            .map_err(|error| Failure::plain(format!("--over: {error}"), "the README lists the keys of a job"))?;
    }
    let name = format!("{name} with {}", described(keys, values));
    job::check(&text, library).map_err(|problems| Failure::job(name, text, &problems))
}

fn described(keys: &[String], values: &[String]) -> String {
    let pairs: Vec<String> = keys.iter().zip(values).map(|(key, value)| format!("{key} = {value}")).collect();
    pairs.join(", ")
}

fn step<'j>(job: &'j Job, keys: &[String], values: Vec<String>, solved: &SolvedSeats) -> Result<Step<'j>, Failure> {
    let plan = plan::plan_among(job, Method::Auto, solved)
        .map_err(|error| Failure::plain(format!("with {}: {error}", described(keys, &values)), error.help()))?;
    Ok(Step { values, plan })
}
