//! Where the labels of the moments go: flags on poles, in rows above the curves.
//!
//! A flag flies to the right or to the left of its pole, which stands at the time of the moment. No flag covers
//! another, none leaves the page, and a pole passes through a flag only where no arrangement avoids it.

/// A pole with the width of its flag, in px.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pole {
    pub(super) x: f64,
    pub(super) width: f64,
}

/// A flag in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Flag {
    pub(super) left: f64,
    /// Row, counted upwards from the curves.
    pub(super) row: usize,
}

/// Space between a pole and its text.
pub(super) const POLE_SPACE: f64 = 8.0;
/// Space kept free around a flag, less than [`POLE_SPACE`] so that two flags may share a pole.
const AROUND: f64 = 6.0;

/// Places the flags between `limits` (left and right edge of the page).
///
/// Tries both sides of every pole: at most 2^8 arrangements, as the number of moments is limited.
pub(super) fn place(poles: &[Pole], limits: (f64, f64)) -> Vec<Flag> {
    let arrangements = 0..1_u32 << poles.len().min(16);
    let tried = arrangements.map(|sides| {
        let lefts: Vec<f64> = poles.iter().enumerate().map(|(i, p)| left_end(p, sides >> i & 1 == 1, limits)).collect();
        let (flags, pierced) = stack(poles, &lefts);
        let rows = flags.iter().map(|flag| flag.row).max().unwrap_or(0) as u32;
        (1000 * pierced + 100 * rows + sides.count_ones(), flags)
    });
    tried.min_by_key(|(cost, _)| *cost).map(|(_, flags)| flags).unwrap_or_default()
}

/// Left end of a flag; a side that has no room falls back to the other, and at worst to the edge.
fn left_end(pole: &Pole, to_the_left: bool, (from, to): (f64, f64)) -> f64 {
    let (left, right) = (pole.x - POLE_SPACE - pole.width, pole.x + POLE_SPACE);
    let (left_fits, right_fits) = (left >= from, right + pole.width <= to);
    if right_fits && !(to_the_left && left_fits) {
        right
    } else if left_fits {
        left
    } else {
        (to - pole.width).min(right).max(from)
    }
}

/// Rows for flags whose sides are settled, and how many flags are pierced by a pole.
fn stack(poles: &[Pole], lefts: &[f64]) -> (Vec<Flag>, u32) {
    let spans: Vec<(f64, f64)> = poles.iter().zip(lefts).map(|(p, l)| (l - AROUND, l + p.width + AROUND)).collect();
    let covers = |i: usize, j: usize| i != j && spans[i].0 < poles[j].x && poles[j].x < spans[i].1;
    let overlap = |i: usize, j: usize| spans[i].0 < spans[j].1 && spans[j].0 < spans[i].1;
    let mut rows: Vec<Option<usize>> = vec![None; poles.len()];
    let mut pierced = 0;
    while let Some(first) = rows.iter().position(Option::is_none) {
        // A flag has to fly above every pole that stands below it, so those poles' flags come first.
        let ready = (0..poles.len())
            .find(|&i| rows[i].is_none() && (0..poles.len()).all(|j| rows[j].is_some() || !covers(i, j)));
        pierced += u32::from(ready.is_none());
        let i = ready.unwrap_or(first);
        let below = (0..poles.len()).filter(|&j| overlap(i, j) || covers(i, j)).filter_map(|j| rows[j]);
        rows[i] = Some(below.max().map_or(0, |row| row + 1));
    }
    let flags = lefts.iter().zip(rows).map(|(&left, row)| Flag { left, row: row.unwrap_or(0) });
    (flags.collect(), pierced)
}

/// The lowest row in which a text from `left` to `right` is clear of all flags and poles.
pub(super) fn free_row(poles: &[Pole], flags: &[Flag], (left, right): (f64, f64)) -> usize {
    let in_the_way = poles.iter().zip(flags).filter(|(pole, flag)| {
        let (from, to) = (flag.left.min(pole.x) - AROUND, (flag.left + pole.width).max(pole.x) + AROUND);
        from < right && left < to
    });
    in_the_way.map(|(_, flag)| flag.row + 1).max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PAGE: (f64, f64) = (14.0, 946.0);

    fn boxes(poles: &[Pole], flags: &[Flag]) -> Vec<(f64, f64, usize)> {
        poles.iter().zip(flags).map(|(p, f)| (f.left, f.left + p.width, f.row)).collect()
    }

    proptest! {
        #[test]
        fn no_flag_covers_another_or_leaves_the_page(
            poles in prop::collection::vec((60.0..800.0_f64, 20.0..320.0_f64), 0..=8)
        ) {
            let poles: Vec<Pole> = poles.into_iter().map(|(x, width)| Pole { x, width }).collect();
            let flags = place(&poles, PAGE);
            prop_assert_eq!(flags.len(), poles.len());
            let boxes = boxes(&poles, &flags);
            for (i, a) in boxes.iter().enumerate() {
                prop_assert!(a.0 >= PAGE.0 && a.1 <= PAGE.1, "{:?} leaves the page", a);
                for b in &boxes[..i] {
                    prop_assert!(a.2 != b.2 || a.1 <= b.0 || b.1 <= a.0, "{:?} covers {:?}", a, b);
                }
            }
        }

        /// Four moments of the usual width: an arrangement without a pierced flag always exists.
        #[test]
        fn no_pole_runs_through_a_flag_of_a_usual_plot(xs in prop::collection::vec(70.0..800.0_f64, 0..=4)) {
            let poles: Vec<Pole> = xs.into_iter().map(|x| Pole { x, width: 190.0 }).collect();
            let flags = place(&poles, PAGE);
            for (i, (left, right, row)) in boxes(&poles, &flags).into_iter().enumerate() {
                for (j, pole) in poles.iter().enumerate() {
                    let pierced = i != j && flags[j].row >= row && left < pole.x && pole.x < right;
                    prop_assert!(!pierced, "pole {j} at {} runs through {left}..{right}: {flags:?}", pole.x);
                }
            }
        }
    }

    #[test]
    fn flags_far_apart_share_the_lowest_row() {
        let poles = [Pole { x: 100.0, width: 150.0 }, Pole { x: 400.0, width: 150.0 }];
        assert!(place(&poles, PAGE).iter().all(|flag| flag.row == 0));
    }

    #[test]
    fn two_moments_at_one_time_share_a_pole() {
        let poles = [Pole { x: 300.0, width: 150.0 }; 2];
        let rows: Vec<usize> = place(&poles, PAGE).iter().map(|flag| flag.row).collect();
        assert!(rows == [0, 1] || rows == [0, 0], "{rows:?}");
    }
}
