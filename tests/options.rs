//! The list of ways to fit a part: what it must advise, and that a search finds what trying everything finds.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "options/by_trying.rs"]
mod by_trying;
#[path = "options/share.rs"]
mod share;
#[path = "options/worked_cases.rs"]
mod worked_cases;

use seatwise::job::{self, Job};
use seatwise::plan::options::{self, MOST_TRIALS, SeatWays, Way, Worked};
use seatwise::plan::{self, Verdict};
use seatwise::stock::Library;
use seatwise::stock::medium::embedded_media;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

const STEEL: &str = r#"{ name = "case steel", family = "steel", density = "7810 kg/m3", modulus = "206 GPa", poisson = "0.3", strength = "1500 MPa", expansion = "12.0 um/mK", heat_capacity = "460 J/kgK", conductivity = "40 W/mK", coldest = "-80 °C", hottest = "200 °C", source = "worked case" }"#;
const ALLOY: &str = r#"{ name = "case alloy", family = "light alloy", density = "2700 kg/m3", modulus = "70 GPa", poisson = "0.33", strength = "160 MPa", expansion = "23.0 um/mK", heat_capacity = "900 J/kgK", conductivity = "150 W/mK", hottest = "200 °C", source = "worked case" }"#;
const IRON: &str = r#"{ name = "case iron", family = "cast iron", density = "7200 kg/m3", modulus = "110 GPa", poisson = "0.26", strength = "200 MPa", expansion = "10.5 um/mK", heat_capacity = "500 J/kgK", conductivity = "50 W/mK", hottest = "250 °C", source = "worked case" }"#;

/// A bearing of this designation, of exact size, in a seat of exact interference.
fn exact(designation: &str, closure: &str, interference_um: u32, boss_mm: u32, housing: &str) -> String {
    format!(
        "title = \"Worked case\"\n[bearing]\ndesignation = \"{designation}\"\nmaterial = {STEEL}\nclosure = \
         \"{closure}\"\noutside_limits = \"0/0 um\"\n[housing]\nbore_limits = \"-{interference_um}/-{interference_um} \
         um\"\noutside = \"{boss_mm} mm\"\nmaterial = {housing}\n"
    )
}

fn checked(text: &str) -> Job {
    job::check(text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

/// The ways of a job with one seat, with media by name; all media when none is named.
fn ways(text: &str, media: &[&str]) -> SeatWays {
    let job = checked(text);
    let asked: Vec<_> = media.iter().map(|name| Library::default().medium(name).unwrap()).collect();
    let media = options::media_at_hand(&job, &asked, &embedded_media().unwrap());
    options::options(&job, &media).unwrap().swap_remove(0)
}

/// The way with these media, by id.
fn way<'w>(seat: &'w SeatWays, media: &[&str]) -> &'w Way {
    let found = seat.ways.iter().find(|way| way.used().map(|used| used.medium.id()).eq(media.iter().copied()));
    found.unwrap_or_else(|| panic!("no way with {media:?}"))
}

fn worked(way: &Way) -> &Worked {
    way.worked().unwrap_or_else(|| panic!("refused: {:?}", way.reason()))
}

fn rank(seat: &SeatWays, media: &[&str]) -> usize {
    let wanted = way(seat, media);
    seat.ways.iter().position(|way| std::ptr::eq(way, wanted)).unwrap()
}

fn setting_c(way: &Way) -> f64 {
    way.warm.as_ref().unwrap().setting.unwrap().get::<degree_celsius>()
}

fn least_c(way: &Way) -> f64 {
    way.warm.as_ref().unwrap().least_setting.unwrap().get::<degree_celsius>()
}

/// What a person reads of a sentence.
fn words(sentence: &seatwise::plan::Sentence) -> String {
    format!("{:?}", sentence.words)
}

/// The job's text with the treatments of a way written into it, as a user would.
fn with_way(text: &str, way: &Way) -> String {
    let worked = worked(way);
    let mut text = text.to_owned();
    let pieces = [("chill", &way.chill, &worked.seat.chill), ("warm", &way.warm, &worked.seat.warm)];
    for (table, used, soak) in pieces {
        let (Some(used), Some(soak)) = (used, soak) else { continue };
        let part = match used.piece {
            job::Piece::Part => "bearing",
            job::Piece::Housing => "housing",
            job::Piece::Shaft => "shaft",
        };
        let (temperature, hold) = (soak.medium_temperature.get::<degree_celsius>(), soak.hold.get::<second>());
        text += &format!(
            "[{table}]\npart = \"{part}\"\nmedium = \"{}\"\ntemperature = \"{temperature:.3} °C\"\nhold = \"{hold:.3} s\"\n",
            used.medium.id()
        );
    }
    text
}

#[test]
fn every_way_that_is_said_to_drop_in_does_so_when_it_is_written_as_a_job() {
    let fan = include_str!("../examples/fan-shaft.toml").split_once("[warm]").unwrap().0;
    let mild = ["freezer", "oven", "hot-plate"];
    let jobs = [
        (exact("6205", "open", 30, 90, ALLOY), 7, &[][..]),
        (exact("6308", "open", 35, 130, IRON), 3, &["freezer", "dry-ice", "oven", "oil-bath"]),
        (exact("6205-2RS", "NBR contact seals", 20, 70, ALLOY), 2, &mild),
        (exact("6202", "open", 15, 60, ALLOY) + "[bench]\ntemperature = \"25 °C\"\ncarry = \"20 s\"\n", 2, &mild),
        (fan.to_owned(), 2, &mild),
    ];
    let (mut races, mut calm) = (0, 0);
    for (text, least, media) in jobs {
        let seat = ways(&text, media);
        let mut held = 0;
        for way in seat.ways.iter().filter(|way| way.worked().is_some()) {
            assert!(way.trials <= MOST_TRIALS, "{} plans for one way", way.trials);
            let written = with_way(&text, way);
            let job = checked(&written);
            let plan = plan::plan(&job).unwrap();
            assert_eq!(plan.verdict, worked(way).seat.verdict, "{written}");
            // What the list calls a race, the first page of the plan calls one too, and nothing else.
            let race = words(&plan.answer(&plan.seats[0])).contains("It is a race");
            assert_eq!(race, worked(way).is_race(), "{written}");
            *(if race { &mut races } else { &mut calm }) += 1;
            if plan.verdict == Verdict::DropsIn {
                held += 1;
                assert!(plan.seats[0].at_bore.clearance.tightest >= job.bench.placing_clearance);
            }
        }
        assert!(held >= least, "only {held} ways drop in:\n{text}");
    }
    assert!(races > 3 && calm > 3, "{races} races, {calm} others");
}

#[test]
fn the_list_is_in_the_order_of_its_rule() {
    for text in [exact("6205", "open", 30, 90, ALLOY), exact("6308", "shields", 35, 130, IRON)] {
        let seat = ways(&text, &["freezer", "LN2", "dry-ice", "oven", "oil-bath", "boiling-water"]);
        let danger = |way: &Way| worked(way).hazard(way).map_or(0, |level| 4 - level as u8);
        let able: Vec<&Way> = seat.ways.iter().take_while(|way| way.worked().is_some()).collect();
        assert!(
            able.len() > 3 && seat.ways[able.len()..].iter().all(|way| way.reason().is_some()),
            "refused ones last"
        );
        for pair in able.windows(2) {
            let key = |way: &Way| (danger(way), worked(way).seat.verdict as u8, worked(way).chilling_shortens());
            assert!(key(pair[0]) <= key(pair[1]), "{:?} before {:?}", key(pair[0]), key(pair[1]));
        }
    }
}

#[test]
fn the_media_of_the_shop_are_those_that_are_asked_for_or_those_of_the_job() {
    let text = exact("6205", "open", 30, 90, ALLOY) + "[shop]\nmedia = [\"oven\", \"home freezer\"]\n";
    let used = |seat: &SeatWays| {
        let mut ids: Vec<String> =
            seat.ways.iter().flat_map(Way::used).map(|used| used.medium.id().to_owned()).collect();
        ids.sort();
        ids.dedup();
        ids
    };
    assert_eq!(used(&ways(&text, &[])), ["domestic-freezer", "oven"]);
    assert_eq!(used(&ways(&text, &["dry-ice"])), ["dry-ice"]);
    let every: usize = embedded_media().unwrap().len();
    let known =
        options::media_at_hand(&checked(&exact("6205", "open", 30, 90, ALLOY)), &[], &embedded_media().unwrap());
    assert_eq!(known.len(), every - 2, "all but still air and a fan");
}

#[test]
fn what_the_job_says_of_a_medium_counts() {
    let plain = exact("6205", "open", 30, 90, ALLOY);
    let colder = plain.clone()
        + "[chill]\npart = \"bearing\"\nmedium = \"domestic-freezer\"\ntemperature = \"-25 °C\"\nhold = \"1 min\"\n";
    let end = |text: &str| worked(way(&ways(text, &["freezer"]), &["domestic-freezer"])).seat.chill.clone().unwrap();
    assert!((end(&plain).medium_temperature.get::<degree_celsius>() + 18.0).abs() < 1e-6);
    assert!((end(&colder).medium_temperature.get::<degree_celsius>() + 25.0).abs() < 1e-6);
    assert!(end(&colder).hold.get::<second>() > 600.0, "the hold of the job is not that of the way");
    // An induction heater is refused until its power is known.
    let shaft = include_str!("../examples/fan-shaft.toml").split_once("[warm]").unwrap().0;
    let refused = ways(shaft, &["induction-heater"]);
    assert!(words(way(&refused, &["induction-heater"]).reason().unwrap()).contains("power"));
    let stated = format!(
        "{shaft}[warm]\npart = \"bearing\"\nmedium = \"induction-heater\"\npower = \"1 kW\"\nuntil = \"70 °C\"\n"
    );
    let seat = ways(&stated, &["induction-heater"]);
    let induction = way(&seat, &["induction-heater"]);
    assert_eq!(worked(induction).seat.verdict, Verdict::DropsIn);
    assert!((40.0..=120.0).contains(&setting_c(induction)) && least_c(induction) <= setting_c(induction));
}

#[test]
fn the_map_holds_every_way_the_shop_and_a_limit_that_is_near_and_its_clearance_is_that_of_the_expansion() {
    for (text, media) in [
        (exact("6205", "open", 30, 90, ALLOY), &["freezer", "oven"][..]),
        (exact("6205", "open", 30, 90, IRON), &["dry-ice", "oven"]),
        (exact("6205", "open", 5, 90, ALLOY), &["freezer"]),
    ] {
        let seat = ways(&text, media);
        let map = &seat.map;
        let c = |t: &seatwise::quantity::ThermodynamicTemperature| t.get::<degree_celsius>();
        let ends = |axis: &[seatwise::quantity::ThermodynamicTemperature]| (c(&axis[0]), c(&axis[axis.len() - 1]));
        let (inner, outer) = (ends(&map.inner), ends(&map.outer));
        // The shop lies a little inside of either axis, and the axis reaches 30 K and a margin beyond it at the least.
        let shop = c(&checked(&text).bench.temperature);
        assert!(inner.0 <= shop - 38.0 + 1e-6 && (inner.1 - shop - 8.0).abs() < 1e-6, "{inner:?}");
        assert!(outer.1 >= shop + 38.0 - 1e-6 && (outer.0 - shop + 8.0).abs() < 1e-6, "{outer:?}");
        assert!(map.inner.is_sorted() && map.outer.is_sorted());
        for mark in &map.marks {
            assert!(
                c(&mark.inner) >= inner.0 + 8.0 - 1e-6 && c(&mark.inner) <= inner.1,
                "way {} lies outside",
                mark.rank
            );
            assert!(
                c(&mark.outer) <= outer.1 - 8.0 + 1e-6 && c(&mark.outer) >= outer.0,
                "way {} lies outside",
                mark.rank
            );
        }
        let coldest_way = map.marks.iter().map(|mark| c(&mark.inner)).fold(shop - 30.0, f64::min) - 8.0;
        let hottest_way = map.marks.iter().map(|mark| c(&mark.outer)).fold(shop + 30.0, f64::max) + 8.0;
        // A limit within 60 K of that is shown with a margin of what it forbids; one that is further off moves nothing.
        let cold = map.coldest.as_ref().map(c).filter(|cold| coldest_way - cold < 60.0);
        let hot = map.hottest.as_ref().map(c).filter(|hot| hot - hottest_way < 60.0);
        let want = (
            cold.map_or(coldest_way, |c| coldest_way.min(c - 8.0)),
            hot.map_or(hottest_way, |h| hottest_way.max(h + 8.0)),
        );
        assert!((inner.0 - want.0).abs() < 1e-6 && (outer.1 - want.1).abs() < 1e-6, "{inner:?} {outer:?} {want:?}");
        // 52 mm of ring at 12.0 µm/(m K) in a bore at 23.0 or 10.5.
        let bore = if text.contains("case alloy") { 23.0 } else { 10.5 };
        let fit = if text.contains("-30/") { -30.0 } else { -5.0 };
        for (row, at) in map.clearance.iter().zip(&map.outer) {
            for (cell, inner) in row.iter().zip(&map.inner) {
                let Some(cell) = cell else { continue };
                let want = fit + 0.052 * (bore * (c(at) - 20.0) - 12.0 * (c(inner) - 20.0));
                // The thermal strain acts on a bore that is smaller by the fit: a thousandth.
                assert!((cell.value * 1e6 - want).abs() < 2e-3 * want.abs() + 0.1, "{} {want}", cell.value * 1e6);
            }
        }
    }
}

#[test]
fn oil_and_what_leaves_water_are_kept_from_bearings_that_they_would_spoil() {
    let shaft = |closure: &str| {
        format!(
            "[bearing]\ndesignation = \"6206\"\nclosure = \"{closure}\"\n[shaft]\noutside_limits = \"k6\"\n\
             material = \"carbon-steel\"\n"
        )
    };
    let refused = |closure: &str, medium: &str| {
        way(&ways(&shaft(closure), &[medium]), &[medium]).reason().map(words).unwrap_or_default()
    };
    for closure in ["shields", "NBR contact seals"] {
        assert!(refused(closure, "oil-bath").contains("the grease of the bearing"), "{closure}");
    }
    assert!(!refused("open", "oil-bath").contains("grease"), "{}", refused("open", "oil-bath"));
}
