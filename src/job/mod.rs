//! Job text to a checked [`Job`]: units resolved, names looked up, every mistake with its place.
//!
//! [`check`] reads the whole text and reports every mistake, not only the first. A tolerance class is resolved here, by
//! [`crate::fit`], while its place in the text is still known.

pub mod ask;
mod entry;
mod fasteners;
mod inspection;
mod liner;
mod log;
mod model;
mod model_seal;
mod model_stack;
mod problem;
mod put;
mod reach;
mod read_axial;
mod read_designation;
mod read_fasteners;
mod read_inspection;
mod read_job;
mod read_material;
mod read_means;
mod read_media;
mod read_medium;
mod read_part;
mod read_places;
mod read_play;
mod read_press;
mod read_readings;
mod read_ring;
mod read_scatter;
mod read_screw;
mod read_seal;
mod read_seal_seat;
mod read_seal_sizes;
mod read_seats;
mod read_shop;
mod read_size;
mod read_sizes;
mod read_stack;
mod read_stack_parts;
mod read_stack_ring;
mod read_treatment;
pub mod scatter;
mod seal_alone;
mod section;
mod smell;
mod starter;
mod step;
mod treated;
mod wall;

pub use entry::{AnyValue, Assumption, Entry};
pub use fasteners::{Fasteners, ScrewGroup, Tapped};
pub use inspection::{Feel, Inspection, RemovedThrough};
pub use liner::Liner;
pub(crate) use log::treatment_of;
pub use log::{Log, PieceReadings, Reading, check_log};
pub use model::{
    Bench, FilmChoice, Heading, Hold, Housing, InternalPlay, Job, Measured, MediumStore, Part, PartKind, Piece, Press,
    PressMeans, RacewayGroove, RestsOn, RingShape, SETTLED_WITHIN_SHARE, ScrewJig, ServiceEnd, ServiceState, Shaft,
    Shoulder, Size, Step, Treatment, Wrapping,
};
pub use model_seal::{PassesOver, Seal, SealBody, SealBore, SealLips};
pub use model_stack::{AxialSize, BearingPair, Bed, Stack, StackPart, StackRing};
pub use problem::{Problem, Problems};
pub use put::{PutError, put, typed};
pub(crate) use read_part::CLOSURE_NOT_STATED;
pub use seal_alone::{SealJob, check_seal, is_seal_alone};
pub use starter::{STARTERS, Starter};
pub use treated::TreatmentError;

use crate::quantity::System;
use crate::stock::Library;
use section::{Notes, Section};
use std::ops::Range;
use toml::Spanned;
use toml::de::DeTable;

/// Longest job text that is read, bytes. A job is a page of text; a larger file is not a job.
pub const LONGEST_TEXT: usize = 1_000_000;

/// Keys and tables that stand at the top of a job.
pub const KEYS: [&str; 20] = [
    "title",
    "reference",
    "revision",
    "prepared_by",
    "date",
    "notes",
    "bearing",
    "housing",
    "shaft",
    "seal",
    "stack",
    "chill",
    "warm",
    "bench",
    "shop",
    "service",
    "press",
    "fasteners",
    "inspection",
    "scatter",
];

/// Checks a job.
///
/// # Errors
/// Every mistake that was found, each with its place in `text`, the range or the choices allowed, and what to do.
///
/// # Examples
/// ```
/// use seatwise::{job, stock::Library};
/// let text = r#"
///     title = "Fan bearing"
///     [bearing]
///     designation = "6205"
///     [housing]
///     bore_limits = "N7"
///     outside = "80 mm"
///     material = "cast-aluminium"
/// "#;
/// let job = job::check(text, &Library::default())?;
/// assert_eq!(job.heading.title, "Fan bearing");
/// # Ok::<(), job::Problems>(())
/// ```
pub fn check(text: &str, library: &Library) -> Result<Job, Problems> {
    let mut notes = Notes::default();
    let job = read(text, library, &mut notes);
    if let Some(problems) = Problems::collect(std::mem::take(&mut notes.problems)) {
        return Err(problems);
    }
    job.map(|job| Job { entries: notes.entries, assumptions: notes.assumptions, ..job }).ok_or_else(|| unreadable(text))
}

/// Holds the invariant that a job that could not be read has said why.
fn unreadable(text: &str) -> Problems {
    let mut notes = Notes::default();
    notes.problem(first_sign(text), "the job could not be read", "check it against the example in the README");
    Problems::collect(notes.problems).unwrap_or_else(|| unreadable(text))
}

/// The place of what is wrong with the whole text. A sign may take several bytes, and half of one cannot be underlined.
fn first_sign(text: &str) -> Range<usize> {
    0..text.chars().next().map_or(0, char::len_utf8)
}

/// The tables of a text that is not too long and is TOML.
fn tables<'t>(text: &'t str, notes: &mut Notes) -> Option<Spanned<DeTable<'t>>> {
    if text.len() > LONGEST_TEXT {
        let message = format!("the text has {} bytes; a job has at most {LONGEST_TEXT}", text.len());
        notes.problem(0..0, message, "give a job file in TOML: title, [bearing], [housing] and so on");
        return None;
    }
    let (table, errors) = DeTable::parse_recoverable(text);
    for error in &errors {
        let at = error.span().unwrap_or(0..0);
        notes.problem(
            at,
            format!("this is not TOML: {}", problem::plainly(error.message())),
            "a job is lines of key = \"value\" under [tables]",
        );
    }
    errors.is_empty().then_some(table)
}

fn read(text: &str, library: &Library, notes: &mut Notes) -> Option<Job> {
    let table = tables(text, notes)?;
    if table.get_ref().is_empty() {
        notes.problem(0..0, "the job is empty", "describe at least the [bearing] and its [housing] or [shaft]");
        return None;
    }
    let top = Section::top(text, &table, &KEYS, notes);
    read_job::job(&top, library, notes)
}

/// The system in which most sizes were typed; where they leave it open, that of most quantities. A material's values come
/// from a data sheet, often metric in an inch shop, and must not outvote the sizes.
fn usual_system(notes: &Notes) -> System {
    let lead = |counts: fn(&Entry) -> bool| {
        let typed_in =
            |system| notes.entries.iter().filter(|entry| counts(entry) && entry.system == Some(system)).count();
        typed_in(System::Inch).cmp(&typed_in(System::Metric))
    };
    let is_size =
        |entry: &Entry| matches!(entry.value, AnyValue::Size(_) | AnyValue::SmallLength(_) | AnyValue::Limits(_));
    if lead(is_size).then_with(|| lead(|_| true)).is_gt() { System::Inch } else { System::Metric }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn system(sizes: &str, rest: &str) -> System {
        let text = format!(
            "[bearing]\ndesignation = \"6205\"\n[housing]\nbore_limits = \"N7\"\n{sizes}\n\
             material = {{ name = \"case\", family = \"light alloy\", density = \"2700 kg/m3\", modulus = \"70 GPa\", \
             poisson = \"0.33\", strength = \"160 MPa\", expansion = \"23 um/mK\", heat_capacity = \"900 J/kgK\", \
             conductivity = \"150 W/mK\" }}\n{rest}"
        );
        check(&text, &Library::default()).unwrap().system
    }

    #[test]
    fn the_sizes_choose_the_system_not_the_data_sheet_of_a_material() {
        assert_eq!(system("outside = \"3-1/2 in\"", ""), System::Inch);
        assert_eq!(system("outside = \"90 mm\"", "[bench]\ntemperature = \"68 °F\""), System::Metric);
        // Without a size, what else was typed decides.
        assert_eq!(system("", "[bench]\ntemperature = \"20 °C\""), System::Metric);
    }
}
