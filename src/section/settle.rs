//! Which nodes touch.
//!
//! Pressures p and weighted gaps w of a frictionless elastic contact obey `w = A p + b`, `p ≥ 0`, `w ≥ 0`, `pᵀw = 0`
//! with A symmetric positive definite, which has one solution. It is found by exchanging all nodes that pull or overlap
//! at once, and when that stops making progress the first of them only, which ends after finitely many steps (J. J.
//! Júdice and F. M. Pires, "A block principal pivoting algorithm for large-scale strictly monotone linear
//! complementarity problems", 1994; K. G. Murty, "Note on a Bard-type scheme", 1974; both from memory).

use super::envelope::Envelope;
use super::error::SectionError;

/// Pull or overlap that is rounding, as a share of the largest pressure or gap of the problem.
const ROUNDING: f64 = 1e-11;
/// Exchanges of all wrong nodes that may bring no progress before only the first is exchanged.
const PATIENCE: usize = 3;
/// Steps for each node; far fewer are needed in practice.
const STEPS: usize = 100;

/// Pressures, and which nodes touch.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Settled {
    pub(super) pressure: Vec<f64>,
    pub(super) touching: Vec<bool>,
}

/// Pressures for a set of nodes that touch: `A_tt p_t = -b_t`, the others zero; `None` when A is not definite.
pub(super) fn pressures(matrix: &[f64], gaps: &[f64], touching: &[bool]) -> Option<Vec<f64>> {
    let size = gaps.len();
    let chosen: Vec<usize> = (0..size).filter(|&k| touching[k]).collect();
    let mut found: Vec<f64> = chosen.iter().map(|&k| -gaps[k]).collect();
    Envelope::dense(matrix, size, &chosen).factor()?.solve(&mut found);
    let mut pressure = vec![0.0; size];
    for (k, value) in chosen.into_iter().zip(found) {
        pressure[k] = value;
    }
    Some(pressure)
}

/// `A p + b`.
pub(super) fn gaps(matrix: &[f64], free: &[f64], pressure: &[f64]) -> Vec<f64> {
    let rows = matrix.chunks(free.len().max(1));
    let row = |(row, free): (&[f64], &f64)| free + row.iter().zip(pressure).map(|(a, p)| a * p).sum::<f64>();
    rows.zip(free).map(row).collect()
}

/// Nodes whose state is wrong: touching ones that pull, open ones that overlap. Bonded ones touch always and may pull.
pub(super) fn wrong<'a>(
    gaps: &'a [f64],
    pressure: &'a [f64],
    touching: &'a [bool],
    bonded: &'a [bool],
) -> impl Iterator<Item = usize> + 'a {
    let largest = |values: &[f64]| values.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
    let (pull, overlap) = (ROUNDING * largest(pressure), ROUNDING * largest(gaps));
    let is_wrong = move |k: &usize| if touching[*k] { pressure[*k] < -pull } else { gaps[*k] < -overlap };
    (0..gaps.len()).filter(|k| !bonded[*k]).filter(is_wrong)
}

/// Solves the contact, beginning with the nodes that overlap; bonded ones touch whatever they bear.
///
/// # Errors
/// [`SectionError::NotSettled`].
pub(super) fn settle(matrix: &[f64], free: &[f64], bonded: &[bool]) -> Result<Settled, SectionError> {
    let steps = STEPS * free.len();
    let failed = || SectionError::NotSettled { steps };
    let mut touching: Vec<bool> = free.iter().zip(bonded).map(|(gap, bonded)| *bonded || *gap < 0.0).collect();
    let (mut fewest, mut patience) = (usize::MAX, PATIENCE);
    for _ in 0..steps {
        let pressure = pressures(matrix, free, &touching).ok_or_else(failed)?;
        let mut exchanged: Vec<usize> = wrong(&gaps(matrix, free, &pressure), &pressure, &touching, bonded).collect();
        if exchanged.is_empty() {
            // What is left of pull is rounding.
            let left = |(p, bonded): (f64, &bool)| if *bonded { p } else { p.max(0.0) };
            let pressure = pressure.into_iter().zip(bonded).map(left).collect();
            return Ok(Settled { pressure, touching });
        }
        if exchanged.len() < fewest {
            (fewest, patience) = (exchanged.len(), PATIENCE);
        } else if patience > 0 {
            patience -= 1;
        } else {
            // Murty's rule: one node, always the one with the lowest (or always the highest) number.
            exchanged.truncate(1);
        }
        for k in exchanged {
            touching[k] = !touching[k];
        }
    }
    Err(failed())
}
