use super::args::ScatterFlags;
use super::failure::Failure;
use crate::job::Job;
use crate::plan::scatter::{self, Request, Scatter, Worker};
use crate::plan::{Method, SolvedSeats};
use crate::quantity::{self, Force};
use rayon::prelude::*;
use uom::si::force::newton;

/// Every core of the machine.
pub(super) struct Cores;

impl Worker for Cores {
    fn each<R: Send>(&self, count: usize, task: impl Fn(usize) -> R + Sync + Send) -> Vec<R> {
        (0..count).into_par_iter().map(task).collect()
    }
}

/// The parts that the flags ask for; none where they ask for none.
pub(super) fn drawn(
    job: &Job,
    flags: &ScatterFlags,
    method: (Method, &SolvedSeats),
) -> Result<Option<Scatter>, Failure> {
    let Some(draws) = flags.draws else { return Ok(None) };
    let force_limit = flags.force_limit.as_deref().map(force).transpose()?;
    let request = Request { draws, seed: flags.seed, force_limit, method: method.0 };
    let drawn = scatter::scatter_among(job, &request, method.1, &Cores);
    drawn.map(Some).map_err(|error| Failure::plain(error.to_string(), error.help()))
}

fn force(text: &str) -> Result<Force, Failure> {
    let force = quantity::force(text)
        .map_err(|error| Failure::plain(format!("--force-limit: {}", error.problem), error.help))?
        .value;
    if force.get::<newton>() >= 0.0 {
        return Ok(force);
    }
    Err(Failure::plain(
        format!("--force-limit: {text} is below zero"),
        "give the force that the press has, such as \"8 kN\"",
    ))
}
