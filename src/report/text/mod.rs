//! The plan as text: the answer first, the details after.

mod paragraph;
mod push;
mod seat;
mod show;
mod table;

use crate::plan::{Caution, Level, Plan};
use crate::quantity::System;
use crate::report::{scatter, words};
pub(crate) use paragraph::Page;
pub(crate) use table::Table;

/// The plan as text, at most 100 characters wide, ending in a line feed.
pub fn plan(plan: &Plan<'_>, system: System) -> String {
    let mut page = Page::default();
    title(plan, &mut page);
    for seat in &plan.seats {
        seat::answer(plan, seat, system, &mut page);
    }
    scatter::blocks(plan, system, &mut page);
    for seat in &plan.seats {
        seat::details(plan, seat, system, &mut page);
    }
    if let Some(play) = &plan.internal_clearance {
        push::internal_clearance(play, system, &mut page);
    }
    cautions(plan, system, &mut page);
    entries(plan, &mut page);
    assumptions(plan, system, &mut page);
    sources(plan, &mut page);
    page.finish()
}

/// The first page of it: what happens, what to do, the main numbers, and what can hurt someone or spoil the part.
pub fn short(plan: &Plan<'_>, system: System) -> String {
    let mut page = Page::default();
    title(plan, &mut page);
    for seat in &plan.seats {
        seat::answer(plan, seat, system, &mut page);
        page.line("");
        page.table(&seat::main_numbers(seat, system));
    }
    scatter::blocks(plan, system, &mut page);
    page.heading("Cautions");
    let grave = plan.cautions.iter().filter(|caution| matches!(caution.level(), Level::Danger | Level::Warning));
    for caution in grave {
        let signal = format!("{}: ", caution.level().word().to_uppercase());
        page.hanging(&signal, &words::sentence(caution.sentence(), system));
    }
    let rest =
        plan.cautions.iter().filter(|caution| !matches!(caution.level(), Level::Danger | Level::Warning)).count();
    page.paragraph(&format!(
        "{rest} more cautions and notes, every number, {} assumptions and all sources: --detail full",
        plan.job.assumptions.len()
    ));
    page.paragraph(DEFER);
    page.finish()
}

/// What every page says.
const DEFER: &str = "A calculation only: the maker's manual, local codes and licensed practice go before it.";

fn title(plan: &Plan<'_>, page: &mut Page) {
    let heading = &plan.job.heading;
    if !heading.title.is_empty() {
        page.line(&heading.title);
    }
    let block = [
        ("reference", &heading.reference),
        ("revision", &heading.revision),
        ("prepared by", &heading.prepared_by),
        ("date", &heading.date),
    ];
    let block: Vec<String> =
        block.iter().filter_map(|(name, text)| text.as_ref().map(|text| format!("{name} {text}"))).collect();
    if !block.is_empty() {
        page.line(&block.join(", "));
    }
    if let Some(notes) = &heading.notes {
        page.paragraph(notes);
    }
}

fn cautions(plan: &Plan<'_>, system: System, page: &mut Page) {
    page.heading("Cautions");
    for caution in &plan.cautions {
        let signal = format!("{}: ", caution.level().word().to_uppercase());
        page.hanging(&signal, &words::sentence(caution.sentence(), system));
        page.small(&source_line(caution));
    }
}

fn source_line(caution: &Caution) -> String {
    format!("[{}; {}]", caution.code(), caution.source())
}

fn entries(plan: &Plan<'_>, page: &mut Page) {
    page.heading("What was entered");
    let rows: Vec<[String; 4]> = plan
        .job
        .entries
        .iter()
        .map(|entry| {
            let (metric, inch) = (words::value(&entry.value, System::Metric), words::value(&entry.value, System::Inch));
            let inch = if metric == inch { String::new() } else { inch };
            [entry.key.clone(), entry.typed.clone(), metric, inch]
        })
        .collect();
    page.table(&table::Table { head: Some(["", "as typed", "metric", "inch"].map(str::to_owned)), rows });
}

fn assumptions(plan: &Plan<'_>, system: System, page: &mut Page) {
    if plan.job.assumptions.is_empty() {
        return;
    }
    page.heading("What was assumed (state it in the job to change it)");
    for assumption in &plan.job.assumptions {
        let opening = format!("{} = {}: ", assumption.what, words::value(&assumption.value, system));
        page.paragraph(&format!("{opening}{}", assumption.why));
    }
}

fn sources(plan: &Plan<'_>, page: &mut Page) {
    page.heading("Sources");
    for source in &plan.sources {
        page.paragraph(&format!("{}: {}", source.what, source.text));
    }
}
