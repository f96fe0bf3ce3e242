use super::args::{WorkingFlags, WorkingFormat};
use super::failure::Failure;
use super::options::checked;
use super::output::Output;
use super::{Outcome, input};
use crate::plan::plan_by;
use crate::report::working as report;

pub(super) fn run(flags: &WorkingFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.shown.own)?;
    let job = checked(&flags.job, &library)?;
    let plan = plan_by(&job, flags.model.method()).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let system = flags.shown.units.or(job.system);
    let working = report::working(&plan, system);
    Ok(Outcome::done(match flags.shown.format {
        WorkingFormat::Text => report::text(&working, output.layout(system)),
        WorkingFormat::Markdown => report::markdown(&working, system),
        WorkingFormat::Html => report::html(&working, system),
    }))
}
