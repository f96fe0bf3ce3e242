//! Bad seals and stacks: each gives a message that names the value and what is allowed, at its place in the text.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

use seatwise::job;
use seatwise::stock::Library;

const GOOD: &str = r#"title = "Test case"
[bearing]
designation = "6206"
closure = "open"
[housing]
bore_limits = "N7"
outside = "90 mm"
material = "cast-aluminium"
[seal]
size = "35x52x7"
lip = "NBR"
shaft_hardness = "58 HRC"
shaft_roughness = "Ra 0.4 um"
[stack]
depth = "27.5 mm ±0.05 mm"
groove = { from_face = "9.35 mm ±0.05 mm" }
ring = "DIN 472 62x2"
spacer = "0.5 mm ±0.02 mm"
play = { least = "0 mm", most = "0.3 mm" }
"#;

/// What is wrong, the text of the good job, what stands in its place, what is underlined, what message and help must hold.
type Bad = (&'static str, &'static str, &'static str, &'static str, &'static [&'static str]);

const BAD: &[Bad] = &[
    ("unknown key", "size =", "sise =", "sise", &["[seal] has no `sise`", "did you mean `size`"]),
    ("a size of two numbers", "35x52x7", "35x52", "\"35x52\"", &["35x52", "shaft x bore x width"]),
    ("a size out of order", "35x52x7", "52x35x7", "\"52x35x7\"", &["35 mm outside on a shaft of 52 mm"]),
    ("a width of a metre", "35x52x7", "35x52x1000", "\"35x52x1000\"", &["1000 mm", "2 mm to 50 mm"]),
    ("not a number", "35x52x7", "35xNaNx7", "\"35xNaNx7\"", &["NaN"]),
    (
        "size and sizes",
        "lip = \"NBR\"",
        "lip = \"NBR\"\nwidth = \"7 mm\"",
        "width",
        &["both `seal.size` and `seal.width`"],
    ),
    ("half the sizes", "size = \"35x52x7\"", "inside = \"35 mm\"", "seal", &["`seal.outside` is missing", "35x52x7"]),
    ("unknown lip", "\"NBR\"", "\"NBX\"", "\"NBX\"", &["NBX", "NBR"]),
    ("unknown case", "lip = \"NBR\"", "lip = \"NBR\"\ncase = \"rubbr\"", "\"rubbr\"", &["did you mean \"rubber\""]),
    ("hardness without scale", "58 HRC", "58", "\"58\"", &["20 HRC to 70 HRC"]),
    ("hardness of another scale", "58 HRC", "580 HV", "\"580 HV\"", &["20 HRC to 70 HRC"]),
    ("roughness without parameter", "Ra 0.4 um", "0.4 um", "0.4 um", &["Ra or Rz"]),
    ("depth of nothing", "lip = \"NBR\"", "lip = \"NBR\"\ndepth = \"0 mm\"", "\"0 mm\"", &["0.5 mm to 1000 mm"]),
    ("a speed in metres a second", "lip = \"NBR\"", "lip = \"NBR\"\nspeed = \"3 m/s\"", "m/s", &["rpm"]),
    ("class of a shaft for a bore", "lip = \"NBR\"", "lip = \"NBR\"\nbore_limits = \"h8\"", "h8", &["h8", "hole"]),
    (
        "groove behind the shoulder",
        "9.35 mm ±",
        "26 mm ±",
        "from_face",
        &["26 mm to 28.15 mm", "27.5 mm", "between face and shoulder"],
    ),
    (
        "groove without a place",
        "from_face = \"9.35 mm ±0.05 mm\"",
        "width = \"2.15 mm\"",
        "groove",
        &["no place", "from_shoulder"],
    ),
    ("groove with two places", "groove = { ", "groove = { from_shoulder = \"18 mm\", ", "groove", &["both"]),
    ("no groove", "groove = { from_face = \"9.35 mm ±0.05 mm\" }\n", "", "stack", &["`stack.groove` is missing"]),
    ("no depth", "depth = \"27.5 mm ±0.05 mm\"\n", "", "stack", &["`stack.depth` is missing"]),
    ("ring of another bore", "62x2", "72x2.5", "\"DIN 472 72x2.5\"", &["72 mm", "62 mm"]),
    ("ring of another thickness", "62x2", "62x2.5", "\"DIN 472 62x2.5\"", &["2.5 mm thick", "2 mm"]),
    ("no ring at all", "DIN 472 62x2", "spring clip", "\"spring clip\"", &["spring clip", "DIN 472 62x2"]),
    ("one limit", "0.5 mm ±0.02 mm", "0.5 mm +0.02 mm", "+0.02 mm", &["stack.spacer", "one limit"]),
    (
        "a spacer of less than nothing",
        "0.5 mm ±0.02 mm",
        "0.5 mm ±0.6 mm",
        "\"0.5 mm ±0.6 mm\"",
        &["-0.1 mm to 1.1 mm", "above 0 mm"],
    ),
    ("no unit", "0.5 mm ±0.02 mm", "0.5", "0.5", &["stack.spacer", "mm"]),
    (
        "play upside down",
        "most = \"0.3 mm\"",
        "most = \"-0.3 mm\"",
        "\"-0.3 mm\"",
        &["from 0 mm to -0.3 mm", "least before most"],
    ),
    (
        "play of less than nothing",
        "least = \"0 mm\"",
        "least = \"-0.05 mm\"",
        "\"-0.05 mm\"",
        &["`stack.play.least`", "from -0.05 mm to 0.3 mm", "zero or more"],
    ),
    (
        "play of less than nothing, alone",
        "least = \"0 mm\", most = \"0.3 mm\"",
        "least = \"-0.05 mm\"",
        "\"-0.05 mm\"",
        &["from -0.05 mm, and must be zero or more"],
    ),
    ("no spacers in the list", "\"0.5 mm ±0.02 mm\"", "[]", "spacer", &["`stack.spacer` is an empty list"]),
    (
        "second spacer of the list",
        "\"0.5 mm ±0.02 mm\"",
        "[\"0.5 mm ±0.02 mm\", \"5 mm ±6 mm\"]",
        "\"5 mm ±6 mm\"",
        &["`stack.spacer 2`", "-1 mm to 11 mm"],
    ),
    (
        "spacer of the list left out of the order",
        "[stack]",
        "[stack]\norder = [\"bearing\", \"spacer\"]\nshim = [\"0.1 mm\", \"0.2 mm\"]",
        "order",
        &["leaves out the shim 1", "\"shim 2\""],
    ),
    (
        "part twice in the order",
        "[stack]",
        "[stack]\norder = [\"spacer\", \"spacer\", \"bearing\"]",
        "\"spacer\"",
        &["twice"],
    ),
    ("part left out of the order", "[stack]", "[stack]\norder = [\"bearing\"]", "order", &["leaves out the spacer"]),
    (
        "pair without spacer",
        "[stack]",
        "[stack]\npair = { shoulders = \"60 mm\" }",
        "pair",
        &["`stack.pair.spacer` is missing"],
    ),
];

#[test]
fn the_good_job_is_good() {
    let checked = job::check(GOOD, &Library::default());
    assert!(checked.is_ok(), "{}", checked.unwrap_err());
}

#[test]
fn each_bad_seal_or_stack_is_refused_at_its_place_with_advice() {
    let mut wrong = Vec::new();
    for (name, from, to, underlined, says) in BAD {
        assert!(GOOD.contains(from), "{name}: the good job has no {from}");
        let text = GOOD.replacen(from, to, 1);
        let Err(found) = job::check(&text, &Library::default()) else {
            wrong.push(format!("{name}: accepted"));
            continue;
        };
        let fits = found.iter().any(|problem| {
            let said = format!("{} / {}", problem.message, problem.help);
            text.get(problem.at.clone()) == Some(*underlined) && says.iter().all(|words| said.contains(words))
        });
        if !fits {
            let told = found
                .iter()
                .map(|p| format!("  [{}] {} / {}", text.get(p.at.clone()).unwrap_or("?"), p.message, p.help));
            wrong.push(format!("{name}:\n{}", told.collect::<Vec<_>>().join("\n")));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_mistake_of_seal_and_stack_is_reported_in_one_run() {
    let text = GOOD.replace("58 HRC", "580").replace("62x2", "72x2.5").replace("0.5 mm ±0.02 mm", "0.5");
    let found = job::check(&text, &Library::default()).unwrap_err();
    assert!(found.iter().count() >= 3, "{found}");
    // A seat or a cover that is wrong as well hides none of them.
    let more = text.replace("outside = \"90 mm\"", "wall = \"4 mm to 40 mm\"")
        + "[fasteners]\nthread = \"M6\"\npoints = [[\"1 mm\", \"2 mm\"], [\"1 mm\", \"2 mm\"]]\n";
    let said = job::check(&more, &Library::default()).unwrap_err().to_string();
    for words in ["half the bore, 31 mm", "screws 1 and 2 are 0.00 mm apart", "shaft_hardness", "72 mm", "stack.spacer"]
    {
        assert!(said.contains(words), "\"{words}\" is not in {said}");
    }
}

#[test]
fn every_default_of_seal_and_stack_is_an_assumption() {
    let text = "[bearing]\ndesignation = \"6206\"\n[housing]\nbore_limits = \"N7\"\nmaterial = \"cast-aluminium\"\n\
                [seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\n[stack]\ndepth = \"27.5 mm\"\ngroove = { from_face = \"9 mm\" }\nshim = \"0.5 mm\"\n";
    let job = job::check(text, &Library::default()).unwrap();
    for what in [
        "seal.fitted",
        "seal.case",
        "seal.lips",
        "seal.sealant",
        "seal.passes_over",
        "seal.bore_limits",
        "seal.shaft_limits",
        "seal.depth",
        "stack.depth: limits",
        "stack.groove.from_face: limits",
        "stack.groove.width",
        "stack.ring",
        "stack.bearing: limits",
        "stack.shim: limits",
        "stack.order",
        "stack.play",
    ] {
        assert!(job.assumptions.iter().any(|assumption| assumption.what == what), "{what} is not listed");
    }
}
