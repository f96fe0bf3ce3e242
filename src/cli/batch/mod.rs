//! A list of jobs, one a row: read, planned and written chunk by chunk, in order.

mod list;
mod part;
mod row;

use super::args::{BatchFlags, BatchFormat};
use super::failure::{Failure, named};
use super::output::{Output, is_stream, unprinted, unwritten};
use super::voice::Voice;
use super::{DONE, Outcome, SOME_FAILED, input};
use crate::stock::Library;
use indicatif::{ProgressBar, ProgressStyle};
use list::{List, Record};
use part::{LeftOver, Part, Progress};
use rayon::prelude::*;
use row::{Planner, Told};
use std::fs::OpenOptions;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, Receiver, SyncSender};

/// Rows that are planned at one time.
const CHUNK: usize = 256;

/// Rows that a core takes on at one time: few, so that the cores come to the end of a chunk together.
const AT_ONCE: usize = 2;

/// Chunks that may wait to be written, beside the one that is planned and the one that is being written.
const AHEAD: usize = 1;

const TEMPLATE: &str = include_str!("template.csv");

/// A list to begin with.
pub(super) fn template() -> Outcome {
    Outcome::done(TEMPLATE.to_owned())
}

pub(super) fn run(flags: &BatchFlags, output: &Output<'_>, voice: Voice) -> Result<u8, Failure> {
    let library = input::library(&flags.own)?;
    let path = flags.list.clone().unwrap_or_else(|| PathBuf::from("-"));
    if let Some(file) = output.file() {
        output.may_write_text()?;
        part::is_no_input(file, output)?;
    }
    let mut list = List::open(&path)?;
    let planner = Planner::new(list.columns().to_vec(), flags.format, &library)?;
    let run = Run { flags, path: &path, planner: &planner, stocked: &library, voice };
    match output.file() {
        None => run.to_stream(&mut list, anstream::stdout()),
        Some(file) if is_stream(file) => {
            let stream = OpenOptions::new().write(true).open(file).map_err(|error| unwritten(file, &error))?;
            run.to_stream(&mut list, stream)
        }
        Some(file) => {
            let left_over = match () {
                () if flags.resume => LeftOver::GoOn,
                () if output.forced() => LeftOver::Replace,
                () => LeftOver::Refuse,
            };
            run.to_file(&mut list, file, left_over)
        }
    }
}

/// What all rows of a list share.
struct Run<'r> {
    flags: &'r BatchFlags,
    path: &'r Path,
    planner: &'r Planner,
    stocked: &'r Library,
    voice: Voice,
}

/// Rows that are planned, what has been done by their end, and how much of the list has been read.
struct Chunk {
    told: Vec<Told>,
    progress: Progress,
    position: u64,
}

impl Run<'_> {
    /// Rows as they come, to a pipe or a device.
    fn to_stream(&self, list: &mut List, stream: impl Write) -> Result<u8, Failure> {
        let mut out = std::io::BufWriter::new(stream);
        let mut progress = Progress::default();
        write(&mut out, self.planner.heading())?;
        while let Some(told) = self.chunk(list, &mut progress)? {
            self.tell(&told, None);
            write(&mut out, &text(&told))?;
        }
        out.flush().map_err(|error| unprinted(&error))?;
        Ok(self.code(&progress))
    }

    fn to_file(&self, list: &mut List, file: &Path, left_over: LeftOver) -> Result<u8, Failure> {
        let key = part::key(self.flags, list.columns())?;
        let (mut part, mut progress) = Part::open(file, &key, left_over)?;
        if progress.rows > 0 {
            skip(list, &progress)?;
            self.voice.talk(&format!("going on after {} rows that are done\n", progress.rows));
        } else {
            part.write(self.planner.heading().as_bytes())?;
        }
        let bar = if self.voice.quiet { ProgressBar::hidden() } else { bar(list.length()) };
        // Waiting for the disk takes no core, so the next rows are planned meanwhile.
        let (send, receive) = mpsc::sync_channel(AHEAD);
        let (planned, written) = std::thread::scope(|scope| {
            let writer = scope.spawn(|| self.keep_all(part, receive, &bar));
            let planned = self.plan_all(list, &mut progress, send);
            (planned, writer.join())
        });
        // What could be planned is kept, whatever stopped it.
        let part = written.unwrap_or_else(|panic| std::panic::resume_unwind(panic))?;
        planned?;
        part.finish()?;
        bar.finish_and_clear();
        Ok(self.code(&progress))
    }

    /// Plans chunk by chunk for as long as somebody takes the results.
    fn plan_all(&self, list: &mut List, progress: &mut Progress, done: SyncSender<Chunk>) -> Result<(), Failure> {
        while let Some(told) = self.chunk(list, progress)? {
            let chunk = Chunk { told, progress: progress.clone(), position: list.position() };
            // The one who takes them has failed, and says why.
            if done.send(chunk).is_err() {
                break;
            }
        }
        Ok(())
    }

    /// Writes chunks in the order in which they come, and notes after each that it is good.
    fn keep_all(&self, mut part: Part, chunks: Receiver<Chunk>, bar: &ProgressBar) -> Result<Part, Failure> {
        for Chunk { told, progress, position } in chunks {
            self.tell(&told, Some(bar));
            part.write(text(&told).as_bytes())?;
            part.keep(&progress)?;
            bar.set_position(position);
        }
        Ok(part)
    }

    /// The results of the next rows; nothing at the end of the list.
    fn chunk(&self, list: &mut List, progress: &mut Progress) -> Result<Option<Vec<Told>>, Failure> {
        let records = list.next_chunk(CHUNK)?;
        if records.is_empty() {
            return Ok(None);
        }
        let planned = records.par_iter().with_max_len(AT_ONCE).map(|record| self.planner.plan(record, self.stocked));
        let told: Vec<Told> = planned.collect();
        for (record, told) in records.iter().zip(&told) {
            progress.add(record, told.failed());
        }
        Ok(Some(told))
    }

    /// Reports the rows that could not be planned, each with its line in the list.
    fn tell(&self, told: &[Told], bar: Option<&ProgressBar>) {
        let lines: String = told.iter().flat_map(|told| told.complaints(&named(self.path))).collect();
        if lines.is_empty() {
            return;
        }
        match bar {
            Some(bar) => bar.suspend(|| self.voice.error(&lines)),
            None => self.voice.error(&lines),
        }
    }

    fn code(&self, progress: &Progress) -> u8 {
        if progress.failed == 0 {
            return DONE;
        }
        let (failed, rows) = (progress.failed, progress.rows);
        self.voice.talk(&format!("{failed} of {rows} rows of {} could not be planned\n", named(self.path)));
        SOME_FAILED
    }
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

/// A bar on a terminal, and nothing in a pipe.
fn bar(length: Option<u64>) -> ProgressBar {
    let Some(length) = length else { return ProgressBar::hidden() };
    let bar = ProgressBar::new(length);
    let style = ProgressStyle::with_template("{wide_bar} {percent} %, {eta} left");
    bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
    bar
}

fn write(out: &mut impl Write, text: &str) -> Result<(), Failure> {
    out.write_all(text.as_bytes()).map_err(|error| unprinted(&error))
}

impl BatchFormat {
    fn name(self) -> &'static str {
        match self {
            Self::Csv => "csv",
            Self::Json => "json",
        }
    }
}
