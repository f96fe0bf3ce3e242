//! A working as text and as Markdown.

use super::formula::{Formula, Symbol};
use super::model::{Line, Value, Way, Working};
use super::{DEFER, LEGEND};
use crate::quantity::{System, Worked};
use crate::report::Layout;
use crate::report::text::Page;
use std::fmt::Write as _;

/// How tightly a formula's own sign binds: a looser one inside a tighter one needs brackets.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Binds {
    Sum,
    Product,
    Square,
    Alone,
}

fn binds(formula: &Formula) -> Binds {
    match formula {
        Formula::Sum(..) | Formula::Difference(..) => Binds::Sum,
        Formula::Product(_) | Formula::Quotient(..) => Binds::Product,
        Formula::Square(_) => Binds::Square,
        Formula::Value(_) | Formula::Whole(_) | Formula::Pi | Formula::Exp(_) | Formula::Ln(_) => Binds::Alone,
    }
}

/// A formula on one line, each symbol written by `value`.
fn written(formula: &Formula, value: &impl Fn(Symbol) -> String) -> String {
    let bracketed = |inner: &Formula, least: Binds| {
        let text = written(inner, value);
        if binds(inner) < least { format!("({text})") } else { text }
    };
    match formula {
        Formula::Value(symbol) => value(*symbol),
        Formula::Whole(number) => number.to_string(),
        Formula::Pi => "π".to_owned(),
        Formula::Exp(of) => format!("exp({})", written(of, value)),
        Formula::Ln(of) => format!("ln({})", written(of, value)),
        Formula::Sum(a, b) => format!("{} + {}", written(a, value), written(b, value)),
        Formula::Difference(a, b) => format!("{} − {}", written(a, value), bracketed(b, Binds::Product)),
        Formula::Quotient(a, b) => format!("{} / {}", bracketed(a, Binds::Product), bracketed(b, Binds::Square)),
        Formula::Square(of) => match bracketed(of, Binds::Alone) {
            // A number with its unit is squared as a whole.
            text if text.contains(' ') && !text.starts_with('(') => format!("({text})²"),
            text => format!("{text}²"),
        },
        Formula::Product(factors) => {
            let last = factors.len().saturating_sub(1);
            let factors = factors.iter().enumerate().map(|(place, factor)| {
                let divides = matches!(factor, Formula::Quotient(..)) && place < last;
                if divides { format!("({})", written(factor, value)) } else { bracketed(factor, Binds::Product) }
            });
            factors.collect::<Vec<_>>().join(" · ")
        }
    }
}

/// A symbol on one line: "D_i".
pub(in crate::report) fn in_text(symbol: Symbol) -> String {
    if symbol.mark.is_empty() { symbol.letter.to_owned() } else { format!("{}_{}", symbol.letter, symbol.mark) }
}

/// A value with its unit.
pub(in crate::report) fn shown(amount: Worked, system: System) -> String {
    let (number, unit) = amount.show(system);
    if unit.is_empty() { number } else { format!("{number} {unit}") }
}

/// A formula with values for symbols; a value below zero stands in brackets.
fn put_in(formula: &Formula, values: &[Value], system: System) -> String {
    written(formula, &|symbol| {
        let value = values.iter().find(|value| value.symbol == symbol);
        let text = value.map_or_else(|| in_text(symbol), |value| shown(value.amount, system));
        if text.starts_with('-') { format!("({text})") } else { text }
    })
}

/// The lines of arithmetic of one result.
fn arithmetic(line: &Line, system: System) -> Vec<String> {
    let (symbol, result) = (in_text(line.result.symbol), shown(line.result.amount, system));
    let Way::Formula(formula) = &line.way else { return vec![format!("{symbol} = {result}")] };
    let indent = " ".repeat(symbol.chars().count());
    vec![
        format!("{symbol} = {}", written(formula, &in_text)),
        format!("{indent} = {}", put_in(formula, &line.put_in, system)),
        format!("{indent} = {result}"),
    ]
}

/// What stands for what. A result that is not found by a formula gives the values as well.
fn meanings(line: &Line, system: System) -> Vec<String> {
    let with_value = matches!(line.way, Way::Words(_));
    let each = line.put_in.iter().map(|value| {
        let symbol = in_text(value.symbol);
        if with_value {
            format!("{symbol} = {}, {}", shown(value.amount, system), value.meaning)
        } else {
            format!("{symbol} {}", value.meaning)
        }
    });
    each.collect()
}

/// The numbers of a result's sources in the list of all.
pub(super) fn numbers(line: &Line, sources: &[&str]) -> String {
    let number =
        |source: &String| sources.iter().position(|other| other == source).map(|place| (place + 1).to_string());
    line.sources.iter().filter_map(number).collect::<Vec<_>>().join(", ")
}

/// One result as text, with the numbers of its sources in the list of all.
pub(in crate::report) fn text_result(line: &Line, number: &str, (sources, system): (&[&str], System), page: &mut Page) {
    page.line("");
    page.hanging(&format!("{number}. "), &line.what);
    for row in arithmetic(line, system) {
        page.line(&format!("        {row}"));
    }
    if let Way::Words(way) = line.way {
        page.small(&format!("How: {way}."));
    }
    if !line.remark.is_empty() {
        page.small(&format!("{}.", line.remark));
    }
    let meanings = meanings(line, system);
    if !meanings.is_empty() {
        page.small(&format!("{}.", meanings.join("; ")));
    }
    page.small(&format!("[{}]", numbers(line, sources)));
}

/// A working as text.
pub fn text(working: &Working, layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    page.flush(&format!("Working: {}", working.title));
    for answer in &working.answer {
        page.paragraph(answer);
    }
    page.paragraph(LEGEND);
    let (sources, mut number) = (working.sources(), 0);
    for part in &working.parts {
        page.heading(&part.heading);
        for line in &part.lines {
            number += 1;
            text_result(line, &number.to_string(), (&sources, system), &mut page);
        }
    }
    page.heading("Cautions");
    for caution in &working.cautions {
        page.paragraph(caution);
    }
    page.heading("Sources");
    for (place, source) in sources.iter().enumerate() {
        page.hanging(&format!("[{}] ", place + 1), source);
    }
    page.line("");
    page.flush(DEFER);
    page.finish()
}

/// One result as Markdown.
pub(in crate::report) fn markdown_result(
    line: &Line,
    number: &str,
    (sources, system): (&[&str], System),
    out: &mut String,
) {
    let _ = writeln!(out, "\n### {number}. {}\n\n```text", line.what);
    for row in arithmetic(line, system) {
        let _ = writeln!(out, "{row}");
    }
    out.push_str("```\n\n");
    if let Way::Words(way) = line.way {
        let _ = writeln!(out, "How: {way}.\n");
    }
    if !line.remark.is_empty() {
        let _ = writeln!(out, "{}.\n", line.remark);
    }
    for meaning in meanings(line, system) {
        let (symbol, meaning) = meaning.split_once(' ').unwrap_or((&meaning, ""));
        let _ = writeln!(out, "- `{symbol}` {meaning}");
    }
    let _ = writeln!(out, "- source {}", numbers(line, sources));
}

/// A working as Markdown; formulas are blocks of code.
pub fn markdown(working: &Working, system: System) -> String {
    let mut out = format!("# Working: {}\n\n{}\n\n{LEGEND}\n", working.title, working.answer.join("\n\n"));
    let (sources, mut number) = (working.sources(), 0);
    for part in &working.parts {
        let _ = writeln!(out, "\n## {}", part.heading);
        for line in &part.lines {
            number += 1;
            markdown_result(line, &number.to_string(), (&sources, system), &mut out);
        }
    }
    out.push_str("\n## Cautions\n\n");
    for caution in &working.cautions {
        let _ = writeln!(out, "- {caution}");
    }
    out.push_str("\n## Sources\n\n");
    for (place, source) in sources.iter().enumerate() {
        let _ = writeln!(out, "{}. {source}", place + 1);
    }
    let _ = writeln!(out, "\n{DEFER}");
    out
}
