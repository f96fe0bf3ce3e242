//! Steps in time.
//!
//! Backward differentiation of order one to four over even steps, in the form of backward differences: one equation a step,
//! whose error is the next difference. What is followed are the temperatures, the enthalpies and the heat through the faces
//! together, so that a step starts close to its end, and no heat is lost between nodes and faces.

use super::differences::{Differences, MOST, divisor, error_share};
use super::newton::Factored;
use super::system::System;

/// Where the middle of a step lies.
pub(super) const MIDDLE: f64 = 0.5;
/// Aim of the step control, as a share of the tolerance's step.
const SAFETY: f64 = 0.9;
/// Least and most by which a step changes.
const CHANGE: (f64, f64) = (0.2, 4.0);
/// A step that could grow by less is kept, and its factored matrix with it.
const WORTH: f64 = 1.2;
/// Shortest step as a share of the stage.
const SHORTEST: f64 = 1e-12;

/// Where a set of bodies is, and how it goes on.
#[derive(Debug)]
pub(super) struct Stepper<'a> {
    system: &'a System<'a>,
    tolerance: f64,
    pub(super) time: f64,
    pub(super) temperatures: Vec<f64>,
    /// Temperatures, enthalpies of the rows, heat that has passed the faces.
    differences: Differences,
    /// Length of the steps of the differences.
    even: f64,
    /// Length of the next step.
    step: f64,
    factored: Option<Factored>,
}

/// A step that was accepted.
#[derive(Clone, Debug)]
pub(super) struct Step {
    pub(super) length: f64,
    pub(super) middle: Vec<f64>,
    /// Heat that passed each face into the part, J.
    pub(super) heats: Vec<f64>,
}

/// Weights of three values at places 0, `middle`, 1 in the parabola through them, at place `x`.
pub(super) fn parabola(middle: f64, x: f64) -> [f64; 3] {
    let m = middle;
    [(x - m) * (x - 1.0) / m, x * (x - 1.0) / (m * (m - 1.0)), x * (x - m) / (1.0 - m)]
}

fn largest(values: impl Iterator<Item = f64>) -> f64 {
    values.fold(0.0, |most, value| most.max(value.abs()))
}

impl<'a> Stepper<'a> {
    /// At the beginning of a stage that lasts `lasting` s at most.
    pub(super) fn new(system: &'a System<'a>, temperatures: Vec<f64>, (tolerance, lasting): (f64, f64)) -> Self {
        let enthalpies = enthalpies(system, &temperatures);
        let faces = system.faces(&temperatures, 0.0);
        let (rates, step) = first_step(system, &temperatures, (&enthalpies, tolerance, lasting));
        let warmed: Vec<f64> = temperatures.iter().zip(&rates).map(|(kelvin, rate)| kelvin + step * rate).collect();
        let changes = (rates.iter().map(|rate| step * rate))
            .chain(self::enthalpies(system, &warmed).into_iter().zip(&enthalpies).map(|(after, before)| after - before))
            .chain(faces.iter().map(|heat| step * heat))
            .collect();
        let values = [&temperatures[..], &enthalpies, &vec![0.0; faces.len()]].concat();
        let differences = Differences::new(values, changes);
        Self { system, tolerance, time: 0.0, temperatures, differences, even: step, step, factored: None }
    }

    /// One step, `left` s before the stage ends; `None` when no step is short enough.
    pub(super) fn step(&mut self, left: f64) -> Option<Step> {
        let size = self.temperatures.len();
        let mut refused: Option<(f64, f64)> = None;
        loop {
            let length = self.length(left);
            if length < SHORTEST * (self.time + left) {
                return None;
            }
            if length != self.even {
                self.differences.stretch(length / self.even);
                self.even = length;
            }
            let (ahead, known) = self.differences.ahead();
            let shift = length / divisor(self.differences.order);
            let (guess, known) = (&ahead[..size], &known[size..2 * size]);
            let time = self.time + length;
            let kept = self.factored.take().and_then(|kept| kept.serving(shift));
            let fresh = kept.is_none();
            let Some(mut factored) = kept.or_else(|| Factored::new(self.system, guess, time, shift)) else {
                self.step = length / 4.0;
                continue;
            };
            let tried = factored.solve(self.system, known, guess.to_vec(), (time, self.tolerance));
            let Some(temperatures) = tried else {
                // With a matrix of earlier coefficients the next try has a new one, else a shorter step.
                self.step = if fresh { length / 4.0 } else { length };
            if std::env::var("LOG").is_ok() { eprintln!("t {:.5} h {:.3e} NEWTON it {} {}", self.time, length, super::newton::IT.swap(0, std::sync::atomic::Ordering::Relaxed), if fresh {"F"} else {"-"}); }
                continue;
            };
            self.factored = Some(factored);
            let off: Vec<f64> = temperatures.iter().zip(guess).map(|(found, guess)| found - guess).collect();
            let order = self.differences.order;
            let raw = largest(off.iter().copied());
            let enthalpies = enthalpies(self.system, &temperatures);
            let mut off_e: Vec<f64> = enthalpies.iter().zip(&ahead[size..]).map(|(found, guess)| found - guess).collect();
            let filt = if raw*error_share(order) < 0.1*self.tolerance || std::env::var("NOFILT").is_ok() { raw } else {
                let mut smooth = vec![0.0; size];
                self.system.set.sparse.mass_times(&off_e, &mut smooth);
                self.factored.as_ref().unwrap().factor.solve(&mut smooth);
                largest(smooth.iter().copied())
            };
            let ratio = filt / raw.max(1e-300);
            let error = error_share(order) * filt;
            if std::env::var("LOG").is_ok() { eprintln!("t {:.5} h {:.3e} k {} err {:.3} it {} {} {}", self.time, length, order, error/self.tolerance, super::newton::IT.swap(0, std::sync::atomic::Ordering::Relaxed), if fresh {"F"} else {"-"}, if error>self.tolerance {"REJ"} else {""}); }
            if error > self.tolerance {
                self.refuse(&off, length, ratio, refused);
                refused = Some((length, error));
                continue;
            }
            let faces = self.system.faces(&temperatures, time);
            let mut off = off;
            off.append(&mut off_e);
            // What has passed the faces obeys the same formula.
            let known = self.differences.ahead().1;
            let passed = faces.iter().zip(&known[2 * size..]).map(|(heat, known)| known + shift * heat);
            off.extend(passed.zip(&ahead[2 * size..]).map(|(found, guess)| found - guess));
            self.differences.take(off);
            self.time = time;
            self.temperatures = temperatures;
            let step = self.part(1.0);
            self.choose(error, length, ratio);
            return Some(step);
        }
    }
}

fn enthalpies(system: &System<'_>, temperatures: &[f64]) -> Vec<f64> {
    system.nodes(temperatures).into_iter().map(|node| node.enthalpy).collect()
}

/// Rates at the start, K/s, and a step in which a node that warms so fast moves by a few tolerances.
fn first_step(
    system: &System<'_>,
    temperatures: &[f64],
    (enthalpies, tolerance, lasting): (&[f64], f64, f64),
) -> (Vec<f64>, f64) {
    let time = 1e-3 * lasting;
    // With the enthalpies for known ones only the flow is left.
    let mut rates = system.left(temperatures, (enthalpies, 1.0, 0.0));
    let Some(factored) = Factored::new(system, temperatures, 0.0, time) else { return (vec![0.0; rates.len()], time) };
    factored.factor.solve(&mut rates);
    let fastest = largest(rates.iter().copied());
    (rates, (10.0 * tolerance / fastest).clamp(1e-9 * lasting, time))
}

impl Stepper<'_> {
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

    fn growth(&self, order: usize, largest_difference: f64) -> f64 {
        let error = error_share(order) * largest_difference;
        (self.tolerance / error.max(1e-300)).powf(1.0 / (order as f64 + 1.0))
    }

    fn refuse(&mut self, off: &[f64], length: f64, ratio: f64, refused: Option<(f64, f64)>) {
        let order = self.differences.order;
        let mut factor = self.growth(order, ratio * largest(off.iter().copied()));
        if let Some((before, error)) = refused {
            let now = error_share(order) * ratio * largest(off.iter().copied());
            let power = ((error / now).ln() / (before / length).ln()).clamp(0.3, order as f64 + 1.0);
            factor = (self.tolerance / now).powf(1.0 / power);
        }
        if order > 1 {
            let below = largest(off.iter().zip(self.differences.list(order)).map(|(off, list)| off + list));
            let other = self.growth(order - 1, ratio * below);
            if other > factor {
                factor = other;
                self.differences.order = order - 1;
            }
        }
        self.step = length * (SAFETY * factor).clamp(CHANGE.0, SAFETY);
    }

    /// Order and length of the next step.
    fn choose(&mut self, error: f64, length: f64, ratio: f64) {
        let order = self.differences.order;
        if self.differences.even <= order {
            return;
        }
        let size = self.temperatures.len();
        let of = |number: usize| ratio * largest(self.differences.list(number)[..size].iter().copied());
        let mut best = ((self.tolerance / error.max(1e-300)).powf(1.0 / (order as f64 + 1.0)), order);
        if order > 1 {
            let factor = self.growth(order - 1, of(order));
            if factor > best.0 {
                best = (factor, order - 1);
            }
        }
        if order < MOST {
            let factor = self.growth(order + 1, of(order + 2));
            if factor > best.0 {
                best = (factor, order + 1);
            }
        }
        let factor = SAFETY * best.0;
        if factor < WORTH {
            self.step = self.step.min(length);
            return;
        }
        self.differences.order = best.1;
        self.step = length * factor.min(CHANGE.1);
    }

    /// The part of the last step up to a share of it.
    fn part(&self, share: f64) -> Step {
        let size = self.temperatures.len();
        let before = self.differences.at(0.0);
        let after = self.differences.at(share);
        let mut middle = self.differences.at(MIDDLE * share);
        middle.truncate(size);
        let heats = after[2 * size..].iter().zip(&before[2 * size..]).map(|(after, before)| after - before).collect();
        Step { length: share * self.even, middle, heats }
    }

    /// Temperatures at a share of the last step.
    pub(super) fn within(&self, share: f64) -> Vec<f64> {
        let mut values = self.differences.at(share);
        values.truncate(self.temperatures.len());
        values
    }

    /// Ends the last step at a share of it, and the stage with it.
    pub(super) fn cut(&mut self, share: f64) -> Step {
        let step = self.part(share);
        self.time -= (1.0 - share) * self.even;
        self.temperatures = self.within(share);
        step
    }
}
