//! A job of a shaft seal alone: no bearing goes in with it.

use super::entry::{Assumption, Entry};
use super::model::{Heading, Sealed};
use super::model_seal::Seal;
use super::problem::Problems;
use super::read_job::heading;
use super::section::{Notes, Section};
use super::{LONGEST_TEXT, read_seal, tables, unreadable, usual_system};
use crate::quantity::System;
use toml::de::DeTable;

/// Keys and tables that stand at the top of such a job.
const KEYS: [&str; 7] = ["title", "reference", "revision", "prepared_by", "date", "notes", "seal"];

/// A job of a shaft seal alone that has passed every check.
#[derive(Clone, Debug)]
pub struct SealJob {
    /// Title block.
    pub heading: Heading,
    /// The seal; its sizes are always there.
    pub seal: Seal,
    /// Every value that was typed.
    pub entries: Vec<Entry>,
    /// Every value that was put in for one that was not typed.
    pub assumptions: Vec<Assumption>,
    /// The system of units in which most sizes were typed.
    pub system: System,
    _sealed: Sealed,
}

/// Whether a job's text describes a seal, and neither a bearing nor a seat for one.
///
/// # Examples
/// ```
/// assert!(seatwise::job::is_seal_alone("[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\n"));
/// assert!(!seatwise::job::is_seal_alone("[bearing]\ndesignation = \"6206\"\n[seal]\nlip = \"NBR\"\n"));
/// ```
pub fn is_seal_alone(text: &str) -> bool {
    if text.len() > LONGEST_TEXT {
        return false;
    }
    let (table, errors) = DeTable::parse_recoverable(text);
    let has = |key: &str| table.get_ref().iter().any(|(known, _)| known.get_ref() == key);
    let of_bearing = ["bearing", "housing", "shaft", "chill", "warm", "stack"];
    errors.is_empty() && has("seal") && !of_bearing.into_iter().any(has)
}

/// Checks a job of a shaft seal alone.
///
/// # Errors
/// Every mistake that was found, each with its place in `text`.
pub fn check_seal(text: &str) -> Result<SealJob, Problems> {
    let mut notes = Notes::default();
    let read = read(text, &mut notes);
    if let Some(problems) = Problems::collect(std::mem::take(&mut notes.problems)) {
        return Err(problems);
    }
    let (heading, seal) = read.ok_or_else(|| unreadable(text))?;
    let system = usual_system(&notes);
    Ok(SealJob { heading, seal, entries: notes.entries, assumptions: notes.assumptions, system, _sealed: Sealed })
}

fn read(text: &str, notes: &mut Notes) -> Option<(Heading, Seal)> {
    let table = tables(text, notes)?;
    let top = Section::top(text, &table, &KEYS, notes);
    let heading = heading(&top, notes);
    let section = top.section("seal", &read_seal::KEYS, notes)?;
    Some((heading, read_seal::seal_alone(&section, notes)?))
}
