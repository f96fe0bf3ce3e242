//! How the quantities of a job scatter, as the job states it; what it leaves open is none.

use crate::quantity::{Length, Ratio, TemperatureInterval, Time};

/// The `[scatter]` table of a job.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scatter {
    /// Sizes that are not named one by one.
    pub sizes: Option<SizeSpread>,
    /// Outside of what goes in.
    pub outside: Option<SizeSpread>,
    /// Bore of what goes in.
    pub bore: Option<SizeSpread>,
    /// Bore of the housing.
    pub housing: Option<SizeSpread>,
    /// Outside of the shaft.
    pub shaft: Option<SizeSpread>,
    /// Temperature of the media, or that at which a piece is taken out.
    pub medium: Option<Spread<TemperatureInterval>>,
    /// Time in the media.
    pub hold: Option<Spread<Within>>,
    /// Time from the medium to the seat.
    pub carry: Option<Spread<Within>>,
    /// Film coefficients between the ends of their ranges.
    pub film: Option<Form>,
    /// Friction between the ends of its range.
    pub friction: Option<Form>,
}

/// How a size lies within its limits.
#[derive(Clone, Debug, PartialEq)]
pub enum SizeSpread {
    /// At the middle of its limits.
    Fixed,
    /// Evenly between its limits.
    Uniform,
    /// As a normal distribution.
    Normal(NormalSize),
    /// As a list of sizes at 20 °C, each as likely.
    Measured(Vec<Length>),
}

/// A size that is normally distributed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NormalSize {
    /// Distance of the mean from the nearer limit, over three standard deviations (Cpk).
    pub capability: f64,
    /// Whether parts beyond the limits are fitted too; else they are sorted out.
    pub unsorted: bool,
    /// Mean as a deviation from nominal; none for the middle of the limits.
    pub mean: Option<Length>,
}

/// How a quantity lies between two ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Form {
    /// Not at all: as the plan takes it.
    Fixed,
    /// Evenly.
    Uniform,
    /// As a normal distribution about the middle, cut at the ends.
    Normal {
        /// Half of the distance of the ends, over three standard deviations.
        capability: f64,
    },
}

/// A quantity that lies within so much of its planned value, either way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread<T> {
    /// Largest difference either way.
    pub within: T,
    /// How it lies there.
    pub form: Form,
}

/// A time either way, or a share of the planned time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Within {
    /// So long.
    Time(Time),
    /// Such a share of it.
    Share(Ratio),
}
