//! Results that are not whole yet: `OUT.part` beside the output, and `OUT.state`, which says how far it is good.
//!
//! The state is replaced in one move after its rows have been written, so a run that is killed at any moment leaves a part
//! of which the state's share is whole; the rest is cut off when the run goes on.

use super::list::Record;
use crate::cli::args::BatchFlags;
use crate::cli::failure::Failure;
use crate::cli::input;
use crate::cli::output::{Output, unwritten};
use std::ffi::OsString;
use std::fs::{self, File, OpenOptions};
use std::io::{Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

/// First line of a state; the number changes when its meaning or the results do.
const KIND: &str = concat!("seatwise batch 3, ", env!("CARGO_PKG_VERSION"));

/// How the names beside the output end: the rows, what vouches for them, and the next of that.
const ENDS: [&str; 3] = [".part", ".state", ".state-new"];

/// How far a run has come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Progress {
    /// Rows that are done.
    pub(super) rows: u64,
    /// How many of them could not be planned.
    pub(super) failed: u64,
    /// A figure that any change in those rows changes.
    pub(super) hash: u64,
}

impl Default for Progress {
    fn default() -> Self {
        Self { rows: 0, failed: 0, hash: FNV_START }
    }
}

impl Progress {
    /// Counts a row.
    pub(super) fn add(&mut self, record: &Record, failed: bool) {
        self.rows += 1;
        self.failed += u64::from(failed);
        for cell in &record.cells {
            self.hash = mixed(self.hash, cell);
            // Between cells, so that ("ab", "c") is not ("a", "bc"); a byte that UTF-8 never holds.
            self.hash = mixed(self.hash, &[0xff]);
        }
    }
}

/// FNV-1a with 64 bits, whose two constants these are (public domain, from memory): it tells lists apart, and is no lock.
const FNV_START: u64 = 0xcbf2_9ce4_8422_2325;
const FNV_PRIME: u64 = 0x0000_0100_0000_01b3;

fn mixed(hash: u64, bytes: &[u8]) -> u64 {
    bytes.iter().fold(hash, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(FNV_PRIME))
}

/// What two runs must have in common for one to go on where the other stopped.
pub(super) fn key(flags: &BatchFlags, columns: &[String]) -> Result<String, Failure> {
    let mut hash = mixed(FNV_START, columns.join("\n").as_bytes());
    for path in flags.own.files() {
        hash = mixed(hash, input::text(path, "give a file in TOML")?.as_bytes());
    }
    Ok(format!("{} {hash:016x}", flags.format.name()))
}

/// What becomes of results that an interrupted run has left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum LeftOver {
    /// They are kept, and the run goes on behind them.
    GoOn,
    /// They are written over.
    Replace,
    /// They stay, and nothing is done.
    Refuse,
}

/// Results on their way to a file.
pub(super) struct Part {
    file: File,
    bytes: u64,
    part: PathBuf,
    state: PathBuf,
    target: PathBuf,
    key: String,
}

impl Part {
    /// Begins a part, or goes on with one.
    pub(super) fn open(target: &Path, key: &str, wanted: LeftOver) -> Result<(Self, Progress), Failure> {
        let (part, state) = (beside(target, ENDS[0]), beside(target, ENDS[1]));
        let left_over = part.exists() || state.exists();
        if left_over && wanted == LeftOver::Refuse {
            let message = format!("{} is left from a run that was interrupted", part.display());
            return Err(Failure::plain(message, "add --resume to go on with it, or --force to begin anew"));
        }
        let goes_on = left_over && wanted == LeftOver::GoOn;
        let (progress, bytes) = if goes_on { read(&state, key)? } else { (Progress::default(), 0) };
        let failed = |error: &std::io::Error| unwritten(&part, error);
        if bytes == 0 && state.exists() {
            // An old state must not vouch for a new part.
            fs::remove_file(&state).map_err(|error| unwritten(&state, &error))?;
        }
        let mut file =
            OpenOptions::new().write(true).create(true).truncate(false).open(&part).map_err(|error| failed(&error))?;
        let length = file.metadata().map_err(|error| failed(&error))?.len();
        if length < bytes {
            let message = format!("{} is shorter than {} says", part.display(), state.display());
            return Err(Failure::plain(message, "begin anew with --force in place of --resume"));
        }
        file.set_len(bytes).and_then(|()| file.seek(SeekFrom::End(0))).map_err(|error| failed(&error))?;
        let this = Self { file, bytes, part, state, target: target.to_owned(), key: key.to_owned() };
        Ok((this, progress))
    }

    pub(super) fn write(&mut self, bytes: &[u8]) -> Result<(), Failure> {
        self.file.write_all(bytes).map_err(|error| unwritten(&self.part, &error))?;
        self.bytes += bytes.len() as u64;
        Ok(())
    }

    /// Notes that all that was written is good.
    pub(super) fn keep(&self, progress: &Progress) -> Result<(), Failure> {
        let Progress { rows, failed, hash } = progress;
        let text = format!("{KIND}\n{}\n{rows} {failed} {hash:016x} {}\n", self.key, self.bytes);
        let new = beside(&self.target, ENDS[2]);
        // The rows first, then what vouches for them: the order that also a power cut keeps.
        self.file
            .sync_data()
            .and_then(|()| File::create(&new))
            .and_then(|mut file| file.write_all(text.as_bytes()).and_then(|()| file.sync_data()))
            .and_then(|()| fs::rename(&new, &self.state))
            .map_err(|error| unwritten(&self.state, &error))
    }

    /// Moves the whole result to its place.
    pub(super) fn finish(self) -> Result<(), Failure> {
        let done = self.file.sync_all().and_then(|()| fs::rename(&self.part, &self.target));
        done.map_err(|error| unwritten(&self.target, &error))?;
        // Without its part a state means nothing; one that cannot be removed is only in the way.
        let _ = fs::remove_file(&self.state);
        Ok(())
    }
}

/// Whether an input has a name that the run needs for what is not whole yet.
pub(super) fn is_no_input(target: &Path, output: &Output<'_>) -> Result<(), Failure> {
    ENDS.iter().try_for_each(|end| output.is_no_input(&beside(target, end)))
}

fn beside(target: &Path, end: &str) -> PathBuf {
    let mut name: OsString = target.as_os_str().to_owned();
    name.push(end);
    PathBuf::from(name)
}

/// The progress of an interrupted run and the bytes of its part that are good; a part without a state has none.
fn read(state: &Path, key: &str) -> Result<(Progress, u64), Failure> {
    if !state.exists() {
        return Ok((Progress::default(), 0));
    }
    let text = input::text(state, "begin anew with --force in place of --resume")?;
    let mut lines = text.lines();
    let (kind, of, numbers) = (lines.next(), lines.next(), lines.next().and_then(numbers));
    match numbers {
        Some(numbers) if kind == Some(KIND) && of == Some(key) => Ok(numbers),
        _ => Err(Failure::plain(
            format!("{} belongs to another list, other flags, or another version", state.display()),
            "begin anew with --force in place of --resume",
        )),
    }
}

fn numbers(line: &str) -> Option<(Progress, u64)> {
    let parts: Vec<&str> = line.split(' ').collect();
    let [rows, failed, hash, bytes] = parts.as_slice() else { return None };
    let hash = u64::from_str_radix(hash, 16).ok()?;
    Some((Progress { rows: rows.parse().ok()?, failed: failed.parse().ok()?, hash }, bytes.parse().ok()?))
}
