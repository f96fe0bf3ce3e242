//! An exercise as Markdown.

use super::solved::{Part, Solved};
use super::text::{given_title, headed, letter};
use super::{ON_PAPER, Paper};
use crate::quantity::System;
use crate::report::working::{DEFER, LEGEND, in_text, markdown_result, shown};
use std::fmt::Write as _;

/// One of the two papers as Markdown; formulas are blocks of code.
pub(super) fn markdown(title: &str, problems: &[Solved<'_>], paper: Paper, system: System) -> String {
    let mut out = format!("# {title}\n\n{ON_PAPER}\n");
    if paper == Paper::Answers {
        let _ = write!(out, "\n{LEGEND}\n");
    }
    for (place, solved) in problems.iter().enumerate() {
        problem(place + 1, solved, (paper, system), &mut out);
    }
    let _ = writeln!(out, "\n{DEFER}");
    out
}

fn problem(number: usize, solved: &Solved<'_>, (paper, system): (Paper, System), out: &mut String) {
    let _ = writeln!(out, "\n## Problem {number}: {}\n\n{}\n\nSupposed:\n", solved.problem.title, solved.problem.story);
    for supposed in &solved.problem.supposed {
        let _ = writeln!(out, "- {supposed}");
    }
    for (case, given) in solved.given.iter().enumerate().filter(|(_, given)| !given.is_empty()) {
        let _ = writeln!(out, "\n{}:\n\n| | | |\n|---|---|---|", given_title(solved, case));
        for given in given {
            let value = &given.value;
            let _ =
                writeln!(out, "| `{}` | {} | {} |", in_text(value.symbol), shown(value.amount, system), value.meaning);
        }
    }
    let sources = solved.sources();
    for (place, answered) in solved.answers.iter().enumerate() {
        let _ = writeln!(out, "\n**{number}{})** {}", letter(place), answered.question.words);
        if paper == Paper::Answers {
            let mut step = 0;
            for part in &answered.parts {
                answer(part, solved, (&sources, system), &mut step, out);
            }
            if !answered.question.slip.is_empty() {
                let _ = writeln!(out, "\nOften missed: {}.", answered.question.slip);
            }
        }
    }
    notes(solved, paper, &sources, out);
}

fn answer(part: &Part, solved: &Solved<'_>, (sources, system): (&[&str], System), step: &mut usize, out: &mut String) {
    match part {
        Part::Worked { case, line, .. } => {
            *step += 1;
            let mut line = line.as_ref().clone();
            line.what = headed(solved, *case, &line.what);
            markdown_result(&line, &step.to_string(), (sources, system), out);
        }
        Part::Again { case, value } => {
            let words = format!("`{}` = {}, as above", in_text(value.symbol), shown(value.amount, system));
            let _ = writeln!(out, "\n{}", headed(solved, *case, &words));
        }
        Part::Words { case, text, .. } => {
            let _ = writeln!(out, "\n{}", headed(solved, *case, text));
        }
    }
}

fn notes(solved: &Solved<'_>, paper: Paper, sources: &[&str], out: &mut String) {
    let said = if paper == Paper::Answers { &solved.cautions } else { &solved.dangers };
    if !said.is_empty() {
        out.push_str("\nIf it were done:\n\n");
        for caution in said {
            let _ = writeln!(out, "- {caution}");
        }
    }
    out.push_str("\nFormulas and values:\n\n");
    for (place, source) in sources.iter().enumerate() {
        let _ = writeln!(out, "{}. {source}", place + 1);
    }
    if paper == Paper::Answers {
        for case in &solved.problem.cases {
            let _ = writeln!(out, "\nJob file, {}:\n\n```toml\n{}```", case.label, case.text);
        }
    }
}
