//! Steps in time.
//!
//! Numerical differentiation formulas of order one to four ([`super::differences`]): one equation a step, and its error is a
//! share of the difference from what the steps before it expected. Temperatures, enthalpies and the heat through the faces are
//! followed together, so that the iterations of a step start close to its end, and what the parts gain is what passed the
//! faces. Where a table has a kink or a place of the seat closes, the order falls and the steps get short; in between a step
//! grows to several times what a formula of second order allows.

use super::differences::{Ahead, Differences, MOST, divisor, error_share};
use super::newton::Factored;
use super::system::System;

/// Where the middle of a step lies.
pub(super) const MIDDLE: f64 = 0.5;
/// Aim of the step control, as a share of the tolerance's step.
const SAFETY: f64 = 0.85;
/// Least and most by which a step changes.
const CHANGE: (f64, f64) = (0.2, 10.0);
/// A step that could grow by less is kept, and its factored matrix with it.
const WORTH: f64 = 1.2;
/// Share of the tolerance that a step may be off by: errors of a smooth stretch have one sign and add.
const HELD_TO: f64 = 0.5;
/// Lowest power of a step with which its error is taken to fall.
const LOWEST_POWER: f64 = 0.3;
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

/// The largest of the magnitudes; four at a time, so that one need not wait for the one before.
fn largest(values: &[f64]) -> f64 {
    let (fours, rest) = values.as_chunks::<4>();
    let more = |most: f64, value: f64| if value.abs() > most { value.abs() } else { most };
    let mut most = [0.0; 4];
    for [a, b, c, d] in fours {
        most = [more(most[0], *a), more(most[1], *b), more(most[2], *c), more(most[3], *d)];
    }
    most.iter().chain(rest).fold(0.0, |most, value| more(most, *value))
}

impl<'a> Stepper<'a> {
    /// At the beginning of a stage that lasts `lasting` s at most.
    pub(super) fn new(system: &'a System<'a>, temperatures: Vec<f64>, (tolerance, lasting): (f64, f64)) -> Self {
        let enthalpies = held(system, &temperatures);
        let faces = system.faces(&temperatures, 0.0);
        let (rates, step) = first_step(system, &temperatures, (&enthalpies, tolerance, lasting));
        let warmed: Vec<f64> = temperatures.iter().zip(&rates).map(|(kelvin, rate)| kelvin + step * rate).collect();
        let changes = (rates.iter().map(|rate| step * rate))
            .chain(held(system, &warmed).into_iter().zip(&enthalpies).map(|(after, before)| after - before))
            .chain(faces.iter().map(|heat| step * heat))
            .collect();
        let none = vec![0.0; faces.len()];
        let values = [&temperatures[..], &enthalpies, &none].concat();
        let differences = Differences::new(values, changes);
        let tolerance = HELD_TO * tolerance;
        Self { system, tolerance, time: 0.0, temperatures, differences, even: step, step, factored: None }
    }

    /// One step, `left` s before the stage ends; `None` when no step is short enough.
    pub(super) fn step(&mut self, left: f64) -> Option<Step> {
        let mut refused = None;
        loop {
            let length = self.length(left);
            if length < SHORTEST * (self.time + left) {
                return None;
            }
            self.stretch(length);
            let ahead = self.differences.ahead();
            let shift = length / divisor(self.differences.order);
            let kept = self.factored.take().and_then(|kept| kept.serving(shift));
            let fresh = kept.is_none();
            let tried = self.attempt(kept, shift, &ahead);
            let Some((factored, temperatures)) = tried else {
                // With a matrix of earlier coefficients the next try has a new one, else a shorter step.
                self.step = if fresh { length / 4.0 } else { length };
                continue;
            };
            let off = Off::new(self.system, (&factored, &temperatures), &ahead.values);
            self.factored = Some(factored);
            let error = error_share(self.differences.order) * off.largest;
            if error > self.tolerance {
                self.refuse(&off, (length, error), refused);
                refused = Some((length, error));
                continue;
            }
            return Some(self.accept(temperatures, off, (shift, error), &ahead));
        }
    }

    /// Solves the equation of a step; with a new matrix unless one is kept.
    fn attempt(&self, kept: Option<Factored>, shift: f64, ahead: &Ahead) -> Option<(Factored, Vec<f64>)> {
        let size = self.temperatures.len();
        let (guess, known) = (&ahead.values[..size], &ahead.known[size..2 * size]);
        let time = self.time + self.even;
        let mut factored = kept.or_else(|| Factored::new(self.system, guess, time, shift))?;
        let temperatures = factored.solve(self.system, known, guess.to_vec(), (time, self.tolerance))?;
        Some((factored, temperatures))
    }

    fn accept(&mut self, temperatures: Vec<f64>, off: Off, (shift, error): (f64, f64), ahead: &Ahead) -> Step {
        let size = temperatures.len();
        self.time += self.even;
        let ratio = off.ratio();
        let mut beyond = off.all;
        // What has passed the faces obeys the same formula.
        let faces = self.system.faces(&temperatures, self.time);
        let passed = faces.iter().zip(&ahead.known[2 * size..]).map(|(heat, known)| known + shift * heat);
        beyond.extend(passed.zip(&ahead.values[2 * size..]).map(|(found, guess)| found - guess));
        self.differences.take(beyond);
        self.temperatures = temperatures;
        let step = self.part(1.0);
        self.choose(error, ratio);
        step
    }

    fn stretch(&mut self, length: f64) {
        let factor = length / self.even;
        if (factor - 1.0).abs() > 1e-15 {
            self.differences.stretch(factor);
            self.even = length;
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

    /// By how much a step of an order may be longer, from the difference that its error is a share of.
    fn growth(&self, order: usize, difference: f64) -> f64 {
        self.growth_of(error_share(order) * difference, order as f64 + 1.0)
    }

    fn growth_of(&self, error: f64, power: f64) -> f64 {
        (self.tolerance / error.max(1e-300)).powf(1.0 / power)
    }

    fn refuse(&mut self, off: &Off, (length, error): (f64, f64), refused: Option<(f64, f64)>) {
        let order = self.differences.order;
        let mut factor = self.growth(order, off.largest);
        if let Some((before, earlier)) = refused {
            // The error of a kink or a jump falls with a lower power of the step than that of a smooth curve.
            let power = ((earlier / error).ln() / (before / length).ln()).clamp(LOWEST_POWER, order as f64 + 1.0);
            factor = self.growth_of(error, power);
        }
        if order > 1 && refused.is_some() {
            let lower = off.all.iter().zip(&self.differences.list(order)[..self.temperatures.len()]);
            let lower: Vec<f64> = lower.map(|(off, list)| off + list).collect();
            let lower = self.growth(order - 1, off.ratio() * largest(&lower));
            if lower > factor {
                factor = lower;
                self.differences.order = order - 1;
            }
        }
        self.step = length * (SAFETY * factor).clamp(CHANGE.0, SAFETY);
    }

    /// Order and length of the next step.
    fn choose(&mut self, error: f64, ratio: f64) {
        let order = self.differences.order;
        self.step = self.step.min(self.even);
        // Before that the differences of the next order still hold those of other steps. For longer steps all of them must be
        // even; another order is taken sooner, or a low one that a kink left behind would stay while steps get shorter.
        if self.differences.even < 2 {
            return;
        }
        let size = self.temperatures.len();
        let of = |number: usize| ratio * largest(&self.differences.list(number)[..size]);
        let mut best = (self.growth_of(error, order as f64 + 1.0), order);
        if order > 1 {
            best = better(best, (self.growth(order - 1, of(order)), order - 1));
        }
        if order < MOST {
            best = better(best, (self.growth(order + 1, of(order + 2)), order + 1));
        }
        let factor = SAFETY * best.0;
        if factor >= 1.0 {
            self.differences.order = best.1;
        }
        if factor >= WORTH && self.differences.even > order {
            self.step = self.even * factor.min(CHANGE.1);
        }
    }

    /// The last step up to a share of it.
    fn part(&self, share: f64) -> Step {
        let size = self.temperatures.len();
        let middle = self.differences.at(MIDDLE * share, size);
        Step { length: share * self.even, middle, heats: self.differences.gained(share, 2 * size) }
    }

    /// Temperatures at a share of the last step.
    pub(super) fn within(&self, share: f64) -> Vec<f64> {
        self.differences.at(share, self.temperatures.len())
    }

    /// Ends the last step at a share of it, and the stage with it.
    pub(super) fn cut(&mut self, share: f64) -> Step {
        let step = self.part(share);
        self.time -= (1.0 - share) * self.even;
        self.temperatures = self.within(share);
        step
    }
}

fn better(one: (f64, usize), other: (f64, usize)) -> (f64, usize) {
    if other.0 > one.0 { other } else { one }
}

/// How far a step ends from where it was expected.
struct Off {
    /// Temperatures, then enthalpies.
    all: Vec<f64>,
    /// Largest of the temperatures, K.
    raw: f64,
    /// The same after conduction has evened it out for one step: what a single node is off by decays within the step, and
    /// is no error at its end (L. F. Shampine and L. S. Baca, "Error estimators for stiff differential equations", 1984, from
    /// memory).
    largest: f64,
}

impl Off {
    /// Of temperatures that were found, from the values `ahead` that were expected.
    fn new(system: &System<'_>, (factored, temperatures): (&Factored, &[f64]), ahead: &[f64]) -> Self {
        let size = temperatures.len();
        let found = temperatures.iter().copied().chain(held(system, temperatures));
        let all: Vec<f64> = found.zip(ahead).map(|(found, ahead)| found - ahead).collect();
        let raw = largest(&all[..size]);
        let mut even = vec![0.0; size];
        system.set.sparse.mass_times(&all[size..], &mut even);
        factored.divide(&mut even);
        Self { all, raw, largest: largest(&even) }
    }

    /// What is left of a difference by then.
    fn ratio(&self) -> f64 {
        self.largest / self.raw.max(1e-300)
    }
}

/// Heat held per mass at the nodes, J/kg.
fn held(system: &System<'_>, temperatures: &[f64]) -> Vec<f64> {
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
    factored.divide(&mut rates);
    let fastest = largest(&rates);
    (rates, (10.0 * tolerance / fastest).clamp(1e-9 * lasting, time))
}

#[cfg(test)]
impl Stepper<'_> {
    /// Goes on from temperatures at even steps, the last of them first, with a formula of one order fewer than there are.
    pub(super) fn go_on_from(&mut self, (time, length): (f64, f64), past: &[Vec<f64>]) {
        let faces = self.system.surfaces.laws.len();
        let of = |kelvins: &Vec<f64>| [&kelvins[..], &held(self.system, kelvins), &vec![0.0; faces]].concat();
        self.differences = Differences::from_past(past.iter().map(of).collect());
        (self.time, self.even, self.temperatures) = (time, length, past[0].clone());
    }

    /// A step of the same length and order, whatever its error.
    pub(super) fn evenly(&mut self) {
        let (order, length) = (self.differences.order, self.even);
        let ahead = self.differences.ahead();
        let shift = length / divisor(order);
        let (factored, temperatures) = self.attempt(None, shift, &ahead).unwrap();
        let off = Off::new(self.system, (&factored, &temperatures), &ahead.values);
        self.accept(temperatures, off, (shift, 0.0), &ahead);
        (self.differences.order, self.step) = (order, length);
    }
}
