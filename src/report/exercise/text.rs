//! An exercise as text.

use super::solved::{Given, Part, Solved};
use super::{ON_PAPER, Paper};
use crate::quantity::System;
use crate::report::Layout;
use crate::report::text::Page;
use crate::report::working::{DEFER, LEGEND, in_text, shown, text_result};

/// One of the two papers as text.
pub(super) fn text(title: &str, problems: &[Solved<'_>], paper: Paper, layout: Layout) -> String {
    let Layout { system, columns } = layout;
    let mut page = Page::new(columns);
    page.flush(title);
    page.paragraph(ON_PAPER);
    if paper == Paper::Answers {
        page.paragraph(LEGEND);
    }
    for (place, solved) in problems.iter().enumerate() {
        problem(place + 1, solved, (paper, system), &mut page);
    }
    page.line("");
    page.flush(DEFER);
    page.finish()
}

/// "a", "b" and so on; there are never more questions than letters.
pub(super) fn letter(place: usize) -> char {
    ('a'..='z').nth(place).unwrap_or('z')
}

fn problem(number: usize, solved: &Solved<'_>, (paper, system): (Paper, System), page: &mut Page) {
    page.heading(&format!("Problem {number}: {}", solved.problem.title));
    page.paragraph(&solved.problem.story);
    for supposed in &solved.problem.supposed {
        page.hanging("Supposed: ", &format!("{supposed}."));
    }
    for (case, given) in solved.given.iter().enumerate() {
        values(&given_title(solved, case), given, system, page);
    }
    let sources = solved.sources();
    for (place, answered) in solved.answers.iter().enumerate() {
        page.line("");
        page.hanging(&format!("{number}{}) ", letter(place)), &answered.question.words);
        if paper == Paper::Answers {
            let mut step = 0;
            for part in &answered.parts {
                answer(part, solved, (&sources, system), &mut step, page);
            }
            if !answered.question.slip.is_empty() {
                page.small(&format!("Often missed: {}.", answered.question.slip));
            }
        }
    }
    notes(solved, paper, &sources, page);
}

/// The heading of what is given.
pub(super) fn given_title(solved: &Solved<'_>, case: usize) -> String {
    match (solved.label(case), case) {
        (None, _) => "Given".to_owned(),
        (Some(label), 0) => format!("Given, {label}"),
        (Some(label), _) => format!("Given, {label}, where it differs"),
    }
}

fn values(title: &str, given: &[Given], system: System, page: &mut Page) {
    if given.is_empty() {
        return;
    }
    page.line("");
    page.line(&format!("  {title}"));
    for given in given {
        let value = &given.value;
        let opening = format!("  {} = {}", in_text(value.symbol), shown(value.amount, system));
        page.hanging(&format!("{opening:<26} "), &value.meaning);
    }
}

/// How a result of a case is headed.
pub(super) fn headed(solved: &Solved<'_>, case: usize, what: &str) -> String {
    solved.label(case).map_or_else(|| what.to_owned(), |label| format!("{label}: {what}"))
}

fn answer(part: &Part, solved: &Solved<'_>, (sources, system): (&[&str], System), step: &mut usize, page: &mut Page) {
    match part {
        Part::Worked { case, line, .. } => {
            *step += 1;
            let mut line = line.as_ref().clone();
            line.what = headed(solved, *case, &line.what);
            text_result(&line, &step.to_string(), (sources, system), page);
        }
        Part::Again { case, value } => {
            let words = format!("{} = {}, as above", in_text(value.symbol), shown(value.amount, system));
            page.line("");
            page.hanging("=> ", &headed(solved, *case, &words));
        }
        Part::Words { case, text, .. } => {
            page.line("");
            page.hanging("=> ", &headed(solved, *case, text));
        }
    }
}

fn notes(solved: &Solved<'_>, paper: Paper, sources: &[&str], page: &mut Page) {
    let said = if paper == Paper::Answers { &solved.cautions } else { &solved.dangers };
    if !said.is_empty() {
        page.line("");
        page.line("  If it were done:");
        for caution in said {
            page.paragraph(caution);
        }
    }
    page.line("");
    page.line("  Formulas and values:");
    for (place, source) in sources.iter().enumerate() {
        page.hanging(&format!("[{}] ", place + 1), source);
    }
    if paper == Paper::Answers {
        for case in &solved.problem.cases {
            page.line("");
            page.line(&format!("  Job file, {}:", case.label));
            for row in case.text.lines() {
                page.line(&if row.is_empty() { String::new() } else { format!("    {row}") });
            }
        }
    }
}
