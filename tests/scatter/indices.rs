//! Indices of Sobol' against functions whose indices are known.

use crate::checked::prove;
use crate::checked::scatter::SEEDS;
use seatwise::plan::scatter::{Distribution, OneByOne, indices};

#[test]
fn the_indices_of_ishigami_are_the_published_ones() {
    assert_eq!(prove("Indices of Ishigami's function").len(), 2 * 3 * SEEDS.len());
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
        // What it does alone is never more than what it does at all, and is all of it in a sum.
        assert!(index.alone() <= index.total && (index.alone() - share).abs() < 0.05, "{index:?} against {share}");
    }
    assert!(constant.is_none(), "what does not vary has no indices");
}

/// The middle that indices count from is the mean of what was measured, not one of the sizes.
#[test]
fn the_middle_of_a_distribution_is_its_mean() {
    for (distribution, middle) in [
        (Distribution::Fixed(3.0), 3.0),
        (Distribution::Uniform { low: 1.0, high: 4.0 }, 2.5),
        (Distribution::Normal { mean: 2.0, deviation: 1.0, low: 0.0, high: 9.0 }, 2.0),
        (Distribution::Listed(vec![1.0, 2.0, 9.0]), 4.0),
    ] {
        assert!((distribution.middle() - middle).abs() < 1e-12, "{distribution:?}: {}", distribution.middle());
    }
}
