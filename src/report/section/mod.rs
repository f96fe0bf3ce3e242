//! The section of a seat as a table and as JSON; its picture is [`super::plot`]'s.

mod document;
mod text;
mod words;

pub use document::SectionDocument;
pub use text::text;
#[cfg(feature = "cli")]
pub(crate) use words::{corner, readings, title, unread};

use crate::job::Job;
use crate::plan::drawing::SectionPlan;
use crate::report::json::pretty;

/// The sections as one JSON object, `seatwise.section/1`, ending in a line feed.
///
/// # Errors
/// None in practice: every number is finite.
pub fn json(job: &Job, seats: &[SectionPlan]) -> Result<String, serde_json::Error> {
    pretty(&SectionDocument::new(job, seats))
}

/// The JSON Schema of [`json`]'s object, ending in a line feed.
///
/// # Errors
/// None in practice: the schema is made from types.
pub fn schema() -> Result<String, serde_json::Error> {
    pretty(&schemars::schema_for!(SectionDocument))
}
