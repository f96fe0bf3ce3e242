use super::args::{LogFlags, PlanFormat};
use super::failure::{Failure, named};
use super::options::{JOB, checked_text};
use super::output::{NamedBytes, Output};
use super::plan::is_svg;
use super::{DONE, Outcome, input};
use crate::job::{self, Piece};
use crate::plan::log::{self, LogPlan, PieceLog};
use crate::quantity::System;
use crate::report::log as report;
use crate::report::plot::{self, LogRequest};
use std::path::{Path, PathBuf};

const READINGS: &str = "give readings in CSV with the heading time,part,value";

pub(super) fn run(flags: &LogFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.shown.own)?;
    let job_text = input::text(&flags.job, JOB)?;
    let job = checked_text(&flags.job, &job_text, &library)?;
    let text = input::text(&flags.readings, READINGS)?;
    let found =
        job::check_log(&text, &job).map_err(|problems| Failure::job(named(&flags.readings), text, &problems))?;
    let plan = log::compare(&job, &found).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let system = flags.shown.units.or(job.system);
    let rendered = match flags.shown.format {
        PlanFormat::Text => report::text(&plan, output.layout(system)),
        PlanFormat::Json => report::json(&plan).map_err(Failure::unprintable)?,
        PlanFormat::Csv => report::csv(&plan).map_err(Failure::unprintable)?,
    };
    let mut files = Vec::new();
    if let Some(path) = &flags.plot {
        files.extend(drawn(&plan, system, path)?);
    }
    if let Some(path) = &flags.keep {
        files.push((path.clone(), kept(&plan, job_text)?.into_bytes()));
    }
    if let Some(path) = &flags.keep_medium {
        files.push((path.clone(), kept_medium(&plan, path)?.into_bytes()));
    }
    Ok(Outcome { text: Some(rendered), files, code: DONE })
}

/// The file of the medium with the fitted film, named after the file.
fn kept_medium(plan: &LogPlan<'_>, path: &Path) -> Result<String, Failure> {
    let id = path.file_stem().map(|stem| stem.to_string_lossy().to_lowercase().replace([' ', '_'], "-"));
    let id = id.filter(|id| id.chars().any(char::is_alphanumeric)).unwrap_or_default();
    if id.is_empty() {
        return Err(Failure::plain("--keep-medium has no name for the medium", "write --keep-medium our-freezer.toml"));
    }
    let medium = log::own_medium(plan, &id).map_err(|why| Failure::plain(why.to_string(), why.help()))?;
    medium.to_toml().ok_or_else(|| Failure::plain("the medium has no film to write", "leave --keep-medium out"))
}

/// The text of the job with the fitted films in it, all else as it was typed.
fn kept(plan: &LogPlan<'_>, job_text: String) -> Result<String, Failure> {
    let films = report::kept(plan);
    if films.is_empty() {
        return Err(Failure::plain(
            "there is no fitted film to keep",
            "leave --keep out; the text says why there is none",
        ));
    }
    films.iter().try_fold(job_text, |text, (key, value)| {
        let help = format!("write film = \"{value}\" into the job by hand");
        job::put(&text, key, value).map_err(|error| Failure::plain(error.to_string(), help))
    })
}

/// One picture a part; with several the part's name goes into the file's name.
fn drawn(plan: &LogPlan<'_>, system: System, path: &Path) -> Result<Vec<NamedBytes>, Failure> {
    let svg = is_svg(path)?;
    let one = plan.pieces.len() == 1;
    let of = |piece: &PieceLog| {
        let file = if one { path.to_owned() } else { for_piece(path, piece) };
        let title = report::answer(plan, piece, system);
        let request = LogRequest { piece, title: &title, subtitle: &plan.job.heading.title, system };
        let drawn = if svg { plot::log_svg(&request).map(String::into_bytes) } else { plot::log_png(&request) };
        let drawn = drawn
            .map_err(|error| Failure::plain(format!("the plot could not be drawn: {error}"), "leave --plot out"))?;
        Ok((file, drawn))
    };
    plan.pieces.iter().map(of).collect()
}

fn for_piece(path: &Path, piece: &PieceLog) -> PathBuf {
    let name = match piece.piece {
        Piece::Part => "part",
        Piece::Housing => "housing",
        Piece::Shaft => "shaft",
    };
    let stem = path.file_stem().unwrap_or_default().to_string_lossy();
    let extension = path.extension().unwrap_or_default().to_string_lossy();
    path.with_file_name(format!("{stem}-{name}.{extension}"))
}
