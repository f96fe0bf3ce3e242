use serde::Serialize;
use std::ops::{Add, Neg, Sub};
use uom::si::f64::Length;
use uom::si::length::nanometer;

/// A size or a deviation in whole nanometres, so that sums of table values are exact.
///
/// One tenth of a thousandth of an inch is 2540 nm, so inch work is exact too.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Nanometres(pub i64);

impl Nanometres {
    /// From micrometres, rounded to the nearest nanometre.
    pub fn from_um(um: f64) -> Self {
        Self((um * 1e3).round() as i64)
    }

    /// From millimetres, rounded to the nearest nanometre.
    pub fn from_mm(mm: f64) -> Self {
        Self((mm * 1e6).round() as i64)
    }

    /// From a length, rounded to the nearest nanometre.
    pub fn from_length(length: Length) -> Self {
        Self(length.get::<nanometer>().round() as i64)
    }

    /// The value in micrometres.
    pub fn um(self) -> f64 {
        self.0 as f64 / 1e3
    }

    /// The value in millimetres.
    pub fn mm(self) -> f64 {
        self.0 as f64 / 1e6
    }

    /// The value as a length.
    pub fn length(self) -> Length {
        Length::new::<nanometer>(self.0 as f64)
    }
}

impl Add for Nanometres {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Nanometres {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Neg for Nanometres {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

/// Lower and upper limit deviation from a nominal size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Deviations {
    /// Lower limit deviation (EI for a hole, ei for a shaft).
    pub lower: Nanometres,
    /// Upper limit deviation (ES for a hole, es for a shaft).
    pub upper: Nanometres,
}
