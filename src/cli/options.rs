use super::args::{OptionsFlags, PlanFormat};
use super::failure::{Failure, named};
use super::{Outcome, input};
use crate::job::{self, Job};
use crate::plan::options;
use crate::report::options as report;
use crate::stock::Library;
use crate::stock::medium::{Direction, Medium, embedded_media};
use std::path::Path;

pub(super) const JOB: &str = "give a job file in TOML; the README shows one";

pub(super) fn run(flags: &OptionsFlags) -> Result<Outcome, Failure> {
    let library = input::library(&flags.own.material)?;
    let job = checked(&flags.job, &library)?;
    let media = at_hand(&job, &flags.with, &library)?;
    let seats = options::options(&job, &media).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let system = flags.units.or(job.system);
    let text = match flags.format {
        PlanFormat::Text => report::text(&job, &seats, system, flags.all),
        PlanFormat::Json => report::json(&job, &seats).map_err(Failure::unprintable)?,
        PlanFormat::Csv => report::csv(&job, &seats).map_err(Failure::unprintable)?,
    };
    Ok(Outcome::done(text))
}

/// The job in a file, or its mistakes.
pub(super) fn checked(path: &Path, library: &Library) -> Result<Job, Failure> {
    checked_text(path, &input::text(path, JOB)?, library)
}

/// The job in a text that was read from `path`, or its mistakes.
pub(super) fn checked_text(path: &Path, text: &str, library: &Library) -> Result<Job, Failure> {
    if job::is_seal_alone(text) {
        return Err(Failure::plain(
            format!("{} holds a shaft seal alone: there is no seat of a bearing to compute", named(path)),
            "see it with seatwise plan or seatwise card, or describe a bearing and its seat as well",
        )
        .of_file(path));
    }
    job::check(text, library).map_err(|problems| Failure::job(named(path), text.to_owned(), &problems))
}

/// The media that are asked for, or else those of the job, or else all.
pub(super) fn at_hand(job: &Job, with: &[String], library: &Library) -> Result<Vec<Medium>, Failure> {
    let asked = with.iter().map(|name| asked(name, library)).collect::<Result<Vec<_>, _>>()?;
    let known = embedded_media().map_err(|error| Failure::plain(error.to_string(), "report this"))?;
    Ok(options::media_at_hand(job, &asked, &known))
}

fn asked(name: &str, library: &Library) -> Result<Medium, Failure> {
    const LIST: &str = "`seatwise media` lists them";
    let medium = library.medium(name).map_err(|error| Failure::plain(format!("--with: {error}"), LIST))?;
    if medium.direction() == Direction::Air {
        return Err(Failure::plain(format!("--with: {} neither chills nor warms", medium.id()), LIST));
    }
    Ok(medium)
}
