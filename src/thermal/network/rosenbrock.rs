//! One step of a linearly implicit Runge-Kutta pair of order 4 and 3.
//!
//! Contacts and boiling answer hundreds of times faster than a part warms up. An explicit pair is then held to steps
//! shorter than the fastest of these; this pair is not (it is stiffly accurate), and three bodies cost some twenty steps.
//!
//! **Source**: method RODAS of E. Hairer, G. Wanner, "Solving Ordinary Differential Equations II", 2nd ed., section IV.7,
//! with the coefficients of their published program (from memory; order, stiff accuracy and dense output are held against
//! exact solutions in the tests).

/// γ, the share of the step in the matrix `1/(γ h) - J`.
const GAMMA: f64 = 0.25;

/// Weights of the stages before in the argument of each stage.
const A: [[f64; 4]; 5] = [
    [0.0; 4],
    [1.544, 0.0, 0.0, 0.0],
    [0.946_678_528_081_582_6, 0.255_701_169_898_328_4, 0.0, 0.0],
    [3.314_825_187_068_521, 2.896_124_015_972_201, 0.998_641_913_997_781_7, 0.0],
    [1.221_224_509_226_641, 6.019_134_481_288_629, 12.537_083_329_320_87, -0.687_886_036_105_895],
];

/// Weights of the stages before in the right side of each stage, over the step.
const C: [[f64; 5]; 6] = [
    [0.0; 5],
    [-5.6688, 0.0, 0.0, 0.0, 0.0],
    [-2.430_093_356_833_875, -0.206_359_915_709_191_5, 0.0, 0.0, 0.0],
    [-0.107_352_905_815_137_5, -9.594_562_251_023_355, -20.470_286_148_096_16, 0.0, 0.0],
    [7.496_443_313_967_647, -10.246_804_314_643_52, -33.999_903_528_199_05, 11.708_908_932_061_6, 0.0],
    [
        8.083_246_795_921_522,
        -7.981_132_988_064_893,
        -31.521_594_328_743_71,
        16.319_305_431_231_36,
        -6.058_818_238_834_054,
    ],
];

/// Weights of the stages in the dense output.
const D: [[f64; 5]; 2] = [
    [
        10.126_235_083_445_86,
        -7.487_995_877_610_167,
        -34.800_918_615_557_47,
        -7.992_771_707_568_823,
        1.025_137_723_295_662,
    ],
    [
        -0.676_280_339_280_125_3,
        6.087_714_651_680_015,
        16.430_843_208_924_78,
        24.767_225_114_183_86,
        -6.594_389_125_716_872,
    ],
];

/// A step that was tried.
#[derive(Clone, Copy, Debug)]
pub(super) struct Trial<const N: usize> {
    /// The state after it.
    pub(super) end: [f64; N],
    /// Estimate of its error.
    pub(super) error: [f64; N],
    /// `y(s) = y0 (1 - s) + s (y1 + (1 - s) (d0 + s d1))` at the share s of the step.
    pub(super) dense: [[f64; N]; 2],
}

/// Tries a step of width `h` from `start`, where the rates are `rate` and their derivatives `jacobian[i][j] = ∂f_i/∂y_j`.
/// `None` when the matrix is singular.
pub(super) fn step<const N: usize>(
    rates: impl Fn(&[f64; N], &mut [f64; N]),
    (start, rate): (&[f64; N], &[f64; N]),
    jacobian: &[[f64; N]; N],
    h: f64,
) -> Option<Trial<N>> {
    let matrix = Factors::new(jacobian, 1.0 / (GAMMA * h))?;
    let per_width = 1.0 / h;
    let mut stages = [[0.0; N]; 6];
    let mut end = *start;
    for stage in 0..6 {
        let mut right = *rate;
        if stage > 0 {
            end = if stage < 5 { combined(start, &A[stage], &stages) } else { added(&end, &stages[4]) };
            rates(&end, &mut right);
        }
        for (before, weight) in C[stage].iter().enumerate().take(stage) {
            let weight = weight * per_width;
            for i in 0..N {
                right[i] += weight * stages[before][i];
            }
        }
        matrix.solve(&mut right);
        stages[stage] = right;
    }
    let dense = D.map(|weights| combined(&[0.0; N], &weights, &stages));
    Some(Trial { end: added(&end, &stages[5]), error: stages[5], dense })
}

fn added<const N: usize>(one: &[f64; N], other: &[f64; N]) -> [f64; N] {
    std::array::from_fn(|i| one[i] + other[i])
}

fn combined<const N: usize>(start: &[f64; N], weights: &[f64], stages: &[[f64; N]; 6]) -> [f64; N] {
    let mut sum = *start;
    for (weight, stage) in weights.iter().zip(stages) {
        for i in 0..N {
            sum[i] += weight * stage[i];
        }
    }
    sum
}

/// Triangular factors of `shift - J`, rows exchanged for the largest pivot.
struct Factors<const N: usize> {
    rows: [[f64; N]; N],
    order: [usize; N],
}

impl<const N: usize> Factors<N> {
    fn new(jacobian: &[[f64; N]; N], shift: f64) -> Option<Self> {
        let mut rows = jacobian.map(|row| row.map(|value| -value));
        for (i, row) in rows.iter_mut().enumerate() {
            row[i] += shift;
        }
        let mut order = std::array::from_fn(|i| i);
        for k in 0..N {
            let pivot = (k..N).max_by(|&a, &b| rows[a][k].abs().total_cmp(&rows[b][k].abs())).unwrap_or(k);
            if !(rows[pivot][k].is_finite() && rows[pivot][k].abs() > 0.0) {
                return None;
            }
            rows.swap(k, pivot);
            order.swap(k, pivot);
            let (above, below) = rows.split_at_mut(k + 1);
            for row in below {
                let factor = row[k] / above[k][k];
                row[k] = factor;
                if factor.abs() > 0.0 {
                    (k + 1..N).for_each(|j| row[j] -= factor * above[k][j]);
                }
            }
        }
        Some(Self { rows, order })
    }

    fn solve(&self, right: &mut [f64; N]) {
        let mut x: [f64; N] = std::array::from_fn(|i| right[self.order[i]]);
        for i in 0..N {
            x[i] -= (0..i).map(|j| self.rows[i][j] * x[j]).sum::<f64>();
        }
        for i in (0..N).rev() {
            let known: f64 = (i + 1..N).map(|j| self.rows[i][j] * x[j]).sum();
            x[i] = (x[i] - known) / self.rows[i][i];
        }
        *right = x;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A slow and a fast body: `y0' = -y0²`, `y1' = -λ (y1 - y0)`.
    fn error_after_one_second(steps: u32, fast: f64) -> (f64, f64) {
        let h = 1.0 / f64::from(steps);
        let rates = |y: &[f64; 2], f: &mut [f64; 2]| *f = [-y[0] * y[0], -fast * (y[1] - y[0])];
        let (mut y, mut inside) = ([1.0, 1.0], 0.0_f64);
        for i in 0..steps {
            let mut rate = [0.0; 2];
            rates(&y, &mut rate);
            let trial = step(rates, (&y, &rate), &[[-2.0 * y[0], 0.0], [fast, -fast]], h).unwrap();
            let middle = 0.5 * (y[0] + trial.end[0] + 0.5 * (trial.dense[0][0] + 0.5 * trial.dense[1][0]));
            inside = inside.max((middle - 1.0 / (1.0 + (f64::from(i) + 0.5) * h)).abs());
            y = trial.end;
        }
        ((y[0] - 0.5).abs(), inside)
    }

    #[test]
    fn the_order_is_four_and_that_of_the_dense_output_at_least_three() {
        let (coarse, fine) = (error_after_one_second(8, 1.0), error_after_one_second(16, 1.0));
        let order = |coarse: f64, fine: f64| (coarse / fine).log2();
        assert!(order(coarse.0, fine.0) > 3.7, "{coarse:?} {fine:?}");
        assert!(order(coarse.1, fine.1) > 3.5, "{coarse:?} {fine:?}");
    }

    #[test]
    fn a_fast_partner_does_not_limit_the_step() {
        let rates = |y: &[f64; 2], f: &mut [f64; 2]| *f = [-y[0], -1e7 * (y[1] - y[0])];
        let mut y = [1.0, 3.0];
        for _ in 0..10 {
            let mut rate = [0.0; 2];
            rates(&y, &mut rate);
            y = step(rates, (&y, &rate), &[[-1.0, 0.0], [1e7, -1e7]], 0.1).unwrap().end;
        }
        assert!((y[0] - (-1.0_f64).exp()).abs() < 1e-6 && (y[1] - y[0]).abs() < 1e-6, "{y:?}");
    }

    #[test]
    fn a_matrix_with_zeros_on_its_diagonal_is_solved_and_a_singular_one_refused() {
        let factors = Factors::new(&[[1.0, -2.0], [-3.0, 1.0]], 1.0).unwrap();
        let mut x = [2.0, 3.0];
        factors.solve(&mut x);
        // [[0, 2], [3, 0]] x = [2, 3]
        assert!((x[0] - 1.0).abs() < 1e-15 && (x[1] - 1.0).abs() < 1e-15);
        assert!(Factors::new(&[[1.0, 0.0], [0.0, 1.0]], 1.0).is_none());
    }
}
