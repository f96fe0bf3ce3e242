//! What happens at a limit itself, where a shop does meet it: nothing between the parts, a temperature just reached, no way to
//! carry, a part that is just good enough.

use super::{is_said, plane, ring};
use crate::assembly::steps;
use crate::{exact, job_text, number, oven, planned, says, shown};
use seatwise::job::{self, AnyValue};
use seatwise::plan::{self, Word};
use seatwise::stock::Library;

/// A bush and a bore of these limits, with the placing clearance stated or not, and the rest of the job.
fn fit(inner: &str, bore: &str, rest: &str) -> String {
    ring("40", rest).replace("\"0/0 um\"", &format!("\"{inner} um\"")).replace("-40/-40 um", &format!("{bore} um"))
}

/// What was measured decides unless it may be on both sides of nothing.
#[test]
fn a_measurement_decides_up_to_nothing_itself() {
    let measured = |um: u32| {
        let size = |um: u32| format!("{{ measured = \"62.{um:03} mm\", within = \"2 um\", at = \"20 °C\" }}");
        let text = ring("40", "").replace("\"0/0 um\"", &size(10)).replace("\"-40/-40 um\"", &size(um));
        is_said(&planned(&text), ("cannot-decide", "", ""))
    };
    assert_eq!([6, 7, 10, 13, 14].map(measured), [false, true, true, true, false]);
}

/// A hub that flows bears what an ideal plastic wall bears; one that cracks bears nothing more, and below its limit there is
/// nothing to say.
#[test]
fn only_a_hub_that_flows_has_a_plastic_state() {
    let plastic = |interference: &str, bore: &str, hub: &str, bush: &str| {
        let text =
            job_text(&ring(interference, "").replace("$ALLOY", hub).replace("$STEEL", bush).replace("40 mm", bore));
        let job = job::check(&text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"));
        let press = plan::plan_by(&job, plan::Method::Plane).unwrap().seats.remove(0).press;
        (press.yield_factor.tightest.unwrap() < 1.0, press.plastic.is_some(), press.weaker)
    };
    assert_eq!(plastic("100", "40 mm", "$ALLOY", "$STEEL"), (false, false, "housing bore"));
    assert_eq!(plastic("175", "40 mm", "$ALLOY", "$STEEL"), (true, true, "housing bore"));
    assert_eq!(plastic("175", "10 mm", "\"grey-iron\"", "$STEEL"), (true, false, "housing bore"));
    assert_eq!(plastic("175", "40 mm", "\"low-alloy-steel\"", "\"bronze\""), (true, false, "bush"));
}

/// The words that a card asks a reading to be within, of every blank of this name; quantities in SI.
fn blanks(text: &str, what: &str) -> Vec<Option<String>> {
    let text = job_text(text);
    let job = job::check(&text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    let plan = plan::plan_by(&job, plan::Method::Plane).unwrap();
    let word = |word: &Word| match word {
        Word::Text(text) => text.to_string(),
        Word::Value(AnyValue::Duration(time), _) => format!("{:.1} s", time.value),
        Word::Value(value, _) => format!("{value:?}"),
    };
    let steps = plan.work().stages.into_iter().flat_map(|stage| stage.steps);
    let blanks = steps.flat_map(|step| step.blanks).filter(|blank| blank.what == what);
    blanks.map(|blank| blank.wanted.map(|wanted| wanted.words.iter().map(word).collect())).collect()
}

const PLACING: &str = "[bench]\nplacing_clearance = \"10 um\"\n";

#[test]
fn a_fit_of_nothing_slides_in_by_hand_unless_more_was_asked_for() {
    let even = planned(&fit("0/0", "0/0", ""));
    assert_eq!(even["verdict"], "drops in");
    assert!(!is_said(&even, ("would-clear", "", "")), "{}", even["cautions"]);
    says(&shown(&fit("0/0", "0/0", "")), &["by hand at the temperature of the shop", "with 0 µm to 0 µm of clearance"]);
    for (inner, bore, verdict, words) in [
        ("0/0", "0/0", "press", "has to be pushed into the housing: the tightest case has only 0 µm of clearance"),
        ("0/0", "+10/+10", "drops in", "by hand at the temperature of the shop"),
        ("0/0", "+9.9/+10", "press", "the tightest case has only"),
        ("0/0", "-1/-1", "press", "has to be pressed into the housing: up to"),
        ("0/0", "0/+30", "some will not", "the tightest case has only 0 µm, too little to drop in unaided"),
        ("0/+1", "0/+30", "some will not", "the tightest case keeps 1 µm of interference; be ready to press"),
    ] {
        let text = fit(inner, bore, PLACING);
        let plan = planned(&text);
        assert_eq!(plan["verdict"], verdict, "{inner} in {bore}");
        assert_eq!(is_said(&plan, ("would-clear", "", "")), verdict != "drops in", "{inner} in {bore}");
        says(&shown(&text), &[words]);
        // Only what has interference left is stopped by a force.
        let stop = blanks(&text, "highest force");
        let pressed = number(&plan, "/seats/0/at_bore/clearance_um/tightest") < 0.0;
        assert!(stop.len() == 1 && stop[0].is_some() == pressed, "{inner} in {bore}: {stop:?}");
    }
    // A jig that only slides the part home turns lightly, and there is nothing to pull it out with.
    let jig = "[press]\nmeans = \"screw jig\"\nthread = \"M8\"\n";
    says(&shown(&fit("0/0", "0/0", &format!("{PLACING}{jig}"))), &["The M8 jig turns lightly until it is home"]);
    let torque = |bore: &str| planned(&fit("0/0", bore, jig))["seats"][0]["removal"]["torque_nm"].clone();
    assert!(torque("0/0").is_null() && torque("-1/-1").is_number());
}

#[test]
fn a_fit_of_nothing_is_neither_loose_nor_tight_in_service() {
    let service = "[service]\ncoldest = \"20 °C\"\nhottest = \"20 °C\"\n";
    let said = |inner: &str, bore: &str| {
        let plan = planned(&fit(inner, bore, service));
        let loose = ["", "every case is loose", "part of the band is loose"];
        loose.map(|words| is_said(&plan, ("loose-in-service", "warning", words)))
    };
    assert_eq!(said("0/0", "0/0"), [false; 3]);
    assert_eq!(said("0/+1", "0/0"), [false; 3]);
    assert_eq!(said("0/0", "0/+1"), [true, false, true]);
    assert_eq!(said("-1/-1", "0/+1"), [true, true, false]);
    // A fit that presses on nothing has nothing to lose by creep, in one light alloy at any heat.
    let hot = |bore: &str| {
        let text = fit("0/0", bore, "[service]\ncoldest = \"20 °C\"\nhottest = \"120 °C\"\n");
        let plan = planned(&text.replace("$STEEL", "$ALLOY"));
        assert_eq!(number(&plan, "/seats/0/service/1/interference_um/tightest") > 0.0, bore != "0/0");
        is_said(&plan, ("creep-in-service", "caution", ""))
    };
    assert!(!hot("0/0") && hot("-1/-1"));
}

#[test]
fn a_material_may_run_at_its_limit_and_not_beyond() {
    let at = |coldest: &str, hottest: &str| {
        let service = format!("[service]\ncoldest = \"{coldest} °C\"\nhottest = \"{hottest} °C\"\n");
        let plan = plane(&ring("40", &service).replace("$ALLOY", "\"magnesium-az91\"").replace("$STEEL", "\"pa66\""));
        ["coldest in service", "hottest in service"].map(|words| is_said(&plan, ("limit-in-service", "warning", words)))
    };
    assert_eq!(at("-40", "100"), [false, false]);
    assert_eq!(at("-40.1", "100"), [true, false]);
    assert_eq!(at("-40", "100.1"), [false, true]);
}

#[test]
fn what_is_just_good_enough_is_good() {
    let found = |rest: &str| {
        planned(
            &(exact("6205", 20, 90, "$ALLOY")
                + "[shaft]\noutside_limits = \"k5\"\nmaterial = $STEEL\n[seal]\nsize = \"25x52x7\"\nlip = \"NBR\"\nfitted = \"after the bearing\"\n[inspection]\nbearing = \"used\"\n"
                + rest),
        )
    };
    let allowed = number(&found("run_out = \"1 um\""), "/inspection/run_out_allowed_um");
    let over = allowed + 0.1;
    let out = |um: f64| format!("run_out = \"{um:.3} um\"");
    for (rest, words, state) in [
        ("lead_in = \"0.5 mm\"".to_owned(), "A chamfer at the mouth", "good"),
        ("lead_in = \"0.49 mm\"".to_owned(), "A chamfer at the mouth", "not in order"),
        ("lip_track = \"Ra 0.2 um\"".to_owned(), "The track of the lip", "good"),
        ("lip_track = \"Ra 0.8 um\"".to_owned(), "The track of the lip", "good"),
        ("lip_track = \"Ra 0.81 um\"".to_owned(), "The track of the lip", "not in order"),
        ("lip_track = \"Ra 0.19 um\"".to_owned(), "The track of the lip", "not in order"),
        (out(allowed), "Run-out at the seat", "good"),
        (out(over), "Run-out at the seat", "not in order"),
        ("feel = \"smooth\"".to_owned(), "it must run evenly", "good"),
        ("feel = \"gritty\"".to_owned(), "it must run evenly", "not in order"),
        ("".to_owned(), "it must run evenly", "to do"),
    ] {
        let plan = found(&rest);
        let checks = plan["inspection"]["checks"].as_array().unwrap();
        let check = checks.iter().find(|check| check["text"].as_str().unwrap().contains(words));
        assert_eq!(check.unwrap_or_else(|| panic!("{words}: {checks:?}"))["state"], state, "{rest}");
    }
}

#[test]
fn a_spacer_is_equal_longer_or_shorter_by_the_signs_of_its_limits() {
    let pair = |spacer: &str| {
        let hub = exact("6204", 0, 90, "$ALLOY");
        planned(&format!("{hub}[stack.pair]\nshoulders = \"62 mm ±0 mm\"\nspacer = \"{spacer}\"\n"))
    };
    for (spacer, is, words) in [
        ("62 mm ±0 mm", "equal", "Drive both outer rings home; the spacer then touches both"),
        ("62 mm 0/+50 um", "longer", "then stands 0.000 mm to 0.050 mm off its shoulder"),
        ("62 mm +20/+50 um", "longer", "then stands 0.020 mm to 0.050 mm off its shoulder"),
        ("62 mm +50/+50 um", "longer", "then stands 0.050 mm off its shoulder"),
        ("62 mm -50/0 um", "shorter", "as thick as it is short, 0.000 mm to 0.050 mm"),
        ("62 mm -50/-50 um", "shorter", "as thick as it is short, 0.050 mm"),
        ("62 mm -10/+20 um", "either", "up to 0.020 mm too long or up to 0.010 mm too short"),
    ] {
        let plan = pair(spacer);
        assert_eq!(plan["stack"]["pair"]["spacer_is"], is, "{spacer}");
        says(&steps(&plan["stack"]["pair"]), &[words]);
    }
    // Without any play left an equal spacer binds nothing, and the least too much binds.
    let tight = |spacer: &str| {
        let hub = exact("6204", 60, 90, "$ALLOY");
        let plan = planned(&format!("{hub}[stack.pair]\nshoulders = \"62 mm ±0 mm\"\nspacer = \"{spacer}\"\n"));
        assert_eq!(plan["stack"]["pair"]["axial_play_mm"]["most"], 0.0);
        plan["stack"]["pair"]["binds"].clone()
    };
    assert!(tight("62 mm ±0 mm") == "never" && tight("62.01 mm ±0 mm") == "always");
}

#[test]
fn a_card_asks_for_the_time_to_the_seat_that_is_left_or_planned() {
    let warm = oven("100 °C", "hold = \"2 h\"");
    let at =
        |carry: &str| blanks(&ring("40", &format!("{warm}[bench]\ncarry = \"{carry} s\"\n")), "from medium to seat");
    let window =
        number(&plane(&ring("40", &format!("{warm}[bench]\ncarry = \"5 s\"\n"))), "/seats/0/window_s/tightest");
    let left = Some(format!("less than {window:.1} s"));
    assert_eq!((at("0"), at("5")), (vec![left.clone()], vec![left]));
    assert_eq!(at("3600"), [Some("planned 3600.0 s".to_owned())], "after {window} s");
    // What never clears has no time left, and without a way none is planned.
    let never = |carry: &str| {
        let warm = oven("40 °C", "hold = \"2 h\"");
        blanks(&ring("90", &format!("{warm}[bench]\ncarry = \"{carry} s\"\n")), "from medium to seat")
    };
    assert_eq!((never("0"), never("3")), (vec![None], vec![Some("planned 3.0 s".to_owned())]));
}

#[test]
fn less_than_a_second_to_the_seat_is_at_once() {
    let warm = oven("100 °C", "hold = \"2 h\"");
    let place = |carry: &str| shown(&ring("40", &format!("{warm}[bench]\ncarry = \"{carry} s\"\n")));
    says(&place("0.9"), &["Place it as soon as it is out"]);
    says(&place("1"), &["Place it within 1 s of taking it out"]);
}

#[test]
fn a_stack_is_mended_by_the_play_that_it_has_and_the_play_that_it_should_have() {
    // Exact sizes but for the ring of 1.93 to 2 mm: play 14 mm less the groove's wall, less 1.93 to 2 mm.
    let mend = |wall: &str, most: &str, more: &str| {
        let most = if most.is_empty() { String::new() } else { format!(", most = \"{most} mm\"") };
        let chain = format!(
            "[stack]\ndepth = \"30 mm ±0 mm\"\nring = \"DIN 472 62x2\"\nbearing = \"16 mm ±0 mm\"\n\
             groove = {{ from_face = \"{wall} mm ±0 mm\" }}\nplay = {{ least = \"0 mm\"{most} }}\n{more}"
        );
        steps(&plane(&ring("40", &chain))["stack"]["ring"])
    };
    for (wall, most, words) in [
        ("12", "", "The play is as wanted in every case."),
        ("12.05", "", "Take at least 0.050 mm off the stack"),
        ("12.05", "0.2", "Take at least 0.050 mm and at most 0.180 mm off the stack"),
        ("11.5", "0.2", "One shim in every assembly mends it, as thick as 0.370 mm to 0.500 mm."),
        ("11.5", "0.05", "For the fullest to the emptiest assembly that is 0.500 mm to 0.520 mm. Put"),
        ("12", "0.05", "For the fullest to the emptiest assembly that is 0.000 mm to 0.020 mm. Put"),
        ("12.01", "0.05", "assembly that is -0.010 mm to 0.010 mm; below zero, that much is to be taken off."),
        ("12.02", "0.05", "For the emptiest to the fullest assembly that is 0.000 mm to 0.020 mm: a deeper seat"),
        ("12.05", "0.05", "For the emptiest to the fullest assembly that is 0.030 mm to 0.050 mm: a deeper seat"),
    ] {
        let found = mend(wall, most, "");
        assert!(found.contains(words), "{wall} {most}: {words} is not in {found}");
    }
    // What is to be taken off comes from a piece that is thicker than that.
    for (wall, more, words) in [
        ("11.99", "shim = \"0.06 mm ±0 mm\"\n", ": a thinner shim."),
        ("12", "shim = \"0.05 mm ±0 mm\"\n", ": a deeper seat; never grind the bearing."),
        ("11.99", "spacer = \"0.06 mm ±0 mm\"\n", ": a shorter spacer."),
        ("12", "spacer = \"0.05 mm ±0 mm\"\n", ": a deeper seat; never grind the bearing."),
    ] {
        let found = mend(wall, "", more);
        assert!(found.contains(words), "{wall} {more}: {words} is not in {found}");
    }
}

/// Of a part with several limits the first counts, whichever of them it is: polyamide bears -40 °C and a seal of silicone -60; an
/// open bearing is held to 120 °C, a housing of light alloy to 200 °C and a seal of FKM that is in it already to 200 °C as well.
#[test]
fn a_part_is_held_to_the_first_of_its_limits() {
    let clears = |text: &str| {
        let plan = planned(text);
        let said = plan["cautions"].as_array().unwrap().iter().find(|it| it["code"] == "would-clear").unwrap();
        (said["text"].as_str().unwrap().to_owned(), plan["seats"][0]["removal"]["outer_limit_c"].clone())
    };
    let cold = exact("6205", 150, 90, "\"grey-iron\"").replace("$STEEL", "\"pa66\"");
    let cold = cold + "[bench]\nplacing_clearance = \"120 um\"\n";
    let (said, _) = clears(&cold.replace("closure = \"open\"", "closure = \"VMQ contact seals\""));
    says(&said, &["(beyond its limit of -40 °C)"]);
    let hot = exact("6205", 150, 90, "\"cast-aluminium\"").replace("$STEEL", "\"bearing-steel\"");
    let (said, limit) =
        clears(&(hot.clone() + "[seal]\nsize = \"25x52x7\"\nlip = \"FKM\"\nfitted = \"before the bearing\"\n"));
    says(&said, &["(beyond the limit of 120 °C)"]);
    assert_eq!(limit, 120.0);
    let (said, limit) = clears(&(hot + "[seal]\nsize = \"25x52x7\"\nlip = \"NBR\"\nfitted = \"before the bearing\"\n"));
    says(&said, &["(beyond the limit of 100 °C)"]);
    assert_eq!(limit, 100.0);
}
