//! Indices of Sobol' against functions whose indices are known.

use seatwise::plan::scatter::{Distribution, OneByOne, indices};
use std::f64::consts::PI;

/// T. Ishigami, T. Homma, "An importance quantification technique in uncertainty analysis for computer models" (ISUMA
/// 1990), with a = 7 and b = 0.1 as in Saltelli et al., "Sensitivity Analysis" (2000): first order 0.3139, 0.4424, 0;
/// total 0.5576, 0.4424, 0.2437.
#[test]
fn the_indices_of_ishigami_are_the_published_ones() {
    let even = Distribution::Uniform { low: -PI, high: PI };
    let ishigami = |x: &[f64]| [x[0].sin() + 7.0 * x[1].sin().powi(2) + 0.1 * x[2].powi(4) * x[0].sin()];
    for seed in [1, 2, 3] {
        let [found] = indices(&[even.clone(), even.clone(), even.clone()], seed, &ishigami, &OneByOne);
        let published = [(0.3139, 0.5576), (0.4424, 0.4424), (0.0, 0.2437)];
        for (index, (first, total)) in found.unwrap().iter().zip(published) {
            // Four standard errors as stated, which are themselves small.
            assert!(
                (index.first - first).abs() < 4.0 * index.first_error + 1e-3,
                "seed {seed}: {index:?} against {first}"
            );
            assert!(
                (index.total - total).abs() < 4.0 * index.total_error + 1e-3,
                "seed {seed}: {index:?} against {total}"
            );
            assert!(index.first_error < 0.025 && index.total_error < 0.02);
        }
    }
}

/// A sum of independent terms: each index is its share of the variance, first order and total alike; a fixed input has none.
#[test]
fn a_sum_divides_the_variance_among_its_terms() {
    let inputs = [
        Distribution::Uniform { low: 0.0, high: 2.0 },
        Distribution::Normal { mean: 5.0, deviation: 1.0, low: f64::NEG_INFINITY, high: f64::INFINITY },
        Distribution::Fixed(3.0),
    ];
    let [found, constant] = indices(&inputs, 9, &|x: &[f64]| [3.0 * x[0] + x[1] + x[2], x[2]], &OneByOne);
    let share = 3.0 / 4.0;
    for (index, share) in found.unwrap().iter().zip([share, 1.0 - share, 0.0]) {
        assert!((index.first - share).abs() < 4.0 * index.first_error + 1e-9, "{index:?} against {share}");
        assert!((index.total - share).abs() < 4.0 * index.total_error + 1e-9, "{index:?} against {share}");
    }
    assert!(constant.is_none(), "what does not vary has no indices");
}
