//! What many drawn parts say together.

use super::Request;
use super::chunk::{SEAT_STREAMS, columns};
use super::model::{Bar, Output, OutputSummary, PERCENTILES, SeatScatter, Sensitivity};
use super::prepare::SeatModel;
use super::sensitivity::indices;
use super::share::Share;
use super::worker::Worker;
use crate::plan::soaking::LONGEST_ON_BENCH_S;
use crate::quantity::{Force, Length};
use uom::si::force::newton;
use uom::si::length::meter;

/// Bars of a histogram.
const BARS: usize = 48;

/// Draws the parts of a seat, the `number`th of its job.
pub(super) fn seat(model: &SeatModel<'_>, request: &Request, number: u64, worker: &impl Worker) -> SeatScatter {
    let chunks = columns(model, (request.draws, request.seed, number), worker);
    let outputs = model.outputs();
    let count = |output: Output, does: &dyn Fn(f64) -> bool| {
        let parts =
            chunks.iter().map(|chunk| chunk[output.index()].iter().filter(|value| does(**value)).count() as u64);
        Share::of(parts.sum(), request.draws)
    };
    let summaries = worker.each(outputs.len(), |place| {
        let output = outputs[place];
        let mut column: Vec<f64> = chunks.iter().flat_map(|chunk| chunk[output.index()].iter().copied()).collect();
        summary(output, &mut column)
    });
    let varies = |input: &&super::InputUsed| !input.distribution.is_fixed();
    let at = |value: f64| Length::new::<meter>(value);
    let limit = |force: Force| (force, count(Output::Force, &|value| value <= force.get::<newton>()));
    let service = model.service.iter().map(|(output, _)| (*output, count(*output, &|value| value < 0.0)));
    let spread = summaries.iter().find(|summary| summary.output == Output::Clearance);
    let span = spread.map_or((0.0, 0.0), |summary| (summary.least, summary.most));
    let column = chunks.iter().flat_map(|chunk| chunk[Output::Clearance.index()].iter().copied());
    SeatScatter {
        seat: model.seat,
        inputs: model.inputs.iter().filter(varies).cloned().collect(),
        placing_clearance: at(model.placing),
        drops_in: count(Output::Clearance, &|value| value >= model.placing),
        loose: count(Output::Interference, &|value| value < 0.0),
        loose_in_service: service.collect(),
        below_force: request.force_limit.map(limit),
        histogram: histogram(column, span),
        outputs: summaries,
        sensitivities: sensitivities(model, request.seed.wrapping_add(number * SEAT_STREAMS), worker),
        table_error: at(model.table_error),
    }
}

/// What decides the clearance, the time in hand and the force.
fn sensitivities(model: &SeatModel<'_>, seed: u64, worker: &impl Worker) -> Vec<Sensitivity> {
    let asked = [Output::Clearance, Output::Window, Output::Force];
    let evaluate = |inputs: &[f64]| {
        let drawn = model.evaluate(inputs);
        // A window beyond what is followed counts as the longest that is.
        asked.map(|output| {
            drawn[output.index()].min(if output == Output::Window { LONGEST_ON_BENCH_S } else { f64::MAX })
        })
    };
    let found = indices(&model.distributions, seed, &evaluate, worker);
    let varies: Vec<bool> = model.distributions.iter().map(|input| !input.is_fixed()).collect();
    let kept = |all: Vec<super::Index>| all.into_iter().zip(&varies).filter(|(_, varies)| **varies).map(|(i, _)| i);
    asked
        .into_iter()
        .zip(found)
        .filter_map(|(output, all)| Some(Sensitivity { output, indices: kept(all?).collect() }))
        .collect()
}

fn summary(output: Output, column: &mut [f64]) -> OutputSummary {
    let n = column.len().max(1) as f64;
    let mean = column.iter().sum::<f64>() / n;
    let square = column.iter().map(|value| (value - mean).powi(2)).sum::<f64>();
    let deviation = (square / (n - 1.0).max(1.0)).sqrt();
    let finite = mean.is_finite();
    let (least, most) = column.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), &v| (a.min(v), b.max(v)));
    OutputSummary {
        output,
        mean: finite.then_some(mean),
        deviation: finite.then_some(deviation),
        least,
        most,
        percentiles: percentiles(column, &PERCENTILES).try_into().unwrap_or([f64::INFINITY; PERCENTILES.len()]),
    }
}

/// Percentiles with linear interpolation between the two nearest parts; the column is put in another order.
pub(super) fn percentiles(column: &mut [f64], wanted: &[f64]) -> Vec<f64> {
    let last = column.len().saturating_sub(1);
    let place = |per_cent: &f64| per_cent / 100.0 * last as f64;
    // Between 0 and the last place.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let below = |per_cent: &f64| place(per_cent).floor() as usize;
    let mut ranks: Vec<usize> = wanted.iter().flat_map(|p| [below(p), (below(p) + 1).min(last)]).collect();
    ranks.sort_unstable();
    ranks.dedup();
    in_order(column, 0, &ranks);
    let at = |per_cent: &f64| {
        let (low, high) = (column[below(per_cent)], column[(below(per_cent) + 1).min(last)]);
        let share = place(per_cent) - below(per_cent) as f64;
        // Infinity less infinity is no number.
        if share > 0.0 && high > low { low + share * (high - low) } else { low }
    };
    wanted.iter().map(at).collect()
}

/// Puts the values of some ranks, in rising order, where they would stand if all were sorted.
fn in_order(column: &mut [f64], first: usize, ranks: &[usize]) {
    let Some(&rank) = ranks.get(ranks.len() / 2) else { return };
    let (before, after) = (&ranks[..ranks.len() / 2], &ranks[ranks.len() / 2 + 1..]);
    let (low, _, high) = column.select_nth_unstable_by(rank - first, f64::total_cmp);
    in_order(low, first, before);
    in_order(high, rank + 1, after);
}

fn histogram(column: impl Iterator<Item = f64>, (low, high): (f64, f64)) -> Vec<Bar> {
    let width = (high - low) / BARS as f64;
    if width.is_nan() || width <= 0.0 {
        return Vec::new();
    }
    let mut counts = [0_u64; BARS];
    for value in column {
        // Neither negative nor much above the count.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let bar = ((value - low) / width).max(0.0) as usize;
        counts[bar.min(BARS - 1)] += 1;
    }
    let edge = |bar: usize| Length::new::<meter>(low + width * bar as f64);
    counts.iter().enumerate().map(|(bar, count)| Bar { from: edge(bar), to: edge(bar + 1), count: *count }).collect()
}
