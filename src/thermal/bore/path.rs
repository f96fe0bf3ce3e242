//! Temperatures of the pair against time: the steps of the adaptive solver.

use super::balance::{Mode, Pair, Phase, Temperatures};
use crate::thermal::ThermalError;
use crate::thermal::root::root;
use differential_equations::methods::ExplicitRungeKutta;
use differential_equations::ode::OrdinaryNumericalMethod;
use differential_equations::status::Status;

/// Local error allowed in each step, as a share of the largest difference of temperature at the beginning.
const STEP_TOLERANCE: f64 = 1e-6;
/// Share of that difference that may be left when nothing happens any more.
const AT_REST: f64 = 1e-5;
/// Share of that difference by which the parts may differ when only their mean is followed on.
const TOGETHER_AT_MOST: f64 = 0.01;
/// Share of it by which their difference may be off from the one that the losses keep up.
const TOGETHER_WITHIN: f64 = 1e-4;
/// How many times slower than the evening of the parts the way to the temperature of the shop must be then.
const EVENING_AT_LEAST: f64 = 20.0;
/// First step as a share of the time in which the faster part would use up that difference.
const FIRST_STEP: f64 = 0.05;
/// Most by which a step may exceed the one before it; the crate's tenfold lets the second step run too far.
const GROWTH: f64 = 3.0;
/// Steps, accepted or not, after which a path is given up.
const MOST_STEPS: usize = 20_000;
/// Share of a step to which an event is located.
const SHARE_TOLERANCE: f64 = 1e-12;
/// Share of a step at which its third slope is taken, `1/2 + √3/6`, where that says most.
const THIRD: f64 = 0.788_675_134_594_813;
/// Smallest difference that the tolerance refers to, K.
const SMALLEST_SCALE_K: f64 = 1e-3;

/// One accepted step: both temperatures as quartics of the share of the step.
#[derive(Clone, Copy, Debug)]
pub(super) struct Step {
    pub(super) begin: f64,
    pub(super) width: f64,
    pub(super) mode: Mode,
    end: Temperatures,
    coefficients: [[f64; 5]; 2],
}

/// The steps so far, and where they have come to.
#[derive(Clone, Debug)]
pub(super) struct Path {
    steps: Vec<Step>,
    start: Temperatures,
    time: f64,
    state: Temperatures,
}

/// A stretch of the path: until `done` turns zero or negative, or the time is up.
pub(super) struct Stretch<'a, 'b, F: Fn(&Temperatures) -> f64> {
    pub(super) pair: &'b Pair<'a>,
    /// Positive until the stretch is over.
    pub(super) done: F,
    /// End of the longest time, s from the start of the path.
    pub(super) until: f64,
}

/// How a stretch, or the part of it in one mode, ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Ended {
    Done,
    TimeUp,
    /// The parts have come together, see [`Mode::Together`].
    Together,
}

impl Path {
    pub(super) fn new(start: Temperatures) -> Self {
        Self { steps: Vec::with_capacity(64), start, time: 0.0, state: start }
    }

    /// Time (s) and temperatures at the end.
    pub(super) fn end(&self) -> (f64, Temperatures) {
        (self.time, self.state)
    }

    pub(super) fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// Temperatures at a time (s) that the caller knows to lie in the path; those of an end beyond it.
    pub(super) fn at(&self, time: f64) -> Temperatures {
        let after = self.steps.partition_point(|step| step.begin <= time);
        match self.steps.get(after.saturating_sub(1)) {
            Some(step) if time < self.time => step.at((time - step.begin) / step.width),
            Some(_) => self.state,
            None => self.start,
        }
    }

    /// First time from `from` on at which `f` is zero or negative at an end or the middle of a step, refined.
    pub(super) fn first_below(&self, from: f64, f: impl Fn(&Temperatures) -> f64) -> Option<f64> {
        let later = self.steps.iter().filter(|step| step.begin + step.width > from);
        later.into_iter().find_map(|step| {
            let first = ((from - step.begin) / step.width).max(0.0);
            step.first_below(first, &f).map(|share| step.begin + share * step.width)
        })
    }

    /// Follows the pair through a stretch, in [`Mode::Open`] or [`Mode::Gripped`] at first; whether it ended before its
    /// time was up.
    pub(super) fn follow<F>(&mut self, stretch: &Stretch<'_, '_, F>, mode: Mode) -> Result<bool, ThermalError>
    where
        F: Fn(&Temperatures) -> f64,
    {
        if (stretch.done)(&self.state) <= 0.0 {
            return Ok(true);
        }
        let scale = scale(stretch.pair, &self.state);
        let mut ended = Ended::TimeUp;
        if self.time < stretch.until && !at_rest(stretch.pair, &self.state, scale) {
            ended = self.advance(stretch, mode, scale)?;
            if ended == Ended::Together {
                ended = self.advance(stretch, Mode::Together, scale)?;
            }
        }
        if ended == Ended::TimeUp {
            self.stay(stretch.until);
        }
        Ok(ended == Ended::Done)
    }

    /// The solver, stepped by hand as for a single body: the crate's own loop reads the clock.
    fn advance<F>(&mut self, stretch: &Stretch<'_, '_, F>, mode: Mode, scale: f64) -> Result<Ended, ThermalError>
    where
        F: Fn(&Temperatures) -> f64,
    {
        let Stretch { pair, done, until } = stretch;
        let given_up = |reached_s: f64| ThermalError::NotFollowed { reached_s };
        let phase = Phase { pair, mode };
        let start = if mode == Mode::Together { [pair.mean(&self.state), 0.0] } else { self.state };
        let mut rates = phase.rates(&start);
        let first = (FIRST_STEP * scale / largest(&rates).max(f64::MIN_POSITIVE)).min(until - self.time);
        let mut solver = ExplicitRungeKutta::dopri5()
            .rtol(0.0)
            .atol(STEP_TOLERANCE * scale)
            .h0(first)
            .max_scale(GROWTH)
            .max_steps(MOST_STEPS);
        solver.init(&phase, self.time, *until, &start).map_err(|_| given_up(self.time))?;
        loop {
            let begun = solver.t();
            let left = until - begun;
            if left <= f64::EPSILON * until {
                return Ok(Ended::TimeUp);
            }
            if solver.h() > left {
                solver.set_h(left);
            }
            solver.step(&phase).map_err(|_| given_up(begun))?;
            if matches!(solver.status(), Status::RejectedStep) {
                continue;
            }
            let ends = [*solver.y_prev(), *solver.y()];
            let slopes = [rates, phase.rates(&ends[1])];
            rates = slopes[1];
            let step = Step::new(&phase, (begun, solver.t() - begun), ends, slopes);
            if self.add(step, done) {
                return Ok(Ended::Done);
            }
            pair.check_covered(&self.state)?;
            if at_rest(pair, &self.state, scale) {
                return Ok(Ended::TimeUp);
            }
            if mode == Mode::Open && together(pair, &self.state, scale) {
                return Ok(Ended::Together);
            }
        }
    }

    /// Adds a step, up to where it makes `done` zero or negative; whether it does.
    fn add(&mut self, step: Step, done: &impl Fn(&Temperatures) -> f64) -> bool {
        let over = step.first_below(0.0, done);
        let step = over.map_or(step, |share| step.up_to(share));
        self.state = step.end;
        self.time = step.begin + step.width;
        self.steps.push(step);
        over.is_some()
    }

    /// Nothing changes any more until this time.
    fn stay(&mut self, until: f64) {
        let width = until - self.time;
        if width > 0.0 {
            let still = self.state.map(|t| [t, 0.0, 0.0, 0.0, 0.0]);
            let step = Step { begin: self.time, width, mode: Mode::Open, end: self.state, coefficients: still };
            self.steps.push(step);
            self.time = until;
        }
    }
}

impl Step {
    /// The step between two states of the solver with their slopes.
    fn new(phase: &Phase, (begin, width): (f64, f64), ends: [Temperatures; 2], slopes: [Temperatures; 2]) -> Self {
        let cubic = |i: usize| cubic(ends.map(|end| end[i]), slopes.map(|slope| slope[i] * width));
        let cubics = [cubic(0), cubic(1)];
        let slope = phase.rates(&cubics.map(|cubic| value(&cubic, THIRD)));
        let quartics = [0, 1].map(|i| with_slope(cubics[i], slope[i] * width));
        let mode = phase.mode;
        if mode != Mode::Together {
            return Self { begin, width, mode, end: ends[1], coefficients: quartics };
        }
        let means = [ends[0][0], value(&quartics[0], 0.5), ends[1][0]];
        let both = means.map(|mean| phase.pair.together(mean).temperatures);
        let part = |i: usize| {
            let off = parabola([0, 1, 2].map(|k| both[k][i] - means[k]));
            std::array::from_fn(|k| quartics[0][k] + off.get(k).unwrap_or(&0.0))
        };
        Self { begin, width, mode, end: both[2], coefficients: [part(0), part(1)] }
    }

    /// The part of the step up to a share of it.
    fn up_to(&self, share: f64) -> Self {
        let shortened = |[c0, c1, c2, c3, c4]: [f64; 5]| {
            let s2 = share * share;
            [c0, c1 * share, c2 * s2, c3 * s2 * share, c4 * s2 * s2]
        };
        let coefficients = self.coefficients.map(shortened);
        Self { width: share * self.width, end: self.at(share), coefficients, ..*self }
    }

    pub(super) fn at(&self, share: f64) -> Temperatures {
        if share >= 1.0 {
            return self.end;
        }
        [value(&self.coefficients[0], share), value(&self.coefficients[1], share)]
    }

    /// First share of the step, from `first` on, at which `f` is no longer positive; seen at the middle or the end.
    fn first_below(&self, first: f64, f: &impl Fn(&Temperatures) -> f64) -> Option<f64> {
        let value = |share: f64| f(&self.at(share));
        if value(first) <= 0.0 {
            return Some(first);
        }
        let mut before = first;
        for share in [0.5 * (1.0 + first), 1.0] {
            if value(share) <= 0.0 {
                return Some(root(value, (before, share), SHARE_TOLERANCE));
            }
            before = share;
        }
        None
    }
}

/// Coefficients in the share of a step of the cubic with these values and slopes at the two ends.
fn cubic([y0, y1]: [f64; 2], [d0, d1]: [f64; 2]) -> [f64; 5] {
    let rise = y1 - y0;
    [y0, d0, 3.0 * rise - 2.0 * d0 - d1, d0 + d1 - 2.0 * rise, 0.0]
}

/// The quartic with the ends of a cubic and a slope at [`THIRD`].
///
/// The slope is that of the balance at the cubic's own value there, which makes it one order better than the cubic. The
/// crate's own dense output is not used: for this pair of formulas it comes out as the cubic.
///
/// **Source**: E. Hairer, S. P. Nørsett, G. Wanner, "Solving Ordinary Differential Equations I", section II.6,
/// bootstrapping (from memory).
fn with_slope(cubic: [f64; 5], slope: f64) -> [f64; 5] {
    let [c0, c1, c2, c3, _] = cubic;
    let s = THIRD;
    let off = slope - (c1 + s * (2.0 * c2 + s * 3.0 * c3));
    // s² (1 - s)² vanishes with its slope at both ends; its own slope is 2 s (1 - s) (1 - 2 s).
    let bulge = off / (2.0 * s * (1.0 - s) * (1.0 - 2.0 * s));
    [c0, c1, c2 + bulge, c3 - 2.0 * bulge, bulge]
}

fn value([c0, c1, c2, c3, c4]: &[f64; 5], share: f64) -> f64 {
    c0 + share * (c1 + share * (c2 + share * (c3 + share * c4)))
}

/// Coefficients of the parabola through the values at 0, 1/2 and 1.
fn parabola([y0, middle, y1]: [f64; 3]) -> [f64; 3] {
    [y0, 4.0 * middle - 3.0 * y0 - y1, 2.0 * (y0 + y1) - 4.0 * middle]
}

fn largest(values: &Temperatures) -> f64 {
    values[0].abs().max(values[1].abs())
}

/// The largest difference of temperature that drives anything.
fn scale(pair: &Pair, t: &Temperatures) -> f64 {
    let to_shop = if pair.loses() { largest(&t.map(|t| t - pair.shop())) } else { 0.0 };
    to_shop.max((t[0] - t[1]).abs()).max(SMALLEST_SCALE_K)
}

/// Whether both parts are where they would come to.
fn at_rest(pair: &Pair, t: &Temperatures, scale: f64) -> bool {
    let near = AT_REST * scale;
    let even = (t[0] - t[1]).abs() <= near;
    even && (!pair.loses() || largest(&t.map(|t| t - pair.shop())) <= near)
}

/// Whether the difference between the parts is the one that their losses keep up, small, and quick to follow them.
fn together(pair: &Pair, t: &Temperatures, scale: f64) -> bool {
    let difference = t[1] - t[0];
    if difference.abs() > TOGETHER_AT_MOST * scale {
        return false;
    }
    let mean = pair.mean(t);
    let kept_up = pair.together(mean);
    let [inner, outer] = kept_up.temperatures;
    let slow = (mean - pair.shop()).abs() > EVENING_AT_LEAST * pair.evening_time(t) * kept_up.rate.abs();
    slow && (difference - (outer - inner)).abs() <= TOGETHER_WITHIN * scale
}
