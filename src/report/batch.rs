//! Rows of a batch: each job of a list as rows of CSV, or as a line of JSON.

use super::csv::safe;
use super::results::{cells, flags, object};
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
        format!("{place}{}; help: {}", self.message, self.help).replace(['\n', '\r'], " ")
    }
}

/// The heading of the CSV; `plan` is any plan.
pub fn heading(plan: &Plan<'_>) -> Vec<String> {
    let names = plan.seats.first().map(|seat| cells(plan, seat)).unwrap_or_default();
    let names = names.into_iter().map(|(name, _)| name);
    ["status".to_owned()].into_iter().chain(names).chain(ENDS.map(str::to_owned)).collect()
}

const ENDS: [&str; 3] = ["cautions", "reason", "error"];

/// A planned job as CSV: one row a seat.
pub fn planned_rows(plan: &Plan<'_>) -> Vec<Vec<String>> {
    let (codes, reason) = flags(plan);
    let row = |seat| {
        let cells = cells(plan, seat).into_iter().map(|(_, cell)| cell);
        let ends = [codes.clone(), safe(&reason), String::new()];
        ["planned".to_owned()].into_iter().chain(cells).chain(ends).collect()
    };
    plan.seats.iter().map(row).collect()
}

/// A row that could not be planned, as CSV of so many columns: its title and reference, and every mistake.
pub fn refused_row(columns: usize, title: &str, reference: &str, mistakes: &[RowMistake]) -> Vec<String> {
    let mut row = vec![String::new(); columns];
    let said: Vec<String> = mistakes.iter().map(RowMistake::line).collect();
    for (at, text) in [
        (0, "error".to_owned()),
        (1, safe(title)),
        (2, safe(reference)),
        (columns.saturating_sub(1), safe(&said.join(" | "))),
    ] {
        if let Some(cell) = row.get_mut(at) {
            *cell = text;
        }
    }
    row
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
