//! Root of a function between two places where its sign differs.

/// Longest search; halving alone needs about 60 rounds for the full precision of an f64.
const ROUNDS: usize = 200;

/// Place between `low` and `high` where `f` is zero, to within `tolerance`; `f` must have different signs at the ends.
///
/// Inverse quadratic interpolation where that is safe, halving where it is not, so it cannot leave the bracket.
///
/// **Source**: T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear
/// function without using derivatives", Advances in Engineering Software 28 (1997) 145-149 (from memory).
pub(super) fn root(f: impl Fn(f64) -> f64, (low, high): (f64, f64), tolerance: f64) -> f64 {
    let (mut a, mut b) = (high, low);
    let (mut fa, mut fb) = (f(a), f(b));
    let mut t = 0.5;
    for _ in 0..ROUNDS {
        let x = a + t * (b - a);
        let fx = f(x);
        let dropped = if (fx < 0.0) == (fa < 0.0) {
            (a, fa)
        } else {
            let far = (b, fb);
            (b, fb) = (a, fa);
            far
        };
        (a, fa) = (x, fx);
        let (best, residual) = if fa.abs() < fb.abs() { (a, fa) } else { (b, fb) };
        let narrow = (f64::EPSILON * best.abs() + 0.5 * tolerance) / (b - a).abs();
        if narrow > 0.5 || residual.abs() < f64::MIN_POSITIVE {
            return best;
        }
        t = next_share((a, fa), (b, fb), dropped).clamp(narrow, 1.0 - narrow);
    }
    0.5 * (a + b)
}

/// Where to look next between a (0) and b (1); c is the end that was dropped last.
fn next_share((a, fa): (f64, f64), (b, fb): (f64, f64), (c, fc): (f64, f64)) -> f64 {
    let xi = (a - b) / (c - b);
    let phi = (fa - fb) / (fc - fb);
    if phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi {
        fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
    } else {
        0.5
    }
}

#[cfg(test)]
mod tests {
    use super::root;
    use std::cell::Cell;

    #[test]
    fn roots_of_smooth_steep_and_flat_functions_are_found() {
        assert!((root(|x| x * x - 2.0, (0.0, 2.0), 1e-14) - 2.0_f64.sqrt()).abs() < 1e-12);
        assert!((root(|x| x.powi(9), (-1.0, 1.7), 1e-12)).abs() < 1e-6);
        assert!((root(|x| (-50.0 * x).exp() - 0.5, (0.0, 10.0), 1e-14) - 2.0_f64.ln() / 50.0).abs() < 1e-12);
        assert!((root(|x| if x < 0.3 { -1.0 } else { 1.0 }, (0.0, 1.0), 1e-12) - 0.3).abs() < 1e-11);
    }

    /// Halving takes 47 to 50 evaluations for these; a search that has lost its interpolation takes as many.
    #[test]
    fn smooth_functions_take_a_third_of_the_evaluations_of_halving() {
        let counted = |f: &dyn Fn(f64) -> f64, ends: (f64, f64), zero: f64| {
            let count = Cell::new(0_u32);
            let asked = |x: f64| {
                count.set(count.get() + 1);
                f(x)
            };
            let found = root(asked, ends, 1e-14);
            assert!((found - zero).abs() < 1e-12, "{found} for {zero}");
            count.get()
        };
        let takes = [
            counted(&|x| x * x - 2.0, (0.0, 2.0), 2.0_f64.sqrt()),
            counted(&|x| x.powi(3) - 5.0, (0.0, 3.0), 5.0_f64.cbrt()),
            counted(&|x: f64| x.exp() - 3.0, (-1.0, 4.0), 3.0_f64.ln()),
            counted(&|x: f64| x.cos() - x, (0.0, 1.5), 0.739_085_133_215_160_6),
            counted(&|x: f64| (-x).exp() - 0.1, (0.0, 9.0), 10.0_f64.ln()),
        ];
        assert!(takes.iter().all(|takes| *takes <= 16), "{takes:?}");
    }
}
