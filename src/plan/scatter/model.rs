//! What a scatter holds.

use super::inputs::InputUsed;
use super::sensitivity::Index;
use super::share::Share;
use crate::job::AnyValue;
use crate::plan::model::SeatKind;
use crate::quantity::{Force, Length, Time};
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::time::second;

/// The percentiles that are given, per cent.
pub const PERCENTILES: [f64; 7] = [0.1, 1.0, 5.0, 50.0, 95.0, 99.0, 99.9];

/// What is asked of a drawn part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Output {
    /// Interference at 20 °C.
    Interference,
    /// Clearance when it reaches the seat.
    Clearance,
    /// Time in shop air until the placing clearance is gone.
    Window,
    /// Force to press it home then, full depth.
    Force,
    /// Interference at the coldest of service.
    Coldest,
    /// Interference at the hottest of service.
    Hottest,
}

impl Output {
    /// How many there are.
    pub const COUNT: usize = 6;

    /// Its place in a drawn part.
    pub fn index(self) -> usize {
        self as usize
    }

    /// A value of it (SI) as a quantity.
    pub fn value(self, value: f64) -> AnyValue {
        match self {
            Self::Interference | Self::Clearance | Self::Coldest | Self::Hottest => {
                AnyValue::SmallLength(Length::new::<meter>(value))
            }
            Self::Window => AnyValue::Duration(Time::new::<second>(value)),
            Self::Force => AnyValue::Force(Force::new::<newton>(value)),
        }
    }
}

/// The scatter of a plan.
#[derive(Clone, Debug)]
pub struct Scatter {
    /// Parts drawn.
    pub draws: u64,
    /// Where the random numbers began.
    pub seed: u64,
    /// One for each seat, as in the plan.
    pub seats: Vec<SeatScatter>,
}

/// The scatter of one seat.
#[derive(Clone, Debug)]
pub struct SeatScatter {
    /// Which seat.
    pub seat: SeatKind,
    /// What was drawn; what does not vary is left out.
    pub inputs: Vec<InputUsed>,
    /// Clearance that lets a part drop in.
    pub placing_clearance: Length,
    /// Parts that have the placing clearance when they reach the seat.
    pub drops_in: Share,
    /// Parts that are loose at 20 °C.
    pub loose: Share,
    /// Parts that are loose at an end of service.
    pub loose_in_service: Vec<(Output, Share)>,
    /// A force, and the parts that need no more than it.
    pub below_force: Option<(Force, Share)>,
    /// Mean, deviation and percentiles.
    pub outputs: Vec<OutputSummary>,
    /// What decides them.
    pub sensitivities: Vec<Sensitivity>,
    /// Parts over their clearance at the seat.
    pub histogram: Vec<Bar>,
    /// The largest difference of a part planned directly from the table that stands for it, of those checked.
    pub table_error: Length,
}

/// An output over all parts, SI units.
#[derive(Clone, Debug)]
pub struct OutputSummary {
    /// Of what.
    pub output: Output,
    /// Mean; none where a part is beyond what is followed.
    pub mean: Option<f64>,
    /// Standard deviation; none as the mean.
    pub deviation: Option<f64>,
    /// Least.
    pub least: f64,
    /// Most; infinity where a part is beyond what is followed.
    pub most: f64,
    /// Those of [`PERCENTILES`]; infinity as `most`.
    pub percentiles: [f64; PERCENTILES.len()],
}

/// What decides an output.
#[derive(Clone, Debug)]
pub struct Sensitivity {
    /// Of what.
    pub output: Output,
    /// The indices of each input, in the order of [`SeatScatter::inputs`].
    pub indices: Vec<Index>,
}

impl Sensitivity {
    /// The inputs by number, the most decisive first.
    pub fn ranked(&self) -> Vec<usize> {
        let mut order: Vec<usize> = (0..self.indices.len()).collect();
        order.sort_by(|a, b| self.indices[*b].total.total_cmp(&self.indices[*a].total));
        order
    }
}

/// Parts within a stretch of a histogram.
#[derive(Clone, Copy, Debug)]
pub struct Bar {
    /// From this value.
    pub from: Length,
    /// To this one.
    pub to: Length,
    /// How many.
    pub count: u64,
}
