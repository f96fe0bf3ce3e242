//! Bad jobs: each gives a message that names the value and what is allowed, at its place in the text.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

use seatwise::job::{self, Problems};
use seatwise::stock::Library;

/// A sound job, of which each bad one differs in one place.
const GOOD: &str = include_str!("binary/sound.toml");

struct Bad {
    /// What is wrong.
    name: &'static str,
    /// Text of the good job, and what stands in its place.
    change: (&'static str, &'static str),
    /// The text that is underlined.
    underlined: &'static str,
    /// Words that the message must hold.
    says: &'static [&'static str],
    /// Words that the help must hold.
    helps: &'static [&'static str],
}

const fn bad(
    name: &'static str,
    change: (&'static str, &'static str),
    underlined: &'static str,
    says: &'static [&'static str],
    helps: &'static [&'static str],
) -> Bad {
    Bad { name, change, underlined, says, helps }
}

const BAD: &[Bad] = &[
    bad(
        "step without length",
        ("outside = \"90 mm\"", "outside = \"90 mm\"\nstep = { outside = \"110 mm\", from_front = \"9 mm\" }"),
        "step",
        &["`housing.step` needs `housing.length`"],
        &["from its front face"],
    ),
    bad(
        "step beyond the boss",
        (
            "outside = \"90 mm\"",
            "length = \"20 mm\"\noutside = \"90 mm\"\nstep = { outside = \"110 mm\", from_front = \"20 mm\" }",
        ),
        "\"20 mm\"",
        &["20.000 mm from the front face", "from 0.400 to 19.600 mm", "20.000 mm long"],
        &["leave `step` out"],
    ),
    bad(
        "step of nothing",
        (
            "outside = \"90 mm\"",
            "length = \"20 mm\"\noutside = \"90 mm\"\nstep = { outside = \"90.1 mm\", from_front = \"9 mm\" }",
        ),
        "\"90.1 mm\"",
        &["90.000 mm outside in front", "90.100 mm behind", "0.124 mm"],
        &["leave `step` out"],
    ),
    bad(
        "step into the bore",
        (
            "outside = \"90 mm\"",
            "length = \"20 mm\"\noutside = \"90 mm\"\nstep = { outside = \"60 mm\", from_front = \"9 mm\" }",
        ),
        "\"60 mm\"",
        &["60.000 mm outside around a bore of 62.000 mm"],
        &[],
    ),
    bad(
        "step and uneven wall",
        (
            "outside = \"90 mm\"",
            "length = \"20 mm\"\nwall = \"7 mm to 20 mm\"\nstep = { outside = \"80 mm\", from_front = \"9 mm\" }",
        ),
        "step",
        &["not both"],
        &[],
    ),
    bad(
        "unknown key of a step",
        ("outside = \"90 mm\"", "length = \"20 mm\"\nstep = { outside = \"110 mm\", from_back = \"9 mm\" }"),
        "from_back",
        &["[housing.step] has no `from_back`"],
        &["from_front"],
    ),
    bad("unknown key", ("bore =", "boar ="), "boar", &["[bearing] has no `boar`"], &["did you mean `bore`"]),
    bad("unknown table", ("[housing]", "[hausing]"), "hausing", &["has no `hausing`"], &["did you mean `housing`"]),
    bad("unit missing", ("\"62 mm\"", "\"62\""), "62", &["bearing.outside"], &["mm"]),
    bad("bare number", ("\"62 mm\"", "62"), "62", &["bearing.outside"], &["mm", "quotes"]),
    bad("wrong kind of unit", ("\"62 mm\"", "\"62 kg\""), "kg", &["bearing.outside", "mass"], &["mm"]),
    bad("ambiguous unit", ("\"62 mm\"", "\"62000 mil\""), "mil", &["mil", "could be"], &[]),
    bad("zero size", ("\"62 mm\"", "\"0 mm\""), "\"0 mm\"", &["0 mm", "1 mm to 3150 mm"], &["check"]),
    bad("negative size", ("\"62 mm\"", "\"-62 mm\""), "-62 mm", &["-62"], &[]),
    bad("absurd size", ("\"62 mm\"", "\"5000 mm\""), "\"5000 mm\"", &["5000 mm", "3150 mm"], &[]),
    bad("not a number", ("\"62 mm\"", "\"nan mm\""), "nan mm", &["bearing.outside"], &[]),
    bad("huge number", ("\"62 mm\"", "\"1e308 mm\""), "e308", &["e308"], &[]),
    bad("empty value", ("\"62 mm\"", "\"\""), "\"\"", &["bearing.outside", "empty"], &[]),
    bad("swapped sizes", ("bore = \"30 mm\"", "bore = \"72 mm\""), "\"72 mm\"", &["72 mm", "62 mm"], &["exchange"]),
    bad("mixed units", ("bore = \"30 mm\"", "bore = \"0.3 in\""), "\"0.3 in\"", &["different units"], &["same unit"]),
    bad("class does not exist", ("\"N7\"", "\"Q7\""), "Q7", &["Q7"], &[]),
    bad("class of a shaft", ("\"N7\"", "\"n7\""), "n7", &["n7", "hole"], &[]),
    bad("class not at this size", ("\"N7\"", "\"CD7\""), "CD7", &["CD"], &[]),
    bad(
        "lower above upper",
        ("\"N7\"", "{ lower = \"9 um\", upper = \"-39 um\" }"),
        "\"9 um\"",
        &["9 um", "-39 um", "above"],
        &["exchange"],
    ),
    bad("thin housing", ("outside = \"90 mm\"", "outside = \"62 mm\""), "\"62 mm\"", &["62.000 mm", "63.240"], &[]),
    bad("boss in inches", ("outside = \"90 mm\"", "outside = \"3.54 mm\""), "\"3.54 mm\"", &["3.540"], &["inches"]),
    bad(
        "unknown material",
        ("cast-aluminium", "cast-alumnium"),
        "\"cast-alumnium\"",
        &["cast-alumnium"],
        &["materials"],
    ),
    bad("unknown medium", ("domestic-freezer", "fridge"), "\"fridge\"", &["fridge"], &["media"]),
    bad("medium that warms", ("domestic-freezer", "oven"), "\"oven\"", &["oven warms"], &["[warm]"]),
    bad("chilling the housing", ("part = \"bearing\"", "part = \"housing\""), "\"housing\"", &["tighter"], &["warm"]),
    bad(
        "freezer at plus 18",
        ("medium = \"domestic-freezer\"", "medium = \"domestic-freezer\"\ntemperature = \"18 °C\""),
        "\"18 °C\"",
        &["18.0 °C", "below"],
        &["minus"],
    ),
    bad(
        "freezer too cold",
        ("medium = \"domestic-freezer\"", "medium = \"domestic-freezer\"\ntemperature = \"-60 °C\""),
        "\"-60 °C\"",
        &["-60", "-25"],
        &["another medium"],
    ),
    bad(
        "below absolute zero",
        ("medium = \"domestic-freezer\"", "medium = \"domestic-freezer\"\ntemperature = \"-300 °C\""),
        "-300 °C",
        &["absolute zero"],
        &[],
    ),
    bad("no hold", ("hold = \"2 h\"\n", ""), "chill", &["chill.hold", "missing"], &["settled"]),
    bad("hold of days", ("\"2 h\"", "\"100 h\""), "\"100 h\"", &["72 h"], &[]),
    bad("target on the wrong side", ("hold = \"2 h\"", "until = \"40 °C\""), "until", &["wrong side"], &[]),
    bad("target beyond the medium", ("hold = \"2 h\"", "until = \"-40 °C\""), "until", &["-40", "-18"], &["colder"]),
    bad("humidity as a share of one", ("\"50 %\"", "\"0.5\""), "0.5", &["50 %"], &["50 %"]),
    bad("shop in °F read as °C", ("\"20 °C\"", "\"68 °C\""), "\"68 °C\"", &["68.0 °C", "50 °C"], &["°F"]),
    bad(
        "interference no ring bears",
        ("\"N7\"", "\"-0.5/-0.4 mm\""),
        "housing",
        &["500 um", "0.8", "yields"],
        &["signs and units"],
    ),
    bad(
        "measured bore of another part",
        ("\"N7\"", "{ measured = \"62.4 mm\", within = \"2 um\" }"),
        "housing",
        &["measured", "clearance"],
        &["exchanged"],
    ),
    bad(
        "measured in inches, typed as mm",
        ("\"N7\"", "{ measured = \"2.4405 mm\", within = \"2 um\" }"),
        "\"2.4405 mm\"",
        &["2.441", "62.000"],
        &["inches"],
    ),
    bad(
        "no seat",
        ("[housing]\nbore_limits = \"N7\"\noutside = \"90 mm\"\nmaterial = \"cast-aluminium\"\n", ""),
        "",
        &["no seat"],
        &["[housing]"],
    ),
    bad(
        "a housing of a few grams",
        ("outside = \"90 mm\"", "outside = \"90 mm\"\nmass = \"3 g\""),
        "\"3 g\"",
        &["`housing.mass` is 0.003 kg", "must lie from 0.0"],
        &["all that is treated together"],
    ),
    bad(
        "a support that does not exist",
        ("hold = \"2 h\"", "hold = \"2 h\"\nrests_on = \"table\""),
        "\"table\"",
        &["`chill.rests_on` cannot be \"table\""],
        &["grate", "metal shelf", "tray"],
    ),
    bad(
        "a shelf in liquid nitrogen",
        ("medium = \"domestic-freezer\"", "medium = \"liquid-nitrogen\"\nrests_on = \"metal shelf\""),
        "rests_on",
        &["freezers and ovens", "liquid-nitrogen needs none"],
        &["leave it out"],
    ),
    bad(
        "a freezer that holds next to nothing",
        ("hold = \"2 h\"", "hold = \"2 h\"\nheat_capacity = \"1 J/K\""),
        "\"1 J/K\"",
        &["0.001 kJ/K", "from 0.1 kJ/K to 10000 kJ/K"],
        &["litre of water"],
    ),
    bad(
        "the heat capacity of a kilogram for that of a freezer",
        ("hold = \"2 h\"", "hold = \"2 h\"\nheat_capacity = \"900 J/kgK\""),
        "J/kgK",
        &["heat capacity"],
        &["kJ/K"],
    ),
    bad(
        "a machine without what it holds",
        ("hold = \"2 h\"", "hold = \"2 h\"\nholding_power = \"80 W\""),
        "holding_power",
        &["needs `heat_capacity` beside it"],
        &["20 kJ/K"],
    ),
    bad(
        "a heat capacity of dry ice",
        ("medium = \"domestic-freezer\"", "medium = \"dry-ice\"\nheat_capacity = \"5 kJ/K\""),
        "heat_capacity",
        &["dry-ice keeps its temperature as long as some is left"],
        &["leave"],
    ),
    bad(
        "rings that overlap",
        ("closure = \"open\"", "closure = \"open\"\nouter_ring_inside = \"38 mm\""),
        "outer_ring_inside",
        &["38.000 mm", "39.600 mm", "overlap"],
        &["exchange the two"],
    ),
    bad(
        "a wall thicker than its housing",
        (
            "outside = \"90 mm\"",
            "outside = \"90 mm\"\nlength = \"10 mm\"\nshoulder = { inside = \"50 mm\", wall = \"12 mm\" }",
        ),
        "length",
        &["12 mm thick", "only 10 mm long"],
        &["seat and wall together"],
    ),
    bad(
        "a thread that does not exist",
        ("[bench]", "[press]\nmeans = \"screw jig\"\nthread = \"M11\"\n[bench]"),
        "\"M11\"",
        &["`press.thread`", "M11"],
        &["M10, M12"],
    ),
    bad(
        "a jig without its thread",
        ("[bench]", "[press]\nmeans = \"screw jig\"\n[bench]"),
        "",
        &["`press.thread` is missing"],
        &["M12"],
    ),
    bad(
        "a press that is none",
        ("[bench]", "[press]\nmeans = \"bench press\"\n[bench]"),
        "\"bench press\"",
        &["`press.means` cannot be \"bench press\""],
        &["arbor press", "screw jig"],
    ),
    bad(
        "a thread for a hydraulic press",
        ("[bench]", "[press]\nmeans = \"hydraulic press\"\nthread = \"M12\"\n[bench]"),
        "thread",
        &["`press.thread` does not belong to hydraulic press"],
        &["ram"],
    ),
    bad(
        "friction of a screw above what any has",
        ("[bench]", "[press]\nmeans = \"screw jig\"\nthread = \"M12\"\nscrew_friction = \"0.2 to 1.4\"\n[bench]"),
        "\"0.2 to 1.4\"",
        &["0.2 to 1.4", "from 0.01 to 0.5"],
        &["oiled screw"],
    ),
    bad(
        "a rod that reaches through the shop",
        ("[bench]", "[press]\nmeans = \"screw jig\"\nthread = \"M12\"\nrod_length = \"12 m\"\n[bench]"),
        "\"12 m\"",
        &["`press.rod_length`", "5 mm to 3000 mm"],
        &["unit"],
    ),
    bad(
        "a strength class that is none",
        ("[bench]", "[press]\nmeans = \"screw jig\"\nthread = \"M12\"\nstrength = \"7.7\"\n[bench]"),
        "\"7.7\"",
        &["`press.strength`", "7.7"],
        &["8.8"],
    ),
    bad(
        "friction below zero",
        ("[bench]", "[press]\nfriction = \"-0.1\"\n[bench]"),
        "\"-0.1\"",
        &["-0.1", "0.01 to 1"],
        &["oiled"],
    ),
    bad(
        "a clearance group that is none",
        ("closure = \"open\"", "closure = \"open\"\ninternal_clearance = \"C9\""),
        "\"C9\"",
        &["`bearing.internal_clearance` cannot be \"C9\""],
        &["C2, CN, C3"],
    ),
    bad(
        "a rating of a bearing that no bearing has",
        ("closure = \"open\"", "closure = \"open\"\nstatic_rating = \"3 N\""),
        "\"3 N\"",
        &["0.003 kN", "0.01 kN to 100000 kN"],
        &["C0"],
    ),
    bad(
        "rings that differ by more than a bearing bears",
        ("[bench]", "[service]\nhottest = \"80 °C\"\nring_difference = \"300 K\"\n[bench]"),
        "\"300 K\"",
        &["300 K", "-100 K to 100 K"],
        &["inner ring is warmer"],
    ),
    bad("not TOML", ("title =", "title"), "", &["not TOML"], &[]),
];

fn checked(text: &str) -> Result<(), Problems> {
    job::check(text, &Library::default()).map(|_| ())
}

fn problems(text: &str) -> Problems {
    checked(text).expect_err("a bad job was accepted")
}

#[test]
fn the_good_job_is_good() {
    let checked = checked(GOOD);
    assert!(checked.is_ok(), "{}", checked.unwrap_err());
}

#[test]
fn each_bad_job_is_refused_at_its_place_with_advice() {
    let mut wrong = Vec::new();
    for case in BAD {
        let (from, to) = case.change;
        assert!(GOOD.contains(from), "{}: the good job has no {from}", case.name);
        let text = GOOD.replacen(from, to, 1);
        let Err(found) = checked(&text) else {
            wrong.push(format!("{}: accepted", case.name));
            continue;
        };
        let fits = found.iter().any(|problem| {
            let underlined = text.get(problem.at.clone()).unwrap_or("outside the text");
            case.says.iter().all(|words| problem.message.contains(words))
                && case.helps.iter().all(|words| problem.help.contains(words))
                && (case.underlined.is_empty() || underlined == case.underlined)
        });
        if !fits {
            let told: Vec<String> = found
                .iter()
                .map(|p| format!("  [{}] {} / {}", text.get(p.at.clone()).unwrap_or("?"), p.message, p.help))
                .collect();
            wrong.push(format!("{}:\n{}", case.name, told.join("\n")));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_mistake_is_reported_not_only_the_first() {
    let text = GOOD.replace("\"62 mm\"", "\"62\"").replace("\"N7\"", "\"Q7\"").replace("domestic-freezer", "fridge");
    let found = problems(&text);
    let places: Vec<usize> = found.iter().map(|problem| problem.at.start).collect();
    assert!(places.len() >= 2, "{found}");
    assert!(places.is_sorted(), "problems follow the text: {places:?}");
}

#[test]
fn an_empty_text_says_what_a_job_needs() {
    for text in ["", "\n\n", "# nothing\n"] {
        let found = problems(text).to_string();
        assert!(found.contains("the job is empty") && found.contains("[bearing]"), "{found}");
    }
}

#[test]
fn a_text_longer_than_any_job_is_refused_unread() {
    let found = problems(&"#".repeat(job::LONGEST_TEXT + 1)).to_string();
    assert!(found.contains("1000001 bytes") && found.contains("at most 1000000"), "{found}");
}

#[test]
fn a_temperature_beyond_a_materials_table_is_refused_with_the_table() {
    let text = GOOD
        .replace("kind = \"ball bearing\"", "kind = \"plain bush\"\nmaterial = \"acetal\"\noutside_limits = \"s6\"")
        .replace("closure = \"open\"\n", "")
        .replace("domestic-freezer", "liquid-nitrogen");
    let found = problems(&text).to_string();
    assert!(found.contains("acetal") && found.contains("-195.8"), "{found}");
}
