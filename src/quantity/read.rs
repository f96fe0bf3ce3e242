//! From a typed text to one number in SI units, with every way in which it can go wrong.

use super::Entered;
use super::System;
use super::error::{QuantityError, one_of, plain, quoted};
use super::numeral::{Fractions, Numeral, Reading, Scanner, is_sign, numeral};
use super::spelling::{Found, find};
use super::unit::{Kind, Unit};
use super::units::Ambiguous;

/// What a text should hold.
#[derive(Debug)]
pub(super) struct Wanted {
    pub(super) kind: Kind,
    /// With its article, to begin or continue a sentence.
    pub(super) what: &'static str,
    pub(super) units: &'static str,
    pub(super) example: &'static str,
    /// Smallest and largest value that is read, SI.
    pub(super) least: f64,
    pub(super) most: f64,
    /// The same in words.
    pub(super) range: &'static str,
    /// "61,994 mm" has a decimal comma because 61994 mm would exceed this, SI.
    pub(super) thousands_end: f64,
}

impl Wanted {
    pub(super) fn help(&self) -> String {
        format!("write {} in {}, for example {}", self.what, self.units, self.example)
    }
}

/// Units that may follow each other as "1 h 30 min" or "5 ft 3 in".
const COMPOUNDS: &[(&str, &str)] = &[("h", "min"), ("h", "s"), ("min", "s"), ("d", "h"), ("ft", "in"), ("lb", "oz")];

/// One number with its unit.
#[derive(Debug)]
pub(super) struct Part {
    pub(super) numeral: Numeral,
    pub(super) unit: &'static Unit,
    pub(super) si: f64,
    /// First byte after the unit.
    pub(super) to: usize,
}

/// Reads the whole text as one quantity.
pub(super) fn read(text: &str, wanted: &Wanted) -> Result<Entered<f64>, QuantityError> {
    let mut scan = Scanner::new(text);
    scan.skip_space();
    let first = part(&mut scan, wanted)?;
    let mut total = first.si;
    let mut last = first.unit;
    while scan.at < text.trim_end().len() {
        let next = following(&mut scan, wanted, last)?;
        total += if first.si < 0.0 { -next.si } else { next.si };
        last = next.unit;
    }
    in_range(total, wanted, text, first.numeral.from..text.trim_end().len())?;
    Ok(Entered { value: total, system: first.unit.system })
}

/// The "30 min" of "1 h 30 min".
fn following(scan: &mut Scanner<'_>, wanted: &Wanted, before: &Unit) -> Result<Part, QuantityError> {
    let from = scan.at;
    let next = if scan.peek().is_some_and(|c| c.is_ascii_digit()) { Some(part(scan, wanted)?) } else { None };
    match next {
        Some(part) if COMPOUNDS.contains(&(before.name(), part.unit.name())) => Ok(part),
        _ => Err(second_quantity(scan.text, from, wanted)),
    }
}

fn second_quantity(text: &str, from: usize, wanted: &Wanted) -> QuantityError {
    let extra = quoted(&text[from..]);
    QuantityError::new(
        from..text.len(),
        format!("{extra} follows, but {} alone is wanted here", wanted.what),
        format!("give one value, for example {}", wanted.example),
    )
}

/// A number and its unit, from where the scanner stands to the end of the unit.
pub(super) fn part(scan: &mut Scanner<'_>, wanted: &Wanted) -> Result<Part, QuantityError> {
    let Some(number) = numeral(scan, Fractions::Allowed)? else { return Err(no_number(scan, wanted)) };
    scan.skip_space();
    let from = scan.at;
    let typed = unit_text(scan, wanted.kind);
    if typed.is_empty() {
        return Err(no_unit(scan, &number, wanted));
    }
    let unit = look_up(scan, &number, from, wanted)?;
    finish(scan, number, unit, wanted)
}

/// The number in SI units, once its unit is known.
pub(super) fn finish(
    scan: &Scanner<'_>,
    numeral: Numeral,
    unit: &'static Unit,
    wanted: &Wanted,
) -> Result<Part, QuantityError> {
    if numeral.fraction && unit.system == Some(System::Metric) {
        return Err(QuantityError::new(
            numeral.from..scan.at,
            format!("{} is a fraction of a metric unit", quoted(&scan.text[numeral.from..scan.at])),
            "write decimals for metric units; fractions are read for inches",
        ));
    }
    let number = sure(&numeral, unit, wanted, &scan.text[numeral.from..scan.at])?;
    Ok(Part { numeral, unit, si: unit.si(number), to: scan.at })
}

/// Steps over what can be a unit and gives it trimmed.
pub(super) fn unit_text<'a>(scan: &mut Scanner<'a>, kind: Kind) -> &'a str {
    let from = scan.at;
    let unsigned = scan.rest().trim_start_matches(|c: char| is_sign(c) || c.is_whitespace());
    let reciprocal = kind == Kind::Expansion && unsigned.starts_with("1/");
    if !reciprocal && unsigned.starts_with(|c: char| c.is_ascii_digit()) {
        return "";
    }
    // the hyphen of "12-ton"
    scan.eat("-");
    scan.take_while(|c| !ends_unit(kind, c));
    scan.text[from..scan.at].trim()
}

/// Whether a unit of `kind` cannot go on with `c`.
fn ends_unit(kind: Kind, c: char) -> bool {
    match kind {
        // The digits of cm3 or 1/K belong to the unit.
        Kind::Pressure
        | Kind::Film
        | Kind::Volume
        | Kind::Density
        | Kind::Expansion
        | Kind::HeatCapacity
        | Kind::Conductivity => false,
        Kind::Length | Kind::Duration | Kind::Mass => c.is_ascii_digit() || is_sign(c) || matches!(c, '±' | '/'),
        _ => c.is_ascii_digit() || c == '±',
    }
}

/// The unit typed between `from` and the scanner.
pub(super) fn look_up(
    scan: &Scanner<'_>,
    number: &Numeral,
    from: usize,
    wanted: &Wanted,
) -> Result<&'static Unit, QuantityError> {
    let typed = scan.text[from..scan.at].trim();
    let at = from..from + typed.len();
    match find(wanted.kind, typed) {
        Found::Unit(unit) => Ok(unit),
        Found::Ambiguous(word) => Err(two_readings(scan.text, number, at, word)),
        Found::OtherKind(kind, begun) => {
            let problem = format!("{} is a unit of {}, but {} is wanted here", quoted(typed), kind.name(), wanted.what);
            Err(QuantityError::new(at, problem, with_hint(begun, wanted)))
        }
        Found::Unknown(near) => {
            let problem = format!("{} is not a unit of {}", quoted(typed), wanted.kind.name());
            Err(QuantityError::new(at, problem, with_hint(near, wanted)))
        }
    }
}

fn with_hint(near: Option<&str>, wanted: &Wanted) -> String {
    match near {
        Some(name) => format!("did you mean {name}? Otherwise {}", wanted.help()),
        None => wanted.help(),
    }
}

fn two_readings(text: &str, number: &Numeral, at: std::ops::Range<usize>, word: &Ambiguous) -> QuantityError {
    let (Reading::Sure(count) | Reading::Either { decimal: count, .. }) = number.reading;
    let readings: Vec<String> =
        word.readings.iter().map(|(each, unit)| format!("{} {unit}", plain(count * each))).collect();
    let typed = quoted(&text[number.from..at.end]);
    QuantityError::new(at, format!("{typed} could be {}", one_of(&readings)), word.write)
}

/// The number, if it has one reading only.
fn sure(number: &Numeral, unit: &Unit, wanted: &Wanted, typed: &str) -> Result<f64, QuantityError> {
    match number.reading {
        Reading::Sure(value) => Ok(value),
        // those who write inches write commas between thousands, so nothing is taken for granted there
        Reading::Either { decimal, thousands }
            if unit.system != Some(System::Inch) && unit.si(thousands).abs() > wanted.thousands_end =>
        {
            Ok(decimal)
        }
        Reading::Either { decimal, thousands } => Err(comma(number, decimal, thousands, unit.name(), typed)),
    }
}

pub(super) fn comma(number: &Numeral, decimal: f64, thousands: f64, unit: &str, typed: &str) -> QuantityError {
    let [small, great] = [decimal, thousands].map(|value| format!("{} {unit}", plain(value)).trim_end().to_owned());
    QuantityError::new(
        number.from..number.to,
        format!("{} could be {small} or {great}", quoted(typed)),
        format!("write {small} with a decimal point, or {great} without a comma"),
    )
}

pub(super) fn no_number(scan: &Scanner<'_>, wanted: &Wanted) -> QuantityError {
    let typed = scan.rest().trim();
    let word = typed.trim_start_matches(is_sign).to_lowercase();
    let problem = if typed.is_empty() {
        format!("nothing is written where {} is wanted", wanted.what)
    } else if word.starts_with("nan") || word.starts_with("inf") || word.starts_with('∞') {
        format!("{} is not a finite number", quoted(typed))
    } else {
        format!("{} does not begin with a number, but {} is wanted here", quoted(typed), wanted.what)
    };
    QuantityError::new(scan.at..scan.text.len(), problem, wanted.help())
}

fn no_unit(scan: &Scanner<'_>, number: &Numeral, wanted: &Wanted) -> QuantityError {
    if scan.rest().is_empty() {
        let problem = format!("{} has no unit", quoted(&scan.text[number.from..number.to]));
        QuantityError::new(number.from..number.to, problem, wanted.help())
    } else {
        second_quantity(scan.text, scan.at, wanted)
    }
}

pub(super) fn in_range(si: f64, wanted: &Wanted, text: &str, at: std::ops::Range<usize>) -> Result<(), QuantityError> {
    if (wanted.least..=wanted.most).contains(&si) {
        return Ok(());
    }
    let typed = quoted(&text[at.clone()]);
    let problem = if wanted.kind == Kind::Temperature && si < 0.0 {
        format!("{typed} is below absolute zero, -273.15 °C or -459.67 °F")
    } else if si < 0.0 && wanted.least.abs() < f64::MIN_POSITIVE {
        format!("{typed} is negative, which {} cannot be", wanted.what)
    } else {
        format!("{typed} is outside {}, the range in which {} is read", wanted.range, wanted.what)
    };
    Err(QuantityError::new(at, problem, "check the number, its sign and its unit"))
}
