//! The list: its heading, and its rows with their lines.

use crate::cli::failure::{Failure, named};
use crate::job::{KEYS, LONGEST_TEXT};
use std::cell::Cell;
use std::fs::File;
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::rc::Rc;

const HELP: &str = "`seatwise batch --template` prints a list to begin with";

/// A row of the list.
pub(super) struct Record {
    /// Line on which it begins.
    pub(super) line: u64,
    pub(super) cells: csv::ByteRecord,
}

/// A list that is read row by row.
pub(super) struct List {
    reader: csv::Reader<Guard<Box<dyn Read>>>,
    /// Bytes that were read since the last row, which a missing quote would make many.
    since: Rc<Cell<usize>>,
    columns: Vec<String>,
    length: Option<u64>,
    name: String,
}

/// Refuses a row that is longer than any job.
struct Guard<R> {
    inner: R,
    since: Rc<Cell<usize>>,
}

impl<R: Read> Read for Guard<R> {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        if self.since.get() > LONGEST_TEXT {
            let what = format!("a row is longer than {LONGEST_TEXT} bytes; a quote may be missing");
            return Err(std::io::Error::new(std::io::ErrorKind::InvalidData, what));
        }
        let read = self.inner.read(buffer)?;
        self.since.set(self.since.get() + read);
        Ok(read)
    }
}

impl List {
    pub(super) fn open(path: &Path) -> Result<Self, Failure> {
        let failed = |error: &std::io::Error| Failure::file(path, "cannot read", error, HELP);
        let (source, length): (Box<dyn Read>, _) = if path == Path::new("-") {
            (Box::new(std::io::stdin()), None)
        } else {
            if path.is_dir() {
                return Err(Failure::plain(format!("{} is a folder, not a file", named(path)), HELP));
            }
            let file = File::open(path).map_err(|error| failed(&error))?;
            let length = file.metadata().ok().map(|data| data.len());
            (Box::new(file), length)
        };
        let mut source = BufReader::new(source);
        let start = source.fill_buf().map_err(|error| failed(&error))?;
        let (delimiter, mark) = (delimiter(start), start.starts_with(b"\xef\xbb\xbf"));
        if mark {
            source.consume(3);
        }
        let since = Rc::new(Cell::new(0));
        let guard: Guard<Box<dyn Read>> = Guard { inner: Box::new(source), since: Rc::clone(&since) };
        let mut reader = csv::ReaderBuilder::new().flexible(true).delimiter(delimiter).from_reader(guard);
        let head = reader.headers().map_err(|error| unreadable(&named(path), &error))?.clone();
        let columns = columns(&head, &named(path))?;
        Ok(Self { reader, since, columns, length, name: named(path) })
    }

    pub(super) fn columns(&self) -> &[String] {
        &self.columns
    }

    /// Bytes of the whole list, where they are known.
    pub(super) fn length(&self) -> Option<u64> {
        self.length
    }

    /// Bytes that have been read.
    pub(super) fn position(&self) -> u64 {
        self.reader.position().byte()
    }

    /// The next rows, at most so many; none at the end.
    pub(super) fn next_chunk(&mut self, most: usize) -> Result<Vec<Record>, Failure> {
        let mut records = Vec::new();
        while records.len() < most {
            let mut cells = csv::ByteRecord::new();
            self.since.set(0);
            let read = self.reader.read_byte_record(&mut cells).map_err(|error| unreadable(&self.name, &error))?;
            if !read {
                break;
            }
            let line = cells.position().map_or(0, csv::Position::line);
            records.push(Record { line, cells });
        }
        Ok(records)
    }
}

fn unreadable(name: &str, error: &csv::Error) -> Failure {
    Failure::plain(format!("{name} cannot be read on: {error}"), HELP)
}

/// The sign of which the first line holds most: spreadsheets write commas, semicolons or tabs, by country.
fn delimiter(start: &[u8]) -> u8 {
    let line = start.split(|byte| *byte == b'\n').next().unwrap_or_default();
    let count = |sign: u8| line.iter().filter(|byte| **byte == sign).count();
    // The last of equals wins, so that a heading of one column has commas.
    [b'\t', b';', b','].into_iter().max_by_key(|sign| count(*sign)).unwrap_or(b',')
}

/// The columns of a heading, each a key of the job file and there once.
fn columns(head: &csv::StringRecord, name: &str) -> Result<Vec<String>, Failure> {
    let columns: Vec<String> = head.iter().map(|column| column.trim().to_owned()).collect();
    for (i, column) in columns.iter().enumerate() {
        let table = column.split('.').next().unwrap_or_default();
        let bare = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_alphanumeric() || c == '_');
        let what = if !column.split('.').all(bare) || !KEYS.contains(&table) {
            format!("\"{column}\" is no key of a job")
        } else if columns[..i].contains(column) {
            format!("\"{column}\" stands there twice")
        } else {
            continue;
        };
        let message = format!("{name}: column {} of the heading: {what}", i + 1);
        let help = format!("{HELP}; a job begins with one of: {}", KEYS.join(", "));
        return Err(Failure::plain(message, help));
    }
    if columns.is_empty() {
        return Err(Failure::plain(format!("{name} is empty"), HELP));
    }
    Ok(columns)
}
