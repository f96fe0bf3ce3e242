//! Stacks: worked examples, and what must hold of any.

use super::{in_mm, mm, near};
use crate::checked::prove;
use crate::checked::stacks::chain;
use proptest::prelude::*;
use seatwise::assembly::stack::{Chain, Change, Ends, Groove, Link, StackError, Wanted, Way, axial_play, change};
use seatwise::quantity::Length;

#[test]
fn worked_stacks_come_out_as_printed() {
    assert_eq!(prove("Printed stacks").len(), 13);
}

#[test]
fn opening_and_filling_are_not_exchanged() {
    // The likely mistake: subtracting upper from upper, which gives half the true band here and none in a chain of equal limits.
    let chain = chain("+24.0~0.1;-16.0~0.1", false);
    let play = chain.worst_case();
    near(in_mm(play.least), 7.8, 1e-9, "least");
    near(in_mm(play.most), 8.2, 1e-9, "most");
}

#[test]
fn a_chain_that_is_none_is_refused() {
    assert_eq!(Chain::new(Vec::new()), Err(StackError::Empty));
    for (least, most) in [(2.0, 1.0), (f64::NAN, 1.0), (-1.0, 1.0), (1.0, f64::INFINITY)] {
        let good = Link { least: mm(1.0), most: mm(2.0), way: Way::Opens };
        let said = Chain::new(vec![good, Link { least: mm(least), most: mm(most), way: Way::Fills }]).unwrap_err();
        assert!(said.to_string().contains("dimension 2"), "{said}");
    }
}

#[test]
fn a_play_of_nothing_is_nothing_whatever_the_sizes() {
    // In binary 0.1 + 0.2 is not 0.3: forty thousand stacks of three sizes that fill their depth to the nanometre.
    for (a, b) in (1..200).flat_map(|a| (1..200).map(move |b| (a, b))) {
        let (one, two) = (f64::from(a) / 100.0, f64::from(b) / 1000.0);
        let depth = f64::from(10 * a + b) / 1000.0;
        let link = |size: f64, way| Link { least: mm(size), most: mm(size), way };
        let play = Chain::new(vec![link(depth, Way::Opens), link(one, Way::Fills), link(two, Way::Fills)]).unwrap();
        let play = play.worst_case();
        assert!(play.least == mm(0.0) && play.most == mm(0.0), "{depth} - {one} - {two}: {play:?}");
        let wanted = Wanted { least: mm(0.0), most: Some(mm(0.0)) };
        assert_eq!(change(play, wanted), Change::None, "{depth} - {one} - {two}");
    }
}

#[test]
fn a_shim_is_fixed_where_one_suits_all_and_chosen_where_none_does() {
    let ends = |least, most| Ends { least: mm(least), middle: mm((least + most) / 2.0), most: mm(most) };
    let wanted = |least, most: Option<f64>| Wanted { least: mm(least), most: most.map(mm) };
    assert_eq!(change(ends(0.1, 0.3), wanted(0.0, Some(0.4))), Change::None);
    assert_eq!(change(ends(0.1, 3.0), wanted(0.0, None)), Change::None);
    let Change::Fixed { least, most } = change(ends(0.5, 0.7), wanted(0.0, Some(0.3))) else { panic!("not fixed") };
    near(in_mm(least), 0.4, 1e-9, "least");
    near(in_mm(most), 0.5, 1e-9, "most");
    let Change::Chosen { least, most } = change(ends(0.1, 0.7), wanted(0.0, Some(0.2))) else { panic!("not chosen") };
    near(in_mm(least), 0.1, 1e-9, "least");
    near(in_mm(most), 0.5, 1e-9, "most");
    let Change::Fixed { most, .. } = change(ends(-0.2, 0.1), wanted(0.05, None)) else { panic!("not to be taken off") };
    near(in_mm(most), -0.25, 1e-9, "taken off");
}

#[test]
fn axial_play_is_that_of_the_free_contact_angle() {
    // 9.525 mm balls, grooves of 0.52: A = 0.381 mm; P_r = 13 µm: cos α = 1 - 0.013/0.762 = 0.982940, sin α = 0.183928.
    let play = axial_play(mm(0.013), mm(9.525), Groove::default()).unwrap();
    near(in_mm(play), 0.140_153, 1e-5, "axial play");
    assert_eq!(axial_play(mm(0.0), mm(9.525), Groove::default()).unwrap(), mm(0.0));
    for (radial, ball, inner) in [(-0.01, 9.5, 0.52), (0.9, 9.5, 0.52), (0.01, 9.5, 0.47), (0.01, 0.0, 0.52)] {
        let groove = Groove { inner, ..Groove::default() };
        assert!(axial_play(mm(radial), mm(ball), groove).is_err(), "{radial} {ball} {inner}");
    }
}

prop_compose! {
    fn any_link()(size in 0.5..200.0f64, width in 0.0..0.6f64, opens in any::<bool>()) -> Link {
        let way = if opens { Way::Opens } else { Way::Fills };
        Link { least: mm(size), most: mm(size + width), way }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn more_play_never_closes_the_groove(links in prop::collection::vec(any_link(), 1..8), deeper in 0.0..2.0f64) {
        let (before, after) = (Chain::new(links.clone()).unwrap(), {
            let mut more = links.clone();
            more.push(Link { least: mm(deeper), most: mm(deeper), way: Way::Opens });
            Chain::new(more).unwrap()
        });
        let (a, b) = (before.worst_case(), after.worst_case());
        prop_assert!(b.least >= a.least - mm(1e-9) && b.most >= a.most - mm(1e-9));
        // What closed in some share of all assemblies closes in at least that share.
        let share = |chain: &Chain| chain.scatter().share_below(mm(0.0));
        prop_assert!(share(&after) <= share(&before) + 1e-9);
    }

    #[test]
    fn the_bands_lie_in_each_other(links in prop::collection::vec(any_link(), 1..8)) {
        let chain = Chain::new(links).unwrap();
        let (worst, usual, scatter) = (chain.worst_case(), chain.root_sum_square(), chain.scatter());
        let slack = mm(1e-6);
        prop_assert!(worst.least <= usual.least + slack && usual.most <= worst.most + slack);
        prop_assert!(worst.least <= scatter.at_share(0.01) + slack && scatter.at_share(0.99) <= worst.most + slack);
        prop_assert!((scatter.share_below(worst.middle) - 0.5).abs() < 2e-3 || worst.most - worst.least < slack);
        prop_assert!((worst.middle - usual.middle).abs() < slack);
    }

    #[test]
    fn a_mended_stack_is_as_wanted(
        least in -1_000_000..1_000_000i32, width in 0..800_000i32, wanted in 0..300_000i32, more in 0..500_000i32,
    ) {
        // Whole nanometres, as a chain gives them.
        let [least, width, wanted, more] = [least, width, wanted, more].map(|nanometres| f64::from(nanometres) / 1e6);
        let play = Ends { least: mm(least), middle: mm(least + width / 2.0), most: mm(least + width) };
        let asked = Wanted { least: mm(wanted), most: Some(mm(wanted + more)) };
        let slack = mm(1e-9);
        let suits = |shim: Length| play.least - shim >= asked.least - slack && play.most - shim <= mm(wanted + more) + slack;
        match change(play, asked) {
            Change::None => prop_assert!(suits(mm(0.0))),
            Change::Fixed { least, most } => prop_assert!(suits(least) && suits(most) && !suits(mm(0.0))),
            Change::Chosen { least, most } => {
                // No one shim suits both ends, and the two ends of the range suit one each.
                prop_assert!(!suits(least) && !suits(most) && !suits((least + most) / 2.0));
                prop_assert!(play.least - least >= asked.least - slack && play.most - most <= mm(wanted + more) + slack);
            }
        }
    }

    #[test]
    fn axial_play_grows_with_radial_play(a in 0.0..0.03f64, b in 0.0..0.03f64, ball in 3.0..40.0f64) {
        let play = |radial| axial_play(mm(radial), mm(ball), Groove::default()).unwrap();
        let (low, high) = if a < b { (a, b) } else { (b, a) };
        prop_assert!(play(low) <= play(high));
        prop_assert!(play(high) >= mm(high));
    }
}
