//! The README says what the program does today.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "readme/library.rs"]
mod library;

use seatwise::report::plot::{self, ForceRequest, PlotRequest, ScrewsRequest};
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use std::fs;
use std::path::Path;

fn read(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(name)).unwrap()
}

/// The text of the first fenced block of `language` after `marker`.
fn block(readme: &str, marker: &str, language: &str) -> String {
    let after = readme.split_once(marker).unwrap().1;
    let begin = after.split_once(&format!("```{language}\n")).unwrap().1;
    begin.split_once("```").unwrap().0.to_owned()
}

#[test]
fn the_quoted_answer_is_the_beginning_of_the_real_one() {
    let quoted = block(&read("README.md"), "a test holds them", "text");
    let job = job::check(&read("examples/pump-case.toml"), &Library::default()).unwrap();
    let text = report::text::plan(&plan::plan(&job).unwrap(), job.system);
    assert!(quoted.lines().count() > 10, "the README quotes too little to be of use");
    assert!(text.starts_with(&quoted), "the README quotes\n{quoted}\nbut the plan begins\n{text}");
}

#[test]
fn the_quoted_job_is_a_sound_job_and_part_of_the_example() {
    let quoted = block(&read("README.md"), "## A job and its answer", "toml");
    job::check(&quoted, &Library::default()).unwrap();
    let example = read("examples/pump-case.toml");
    for line in quoted.lines().filter(|line| !line.is_empty()) {
        let bare = line.split(" #").next().unwrap().trim();
        assert!(example.contains(bare), "the example has no line `{bare}`");
    }
}

#[test]
fn the_picture_is_drawn_from_today_s_plan() {
    let job = job::check(&read("examples/pump-case.toml"), &Library::default()).unwrap();
    let plan = plan::plan(&job).unwrap();
    let title = report::plot_title(&plan, &plan.seats[0], job.system);
    let request = PlotRequest {
        history: &plan.seats[0].history,
        title: &title,
        subtitle: &job.heading.title,
        system: job.system,
    };
    let help = "draw it again: cargo run --release --example draw_plots";
    assert!(plot::svg(&request).unwrap() == read("plots/pump-case.svg"), "{help}");
    assert!(Path::new(env!("CARGO_MANIFEST_DIR")).join("plots/pump-case.png").exists(), "{help}");
}

#[test]
fn the_picture_of_the_force_is_drawn_from_today_s_plan() {
    let job = job::check(&read("examples/iron-hub.toml"), &Library::default()).unwrap();
    let plan = plan::plan(&job).unwrap();
    let title = report::plot_title(&plan, &plan.seats[0], job.system);
    let request = ForceRequest {
        course: &plan.seats[0].force_course,
        title: &title,
        subtitle: &job.heading.title,
        system: job.system,
    };
    let help = "draw it again: cargo run --release --example draw_plots";
    assert!(plot::force_svg(&request).unwrap() == read("plots/iron-hub-force.svg"), "{help}");
    assert!(Path::new(env!("CARGO_MANIFEST_DIR")).join("plots/iron-hub-force.png").exists(), "{help}");
}

#[test]
fn the_picture_of_the_screws_is_drawn_from_today_s_plan() {
    let job = job::check(&read("examples/gear-cover.toml"), &Library::default()).unwrap();
    let plan = plan::plan(&job).unwrap();
    let fasteners = plan.fasteners.as_ref().unwrap();
    let title = report::screws_title(fasteners, job.system);
    let request = ScrewsRequest { plan: fasteners, title: &title, subtitle: &job.heading.title, system: job.system };
    let help = "draw it again: cargo run --release --example draw_plots";
    assert!(plot::screws_svg(&request).unwrap() == read("plots/gear-cover-screws.svg"), "{help}");
    assert!(Path::new(env!("CARGO_MANIFEST_DIR")).join("plots/gear-cover-screws.png").exists(), "{help}");
}
