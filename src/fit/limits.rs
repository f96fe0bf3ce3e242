use crate::quantity::{Deviations, Nanometres};
use std::fmt;

/// Limits of size of one part at 20 °C.
///
/// # Examples
/// ```
/// use seatwise::fit::Limits;
/// use seatwise::quantity::{Deviations, Nanometres};
/// let (lower, upper) = (Nanometres::from_um(-39.0), Nanometres::from_um(-9.0));
/// let bore = Limits::stated(Nanometres::from_mm(62.0), Deviations { lower, upper });
/// assert_eq!((bore.smallest().mm(), bore.largest().mm(), bore.width().um()), (61.961, 61.991, 30.0));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Nominal size, or the reading of a measured part.
    pub nominal: Nanometres,
    /// Limit deviations from it.
    pub deviations: Deviations,
    /// Where the limits come from.
    pub source: LimitsSource,
}

/// Where limits of size come from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LimitsSource {
    /// Standard and cells of its tables, or how else the limits arose, in words.
    pub text: String,
    /// Whether a figure that decides the limits is from memory, with no published text behind it.
    pub from_memory: bool,
}

impl Limits {
    /// Limits that were given as such, for instance on a drawing.
    pub fn stated(nominal: Nanometres, deviations: Deviations) -> Self {
        Self { nominal, deviations, source: LimitsSource { text: "stated limits".to_owned(), from_memory: false } }
    }

    /// The lower limit of size.
    pub fn smallest(&self) -> Nanometres {
        self.nominal + self.deviations.lower
    }

    /// The upper limit of size.
    pub fn largest(&self) -> Nanometres {
        self.nominal + self.deviations.upper
    }

    /// The tolerance: upper less lower limit.
    pub fn width(&self) -> Nanometres {
        self.deviations.upper - self.deviations.lower
    }
}

impl fmt::Display for LimitsSource {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)?;
        if self.from_memory { f.write_str(" (from memory, no text opened)") } else { Ok(()) }
    }
}
