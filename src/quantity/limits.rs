//! Limit deviations as drawings write them: "-13/0 um", "+0.012/-0.018 mm", "±15 um".

use super::error::{QuantityError, quoted};
use super::numeral::{Fractions, Numeral, Scanner, is_sign, numeral};
use super::quantities::{DEVIATION, LENGTH};
use super::read::{Part, Wanted, finish, in_range, look_up, no_number, unit_text};
use super::unit::Unit;
use super::{Deviations, Entered, Nanometres};
use uom::si::f64::Length;
use uom::si::length::meter;

const LIMITS: Wanted =
    Wanted { what: "a pair of limits", example: "-13/0 um, +0.012/-0.018 mm or ±15 um", ..DEVIATION };

/// A nominal size with its limit deviations.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SizedLimits {
    /// Nominal size.
    pub nominal: Nanometres,
    /// Limit deviations from it.
    pub deviations: Deviations,
}

/// Reads limit deviations, such as "-13/0 um", "0/-13 um", "+0.012/-0.018 mm", "-0.5/0 thou" or "±15 um".
///
/// Either limit may stand first. Every limit but 0 needs its sign, because "13/0" has two readings.
///
/// # Errors
/// One limit alone, a limit without sign, no unit, or more than 50 mm either way.
pub fn limits(text: &str) -> Result<Entered<Deviations>, QuantityError> {
    let mut scan = Scanner::new(text);
    let (deviations, unit) = pair(&mut scan)?;
    Ok(Entered { value: deviations, system: unit.system })
}

/// Reads a nominal size and its limit deviations, such as "62 mm -13/0 um" or "62 ±0.015 mm".
///
/// # Errors
/// As [`limits()`]; no size before them, or a size without unit when the limits are not in mm or in.
pub fn sized_limits(text: &str) -> Result<Entered<SizedLimits>, QuantityError> {
    let mut scan = Scanner::new(text);
    scan.take_while(|c| c.is_whitespace() || matches!(c, 'Ø' | 'ø' | '⌀'));
    let Some(size) = numeral(&mut scan, Fractions::Allowed)? else { return Err(no_number(&scan, &SIZED)) };
    let size_unit = unit_after(&mut scan, &size, &SIZED)?;
    // a copy that ends with the nominal, so that messages about it do not quote the limits
    let nominal_scan = scan.clone();
    let (deviations, limit_unit) = pair(&mut scan)?;
    let unit = match size_unit {
        Some(unit) => unit,
        None if matches!(limit_unit.name(), "mm" | "in") => limit_unit,
        None => {
            let problem = format!("the size {} has no unit", quoted(&text[size.from..size.to]));
            return Err(QuantityError::new(size.from..size.to, problem, SIZED.help()));
        }
    };
    let nominal = finish(&nominal_scan, size, unit, &LENGTH)?;
    in_range(nominal.si, &LENGTH, text, size.from..nominal.to)?;
    let value = SizedLimits { nominal: nanometres(nominal.si), deviations };
    Ok(Entered { value, system: unit.system })
}

const SIZED: Wanted = Wanted { what: "a size with its limits", example: "62 mm -13/0 um or 62 ±0.015 mm", ..LENGTH };

/// Reads a pair of limits to the end of the text, and gives the unit of the last one.
fn pair(scan: &mut Scanner<'_>) -> Result<(Deviations, &'static Unit), QuantityError> {
    scan.skip_space();
    let from = scan.at;
    if plus_minus(scan) {
        return symmetrical(scan, from);
    }
    let (first, first_unit) = side(scan)?;
    let parted = scan.eat("/");
    scan.skip_space();
    if !parted && !scan.peek().is_some_and(is_sign) {
        return Err(single(scan, from));
    }
    let (second, second_unit) = side(scan)?;
    whole_text(scan)?;
    let (a, b) = match (first_unit, second_unit) {
        (Some(a), Some(b)) => (a, b),
        (None, Some(both)) => (both, both),
        (Some(both), None) if is_zero(&second) => (both, both),
        _ => {
            let problem = format!("{} has no unit", quoted(&scan.text[second.from..second.to]));
            return Err(QuantityError::new(second.from..second.to, problem, LIMITS.help()));
        }
    };
    let (one, other) = (limit(scan, first, a)?, limit(scan, second, b)?);
    Ok((Deviations { lower: one.min(other), upper: one.max(other) }, b))
}

/// Steps over a "±" in one of its typed forms.
fn plus_minus(scan: &mut Scanner<'_>) -> bool {
    ["±", "+-", "+/-", "+\u{2212}", "+/\u{2212}"].into_iter().any(|sign| scan.eat(sign))
}

fn symmetrical(scan: &mut Scanner<'_>, from: usize) -> Result<(Deviations, &'static Unit), QuantityError> {
    scan.skip_space();
    if scan.peek().is_some_and(is_sign) {
        let problem = format!("{} has a sign after the ±", quoted(&scan.text[from..]));
        return Err(QuantityError::new(from..scan.text.len(), problem, LIMITS.help()));
    }
    let (size, unit) = side(scan)?;
    whole_text(scan)?;
    let Some(unit) = unit else {
        let problem = format!("{} has no unit", quoted(&scan.text[from..size.to]));
        return Err(QuantityError::new(from..size.to, problem, LIMITS.help()));
    };
    let signed = Numeral { signed: true, ..size };
    let upper = limit(scan, signed, unit)?;
    Ok((Deviations { lower: -upper, upper }, unit))
}

/// A number and the unit after it, if any.
fn side(scan: &mut Scanner<'_>) -> Result<(Numeral, Option<&'static Unit>), QuantityError> {
    scan.skip_space();
    let Some(number) = numeral(scan, Fractions::No)? else { return Err(no_number(scan, &LIMITS)) };
    let unit = unit_after(scan, &number, &LIMITS)?;
    Ok((number, unit))
}

fn unit_after(
    scan: &mut Scanner<'_>,
    number: &Numeral,
    wanted: &Wanted,
) -> Result<Option<&'static Unit>, QuantityError> {
    scan.skip_space();
    let from = scan.at;
    if unit_text(scan, DEVIATION.kind).is_empty() {
        return Ok(None);
    }
    look_up(scan, number, from, wanted).map(Some)
}

fn whole_text(scan: &Scanner<'_>) -> Result<(), QuantityError> {
    if scan.rest().trim().is_empty() {
        return Ok(());
    }
    let problem = format!("{} follows after the limits", quoted(scan.rest()));
    Err(QuantityError::new(scan.at..scan.text.len(), problem, LIMITS.help()))
}

fn single(scan: &Scanner<'_>, from: usize) -> QuantityError {
    let typed = quoted(&scan.text[from..]);
    QuantityError::new(
        from..scan.text.len(),
        format!("{typed} is one limit, but two are wanted"),
        "write both, for example -13/0 um, or ±15 um when they are equal",
    )
}

fn is_zero(number: &Numeral) -> bool {
    matches!(number.reading, super::numeral::Reading::Sure(value) if value.abs() < f64::MIN_POSITIVE)
}

/// One limit in whole nanometres; its sign must be typed unless it is 0.
fn limit(scan: &Scanner<'_>, number: Numeral, unit: &'static Unit) -> Result<Nanometres, QuantityError> {
    let typed = &scan.text[number.from..number.to];
    let own = Scanner { text: scan.text, at: number.to };
    let Part { si, .. } = finish(&own, number, unit, &LIMITS)?;
    if !number.signed && !is_zero(&number) {
        return Err(QuantityError::new(
            number.from..number.to,
            format!("the limit {} has no sign", quoted(typed)),
            format!("write +{typed} or -{typed}; only 0 needs no sign"),
        ));
    }
    in_range(si, &LIMITS, scan.text, number.from..number.to)?;
    Ok(nanometres(si))
}

fn nanometres(si: f64) -> Nanometres {
    Nanometres::from_length(Length::new::<meter>(si))
}
