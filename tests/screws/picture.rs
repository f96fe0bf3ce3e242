//! The picture of the screws.

use super::binary::run;
use super::job_text;
use seatwise::quantity::System;
use seatwise::report::plot::{PlotError, ScrewsRequest, screws_png, screws_svg};
use seatwise::stock::Library;
use seatwise::{job, plan};

fn drawn(rest: &str) -> Result<String, PlotError> {
    let job = job::check(&job_text(rest), &Library::default()).unwrap();
    let plan = plan::plan(&job).unwrap();
    let fasteners = plan.fasteners.as_ref().unwrap();
    screws_svg(&ScrewsRequest { plan: fasteners, title: "Screws", subtitle: "", system: System::Metric })
}

#[test]
fn every_screw_has_its_turn_and_its_number() {
    let svg = drawn("[fasteners]\nthread = \"M6\"\ncount = 10\ncircle = \"120 mm\"\n").unwrap();
    for number in 1..=10 {
        let shown = svg.matches(&format!("\n{number}\n")).count();
        assert_eq!(shown, 2, "{number} must stand in a head and beside one");
    }
    assert!(svg.contains("Order of tightening: 1 → 6 → 3"), "words for a screen reader");
}

#[test]
fn a_single_screw_and_two_hundred_are_drawn() {
    assert!(drawn("[fasteners]\nthread = \"M6\"\npoints = [[\"5 mm\", \"5 mm\"]]\n").is_ok());
    assert!(drawn("[fasteners]\nthread = \"M5\"\ncount = 100\ncircle = \"900 mm\"\n").is_ok());
}

#[test]
fn screws_too_close_for_their_numbers_are_refused_with_a_reason() {
    let rest =
        "[fasteners]\nthread = \"M3\"\npoints = [[\"0 mm\", \"0 mm\"], [\"6 mm\", \"0 mm\"], [\"900 mm\", \"0 mm\"]]\n";
    let said = drawn(rest).unwrap_err().to_string();
    assert!(said.contains("stand so close") && said.contains("plan's text"), "{said}");
}

#[test]
fn the_picture_is_the_same_whenever_it_is_drawn_and_a_png() {
    let rest = "[fasteners]\nthread = \"M8\"\ncount = 5\ncircle = \"90 mm\"\n";
    assert_eq!(drawn(rest).unwrap(), drawn(rest).unwrap());
    let job = job::check(&job_text(rest), &Library::default()).unwrap();
    let plan = plan::plan(&job).unwrap();
    let request =
        ScrewsRequest { plan: plan.fasteners.as_ref().unwrap(), title: "T", subtitle: "S", system: System::Inch };
    assert!(screws_png(&request).unwrap().starts_with(b"\x89PNG"));
}

#[test]
fn the_program_draws_and_refuses_as_for_other_pictures() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("screws.svg");
    let file = path.to_str().unwrap();
    let arguments = ["plan", "examples/gear-cover.toml", "--detail", "short", "--screw-plot", file];
    assert_eq!(run(&arguments, "").code, 0);
    assert!(std::fs::read_to_string(&path).unwrap().contains("<title>Cover screws: 6 × M8 to 24.0 N·m"));
    let again = run(&arguments, "");
    assert_eq!(again.code, 2);
    assert!(again.err.contains("exists"), "{}", again.err);
    let none = run(&["plan", "examples/core-plug.toml", "--screw-plot", "/nowhere/x.svg"], "");
    assert_eq!(none.code, 2);
    assert!(none.err.contains("no cover screws to draw") && none.err.contains("[fasteners]"), "{}", none.err);
    let kind = run(&["plan", "examples/gear-cover.toml", "--screw-plot", "x.pdf"], "");
    assert!(kind.err.contains("names no kind of picture"), "{}", kind.err);
}
