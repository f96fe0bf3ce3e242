//! Steps of an explicit Runge-Kutta pair of order 5 and 4, with a quartic through each.
//!
//! Only what changes by itself goes in here: no rate depends on the time. States are arrays, so that a step needs no heap.
//!
//! **Source**: J. R. Dormand, P. J. Prince, "A family of embedded Runge-Kutta formulae", J. Comput. Appl. Math. 6 (1980)
//! 19-26; the quartic after E. Hairer, S. P. Nørsett, G. Wanner, "Solving Ordinary Differential Equations I", 2nd ed.,
//! section II.6, with the coefficients of their published program (from memory; orders and sums are held in the tests).

/// Weights of the stages before in the argument of each stage; those of the last are the weights of the result.
const A2: [f64; 1] = [1.0 / 5.0];
const A3: [f64; 2] = [3.0 / 40.0, 9.0 / 40.0];
const A4: [f64; 3] = [44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0];
const A5: [f64; 4] = [19372.0 / 6561.0, -25360.0 / 2187.0, 64448.0 / 6561.0, -212.0 / 729.0];
const A6: [f64; 5] = [9017.0 / 3168.0, -355.0 / 33.0, 46732.0 / 5247.0, 49.0 / 176.0, -5103.0 / 18656.0];
/// The second stage has no part in the result.
const A7: [f64; 5] = [35.0 / 384.0, 500.0 / 1113.0, 125.0 / 192.0, -2187.0 / 6784.0, 11.0 / 84.0];

/// Weights of the stages but the second in the estimate of the error.
const E: [f64; 6] = [71.0 / 57600.0, -71.0 / 16695.0, 71.0 / 1920.0, -17253.0 / 339_200.0, 22.0 / 525.0, -1.0 / 40.0];

/// Weights of the same in the bulge of the quartic.
const D: [f64; 6] = [
    -12_715_105_075.0 / 11_282_082_432.0,
    87_487_479_700.0 / 32_700_410_799.0,
    -10_690_763_975.0 / 1_880_347_072.0,
    701_980_252_875.0 / 199_316_789_632.0,
    -1_453_857_185.0 / 822_651_844.0,
    69_997_945.0 / 29_380_423.0,
];

/// Safety and least factor on the step.
const SAFETY: f64 = 0.9;
const LEAST_FACTOR: f64 = 0.2;

/// What the steps are held to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Control {
    /// Error allowed in each step, in the unit of the state: the root of the mean square over its numbers.
    pub(super) tolerance: f64,
    /// Most by which a step may exceed the one before it.
    pub(super) growth: f64,
    /// Steps, accepted or not, after which it is given up.
    pub(super) most_steps: usize,
}

/// An accepted step.
#[derive(Clone, Copy, Debug)]
pub(super) struct Taken<const N: usize> {
    pub(super) begin: f64,
    pub(super) width: f64,
    pub(super) end: [f64; N],
    /// Each number of the state as a quartic of the share of the step.
    pub(super) quartics: [[f64; 5]; N],
}

/// A run on its way.
#[derive(Debug)]
pub(super) struct Run<const N: usize> {
    control: Control,
    time: f64,
    state: [f64; N],
    rate: [f64; N],
    /// Time, state and rate before the last step.
    before: (f64, [f64; N], [f64; N]),
    /// Width of the next step, s.
    width: f64,
    tried: usize,
}

impl<const N: usize> Run<N> {
    /// From a time with a state and its rate, by a first step of some width (s).
    pub(super) fn new(control: Control, time: f64, (state, rate): ([f64; N], [f64; N]), width: f64) -> Self {
        Self { control, time, state, rate, before: (time, state, rate), width, tried: 0 }
    }

    /// Time of the state, s.
    pub(super) fn time(&self) -> f64 {
        self.time
    }

    /// Holds the steps to another tolerance from here on.
    pub(super) fn hold_to(&mut self, tolerance: f64) {
        self.control.tolerance = tolerance;
    }

    /// Takes the last step back; the next one is as wide as this (s).
    pub(super) fn back(&mut self, width: f64) {
        (self.time, self.state, self.rate) = self.before;
        self.width = width;
    }

    /// The next step, no farther than to `until`; none when too many have been tried or none is short enough.
    pub(super) fn step(&mut self, rates: &impl Fn(&[f64; N]) -> [f64; N], until: f64) -> Option<Taken<N>> {
        let mut growth = self.control.growth;
        while self.tried < self.control.most_steps {
            self.tried += 1;
            let width = self.width.min(until - self.time);
            let tried = Trial::new(rates, (&self.state, self.rate), width);
            let error = tried.error / self.control.tolerance;
            let factor = SAFETY * inverse_fifth_root(error);
            if error <= 1.0 {
                let step =
                    Taken { begin: self.time, width, end: tried.end, quartics: tried.quartics(&self.state, width) };
                self.before = (self.time, self.state, self.rate);
                self.time += width;
                self.state = tried.end;
                self.rate = tried.stages[5];
                // No error at all, as at rest, makes the factor infinite.
                self.width = width * factor.clamp(LEAST_FACTOR, growth);
                return Some(step);
            }
            // An error that is no number makes the step as much shorter as may be.
            self.width = width * if factor > LEAST_FACTOR { factor.min(SAFETY) } else { LEAST_FACTOR };
            if self.time + self.width <= self.time {
                return None;
            }
            growth = 1.0;
        }
        None
    }
}

/// A step that was tried.
struct Trial<const N: usize> {
    /// All but the second; the last is the rate at the end.
    stages: [[f64; N]; 6],
    end: [f64; N],
    error: f64,
}

impl<const N: usize> Trial<N> {
    #[inline]
    fn new(rates: &impl Fn(&[f64; N]) -> [f64; N], (start, k1): (&[f64; N], [f64; N]), width: f64) -> Self {
        let k2 = rates(&along(start, width, &A2, [&k1]));
        let k3 = rates(&along(start, width, &A3, [&k1, &k2]));
        let k4 = rates(&along(start, width, &A4, [&k1, &k2, &k3]));
        let k5 = rates(&along(start, width, &A5, [&k1, &k2, &k3, &k4]));
        let k6 = rates(&along(start, width, &A6, [&k1, &k2, &k3, &k4, &k5]));
        let end = along(start, width, &A7, [&k1, &k3, &k4, &k5, &k6]);
        let stages = [k1, k3, k4, k5, k6, rates(&end)];
        let squares: f64 = along(&[0.0; N], width, &E, stages.each_ref()).iter().map(|off| off * off).sum();
        #[allow(clippy::cast_precision_loss)]
        let error = (squares / N as f64).sqrt();
        Self { stages, end, error }
    }

    /// The quartics `y0 + s (Δ + u (a + s (b + u c)))` of the share s and `u = 1 - s`, in rising powers of s.
    fn quartics(&self, start: &[f64; N], width: f64) -> [[f64; 5]; N] {
        let bulge = along(&[0.0; N], width, &D, self.stages.each_ref());
        std::array::from_fn(|i| {
            let rise = self.end[i] - start[i];
            let a = width * self.stages[0][i] - rise;
            let b = rise - width * self.stages[5][i] - a;
            let c = bulge[i];
            [start[i], rise + a, b + c - a, -b - 2.0 * c, c]
        })
    }
}

/// From a state along the weighted sum of some rates.
#[inline]
fn along<const N: usize, const M: usize>(
    start: &[f64; N],
    width: f64,
    weights: &[f64; M],
    rates: [&[f64; N]; M],
) -> [f64; N] {
    let mut end = *start;
    for (i, number) in end.iter_mut().enumerate() {
        let mut sum = 0.0;
        for k in 0..M {
            sum += weights[k] * rates[k][i];
        }
        *number += width * sum;
    }
    end
}

/// `x^(-1/5)` to 1e-4 of it, for widths of steps: Newton's iteration from what a fifth of the exponent gives.
///
/// A general power takes as long as a rate of the balance, and its last digit differs between mathematics libraries.
/// **Source**: the bits of a double as a straight approximation of its logarithm, and Newton's method (from memory).
fn inverse_fifth_root(x: f64) -> f64 {
    /// Six fifths of the bits of 1.0.
    const BITS_OF_ONE: u64 = (1.0_f64.to_bits() / 5) * 6;
    if x.is_nan() {
        return x;
    }
    if x < f64::MIN_POSITIVE {
        return f64::INFINITY;
    }
    let mut y = f64::from_bits(BITS_OF_ONE - x.to_bits() / 5);
    for _ in 0..3 {
        let squared = y * y;
        y *= 1.2 - 0.2 * x * squared * squared * y;
    }
    y
}

/// A quartic, in rising powers, at a share of its step.
#[inline]
pub(super) fn value([c0, c1, c2, c3, c4]: &[f64; 5], share: f64) -> f64 {
    c0 + share * (c1 + share * (c2 + share * (c3 + share * c4)))
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOOSE: Control = Control { tolerance: f64::INFINITY, growth: 1.0, most_steps: 1000 };

    /// `y' = -y²` and an oscillation, by steps of even width: error at the end, and the largest inside the steps.
    fn errors(steps: u32) -> (f64, f64) {
        let rates = |y: &[f64; 3]| [-y[0] * y[0], y[2], -y[1]];
        let h = 1.0 / f64::from(steps);
        let exact = |t: f64| [1.0 / (1.0 + t), t.sin(), t.cos()];
        let off = |one: [f64; 3], t: f64| {
            one.iter().zip(exact(t)).map(|(one, other)| (one - other).abs()).fold(0.0_f64, f64::max)
        };
        let mut run = Run::new(LOOSE, 0.0, (exact(0.0), rates(&exact(0.0))), h);
        let (mut inside, mut end) = (0.0_f64, 0.0);
        for _ in 0..steps {
            run.width = h;
            let step = run.step(&rates, f64::INFINITY).unwrap();
            for share in [0.2, 0.5, 0.7] {
                inside = inside.max(off(step.quartics.map(|quartic| value(&quartic, share)), step.begin + share * h));
            }
            end = off(step.end, run.time());
            assert!(step.quartics.iter().zip(step.end).all(|(quartic, end)| (value(quartic, 1.0) - end).abs() < 1e-14));
        }
        (end, inside)
    }

    #[test]
    fn the_order_is_five_and_that_of_the_quartic_four() {
        let (coarse, fine) = (errors(8), errors(16));
        let order = |coarse: f64, fine: f64| (coarse / fine).log2();
        assert!(order(coarse.0, fine.0) > 4.7, "{coarse:?} {fine:?}");
        assert!(order(coarse.1, fine.1) > 4.4, "{coarse:?} {fine:?}");
    }

    #[test]
    fn the_estimate_is_of_order_five_as_an_error_of_the_fourth_order_is() {
        assert!(E.iter().sum::<f64>().abs() < 1e-16 && (A7.iter().sum::<f64>() - 1.0).abs() < 1e-15);
        let rates = |y: &[f64; 1]| [-y[0] * y[0]];
        let error = |h: f64| Trial::new(&rates, (&[1.0], [-1.0]), h).error;
        let order = (error(0.1) / error(0.05)).log2();
        assert!((4.7..5.3).contains(&order), "{order}");
    }

    #[test]
    fn steps_keep_to_the_tolerance_and_end_where_they_are_told_to() {
        let rates = |y: &[f64; 1]| [-y[0]];
        let control = Control { tolerance: 1e-8, growth: 5.0, most_steps: 1000 };
        let mut run = Run::new(control, 0.0, ([1.0], [-1.0]), 1.0);
        let mut steps = 0;
        while run.time() < 3.0 {
            let step = run.step(&rates, 3.0).unwrap();
            assert!((step.end[0] - (-run.time()).exp()).abs() < 1e-7);
            steps += 1;
        }
        assert!((run.time() - 3.0).abs() < 1e-15 && (10..100).contains(&steps), "{steps}");
    }

    #[test]
    fn a_step_that_is_taken_back_is_as_if_it_had_not_been() {
        let rates = |y: &[f64; 1]| [-y[0]];
        let new = || Run::new(LOOSE, 0.0, ([1.0], [-1.0]), 0.5);
        let (mut one, mut other) = (new(), new());
        one.step(&rates, 9.0).unwrap();
        one.back(0.2);
        other.width = 0.2;
        let (one, other) = (one.step(&rates, 9.0).unwrap(), other.step(&rates, 9.0).unwrap());
        assert_eq!((one.end, one.begin.to_bits(), one.width.to_bits()), (other.end, 0, 0.2_f64.to_bits()));
    }

    #[test]
    fn the_fifth_root_is_near_enough_for_a_width() {
        for i in -600..600 {
            let x = 1.37_f64.powi(i);
            let ratio = inverse_fifth_root(x) / x.powf(-0.2);
            assert!((ratio - 1.0).abs() < 1e-4, "{x:e} {ratio}");
        }
        assert!(inverse_fifth_root(0.0) > f64::MAX && inverse_fifth_root(f64::NAN).is_nan());
        assert!(inverse_fifth_root(f64::INFINITY) < LEAST_FACTOR);
    }

    #[test]
    fn what_is_no_number_is_given_up() {
        let mut run = Run::new(Control { tolerance: 1e-8, ..LOOSE }, 1.0, ([1.0], [f64::NAN]), 1.0);
        assert!(run.step(&|_| [f64::NAN], 3.0).is_none());
    }
}
