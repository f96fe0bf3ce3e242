//! The scatter of a stack against closed forms and an independent count.

use super::{in_mm, mm, near};
use crate::checked::prove;
use crate::checked::stacks::spread as of;
use seatwise::assembly::stack::{Chain, Link, Way};

#[test]
fn shares_are_those_of_the_closed_forms() {
    prove("Scatter of stacks");
}

/// A generator that is easy to write down: the 64-bit mixing steps of Steele, Lea and Flood.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((bits ^ (bits >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }
}

#[test]
fn shares_are_those_of_a_count_of_two_hundred_thousand_stacks() {
    let widths = [0.1, 0.1, 0.12, 0.07, 0.02, 0.001];
    let scatter = of(&widths);
    let mut dice = Dice(7);
    let sums: Vec<f64> = (0..200_000).map(|_| widths.iter().map(|width| width * (dice.next() - 0.5)).sum()).collect();
    for x in [-0.15, -0.08, -0.02, 0.0, 0.03, 0.1, 0.17] {
        let counted = sums.iter().filter(|sum| **sum < x).count() as f64 / sums.len() as f64;
        // Four standard deviations of the count.
        near(scatter.share_below(mm(x)), counted, 0.0045, "share");
    }
}

#[test]
fn the_value_at_a_share_has_that_share_below_it() {
    let scatter = of(&[0.1, 0.1, 0.12, 0.07]);
    for share in [0.001, 0.01, 0.1, 0.5, 0.77, 0.99, 0.999] {
        near(scatter.share_below(scatter.at_share(share)), share, 1e-9, "share");
    }
}

#[test]
fn without_scatter_everything_lies_at_the_middle() {
    let link = |size, way| Link { least: mm(size), most: mm(size), way };
    let scatter = Chain::new(vec![link(20.0, Way::Opens), link(19.5, Way::Fills)]).unwrap().scatter();
    assert_eq!((scatter.share_below(mm(0.49)), scatter.share_below(mm(0.51))), (0.0, 1.0));
    near(in_mm(scatter.at_share(0.5)), 0.5, 1e-9, "middle");
}
