use super::args::{OptionsFlags, PlanFormat};
use super::failure::{Failure, named};
use super::output::{NamedBytes, Output};
use super::plan::{for_seat, is_svg};
use super::scatter::Cores;
use super::{DONE, Outcome, input};
use crate::job::{self, Job};
use crate::plan::SeatKind;
use crate::plan::options::{self, Aim, SeatWays};
use crate::quantity::System;
use crate::quantity::{self, Ratio};
use crate::report::options as report;
use crate::report::plot::{self, PlotError, WaysRequest};
use crate::stock::Library;
use crate::stock::medium::{Direction, Medium};
use std::path::Path;
use uom::si::ratio::ratio;

pub(super) const JOB: &str = "give a job file in TOML; the README shows one";

pub(super) fn run(flags: &OptionsFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.shown.own)?;
    let job = checked(&flags.job, &library)?;
    let media = at_hand(&job, &flags.with, &library)?;
    let seats = options::options_for(&job, &media, aim(flags)?, &Cores)
        .map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let system = flags.shown.units.or(job.system);
    let mut files = Vec::new();
    if let Some(path) = &flags.plot {
        let kinds: Vec<SeatKind> = seats.iter().map(|seat| seat.seat).collect();
        files.extend(drawn(path, &kinds, |number, svg| picture(&job, &seats[number], system, svg))?);
    }
    let text = match flags.shown.format {
        PlanFormat::Text => report::text(&job, &seats, output.layout(system), flags.all),
        PlanFormat::Json => report::json(&job, &seats).map_err(Failure::unprintable)?,
        PlanFormat::Csv => report::csv(&job, &seats).map_err(Failure::unprintable)?,
    };
    Ok(Outcome { text: Some(text), files, code: DONE })
}

fn picture(job: &Job, seat: &SeatWays, system: System, svg: bool) -> Result<Vec<u8>, PlotError> {
    let (ways, title) = (report::legend(seat, system), report::picture_title(seat, system));
    let request = WaysRequest { seat, ways: &ways, title: &title, subtitle: &job.heading.title, system };
    if svg { plot::ways_svg(&request).map(String::into_bytes) } else { plot::ways_png(&request) }
}

/// One picture a seat; with two seats the seat's name goes into the file's name.
pub(super) fn drawn(
    path: &Path,
    seats: &[SeatKind],
    picture: impl Fn(usize, bool) -> Result<Vec<u8>, PlotError>,
) -> Result<Vec<NamedBytes>, Failure> {
    let svg = is_svg(path)?;
    let of = |(number, seat): (usize, &SeatKind)| {
        let file = if seats.len() == 1 { path.to_owned() } else { for_seat(path, *seat) };
        let drawn = picture(number, svg)
            .map_err(|error| Failure::plain(format!("the plot could not be drawn: {error}"), "leave --plot out"))?;
        Ok((file, drawn))
    };
    seats.iter().enumerate().map(of).collect()
}

fn aim(flags: &OptionsFlags) -> Result<Aim, Failure> {
    let Some(text) = &flags.share else { return Ok(Aim::TightestCase) };
    // Unlike in a job, a number below one can mean nothing else here.
    let bare = quantity::number(text).ok().map(|number| number.value).filter(|number| *number > 0.0 && *number < 1.0);
    let share = match bare {
        Some(bare) => Ratio::new::<ratio>(bare),
        None => {
            quantity::share(text)
                .map_err(|error| Failure::plain(format!("--share: {}", error.problem), error.help))?
                .value
        }
    };
    Ok(Aim::Share { share, seed: flags.seed })
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
    let known = library.all_media().map_err(|error| Failure::plain(error.to_string(), "report this"))?;
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
