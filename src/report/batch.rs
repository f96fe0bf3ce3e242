//! Rows of a batch: each job of a list as rows of CSV, or as a line of JSON.

use super::csv::values;
use super::results::{cells, flags, object};
use super::sheet::{Cell, head, written};
use crate::plan::Plan;
use serde_json::{Value, json};

/// A mistake in a row of a list.
pub struct RowMistake {
    /// The column, which is the key of the job; none where the row itself is wrong.
    pub column: Option<String>,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
}

impl RowMistake {
    /// The mistake on one line.
    pub fn line(&self) -> String {
        let place = self.column.as_ref().map(|column| format!("{column}: ")).unwrap_or_default();
        // A message that begins with its key would say it twice.
        let own = self.column.as_ref().and_then(|column| self.message.strip_prefix(&format!("`{column}`: ")));
        format!("{place}{}; help: {}", own.unwrap_or(&self.message), self.help).replace(['\n', '\r'], " ")
    }
}

/// The heading of the CSV as its line; `plan` is any plan.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn heading(plan: &Plan<'_>) -> Result<String, csv::Error> {
    let names = plan.seats.first().map(|seat| cells(plan, seat)).unwrap_or_default();
    written([head(["status"].into_iter().chain(names.iter().map(|(name, _)| *name)).chain(ENDS))])
}

const ENDS: [&str; 3] = ["cautions", "reason", "error"];

/// A planned job as lines of CSV: one a seat.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn planned_lines(plan: &Plan<'_>) -> Result<String, csv::Error> {
    let (codes, reason) = flags(plan);
    let row = |seat| {
        let ends = [Cell::text(codes.as_str()), Cell::text(reason.as_str()), Cell::Nothing];
        [Cell::text("planned")].into_iter().chain(values(cells(plan, seat))).chain(ends).collect()
    };
    written(plan.seats.iter().map(row))
}

/// A row that could not be planned, as a line of CSV under `heading`: its title and reference, and every mistake.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn refused_line(
    heading: &str,
    title: &str,
    reference: &str,
    mistakes: &[RowMistake],
) -> Result<String, csv::Error> {
    let columns = heading.split(',').count();
    let mut row = vec![Cell::Nothing; columns];
    let said: Vec<String> = mistakes.iter().map(RowMistake::line).collect();
    for (at, text) in [(0, "error"), (1, title), (2, reference), (columns.saturating_sub(1), said.join(" | ").as_str())]
    {
        if let Some(cell) = row.get_mut(at) {
            *cell = Cell::text(text);
        }
    }
    written([row])
}

/// A planned job as a JSON object.
pub fn planned_json(plan: &Plan<'_>) -> Value {
    let (codes, reason) = flags(plan);
    let heading = &plan.job.heading;
    json!({
        "format": "seatwise.batch/1",
        "status": "planned",
        "title": heading.title,
        "reference": heading.reference,
        "verdict": plan.verdict.words(),
        "reason": if reason.is_empty() { None } else { Some(reason) },
        "cautions": codes.split_whitespace().collect::<Vec<_>>(),
        "seats": plan.seats.iter().map(|seat| object(plan, seat)).collect::<Vec<_>>(),
    })
}

/// A row that could not be planned, as a JSON object.
pub fn refused_json(title: &str, reference: &str, mistakes: &[RowMistake]) -> Value {
    let one =
        |mistake: &RowMistake| json!({ "column": mistake.column, "message": mistake.message, "help": mistake.help });
    json!({
        "format": "seatwise.batch/1",
        "status": "error",
        "title": title,
        "reference": if reference.is_empty() { None } else { Some(reference) },
        "errors": mistakes.iter().map(one).collect::<Vec<_>>(),
    })
}
