//! An exercise as a page to print, in the style of a working.

use super::solved::{Given, Part, Solved};
use super::text::{given_title, headed, letter};
use super::{ON_PAPER, Paper};
use crate::quantity::System;
use crate::report::working::{
    DEFER, LEGEND, escaped, html_result, in_text, math_of_symbol, mathml_of_value, page, shown,
};
use std::fmt::Write as _;

/// What an exercise has beside a working; each problem begins a page, and a sheet leaves room to write.
const STYLE: &str = "<style>
  section + section { break-before: page; }
  dt.given { text-align: left; }
  .question { margin-top: 4mm; break-after: avoid; }
  .room { height: 22mm; border-bottom: 0.2mm dotted #777; }
  pre { font-size: 8.5pt; white-space: pre-wrap; overflow-wrap: anywhere; border-left: 0.5mm solid #999; padding-left: 3mm; }
  .caution { font-size: 9.5pt; }
</style>
";

/// One of the two papers as a page.
pub(super) fn html(title: &str, problems: &[Solved<'_>], paper: Paper, system: System) -> String {
    let mut body = format!("{STYLE}<h1>{}</h1>\n<p class=\"lead\">{}</p>\n", escaped(title), escaped(ON_PAPER));
    if paper == Paper::Answers {
        let _ = writeln!(body, "<p class=\"lead\">{}</p>", escaped(LEGEND));
    }
    for (place, solved) in problems.iter().enumerate() {
        body.push_str("<section>\n");
        problem(place + 1, solved, (paper, system), &mut body);
        body.push_str("</section>\n");
    }
    let _ = write!(body, "<p class=\"lead\">{}</p>", escaped(DEFER));
    page(title, &body)
}

fn problem(number: usize, solved: &Solved<'_>, (paper, system): (Paper, System), body: &mut String) {
    let _ = writeln!(
        body,
        "<h2>Problem {number}: {}</h2>\n<p class=\"lead\">{}</p>\n<p class=\"lead\">Supposed:</p>\n<ul>",
        escaped(&solved.problem.title),
        escaped(&solved.problem.story)
    );
    for supposed in &solved.problem.supposed {
        let _ = writeln!(body, "<li>{}</li>", escaped(supposed));
    }
    body.push_str("</ul>\n");
    for (case, given) in solved.given.iter().enumerate().filter(|(_, given)| !given.is_empty()) {
        values(&given_title(solved, case), given, system, body);
    }
    let sources = solved.sources();
    for (place, answered) in solved.answers.iter().enumerate() {
        let _ = writeln!(
            body,
            "<p class=\"lead question\"><b>{number}{})</b> {}</p>",
            letter(place),
            escaped(&answered.question.words)
        );
        if paper == Paper::Sheet {
            body.push_str("<div class=\"room\"></div>\n");
            continue;
        }
        let mut step = 0;
        for part in &answered.parts {
            answer(part, solved, (&sources, system), &mut step, body);
        }
        if !answered.question.slip.is_empty() {
            let _ = writeln!(body, "<p><i>Often missed: {}.</i></p>", escaped(answered.question.slip));
        }
    }
    notes(solved, paper, &sources, body);
}

fn values(title: &str, given: &[Given], system: System, body: &mut String) {
    let _ = writeln!(body, "<article>\n<h3>{}</h3>\n<dl>", escaped(title));
    for given in given {
        let value = &given.value;
        let _ = writeln!(
            body,
            "<dt class=\"given\"><math><mrow>{}<mo>=</mo>{}</mrow></math></dt><dd>{}</dd>",
            math_of_symbol(value.symbol),
            mathml_of_value(value.amount, system),
            escaped(&value.meaning)
        );
    }
    body.push_str("</dl>\n</article>\n");
}

fn answer(part: &Part, solved: &Solved<'_>, (sources, system): (&[&str], System), step: &mut usize, body: &mut String) {
    match part {
        Part::Worked { case, line, .. } => {
            *step += 1;
            let mut line = line.as_ref().clone();
            line.what = headed(solved, *case, &line.what);
            html_result(&line, &step.to_string(), (sources, system), body);
        }
        Part::Again { case, value } => {
            let words = format!("{} = {}, as above", in_text(value.symbol), shown(value.amount, system));
            let _ = writeln!(body, "<p><b>{}</b></p>", escaped(&headed(solved, *case, &words)));
        }
        Part::Words { case, text, .. } => {
            let _ = writeln!(body, "<p><b>{}</b></p>", escaped(&headed(solved, *case, text)));
        }
    }
}

fn notes(solved: &Solved<'_>, paper: Paper, sources: &[&str], body: &mut String) {
    let said = if paper == Paper::Answers { &solved.cautions } else { &solved.dangers };
    if !said.is_empty() {
        body.push_str("<h3>If it were done</h3>\n<ul class=\"caution\">\n");
        for caution in said {
            let _ = writeln!(body, "<li>{}</li>", escaped(caution));
        }
        body.push_str("</ul>\n");
    }
    body.push_str("<h3>Formulas and values</h3>\n<ol>\n");
    for source in sources {
        let _ = writeln!(body, "<li>{}</li>", escaped(source));
    }
    body.push_str("</ol>\n");
    if paper == Paper::Answers {
        for case in &solved.problem.cases {
            let _ = writeln!(body, "<h3>Job file, {}</h3>\n<pre>{}</pre>", escaped(&case.label), escaped(&case.text));
        }
    }
}
