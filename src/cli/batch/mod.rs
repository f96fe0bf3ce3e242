//! A list of jobs, one a row: read, planned and written chunk by chunk, in order.

mod list;
mod part;
mod row;

use super::args::{BatchFlags, BatchFormat};
use super::failure::{Failure, named};
use super::output::Output;
use super::{DONE, Outcome, SOME_FAILED, input};
use crate::stock::Library;
use indicatif::{ProgressBar, ProgressStyle};
use list::{List, Record};
use part::{Part, Progress};
use rayon::prelude::*;
use row::{Planner, Told};
use std::io::Write;
use std::path::{Path, PathBuf};

/// Rows that are in memory at one time.
const CHUNK: usize = 256;

const TEMPLATE: &str = include_str!("template.csv");

/// A list to begin with.
pub(super) fn template() -> Outcome {
    Outcome::done(TEMPLATE.to_owned())
}

pub(super) fn run(flags: &BatchFlags, inputs: &[&Path]) -> Result<u8, Failure> {
    let library = input::library(&flags.own)?;
    let path = flags.list.clone().unwrap_or_else(|| PathBuf::from("-"));
    let mut list = List::open(&path)?;
    let planner = Planner::new(list.columns().to_vec(), flags.format, &library)?;
    let file = flags.output.file.as_deref().filter(|file| *file != Path::new("-"));
    let Some(file) = file else {
        let mut out = std::io::BufWriter::new(anstream::stdout());
        let mut progress = Progress::default();
        write(&mut out, planner.heading())?;
        while let Some(told) = chunk(&mut list, &planner, &library, &mut progress)? {
            tell(&path, &told, None);
            write(&mut out, &text(&told))?;
        }
        out.flush().map_err(|error| unwritten(&error))?;
        return Ok(code(&progress, &path));
    };
    let output = Output::new(&flags.output, inputs.to_vec());
    output.may_write(file)?;
    to_file(flags, &path, (&mut list, &planner, &library), file)
}

fn to_file(
    flags: &BatchFlags,
    path: &Path,
    (list, planner, library): (&mut List, &Planner, &Library),
    file: &Path,
) -> Result<u8, Failure> {
    let key = part::key(flags, list.columns())?;
    let (mut part, mut progress) = Part::open(file, &key, flags)?;
    if progress.rows > 0 {
        skip(list, &progress)?;
        say(&format!("going on after {} rows that are done\n", progress.rows));
    } else {
        part.write(planner.heading().as_bytes())?;
    }
    let bar = bar(list.length());
    while let Some(told) = chunk(list, planner, library, &mut progress)? {
        tell(path, &told, Some(&bar));
        part.write(text(&told).as_bytes())?;
        part.keep(&progress)?;
        bar.set_position(list.position());
    }
    part.finish()?;
    bar.finish_and_clear();
    Ok(code(&progress, path))
}

/// The results of the next rows; nothing at the end of the list.
fn chunk(
    list: &mut List,
    planner: &Planner,
    library: &Library,
    progress: &mut Progress,
) -> Result<Option<Vec<Told>>, Failure> {
    let records = list.next_chunk(CHUNK)?;
    if records.is_empty() {
        return Ok(None);
    }
    let told: Vec<Told> = records.par_iter().map(|record| planner.plan(record, library)).collect();
    for (record, told) in records.iter().zip(&told) {
        progress.add(record, told.failed());
    }
    Ok(Some(told))
}

/// Reads over the rows that are done, which must be the same as they were.
fn skip(list: &mut List, done: &Progress) -> Result<(), Failure> {
    let mut again = Progress::default();
    while again.rows < done.rows {
        let left = usize::try_from(done.rows - again.rows).unwrap_or(CHUNK);
        let records: Vec<Record> = list.next_chunk(CHUNK.min(left))?;
        if records.is_empty() {
            break;
        }
        records.iter().for_each(|record| again.add(record, false));
    }
    if again.rows == done.rows && again.hash == done.hash {
        return Ok(());
    }
    Err(Failure::plain(
        "the list is not the one that was interrupted: rows that are done have changed",
        "give that list again, or begin anew with --force in place of --resume",
    ))
}

fn text(told: &[Told]) -> String {
    told.iter().map(|told| told.text.as_str()).collect()
}

/// Reports the rows that could not be planned, each with its line in the list.
fn tell(path: &Path, told: &[Told], bar: Option<&ProgressBar>) {
    let lines: String = told.iter().flat_map(|told| told.complaints(&named(path))).collect();
    if lines.is_empty() {
        return;
    }
    match bar {
        Some(bar) => bar.suspend(|| say(&lines)),
        None => say(&lines),
    }
}

fn say(text: &str) {
    // A closed standard error leaves no one to tell; the exit code and the row still do.
    let _ = anstream::stderr().write_all(text.as_bytes());
}

fn code(progress: &Progress, path: &Path) -> u8 {
    if progress.failed == 0 {
        return DONE;
    }
    let (failed, rows) = (progress.failed, progress.rows);
    say(&format!("{failed} of {rows} rows of {} could not be planned\n", named(path)));
    SOME_FAILED
}

/// A bar on a terminal, and nothing in a pipe.
fn bar(length: Option<u64>) -> ProgressBar {
    let Some(length) = length else { return ProgressBar::hidden() };
    let bar = ProgressBar::new(length);
    let style = ProgressStyle::with_template("{wide_bar} {percent} %, {eta} left");
    bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
    bar
}

fn write(out: &mut impl Write, text: &str) -> Result<(), Failure> {
    out.write_all(text.as_bytes()).map_err(|error| unwritten(&error))
}

fn unwritten(error: &std::io::Error) -> Failure {
    match error.kind() {
        std::io::ErrorKind::BrokenPipe => Failure::ReaderGone,
        _ => Failure::plain(format!("cannot write the result: {error}"), "check the disk or the pipe"),
    }
}

impl BatchFormat {
    fn name(self) -> &'static str {
        match self {
            Self::Csv => "csv",
            Self::Json => "json",
        }
    }
}
