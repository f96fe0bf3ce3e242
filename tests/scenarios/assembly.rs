//! Seals, stacks and spacers, from the job's text to what the fitter must hear.

use super::*;

/// A bearing in its own bore, beside which a seal or a stack is described.
pub(super) fn beside(rest: &str) -> String {
    exact("6206", 20, 100, "$ALLOY") + rest
}

pub(super) fn steps(value: &Value) -> String {
    let steps = value["steps"].as_array().unwrap();
    steps.iter().map(|step| step.as_str().unwrap()).collect::<Vec<_>>().join(" ")
}

#[test]
fn a_seal_on_a_worn_shaft_runs_a_millimetre_beside_the_old_track() {
    // 35x52x7, groove worn on the shaft: 1 mm by shim or by depth; driver 51.6 mm; flush; not chilled; lip to the oil.
    let seal = "[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\nfitted = \"after the bearing\"\nworn_track = \"0.4 mm\"\n";
    let plan = planned(&beside(seal));
    within(number(&plan["seal"], "/shift_mm"), 1.0, 0.05);
    within(number(&plan["seal"], "/driver_mm"), 51.6, 0.05);
    // Flush, 7.0, and a millimetre deeper: depth and reading include it.
    within(number(&plan["seal"], "/depth_mm"), 8.0, 1e-9);
    within(number(&plan["seal"], "/moved_mm"), 1.0, 1e-9);
    within(number(&plan["seal"], "/reading_least_mm"), 0.8, 1e-6);
    within(number(&plan["seal"], "/reading_most_mm"), 1.2, 1e-6);
    says(
        &steps(&plan["seal"]),
        &[
            "neither chilled nor warmed",
            "Lip to the oil",
            "until the face that goes in first is 8.000 mm below",
            "1.000 mm beside it, by pressing the seal that much deeper",
            "it reads 0.800 mm to 1.200 mm",
            "51.6 mm",
        ],
    );
    // Against a shoulder the millimetre is a ring behind the seal.
    let plan = planned(&beside(&(seal.to_owned() + "shoulder = \"7 mm\"\n")));
    says(
        &steps(&plan["seal"]),
        &["a ring of 1.000 mm between the seal and its shoulder", "until it sits against the ring on its shoulder"],
    );
    within(number(&plan["seal"], "/depth_mm"), 6.0, 1e-9);
    within(number(&plan["seal"], "/reading_least_mm"), -1.2, 1e-6);
    says(caution(&plan, "seal-proud").unwrap(), &["1.000 mm proud", "clears the worn track", "sleeve the shaft"]);
}

#[test]
fn a_seal_that_meets_its_shoulder_early_stands_proud_and_a_drain_hole_would_be_blocked() {
    // Asked 6.0 deep; shoulder 5.5 below the face; 7 mm wide: 1.5 proud. Hole at 5.8.
    let seal =
        "[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\ndepth = \"6.0 mm\"\nshoulder = \"5.5 mm\"\ndrain = \"5.8 mm\"\n";
    let plan = planned(&beside(seal));
    within(number(&plan["seal"], "/short_by_mm"), 0.5, 0.01);
    within(number(&plan["seal"], "/drain_behind_mm"), 0.3, 0.01);
    says(caution(&plan, "seal-shoulder").unwrap(), &["6.000 mm", "5.500 mm", "0.500 mm short", "1.500 mm proud"]);
    says(caution(&plan, "seal-drain").unwrap(), &["5.800 mm", "6.000 mm", "blocked", "open by 0.300 mm"]);
    // Without the shoulder it would go to its depth, past a hole at 5.8 that begins 0.2 before it.
    let deep = planned(&beside(&seal.replace("shoulder = \"5.5 mm\"\n", "")));
    within(number(&deep["seal"], "/drain_behind_mm"), -0.2, 1e-6);
    says(caution(&deep, "seal-drain").unwrap(), &["5.800 mm", "6.000 mm", "Keep the seal to 5.800 mm or less"]);
    // A seal seven wide in five and a half of bore: its straight length is too short as well.
    says(caution(&plan, "seal-seat").unwrap(), &["straight length", "5.500 mm", "at least 5.950 mm"]);
    // Moved off a track from there, with a ring of a millimetre: 2.5 proud, and the numbers of the shoulder stay its own.
    let plan = planned(&beside(&(seal.to_owned() + "worn_track = \"0.3 mm\"\n")));
    says(
        caution(&plan, "seal-shoulder").unwrap(),
        &[
            "to go 6.000 mm",
            "shoulder is at 5.500 mm",
            "0.500 mm short",
            "2.500 mm proud",
            "ring before the shoulder included",
        ],
    );
}

#[test]
fn several_spacers_are_dimensions_of_their_own() {
    // 27.5 ±0.05 - 9.35 ±0.05 - (15.88 to 16) - (1.93 to 2) less 0.2 ±0.01 and 0.1 ±0.02: -0.28 to 0.17 with their limits.
    let spacers =
        "spacer = [\"0.2 mm ±0.01 mm\", \"0.1 mm ±0.02 mm\"]\norder = [\"spacer 2\", \"bearing\", \"spacer 1\"]\n";
    let plan = planned(&stack("27.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", spacers));
    let ring = &plan["stack"]["ring"];
    within(number(ring, "/play_mm/least"), 0.05 - 0.33, 1e-6);
    within(number(ring, "/play_mm/most"), 0.44 - 0.27, 1e-6);
    let names: Vec<&str> =
        ring["dimensions"].as_array().unwrap().iter().map(|row| row["what"].as_str().unwrap()).collect();
    assert_eq!(names[2..], ["spacer 2", "bearing", "spacer 1", "DIN 472 62x2"]);
    // The bearing's face: only spacer 2 lies behind it.
    within(number(ring, "/reading_mm/least"), 11.45 - 0.12, 1e-6);
    says(&steps(ring), &["spacer 2, bearing, spacer 1, ring"]);
}

#[test]
fn a_stack_that_just_fills_its_groove_closes() {
    // 27.6 - 9.6 - 16 - 2 is 0 at the tightest, whatever the last binary digits of these say.
    let exact = "bearing = \"16 mm ±0 mm\"\nring = { thickness = \"2 mm ±0 mm\" }\n";
    for (depth, wall) in [("27.6", "9.6"), ("27.3", "9.3"), ("28.1", "10.1"), ("27.7", "9.7")] {
        let text = stack(&format!("{depth} mm ±0 mm"), &format!("{wall} mm ±0 mm"), exact);
        let text = text.replace("\" }\nbearing", "\", width = \"2.15 mm ±0 mm\" }\nbearing");
        let plan = planned(&text);
        let ring = &plan["stack"]["ring"];
        assert_eq!((ring["closes"].as_str(), number(ring, "/share_short")), (Some("always"), 0.0), "{depth} - {wall}");
        assert_eq!((number(ring, "/play_mm/least"), ring["mend"].as_str()), (0.0, Some("none")));
    }
}

#[test]
fn a_spacer_too_long_binds_when_both_outer_rings_are_driven_home() {
    // 0.10 mm longer than the shoulders are apart, in the hub of two 6204 as delivered.
    let hub = |spacer: &str| {
        exact("6204", 0, 90, "$ALLOY")
            + &format!("[stack.pair]\nshoulders = \"62 mm ±0 mm\"\nspacer = \"{spacer} ±0 mm\"\n")
    };
    let plan = planned(&hub("62.10 mm"));
    let pair = &plan["stack"]["pair"];
    within(number(pair, "/difference_mm/middle"), 0.10, 0.001);
    says(caution(&plan, "spacer-length").unwrap(), &["0.100 mm longer (+)", "both outer rings driven home", "bind"]);
    says(&steps(pair), &["only until its inner ring touches the spacer", "0.100 mm off its shoulder"]);
    // The other sign: the axle draws the inner rings together, and a shim mends it.
    let plan = planned(&hub("61.90 mm"));
    within(number(&plan["stack"]["pair"], "/difference_mm/middle"), -0.10, 0.001);
    says(caution(&plan, "spacer-length").unwrap(), &["0.100 mm shorter (-)", "draws the inner rings together", "Shim"]);
    says(&steps(&plan["stack"]["pair"]), &["Add a shim to the spacer", "as thick as it is short, 0.100 mm"]);
    let plan = planned(&hub("62 mm"));
    assert_eq!((caution(&plan, "spacer-length"), plan["stack"]["pair"]["spacer_is"].as_str()), (None, Some("equal")));
}

#[test]
fn a_spacer_whose_limits_straddle_the_shoulders_is_advised_both_ways() {
    let hub = |spacer: &str| {
        let hub = exact("6204", 0, 90, "$ALLOY");
        planned(&format!("{hub}[stack.pair]\nshoulders = \"62 mm ±0.02 mm\"\nspacer = \"{spacer}\"\n"))
    };
    // Its middle is as long as, longer or shorter than that of the shoulders: the readings decide in each.
    for (spacer, longer, shorter) in
        [("62 mm ±0.03 mm", 0.05, 0.05), ("62.01 mm ±0.03 mm", 0.06, 0.04), ("61.99 mm ±0.03 mm", 0.04, 0.06)]
    {
        let plan = hub(spacer);
        let pair = &plan["stack"]["pair"];
        assert_eq!(pair["spacer_is"], "either", "{spacer}");
        let (longer, shorter) = (format!("{longer:.3} mm"), format!("{shorter:.3} mm"));
        says(
            &steps(pair),
            &[
                &format!("up to {longer} too long"),
                &format!("up to {shorter} too short"),
                "Too short: add a shim",
                "Never drive",
            ],
        );
        says(
            caution(&plan, "spacer-length").unwrap(),
            &[
                &format!("{longer} longer (+)"),
                &format!("{shorter} shorter (-)"),
                "pushes the inner rings apart",
                "draws the inner rings",
            ],
        );
    }
    // It just reaches: longer or as long, never shorter.
    assert_eq!(hub("62.05 mm ±0.03 mm")["stack"]["pair"]["spacer_is"], "longer");
    assert_eq!(hub("61.95 mm ±0.03 mm")["stack"]["pair"]["spacer_is"], "shorter");
    // The axial play of these bearings is about 0.1 mm: far beyond it they bind in every case, well within it in none.
    let binds = |spacer: &str| hub(spacer)["stack"]["pair"]["binds"].clone();
    assert_eq!((binds("62.6 mm ±0.03 mm"), binds("61.4 mm ±0.03 mm")), ("always".into(), "always".into()));
    assert_eq!(binds("62.3 mm ±0.3 mm"), "sometimes");
    assert_eq!(binds("62 mm ±0.001 mm"), "never");
}

/// A 6206 on its shoulder under a ring, with this depth and place of the groove's wall.
pub(super) fn stack(depth: &str, from_face: &str, rest: &str) -> String {
    beside(&format!("[stack]\ndepth = \"{depth}\"\ngroove = {{ from_face = \"{from_face}\" }}\n{rest}"))
}

#[test]
fn the_play_under_a_ring_is_depth_less_wall_bearing_and_ring() {
    // 27.5 ±0.05 - 9.35 ±0.05 - (15.88 to 16) - (1.93 to 2): 0.05 to 0.44, worked by hand.
    let plan = planned(&stack("27.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", ""));
    let ring = &plan["stack"]["ring"];
    assert_eq!((ring["name"].as_str(), ring["closes"].as_str()), (Some("DIN 472 62x2"), Some("always")));
    within(number(ring, "/play_mm/least"), 0.05, 1e-6);
    within(number(ring, "/play_mm/most"), 0.44, 1e-6);
    // Root of 0.05² + 0.05² + 0.06² + 0.035² = 0.009825.
    within(number(ring, "/play_root_sum_square_mm/most") - number(ring, "/play_mm/middle"), 0.099_12, 1e-4);
    // The bearing seated: 27.45 - 16 to 27.55 - 15.88.
    within(number(ring, "/reading_mm/least"), 11.45, 1e-6);
    within(number(ring, "/reading_mm/most"), 11.67, 1e-6);
    says(&steps(ring), &["11.450 mm to 11.670 mm", "still out", "as wanted in every case"]);
    says(caution(&plan, "retaining-ring").unwrap(), &["eye protection"]);
}

#[test]
fn a_stack_that_closes_in_part_says_in_how_many_and_what_mends_it() {
    let plan = planned(&stack("27.5 mm ±0.05 mm", "9.55 mm ±0.05 mm", ""));
    let ring = &plan["stack"]["ring"];
    assert_eq!(ring["closes"], "sometimes");
    within(number(ring, "/play_mm/least"), -0.15, 1e-6);
    assert!(number(ring, "/share_short") > 0.1 && number(ring, "/share_short") < 0.5);
    says(
        caution(&plan, "stack-may-not-close").unwrap(),
        &["-0.150 mm to 0.240 mm", "0.150 mm is missing", "bearing are the widest"],
    );
    says(&steps(ring), &["Take at least 0.150 mm off", "a deeper seat; never grind the bearing"]);
    // A spacer that is long enough gives it; one that is not does not.
    for (spacer, wall, words) in [
        ("0.5 mm ±0 mm", "9.35 mm ±0.05 mm", "a shorter spacer"),
        ("0.1 mm ±0 mm", "9.45 mm ±0.05 mm", "a deeper seat"),
    ] {
        let plan = planned(&stack("27.5 mm ±0.05 mm", wall, &format!("spacer = \"{spacer}\"\n")));
        says(&steps(&plan["stack"]["ring"]), &[words]);
    }
}

#[test]
fn a_stack_that_cannot_close_is_not_to_be_pressed() {
    let plan = planned(&stack("27.5 mm ±0.05 mm", "10 mm ±0.05 mm", ""));
    assert_eq!(plan["stack"]["ring"]["closes"], "never");
    says(
        caution(&plan, "stack-cannot-close").unwrap(),
        &["cannot go into its groove", "-0.600 mm to -0.210 mm", "Do not press"],
    );
}

#[test]
fn a_shim_is_given_by_one_thickness_or_chosen_for_each_assembly() {
    // Parts measured: play 0.19 ±0.02 + the limits of the ring; one shim of 0.10 suits.
    let measured = "bearing = { measured = \"15.95 mm\", within = \"0.005 mm\" }\nplay = { least = \"0 mm\", most = \"0.15 mm\" }\n";
    let plan = planned(&stack("27.50 mm ±0.005 mm", "9.30 mm ±0.005 mm", measured));
    let ring = &plan["stack"]["ring"];
    assert_eq!(ring["mend"], "fixed");
    // 0.235 to 0.335: from 0.185 to 0.235.
    within(number(ring, "/mend_mm/least"), 0.185, 1e-6);
    within(number(ring, "/mend_mm/most"), 0.235, 1e-6);
    let unmeasured = "play = { least = \"0 mm\", most = \"0.2 mm\" }\n";
    let plan = planned(&stack("27.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", unmeasured));
    assert_eq!(plan["stack"]["ring"]["mend"], "chosen");
    assert!(caution(&plan, "stack-much-play").is_some());
    // Without the ring the gap is 2.05 to 2.37: too full for a play of 0.5 to 0.6 in every case, by 0.16 to 0.45.
    let full = "play = { least = \"0.5 mm\", most = \"0.6 mm\" }\n";
    let plan = planned(&stack("27.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", full));
    says(
        &steps(&plan["stack"]["ring"]),
        &[
            "Every assembly is too full",
            "a play of 0.500 mm to 0.600 mm, less the measured gap",
            "assembly that is 0.160 mm to 0.450 mm: a deeper seat",
        ],
    );
}

#[test]
fn a_groove_too_near_the_face_is_named_with_the_land_it_should_have() {
    let plan = planned(&stack("21.4 mm ±0.05 mm", "3.2 mm ±0.05 mm", ""));
    says(caution(&plan, "groove-land").unwrap(), &["3.150 mm", "4.500 mm"]);
}

#[test]
fn a_ring_thicker_than_its_groove_is_named() {
    let text =
        stack("27.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", "").replace("\" }", "\", width = \"2 mm -0.05/+0.05 mm\" }");
    says(caution(&planned(&text), "ring-in-groove").unwrap(), &["DIN 472 62x2", "-0.050 mm to 0.120 mm"]);
}

#[test]
fn a_ring_on_a_shaft_is_one_of_din_471() {
    let text = "title = \"Shaft\"\n[bearing]\ndesignation = \"6206\"\nclosure = \"open\"\n[shaft]\noutside_limits = \"k6\"\n\
                material = \"carbon-steel\"\n[stack]\ngroove = { from_shoulder = \"17.6 mm 0/+0.1 mm\" }\n";
    let ring = &planned(text)["stack"]["ring"];
    assert_eq!(ring["name"], "DIN 471 30x1.5");
    // 17.6 to 17.7 less 15.88 to 16 less 1.44 to 1.5.
    within(number(ring, "/play_mm/least"), 0.1, 1e-6);
    within(number(ring, "/play_mm/most"), 0.38, 1e-6);
    assert!(ring["reading_mm"].is_null());
}

#[test]
fn a_lip_that_runs_too_fast_is_told_with_its_speed_and_the_limits() {
    // 80 mm at 6000 rpm: 25.1 m/s on nitrile.
    let seal = "[seal]\nsize = \"80x100x10\"\nlip = \"NBR\"\nspeed = \"6000 rpm\"\nshaft_hardness = \"50 HRC\"\n";
    let plan = planned(&beside(seal));
    within(number(&plan["seal"], "/lip_speed_m_s"), 25.13, 0.01);
    says(
        caution(&plan, "seal-lip-speed").unwrap(),
        &[
            "25.2 m/s",
            "up to 12.0 m/s by some makers and up to 14.0 m/s by others",
            "beyond that by none",
            "another elastomer",
        ],
    );
    // From 4 m/s on the shaft must be harder.
    says(caution(&plan, "seal-seat").unwrap(), &["shaft, hardness", "50 HRC", "at least 55 HRC"]);
    let slow = planned(&beside(&seal.replace("6000", "600")));
    assert_eq!((caution(&slow, "seal-lip-speed"), caution(&slow, "seal-seat")), (None, None));
    let fluoro = planned(&beside(&seal.replace("NBR", "FKM")));
    assert_eq!(caution(&fluoro, "seal-lip-speed"), None);
}

#[test]
fn a_seal_in_an_oversize_bore_is_told_to_be_loose() {
    let seal = "[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\ncase = \"metal\"\nbore_limits = \"+0.10/+0.16 mm\"\n";
    let plan = planned(&beside(seal));
    within(number(&plan["seal"], "/interference_um/loosest"), 130.0 - 160.0, 0.1);
    says(caution(&plan, "seal-loose").unwrap(), &["-30 µm to 130 µm", "take a seal with a rubber case"]);
    // Who has a rubber case is not told to take one.
    let rubber = seal.replace("metal", "rubber").replace("0.10/+0.16", "0.30/+0.40");
    let said = caution(&planned(&beside(&rubber)), "seal-loose").unwrap().to_owned();
    says(&said, &["wants a sleeve"]);
    assert!(!said.contains("rubber case"), "{said}");
}

#[test]
fn what_the_heat_of_the_housing_does_to_the_seal_is_said() {
    let seal = |fitted: &str| format!("[seal]\nsize = \"35x62x8\"\nlip = \"NBR\"\nfitted = \"{fitted} the bearing\"\n");
    // Fitted first it shares an oven of 110 °C: nitrile bears 100 °C, and the job must not be done so.
    let first = planned(&beside(&(seal("before") + &oven("110 °C", LONG))));
    assert_eq!(first["verdict"], "do not");
    assert!(first["seal"]["steps"].as_array().unwrap().is_empty(), "no steps for what must not be done");
    says(first["seal"]["neighbour"].as_str().unwrap(), &["comes to 110 °C", "100 °C"]);
    // Fitted after, it only has to wait.
    let after = planned(&beside(&(seal("after") + &oven("110 °C", LONG))));
    assert_eq!(after["verdict"], "drops in");
    says(after["seal"]["neighbour"].as_str().unwrap(), &["110 °C", "hand-warm, 50 °C or less"]);
    assert_eq!(after["seal"]["shares_bore"], true);
    says(caution(&after, "seal-shares-bore").unwrap(), &["must not score"]);
}

#[test]
fn a_cold_bearing_beside_a_seal_and_sealant_on_its_way_are_warned_of() {
    let chill = "[chill]\npart = \"bearing\"\nmedium = \"dry-ice\"\nhold = \"1 h\"\n";
    let seal =
        "[seal]\nsize = \"35x62x8\"\nlip = \"FKM\"\nlips = \"double\"\nsealant = \"yes\"\npasses_over = \"thread\"\n";
    let plan = planned(&beside(&(seal.to_owned() + chill)));
    says(caution(&plan, "seal-cold-neighbour").unwrap(), &["-20 °C", "do not bend the lip"]);
    says(caution(&plan, "seal-sealant").unwrap(), &["wiped into it"]);
    says(&steps(&plan["seal"]), &["a third to a half with grease", "goes over a thread", "No sealant on the bore"]);
}

#[test]
fn the_page_gives_what_to_do_before_the_numbers() {
    let job = include_str!("../../examples/conveyor-drive.toml");
    let page = shown(job);
    let at = |words: &str| page.find(words).unwrap_or_else(|| panic!("no \"{words}\""));
    assert!(at("What to do, axial stack") < at("What to do, shaft seal"), "the seal comes last in this job");
    assert!(at("What to do, shaft seal") < at("Housing seat, nominal"));
    let inch = {
        let job = job::check(job, &Library::default()).unwrap();
        report::text::plan(&plan::plan(&job).unwrap(), seatwise::quantity::System::Inch)
    };
    says(&inch, &["ft/min", "lbf", " in"]);
}
