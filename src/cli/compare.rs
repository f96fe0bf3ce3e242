use super::args::{CompareFlags, PlanFormat};
use super::failure::{Failure, named};
use super::options::{JOB, checked_text};
use super::output::Output;
use super::{Outcome, input};
use crate::job::{self, Job};
use crate::plan;
use crate::report::compare::{self as report, Compared};
use std::path::Path;

pub(super) fn run(flags: &CompareFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.shown.own)?;
    let texts = Failure::gathered(flags.jobs.iter().map(|path| input::text(path, JOB)))?;
    let jobs = texts.iter().zip(&flags.jobs).map(|(text, path)| checked_text(path, text, &library));
    let jobs: Vec<Job> = Failure::gathered(jobs)?;
    let compared = jobs.iter().zip(&texts).zip(&flags.jobs).map(|((job, text), path)| compared(job, text, path));
    let compared = compared.collect::<Result<Vec<_>, _>>()?;
    let system = flags.shown.units.or(jobs.first().map_or_else(Default::default, |job| job.system));
    let text = match flags.shown.format {
        PlanFormat::Text => report::text(&compared, output.layout(system)),
        PlanFormat::Json => report::json(&compared).map_err(Failure::unprintable)?,
        PlanFormat::Csv => report::csv(&compared).map_err(Failure::unprintable)?,
    };
    Ok(Outcome::done(text))
}

fn compared<'j>(job: &'j Job, text: &str, path: &Path) -> Result<Compared<'j>, Failure> {
    let plan = plan::plan(job).map_err(|error| Failure::plain(format!("{}: {error}", named(path)), error.help()))?;
    let name = path.file_stem().map_or_else(|| named(path), |stem| stem.to_string_lossy().into_owned());
    Ok(Compared { name: if name == "-" { named(path) } else { name }, typed: job::typed(text), plan })
}
