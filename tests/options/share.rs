//! Ways that are looked for by a share of the parts, against closed forms and against trying every setting.

use super::by_trying::Trying;
use super::*;
use seatwise::plan::options::{Aim, DRAWN_PARTS};
use seatwise::plan::scatter::OneByOne;
use seatwise::quantity::Ratio;
use uom::si::length::micrometer;
use uom::si::ratio::ratio;

/// Widths of the two sizes, µm, evenly spread; the tightest case has 40 µm of interference, the middle one 20.
const RING_UM: f64 = 10.0;
const BORE_UM: f64 = 30.0;

fn scattering() -> String {
    exact("6205", "open", 30, 70, ALLOY)
        .replace("0/0 um", &format!("-{RING_UM}/0 um"))
        .replace("-30/-30 um", &format!("-40/-{} um", 40.0 - BORE_UM))
        + "[bench]\ncarry = \"8 s\"\n[scatter]\nsizes = \"uniform\"\n"
}

fn asked(text: &str, media: &[&str], share: f64, seed: u64) -> SeatWays {
    let job = checked(text);
    let asked: Vec<_> = media.iter().map(|name| Library::default().medium(name).unwrap()).collect();
    let aim = Aim::Share { share: Ratio::new::<ratio>(share), seed };
    options::options_for(&job, &asked, aim, &OneByOne).unwrap().swap_remove(0)
}

/// Interference that `share` of the parts do not exceed: 40 µm less x, where x, the sum of two even widths, is below x in
/// `x² / (2 a b)` of the parts while x is below the lesser width.
fn interference_um(share: f64) -> f64 {
    let beyond = (2.0 * RING_UM * BORE_UM * (1.0 - share)).sqrt();
    assert!(beyond < RING_UM);
    40.0 - beyond
}

#[test]
fn the_part_that_stands_for_a_share_is_that_of_the_closed_form() {
    for share in [0.9, 0.95, 0.99] {
        let seat = asked(&scattering(), &["oven"], share, 3);
        let fit = worked(&seat.ways[0]).seat.fit.clearance;
        let found = -fit.tightest.get::<micrometer>();
        // Five standard errors of a quantile: √(p (1 - p) / n) over the density there, beyond / (a b).
        let beyond = 40.0 - interference_um(share);
        let error = (share * (1.0 - share) / DRAWN_PARTS as f64).sqrt() * RING_UM * BORE_UM / beyond;
        assert!((found - interference_um(share)).abs() < 5.0 * error + 0.003, "{share}: {found}");
        assert_eq!(fit.tightest, fit.loosest, "one part stands for the share");
    }
}

#[test]
fn a_share_needs_no_more_than_the_tightest_case_and_is_met_when_all_parts_are_counted() {
    let text = scattering().replace("[bench]\n", "[bench]\nplacing_clearance = \"15 um\"\n");
    for media in [&["oven"][..], &["domestic-freezer", "oven"]] {
        let (tightest, share) = (ways(&text, media), asked(&text, media, 0.9, 3));
        let (of_all, of_share) = (way(&tightest, media), way(&share, media));
        assert!(setting_c(of_share) < setting_c(of_all), "{media:?}: the share is milder here");
        let odds = worked(of_share).odds.unwrap();
        assert!(worked(of_all).odds.is_none());
        // Every part that is as loose as the one that stands for the share drops in, and the others nearly do.
        assert!(odds.drops_in.share() >= 0.9 && odds.drops_in.draws == DRAWN_PARTS, "{odds:?}");
        assert!(odds.tightest < worked(of_share).seat.at_bore.clearance.tightest);
        // Written as a job with all limits, the way has the clearance that is told of the tightest case.
        let plan_of_all = checked(&with_way(&text, of_share));
        let plan = plan::plan(&plan_of_all).unwrap();
        let tightest = plan.seats[0].at_bore.clearance.tightest;
        assert!((tightest - odds.tightest).get::<micrometer>().abs() < 0.05, "{tightest:?} {odds:?}");
    }
}

#[test]
fn a_share_finds_what_trying_every_setting_and_hold_finds_for_its_part() {
    let text = scattering();
    let seat = asked(&text, &["oven"], 0.95, 3);
    let found = way(&seat, &["oven"]);
    let fit = worked(found).seat.fit.clearance.tightest.get::<micrometer>();
    // The same part, typed as a job of exact sizes.
    let one = exact("6205", "open", 30, 70, ALLOY).replace("-30/-30 um", &format!("{fit:.3}/{fit:.3} um"))
        + "[bench]\ncarry = \"8 s\"\n";
    let (setting, hold) = Trying::new(&one, None).all();
    let ready = worked(found).ready_after().get::<second>();
    assert!(
        (setting_c(found) - setting).abs() < 1e-6 && (ready - hold).abs() < 1e-6,
        "{} °C, {ready} s; trying all gives {setting} °C, {hold} s",
        setting_c(found)
    );
}

#[test]
fn the_same_seed_draws_the_same_parts_and_a_share_that_cannot_be_judged_is_refused() {
    let one = |seed| format!("{:?}", worked(&asked(&scattering(), &[], 0.99, seed).ways[0]).seat.fit);
    assert_eq!(one(3), one(3));
    assert_ne!(one(3), one(4));
    let job = checked(&scattering());
    for share in [0.0, 0.3, 1.0, f64::NAN] {
        let aim = Aim::Share { share: Ratio::new::<ratio>(share), seed: 1 };
        let refused = options::options_for(&job, &[], aim, &OneByOne).unwrap_err();
        assert!(refused.to_string().contains("50 to 99.99 %"), "{refused}");
    }
}
