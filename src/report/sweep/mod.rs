//! Plans of one job with other values at a key or two, as text, CSV or JSON.

use super::chart::aligned;
use super::csv::values;
use super::json::pretty;
use super::results::{cells, flags, grave, object, shown};
use super::sheet::{Cell, head, written};
use super::text::Page;
use crate::plan::Plan;
use crate::quantity::System;
use crate::report::Layout;
use serde_json::{Map, Value, json};

/// One plan with the values that lead to it.
pub struct Step<'j> {
    /// The values as typed, in the order of the keys.
    pub values: Vec<String>,
    /// The plan.
    pub plan: Plan<'j>,
}

/// Columns of the text beside the values: their names among the results, and over the column.
const SHOWN: [(&str, &str); 7] = [
    ("verdict", "verdict"),
    ("clearance, tightest", "tightest"),
    ("clearance, middle", "middle"),
    ("clearance, loosest", "loosest"),
    ("window", "window"),
    ("free in seat", "free in seat"),
    ("force at the seat", "force"),
];

/// The steps as text, one table a seat.
pub fn text(title: &str, keys: &[String], steps: &[Step<'_>], layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    if !title.is_empty() {
        page.flush(title);
    }
    let seats = steps.first().map_or(0, |step| step.plan.seats.len());
    for index in 0..seats {
        of_seat(index, keys, steps, system, &mut page);
    }
    page.paragraph(
        "Tightest, middle and loosest are the clearances at the seat. Window is the time in shop air until the tightest case has lost its placing clearance; free in seat is how long it \
         stays free once it stands in its seat; force is that of the tightest case.",
    );
    page.heading("Cautions of these plans; `seatwise plan` of one gives all of them");
    for (level, caution) in grave(steps.iter().flat_map(|step| &step.plan.cautions), system) {
        page.hanging(&format!("{}: ", level.to_uppercase()), &caution);
    }
    page.finish()
}

fn of_seat(index: usize, keys: &[String], steps: &[Step<'_>], system: System, page: &mut Page) {
    let head: Vec<String> = keys.iter().cloned().chain(SHOWN.map(|(_, head)| head.to_owned())).collect();
    let rows = steps.iter().filter_map(|step| {
        let shown = shown(step.plan.seats.get(index)?, system);
        let results =
            shown.into_iter().filter(|(name, _)| SHOWN.iter().any(|(known, _)| known == name)).map(|(_, text)| text);
        Some(step.values.iter().cloned().chain(results).collect())
    });
    let rows: Vec<Vec<String>> = std::iter::once(head).chain(rows).collect();
    let name = steps.first().and_then(|step| step.plan.seats.get(index)).map_or("", |seat| seat.seat.name());
    page.heading(&format!("{name} seat"));
    for line in aligned(&rows) {
        page.line(&format!("  {line}"));
    }
    page.line("");
}

/// The steps as CSV: the values under their keys, then the cells of a plan's CSV, one row a seat and step.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn csv(keys: &[String], steps: &[Step<'_>]) -> Result<String, csv::Error> {
    let mut rows = Vec::new();
    for step in steps {
        for seat in &step.plan.seats {
            let cells = cells(&step.plan, seat);
            let (codes, reason) = flags(&step.plan);
            let ends = [Cell::text(codes), Cell::text(reason)];
            if rows.is_empty() {
                let names = keys.iter().map(String::as_str).chain(cells.iter().map(|(name, _)| *name));
                rows.push(head(names.chain(["cautions", "reason"])));
            }
            let over = step.values.iter().map(Cell::text);
            rows.push(over.chain(values(cells)).chain(ends).collect());
        }
    }
    written(rows)
}

/// The steps as one JSON object, `seatwise.sweep/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn json(title: &str, keys: &[String], steps: &[Step<'_>]) -> Result<String, serde_json::Error> {
    let one = |step: &Step<'_>| {
        let values: Map<String, Value> =
            keys.iter().cloned().zip(step.values.iter().map(|value| json!(value))).collect();
        let seats = step.plan.seats.iter().map(|seat| object(&step.plan, seat));
        let (codes, reason) = flags(&step.plan);
        json!({
            "values": values,
            "verdict": step.plan.verdict.words(),
            "reason": if reason.is_empty() { None } else { Some(reason) },
            "cautions": codes.split_whitespace().collect::<Vec<_>>(),
            "seats": seats.collect::<Vec<_>>(),
        })
    };
    pretty(&json!({
        "format": "seatwise.sweep/1",
        "title": title,
        "over": keys,
        "steps": steps.iter().map(one).collect::<Vec<_>>(),
    }))
}
