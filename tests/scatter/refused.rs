//! What a [scatter] table may not hold: named with its place and its range.

use seatwise::job;
use seatwise::stock::Library;

fn problems(table: &str) -> Vec<(String, String, String)> {
    let text = format!(
        "[bearing]\ndesignation = \"6205\"\n[housing]\nbore_limits = \"N7\"\noutside = \"80 mm\"\n\
         material = \"cast-aluminium\"\n[scatter]\n{table}\n"
    );
    let found = job::check(&text, &Library::default()).unwrap_err();
    let told = found
        .iter()
        .map(|problem| (problem.message.clone(), problem.help.clone(), text[problem.at.clone()].to_owned()));
    told.collect()
}

#[test]
fn every_mistake_is_named_with_its_place_and_what_to_write() {
    let cases = [
        ("sizes = \"gaussian\"", "no distribution is called \"gaussian\"", "\"gaussian\""),
        ("film = \"unform\"", "no distribution is called \"unform\"", "\"unform\""),
        ("sizes = { shape = \"normal\", capability = \"0.1\" }", "0.1 but must lie from 0.3 to 5", "\"0.1\""),
        ("sizes = { shape = \"uniform\", capability = \"1\" }", "belongs to shape = \"normal\"", "\"1\""),
        ("friction = { shape = \"normal\", capability = \"9\" }", "9 but must lie from 0.3 to 5", "\"9\""),
        ("medium = \"-2 K\"", "-2 K but must lie from 0 K to 50 K", "\"-2 K\""),
        ("hold = \"-5 %\"", "scatter.hold", "-5 %"),
        ("carry = \"120 %\"", "scatter.carry", "120 %"),
        ("carry = \"5\"", "scatter.carry", "5"),
        ("outside = { measured = [\"52.0 mm\"] }", "1 sizes but must have from 2 to 10000", "measured"),
        (
            "outside = { measured = [\"42.0 mm\", \"42.0 mm\"] }",
            "42.000 mm, but the nominal diameter is 52.000 mm",
            "outside",
        ),
        ("shaft = \"uniform\"", "a size that this job does not have", "shaft"),
        ("speed = \"uniform\"", "[scatter] has no `speed`", "speed"),
    ];
    for (table, said, place) in cases {
        let found = problems(table);
        let named =
            found.iter().any(|(message, help, at)| message.contains(said) && at.contains(place) && !help.is_empty());
        assert!(named, "{table}: {found:?}");
    }
}

#[test]
fn several_mistakes_are_told_in_one_run() {
    let found = problems("sizes = \"round\"\nmedium = \"400 K\"\ncarry = { shape = \"uniform\" }");
    assert_eq!(found.len(), 3, "{found:?}");
}

#[test]
fn a_mean_beyond_its_limits_is_refused_when_parts_are_drawn() {
    use seatwise::plan::Method;
    use seatwise::plan::scatter::{OneByOne, Request, scatter};
    let job = crate::jobs::s31("housing = { shape = \"normal\", mean = \"5 um\" }");
    let request = Request { draws: 1000, seed: 1, force_limit: None, method: Method::Plane };
    let error = scatter(&job, &request, &OneByOne).unwrap_err();
    assert_eq!(error.help(), "check the mean and the limits under [scatter]");
    let said = error.to_string();
    assert!(said.contains("size of the housing bore") && said.contains("lies 14.0 µm beyond the limits"), "{said}");
}
