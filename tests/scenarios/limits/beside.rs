//! Limits of what stands beside the seat: screws, stack, findings, readings, and a shaft seal.

use super::{Knob, is_said, plane, ring};
use crate::{exact, number, planned};
use serde_json::Value;

#[test]
fn screws_stretch_and_threads_strip_from_their_loads_on() {
    let cover = |rest: &str| {
        ring("40", &format!("[fasteners]\nthread = \"M8\"\ncount = 6\ncircle = \"120 mm\"\nstrength = \"8.8\"\n{rest}"))
    };
    let group = "/fasteners/groups/0";
    let proof = |plan: &Value| number(plan, "/fasteners/groups/0/proof_load_n");
    let torque = cover("torque = \"@ N·m\"\n");
    let may = Knob::new(&torque, (5.0, 35.0), ("torque-may-pass-proof", "caution", ""));
    may.begins_at(&format!("{group}/preload_most_n"), proof, 20.0);
    let above = Knob::new(&torque, (20.0, 90.0), ("torque-above-proof", "warning", ""));
    above.begins_at(&format!("{group}/preload_least_n"), proof, 20.0);
    // Least breaking load of M8 in class 8.8: 36.6 mm² of 800 MPa (ISO 898-1).
    let tears = Knob::new(&torque, (20.0, 120.0), ("torque-above-proof", "warning", "tear it off"));
    tears.begins_at(&format!("{group}/preload_least_n"), |_| 29_250.0, 100.0);
    let soft =
        cover("torque = \"@ N·m\"\ninto = \"cast-aluminium\"\ninto_tensile = \"200 MPa\"\nengagement = \"8 mm\"\n");
    let reserve = format!("{group}/threads/reserve");
    let little = number(&plane(&soft.replace('@', "10")), &reserve) * 10.0 / 1.1;
    Knob::new(&soft, (2.0, little), ("threads-little-reserve", "caution", "little is in hand")).begins_at(
        &reserve,
        |_| 1.25,
        2e-3,
    );
    Knob::new(&soft, (little, 3.0 * little), ("threads-strip", "warning", "torn out")).begins_at(
        &reserve,
        |_| 1.0,
        2e-3,
    );
}

#[test]
fn a_stack_is_judged_to_the_nanometre() {
    // Every size is exact but that of the ring, 2/1.93 mm (DIN 472 62x2, from memory): with the ring's wall of the groove at 12 mm
    // the play is 30 - 12 - 16 - 2 = 0 mm at the least and 0.07 mm at the most. Its land is to be 4.5 mm.
    let stack = |depth: &str, from_face: &str, rest: &str| {
        let chain = format!(
            "[stack]\ndepth = \"{depth} mm ±0 mm\"\nring = \"DIN 472 62x2\"\nbearing = \"16 mm ±0 mm\"\n{rest}"
        );
        plane(&ring("40", &chain.replace("$GROOVE", &format!("from_face = \"{from_face} mm ±0 mm\""))))
    };
    let codes = [
        "stack-cannot-close",
        "stack-may-not-close",
        "stack-little-play",
        "stack-much-play",
        "ring-in-groove",
        "groove-land",
    ];
    let said = |depth: &str, from_face: &str, rest: &str| -> Vec<&str> {
        let plan = stack(depth, from_face, rest);
        codes.into_iter().filter(|code| is_said(&plan, (code, "", ""))).collect()
    };
    let plain = "groove = { $GROOVE }\n";
    let closes = |from_face: &str| stack("30", from_face, plain)["stack"]["ring"]["closes"].clone();
    assert_eq!(["12", "12.001", "12.07", "12.071"].map(closes), ["always", "sometimes", "sometimes", "never"]);
    assert_eq!(said("30", "12", plain), [""; 0]);
    assert_eq!(said("30", "12.001", plain), ["stack-may-not-close"]);
    assert_eq!(said("30", "12.07", plain), ["stack-may-not-close"]);
    assert_eq!(said("30", "12.071", plain), ["stack-cannot-close"]);
    let wanted = "groove = { $GROOVE }\nplay = { least = \"0.05 mm\", most = \"0.12 mm\" }\n";
    assert_eq!(said("30", "11.95", wanted), [""; 0]);
    assert_eq!(said("30", "11.951", wanted), ["stack-little-play"]);
    assert_eq!(said("30", "11.949", wanted), ["stack-much-play"]);
    assert_eq!(said("30", "12", "groove = { $GROOVE, width = \"2 mm ±0 mm\" }\n"), [""; 0]);
    assert_eq!(said("30", "12", "groove = { $GROOVE, width = \"1.999 mm ±0 mm\" }\n"), ["ring-in-groove"]);
    assert_eq!(said("22.5", "4.5", plain), [""; 0]);
    assert_eq!(said("22.499", "4.499", plain), ["groove-land"]);
}

#[test]
fn findings_of_an_inspection_count_from_their_limits_on() {
    let found = |rest: &str| {
        planned(
            &(exact("6205", 20, 90, "$ALLOY")
                + "[shaft]\noutside_limits = \"k5\"\nmaterial = $STEEL\n[seal]\nsize = \"25x52x7\"\nlip = \"NBR\"\nfitted = \"after the bearing\"\n[inspection]\nbearing = \"new\"\n"
                + rest),
        )
    };
    let said = |rest: &str, code: &str, words: &str| is_said(&found(rest), (code, "", words));
    assert!(!said("lead_in = \"0.5 mm\"", "short-lead-in", "") && said("lead_in = \"0.499 mm\"", "short-lead-in", ""));
    for (ra, words) in [("0.19", "carries no oil"), ("0.81", "wears the lip")] {
        assert!(said(&format!("lip_track = \"Ra {ra} um\""), "lip-track", words), "{ra}");
    }
    assert!(!said("lip_track = \"Ra 0.2 um\"", "lip-track", "") && !said("lip_track = \"Ra 0.8 um\"", "lip-track", ""));
    let allowed = number(&found("run_out = \"1 um\""), "/inspection/run_out_allowed_um");
    let run_out = |more: f64| said(&format!("run_out = \"{:.3} um\"", allowed + more), "shaft-runs-out", "");
    assert!(!run_out(0.0) && run_out(0.1));
}

#[test]
fn readings_are_judged_from_the_allowed_form_on() {
    let read = |readings: &str| {
        let text = exact("6205", 20, 90, "$ALLOY")
            .replace("\"-20/-20 um\"", &format!("{{ readings = {readings}, within = \"1 um\", at = \"20 °C\" }}"));
        planned(&text)
    };
    let codes = ["seat-out-of-round", "seat-tapered", "few-directions"];
    let said = |readings: &str| codes.map(|code| is_said(&read(readings), (code, "", "")));
    let allowed = number(&read("[[\"51.98 mm\", \"51.98 mm\", \"51.98 mm\"]]"), "/inspection/forms/0/allowed_um");
    let at = |more: f64| format!("{:.4} mm", 51.98 + (allowed + more) * 1e-3);
    let round = |more: f64| format!("[[\"51.98 mm\", \"{}\", \"51.98 mm\"]]", at(more));
    assert_eq!(said(&round(0.0)), [false, false, false], "{allowed}");
    assert_eq!(said(&round(0.5)), [true, false, false]);
    let taper =
        |more: f64| format!("[[\"51.98 mm\", \"51.98 mm\", \"51.98 mm\"], [\"{0}\", \"{0}\", \"{0}\"]]", at(more));
    assert_eq!(said(&taper(0.0)), [false, false, false]);
    assert_eq!(said(&taper(0.5)), [false, true, false]);
    assert!(is_said(&read(&taper(0.5)), ("seat-tapered", "", "largest at the last depth")));
    assert_eq!(said("[[\"51.98 mm\", \"51.98 mm\"]]"), [false, false, true]);
    assert!(is_said(&read("[[\"51.98 mm\"], [\"51.98 mm\"]]"), ("few-directions", "", "in 1 direction only")));
}

/// A seal beside the bearing, or before it.
fn sealed(rest: &str) -> String {
    exact("6205", 20, 90, "$ALLOY") + "[seal]\nsize = \"25x52x7\"\ncase = \"rubber\"\nlip = \"NBR\"\n" + rest
}

#[test]
fn a_lip_runs_too_fast_from_the_speeds_of_its_elastomer_on() {
    let job = sealed("fitted = \"after the bearing\"\nspeed = \"@ rpm\"\n");
    let speed = "/seal/lip_speed_m_s";
    let some = Knob::new(&job, (1000.0, 10_000.0), ("seal-lip-speed", "caution", "by some makers"));
    some.begins_at(speed, |plan| number(plan, "/seal/lip_speed_safe_m_s"), 0.01);
    let none = Knob::new(&job, (10_000.0, 20_000.0), ("seal-lip-speed", "warning", "and beyond that by none"));
    none.begins_at(speed, |plan| number(plan, "/seal/lip_speed_limit_m_s"), 0.01);
}

#[test]
fn a_cold_neighbour_counts_from_the_cold_that_the_lip_does_not_bear() {
    let chilled = |at: &str, fitted: &str| {
        let chill = format!(
            "[chill]\npart = \"bearing\"\nmedium = \"dry-ice-alcohol\"\ntemperature = \"{at} °C\"\nhold = \"1 h\"\n"
        );
        planned(&(sealed(&format!("fitted = \"{fitted} the bearing\"\n")).replace("coldest = \"-80 °C\"", "") + &chill))
    };
    let cold = |at: &str, fitted: &str| is_said(&chilled(at, fitted), ("seal-cold-neighbour", "", ""));
    assert!(cold("-72", "before") && !cold("-72", "after"));
}

#[test]
fn a_seal_is_loose_at_no_interference_and_needs_what_the_press_has() {
    let bore = |over: &str| sealed(&format!("fitted = \"after the bearing\"\nbore_limits = \"{over} um\"\n"));
    let least = number(&planned(&bore("0/0")), "/seal/interference_um/loosest");
    let loose = |by: f64| is_said(&planned(&bore(&format!("+{0:.1}/+{0:.1}", least + by))), ("seal-loose", "", ""));
    assert!(!loose(-0.1) && loose(0.0) && loose(0.1), "{least}");
    let weak = sealed("fitted = \"after the bearing\"\n[press]\nmeans = \"arbor press\"\ncapacity = \"@ kN\"\n");
    let plans = Knob::new(&weak, (40.0, 0.05), ("seal-force", "caution", "")).begins();
    let [before, after] = plans.map(|plan| number(&plan, "/seal/force_most_n"));
    assert!((before - after).abs() < 1e-6);
    let needs = |kn: f64| is_said(&plane(&weak.replace('@', &format!("{kn:.6}"))), ("seal-force", "", ""));
    assert!(!needs(before * 1.0001e-3) && needs(before * 0.9999e-3));
}

#[test]
fn a_seat_of_a_seal_is_right_up_to_the_limits_themselves() {
    let met = |line: &str, what: &str| -> Value {
        let plan = planned(&sealed(&format!("fitted = \"after the bearing\"\n{line}\n")));
        let demands = plan["seal"]["demands"].as_array().unwrap().iter();
        let mut met: Vec<Value> =
            demands.filter(|it| it["what"] == what && !it["given"].is_null()).map(|it| it["met"].clone()).collect();
        assert_eq!(met.len(), 1, "{line}: {}", plan["seal"]["demands"]);
        met.remove(0)
    };
    // DIN 3760 in reproductions; the bore of a rubber case may be rougher than that of a metal one.
    for (key, what, limits) in [
        ("shaft_roughness = \"Ra @ um\"", "shaft, roughness", [("0.2", "0.19"), ("0.8", "0.81")]),
        ("shaft_roughness = \"Rz @ um\"", "shaft, roughness", [("1", "0.99"), ("4", "4.01")]),
        ("bore_roughness = \"Ra @ um\"", "bore, roughness", [("1.6", "1.59"), ("6.3", "6.31")]),
        ("chamfer = \"@ mm\"", "bore, lead-in: length", [("0.7", "0.69"), ("1", "1.01")]),
    ] {
        for (within, beyond) in limits {
            assert_eq!(met(&key.replace('@', within), what), true, "{what} {within}");
            assert_eq!(met(&key.replace('@', beyond), what), false, "{what} {beyond}");
        }
    }
    assert_eq!(met("shaft_hardness = \"45 HRC\"", "shaft, hardness"), true);
    assert_eq!(met("shaft_hardness = \"44 HRC\"", "shaft, hardness"), false);
}

#[test]
fn a_seal_stands_proud_and_stops_short_by_more_than_a_rounding() {
    let at = |rest: &str| planned(&sealed(&format!("fitted = \"after the bearing\"\n{rest}")));
    let proud = |depth: &str| is_said(&at(&format!("depth = \"{depth} mm\"\n")), ("seal-proud", "", ""));
    assert!(!proud("7") && !proud("6.9996") && proud("6.999"));
    let short = |shoulder: &str| {
        is_said(&at(&format!("depth = \"7 mm\"\nshoulder = \"{shoulder} mm\"\n")), ("seal-shoulder", "", ""))
    };
    assert!(!short("7") && !short("6.9996") && short("6.999"));
}
