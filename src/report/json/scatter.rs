//! The scatter of a plan in its JSON.

use super::figures;
use super::units::um;
use crate::plan::scatter::{OutputSummary, PERCENTILES, Scatter, SeatScatter, Sensitivity, Share};
use crate::quantity::System;
use crate::report::scatter::{key, number};
use crate::report::words;
use schemars::JsonSchema;
use serde::Serialize;
use uom::si::force::newton;

/// Parts drawn from their distributions.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ScatterDocument {
    /// Parts drawn.
    pub draws: u64,
    /// Where the random numbers began: the same seed gives the same result.
    pub seed: u64,
    /// The percentiles of every output, per cent.
    pub percentiles: Vec<f64>,
    /// One for each seat, as in `seats`.
    pub seats: Vec<SeatScatterDocument>,
}

/// The scatter of one seat.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SeatScatterDocument {
    /// `housing` or `shaft`.
    pub seat: &'static str,
    /// Parts that have the placing clearance when they reach the seat.
    pub drops_in: ShareDocument,
    /// Parts that are loose at 20 °C.
    pub loose: ShareDocument,
    /// Parts that are loose at the ends of service.
    pub loose_in_service: Vec<OutputShareDocument>,
    /// Parts that need no more than a force; null where none was stated.
    pub below_force: Option<ForceShareDocument>,
    /// What came out, one for each output.
    pub outputs: Vec<OutputDocument>,
    /// What decides the outputs: indices of Sobol'.
    pub sensitivity: Vec<SensitivityDocument>,
    /// What was drawn, and from what.
    pub inputs: Vec<InputDocument>,
    /// Largest difference of a part planned directly from the table that stands for it, of those checked.
    pub table_error_um: f64,
}

/// A share of the parts.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ShareDocument {
    /// How many.
    pub count: u64,
    /// Their share, 0 to 1.
    pub share: f64,
    /// Lower end of the interval of 95 %.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

/// A share of the parts for an output.
#[derive(Debug, JsonSchema, Serialize)]
pub struct OutputShareDocument {
    /// Which output.
    pub output: &'static str,
    /// The share.
    pub share: ShareDocument,
}

/// A share of the parts for a force.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ForceShareDocument {
    /// The force.
    pub force_n: f64,
    /// The share.
    pub share: ShareDocument,
}

/// An output over all parts, in the unit of its name.
#[derive(Debug, JsonSchema, Serialize)]
pub struct OutputDocument {
    /// Name with its unit, as elsewhere in the plan.
    pub output: &'static str,
    /// Mean; null where some parts lie beyond the four hours that are followed.
    pub mean: Option<f64>,
    /// Standard deviation; null as the mean.
    pub standard_deviation: Option<f64>,
    /// Least.
    pub least: Option<f64>,
    /// Most; null beyond the four hours that are followed.
    pub most: Option<f64>,
    /// Those of `percentiles`; null beyond the four hours that are followed.
    pub percentiles: Vec<Option<f64>>,
    /// Why one of them is null.
    pub reason: Option<&'static str>,
}

/// What decides an output.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SensitivityDocument {
    /// Of which output.
    pub output: &'static str,
    /// The inputs, the most decisive first.
    pub inputs: Vec<IndexDocument>,
}

/// How much an input decides.
#[derive(Debug, JsonSchema, Serialize)]
pub struct IndexDocument {
    /// What it is.
    pub input: String,
    /// Share of the variance that goes if it alone were known; may come out a little below 0.
    pub first_order: f64,
    /// Standard error of that.
    pub first_order_error: f64,
    /// Share of the variance that stays if all but it were known.
    pub total: f64,
    /// Standard error of that.
    pub total_error: f64,
}

/// A quantity that was drawn.
#[derive(Debug, JsonSchema, Serialize)]
pub struct InputDocument {
    /// What it is.
    pub input: String,
    /// Its distribution.
    pub shape: String,
    /// Its least value or limit, in metric units.
    pub low: String,
    /// Its greatest value or limit, in metric units.
    pub high: String,
    /// Why this distribution, where the job does not state it.
    pub assumed: Option<String>,
}

const BEYOND: &str = "the placing clearance outlasts the four hours that are followed";

pub(super) fn scatter(scatter: &Scatter) -> ScatterDocument {
    ScatterDocument {
        draws: scatter.draws,
        seed: scatter.seed,
        percentiles: PERCENTILES.to_vec(),
        seats: scatter.seats.iter().map(seat).collect(),
    }
}

fn seat(seat: &SeatScatter) -> SeatScatterDocument {
    let service = |(output, part): &(_, Share)| OutputShareDocument { output: key(*output), share: share(part) };
    let shown = |value: &crate::job::AnyValue| words::value(value, System::Metric);
    let inputs = seat.inputs.iter().map(|input| InputDocument {
        input: input.name.clone(),
        shape: input.shape.clone(),
        low: shown(&input.low),
        high: shown(&input.high),
        assumed: input.assumed.as_deref().map(str::to_owned),
    });
    SeatScatterDocument {
        seat: seat.seat.name(),
        drops_in: share(&seat.drops_in),
        loose: share(&seat.loose),
        loose_in_service: seat.loose_in_service.iter().map(service).collect(),
        below_force: seat
            .below_force
            .as_ref()
            .map(|(force, part)| ForceShareDocument { force_n: figures(force.get::<newton>()), share: share(part) }),
        outputs: seat.outputs.iter().map(output).collect(),
        sensitivity: seat.sensitivities.iter().map(|found| sensitivity(seat, found)).collect(),
        inputs: inputs.collect(),
        table_error_um: um(seat.table_error),
    }
}

fn share(share: &Share) -> ShareDocument {
    ShareDocument {
        count: share.count,
        share: figures(share.share()),
        low: figures(share.low),
        high: figures(share.high),
    }
}

fn output(summary: &OutputSummary) -> OutputDocument {
    let shown = |value: f64| number(summary.output, value);
    let percentiles: Vec<Option<f64>> = summary.percentiles.iter().map(|value| shown(*value)).collect();
    OutputDocument {
        output: key(summary.output),
        mean: summary.mean.and_then(shown),
        standard_deviation: summary.deviation.and_then(shown),
        least: shown(summary.least),
        most: shown(summary.most),
        reason: summary.mean.is_none().then_some(BEYOND),
        percentiles,
    }
}

fn sensitivity(seat: &SeatScatter, found: &Sensitivity) -> SensitivityDocument {
    let inputs = found.ranked().into_iter().map(|input| {
        let index = &found.indices[input];
        IndexDocument {
            input: seat.inputs[input].name.clone(),
            first_order: figures(index.first),
            first_order_error: figures(index.first_error),
            total: figures(index.total),
            total_error: figures(index.total_error),
        }
    });
    SensitivityDocument { output: key(found.output), inputs: inputs.collect() }
}
