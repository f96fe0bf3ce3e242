//! Drawn parts against samples that scipy drew from the same distributions: `tests/reference/scatter/samples.csv`.

use crate::checked::prove;

#[test]
fn mean_deviation_share_and_percentiles_agree_with_the_samples_of_scipy() {
    assert_eq!(prove("Drawn parts").len(), 4 * (3 + 7));
}
