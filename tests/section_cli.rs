//! `seatwise section` as a user runs it: table, JSON, pictures, and what it refuses.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{done, run};
use serde_json::Value;
use std::fs;

const PUMP: &str = "examples/pump-case.toml";
const HUB: &str = "examples/iron-hub.toml";
const FAN: &str = "examples/fan-shaft.toml";
const LINED: &str = "examples/lined-bore.toml";

fn json(arguments: &[&str]) -> Value {
    let mut all = vec!["section"];
    all.extend(arguments);
    all.extend(["--format", "json"]);
    serde_json::from_str(&done(&all)).unwrap()
}

fn number(value: &Value, place: &str) -> f64 {
    value.pointer(place).and_then(Value::as_f64).unwrap_or_else(|| panic!("{place} is no number"))
}

#[test]
fn the_tables_of_a_blind_bore_and_of_a_hub() {
    insta::assert_snapshot!("pump_case", done(&["section", PUMP]));
    insta::assert_snapshot!("iron_hub_hot_in_inches", done(&["section", HUB, "--units", "inch"]));
    insta::assert_snapshot!("lined_bore", done(&["section", LINED]));
    insta::assert_snapshot!("fan_shaft_hottest", done(&["section", FAN, "--at", "hottest"]));
}

/// The plan computes the same section with the ring free along the axis: neither the rest nor the smaller loads may change it.
#[test]
fn the_section_agrees_with_the_plan_in_every_case() {
    for file in [PUMP, FAN, LINED] {
        let plan: Value =
            serde_json::from_str(&done(&["plan", file, "--format", "json", "--model", "section"])).unwrap();
        // A shaft whose longer side is not stated has two readings, of which the stiffer one is drawn.
        let cases = if file != FAN { &["tightest", "middle", "loosest"][..] } else { &["tightest"][..] };
        for case in cases {
            let section = json(&[file, "--case", case]);
            // The section is without friction, and so between the ends of the plan's factor on two plain rings; the plan's own number
            // is that factor's high end in the tightest case, its middle in the middle one, and nothing where the fit is open.
            for (what, here, plain) in
                [("pressure", "mean_pressure_mpa", "plane/pressure_mpa"), ("force", "force_n", "plane/force_n")]
            {
                let here = number(&section, &format!("/seats/0/{here}"));
                let plain = number(&section, &format!("/seats/0/{plain}"));
                let unit = if what == "pressure" { "mpa" } else { "n" };
                let there = number(&plan, &format!("/seats/0/press/{what}_{unit}/{case}"));
                let end = |end: &str| number(&plan, &format!("/seats/0/press/shape/{what}_{end}"));
                let (low, high) = (end("low"), end("high"));
                let says =
                    format!("{file}, {case}, {what}: {here}, {plain} plain, plan {there}, factor {low} to {high}");
                assert!(here >= plain * low * (1.0 - 1e-4) && here <= plain * high * (1.0 + 1e-4), "{says}");
                let factor = match *case {
                    "tightest" => high,
                    "middle" => 0.5 * (low + high),
                    _ => low,
                };
                assert!((there - plain * factor).abs() <= 1e-4 * plain.abs(), "{says}");
            }
        }
    }
}

/// What the section leaves out is not left unsaid: where the plan counts with more, "or more" and how much.
#[test]
fn the_force_to_press_home_says_that_it_may_be_more_and_how_much() {
    let plan: Value = serde_json::from_str(&done(&["plan", PUMP, "--format", "json"])).unwrap();
    let (most, here) = (number(&plan, "/seats/0/press/force_n/tightest"), &json(&[PUMP])["seats"][0]);
    assert!((number(here, "/force_most_n") / most - 1.0).abs() < 1e-4, "{here} and the plan's {most}");
    assert!(number(here, "/force_n") < number(here, "/force_most_n"));
    let text = done(&["section", PUMP]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("kN or more") && text.contains("without what friction adds to the pressure"), "{text}");
    let unstated = fs::read_to_string(PUMP)
        .unwrap()
        .lines()
        .filter(|line| !line.starts_with("length"))
        .fold(String::new(), |text, line| text + line + "\n");
    let text = run(&["section", "-"], &unstated).out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("kN or more") && text.contains("friction, and a seat longer than drawn, add"), "{text}");
    // Two rings of equal width need no more than they say, and in service nothing is pushed.
    let equal = with(HUB, SHARP).replacen("[housing]\n", "[housing]\nlength = \"23 mm\"\n", 1);
    let equal = run(&["section", "-"], &equal).out;
    assert!(equal.contains("force to press home") && !equal.contains("or more"), "{equal}");
    assert!(!done(&["section", FAN, "--at", "hottest"]).contains("or more"));
}

/// A bush has no raceway.
#[test]
fn a_bush_closes_at_mid_width_and_has_no_raceway() {
    let bush = "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"50 mm\"\nwidth = \"30 mm\"\n\
                outside_limits = \"s6\"\nmaterial = \"bronze\"\n[housing]\nbore_limits = \"H7\"\noutside = \"85 mm\"\n\
                length = \"30 mm\"\nmaterial = \"carbon-steel\"\n";
    let run = run(&["section", "-"], bush);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    assert!(run.out.contains("at mid-width") && !run.out.contains("raceway"), "{}", run.out);
    // No part goes on beyond an end, so nothing is left out there.
    assert!(run.out.contains("read up to the ends of the contact"), "{}", run.out);
    assert!(done(&["section", PUMP]).contains("at the raceway"));
}

/// Two rings of equal width, open at both ends, are what the plane formula is exact for.
#[test]
fn a_through_bore_as_wide_as_the_ring_is_the_plane_formula() {
    let seat = &seat_of(&with(HUB, SHARP));
    for (section, plane, share) in [
        ("/mean_pressure_mpa", "/plane/pressure_mpa", 1e-4),
        ("/force_n", "/plane/force_n", 1e-4),
        ("/ring_change/front_um", "/plane/ring_change_um", 1e-3),
        ("/ring_change/back_um", "/plane/ring_change_um", 1e-3),
        ("/stresses/0/von_mises/stress_mpa", "/plane/von_mises_mpa/0", 3e-3),
        ("/stresses/1/von_mises/stress_mpa", "/plane/von_mises_mpa/1", 3e-3),
    ] {
        let (section, plane) = (number(seat, section), number(seat, plane));
        assert!((section / plane - 1.0).abs() < share, "{section} and {plane}");
    }
}

#[test]
fn a_blind_bore_closes_the_ring_most_beside_its_wall_and_a_push_bends_the_wall() {
    let seat = &json(&[PUMP])["seats"][0];
    let closing = |place: &str| number(seat, &format!("/ring_change/{place}_um"));
    assert!(closing("back") > closing("middle") && closing("middle") > closing("front"));
    assert!((closing("raceway") - closing("middle")).abs() < 1e-9, "no groove is known here");
    let (fitted, pushed) =
        (number(seat, "/shoulder/fitted/root_bending_mpa"), number(seat, "/shoulder/pushed/root_bending_mpa"));
    assert!(pushed > fitted + 5.0, "{fitted} MPa fitted, {pushed} MPa pushed");
    assert!((number(seat, "/shoulder/force_n") - number(seat, "/force_n")).abs() < 0.01);
}

#[test]
fn each_moment_has_its_own_interference() {
    let at = |moment: &str| number(&json(&[PUMP, "--at", moment]), "/seats/0/interference_um");
    let (room, bore, hottest, coldest) = (at("room"), at("bore"), at("hottest"), at("coldest"));
    assert!(bore < 0.0 && hottest < room && room < coldest, "{bore}, {hottest}, {room}, {coldest}");
    let free = done(&["section", PUMP, "--at", "bore"]);
    assert!(free.contains("of clearance on the diameter"), "{free}");
}

#[test]
fn the_json_fits_its_schema() {
    let schema: Value = serde_json::from_str(&done(&["schema", "section"])).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    for arguments in [&[PUMP][..], &[FAN, "--at", "hottest"], &[PUMP, "--at", "bore"]] {
        let document = json(arguments);
        let mistakes: Vec<String> = validator.iter_errors(&document).map(|error| error.to_string()).collect();
        assert!(mistakes.is_empty(), "{arguments:?}: {mistakes:?}");
        assert_eq!(document["format"], "seatwise.section/1");
    }
}

/// Elements open and close in turn, no text lies outside the page, and the same input gives the same bytes.
#[test]
fn the_picture_is_whole_and_the_same_each_time() {
    let folder = tempfile::tempdir().unwrap();
    let draw = |name: &str, more: &[&str]| {
        let path = folder.path().join(name);
        let mut arguments = vec!["section", PUMP, "-o", path.to_str().unwrap()];
        arguments.extend(more);
        assert_eq!(done(&arguments), "");
        fs::read(path).unwrap()
    };
    let svg = String::from_utf8(draw("a.svg", &[])).unwrap();
    assert_eq!(svg.as_bytes(), draw("b.svg", &[]));
    let mut open: Vec<&str> = Vec::new();
    for tag in svg.split('<').skip(1).map(|tag| tag.split('>').next().unwrap()) {
        let name = tag.split([' ', '\n', '/']).find(|name| !name.is_empty()).unwrap();
        if tag.starts_with('/') {
            assert_eq!(open.pop(), Some(name));
        } else if !tag.ends_with('/') {
            open.push(name);
        }
    }
    assert!(open.is_empty() && svg.ends_with("</svg>\n"), "{open:?}");
    for words in ["deformation 50 times", "von Mises", "pressure on the seat, MPa", "diameter, mm", "two plain rings"] {
        assert!(svg.contains(words), "{words}");
    }
    let inch = String::from_utf8(draw("c.svg", &["--units", "inch", "--show", "hoop", "--at", "hottest"])).unwrap();
    for words in ["diameter, in", "pressure on the seat, psi", "hoop stress,"] {
        assert!(inch.contains(words), "{words}");
    }
    // The sign of the hoop stress is told in words and by a line, not by colour alone.
    let hoop = String::from_utf8(draw("h.svg", &["--show", "hoop"])).unwrap();
    for words in ["tension", "compression", "Heavy line: 0, between tension and", "−80"] {
        assert!(hoop.contains(words), "{words}");
    }
    assert!(!svg.contains("Heavy line") && !svg.contains("compression"), "von Mises stress has no sign");
    let moved = String::from_utf8(draw("d.svg", &["--show", "radial-displacement"])).unwrap();
    assert!(moved.contains("outward, µm"));
    let png = draw("e.png", &[]);
    assert!(png.starts_with(b"\x89PNG\r\n\x1a\n"));
}

#[test]
fn what_cannot_be_drawn_is_said() {
    for (arguments, words) in [
        (&["section", "examples/core-plug.toml"][..], "has no ring to make a section of"),
        (&["section", PUMP, "--seat", "shaft"], "no seat in a shaft"),
        (&["section", HUB, "--at", "hottest"], "nothing of its hottest state in service"),
        (&["section", PUMP, "--format", "json", "-o", "x.svg"], "--format asks for a table"),
        (&["section", PUMP, "-o", PUMP], "is an input of this run"),
        (&["section", PUMP, "--show", "hoop"], "--show says what a picture shows"),
        (&["plan", PUMP, "-o", "x.png"], "is the name of a picture"),
        (&["plan", "examples/mixer-seal.toml", "-o", "x.SVG"], "is the name of a picture"),
    ] {
        let run = run(arguments, "");
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{arguments:?}");
        assert!(run.err.contains(words), "{arguments:?}: {}", run.err);
    }
}

/// A ring without the chamfers that a ball bearing has else.
const SHARP: &str = "chamfer = \"0 mm\"";

/// A chamfer that is not stated is the least of ISO 15: 1 mm for the bearing of the pump, and said so.
#[test]
fn a_ball_bearing_has_the_chamfer_of_its_size() {
    let (as_is, stated) = (seat_of(&with(PUMP, "")), seat_of(&with(PUMP, "chamfer = \"1 mm\"")));
    assert_eq!(as_is["contact_length_mm"], 14.0);
    assert_eq!(as_is, stated);
    assert_eq!(seat_of(&with(PUMP, SHARP))["contact_length_mm"], 16.0);
    let text = done(&["plan", PUMP]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("bearing.chamfer = 1.000 mm: least of ISO 15"), "{text}");
    assert!(text.contains("ISO 582 allows 3 mm"), "{text}");
}

/// A job with more under `[bearing]`.
fn with(file: &str, more: &str) -> String {
    fs::read_to_string(file).unwrap().replacen("[bearing]\n", &format!("[bearing]\n{more}\n"), 1)
}

fn seat_of(job: &str) -> Value {
    let run = run(&["section", "-", "--format", "json"], job);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    serde_json::from_str::<Value>(&run.out).unwrap()["seats"][0].clone()
}

/// The chamfer takes length from the seat, and the interference still has the same rings to squeeze. Beside a shoulder it also
/// keeps the ring off the stiffest corner of the seat, so that the force falls by a little more there; `tests/deck.rs` holds that
/// an independent solver sees the same.
#[test]
fn a_chamfer_raises_the_mean_pressure_and_leaves_the_force() {
    for (file, width, share) in [(HUB, 23.0, 0.01), (PUMP, 16.0, 0.015)] {
        let (sharp, chamfered) = (seat_of(&with(file, SHARP)), seat_of(&with(file, "chamfer = \"1 mm\"")));
        let ratio = |place| number(&chamfered, place) / number(&sharp, place);
        assert!((ratio("/force_n") - 1.0).abs() < share, "{file}: force {}", ratio("/force_n"));
        let shorter = ratio("/force_n") * width / (width - 2.0);
        assert!((ratio("/mean_pressure_mpa") / shorter - 1.0).abs() < 1e-4, "{file}: {}", ratio("/mean_pressure_mpa"));
        assert!(ratio("/mean_pressure_mpa") > 1.08);
    }
}

/// A grooved ring of the same area presses as its plain ring does, to some per cent, and closes most where it is thinnest.
#[test]
fn a_groove_moves_the_raceway_and_keeps_the_force() {
    let plain = seat_of(&with(HUB, ""));
    let grooved = seat_of(&with(HUB, "groove = \"estimated\""));
    let force = number(&grooved, "/force_n") / number(&plain, "/force_n");
    assert!((force - 1.0).abs() < 0.03, "{force}");
    let closing = |place: &str| number(&grooved, &format!("/ring_change/{place}_um"));
    assert!((closing("raceway") - closing("middle")).abs() < 1e-6);
    let aside = seat_of(&with(HUB, "groove = { depth = \"2 mm\", width = \"9 mm\", middle = \"9 mm\" }"));
    let apart = number(&aside, "/ring_change/raceway_um") - number(&aside, "/ring_change/middle_um");
    assert!(apart.abs() > 1e-3, "the raceway is not in the middle here");
}

#[test]
fn chamfers_and_grooves_that_do_not_fit_are_refused_at_their_place() {
    for (more, words) in [
        ("chamfer = \"9 mm\"", &["9 mm does not fit a ring 16 mm wide", "at most"][..]),
        ("chamfr = \"1 mm\"", &["did you mean `chamfer`"]),
        ("groove = \"round\"", &["`round` is no groove", "depth"]),
        ("groove = { depth = \"7 mm\", width = \"12 mm\" }", &["7 mm deep does not fit", "at most"]),
        (
            "groove = { depth = \"1 mm\", width = \"7 mm\", middle = \"2 mm\" }",
            &["runs from -1.5 to 5.5 mm", "16 mm wide"],
        ),
        (
            "groove = { deep = \"1 mm\", width = \"7 mm\" }",
            &["did you mean `depth`", "`bearing.groove.depth` is missing"],
        ),
    ] {
        let run = run(&["section", "-"], &with(PUMP, more));
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{more}");
        for word in words {
            assert!(run.err.contains(word), "{more}: {}", run.err);
        }
    }
}

/// The plan of one job follows its temperatures in the section where that is needed, as its card and its working do.
#[test]
fn a_plan_that_is_asked_for_alone_follows_the_section() {
    let quench = include_str!("ledger/jobs/quenched-bush.toml");
    let plan = |model: &str| -> Value {
        let run = run(&["plan", "-", "--format", "json", "--model", model], quench);
        serde_json::from_str(&run.out).unwrap_or_else(|error| panic!("{error}: {} {}", run.out, run.err))
    };
    let (followed, plane) = (plan("auto"), plan("plane"));
    let (seat, bodies) = (&followed["seats"][0], &plane["seats"][0]);
    assert!(seat["section_heat"]["race"].is_object() && seat["chill"]["model"] == "section");
    assert!(bodies["section_heat"].is_null() && bodies["chill"]["model"] == "lumped");
    assert!((number(seat, "/section_heat/race/grip_s") - number(seat, "/grip_s/tightest")).abs() < 1e-6);
}
