//! Parts drawn chunk by chunk.

use super::distribution::Random;
use super::inputs::INPUTS;
use super::model::Output;
use super::prepare::SeatModel;
use super::worker::Worker;

/// Parts of a chunk: each chunk has random numbers of its own.
const CHUNK: u64 = 8192;

/// How far apart the chunks of two seats are numbered.
pub(super) const SEAT_STREAMS: u64 = 1 << 40;

/// Every output of every part, an output a column, in the order in which they were drawn.
pub(super) fn columns(
    model: &SeatModel<'_>,
    (draws, seed, seat): (u64, u64, u64),
    worker: &impl Worker,
) -> Vec<Vec<Vec<f64>>> {
    let count = usize::try_from(draws.div_ceil(CHUNK)).unwrap_or(usize::MAX);
    worker.each(count, |number| {
        let number = number as u64;
        let parts = CHUNK.min(draws - number * CHUNK);
        chunk(model, &mut Random::new(seed, seat * SEAT_STREAMS + number), parts)
    })
}

fn chunk(model: &SeatModel<'_>, random: &mut Random, parts: u64) -> Vec<Vec<f64>> {
    let outputs = model.outputs();
    let room = usize::try_from(parts).unwrap_or_default();
    let mut columns: Vec<Vec<f64>> = (0..Output::COUNT).map(|_| Vec::with_capacity(room)).collect();
    let mut inputs = [0.0; INPUTS];
    for _ in 0..parts {
        for (value, input) in inputs.iter_mut().zip(&model.distributions) {
            *value = input.draw(random);
        }
        let drawn = model.evaluate(&inputs);
        for output in &outputs {
            columns[output.index()].push(drawn[output.index()]);
        }
    }
    columns
}
