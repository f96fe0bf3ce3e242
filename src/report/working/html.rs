//! A working as a page: formulas in MathML, no script, nothing fetched, readable in black and white.

use super::formula::{Formula, Symbol};
use super::model::{Line, Value, Way, Working};
use super::text::numbers;
use super::{DEFER, LEGEND};
use crate::quantity::{System, Worked};
use std::fmt::Write as _;

const STYLE: &str = "
  body { font: 11pt/1.4 'Seatwise Sans', sans-serif; color: var(--ink); background: var(--paper); margin: 12mm auto; max-width: 180mm; padding: 0 4mm; }
  h1 { font-size: 16pt; margin: 0 0 2mm; }
  h2 { font-size: 12.5pt; margin: 8mm 0 2mm; border-bottom: 0.5mm solid var(--ink); padding-bottom: 1mm; break-after: avoid; }
  h3 { font-size: 11pt; margin: 0 0 1.5mm; }
  article { margin: 0 0 4mm; padding: 2mm 0 0; break-inside: avoid; }
  article + article { border-top: 0.2mm solid var(--rule); padding-top: 3mm; }
  math { font-size: 12pt; } mn, mtext { font-family: 'Seatwise Sans', sans-serif; }
  mtable { math-style: normal; }
  mtd { text-align: left; padding: 0.9mm 0.6mm; }
  mtd:first-child { text-align: right; }
  mfrac { padding: 0 0.5mm; } mfrac > * { padding: 0.6mm 0; } mo { padding: 0 0.25mm; }
  mtd.wide { font-size: 9pt; }
  .result { font-weight: bold; border-bottom: 0.3mm double var(--ink); }
  dl { display: grid; grid-template-columns: max-content 1fr; gap: 0 3mm; margin: 0 0 1mm 4mm; font-size: 9.5pt; }
  dt { text-align: right; } dd { margin: 0; }
  dl math { font-size: 10pt; }
  p { margin: 0 0 1.5mm 4mm; } .lead { margin-left: 0; }
  .source { font-size: 8.5pt; color: var(--muted); }
  .source::before { content: 'Source: '; }
  ol { font-size: 9.5pt; }
  li { margin: 0 0 1.5mm; }
  @page { margin: 14mm; }
  @media print { body { margin: 0; max-width: none; padding: 0; } }
";

/// Text with the signs of HTML made harmless.
pub(in crate::report) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

pub(in crate::report) fn math_of_symbol(symbol: Symbol) -> String {
    let letter = escaped(symbol.letter);
    if symbol.mark.is_empty() {
        return format!("<mi>{letter}</mi>");
    }
    format!("<msub><mi>{letter}</mi><mtext>{}</mtext></msub>", escaped(symbol.mark))
}

/// A number with its unit.
pub(in crate::report) fn mathml_of_value(amount: Worked, system: System) -> String {
    let (number, unit) = amount.show(system);
    let (sign, digits) = number.strip_prefix('-').map_or(("", number.as_str()), |digits| ("<mo>−</mo>", digits));
    let unit = if unit.is_empty() {
        String::new()
    } else {
        format!("<mspace width=\"0.2em\"/><mtext>{}</mtext>", escaped(unit))
    };
    format!("<mrow>{sign}<mn>{digits}</mn>{unit}</mrow>")
}

fn is_sum(formula: &Formula) -> bool {
    matches!(formula, Formula::Sum(..) | Formula::Difference(..))
}

/// Brackets grow with a fraction, and with nothing else.
fn bracketed(text: &str) -> String {
    let grows = text.contains("<mfrac>");
    format!("<mrow><mo stretchy=\"{grows}\">(</mo>{text}<mo stretchy=\"{grows}\">)</mo></mrow>")
}

fn written(formula: &Formula, value: &impl Fn(Symbol) -> String) -> String {
    let inner = |formula: &Formula| written(formula, value);
    let factor = |formula: &Formula| if is_sum(formula) { bracketed(&inner(formula)) } else { inner(formula) };
    match formula {
        Formula::Value(symbol) => value(*symbol),
        Formula::Whole(number) => format!("<mn>{number}</mn>"),
        Formula::Pi => "<mi>π</mi>".to_owned(),
        Formula::Exp(of) => format!("<mrow><mi>exp</mi>{}</mrow>", bracketed(&inner(of))),
        Formula::Ln(of) => format!("<mrow><mi>ln</mi>{}</mrow>", bracketed(&inner(of))),
        Formula::Sum(a, b) => format!("<mrow>{}<mo>+</mo>{}</mrow>", inner(a), inner(b)),
        Formula::Difference(a, b) => format!("<mrow>{}<mo>−</mo>{}</mrow>", inner(a), factor(b)),
        Formula::Quotient(a, b) => format!("<mfrac>{}{}</mfrac>", inner(a), inner(b)),
        Formula::Square(of) => {
            let base = inner(of);
            // A number with its unit is squared as a whole.
            let whole = base.starts_with("<mi>") || base.starts_with("<msub>");
            format!("<msup>{}<mn>2</mn></msup>", if whole { base } else { bracketed(&base) })
        }
        Formula::Product(factors) => {
            let factors: Vec<String> = factors.iter().map(factor).collect();
            format!("<mrow>{}</mrow>", factors.join("<mo>·</mo>"))
        }
    }
}

/// A formula in MathML.
fn mathml(formula: &Formula) -> String {
    written(formula, &math_of_symbol)
}

/// A formula in MathML with values for symbols.
fn put_in(formula: &Formula, values: &[Value], system: System) -> String {
    written(formula, &|symbol| match values.iter().find(|value| value.symbol == symbol) {
        Some(value) if value.amount.show(system).0.starts_with('-') => {
            bracketed(&mathml_of_value(value.amount, system))
        }
        Some(value) => mathml_of_value(value.amount, system),
        None => math_of_symbol(symbol),
    })
}

/// The arithmetic of a result, one row below the other.
fn arithmetic(line: &Line, system: System) -> String {
    let result = format!("<mrow class=\"result\">{}</mrow>", mathml_of_value(line.result.amount, system));
    let rows = match &line.way {
        Way::Formula(formula) => vec![mathml(formula), put_in(formula, &line.put_in, system), result],
        Way::Words(_) => vec![result],
    };
    let mut out = String::from("<p><math><mtable>");
    for (place, row) in rows.iter().enumerate() {
        let left = if place == 0 { math_of_symbol(line.result.symbol) } else { String::new() };
        let class = if is_wide(row) { " class=\"wide\"" } else { "" };
        let _ = writeln!(out, "<mtr><mtd>{left}</mtd><mtd><mo>=</mo></mtd><mtd{class}>{row}</mtd></mtr>");
    }
    out + "</mtable></math></p>"
}

/// Whether a row has more numbers side by side than fit a page at full size; those of a fraction stand over one another.
fn is_wide(row: &str) -> bool {
    let most = if row.contains("<mfrac>") { 10 } else { 6 };
    row.matches("<mn>").count() > most
}

fn meanings(line: &Line, system: System) -> String {
    if line.put_in.is_empty() {
        return String::new();
    }
    let mut out = String::from("<dl>");
    for value in &line.put_in {
        let symbol = format!("<math>{}</math>", math_of_symbol(value.symbol));
        let amount = match line.way {
            Way::Formula(_) => String::new(),
            Way::Words(_) => format!("<math>{}</math>, ", mathml_of_value(value.amount, system)),
        };
        let _ = writeln!(out, "<dt>{symbol}</dt><dd>{amount}{}</dd>", escaped(&value.meaning));
    }
    out + "</dl>"
}

/// A whole page with this body.
pub(in crate::report) fn page(title: &str, body: &str) -> String {
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" \
         content=\"width=device-width, initial-scale=1\">\n<title>{}</title>\n<style>\n{}{STYLE}</style>\n</head>\n<body>\n{body}\n\
         </body>\n</html>\n",
        escaped(title),
        crate::report::plot::font_faces() + &crate::report::card::colours(),
    )
}

/// One result as an article.
pub(in crate::report) fn html_result(
    line: &Line,
    number: &str,
    (sources, system): (&[&str], System),
    body: &mut String,
) {
    let _ = writeln!(body, "<article>\n<h3>{number}. {}</h3>\n{}", escaped(&line.what), arithmetic(line, system));
    let words = if let Way::Words(way) = line.way { format!("How: {way}.") } else { String::new() };
    for remark in [words, line.remark.clone()].iter().filter(|remark| !remark.is_empty()) {
        let _ = writeln!(body, "<p>{}</p>", escaped(remark));
    }
    let _ = writeln!(body, "{}<p class=\"source\">{}</p>\n</article>", meanings(line, system), numbers(line, sources));
}

/// A working as a page to print.
pub fn html(working: &Working, system: System) -> String {
    let title = format!("Working: {}", working.title);
    let mut body = format!("<h1>{}</h1>\n", escaped(&title));
    for answer in &working.answer {
        let _ = writeln!(body, "<p class=\"lead\"><b>{}</b></p>", escaped(answer));
    }
    let _ = writeln!(body, "<p class=\"lead\">{}</p>", escaped(LEGEND));
    let (sources, mut number) = (working.sources(), 0);
    for part in &working.parts {
        let _ = writeln!(body, "<h2>{}</h2>", escaped(&part.heading));
        for line in &part.lines {
            number += 1;
            html_result(line, &number.to_string(), (&sources, system), &mut body);
        }
    }
    body.push_str("<h2>Cautions</h2>\n<ul>\n");
    for caution in &working.cautions {
        let _ = writeln!(body, "<li>{}</li>", escaped(caution));
    }
    body.push_str("</ul>\n<h2>Sources</h2>\n<ol>\n");
    for source in &sources {
        let _ = writeln!(body, "<li>{}</li>", escaped(source));
    }
    let _ = write!(body, "</ol>\n<p class=\"lead\">{}</p>", escaped(DEFER));
    page(&title, &body)
}
