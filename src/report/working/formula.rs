//! A formula as it is written on paper: made once, written three ways, and evaluated to check it.

use std::ops::{Add, Div, Mul, Sub};

/// A letter with what stands below it: `D` with `o`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// The letter.
    pub letter: &'static str,
    /// What stands below it; empty where nothing does.
    pub mark: &'static str,
}

/// A formula.
#[derive(Clone, Debug, PartialEq)]
pub enum Formula {
    /// The value of a symbol.
    Value(Symbol),
    /// A whole number.
    Whole(u8),
    /// The ratio of a circle's circumference to its diameter.
    Pi,
    /// The first and the second together.
    Sum(Box<Formula>, Box<Formula>),
    /// The first less the second.
    Difference(Box<Formula>, Box<Formula>),
    /// All multiplied.
    Product(Vec<Formula>),
    /// The first over the second.
    Quotient(Box<Formula>, Box<Formula>),
    /// The square.
    Square(Box<Formula>),
    /// The exponential function.
    Exp(Box<Formula>),
    /// The natural logarithm.
    Ln(Box<Formula>),
}

impl Formula {
    /// Its square.
    #[must_use]
    pub fn squared(self) -> Self {
        Self::Square(Box::new(self))
    }

    /// What it comes to; none where a symbol has no value.
    pub fn evaluate(&self, value: &impl Fn(Symbol) -> Option<f64>) -> Option<f64> {
        let both = |a: &Formula, b: &Formula| Some((a.evaluate(value)?, b.evaluate(value)?));
        Some(match self {
            Self::Value(symbol) => value(*symbol)?,
            Self::Whole(number) => f64::from(*number),
            Self::Pi => std::f64::consts::PI,
            Self::Sum(a, b) => both(a, b).map(|(a, b)| a + b)?,
            Self::Difference(a, b) => both(a, b).map(|(a, b)| a - b)?,
            Self::Quotient(a, b) => both(a, b).map(|(a, b)| a / b)?,
            Self::Square(of) => of.evaluate(value)?.powi(2),
            Self::Exp(of) => of.evaluate(value)?.exp(),
            Self::Ln(of) => of.evaluate(value)?.ln(),
            Self::Product(factors) => factors.iter().map(|factor| factor.evaluate(value)).product::<Option<f64>>()?,
        })
    }
}

impl Formula {
    /// The exponential function of it.
    #[must_use]
    pub fn exp(self) -> Self {
        Self::Exp(Box::new(self))
    }

    /// Its natural logarithm.
    #[must_use]
    pub fn ln(self) -> Self {
        Self::Ln(Box::new(self))
    }
}

impl From<Symbol> for Formula {
    fn from(symbol: Symbol) -> Self {
        Self::Value(symbol)
    }
}

impl Add for Formula {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::Sum(Box::new(self), Box::new(other))
    }
}

impl Sub for Formula {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::Difference(Box::new(self), Box::new(other))
    }
}

impl Mul for Formula {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        let mut factors = match self {
            Self::Product(factors) => factors,
            one => vec![one],
        };
        factors.push(other);
        Self::Product(factors)
    }
}

impl Div for Formula {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        Self::Quotient(Box::new(self), Box::new(other))
    }
}
