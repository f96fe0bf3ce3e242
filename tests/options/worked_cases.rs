//! Worked cases of the trade: what the list must advise.

use super::*;
use seatwise::plan::Level;

const SHOP: [&str; 2] = ["freezer", "oven"];

#[test]
fn a_freezer_alone_is_no_plan_for_35_um_in_iron_and_a_hub_of_60_degrees_or_more_is_advised_with_it() {
    let seat = ways(&exact("6308", "open", 35, 130, IRON), &SHOP);
    let alone = worked(way(&seat, &["domestic-freezer"]));
    assert_eq!(alone.seat.verdict, Verdict::Press, "6 µm clear on leaving are gone at the seat");
    let both = way(&seat, &["domestic-freezer", "oven"]);
    assert_eq!(rank(&seat, &["domestic-freezer", "oven"]), 0);
    assert!(worked(both).is_comfortable());
    assert!((60.0..=120.0).contains(&setting_c(both)), "{}", setting_c(both));
    // 29 °C is the bare margin without any way to carry; an oven starts at 40 °C.
    assert!((least_c(both) - 40.0).abs() < 1e-6, "{}", least_c(both));
}

#[test]
fn an_iron_hub_without_chill_just_clears_above_73_degrees_and_a_thousandth_is_beyond_the_cap() {
    let text = exact("6308", "open", 35, 130, IRON);
    let at_once = "[bench]\ncarry = \"0 s\"\n";
    let seat = ways(&(text.clone() + at_once), &["oven"]);
    let oven = way(&seat, &["oven"]);
    // 73 °C on arrival; the settled hub is 2 % of the way short of its oven, and the setting is a whole degree.
    assert!((73.0..=76.0).contains(&least_c(oven)), "{}", least_c(oven));
    // 0.001 of the diameter would take 152 °C, and 120 °C is the cap: what is left is a push, and never 152 °C.
    let seat = ways(&(text + at_once + "placing_clearance = \"90 um\"\n"), &["oven"]);
    let oven = way(&seat, &["oven"]);
    assert_ne!(worked(oven).seat.verdict, Verdict::DropsIn);
    assert!((setting_c(oven) - 120.0).abs() < 0.01);
}

#[test]
fn in_a_thin_boss_the_better_move_is_not_chilling() {
    let text = exact("6205", "open", 30, 70, ALLOY) + "[bench]\ncarry = \"8 s\"\n";
    let seat = ways(&text, &SHOP);
    assert_eq!(rank(&seat, &["oven"]), 0, "the oven alone before the oven with the freezer");
    let oven = way(&seat, &["oven"]);
    assert!(worked(oven).is_comfortable() && (100.0..=120.0).contains(&setting_c(oven)), "{}", setting_c(oven));
    assert!(worked(oven).in_hand.unwrap().get::<second>() > 120.0, "about 2 min without chill");
}

#[test]
fn where_chilling_shortens_the_time_in_the_seat_the_way_says_so_and_ranks_behind() {
    // The plan of this job itself says that chilling makes it worse; so must the list.
    for interference in [5, 10, 15] {
        let text = exact("6205", "open", interference, 58, ALLOY) + "[bench]\ncarry = \"8 s\"\n";
        let seat = ways(&text, &["deep-freezer-80", "oven"]);
        let pair = way(&seat, &["deep-freezer-80", "oven"]);
        let both = worked(pair);
        assert!(both.chilling_shortens(), "{interference} µm");
        // The oven alone is milder, and leaves more time in the seat than the pair.
        let alone = way(&seat, &["oven"]);
        assert!(worked(alone).is_comfortable() && setting_c(alone) < setting_c(pair));
        assert!(worked(alone).in_seat().unwrap() > both.in_seat().unwrap());
        assert_eq!(rank(&seat, &["oven"]), 0);
        assert!(both.cautions.iter().any(|caution| caution.code() == "chilling-shortens"));
        let page = seatwise::report::options::text(
            &seat.job,
            std::slice::from_ref(&seat),
            seatwise::quantity::System::Metric,
            true,
        );
        assert!(page.contains("CHILLING MAKES IT WORSE"), "{page}");
    }
}

#[test]
fn a_sealed_bearing_never_sees_150_degrees_and_80_with_its_short_window_or_a_press_is_offered() {
    let text = exact("6205-2RS", "NBR contact seals", 30, 90, ALLOY)
        + "[warm]\npart = \"housing\"\nmedium = \"oven\"\ntemperature = \"150 °C\"\nhold = \"1 h\"\n";
    assert_eq!(plan::plan(&checked(&text)).unwrap().verdict, Verdict::DoNot, "as it was asked for");
    let seat = ways(&text, &["freezer", "oven", "boiling-water", "dry-ice"]);
    for media in [&["oven"][..], &["domestic-freezer", "oven"]] {
        let found = way(&seat, media);
        assert!((setting_c(found) - 80.0).abs() < 0.01, "{media:?} at {}", setting_c(found));
        assert_eq!(worked(found).seat.verdict, Verdict::DropsIn);
    }
    assert!(worked(way(&seat, &["oven"])).is_race(), "seconds in the seat at 80 °C");
    assert_eq!(worked(way(&seat, &[])).seat.verdict, Verdict::Press, "the press is offered too");
    for (medium, limit) in [("boiling-water", "80"), ("dry-ice", "30")] {
        let reason = words(way(&seat, &[medium]).reason().unwrap());
        assert!(reason.contains("limit of"), "{medium} ({limit}): {reason}");
    }
}

#[test]
fn the_mildest_that_works_goes_before_the_coldest() {
    // A small fit that a domestic freezer clears in comfort: nothing colder may stand before it.
    let text = exact("6308", "open", 2, 130, IRON) + "[bench]\ncarry = \"5 s\"\nplacing_clearance = \"5 um\"\n";
    let seat = ways(&text, &["LN2", "dry-ice", "freezer", "oven"]);
    assert_eq!(rank(&seat, &["domestic-freezer"]), 0);
    let first = &seat.ways[0];
    assert_eq!(worked(first).hazard(first), None);
    let nitrogen = way(&seat, &["liquid-nitrogen"]);
    if let Some(cold) = nitrogen.worked() {
        assert_eq!(cold.hazard(nitrogen), Some(Level::Danger));
        assert!(rank(&seat, &["liquid-nitrogen"]) > rank(&seat, &["oven"]));
    }
}

#[test]
fn a_press_that_is_too_small_is_refused_and_a_second_medium_is_still_tried() {
    let text = exact("6308", "open", 55, 130, IRON) + "[press]\nmeans = \"arbor press\"\ncapacity = \"1 kN\"\n";
    let seat = ways(&text, &SHOP);
    for media in [&[][..], &["domestic-freezer"]] {
        assert!(words(way(&seat, media).reason().unwrap()).contains("more than the press gives"), "{media:?}");
    }
    assert_eq!(worked(way(&seat, &["domestic-freezer", "oven"])).seat.verdict, Verdict::DropsIn);
}

#[test]
fn solvent_and_heat_are_kept_apart_and_water_out_of_bearings() {
    let seat = ways(&exact("6308", "open", 35, 130, IRON), &["dry-ice-alcohol", "oven"]);
    assert!(words(way(&seat, &["dry-ice-alcohol", "oven"]).reason().unwrap()).contains("flammable"));
    let shaft = include_str!("../../examples/fan-shaft.toml").split_once("[warm]").unwrap().0;
    let seat = ways(shaft, &["boiling-water"]);
    assert!(words(way(&seat, &["boiling-water"]).reason().unwrap()).contains("rusts"));
}

/// Which media are refused for what they are, and in which words.
#[test]
fn a_medium_that_does_not_suit_a_piece_is_refused_for_that_piece_alone() {
    let shaft = include_str!("../../examples/fan-shaft.toml").split_once("[warm]").unwrap().0;
    let closed = shaft.replace("closure = \"open\"", "closure = \"NBR contact seals\"");
    let housing = exact("6205", "open", 10, 70, IRON);
    for (text, medium, why) in [
        (&housing, "induction-heater", Some("it heats a ring that is put over its yoke")),
        (&housing, "boiling-water", None),
        (&shaft.to_owned(), "oil-bath", None),
        (&closed, "oil-bath", Some("gets behind the closure")),
        (&closed, "boiling-water", Some("rusts")),
    ] {
        let seat = ways(text, &[medium]);
        let found = way(&seat, &[medium]).reason().map(words).filter(|words| words.contains("common practice"));
        assert_eq!(found.is_some(), why.is_some(), "{medium}: {found:?} for\n{text}");
        assert!(why.is_none_or(|why| found.unwrap().contains(why)), "{medium}");
    }
}

#[test]
fn a_share_that_cannot_be_asked_for_is_refused_with_one_that_can() {
    use seatwise::plan::options::{Aim, options_for};
    use seatwise::plan::scatter::OneByOne;
    use seatwise::quantity::Ratio;
    let job = checked(&exact("6205", "open", 30, 70, ALLOY));
    for share in [0.499, 0.999_91, 1.0] {
        let aim = Aim::Share { share: Ratio::new::<uom::si::ratio::ratio>(share), seed: 1 };
        let error = options_for(&job, &[], aim, &OneByOne).unwrap_err();
        assert!(error.help().starts_with("ask for a share such as 0.99"), "{share}: {error}, {}", error.help());
    }
}

/// In a chart a press that is too small is a caution of its cell; what a limit forbids is no cell at all.
#[test]
fn a_chart_refuses_what_a_limit_forbids_and_keeps_what_the_press_is_too_small_for() {
    // The magnesium of the library bears 130 °C.
    let press = "[press]\nmeans = \"arbor press\"\ncapacity = \"0.1 kN\"\n";
    let job = checked(&(exact("6205", "open", 30, 70, "\"magnesium-az91\"") + press));
    let rows = [40.0, 120.0, 140.0].map(seatwise::quantity::celsius);
    let chart = plan::chart::charts(&job, &rows, &[]).unwrap().swap_remove(0);
    let cells: Vec<_> = chart.rows.iter().map(|row| &row.cells[0]).collect();
    assert_eq!(cells.len(), 4, "the shop's own row, and three");
    for cell in &cells[..2] {
        let worked = cell.as_ref().unwrap_or_else(|words| panic!("{words:?}"));
        assert!(worked.seat.verdict == Verdict::Press, "{:?}", worked.seat.verdict);
        assert!(worked.cautions.iter().any(|caution| caution.code() == "press-too-small"));
    }
    assert!(cells[2].as_ref().is_ok_and(|worked| worked.seat.verdict == Verdict::DropsIn));
    let reason = words(cells[3].as_ref().unwrap_err());
    assert!(reason.contains("above its limit of"), "{reason}");
}
