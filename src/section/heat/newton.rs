//! One implicit equation of a step: `M (e(T)) - shift · f(T) = known`.

use super::panels::Panels;
use super::system::System;
use crate::section::envelope::Factor;

/// Change of the last iteration, as a share of the tolerance of a step, below which the equation is solved.
const SOLVED: f64 = 0.1;
/// Most iterations.
const ITERATIONS: usize = 12;
/// Slowest contraction that is followed.
const SLOWEST: f64 = 0.7;
/// Changes below this, K, say nothing about the contraction.
const ROUNDING: f64 = 1e-9;
/// Contraction up to which a factor is kept for the next step: a factor costs as much as some five iterations.
const STALE: f64 = 0.25;
/// Steps for which a factor serves, as shares of the one that it was made for.
const SERVES: (f64, f64) = (0.7, 1.4);

/// A factor in the least precision that holds the matrix.
#[derive(Clone, Debug)]
enum AnyFactor {
    Single(Panels),
    Double(Factor),
}

impl AnyFactor {
    fn new(system: &System<'_>, temperatures: &[f64], time: f64, (shift, falling): (f64, bool)) -> Option<Self> {
        let single = system.single(temperatures, time, (shift, falling)).factored().map(Self::Single);
        single.or_else(|| system.double(temperatures, time, (shift, falling)).factor().map(Self::Double))
    }

    fn solve(&self, vector: &mut [f64]) {
        match self {
            Self::Single(factor) => factor.solve(vector),
            Self::Double(factor) => factor.solve(vector),
        }
    }
}

/// A factored matrix and what it was made for.
#[derive(Clone, Debug)]
pub(super) struct Factored {
    factor: AnyFactor,
    /// Shift that it was made for.
    made_for: f64,
    /// Shift of the equation to solve.
    shift: f64,
    /// Ratio of one change to the one before, as last seen; `None` before it is known.
    contraction: Option<f64>,
}

impl Factored {
    /// The matrix of an equation, factored; `None` when it is not positive definite.
    pub(super) fn new(system: &System<'_>, temperatures: &[f64], time: f64, shift: f64) -> Option<Self> {
        let factor = AnyFactor::new(system, temperatures, time, (shift, true))
            .or_else(|| AnyFactor::new(system, temperatures, time, (shift, false)))?;
        Some(Self { factor, made_for: shift, shift, contraction: None })
    }

    /// The same factor for another shift; `None` when that, or what has become of the coefficients, is too far from what it
    /// was made for.
    pub(super) fn serving(mut self, shift: f64) -> Option<Self> {
        let ratio = shift / self.made_for;
        let slow = self.contraction.is_some_and(|contraction| contraction > STALE);
        if slow || ratio < SERVES.0 || ratio > SERVES.1 {
            return None;
        }
        // Where conduction rules, the other shift alone leaves this share of a change.
        self.contraction = self.contraction.map(|contraction| contraction.max((ratio - 1.0).abs()));
        self.shift = shift;
        Some(self)
    }

    /// The change of the temperatures that makes a heat, in place.
    pub(super) fn divide(&self, heat: &mut [f64]) {
        self.factor.solve(heat);
    }

    /// Solves `M (e(T) - known) = shift f(T)` from a guess; `None` when the iterations do not contract. `tolerance` is that of
    /// the step, K.
    pub(super) fn solve(
        &mut self,
        system: &System<'_>,
        known: &[f64],
        mut temperatures: Vec<f64>,
        (time, tolerance): (f64, f64),
    ) -> Option<Vec<f64>> {
        // With the matrix of another step a change is off by the ratio of the steps where conduction rules, and right where it
        // does not. This lies between.
        let relax = 2.0 / (1.0 + self.shift / self.made_for);
        let mut before: Option<f64> = None;
        for _ in 0..ITERATIONS {
            let mut change = system.left(&temperatures, (known, self.shift, time));
            self.divide(&mut change);
            let mut size: f64 = 0.0;
            for (kelvin, change) in temperatures.iter_mut().zip(&change) {
                *kelvin += relax * change;
                size = size.max((relax * change).abs());
            }
            // The largest of a list leaves out what is not a number.
            if !change.iter().all(|change| change.is_finite()) {
                return None;
            }
            if let Some(before) = before.filter(|before| *before > ROUNDING) {
                let ratio = size / before;
                if ratio > SLOWEST && size > SOLVED * tolerance {
                    return None;
                }
                self.contraction = Some(ratio);
            }
            // What is left is a geometric series of the changes.
            let left = self.contraction.map(|ratio| size * ratio / (1.0 - ratio).max(1.0 - SLOWEST));
            if size <= ROUNDING || left.is_some_and(|left| left <= SOLVED * tolerance) {
                return Some(temperatures);
            }
            before = Some(size);
        }
        None
    }
}
