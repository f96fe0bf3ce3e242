//! Where a seal may lie: its shoulder, its neighbours in the same bore, and what goes on before it.

use super::assembly::{beside, stack, steps};
use super::*;

#[test]
fn the_straight_length_is_only_judged_where_the_lead_in_is_known_or_cannot_matter() {
    // 7 mm wide: 0.85 of it is 5.95 mm, and a bore is at least 7.3 mm deep.
    let met = |rest: &str| {
        let plan = planned(&beside(&format!("[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\n{rest}")));
        let demand = |what: &str| {
            plan["seal"]["demands"].as_array().unwrap().iter().find(|demand| demand["what"] == what).unwrap()["met"]
                .clone()
        };
        (demand("bore, straight length"), demand("bore, depth to the shoulder"))
    };
    assert_eq!(met("shoulder = \"6.5 mm\"\n"), (Value::Null, false.into()));
    assert_eq!(met("shoulder = \"5.5 mm\"\n").0, false);
    assert_eq!(met("shoulder = \"7.5 mm\"\nchamfer = \"1 mm\"\n"), (true.into(), true.into()));
    assert_eq!(met("shoulder = \"7.5 mm\"\nchamfer = \"2 mm\"\n").0, false);
    assert_eq!(met(""), (Value::Null, Value::Null));
}

/// A 6206 under its ring, its outer face 11.45 to 11.67 below the face, and a seal of the same bore 9 mm deep.
fn in_one_bore(seal: &str) -> Value {
    let stack = stack("27.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", "");
    planned(&format!("{stack}[seal]\nsize = \"30x62x7\"\nlip = \"NBR\"\n{seal}"))
}

#[test]
fn a_seal_that_would_lie_in_the_ring_or_the_bearing_is_told_how_deep_it_may_go() {
    let after = "fitted = \"after the bearing\"\n";
    let clear = in_one_bore(&format!("{after}depth = \"9.3 mm\"\n"));
    assert!(caution(&clear, "seal-meets-neighbour").is_none());
    says(&steps(&clear["seal"]), &["The bearing first, then its retaining ring, then the seal, in the same bore"]);
    let out = |plan: &Value| plan["seats"][0]["removal"]["first_out"].clone();
    assert_eq!(out(&clear), serde_json::json!(["seal", "retaining ring"]), "on the way out");
    assert_eq!(out(&planned(&beside(""))), serde_json::json!([]));
    // 10 deep: the ring's wall is at 9.30 at the least.
    let ring = in_one_bore(&format!("{after}depth = \"10 mm\"\n"));
    says(
        caution(&ring, "seal-meets-neighbour").unwrap(),
        &[
            "2.800 mm to 10.000 mm",
            "DIN 472 62x2 may stand from 9.300 mm",
            "overlap by 0.700 mm",
            "no deeper than 9.300 mm",
        ],
    );
    within(number(&ring["seal"], "/overlaps/0/by_mm"), 0.7, 1e-6);
    // 12 deep: it meets the bearing as well.
    let both = in_one_bore(&format!("{after}depth = \"12 mm\"\n"));
    assert_eq!(both["seal"]["overlaps"].as_array().unwrap().len(), 2);
    assert_eq!(both["seal"]["overlaps"][1]["what"], "bearing");
    says(caution(&both, "seal-meets-neighbour").unwrap(), &["no deeper than 9.300 mm"]);
    // Deeper off a worn track would only be worse.
    let deep = in_one_bore(&format!("{after}depth = \"12 mm\"\nworn_track = \"0.3 mm\"\n"));
    within(number(&deep["seal"], "/depth_mm"), 11.0, 1e-9);
    // A worn track asks for a millimetre deeper, which the ring does not leave: less deep.
    let worn = in_one_bore(&format!("{after}depth = \"9 mm\"\nworn_track = \"0.3 mm\"\n"));
    within(number(&worn["seal"], "/depth_mm"), 8.0, 1e-9);
    says(&steps(&worn["seal"]), &["less deep than the old one lay", "no room to go deeper"]);
    // First in, at the shoulder, the seal is where the stack says that the bearing stands.
    let first = in_one_bore("depth = \"27.5 mm\"\n");
    says(caution(&first, "seal-meets-neighbour").unwrap(), &["the bearing may stand from 11.450 mm"]);
    // A stack that counts it among its parts has put it there, and a bore of its own is another place.
    let counted = stack("34.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", "seal = \"7 mm\"\n");
    let counted = planned(&format!("{counted}[seal]\nsize = \"30x62x7\"\nlip = \"NBR\"\ndepth = \"34.5 mm\"\n"));
    assert!(caution(&counted, "seal-meets-neighbour").is_none());
    says(&steps(&counted["seal"]), &["Seal first, then the bearing and its retaining ring, in the same bore"]);
}

#[test]
fn sealant_goes_on_before_the_seal_goes_in() {
    let seal = "[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\nfitted = \"after the bearing\"\nsealant = \"yes\"\n";
    let said = steps(&planned(&beside(seal))["seal"]);
    let at = |words: &str| said.find(words).unwrap_or_else(|| panic!("no \"{words}\" in {said}"));
    assert!(at("Sealant as a thin ring") < at("Press it in square") && at("Press it in square") < at("Measure from"));
    assert!(at("outside of the case dry for the sealant") < at("Sealant as a thin ring"));
}

#[test]
fn a_seal_against_its_shoulder_sits_on_a_ring_only_where_it_is_moved_and_its_demands_name_their_texts() {
    let seal = "[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\nshoulder = \"7 mm\"\n";
    let plain = planned(&beside(seal));
    says(&steps(&plain["seal"]), &["until it sits against its shoulder."]);
    let moved = planned(&beside(&format!("{seal}worn_track = \"0.3 mm\"\n")));
    says(&steps(&moved["seal"]), &["until it sits against the ring on its shoulder."]);
    let sources: Vec<&str> =
        plain["seal"]["demands"].as_array().unwrap().iter().map(|demand| demand["source"].as_str().unwrap()).collect();
    for text in ["technical chapter on shaft seals", "DIN 3760"] {
        assert!(sources.iter().any(|source| source.contains(text)), "{text}: {sources:?}");
    }
}

#[test]
fn the_picture_has_each_part_where_what_stands_before_it_leaves_it() {
    let drawn = |spacers: &str| {
        let text = job_text(&stack("27.5 mm ±0.05 mm", "9.35 mm ±0.05 mm", spacers));
        let job = job::check(&text, &Library::default()).unwrap();
        let arrangement = plan::plan(&job).unwrap().arrangement();
        let [from, to] = [arrangement.fits[0].along.0, arrangement.fits[0].along.1].map(|at| 1e3 * at.value);
        within(to - from, 16.0, 1e-9);
        // The rings of the bearing lie with its seat.
        let ring = arrangement.parts.iter().find(|part| part.name.starts_with("outer ring")).unwrap();
        let least = ring.outline.iter().map(|spot| 1e3 * spot.along.value).fold(f64::INFINITY, f64::min);
        within(least, from, 1e-9);
        assert!(arrangement.parts.iter().any(|part| part.name == "housing, case alloy"), "{:?}", arrangement.parts);
        from
    };
    // Behind the bearing nothing, 0.2 mm, 0.3 mm, or only what comes after it.
    let both = "spacer = [\"0.2 mm ±0.01 mm\", \"0.1 mm ±0.02 mm\"]\norder = ";
    within(drawn(""), 0.0, 1e-9);
    within(drawn(&format!("{both}[\"spacer 2\", \"bearing\", \"spacer 1\"]\n")), 0.1, 1e-9);
    within(drawn(&format!("{both}[\"spacer 2\", \"spacer 1\", \"bearing\"]\n")), 0.3, 1e-9);
    within(drawn(&format!("{both}[\"bearing\", \"spacer 2\", \"spacer 1\"]\n")), 0.0, 1e-9);
}
