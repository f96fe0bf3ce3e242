//! Answers as the text of a job, and where in it each answer stands.

use super::Answers;
use crate::quantity;
use std::ops::Range;

const TABLES: [&str; 7] = ["bearing", "housing", "shaft", "chill", "warm", "bench", "press"];

/// A job's text with the place of each key in it.
#[derive(Clone, Debug, Default)]
pub(super) struct Written {
    pub(super) text: String,
    pub(super) places: Vec<(&'static str, Range<usize>)>,
}

/// The job that the answers make.
pub(super) fn written(answers: &Answers) -> Written {
    let mut written = Written::default();
    if let Some(title) = answers.get("title") {
        written.line("title", "title", &quoted(title));
    }
    for table in TABLES {
        let lines = lines(table, answers);
        if lines.is_empty() {
            continue;
        }
        written.text.push_str(&format!("\n[{table}]\n"));
        for (key, name, value) in lines {
            written.line(key, name, &value);
        }
    }
    written
}

impl Written {
    fn line(&mut self, key: &'static str, name: &str, value: &str) {
        let from = self.text.len();
        self.text.push_str(&format!("{name} = {value}"));
        self.places.push((key, from..self.text.len()));
        self.text.push('\n');
    }
}

/// Question, key and value of each line of a table; nothing where the job goes without the table.
fn lines(table: &str, answers: &Answers) -> Vec<(&'static str, &'static str, String)> {
    let none = |key: &str| answers.is(key, "none");
    if (table == "chill" && none("chill.medium")) || (table == "warm" && none("warm.medium")) {
        return Vec::new();
    }
    let mut lines = Vec::new();
    for (key, answer) in answers.given() {
        let Some((of, name)) = key.split_once('.').filter(|(of, name)| *of == table && !name.contains('.')) else {
            continue;
        };
        let line = match (of, name) {
            ("bearing", "kind") => answers.kind().map(|kind| ("kind", quoted(kind))),
            ("press", "means") if answer == "none" => None,
            (_, "outside_limits" | "bore_limits") => Some((name, limits(key, answer, answers))),
            ("housing", "outside") => Some(boss(answer)),
            ("chill" | "warm", "hold") => Some(hold(answer)),
            ("chill" | "warm", "medium") => {
                let piece = if of == "chill" { answers.cold() } else { answers.hot() };
                lines.push((key, "part", quoted(piece)));
                Some(("medium", quoted(answer)))
            }
            _ => Some((name, quoted(answer))),
        };
        lines.extend(line.map(|(name, value)| (key, name, value)));
    }
    lines
}

fn quoted(value: &str) -> String {
    toml::Value::String(value.to_owned()).to_string()
}

/// Sizes as measured, one or several with a slash between; none for a class or for deviations.
pub(super) fn measured(answer: &str) -> Option<Vec<&str>> {
    let sizes: Vec<&str> = answer.split('/').map(str::trim).collect();
    let all = sizes.iter().all(|size| !size.starts_with(['+', '-']) && quantity::length(size).is_ok());
    all.then_some(sizes)
}

fn limits(key: &str, answer: &str, answers: &Answers) -> String {
    let Some(sizes) = measured(answer) else { return quoted(answer) };
    let within = quoted(answers.get(&format!("{key}.within")).unwrap_or("2 um"));
    match sizes[..] {
        [size] => format!("{{ measured = {}, within = {within} }}", quoted(size)),
        _ => {
            let row: Vec<String> = sizes.into_iter().map(quoted).collect();
            format!("{{ readings = [[{}]], within = {within} }}", row.join(", "))
        }
    }
}

/// "90 mm", or the wall where the answer says so.
fn boss(answer: &str) -> (&'static str, String) {
    match answer.strip_prefix("wall") {
        Some(wall) => ("wall", quoted(wall.trim())),
        None => ("outside", quoted(answer)),
    }
}

/// A time, or what it is held until.
fn hold(answer: &str) -> (&'static str, String) {
    let until = answer.eq_ignore_ascii_case("settled") || quantity::temperature(answer).is_ok();
    (if until { "until" } else { "hold" }, quoted(answer))
}
