//! Parts that stick to one another from the first touch.
//!
//! The axial traction t is what it must be for the axial slip to vanish. The same hats as for the pressure carry it, so that
//! both make one symmetric problem, `A (p, t) = -(gap, slip)`. That each body may drift along the axis as a whole, since nothing
//! but t holds it, is a multiplier for each contact: `Σ t_i area_i = 0`.

use super::both_ways::BothWays;
use crate::section::envelope::{Envelope, Factor};
use crate::section::error::SectionError;
use crate::section::model::Model;
use crate::section::settle::Settled;

/// Rounds in which places that would pull are let go; each lets go all of them.
const ROUNDS: usize = 50;

/// Whether parts that stick may move along the axis as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Drift {
    /// They may: nothing but the seat holds them.
    Free,
    /// Each is held by its own support.
    Held,
}

/// Pressures of all contacts when they stick.
pub(super) fn pressure(
    model: &Model,
    both: &BothWays,
    free: &[f64],
    settled: &Settled,
    drift: Drift,
) -> Result<Vec<f64>, SectionError> {
    let failed = SectionError::NotSettled { steps: ROUNDS };
    let mut touching = settled.touching.clone();
    for _ in 0..ROUNDS {
        let Some(pressure) = tractions(model, both, free, &touching, drift) else { return Err(failed) };
        let pulls: Vec<usize> =
            (0..both.count).filter(|&k| touching[k] && !model.bonded[k] && pressure[k] < 0.0).collect();
        if pulls.is_empty() {
            return Ok(pressure);
        }
        for k in pulls {
            touching[k] = false;
        }
    }
    Err(failed)
}

/// Pressures for places that touch; none where the matrix is not definite.
fn tractions(model: &Model, both: &BothWays, free: &[f64], touching: &[bool], drift: Drift) -> Option<Vec<f64>> {
    let size = 2 * both.count;
    let chosen: Vec<usize> = (0..size).filter(|&k| touching[k % both.count]).collect();
    let factor = Envelope::dense(&both.matrix, size, &chosen).factor()?;
    let mut found: Vec<f64> = chosen.iter().map(|&k| -free[k]).collect();
    factor.solve(&mut found);
    if drift == Drift::Free {
        drifted(model, both, (&factor, &chosen), &mut found)?;
    }
    let mut all = vec![0.0; size];
    for (&k, value) in chosen.iter().zip(found) {
        all[k] = value;
    }
    all.truncate(both.count);
    Some(all)
}

/// Lets each contact slip as a whole until its tractions add up to nothing.
fn drifted(model: &Model, both: &BothWays, (factor, chosen): (&Factor, &[usize]), found: &mut [f64]) -> Option<()> {
    let mut slips = Vec::with_capacity(model.touches.len());
    for (contact, touch) in model.touches.iter().enumerate() {
        let is_own = |k: usize| k >= both.count && both.contact(k) == contact;
        let area = |&k: &usize| if is_own(k) { touch.area[k % both.count - both.start[contact]] } else { 0.0 };
        let weight: Vec<f64> = chosen.iter().map(area).collect();
        let mut answer = weight.clone();
        factor.solve(&mut answer);
        slips.push((weight, answer));
    }
    let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    let count = slips.len();
    let mut shares: Vec<f64> = slips.iter().map(|(weight, _)| product(weight, found)).collect();
    let full: Vec<f64> = (0..count * count).map(|k| product(&slips[k / count].0, &slips[k % count].1)).collect();
    Envelope::dense(&full, count, &(0..count).collect::<Vec<_>>()).factor()?.solve(&mut shares);
    for ((_, answer), share) in slips.iter().zip(&shares) {
        for (found, answer) in found.iter_mut().zip(answer) {
            *found -= share * answer;
        }
    }
    Some(())
}
