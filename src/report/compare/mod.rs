//! Plans side by side.

use super::chart::aligned;
use super::csv::values;
use super::json::pretty;
use super::results::{cells, flags, grave, object, shown};
use super::sheet::{Cell, head, written};
use super::text::Page;
use super::words;
use crate::job::Assumption;
use crate::plan::{Plan, SeatKind, SeatPlan};
use crate::quantity::System;
use crate::report::Layout;
use serde_json::{Map, Value, json};

/// A plan with the name that stands over its column.
pub struct Compared<'j> {
    /// Name, such as that of its file.
    pub name: String,
    /// What was typed into the job: every key with its value.
    pub typed: Vec<(String, String)>,
    /// The plan.
    pub plan: Plan<'j>,
}

/// What stands before a line in which the plans differ, and before one in which they do not.
const DIFFERS: &str = "<>";
const SAME: &str = "";

/// The plans as text: what was entered differently, then the results of each seat.
pub fn text(compared: &[Compared<'_>], layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    page.flush("Plans side by side; <> marks a line in which they differ");
    let names: Vec<String> = compared.iter().map(|one| one.name.clone()).collect();
    let inputs: Vec<Vec<String>> = entered(compared, system).into_iter().filter(|row| row[0] == DIFFERS).collect();
    page.heading("What was entered differently");
    if inputs.is_empty() {
        page.paragraph("Nothing.");
    } else {
        table(&mut page, &names, inputs);
    }
    for kind in [SeatKind::Housing, SeatKind::Shaft] {
        let seats: Vec<Option<&SeatPlan>> = compared.iter().map(|one| seat(one, kind)).collect();
        if seats.iter().any(Option::is_some) {
            page.heading(&format!("{} seat", kind.name()));
            table(&mut page, &names, results(&seats, system));
        }
    }
    page.heading("Cautions of these plans; `seatwise plan` of one gives all of them");
    for (level, caution) in grave(compared.iter().flat_map(|one| &one.plan.cautions), system) {
        page.hanging(&format!("{}: ", level.to_uppercase()), &caution);
    }
    page.finish()
}

fn seat<'p>(one: &'p Compared<'_>, kind: SeatKind) -> Option<&'p SeatPlan> {
    one.plan.seats.iter().find(|seat| seat.seat == kind)
}

fn table(page: &mut Page, names: &[String], rows: Vec<Vec<String>>) {
    let head = [String::new(), String::new()].into_iter().chain(names.iter().cloned()).collect();
    for line in aligned(&std::iter::once(head).chain(rows).collect::<Vec<_>>()) {
        page.line(&format!("  {line}"));
    }
}

/// A line: its mark, its name, and what each plan has.
fn row(name: &str, values: Vec<String>) -> Vec<String> {
    let same = values.windows(2).all(|pair| pair[0] == pair[1]);
    [if same { SAME } else { DIFFERS }.to_owned(), name.to_owned()].into_iter().chain(values).collect()
}

fn results(seats: &[Option<&SeatPlan>], system: System) -> Vec<Vec<String>> {
    let shown: Vec<_> = seats.iter().map(|seat| seat.map(|seat| shown(seat, system))).collect();
    let Some(first) = shown.iter().flatten().next() else { return Vec::new() };
    let line = |(i, (name, _)): (usize, &(&'static str, String))| {
        let of = |one: &Option<Vec<(&'static str, String)>>| {
            one.as_ref().and_then(|lines| lines.get(i)).map_or("no such seat".to_owned(), |(_, text)| text.clone())
        };
        row(name, shown.iter().map(of).collect())
    };
    first.iter().enumerate().map(line).collect()
}

/// Every key that any job has entered or assumed, in the order in which they are met.
fn entered(compared: &[Compared<'_>], system: System) -> Vec<Vec<String>> {
    let mut keys: Vec<&str> = Vec::new();
    for one in compared {
        let typed = one.typed.iter().map(|(key, _)| key.as_str());
        let assumed = one.plan.job.assumptions.iter().map(|assumption| assumption.what.as_ref());
        for key in typed.chain(assumed) {
            if !keys.contains(&key) {
                keys.push(key);
            }
        }
    }
    keys.into_iter().map(|key| row(key, compared.iter().map(|one| input(one, key, system)).collect())).collect()
}

fn input(one: &Compared<'_>, key: &str, system: System) -> String {
    let typed = one.typed.iter().find(|(typed, _)| typed == key);
    let assumed = one.plan.job.assumptions.iter().find(|assumption: &&Assumption| assumption.what == key);
    match (typed, assumed) {
        (Some((_, typed)), _) => typed.clone(),
        (None, Some(assumption)) => format!("{} (assumed)", words::value(&assumption.value, system)),
        (None, None) => "-".to_owned(),
    }
}

/// The plans as CSV: one row a plan and seat, the cells of a plan's CSV after its name.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn csv(compared: &[Compared<'_>]) -> Result<String, csv::Error> {
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    for one in compared {
        let (codes, _) = flags(&one.plan);
        for seat in &one.plan.seats {
            let cells = cells(&one.plan, seat);
            if rows.is_empty() {
                let names = cells.iter().map(|(name, _)| *name);
                rows.push(head(["plan"].into_iter().chain(names).chain(["cautions"])));
            }
            let (name, codes) = (Cell::text(one.name.as_str()), Cell::text(codes.as_str()));
            rows.push([name].into_iter().chain(values(cells)).chain([codes]).collect());
        }
    }
    written(rows)
}

/// The plans as one JSON object, `seatwise.compare/1`, with the names of the results that differ.
///
/// # Errors
/// None in practice: every number is finite.
pub fn json(compared: &[Compared<'_>]) -> Result<String, serde_json::Error> {
    let seats = [SeatKind::Housing, SeatKind::Shaft].into_iter().filter_map(|kind| {
        let plans: Vec<Option<Map<String, Value>>> =
            compared.iter().map(|one| seat(one, kind).map(|seat| object(&one.plan, seat))).collect();
        let first = plans.iter().flatten().next()?;
        let differs = |name: &&String| {
            plans.windows(2).any(|pair| {
                let read = |plan: &Option<Map<String, Value>>| plan.as_ref().and_then(|plan| plan.get(*name).cloned());
                read(&pair[0]) != read(&pair[1])
            })
        };
        let differing: Vec<&String> = first.keys().filter(differs).collect();
        Some(json!({ "seat": kind.name(), "differs": differing, "plans": plans }))
    });
    let plan = |one: &Compared<'_>| {
        let (codes, _) = flags(&one.plan);
        let codes: Vec<&str> = codes.split_whitespace().collect();
        json!({ "name": one.name, "verdict": one.plan.verdict.words(), "cautions": codes })
    };
    pretty(&json!({
        "format": "seatwise.compare/1",
        "plans": compared.iter().map(plan).collect::<Vec<_>>(),
        "seats": seats.collect::<Vec<_>>(),
    }))
}
