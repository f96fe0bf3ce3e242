use super::args::{TableFlags, TableFormat};
use super::failure::Failure;
use super::options::{at_hand, checked};
use super::output::Output;
use super::{Outcome, input, spread};
use crate::job::Job;
use crate::plan::chart::{HOTTEST_C, charts, usual_rows};
use crate::quantity::{self, ThermodynamicTemperature, celsius};
use crate::report::chart as report;
use crate::stock::Library;
use crate::stock::medium::{Direction, Medium};

/// What the inner part comes from where neither the flags nor the job say it.
const USUAL: [&str; 2] = ["domestic-freezer", "dry-ice"];

pub(super) fn run(flags: &TableFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.shown.own)?;
    let job = checked(&flags.job, &library)?;
    let rows = match &flags.outer {
        Some(text) => rows(text)?,
        None => usual_rows(&job),
    };
    let media = media(&job, &flags.with, &library)?;
    let charts = charts(&job, &rows, &media).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let system = flags.shown.units.or(job.system);
    let text = match flags.shown.format {
        TableFormat::Text => report::text(&charts, output.layout(system)),
        TableFormat::Csv => report::csv(&charts).map_err(Failure::unprintable)?,
        TableFormat::Html => report::html(&charts, system).map_err(Failure::unprintable)?,
    };
    Ok(Outcome::done(text))
}

fn rows(text: &str) -> Result<Vec<ThermodynamicTemperature>, Failure> {
    let one = |text: String| {
        let entered = quantity::temperature(&text)
            .map_err(|error| Failure::plain(format!("--outer: {}", error.problem), error.help))?;
        if entered.value > celsius(HOTTEST_C) {
            let message = format!("--outer: {text} is hotter than a chart goes, {HOTTEST_C:.0} °C");
            return Err(Failure::plain(message, "give milder temperatures"));
        }
        Ok(entered.value)
    };
    spread::values("--outer", text)?.into_iter().map(one).collect()
}

/// What chills, of what the shop has.
fn media(job: &Job, with: &[String], library: &Library) -> Result<Vec<Medium>, Failure> {
    let usual = USUAL.map(str::to_owned);
    let asked = if with.is_empty() && job.media.is_empty() { &usual[..] } else { with };
    let hand = at_hand(job, asked, library)?;
    Ok(hand.into_iter().filter(|medium| medium.direction() == Direction::Chill).collect())
}
