//! The programs in `examples/` that call the library do what they say.

#[path = "../../examples/engineer.rs"]
#[allow(dead_code, reason = "its main is that of the example")]
mod engineer;
#[path = "../../examples/instructor.rs"]
#[allow(dead_code, reason = "its main is that of the example")]
mod instructor;
#[path = "../../examples/mechanic.rs"]
#[allow(dead_code, reason = "its main is that of the example")]
mod mechanic;

use super::{read, report};
use seatwise::stock::Library;
use seatwise::{job, plan};

fn text(out: Vec<u8>) -> String {
    String::from_utf8(out).unwrap()
}

#[test]
fn the_mechanic_s_example_gives_the_short_answer_and_counts_the_dangers_of_the_job() {
    let mut out = Vec::new();
    mechanic::answer(&mut out).unwrap();
    let job = job::check(&read("examples/pump-case.toml"), &Library::default()).unwrap();
    let plan = plan::plan(&job).unwrap();
    let dangers = plan.cautions.iter().filter(|caution| caution.level() == plan::Level::Danger).count();
    let printed = text(out);
    assert!(printed.starts_with(&report::text::short(&plan, job.system)), "{printed}");
    assert!(printed.contains(&format!("{dangers} dangers")), "{printed}");
}

#[test]
fn the_engineer_s_example_has_a_line_a_class_and_the_force_rises_with_the_class() {
    let mut out = Vec::new();
    engineer::table(&mut out).unwrap();
    let printed = text(out);
    // "K7  1.9 kN ..." or "J7  850 N ...": the second and the third word.
    let newtons = |line: &str| {
        let words: Vec<&str> = line.split_whitespace().collect();
        words[1].parse::<f64>().unwrap() * if words[2] == "kN" { 1e3 } else { 1.0 }
    };
    let forces: Vec<f64> = printed.lines().skip(1).map(newtons).collect();
    assert_eq!(forces.len(), 5, "{printed}");
    assert!(forces.windows(2).all(|pair| pair[0] < pair[1]), "{printed}");
}

#[test]
fn the_instructor_s_example_prints_the_sheet_before_its_answers_and_the_working_last() {
    let mut out = Vec::new();
    instructor::papers(&mut out).unwrap();
    let printed = text(out);
    let at = |words: &str| printed.find(words).unwrap_or_else(|| panic!("no {words}: {printed}"));
    let sheet = at("Exercise, level 1, seed 7");
    let answers = at("Answers to the exercise, level 1, seed 7");
    assert!(sheet < answers && answers < at("Working: "));
}
