//! Labels in a column beside the curves: as close as possible to where they belong, none on another.

/// Centres of labels `pitch` px apart or more, between `from` and `to`, that stay as close as they can to `wanted`.
///
/// `wanted` is in rising order, and the order is kept, so that leaders to the labels never cross. Labels that want the
/// same place form a block that settles on the mean of their wishes (pooling of adjacent violators, least squares).
pub(super) fn spread(wanted: &[f64], pitch: f64, (from, to): (f64, f64)) -> Vec<f64> {
    struct Block {
        sum: f64,
        count: usize,
    }
    let mean = |block: &Block| block.sum / block.count as f64;
    let mut blocks: Vec<Block> = Vec::new();
    for (i, wish) in wanted.iter().enumerate() {
        let mut block = Block { sum: wish - i as f64 * pitch, count: 1 };
        while let Some(before) = blocks.pop_if(|before| mean(before) > mean(&block)) {
            block = Block { sum: block.sum + before.sum, count: block.count + before.count };
        }
        blocks.push(block);
    }
    let highest = to - wanted.len().saturating_sub(1) as f64 * pitch;
    let levels = blocks.iter().flat_map(|block| std::iter::repeat_n(mean(block), block.count));
    levels.enumerate().map(|(i, level)| level.min(highest).max(from) + i as f64 * pitch).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn labels_never_touch_and_stay_in_the_column(mut wanted in prop::collection::vec(-50.0..700.0_f64, 0..=8)) {
            wanted.sort_by(f64::total_cmp);
            let placed = spread(&wanted, 26.0, (100.0, 500.0));
            prop_assert_eq!(placed.len(), wanted.len());
            prop_assert!(placed.windows(2).all(|w| w[1] - w[0] >= 26.0 - 1e-9), "{:?}", placed);
            prop_assert!(placed.iter().all(|y| (100.0..=500.0).contains(y)), "{:?}", placed);
        }
    }

    #[test]
    fn labels_with_room_stay_where_they_belong() {
        let placed = spread(&[120.0, 200.0, 300.0], 26.0, (100.0, 500.0));
        assert!(placed.iter().zip([120.0, 200.0, 300.0]).all(|(a, b)| (a - b).abs() < 1e-9), "{placed:?}");
    }

    #[test]
    fn labels_of_one_place_spread_evenly_about_it() {
        let placed = spread(&[200.0, 200.0, 200.0], 26.0, (100.0, 500.0));
        assert!(placed.iter().zip([174.0, 200.0, 226.0]).all(|(a, b)| (a - b).abs() < 1e-9), "{placed:?}");
    }
}
