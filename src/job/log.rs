//! Readings of parts in their media, against time: CSV with the heading `time,part,value`.
//!
//! A time counts from when that part went into its medium. A value is a temperature, or a size of the part; a size says a
//! temperature by the expansion of the material, beside the size read at 0 s. Both sizes come from one gauge and one
//! place, so that what the gauge reads wrong, it reads wrong twice and it cancels.

use super::model::{Job, Piece, Treatment};
use super::problem::{Problem, Problems};
use super::{Hold, LONGEST_TEXT};
use crate::quantity::{self, Length, ThermodynamicTemperature, Time, Toward, show_duration};
use crate::stock::Curve;
use std::ops::Range;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::{hour, second};

/// Readings after the first moment that a piece needs: a film, its scatter, and one that speaks against both.
const FEWEST: usize = 4;
/// By how much a reading may lie beyond start or medium: rounding of a thermometer, and a share of the way.
const BEYOND: (f64, f64) = (1.0, 0.03);
/// A stretch without readings, as a share of the whole time, that is told.
const LONG_GAP_SHARE: f64 = 0.4;

const HELP: &str =
    "begin with the line time,part,value; then rows such as 5 min,bearing,-3 °C or 0 s,bearing,61.994 mm";

/// Readings of one piece, in the order of time.
#[derive(Clone, Debug)]
pub struct PieceReadings {
    /// The piece.
    pub piece: Piece,
    /// Temperature when it went in: read at 0 s, or else that of the shop in the job.
    pub start: ThermodynamicTemperature,
    /// Whether it was read.
    pub start_read: bool,
    /// The readings after 0 s.
    pub readings: Vec<Reading>,
    /// The longest stretch without a reading, when it is a large share of the time.
    pub gap: Option<(Time, Time)>,
}

/// One reading.
#[derive(Clone, Copy, Debug)]
pub struct Reading {
    /// Time since the piece went in.
    pub time: Time,
    /// Its temperature, read or said by its size.
    pub temperature: ThermodynamicTemperature,
    /// The size, where that was read.
    pub size: Option<Length>,
}

/// A log that has passed every check against its job.
#[derive(Clone, Debug)]
pub struct Log {
    /// One for each piece that was read.
    pub pieces: Vec<PieceReadings>,
    /// Rows without a value, which were left out.
    pub empty: usize,
}

/// A row as typed.
struct Row {
    at: Range<usize>,
    time: Time,
    piece: Piece,
    value: Value,
    typed: String,
}

#[derive(Clone, Copy)]
enum Value {
    Temperature(ThermodynamicTemperature),
    Size(Length),
}

/// Checks readings against the job in which they were taken.
///
/// # Errors
/// Every mistake with its place: columns, units, order of time, a piece that was not treated, a value that the medium cannot
/// give, and fewer readings than a fit needs.
///
/// # Examples
/// ```
/// use seatwise::{job, stock::Library};
/// let job = job::check(seatwise::job::STARTERS[0].text, &Library::default())?;
/// let text = "time,part,value\n5 min,bearing,12 °C\n10 min,bearing,6 °C\n20 min,bearing,-3 °C\n40 min,bearing,-12 °C\n";
/// assert_eq!(job::check_log(text, &job)?.pieces[0].readings.len(), 4);
/// # Ok::<(), job::Problems>(())
/// ```
pub fn check_log(text: &str, job: &Job) -> Result<Log, Problems> {
    let mut problems = Vec::new();
    let (rows, empty) = rows(text, &mut problems);
    let mut pieces = Vec::new();
    // Of rows that cannot be read nothing more is asked: the order and the number of the others would mislead.
    if problems.is_empty() {
        for piece in [Piece::Part, Piece::Housing, Piece::Shaft] {
            let own: Vec<&Row> = rows.iter().filter(|row| row.piece == piece).collect();
            if !own.is_empty() {
                pieces.extend(piece_readings(piece, &own, job, &mut problems));
            }
        }
        if rows.is_empty() {
            problem(&mut problems, super::first_sign(text), "there are no readings".to_owned(), HELP);
        }
    }
    match Problems::collect(problems) {
        Some(problems) => Err(problems),
        None => Ok(Log { pieces, empty }),
    }
}

/// The treatment of a piece.
pub(crate) fn treatment_of(job: &Job, piece: Piece) -> Option<&Treatment> {
    job.chill.iter().chain(&job.warm).find(|treatment| treatment.piece == piece)
}

fn problem(problems: &mut Vec<Problem>, at: Range<usize>, message: String, help: impl Into<String>) {
    problems.push(Problem::new(at, message, help));
}

fn rows(text: &str, problems: &mut Vec<Problem>) -> (Vec<Row>, usize) {
    if text.len() > LONGEST_TEXT {
        problem(
            problems,
            0..0,
            format!("the readings have {} bytes; at most {LONGEST_TEXT} are read", text.len()),
            HELP,
        );
        return (Vec::new(), 0);
    }
    let heading = |line: &&str| !line.trim().is_empty() && !line.starts_with('#');
    let first = text.lines().find(heading).unwrap_or_default();
    let delimiter = [b';', b'\t'].into_iter().find(|mark| first.contains(char::from(*mark))).unwrap_or(b',');
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(delimiter)
        .comment(Some(b'#'))
        .trim(csv::Trim::All)
        .from_reader(text.trim_start_matches('\u{feff}').as_bytes());
    // The mark of the encoding is not in what the reader counts.
    let shift = text.len() - text.trim_start_matches('\u{feff}').len();
    let heads: Vec<String> =
        reader.headers().map_or_else(|_| Vec::new(), |heads| heads.iter().map(str::to_lowercase).collect());
    let column = |name: &str| heads.iter().position(|head| head == name);
    let (Some(time), Some(part), Some(value)) = (column("time"), column("part"), column("value")) else {
        let message = format!("the heading is \"{}\", but time, part and value are wanted", first.trim());
        let from = text.find(first).unwrap_or(0);
        problem(problems, from..from + first.len(), message, HELP);
        return (Vec::new(), 0);
    };
    let (mut found, mut empty) = (Vec::new(), 0);
    for record in reader.records() {
        match record {
            Ok(record) => {
                let from =
                    shift + record.position().map_or(0, |position| usize::try_from(position.byte()).unwrap_or(0));
                let cell = |column: usize| record.get(column).unwrap_or_default();
                if cell(value).is_empty() {
                    empty += 1;
                    continue;
                }
                let cells = Cells { text, from, time: cell(time), part: cell(part), value: cell(value) };
                found.extend(cells.row(problems));
            }
            Err(error) => {
                let from = error.position().map_or(0, |position| usize::try_from(position.byte()).unwrap_or(0));
                let message = format!("this row has not as many cells as the heading: {error}");
                problem(
                    problems,
                    line_at(text, shift + from),
                    message,
                    "put a value that holds the separator in quotes",
                );
            }
        }
    }
    (found, empty)
}

/// The line that begins at, or after, a byte.
fn line_at(text: &str, from: usize) -> Range<usize> {
    let from = from.min(text.len());
    let rest = text.get(from..).unwrap_or_default();
    let start = from + (rest.len() - rest.trim_start().len());
    let end = text.get(start..).and_then(|rest| rest.find('\n')).map_or(text.len(), |end| start + end);
    start..end
}

struct Cells<'t> {
    text: &'t str,
    from: usize,
    time: &'t str,
    part: &'t str,
    value: &'t str,
}

impl Cells<'_> {
    /// Where a cell stands in the text.
    fn place(&self, cell: &str) -> Range<usize> {
        let line = line_at(self.text, self.from);
        let found = self.text[line.clone()].find(cell).filter(|_| !cell.is_empty());
        found.map_or(line.clone(), |at| line.start + at..line.start + at + cell.len())
    }

    fn row(&self, problems: &mut Vec<Problem>) -> Option<Row> {
        let time = quantity::duration(self.time);
        if let Err(error) = &time {
            problem(problems, self.place(self.time), format!("time: {}", error.problem), error.help.clone());
        }
        let piece = match self.part.to_lowercase().as_str() {
            "bearing" | "bush" | "plug" | "part" | "ring" => Some(Piece::Part),
            "housing" => Some(Piece::Housing),
            "shaft" => Some(Piece::Shaft),
            _ => None,
        };
        if piece.is_none() {
            let message = format!("part cannot be \"{}\"", self.part);
            problem(problems, self.place(self.part), message, "write one of: bearing, bush, plug, housing, shaft");
        }
        let value = self.value();
        if let Err((message, help)) = &value {
            problem(problems, self.place(self.value), message.clone(), help.clone());
        }
        let (time, piece, value) = (time.ok()?.value, piece?, value.ok()?);
        Some(Row { at: self.place(self.value), time, piece, value, typed: self.value.to_owned() })
    }

    fn value(&self) -> Result<Value, (String, String)> {
        if let Ok(size) = quantity::length(self.value) {
            return Ok(Value::Size(size.value));
        }
        let temperature = quantity::temperature(self.value).map_err(|error| {
            let help = format!("{}; or a size of the part, such as 61.987 mm", error.help);
            (format!("value: {}", error.problem), help)
        })?;
        Ok(Value::Temperature(temperature.value))
    }
}

fn piece_readings(piece: Piece, rows: &[&Row], job: &Job, problems: &mut Vec<Problem>) -> Option<PieceReadings> {
    let before = problems.len();
    let Some(treatment) = treatment_of(job, piece) else {
        let message = "this part is neither chilled nor warmed in the job".to_owned();
        problem(problems, rows[0].at.clone(), message, "add its [chill] or [warm] to the job, or leave its rows out");
        return None;
    };
    for pair in rows.windows(2) {
        if pair[1].time < pair[0].time {
            let [now, then] = [pair[1].time, pair[0].time].map(|time| show_duration(time, Toward::Nearest));
            let message = format!("this reading was taken at {now}, but the one above it at {then}");
            problem(
                problems,
                pair[1].at.clone(),
                message,
                "put the rows of a part in order of time, counted from when it went in",
            );
        }
    }
    let at_start = |row: &&&Row| row.time.get::<second>() <= 0.0;
    let read_first = rows.iter().filter(at_start).find_map(|row| match row.value {
        Value::Temperature(temperature) => Some(temperature),
        Value::Size(_) => None,
    });
    let start = read_first.unwrap_or(job.bench.temperature);
    let gauge = Gauge::new(piece, rows, job, start);
    let mut readings = Vec::new();
    for row in rows.iter().filter(|row| row.time.get::<second>() > 0.0) {
        match temperature(row, &gauge) {
            Ok(temperature) => {
                possible(row, temperature, start, treatment, problems);
                let size = if let Value::Size(size) = row.value { Some(size) } else { None };
                readings.push(Reading { time: row.time, temperature, size });
            }
            Err((message, help)) => problem(problems, row.at.clone(), message, help),
        }
    }
    if problems.len() == before && readings.len() < FEWEST {
        let count = readings.len();
        let are = if count == 1 { "is 1 reading".to_owned() } else { format!("are {count} readings") };
        let message = format!("there {are} of this part after 0 s, but a fit needs {FEWEST}");
        problem(
            problems,
            rows[0].at.clone(),
            message,
            "read it more often, at best from the first minutes until it has settled",
        );
    }
    let gap = longest_gap(&readings);
    (problems.len() == before).then_some(PieceReadings {
        piece,
        start,
        start_read: read_first.is_some(),
        readings,
        gap,
    })
}

/// A value that is neither between start and medium nor near them was read, or typed, wrong.
fn possible(
    row: &Row,
    temperature: ThermodynamicTemperature,
    start: ThermodynamicTemperature,
    treatment: &Treatment,
    problems: &mut Vec<Problem>,
) {
    let powered = treatment.power.get::<watt>() > 0.0;
    let end = match treatment.hold {
        Hold::Reaches(target) if powered => target,
        _ => treatment.temperature,
    };
    let [start, end, read] = [start, end, temperature].map(|t| t.get::<degree_celsius>());
    let slack = BEYOND.0 + BEYOND.1 * (end - start).abs();
    if (start.min(end) - slack..=start.max(end) + slack).contains(&read) {
        return;
    }
    let typed = match row.value {
        Value::Temperature(_) => format!("`{}`", row.typed),
        Value::Size(_) => format!("`{}` says {read:.1} °C, which", row.typed),
    };
    let medium = treatment.medium.id();
    let message = format!("{typed} cannot be: {medium} takes this part from {start:.1} °C towards {end:.1} °C");
    let help = "was it the other unit, °F for °C? If it is right, the temperature of the medium or of the shop in the job is not: \
                state what your thermometer says";
    problem(problems, row.at.clone(), message, help);
}

fn temperature(
    row: &Row,
    gauge: &Result<Gauge<'_>, &'static str>,
) -> Result<ThermodynamicTemperature, (String, String)> {
    let size = match row.value {
        Value::Temperature(temperature) => return Ok(temperature),
        Value::Size(size) => size,
    };
    let gauge = gauge.as_ref().map_err(|why| ((*why).to_owned(), "or give temperatures".to_owned()))?;
    gauge.temperature(size).ok_or_else(|| {
        let message =
            format!("`{}` is no size that the part has at any temperature of its material's table", row.typed);
        (message, "check the number and its unit against the size at 0 s".to_owned())
    })
}

/// What a size says of a temperature.
struct Gauge<'j> {
    expansion: &'j Curve,
    size_at_start: f64,
    start: f64,
}

impl<'j> Gauge<'j> {
    fn new(piece: Piece, rows: &[&Row], job: &'j Job, start: ThermodynamicTemperature) -> Result<Self, &'static str> {
        let mut materials = job.materials_of(piece);
        let material = materials.next().ok_or("this part has no material")?;
        if materials.next().is_some() {
            return Err("the size of a lined bore does not say one temperature: liner and housing pull at each other");
        }
        let first = rows.iter().find_map(|row| match row.value {
            Value::Size(size) if row.time.get::<second>() <= 0.0 => Some(size),
            _ => None,
        });
        let size =
            first.ok_or("a size says a temperature only beside the size before it went in: add its row at 0 s")?;
        Ok(Self { expansion: material.expansion(), size_at_start: size.value, start: start.get::<kelvin>() })
    }

    /// The temperature at which the part has this size, by halving: it grows all the way.
    fn temperature(&self, size: Length) -> Option<ThermodynamicTemperature> {
        let wanted = size.value / self.size_at_start * (1.0 + self.expansion.at_inside(self.start)) - 1.0;
        let (mut low, mut high) = self.expansion.range();
        if wanted < self.expansion.at_inside(low) || wanted > self.expansion.at_inside(high) {
            return None;
        }
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if self.expansion.at_inside(middle) < wanted {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(ThermodynamicTemperature::new::<kelvin>(0.5 * (low + high)))
    }
}

fn longest_gap(readings: &[Reading]) -> Option<(Time, Time)> {
    let last = readings.last()?.time;
    let mut before = Time::new::<hour>(0.0);
    let mut longest = (before, before);
    for reading in readings {
        if reading.time - before > longest.1 - longest.0 {
            longest = (before, reading.time);
        }
        before = reading.time;
    }
    (longest.1 - longest.0 > last * LONG_GAP_SHARE).then_some(longest)
}
