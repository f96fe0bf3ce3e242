//! Temperature against time within one stage, by the adaptive solver or in closed form.
//!
//! A body that nothing heats from within nears its surroundings almost exponentially. What is followed then is the logarithm of
//! what is left of the way, whose rate `-1/τ` changes little: it takes half of the steps that the temperature itself takes.

use super::balance::Balance;
use super::error::ThermalError;
use super::explicit::{Control, Run, Taken, value};
use super::root::root;

/// Local error allowed in each step of the solver, as a share of the temperature change of the stage.
const STEP_TOLERANCE: f64 = 4e-8;
/// Share of the change that may be left when the body counts as at rest; well above the noise of the solver, below 1e-6.
const AT_REST: f64 = 5e-7;
/// First step of the solver in time constants.
const FIRST_STEP: f64 = 0.05;
/// The same where the logarithm is followed, which hardly bends.
const FIRST_LOGARITHM: f64 = 0.2;
/// Error allowed in a step of the logarithm where next to nothing of the way is left.
const LOGARITHM_TOLERANCE: f64 = 1e-4;
/// Most by which a step may exceed the one before it.
const GROWTH: f64 = 10.0;
/// Steps, accepted or not, after which a stage is given up; a long soak takes about 60.
const MOST_STEPS: usize = 5_000;
/// Share of a step to which a passing of a temperature is located.
const SHARE_TOLERANCE: f64 = 1e-13;
/// Smaller changes than this are none, K.
const NO_CHANGE_K: f64 = 1e-9;
/// Smallest change that the tolerance refers to, K; below it the tolerance would reach the last digit of a temperature.
const SMALLEST_SCALE_K: f64 = 1e-3;

/// Temperature of one stage against the time since its beginning (s, K).
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Track {
    /// No change.
    Still { at: f64 },
    /// Exponential approach from `from` to `to`.
    Exponential { from: f64, to: f64, time_constant: f64 },
    /// Steps of the solver in temperatures; after the last one the body is at rest.
    Steps(Vec<Step>),
    /// Steps of the solver in `ln((T - to) / (from - to))`; after the last one the body is at rest.
    Approach { from: f64, to: f64, steps: Vec<Step> },
}

/// One accepted step: what is followed as a quartic of the share of the step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Step {
    begin: f64,
    width: f64,
    end: f64,
    coefficients: [f64; 5],
}

/// What a stage runs to: a temperature on the way to the limit, or the time alone.
#[derive(Clone, Copy, Debug)]
pub(super) struct Goal {
    pub(super) temperature: Option<f64>,
    /// Longest time, s; may be infinite when there is a temperature.
    pub(super) longest: f64,
}

impl Track {
    /// Follows the balance from `start` to the goal. Gives the track and, when there is a goal temperature, the time
    /// at which it is passed; `None` then means that the longest time came first.
    pub(super) fn follow(balance: &Balance, start: f64, goal: Goal) -> Result<(Self, Option<f64>), ThermalError> {
        let limit = balance.limit();
        let track = if (limit - start).abs() < NO_CHANGE_K {
            Track::Still { at: start }
        } else if balance.is_linear() {
            Track::Exponential { from: start, to: limit, time_constant: balance.time_constant(start) }
        } else if balance.is_heated() {
            Track::Steps(steps(balance, start, limit, goal)?)
        } else {
            Track::Approach { from: start, to: limit, steps: approach(balance, start, limit, goal)? }
        };
        let passed = goal.temperature.and_then(|target| track.time_of(target));
        Ok((track, passed.filter(|&time| time <= goal.longest)))
    }

    /// Temperature at a time since the beginning of the stage.
    pub(super) fn at(&self, time: f64) -> f64 {
        match self {
            Track::Still { at } => *at,
            Track::Exponential { from, to, time_constant } => to + (from - to) * (-time / time_constant).exp(),
            Track::Steps(steps) => read(steps, time),
            Track::Approach { from, to, steps } => to + (from - to) * read(steps, time).exp(),
        }
    }

    /// Time at which the temperature is passed, if it is.
    pub(super) fn time_of(&self, target: f64) -> Option<f64> {
        match self {
            Track::Still { at } => ((at - target).abs() < NO_CHANGE_K).then_some(0.0),
            Track::Exponential { from, to, time_constant } => {
                let left = (target - to) / (from - to);
                (left > 0.0 && left <= 1.0).then(|| -time_constant * left.ln())
            }
            Track::Steps(steps) => steps.iter().find_map(|step| step.time_of(target)),
            Track::Approach { from, to, steps } => {
                let left = (target - to) / (from - to);
                if left > 0.0 { steps.iter().find_map(|step| step.time_of(left.ln())) } else { None }
            }
        }
    }
}

/// What the steps have come to at a time since the beginning of the stage.
fn read(steps: &[Step], time: f64) -> f64 {
    let after = steps.partition_point(|step| step.begin <= time);
    // The first step begins at zero, so there is always one at or before the time.
    let step = &steps[after.saturating_sub(1)];
    step.at((time - step.begin) / step.width)
}

impl Step {
    fn new(Taken { begin, width, end, quartics }: &Taken<1>) -> Self {
        Self { begin: *begin, width: *width, end: end[0], coefficients: quartics[0] }
    }

    fn still(at: f64) -> Self {
        Self { begin: 0.0, width: 1.0, end: at, coefficients: [at, 0.0, 0.0, 0.0, 0.0] }
    }

    fn at(&self, share: f64) -> f64 {
        if share >= 1.0 {
            return self.end;
        }
        value(&self.coefficients, share)
    }

    fn time_of(&self, target: f64) -> Option<f64> {
        let (below, above) = (self.coefficients[0] - target, self.end - target);
        if below.abs() < f64::MIN_POSITIVE {
            Some(self.begin)
        } else if below * above > 0.0 {
            None
        } else {
            Some(self.begin + self.width * root(|share| self.at(share) - target, (0.0, 1.0), SHARE_TOLERANCE))
        }
    }
}

/// Steps of the explicit pair until the goal is met or the body is at rest.
fn steps(balance: &Balance, start: f64, limit: f64, goal: Goal) -> Result<Vec<Step>, ThermalError> {
    let change = expected_change(balance, start, limit, goal);
    let rate = balance.rate(start);
    let first = (FIRST_STEP * change / rate.abs()).min(goal.longest);
    if first <= 0.0 {
        return Ok(vec![Step::still(start)]);
    }
    let mut steps = Vec::with_capacity(48);
    let control = Control { tolerance: STEP_TOLERANCE * change, growth: GROWTH, most_steps: MOST_STEPS };
    let mut run = Run::new(control, 0.0, ([start], [rate]), first);
    let rates = |state: &[f64; 1]| [balance.rate(state[0])];
    while goal.longest - run.time() > f64::EPSILON * goal.longest.min(f64::MAX) {
        let Some(taken) = run.step(&rates, goal.longest) else {
            return Err(ThermalError::NotFollowed { reached_s: run.time() });
        };
        steps.push(Step::new(&taken));
        let to = taken.end[0];
        let passed = goal.temperature.is_some_and(|target| (to - target) * (start - target) <= 0.0);
        if passed || (to - limit).abs() <= AT_REST * change {
            break;
        }
        balance.check_covered(to)?;
    }
    Ok(steps)
}

/// The same for a body that nothing heats, in the logarithm of what is left of its way to the limit.
fn approach(balance: &Balance, start: f64, limit: f64, goal: Goal) -> Result<Vec<Step>, ThermalError> {
    let change = expected_change(balance, start, limit, goal);
    let whole = start - limit;
    let rates = |left: &[f64; 1]| [-balance.pace(limit + whole * left[0].exp())];
    let first = (FIRST_LOGARITHM * balance.time_constant(start)).min(goal.longest);
    if first <= 0.0 {
        return Ok(vec![Step::still(0.0)]);
    }
    // An error of the logarithm is one of the temperature times what is left of the way.
    let tolerance = |left: f64| (STEP_TOLERANCE * change / (whole * left).abs()).min(LOGARITHM_TOLERANCE);
    let control = Control { tolerance: tolerance(1.0), growth: GROWTH, most_steps: MOST_STEPS };
    let mut steps = Vec::with_capacity(24);
    let mut run = Run::new(control, 0.0, ([0.0], rates(&[0.0])), first);
    while goal.longest - run.time() > f64::EPSILON * goal.longest.min(f64::MAX) {
        let Some(taken) = run.step(&rates, goal.longest) else {
            return Err(ThermalError::NotFollowed { reached_s: run.time() });
        };
        steps.push(Step::new(&taken));
        let left = taken.end[0].exp();
        let to = limit + whole * left;
        let passed = goal.temperature.is_some_and(|target| (to - target) * (start - target) <= 0.0);
        if passed || (to - limit).abs() <= AT_REST * change {
            break;
        }
        balance.check_covered(to)?;
        run.hold_to(tolerance(left));
    }
    Ok(steps)
}

/// Change of temperature that the tolerance refers to: to the goal or the limit, or what the time allows at most.
fn expected_change(balance: &Balance, start: f64, limit: f64, goal: Goal) -> f64 {
    let whole = (limit - start).abs();
    match goal.temperature {
        Some(target) => whole.min((target - start).abs()).max(SMALLEST_SCALE_K),
        None => whole.min(balance.rate(start).abs() * goal.longest).max(SMALLEST_SCALE_K),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_is_read_at_its_temperatures_and_at_its_times() {
        let f = |t: f64| (-t).exp();
        let control = Control { tolerance: 1.0, growth: 1.0, most_steps: 1 };
        let taken = Run::new(control, 1.0, ([f(1.0)], [-f(1.0)]), 0.5).step(&|y| [-y[0]], 2.0).unwrap();
        let step = Step::new(&taken);
        for share in [0.0, 0.3, 0.5, 0.8, 1.0] {
            assert!((step.at(share) - f(1.0 + 0.5 * share)).abs() < 1e-5);
        }
        assert!((step.time_of(f(1.2)).unwrap() - 1.2).abs() < 1e-4);
        assert_eq!(step.time_of(f(2.0)), None);
    }
}
