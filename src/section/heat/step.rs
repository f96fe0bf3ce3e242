//! Steps in time.
//!
//! TR-BDF2: a trapezoidal step to `t + γτ`, then the two-step backward formula to `t + τ`, `γ = 2 - √2`, so that both
//! equations have the same matrix. Second order, L-stable: what is faster than a step decays and does not swing. The
//! error is estimated by the third-order formula embedded in it, smoothed by the same matrix (R. E. Bank and others,
//! "Transient simulation of silicon devices and circuits", 1985; M. E. Hosea and L. F. Shampine, "Analysis and
//! implementation of TR-BDF2", 1996, both from memory; the coefficients are tested against the order conditions).

use super::newton::{Factored, Solved};
use super::system::{Flow, System};
use std::f64::consts::SQRT_2;

/// Where the middle of a step lies, `γ = 2 - √2`.
pub(super) const MIDDLE: f64 = 2.0 - SQRT_2;
/// Share of a step in its matrix, `γ/2`.
const DIAGONAL: f64 = 1.0 - SQRT_2 / 2.0;
/// Weight of start and middle in the end, `√2/4`.
const WEIGHT: f64 = SQRT_2 / 4.0;
/// Weights of start, middle and end.
pub(super) const WEIGHTS: [f64; 3] = [WEIGHT, WEIGHT, DIAGONAL];
/// The same of the third-order formula.
const THIRD: [f64; 3] = [(1.0 - WEIGHT) / 3.0, (3.0 * WEIGHT + 1.0) / 3.0, DIAGONAL / 3.0];

/// Aim of the step control, as a share of the tolerance's step.
const SAFETY: f64 = 0.9;
/// Least and most by which a step changes.
const CHANGE: (f64, f64) = (0.2, 2.5);
/// A step that could grow by less is kept, and its factored matrix with it.
const WORTH: f64 = 1.25;
/// Shortest step as a share of the stage.
const SHORTEST: f64 = 1e-12;

/// Where a set of bodies is, and how it goes on.
#[derive(Debug)]
pub(super) struct Stepper<'a> {
    system: &'a System<'a>,
    tolerance: f64,
    pub(super) time: f64,
    pub(super) temperatures: Vec<f64>,
    /// `M e`, J.
    held: Vec<f64>,
    flow: Flow,
    step: f64,
    factored: Option<Factored>,
    /// Start and middle of the last step and its length.
    last: Option<(Vec<f64>, Vec<f64>, f64)>,
}

/// A step that was accepted.
#[derive(Clone, Debug)]
pub(super) struct Step {
    pub(super) length: f64,
    pub(super) middle: Vec<f64>,
    /// Heat that passed each face into the part, J.
    pub(super) heats: Vec<f64>,
}

/// Sum of the products of weights and lists.
fn mixed<const N: usize>(weights: [f64; N], lists: [&[f64]; N]) -> Vec<f64> {
    (0..lists[0].len()).map(|k| weights.iter().zip(lists).map(|(weight, list)| weight * list[k]).sum()).collect()
}

/// Weights of three values at places 0, `middle`, 1 in the parabola through them, at place `x`.
pub(super) fn parabola(middle: f64, x: f64) -> [f64; 3] {
    let m = middle;
    [(x - m) * (x - 1.0) / m, x * (x - 1.0) / (m * (m - 1.0)), x * (x - m) / (1.0 - m)]
}

impl<'a> Stepper<'a> {
    /// At the beginning of a stage that lasts `lasting` s at most.
    pub(super) fn new(system: &'a System<'a>, temperatures: Vec<f64>, (tolerance, lasting): (f64, f64)) -> Self {
        let (mut enthalpies, mut held) = (vec![0.0; temperatures.len()], vec![0.0; temperatures.len()]);
        system.enthalpies(&temperatures, &mut enthalpies);
        system.set.sparse.mass_times(&enthalpies, &mut held);
        let mut flow = Flow::default();
        system.flow(&temperatures, 0.0, &mut flow);
        let mut stepper =
            Self { system, tolerance, time: 0.0, temperatures, held, flow, step: lasting, factored: None, last: None };
        stepper.step = stepper.first_step(lasting);
        stepper
    }

    /// The same place without the factored matrix, which is large.
    pub(super) fn without_matrix(&self) -> Self {
        Self {
            system: self.system,
            temperatures: self.temperatures.clone(),
            held: self.held.clone(),
            flow: self.flow.clone(),
            factored: None,
            last: self.last.clone(),
            ..*self
        }
    }

    /// A step of a length, whatever its error: a part of one that was accepted.
    pub(super) fn exactly(&mut self, length: f64) -> Option<Step> {
        let mut factored = Factored::new(self.system, &self.temperatures, self.time, DIAGONAL * length)?;
        let (middle, end, rates) = self.attempt(&mut factored, length)?;
        Some(self.accept(length, middle, end, rates))
    }

    /// A step in which a node that warms as fast as the flow at the start says moves by a few tolerances.
    fn first_step(&self, lasting: f64) -> f64 {
        let (mut change, time) = (self.flow.rate.clone(), 1e-3 * lasting);
        let Some(factored) = Factored::new(self.system, &self.temperatures, 0.0, time) else { return time };
        factored.factor.solve(&mut change);
        let fastest = change.iter().fold(0.0_f64, |most, change| most.max(change.abs()));
        (10.0 * self.tolerance / fastest).clamp(1e-9 * lasting, time)
    }

    /// One step, `left` s before the stage ends; `None` when no step is short enough.
    pub(super) fn step(&mut self, left: f64) -> Option<Step> {
        loop {
            let length = self.length(left);
            if length < SHORTEST * (self.time + left) {
                return None;
            }
            let shift = DIAGONAL * length;
            let kept = self.factored.take().and_then(|kept| kept.serving(shift));
            let fresh = kept.is_none();
            let made = kept.or_else(|| Factored::new(self.system, &self.temperatures, self.time, shift));
            let Some(mut factored) = made else {
                self.step = length / 4.0;
                continue;
            };
            let tried = self.attempt(&mut factored, length);
            let Some((middle, end, rates)) = tried else {
                // With a matrix of earlier coefficients the next try has a new one, else a shorter step.
                self.step = if fresh { length / 4.0 } else { length };
                continue;
            };
            let error = self.error(&factored, length, &rates);
            let factor = SAFETY * (self.tolerance / error.max(1e-300)).cbrt();
            self.factored = Some(factored);
            if error > self.tolerance {
                self.step = length * factor.clamp(CHANGE.0, SAFETY);
                continue;
            }
            self.step = if factor < WORTH { self.step.min(length) } else { length * factor.min(CHANGE.1) };
            return Some(self.accept(length, middle, end, rates));
        }
    }

    /// The step to take: the end of the stage is met without a sliver before it.
    fn length(&self, left: f64) -> f64 {
        if self.step >= left {
            left
        } else if 2.0 * self.step > left {
            left / 2.0
        } else {
            self.step
        }
    }

    fn attempt(&self, factored: &mut Factored, length: f64) -> Option<(Solved, Solved, [Vec<f64>; 3])> {
        let shift = DIAGONAL * length;
        let rate = &self.flow.rate;
        let known = mixed([1.0, shift], [&self.held, rate]);
        let guess = self.guess_middle(length);
        let middle = factored.solve(self.system, &known, guess, (self.time + MIDDLE * length, self.tolerance))?;
        // The flow at the middle from its own equation, which no iteration's remainder can spoil.
        let of = |solved: &Solved, known: &[f64]| mixed([1.0 / shift, -1.0 / shift], [&solved.held, known]);
        let middle_rate = of(&middle, &known);
        let known = mixed([1.0, WEIGHT * length, WEIGHT * length], [&self.held, rate, &middle_rate]);
        let guess = self.guess_end(length, &middle.temperatures);
        let end = factored.solve(self.system, &known, guess, (self.time + length, self.tolerance))?;
        let end_rate = of(&end, &known);
        Some((middle, end, [rate.clone(), middle_rate, end_rate]))
    }

    /// The last step's parabola gone on.
    fn guess_middle(&self, length: f64) -> Vec<f64> {
        match &self.last {
            Some((start, middle, last)) => {
                let x = 1.0 + MIDDLE * length / last;
                mixed(parabola(MIDDLE, x), [start, middle, &self.temperatures])
            }
            None => self.temperatures.clone(),
        }
    }

    /// The parabola through the start of the last step and start and middle of this one.
    fn guess_end(&self, length: f64, middle: &[f64]) -> Vec<f64> {
        match &self.last {
            Some((start, _, last)) => {
                let whole = last + MIDDLE * length;
                mixed(parabola(last / whole, (last + length) / whole), [start, &self.temperatures, middle])
            }
            None => mixed([1.0 - 1.0 / MIDDLE, 1.0 / MIDDLE], [&self.temperatures, middle]),
        }
    }

    /// Largest error of a node, K.
    fn error(&self, factored: &Factored, length: f64, rates: &[Vec<f64>; 3]) -> f64 {
        let weights = [0, 1, 2].map(|k| length * (WEIGHTS[k] - THIRD[k]));
        let mut error = mixed(weights, [&rates[0], &rates[1], &rates[2]]);
        factored.factor.solve(&mut error);
        error.iter().fold(0.0, |most, error| most.max(error.abs()))
    }

    fn accept(&mut self, length: f64, middle: Solved, end: Solved, rates: [Vec<f64>; 3]) -> Step {
        let mut heats: Vec<f64> = self.flow.faces.iter().map(|heat| WEIGHTS[0] * length * heat).collect();
        let mut count = |weight: f64, flow: &Flow| {
            heats.iter_mut().zip(&flow.faces).for_each(|(sum, heat)| *sum += weight * length * heat);
        };
        let mut flow = Flow::default();
        self.system.face_flow(&middle.temperatures, self.time + MIDDLE * length, &mut flow);
        count(WEIGHTS[1], &flow);
        self.system.face_flow(&end.temperatures, self.time + length, &mut flow);
        count(WEIGHTS[2], &flow);
        let [_, _, rate] = rates;
        flow.rate = rate;
        self.flow = flow;
        self.time += length;
        self.held = end.held;
        let start = std::mem::replace(&mut self.temperatures, end.temperatures);
        self.last = Some((start, middle.temperatures.clone(), length));
        Step { length, middle: middle.temperatures, heats }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Stages lie at 0, γ, 1; a formula of order p has `Σ b_i c_i^(q-1) = 1/q` for q ≤ p, and for order three
    /// `Σ b_i a_ij c_j = 1/6` besides.
    #[test]
    fn coefficients_obey_the_order_conditions() {
        let (c, a_middle) = ([0.0, MIDDLE, 1.0], [DIAGONAL, DIAGONAL, 0.0]);
        let power = |b: [f64; 3], q: i32| b.iter().zip(c).map(|(b, c)| b * c.powi(q)).sum::<f64>();
        assert!((power(WEIGHTS, 0) - 1.0).abs() < 1e-15 && (power(WEIGHTS, 1) - 0.5).abs() < 1e-15);
        assert!((power(WEIGHTS, 2) - 1.0 / 3.0).abs() > 1e-3);
        for (q, right) in [(0, 1.0), (1, 0.5), (2, 1.0 / 3.0)] {
            assert!((power(THIRD, q) - right).abs() < 1e-15, "{q}");
        }
        let inner = |a: [f64; 3]| a.iter().zip(c).map(|(a, c)| a * c).sum::<f64>();
        assert!((THIRD[1] * inner(a_middle) + THIRD[2] * inner(WEIGHTS) - 1.0 / 6.0).abs() < 1e-15);
        assert!((inner(a_middle) - MIDDLE * MIDDLE / 2.0).abs() < 1e-15);
    }
}
