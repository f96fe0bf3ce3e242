//! The README says what the program does today.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "checked/mod.rs"]
mod checked;
#[path = "readme/library.rs"]
mod library;

use checked::{page, picture, sets};
use seatwise::report::plot::{self, ForceRequest, PlotRequest, ScrewsRequest, WaysRequest};
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

#[test]
fn the_picture_of_the_ways_is_drawn_from_today_s_list() {
    let (job, library) =
        (job::check(&read("examples/pump-case.toml"), &Library::default()).unwrap(), Library::default());
    let media = ["domestic-freezer", "chest-freezer", "oven", "hot-plate"].map(|name| library.medium(name).unwrap());
    let seat = plan::options::options(&job, &media).unwrap().swap_remove(0);
    let (ways, title) = (report::options::legend(&seat, job.system), report::options::picture_title(&seat, job.system));
    let request =
        WaysRequest { seat: &seat, ways: &ways, title: &title, subtitle: &job.heading.title, system: job.system };
    let help = "draw it again: cargo run --release --example draw_plots";
    assert!(plot::ways_svg(&request).unwrap() == read("plots/pump-case-ways.svg"), "{help}");
    assert!(Path::new(env!("CARGO_MANIFEST_DIR")).join("plots/pump-case-ways.png").exists(), "{help}");
}

/// The tests of the sets hold what the page says of each; this holds the rest, and that there is a test of every set.
#[test]
fn the_validation_page_has_every_set_once_and_nothing_else() {
    let (readme, text, svg) = (read("README.md"), read(page::PAGE), read(page::PICTURE));
    let help = "write it again: cargo run --example validation";
    assert!(readme.contains("](plots/validation.svg)"));
    let lines: Vec<&str> = text.strip_prefix(&page::head()).expect(help).lines().take(sets().count() + 1).collect();
    let counts = sets().zip(&lines).map(|(set, line)| {
        let numbers = line.strip_prefix(&format!("| {} | {} | ", set.family, set.title)).expect(help);
        let mut numbers = numbers.split(" | ").map(|number| number.parse::<usize>());
        (numbers.next().unwrap().unwrap(), numbers.next().unwrap().unwrap())
    });
    let counts: Vec<_> = counts.collect();
    let rows: usize = counts.iter().map(|(rows, _)| rows).sum();
    assert!(readme.contains(&format!("[Each of {rows} reference rows](plots/validation.md)")), "{rows} rows");
    let total = page::total_line(&counts);
    assert_eq!(lines.last().unwrap(), &total.trim_end(), "{help}");
    let titles: Vec<&str> = text.lines().filter_map(|line| line.strip_prefix("### ")).collect();
    assert_eq!(titles, sets().map(|set| set.title).collect::<Vec<_>>(), "{help}");
    let frame = picture::frame();
    assert!(svg.starts_with(&frame) && svg[frame.len()..].matches("class=\"dots\"").count() == titles.len(), "{help}");
    let mut sources = String::new();
    sources_under(Path::new(env!("CARGO_MANIFEST_DIR")).join("tests").as_path(), &mut sources);
    for title in titles {
        assert!(sources.contains(&format!("prove(\"{title}\")")), "no test proves {title}");
    }
}

/// A file of numbers that no set reads would be forgotten without a word.
#[test]
fn every_file_of_reference_rows_is_on_the_page_or_named_there() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests");
    let mut sets = String::new();
    sources_under(&root.join("checked"), &mut sets);
    let (mut files, mut folders) = (0, vec![root.join("reference")]);
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "csv") {
                let stem = path.file_stem().unwrap().to_str().unwrap();
                // As the sets open them: a path, or the name alone of the files of films.
                let opened = sets.contains(&format!("{stem}.csv\")")) || sets.contains(&format!("of(\"{stem}\")"));
                let named = page::ELSEWHERE.iter().any(|(file, _)| path.ends_with(file));
                assert!(opened != named, "{} is in {} sets", path.display(), if opened { "the" } else { "no" });
                files += 1;
            }
        }
    }
    assert!(files > 60, "{files}");
}

fn sources_under(folder: &Path, into: &mut String) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources_under(&path, into);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            into.push_str(&fs::read_to_string(path).unwrap());
        }
    }
}
