//! What surrounds the piece while it is chilled or warmed: shelf, tray, a small freezer, a hot-air gun, a hot plate.

use super::*;
use std::f64::consts::PI;

/// A bearing in a freezer, with more lines under [chill].
fn chilled(more: &str) -> Value {
    planned(&(exact("6206", 10, 90, "$ALLOY") + &freezer(&format!("hold = \"20 min\"\n{more}")) + AT_ONCE))
}

/// A housing with more lines under [warm].
fn warmed(medium: &str, temperature: &str, more: &str) -> Value {
    let warm = format!(
        "[warm]\npart = \"housing\"\nmedium = \"{medium}\"\ntemperature = \"{temperature}\"\nhold = \"10 min\"\n{more}\n"
    );
    planned(&(exact("6206", 30, 90, "$ALLOY") + &warm + AT_ONCE))
}

#[test]
fn a_metal_shelf_is_quicker_than_a_grate_and_a_tray_is_slower() {
    let end = |more: &str| figure(&chilled(more), "/chill/end_c");
    let (shelf, grate, tray) =
        (end("rests_on = \"metal shelf\""), end("rests_on = \"grate\""), end("rests_on = \"tray\""));
    assert!(shelf < grate - 1.0 && grate < tray - 0.5, "shelf {shelf} °C, grate {grate} °C, tray {tray} °C");
    // A grate is what is assumed, and said.
    let unstated = chilled("");
    within(figure(&unstated, "/chill/end_c"), grate, 1e-9);
    assert!(unstated["assumptions"].as_array().unwrap().iter().any(|a| a["what"] == "chill.rests_on"));
}

#[test]
fn a_wrapped_piece_of_constant_properties_follows_the_time_constant_that_the_plan_states() {
    // With film, heat capacity and conductivity constant the end is the closed form T = Tm + (Ts - Tm) exp(-t/τ), and a wrap of
    // resistance R lengthens τ by h R: 2 layers of paper or a bag with trapped air, each as the plan takes it.
    let text = "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"50 mm\"\nwidth = \"40 mm\"\n\
        outside_limits = \"s6\"\nmaterial = $STEEL\n[housing]\nbore_limits = \"H7\"\noutside = \"85 mm\"\n\
        material = $STEEL\n[chill]\npart = \"bush\"\nmedium = \"freezer\"\ntemperature = \"-20 °C\"\n\
        film = \"20 W/(m²·K)\"\nhold = \"10 min\"\n[bench]\ntemperature = \"20 °C\"\ncarry = \"0 s\"\n";
    let constant = |wrap: &str| {
        let plan = planned(&text.replace("hold =", &format!("{wrap}\nhold =")));
        let tau = figure(&plan, "/chill/time_constant_s");
        within(figure(&plan, "/chill/end_c"), -20.0 + 40.0 * (-600.0 / tau).exp(), 0.01);
        tau
    };
    let bare = constant("");
    // Ring of 40/50 by 40 mm: m c/(A h), and up to 2 % less for the radiation of a bright surface, 4 ε σ T³ at 263 K.
    let (volume, surface) = (0.25 * PI * (2500.0 - 1600.0) * 40.0, PI * 90.0 * 40.0 + 0.5 * PI * (2500.0 - 1600.0));
    let lumped = 7810.0 * 460.0 * 1e-3 * volume / surface / 20.0;
    assert!(bare > 0.98 * lumped && bare < lumped, "{bare} {lumped}");
    for wrap in ["plastic bag", "paper", "cardboard box"] {
        let wrapped = constant(&format!("wrap = \"{wrap}\""));
        assert!(wrapped > 1.01 * bare, "{wrap}: {wrapped} {bare}");
    }
}

#[test]
fn a_small_box_without_a_machine_comes_to_the_temperature_that_the_two_heat_capacities_give() {
    // Ring of 0.2 kg at 460 J/(kg K), box of 0.3 kJ/K: both end where the heat lost is the heat gained.
    let text = exact("6206", 10, 90, "$ALLOY").replace("closure", "mass = \"0.2 kg\"\nclosure");
    let alone = freezer("hold = \"48 h\"\nheat_capacity = \"0.3 kJ/K\"\nholding_power = \"0 W\"");
    let plan = planned(&(text + &alone + AT_ONCE));
    let (ring, store) = (0.2 * 460.0, 300.0);
    let common = (ring * 20.0 + store * -18.0) / (ring + store);
    within(figure(&plan, "/chill/end_c"), common, 0.01);
    within(figure(&plan, "/chill/medium_drift_k"), common + 18.0, 0.01);
}

#[test]
fn a_freezer_warms_less_the_more_it_holds_and_the_stronger_its_machine_and_the_plan_says_by_how_much() {
    let with = |capacity: &str, power: &str| {
        let plan = chilled(&format!("heat_capacity = \"{capacity}\"\nholding_power = \"{power}\""));
        (figure(&plan, "/chill/end_c"), figure(&plan, "/chill/medium_drift_k"))
    };
    let large = figure(&chilled(""), "/chill/end_c");
    let (small, strong, big) = (with("1 kJ/K", "5 W"), with("1 kJ/K", "100 W"), with("100 kJ/K", "5 W"));
    assert!(small.0 > strong.0 && strong.0 > big.0 && big.0 > large, "{small:?} {strong:?} {big:?} {large}");
    assert!(small.1 > strong.1 && strong.1 > big.1 && big.1 > 0.0, "{small:?} {strong:?} {big:?}");
    within(big.0, large, 0.05);
    let more = "hold = \"20 min\"\nheat_capacity = \"1 kJ/K\"\nholding_power = \"5 W\"";
    says(&shown(&(exact("6206", 10, 90, "$ALLOY") + &freezer(more) + AT_ONCE)), &["The medium itself warms by up to"]);
}

#[test]
fn a_bearing_of_three_bodies_warms_a_small_oil_bath_down_too() {
    let bath = |more: &str| {
        let warm = format!(
            "[warm]\npart = \"bearing\"\nmedium = \"oil-bath\"\ntemperature = \"100 °C\"\nhold = \"20 min\"\n{more}\n"
        );
        planned(&(CONVEYOR_SHAFT.to_owned() + &warm + AT_ONCE))
    };
    let (large, small) = (bath(""), bath("heat_capacity = \"2 kJ/K\"\nholding_power = \"50 W\""));
    assert_eq!(small["seats"][0]["warm"]["bodies"], 3);
    assert!(figure(&small, "/warm/end_c") < figure(&large, "/warm/end_c") - 1.0);
    assert!(figure(&small, "/warm/medium_drift_k") < -1.0, "the bath cools");
}

const CONVEYOR_SHAFT: &str = "title = \"Shaft\"\n[bearing]\ndesignation = \"6206\"\nmaterial = $STEEL\nclosure = \"open\"\n\
                              [shaft]\noutside_limits = \"m6\"\nmaterial = $STEEL\n";

#[test]
fn a_hot_air_gun_gives_no_more_than_its_power_and_a_stronger_one_is_quicker() {
    let end = |power: &str| figure(&warmed("hot-air-gun", "180 °C", power), "/warm/end_c");
    let (weak, strong, plain) = (end("power = \"600 W\""), end("power = \"2000 W\""), end(""));
    assert!(weak < strong && weak < plain && plain <= strong, "{weak} {plain} {strong} °C");
    // 600 W for 10 min is 360 kJ; the boss of about 0.35 kg stores 0.9 kJ/(kg K): nowhere near all of it goes in.
    let plan = warmed("hot-air-gun", "180 °C", "power = \"600 W\"");
    let stored = figure(&plan, "/warm/mass_kg") * 900.0 * (figure(&plan, "/warm/end_quick_c") - 20.0);
    assert!(stored < 600.0 * 600.0, "{stored} J");
}

#[test]
fn a_piece_under_a_hot_air_gun_stays_below_its_air_by_what_it_loses_to_the_shop() {
    let warm = "[warm]\npart = \"housing\"\nmedium = \"hot-air-gun\"\ntemperature = \"120 °C\"\npower = \"1500 W\"\nhold = \"24 h\"\n";
    let plan = planned(&(exact("6206", 30, 90, "$ALLOY") + warm + AT_ONCE));
    let (slow, quick) = (figure(&plan, "/warm/end_c"), figure(&plan, "/warm/end_quick_c"));
    // All round in the stream it comes to the stream's temperature; else the shop takes heat from the rest of its surface.
    within(quick, 120.0, 0.5);
    assert!(slow < 115.0 && slow > 60.0, "{slow} °C");
}

/// Above 65 °C metal burns at a touch (ISO 13732-1, from memory): whatever warmed it, that is said once.
#[test]
fn a_part_that_burns_is_warned_of_whatever_warmed_it() {
    let warned = |medium: &str, lines: &str| {
        let warm = format!("[warm]\npart = \"housing\"\nmedium = \"{medium}\"\n{lines}\nhold = \"10 h\"\n");
        let plan = planned(&(exact("6206", 30, 90, "$ALLOY") + &warm + AT_ONCE));
        let end = figure(&plan, "/warm/end_quick_c");
        let codes = plan["cautions"].as_array().unwrap().iter().filter(|caution| caution["code"] == "hot-part").count();
        (end, codes)
    };
    for (medium, lines) in [
        ("oven", "temperature = \"90 °C\""),
        ("hot-plate", "temperature = \"110 °C\""),
        ("oil-bath", "temperature = \"90 °C\""),
        ("boiling-water", ""),
        ("hot-air-gun", "temperature = \"120 °C\"\npower = \"1500 W\""),
    ] {
        let (end, codes) = warned(medium, lines);
        assert!(end > 65.0 && codes == 1, "{medium}: {end} °C, warned of {codes} times");
    }
}

#[test]
fn a_hold_that_is_too_short_is_told_how_long_it_must_be() {
    let short = exact("6206", 10, 90, "$ALLOY") + &freezer("hold = \"5 min\"") + AT_ONCE;
    let plan = planned(&short);
    let needed = figure(&plan, "/time_to_clear_s/tightest");
    assert!(needed > 300.0, "{needed} s");
    assert!(caution(&plan, "does-not-clear-middle").unwrap().contains("Held for"));
    // Held as long as that, it has the placing clearance as it comes out; a little less, and it has not.
    let held = |factor: f64| {
        let hold = freezer(&format!("hold = \"{:.3} s\"", needed * factor));
        let plan = planned(&(exact("6206", 10, 90, "$ALLOY") + &hold + AT_ONCE));
        figure(&plan, "/at_bore/clearance_um/tightest")
    };
    assert!(held(1.002) >= 15.0 && held(0.99) < 15.0, "{} {}", held(1.002), held(0.99));
    let share = figure(&plan, "/share_at_clear/tightest");
    assert!((0.1..1.0).contains(&share), "{share}");
}

#[test]
fn pushed_at_the_latest_moment_it_grips_sooner_than_pushed_as_planned() {
    let text = exact("6206", 30, 90, "$ALLOY") + &oven("120 °C", LONG) + AT_ONCE;
    let plan = planned(&text);
    let (planned, latest) = (figure(&plan, "/grip_s/tightest"), figure(&plan, "/grip_at_latest_s"));
    assert!(latest > 0.0 && latest < planned, "{latest} s against {planned} s");
    says(&shown(&text), &["Pushed at the latest moment, after"]);
}

#[test]
fn the_far_side_of_a_boss_on_a_hot_plate_follows_late_and_the_middle_of_a_wall_in_an_oven_does_not() {
    let plate = warmed("hot-plate", "120 °C", "");
    let oven = warmed("oven", "120 °C", "");
    // L²/(6 a), the boss of 16 mm or more heated from one face: a = 150/(2700 · 900) = 62 mm²/s.
    let lag = figure(&plate, "/warm/middle_lag_s");
    assert!(lag > 0.5 && lag < 5.0, "{lag} s");
    assert!(figure(&oven, "/warm/middle_lag_s") < lag);
}

/// A clearance fit goes in by hand as it is: no placing clearance, no press, and it holds by nothing but what keeps it there.
#[test]
fn a_clearance_fit_with_nothing_treated_goes_in_by_hand() {
    for (class, least) in [("H7", 0.0), ("G7", 10.0)] {
        let job = format!(
            "[bearing]\ndesignation = \"6206\"\n[housing]\nbore_limits = \"{class}\"\noutside = \"90 mm\"\n\
             material = \"grey-iron\"\n"
        );
        let plan = planned(&job);
        assert_eq!(plan["verdict"], "drops in");
        within(figure(&plan, "/at_bore/clearance_um/tightest"), least, 1e-9);
        within(figure(&plan, "/at_bore/placing_clearance_um"), 0.0, 0.0);
        for code in ["press", "would-clear"] {
            assert!(caution(&plan, code).is_none(), "{code} for {class}");
        }
        let page = shown(&job);
        says(&page, &["by hand", "film of oil", "do not force it", "what holds the part in its place"]);
        for word in ["be ready to press", "unaided", "placing clearance"] {
            assert!(!page.contains(word), "{class} says {word}: {page}");
        }
    }
    // Who states a placing clearance wants it kept, whatever the fit.
    let stated = "[bearing]\ndesignation = \"6206\"\n[housing]\nbore_limits = \"H7\"\noutside = \"90 mm\"\n\
                  material = \"grey-iron\"\n[bench]\nplacing_clearance = \"5 um\"\n";
    let plan = planned(stated);
    assert_eq!(plan["verdict"], "some will not");
    within(figure(&plan, "/at_bore/placing_clearance_um"), 5.0, 1e-9);
    // A transition fit is none: part of the band is tight.
    let tight = "[bearing]\ndesignation = \"6206\"\n[housing]\nbore_limits = \"J7\"\noutside = \"90 mm\"\n\
                 material = \"grey-iron\"\n";
    let plan = planned(tight);
    assert_eq!(plan["verdict"], "press");
    assert!(figure(&plan, "/at_bore/placing_clearance_um") > 0.0);
}

/// What frees a part that has stopped half-way is of use only where something gives that temperature, and nothing is spoiled.
#[test]
fn a_temperature_that_frees_is_offered_only_where_it_can_be_had() {
    let freed = |job: &str| caution(&planned(job), "stops-half-way").unwrap().to_owned();
    // Bronze in steel comes free when cold, far below any freezer or dry ice.
    let bush = "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"50 mm\"\nwidth = \"40 mm\"\n\
                outside_limits = \"s6\"\nmaterial = \"bronze\"\n[housing]\nbore_limits = \"H7\"\noutside = \"85 mm\"\n\
                material = \"carbon-steel\"\n[chill]\npart = \"bush\"\nmedium = \"liquid-nitrogen\"\nhold = \"10 min\"\n";
    assert!(freed(bush).contains("no usual medium gives that"), "{}", freed(bush));
    // A bearing's seals do not bear what would free it from a case that is much too tight.
    let case = |limits: &str, closure: &str| {
        format!(
            "[bearing]\ndesignation = \"6206\"\nclosure = \"{closure}\"\n[housing]\nbore_limits = \"{limits}\"\n\
             outside = \"90 mm\"\nmaterial = \"cast-aluminium\"\n[warm]\npart = \"housing\"\nmedium = \"oven\"\n\
             temperature = \"100 °C\"\nhold = \"3 h\"\n[chill]\npart = \"bearing\"\nmedium = \"domestic-freezer\"\n\
             hold = \"3 h\"\n"
        )
    };
    assert!(freed(&case("N7", "open")).contains("free the tightest case; see the limits first"));
    let said = freed(&case("-75/-60 um", "NBR contact seals"));
    assert!(said.contains("beyond the limit of the bearing (elastomer seals), 80 °C"), "{said}");
}

/// With a housing that has been in the oven for an hour when the bearing goes into the freezer, the first hour of the curve is
/// that of the housing alone.
#[test]
fn a_piece_has_the_temperature_of_the_shop_until_it_goes_into_its_medium() {
    let warm = exact("6206", 20, 100, "$ALLOY") + &oven("90 °C", "hold = \"2 h\"") + AT_ONCE;
    let both = warm.clone() + &freezer("hold = \"1 h\"");
    let curve = |text: &str| {
        let job = job::check(&job_text(text), &Library::default()).unwrap();
        plan::plan(&job).unwrap().seats.remove(0).history.points
    };
    let (alone, both) = (curve(&warm), curve(&both));
    let mut before = 0;
    for (one, two) in alone.iter().zip(&both).take_while(|(one, _)| one.time.value < 0.0) {
        within(one.time.value, two.time.value, 1e-6);
        let colder = 1e6 * (two.clearance.middle - one.clearance.middle).value;
        if one.time.value <= -3600.0 {
            within(colder, 0.0, 1e-3);
            before += 1;
        } else if one.time.value > -3500.0 {
            assert!(colder > 0.0, "{colder} µm at {} s", one.time.value);
        }
    }
    assert!(before > 5, "{before} points before the freezer");
}

#[test]
fn the_curve_of_the_clearance_runs_forward_and_holds_what_the_plan_says() {
    let chilled = exact("6206", 20, 100, "$ALLOY") + &freezer("hold = \"1 h\"") + AT_ONCE;
    let warmed = exact("6206", 20, 100, "$ALLOY") + &oven("90 °C", "hold = \"1 h\"") + AT_ONCE;
    for (text, treated) in [(exact("6206", 20, 100, "$ALLOY"), false), (chilled, true), (warmed, true)] {
        let job = job::check(&job_text(&text), &Library::default()).unwrap();
        let plan = plan::plan(&job).unwrap();
        let seat = &plan.seats[0];
        let points = &seat.history.points;
        assert!(points.len() > 10 && points.windows(2).all(|pair| pair[0].time < pair[1].time), "{text}");
        assert_eq!(points[0].time.value < 0.0, treated, "only what was in a medium has a time before it came out");
        assert!(seat.history.in_seat.points.windows(2).all(|pair| pair[0].time < pair[1].time), "{text}");
        // The part is carried for no time here, so that it arrives as it leaves.
        let out = points.iter().find(|point| point.time.value.abs() < 1e-9).unwrap();
        within(1e6 * out.clearance.tightest.value, 1e6 * seat.at_bore.clearance.tightest.value, 0.01);
        let before = &points[0].clearance;
        within(1e6 * before.tightest.value, 1e6 * seat.fit.clearance.tightest.value, 0.01);
        assert!(points.iter().all(|point| point.clearance.tightest <= point.clearance.loosest), "{text}");
    }
}

#[test]
fn a_carry_of_less_than_a_second_is_at_once() {
    let job = |carry: &str| {
        exact("6205", 20, 90, "$ALLOY") + &oven("100 °C", LONG) + &format!("[bench]\ncarry = \"{carry} s\"\n")
    };
    says(&shown(&job("0.99")), &["Place it as soon as it is out"]);
    says(&shown(&job("1")), &["Place it within 1 s of taking it out"]);
}

/// Grey iron cracks where nodular iron yields; what is not stated is taken to crack.
#[test]
fn stated_iron_is_brittle_unless_its_strength_is_one_at_which_it_yields() {
    const KIND: &str = ", strength_kind = \"0.2 % proof\"";
    let ductile = exact("6205", 150, 80, "$IRON").replace("$IRON", IRON).replace("200 MPa", "120 MPa");
    let with = |kind: &str| ductile.replace("0.2 % proof", kind);
    let stated = ductile.replace(KIND, "");
    let passed = |text: &str| caution(&planned(text), "elastic-limit-passed").unwrap().to_owned();
    assert!(!passed(&stated).contains("ideal plastic") && passed(&stated) == passed(&with("tensile, brittle")));
    assert!(passed(&ductile).contains("An ideal plastic wall would yield over"));
    let assumed = |text: &str| planned(text)["assumptions"].to_string().contains("strength_kind");
    assert!(assumed(&stated) && !assumed(&ductile));
    let refused = job::check(&job_text(&with("hard")), &Library::default()).unwrap_err().to_string();
    assert!(
        refused.contains("strength_kind` cannot be \"hard\"") && refused.contains("`tensile, brittle`"),
        "{refused}"
    );
}
