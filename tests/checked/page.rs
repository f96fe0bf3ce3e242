//! `plots/validation.md`: one line a reference row, with the one of its values that is farthest from what is allowed.

use super::{Check, Set, sets};
use std::fmt::Write;

pub const PAGE: &str = "plots/validation.md";
pub const PICTURE: &str = "plots/validation.svg";

const INTRODUCTION: &str = "\
# How far each reference row was met

Written by `cargo run --example validation` from the rows of `tests/reference/`. Tests hold every value, each in a call of
`prove` with the title of its set, and fail when this page is not what they compute.

One line stands for one reference row. A row often has several values, such as the stresses at each face of each ring; the
line shows the one that lies nearest to its allowed error or is farthest past it, and `values` counts them all. Share is error
over allowed error. Computed values are written to a thousandth of the allowed error or finer, at most twelve digits (fourteen where
less than the twelfth is allowed), and errors come from what is written: that is coarser than what another processor or mathematics
library changes in the last bits. Where the program states a range, as it does for the shape of a seat, the middle of the range stands
as computed, and half of its width is what is allowed: the expected value must lie inside.

\"Opened\" sources were read in the text or reproduction named; \"memory\" ones were not. An expected value that is computed apart
comes from an independent solution, program or library, which the first lines of the file under `tests/reference/` describe.
What is compared in other ways, such as properties that must hold of any job, is in the table of the
[README](../README.md#how-far-it-was-checked) and not here. Every file of `tests/reference/` has its sets below, but for:
";

const FIGURE: &str = "\n![Error over allowed error of every row, on a logarithmic axis](validation.svg)\n";

/// Files of reference rows that have no number to compare, and what is done with them.
pub const ELSEWHERE: [(&str, &str); 2] = [
    (
        "fits/ansi_b42_preferred.csv",
        "says of each preferred fit whether it is one of clearance, transition or interference; a test of the fits asks for that word",
    ),
    (
        "thermal/iced_water.csv",
        "is a cooling curve that no one film describes; a test of `seatwise log` asks that this is said",
    ),
];

/// Computed value as the page writes it.
pub fn written(check: &Check) -> String {
    let allowed = check.allowed[0].max(check.allowed[1]);
    if allowed <= 0.0 {
        return plain(check.computed);
    }
    if check.expected.abs() <= 0.0 {
        // What is left where terms cancel is the rounding itself.
        return to_place(check.computed, magnitude(allowed) - 1);
    }
    let size = magnitude(check.expected);
    let fine = (magnitude(allowed) - 4).max(size - 8).min(magnitude(allowed) - 3);
    let finest = if magnitude(allowed) < size - 11 { magnitude(allowed) - 1 } else { size - 11 };
    to_place(check.computed, fine.max(finest))
}

/// Error of what is written, and its share of what is allowed on its side: 0 where both are the same.
pub fn error_and_share(check: &Check) -> (f64, f64) {
    let computed: f64 = written(check).parse().unwrap();
    let error = computed - check.expected;
    let allowed = check.allowed_beside(computed);
    let places = 10_f64.powi(magnitude_or(check.expected, -99) - 12);
    if error.abs() <= places { (0.0, 0.0) } else { (error, error.abs() / allowed) }
}

/// Power of ten of the first digit.
fn magnitude(value: f64) -> i32 {
    let scientific = format!("{value:e}");
    scientific.split_once('e').unwrap().1.parse().unwrap()
}

fn magnitude_or(value: f64, otherwise: i32) -> i32 {
    if value.abs() > 0.0 { magnitude(value) } else { otherwise }
}

/// Rounded to the place of a power of ten.
fn to_place(value: f64, place: i32) -> String {
    let decimals = usize::try_from(-place).unwrap_or(0);
    let rounded = if place > 0 { (value / 10_f64.powi(place)).round() * 10_f64.powi(place) } else { value };
    let text = format!("{rounded:.decimals$}");
    if text.trim_start_matches('-').chars().all(|digit| matches!(digit, '0' | '.')) { "0".to_owned() } else { text }
}

/// Up to twelve digits, without zeros at the end.
fn plain(value: f64) -> String {
    let text = to_place(value, magnitude_or(value, 0) - 11);
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    text.to_owned()
}

/// Three digits.
fn short(value: f64) -> String {
    if value.abs() > 0.0 && !(-4..5).contains(&magnitude(value)) {
        return format!("{value:.2e}");
    }
    let text = to_place(value, (magnitude_or(value, 0) - 2).min(0));
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    text.to_owned()
}

fn percent(share: f64) -> String {
    match share {
        share if share <= 0.0 => "0".to_owned(),
        share if share < 0.001 => "< 0.1 %".to_owned(),
        share => format!("{:.1} %", 100.0 * share),
    }
}

fn allowed(check: &Check) -> String {
    let [below, above] = check.allowed;
    if below.max(above) <= 0.0 {
        "none".to_owned()
    } else if (below - above).abs() > 1e-9 * above {
        format!("-{} to +{}", short(below), short(above))
    } else {
        short(above)
    }
}

/// The rows in the order of the set, each with all of its checks.
pub fn by_row(checks: &[Check]) -> Vec<Vec<&Check>> {
    let mut rows: Vec<Vec<&Check>> = Vec::new();
    for check in checks {
        match rows.last_mut().filter(|row| row[0].row == check.row) {
            Some(row) => row.push(check),
            None => rows.push(vec![check]),
        }
    }
    rows
}

/// The check of a row that is nearest to its allowed error; of several the first that is not zero.
pub fn worst<'a>(row: &[&'a Check]) -> &'a Check {
    let rank = |check: &Check| (error_and_share(check).1, check.expected.abs() > 0.0);
    row.iter().copied().reduce(|a, b| if rank(b) > rank(a) { b } else { a }).unwrap()
}

pub fn largest_share(checks: &[Check]) -> f64 {
    checks.iter().map(|check| error_and_share(check).1).fold(0.0, f64::max)
}

/// The line of a set in the table at the head.
pub fn summary_line(set: &Set, checks: &[Check]) -> String {
    let (rows, largest) = (by_row(checks).len(), percent(largest_share(checks)));
    format!("| {} | {} | {rows} | {} | {largest} |\n", set.family, set.title, checks.len())
}

/// The part of a set: what is allowed, its sources, every row.
pub fn part(set: &Set, checks: &[Check]) -> String {
    let rows = by_row(checks);
    let mut sources: Vec<String> = Vec::new();
    let mut lines = String::new();
    for row in &rows {
        let check = worst(row);
        let source = format!("{} ({})", check.source, check.status);
        let place = sources.iter().position(|known| *known == source).unwrap_or_else(|| {
            sources.push(source);
            sources.len() - 1
        });
        let (error, share) = error_and_share(check);
        writeln!(
            lines,
            "| {} | {} | {} | {} | {} | {} | {} | {} | {} | {} |",
            cell(&check.row),
            row.len(),
            cell(&check.what),
            plain(check.expected),
            written(check),
            check.unit,
            short(error),
            allowed(check),
            percent(share),
            place + 1
        )
        .unwrap();
    }
    let largest = percent(largest_share(checks));
    let mut text = format!(
        "### {}\n\nAllowed error: {}.\n\n{} rows, {} values, largest error {largest} of what is allowed.\n\n",
        set.title,
        set.allowed,
        rows.len(),
        checks.len()
    );
    for (number, source) in (1..).zip(&sources) {
        writeln!(text, "{number}. {source}").unwrap();
    }
    text.push_str("\n<details><summary>Rows</summary>\n\n");
    text.push_str("| row | values | shown | expected | computed | unit | error | allowed | share | source |\n");
    text.push_str("|---|---|---|---|---|---|---|---|---|---|\n");
    text + &lines + "\n</details>\n"
}

fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

/// The line that counts all sets, from rows and values of each.
pub fn total_line(counts: &[(usize, usize)]) -> String {
    let (rows, values) = counts.iter().fold((0, 0), |sum, count| (sum.0 + count.0, sum.1 + count.1));
    format!("| all | {} sets | {rows} | {values} | |\n", counts.len())
}

/// What comes before the lines of the summary.
pub fn head() -> String {
    let elsewhere: String = ELSEWHERE.iter().map(|(file, why)| format!("- `{file}`, which {why}.\n")).collect();
    format!(
        "{INTRODUCTION}\n{elsewhere}{FIGURE}\n| family | set | rows | values | largest error, of allowed |\n|---|---|---|---|---|\n"
    )
}

/// The whole page from the checks of every set.
pub fn page(all: &[Vec<Check>]) -> String {
    let mut text = head();
    for (set, checks) in sets().zip(all) {
        text.push_str(&summary_line(set, checks));
    }
    let counts: Vec<_> = all.iter().map(|checks| (by_row(checks).len(), checks.len())).collect();
    text.push_str(&total_line(&counts));
    let mut family = "";
    for (set, checks) in sets().zip(all) {
        if set.family != family {
            family = set.family;
            write!(text, "\n## {family}\n").unwrap();
        }
        text.push('\n');
        text.push_str(&part(set, checks));
    }
    text
}
