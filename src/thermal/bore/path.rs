//! Temperatures of the pair against time: the steps of the adaptive solver.

use super::balance::{Mode, Pair, Phase, Temperatures};
use crate::thermal::ThermalError;
use crate::thermal::explicit::{Control, Run, Taken, value};
use crate::thermal::root::root;

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
/// Most by which a step may exceed the one before it; tenfold lets the second step run too far.
const GROWTH: f64 = 3.0;
/// Steps, accepted or not, after which a path is given up.
const MOST_STEPS: usize = 20_000;
/// A grip that lies within the first share of its step is looked for once more, with a step that ends a little beyond it. With
/// the first step alone it would come by up to a half per cent too early or too late, with the second by 6e-5 of its time (400
/// random pairs against a tolerance of 1e-10).
const NEAR_ITS_END: f64 = 0.9;
const BEYOND: f64 = 1.05;
/// Nearer to the beginning of its step than this share, it is at the beginning.
const SMALLEST_SHARE: f64 = 1e-9;
/// Share of a step to which an event is located.
const SHARE_TOLERANCE: f64 = 1e-12;
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

    /// Steps in one mode.
    fn advance<F>(&mut self, stretch: &Stretch<'_, '_, F>, mode: Mode, scale: f64) -> Result<Ended, ThermalError>
    where
        F: Fn(&Temperatures) -> f64,
    {
        let Stretch { pair, done, until } = stretch;
        let phase = Phase { pair, mode, tables: pair.tables() };
        let start = if mode == Mode::Together { [pair.mean(&self.state), 0.0] } else { self.state };
        let rate = phase.rates(&start);
        let first = FIRST_STEP * scale / largest(&rate).max(f64::MIN_POSITIVE);
        let control = Control { tolerance: STEP_TOLERANCE * scale, growth: GROWTH, most_steps: MOST_STEPS };
        let mut run = Run::new(control, self.time, (start, rate), first);
        let rates = |state: &Temperatures| phase.rates(state);
        while until - run.time() > f64::EPSILON * until {
            let Some(taken) = run.step(&rates, *until) else {
                return Err(ThermalError::NotFollowed { reached_s: run.time() });
            };
            let step = Step::new(&phase, &taken);
            // It begins where the one before it ended, not yet done; one of the mean begins beside that.
            let passed =
                if mode == Mode::Together { step.first_below(0.0, done) } else { step.first_below_after(0.0, done) };
            if let Some(share) = passed {
                // Far beyond the grip the law of the gap is no law, and bends the whole step.
                if mode == Mode::Open && (SMALLEST_SHARE..NEAR_ITS_END).contains(&share) {
                    run.back(share * taken.width * BEYOND);
                    continue;
                }
                self.add(step.up_to(share));
                return Ok(Ended::Done);
            }
            self.add(step);
            pair.check_covered(&self.state)?;
            if at_rest(pair, &self.state, scale) {
                return Ok(Ended::TimeUp);
            }
            if mode == Mode::Open && together(&phase, &self.state, scale) {
                return Ok(Ended::Together);
            }
        }
        Ok(Ended::TimeUp)
    }

    fn add(&mut self, step: Step) {
        self.state = step.end;
        self.time = step.begin + step.width;
        self.steps.push(step);
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
    /// A step of the solver in temperatures: that of the mean alone is given the difference that the losses keep up.
    fn new(phase: &Phase, &Taken { begin, width, end, quartics }: &Taken<2>) -> Self {
        let mode = phase.mode;
        if mode != Mode::Together {
            return Self { begin, width, mode, end, coefficients: quartics };
        }
        let means = [quartics[0][0], value(&quartics[0], 0.5), end[0]];
        let both = means.map(|mean| phase.pair.together(mean, &phase.tables).temperatures);
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
        if f(&self.at(first)) <= 0.0 { Some(first) } else { self.first_below_after(first, f) }
    }

    /// The same where `f` is known to be positive at `first`.
    fn first_below_after(&self, first: f64, f: &impl Fn(&Temperatures) -> f64) -> Option<f64> {
        let value = |share: f64| f(&self.at(share));
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
fn together(Phase { pair, tables, .. }: &Phase, t: &Temperatures, scale: f64) -> bool {
    let difference = t[1] - t[0];
    if difference.abs() > TOGETHER_AT_MOST * scale {
        return false;
    }
    let mean = pair.mean(t);
    let kept_up = pair.together(mean, tables);
    let [inner, outer] = kept_up.temperatures;
    let slow = (mean - pair.shop()).abs() > EVENING_AT_LEAST * pair.evening_time(t) * kept_up.rate.abs();
    slow && (difference - (outer - inner)).abs() <= TOGETHER_WITHIN * scale
}
