//! Numbers as they are typed: "62", "-0.5", "62,5", "1.234,5", "1-1/8", "7/8", "1⅛", "1e3".

use super::error::{QuantityError, quoted};

/// More digits than this are not carried by a 64-bit float, and no gauge shows them.
const MOST_DIGITS: usize = 15;

/// A place in a typed text.
#[derive(Clone, Debug)]
pub(super) struct Scanner<'a> {
    pub(super) text: &'a str,
    pub(super) at: usize,
}

impl<'a> Scanner<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Self { text, at: 0 }
    }

    pub(super) fn rest(&self) -> &'a str {
        &self.text[self.at..]
    }

    pub(super) fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    pub(super) fn take_while(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let rest = self.rest();
        let length = rest.find(|c| !wanted(c)).unwrap_or(rest.len());
        self.at += length;
        &rest[..length]
    }

    pub(super) fn skip_space(&mut self) {
        self.take_while(char::is_whitespace);
    }

    /// Steps over `words` if they come next.
    pub(super) fn eat(&mut self, words: &str) -> bool {
        let found = self.rest().starts_with(words);
        if found {
            self.at += words.len();
        }
        found
    }

    /// Steps over a sign: `Some(true)` for a minus, `Some(false)` for a plus.
    fn sign(&mut self) -> Option<bool> {
        let sign = self.peek().filter(|&c| is_sign(c))?;
        self.at += sign.len_utf8();
        Some(sign != '+')
    }
}

/// Plus, or one of the signs that word processors make of a minus.
pub(super) fn is_sign(c: char) -> bool {
    matches!(c, '+' | '-' | '\u{2212}' | '\u{2013}')
}

/// What a row of digits can mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Reading {
    Sure(f64),
    /// One comma before exactly three digits: a decimal comma, or thousands.
    Either {
        decimal: f64,
        thousands: f64,
    },
}

/// A number with its place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Numeral {
    pub(super) reading: Reading,
    pub(super) signed: bool,
    pub(super) fraction: bool,
    /// First byte, sign included.
    pub(super) from: usize,
    pub(super) to: usize,
}

/// Whether "a/b" is one number, or the pair of limits that it is on a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fractions {
    Allowed,
    No,
}

/// Reads a number; `None` when none comes next.
pub(super) fn numeral(scan: &mut Scanner<'_>, fractions: Fractions) -> Result<Option<Numeral>, QuantityError> {
    let from = scan.at;
    let sign = scan.sign();
    scan.skip_space();
    let digits_from = scan.at;
    let body = scan.take_while(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
    let typed_fraction = if fractions == Fractions::Allowed { fraction(scan, body)? } else { None };
    let magnitude = match typed_fraction {
        Some(value) => Reading::Sure(value),
        None if !body.contains(|c: char| c.is_ascii_digit()) => {
            scan.at = from;
            return Ok(None);
        }
        None => {
            let exponent = exponent(scan)?;
            digits(body, exponent).map_err(|fault| fault.error(scan.text, digits_from..scan.at))?
        }
    };
    let reading = if sign == Some(true) { negative(magnitude) } else { magnitude };
    Ok(Some(Numeral { reading, signed: sign.is_some(), fraction: typed_fraction.is_some(), from, to: scan.at }))
}

fn negative(reading: Reading) -> Reading {
    match reading {
        Reading::Sure(value) => Reading::Sure(-value),
        Reading::Either { decimal, thousands } => Reading::Either { decimal: -decimal, thousands: -thousands },
    }
}

/// The power of ten after an "e", 0 when there is none.
fn exponent(scan: &mut Scanner<'_>) -> Result<i32, QuantityError> {
    let mut ahead = scan.clone();
    if !(ahead.eat("e") || ahead.eat("E")) {
        return Ok(0);
    }
    let down = ahead.sign() == Some(true);
    let power = ahead.take_while(|c| c.is_ascii_digit());
    if power.is_empty() {
        return Ok(0);
    }
    let from = scan.at;
    scan.at = ahead.at;
    match power.parse::<i32>() {
        Ok(power) if power <= 12 => Ok(if down { -power } else { power }),
        _ => Err(QuantityError::new(
            from..scan.at,
            format!("{} is not a power of ten that a shop needs", quoted(&scan.text[from..scan.at])),
            "write the number out, or use an exponent from e-12 to e12",
        )),
    }
}

#[derive(Debug)]
enum Fault {
    TooManyDigits,
    Separators,
}

impl Fault {
    fn error(self, text: &str, at: std::ops::Range<usize>) -> QuantityError {
        let typed = quoted(&text[at.clone()]);
        match self {
            Self::TooManyDigits => QuantityError::new(
                at,
                format!("{typed} has more than {MOST_DIGITS} digits"),
                "round it to what the gauge shows",
            ),
            Self::Separators => QuantityError::new(
                at,
                format!("the points and commas of {typed} do not make a number"),
                "write one decimal point or comma and no thousands, such as 1234.5",
            ),
        }
    }
}

/// Digits with decimal signs and thousands; a lone point is always a decimal point, as on drawings.
fn digits(body: &str, exponent: i32) -> Result<Reading, Fault> {
    let figures = body.bytes().filter(u8::is_ascii_digit);
    if figures.skip_while(|figure| *figure == b'0').count() > MOST_DIGITS {
        return Err(Fault::TooManyDigits);
    }
    let value = |whole: &str, decimals: &str| {
        let whole: String = whole.chars().filter(char::is_ascii_digit).collect();
        format!("{whole}.{decimals}e{exponent}").parse::<f64>().map_err(|_| Fault::Separators)
    };
    let count = |sign: u8| body.bytes().filter(|byte| *byte == sign).count();
    let (points, commas) = (count(b'.'), count(b','));
    match (points, commas) {
        // As nearly all are typed; Rust reads these alike.
        (0 | 1, 0) if exponent == 0 => body.parse().map(Reading::Sure).map_err(|_| Fault::Separators),
        (0, 0) => Ok(Reading::Sure(value(body, "0")?)),
        (1, 0) | (0, 1) => {
            let (whole, decimals) = body.split_once(['.', ',']).unwrap_or((body, "0"));
            if commas == 1 && decimals.is_empty() {
                Err(Fault::Separators)
            } else if commas == 1 && decimals.len() == 3 && !whole.starts_with('0') && (1..=3).contains(&whole.len()) {
                Ok(Reading::Either { decimal: value(whole, decimals)?, thousands: value(body, "0")? })
            } else {
                Ok(Reading::Sure(value(&format!("0{whole}"), &format!("{decimals}0"))?))
            }
        }
        (_, 0) if grouped(body, '.') => Ok(Reading::Sure(value(body, "0")?)),
        (0, _) if grouped(body, ',') => Ok(Reading::Sure(value(body, "0")?)),
        _ => match body.rsplit_once(['.', ',']) {
            Some((whole, decimals))
                if decimals.chars().all(|c| c.is_ascii_digit())
                    && (points == 1 || commas == 1)
                    && (grouped(whole, ',') || grouped(whole, '.')) =>
            {
                Ok(Reading::Sure(value(whole, &format!("{decimals}0"))?))
            }
            _ => Err(Fault::Separators),
        },
    }
}

/// "1,234,567": one to three digits, then groups of three.
fn grouped(whole: &str, separator: char) -> bool {
    let mut groups = whole.split(separator);
    let first = groups.next().unwrap_or_default();
    let all_digits = |group: &str| group.chars().all(|c| c.is_ascii_digit());
    (1..=3).contains(&first.len()) && all_digits(first) && groups.all(|group| group.len() == 3 && all_digits(group))
}

/// Fractions that have a sign of their own.
const PRINTED: &[(char, f64)] =
    &[('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅛', 0.125), ('⅜', 0.375), ('⅝', 0.625), ('⅞', 0.875)];

/// A fraction whose whole part or numerator is `body`: "7/8", "1-1/8", "1 1/8", "1⅛". `None` when there is none.
fn fraction(scan: &mut Scanner<'_>, body: &str) -> Result<Option<f64>, QuantityError> {
    if body.len() > MOST_DIGITS || !body.chars().all(|c| c.is_ascii_digit()) {
        return Ok(None);
    }
    let from = scan.at - body.len();
    let whole = body.parse::<f64>().unwrap_or(0.0);
    let mut ahead = scan.clone();
    ahead.skip_space();
    if let Some(&(sign, part)) = PRINTED.iter().find(|(sign, _)| ahead.peek() == Some(*sign)) {
        scan.at = ahead.at + sign.len_utf8();
        return Ok(Some(whole + part));
    }
    if body.is_empty() {
        return Ok(None);
    }
    let mut ahead = scan.clone();
    let (whole, numerator) = if ahead.eat("/") {
        (0.0, Some(whole))
    } else {
        if !ahead.eat("-") {
            ahead.skip_space();
        }
        let top = if ahead.at > scan.at { ahead.take_while(|c| c.is_ascii_digit()) } else { "" };
        (whole, top.parse::<f64>().ok().filter(|_| ahead.eat("/")))
    };
    let bottom = ahead.take_while(|c| c.is_ascii_digit());
    let (Some(numerator), Ok(denominator)) = (numerator, bottom.parse::<f64>()) else { return Ok(None) };
    scan.at = ahead.at;
    let typed = quoted(&scan.text[from..scan.at]);
    // 64ths are the finest marks of a rule; a part of 1 or more is a slip of the pen
    if !(1.0..=128.0).contains(&denominator) || !(1.0..denominator).contains(&numerator) {
        return Err(QuantityError::new(
            from..scan.at,
            format!("{typed} is not a fraction of an inch rule"),
            "write the smaller number first, such as 1-1/8 or 7/8, or use decimals",
        ));
    }
    Ok(Some(whole + numerator / denominator))
}
