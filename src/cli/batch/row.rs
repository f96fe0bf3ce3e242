//! One row of a list as a job, and what came of it.

use super::list::Record;
use crate::cli::args::BatchFormat;
use crate::cli::failure::Failure;
use crate::job::{self, Problem};
use crate::plan::{self, Method, SolvedSeats};
use crate::report::batch::{self as report, RowMistake, planned_json, planned_lines, refused_json, refused_line};
use crate::stock::Library;

/// Any sound job: its plan gives the heading of the results.
const SOUND: &str = "[bearing]\ndesignation = \"6205\"\n[housing]\nbore_limits = \"N7\"\noutside = \"80 mm\"\nmaterial = \
                     \"cast-aluminium\"\n";

/// Plans the rows of a list; every row by itself.
pub(super) struct Planner {
    columns: Vec<String>,
    format: BatchFormat,
    heading: String,
    /// Sections that rows share.
    solved: SolvedSeats,
}

/// What came of a row.
pub(super) struct Told {
    line: u64,
    /// The lines of the result.
    pub(super) text: String,
    mistakes: Vec<RowMistake>,
}

impl Told {
    pub(super) fn failed(&self) -> bool {
        !self.mistakes.is_empty()
    }

    /// A line for each mistake.
    pub(super) fn complaints(&self, list: &str) -> Vec<String> {
        self.mistakes.iter().map(|mistake| format!("error: {list}:{}: {}\n", self.line, mistake.line())).collect()
    }
}

impl Planner {
    pub(super) fn new(columns: Vec<String>, format: BatchFormat, library: &Library) -> Result<Self, Failure> {
        let unsound = |error: String| Failure::plain(error, "report this");
        let job = job::check(SOUND, library).map_err(|problems| unsound(problems.to_string()))?;
        let plan = plan::plan(&job).map_err(|error| unsound(error.to_string()))?;
        let heading = match format {
            BatchFormat::Csv => report::heading(&plan).map_err(Failure::unprintable)?,
            BatchFormat::Json => String::new(),
        };
        Ok(Self { columns, format, heading, solved: SolvedSeats::default() })
    }

    /// What stands above all results.
    pub(super) fn heading(&self) -> &str {
        &self.heading
    }

    pub(super) fn plan(&self, record: &Record, library: &Library) -> Told {
        let (text, mistakes) = match self.attempt(record, library) {
            Ok(text) => (text, Vec::new()),
            Err(mistakes) => (self.refused(record, &mistakes), mistakes),
        };
        Told { line: record.line, text, mistakes }
    }

    fn attempt(&self, record: &Record, library: &Library) -> Result<String, Vec<RowMistake>> {
        let (text, columns) = self.job_text(record)?;
        let job = job::check(&text, library)
            .map_err(|problems| problems.iter().map(|problem| mistake(problem, &text, &columns)).collect::<Vec<_>>())?;
        let planned = plan::plan_in_list(&job, Method::Auto, &self.solved).map_err(|error| {
            vec![RowMistake { column: None, message: error.to_string(), help: error.help().to_owned() }]
        })?;
        Ok(match self.format {
            BatchFormat::Csv => in_memory(planned_lines(&planned)),
            BatchFormat::Json => format!("{}\n", planned_json(&planned)),
        })
    }

    /// The row as a job's text, one line a cell, and the column of each line.
    fn job_text<'c>(&'c self, record: &Record) -> Result<(String, Vec<&'c str>), Vec<RowMistake>> {
        if record.cells.len() != self.columns.len() {
            let (found, wanted) = (record.cells.len(), self.columns.len());
            let message = format!("the row has {found} cells, and the heading {wanted}");
            let help = "put text with the sign between cells in quotes".to_owned();
            return Err(vec![RowMistake { column: None, message, help }]);
        }
        // Signs, quotes and line ends, and now and then a sign that must be written as an escape.
        let length: usize = self.columns.iter().map(|column| column.len() + 16).sum();
        let mut text = String::with_capacity(length + record.cells.as_slice().len());
        let mut lines = Vec::with_capacity(self.columns.len());
        for (column, cell) in self.columns.iter().zip(&record.cells) {
            let Ok(cell) = std::str::from_utf8(cell) else {
                let message = "the cell is not UTF-8 text".to_owned();
                let help = "save the list as CSV in UTF-8".to_owned();
                return Err(vec![RowMistake { column: Some(column.clone()), message, help }]);
            };
            let cell = cell.trim();
            if let Err(error) = sound(cell) {
                // Alone, so that a brace that is not closed does not swallow the cells after it.
                let message = format!("\"{cell}\" begins like TOML but is not: {}", error.message());
                let help = "write it like { inside = \"50 mm\", wall = \"4 mm\" }".to_owned();
                return Err(vec![RowMistake { column: Some(column.clone()), message, help }]);
            }
            if !cell.is_empty() {
                text.push_str(column);
                text.push_str(" = ");
                write_cell(cell, &mut text);
                text.push('\n');
                lines.push(column.as_str());
            }
        }
        Ok((text, lines))
    }

    fn refused(&self, record: &Record, mistakes: &[RowMistake]) -> String {
        let named = |wanted: &str| {
            let at = self.columns.iter().position(|column| column == wanted);
            let cell = at.and_then(|at| record.cells.get(at)).unwrap_or_default();
            String::from_utf8_lossy(cell).trim().to_owned()
        };
        let (title, reference) = (named("title"), named("reference"));
        match self.format {
            BatchFormat::Csv => in_memory(refused_line(&self.heading, &title, &reference, mistakes)),
            BatchFormat::Json => format!("{}\n", refused_json(&title, &reference, mistakes)),
        }
    }
}

/// Whether a cell that is taken as TOML is TOML.
fn sound(cell: &str) -> Result<(), toml::de::Error> {
    if !is_raw(cell) {
        return Ok(());
    }
    let mut text = String::from("cell = ");
    write_cell(cell, &mut text);
    toml::from_str::<toml::Table>(&text).map(|_| ())
}

/// Whether a cell is taken as it stands.
fn is_raw(cell: &str) -> bool {
    cell.starts_with(['{', '['])
}

/// Writes a cell as TOML on one line: text in quotes, or a table or a list as it stands.
fn write_cell(cell: &str, text: &mut String) {
    if is_raw(cell) {
        text.extend(cell.chars().map(|c| if matches!(c, '\n' | '\r') { ' ' } else { c }));
        return;
    }
    let as_it_stands = |c: char| !(matches!(c, '"' | '\\') || c.is_control());
    text.push('"');
    if cell.chars().all(as_it_stands) {
        text.push_str(cell);
    } else {
        for c in cell.chars() {
            match c {
                '"' | '\\' => text.extend(['\\', c]),
                c if c.is_control() => text.push_str(&format!("\\u{:04X}", u32::from(c))),
                c => text.push(c),
            }
        }
    }
    text.push('"');
}

/// A problem of the row's job with the column that its place belongs to.
fn mistake(problem: &Problem, text: &str, columns: &[&str]) -> RowMistake {
    let before = text.get(..problem.at.start.min(text.len())).unwrap_or(text);
    let column = columns.get(before.matches('\n').count()).map(|column| (*column).to_owned());
    RowMistake { column, message: problem.message.clone(), help: problem.help.clone() }
}

/// Text that was written to memory, which cannot fail.
fn in_memory(written: Result<String, csv::Error>) -> String {
    written.unwrap_or_default()
}
