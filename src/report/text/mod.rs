//! The plan as text: the answer first, the details after.

mod fasteners;
mod inspection;
mod paragraph;
mod push;
mod seal;
mod seat;
mod section_heat;
mod show;
mod stack;
mod table;

use crate::job::{Assumption, Entry, Heading};
use crate::plan::seal::SealAlonePlan;
use crate::plan::{Caution, Level, Plan, Source};
use crate::quantity::System;
use crate::report::Layout;
use crate::report::{scatter, words};
#[cfg(feature = "cli")]
pub(crate) use fasteners::order;
pub(crate) use paragraph::Page;
#[cfg(feature = "cli")]
pub(crate) use seal::answer as seal_answer;
use show::Show;
pub(crate) use table::Table;

/// The plan as text, ending in a line feed; a [`System`] alone gives lines of 100 columns.
pub fn plan(plan: &Plan<'_>, layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    title(&plan.job.heading, &mut page);
    for seat in &plan.seats {
        seat::answer(plan, seat, system, &mut page);
    }
    assembly_steps(plan, system, &mut page);
    beside(plan, Show { system }, &mut page);
    scatter::blocks(plan, system, &mut page);
    for seat in &plan.seats {
        seat::details(plan, seat, system, &mut page);
    }
    details_beside(plan, Show { system }, &mut page);
    if let Some(play) = &plan.internal_clearance {
        push::internal_clearance(play, system, &mut page);
    }
    if let Some(seal) = &plan.seal {
        seal::details(seal, system, &mut page);
    }
    if let Some(stack) = &plan.stack {
        stack::details(stack, system, &mut page);
    }
    cautions(&plan.cautions, system, &mut page);
    entries(&plan.job.entries, &mut page);
    assumptions(&plan.job.assumptions, system, &mut page);
    sources(&plan.sources, &mut page);
    page.finish()
}

/// The plan of a shaft seal alone as text; without its details when `short`.
pub fn seal_alone(plan: &SealAlonePlan<'_>, layout: impl Into<Layout>, short: bool) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    title(&plan.job.heading, &mut page);
    page.heading("PRESS");
    page.paragraph(&seal::answer(&plan.seal, system));
    seal::steps(&plan.seal, system, &mut page);
    if !short {
        seal::details(&plan.seal, system, &mut page);
    }
    cautions(&plan.cautions, system, &mut page);
    if !short {
        entries(&plan.job.entries, &mut page);
        assumptions(&plan.job.assumptions, system, &mut page);
        sources(&plan.sources, &mut page);
    }
    page.finish()
}

/// The first page of it: what happens, what to do, the main numbers, and what can hurt someone or spoil the part.
pub fn short(plan: &Plan<'_>, layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    title(&plan.job.heading, &mut page);
    for seat in &plan.seats {
        seat::answer(plan, seat, system, &mut page);
        page.line("");
        page.table(&seat::main_numbers(seat, system));
    }
    assembly_steps(plan, system, &mut page);
    beside(plan, Show { system }, &mut page);
    scatter::blocks(plan, system, &mut page);
    page.heading("Cautions");
    let grave = plan.cautions.iter().filter(|caution| matches!(caution.level(), Level::Danger | Level::Warning));
    for caution in grave {
        let signal = format!("{}: ", caution.signal().to_uppercase());
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

/// What to look at and to tighten beside the seats.
fn beside(plan: &Plan<'_>, show: Show, page: &mut Page) {
    if let Some(inspection) = &plan.inspection {
        inspection::checks(inspection, show, page);
    }
    if let Some(fasteners) = &plan.fasteners {
        fasteners::answer(fasteners, show.system, page);
    }
}

/// The numbers behind it.
fn details_beside(plan: &Plan<'_>, show: Show, page: &mut Page) {
    if let Some(wall) = &plan.uneven_wall {
        inspection::uneven_wall(wall, show, page);
    }
    if let Some(inspection) = &plan.inspection {
        inspection::forms(inspection, show, page);
    }
    if let Some(fasteners) = &plan.fasteners {
        fasteners::details(fasteners, show, page);
    }
}

/// What to do along the axis and with the seal, in the order in which it is done.
fn assembly_steps(plan: &Plan<'_>, system: System, page: &mut Page) {
    let seal_first = plan.job.seal.as_ref().is_some_and(|seal| seal.fitted_first);
    if let Some(seal) = plan.seal.as_ref().filter(|_| seal_first) {
        seal::steps(seal, system, page);
    }
    if let Some(stack) = &plan.stack {
        stack::answer(stack, system, page);
    }
    if let Some(seal) = plan.seal.as_ref().filter(|_| !seal_first) {
        seal::steps(seal, system, page);
    }
}

/// What every page says.
const DEFER: &str = "A calculation only: the maker's manual, local codes and licensed practice go before it.";

fn title(heading: &Heading, page: &mut Page) {
    if !heading.title.is_empty() {
        page.flush(&heading.title);
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
        page.flush(&block.join(", "));
    }
    if let Some(notes) = &heading.notes {
        page.paragraph(notes);
    }
}

fn cautions(cautions: &[Caution], system: System, page: &mut Page) {
    page.heading("Cautions");
    for caution in cautions {
        let signal = format!("{}: ", caution.signal().to_uppercase());
        page.hanging(&signal, &words::sentence(caution.sentence(), system));
        page.small(&source_line(caution));
    }
}

fn source_line(caution: &Caution) -> String {
    format!("[{}; {}]", caution.code(), caution.source())
}

fn entries(entries: &[Entry], page: &mut Page) {
    page.heading("What was entered");
    let rows: Vec<[String; 4]> = entries
        .iter()
        .map(|entry| {
            let (metric, inch) = (words::value(&entry.value, System::Metric), words::value(&entry.value, System::Inch));
            let inch = if metric == inch { String::new() } else { inch };
            [entry.key.clone(), entry.typed.clone(), metric, inch]
        })
        .collect();
    page.table(&table::Table { head: Some(["", "as typed", "metric", "inch"].map(str::to_owned)), rows });
}

fn assumptions(assumptions: &[Assumption], system: System, page: &mut Page) {
    if assumptions.is_empty() {
        return;
    }
    page.heading("What was assumed (state it in the job to change it)");
    for assumption in assumptions {
        let opening = format!("{} = {}: ", assumption.what, words::value(&assumption.value, system));
        page.paragraph(&format!("{opening}{}", assumption.why));
    }
}

fn sources(sources: &[Source], page: &mut Page) {
    page.heading("Sources");
    for source in sources {
        page.paragraph(&format!("{}: {}", source.what, source.text));
    }
}
