//! Problems for a class: their answers, worked again from what the sheet gives, and the rules of the two papers.

use super::binary::{done, run, seatwise};
use super::recompute;
use seatwise::plan::exercise::{Answer, CLASS_MATERIALS, ExerciseError, ExerciseLevel, MOST_PROBLEMS, exercise};
use seatwise::quantity::System;
use seatwise::report::exercise::{Form, Paper, Solution, schema};
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use serde_json::Value;
use std::fs;
use std::process::Command;

const LEVELS: [ExerciseLevel; 3] = [ExerciseLevel::One, ExerciseLevel::Two, ExerciseLevel::Three];
/// Three problems have each kind of level 1, two have each of levels 2 and 3.
const PROBLEMS: [usize; 3] = [3, 2, 2];

/// Sheet and answers of a seed and a level, as JSON.
fn papers(seed: u64, level: usize) -> [Value; 2] {
    let drawn = exercise(seed, LEVELS[level], PROBLEMS[level], &Library::default()).unwrap();
    let solution = Solution::new(&drawn).unwrap();
    [Paper::Sheet, Paper::Answers].map(|paper| serde_json::from_str(&solution.json(paper).unwrap()).unwrap())
}

/// Every paper of 50 seeds.
fn each_paper(mut check: impl FnMut(u64, usize, [Value; 2])) {
    for seed in 1..=50 {
        for level in 0..3 {
            check(seed, level, papers(seed, level));
        }
    }
}

#[test]
#[allow(clippy::print_stderr, reason = "a test that was skipped must be seen to be")]
fn answers_of_fifty_seeds_follow_from_what_the_sheet_gives() {
    let folder = tempfile::tempdir().unwrap();
    let (mut looked_at, mut files) = (0, Vec::new());
    each_paper(|seed, level, [sheet, answers]| {
        looked_at += recompute::problems(&sheet, &answers).unwrap_or_else(|wrong| panic!("seed {seed}: {wrong}"));
        for (name, paper) in [("sheet", sheet), ("answers", answers)] {
            let file = folder.path().join(format!("{name}-{seed}-{}.json", level + 1));
            fs::write(&file, paper.to_string()).unwrap();
            files.push(file);
        }
    });
    assert!(looked_at > 2000, "only {looked_at} answers were looked at");
    // Once more, by a script with formulas of its own.
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/working/recompute_exercise.py");
    match Command::new("python3").arg(script).args(&files).output() {
        Ok(run) => assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr)),
        Err(error) => eprintln!("skipped: the script was not run: {error}"),
    }
}

/// A story and the job that answers it are of one part, and what is asked for is there to be worked out.
#[test]
fn the_job_of_an_answer_is_that_of_its_story_and_asks_for_nothing_that_is_nothing() {
    let (mut bushes, mut plugs) = (0, 0);
    for (seed, level) in (1..=8).flat_map(|seed| (0..3).map(move |level| (seed, level))) {
        let drawn = exercise(seed, LEVELS[level], PROBLEMS[level], &Library::default()).unwrap();
        for problem in &drawn.problems {
            let told = |part: &str| problem.story.contains(&format!("A {part} of "));
            for case in &problem.cases {
                let kind = |kind: &str| case.text.contains(&format!("kind = \"{kind}\""));
                assert!(!told("bush") || kind("plain bush"), "{}\n{}", problem.story, case.text);
                assert!(!told("plug") || kind("solid plug"), "{}\n{}", problem.story, case.text);
                assert!(!told("bush") || case.job.part.bore.is_some(), "{}", case.text);
                assert!(!told("plug") || case.job.part.bore.is_none(), "{}", case.text);
                // A part is half to once as long as wide, in a boss half as large again to more than twice.
                let part = &case.job.part;
                let long = (part.width / part.outside).value;
                assert!(!told("bush") && !told("plug") || (0.45..=1.0).contains(&long), "{}", case.text);
                (bushes, plugs) = (bushes + usize::from(told("bush")), plugs + usize::from(told("plug")));
            }
            let plans: Vec<Value> = problem
                .cases
                .iter()
                .map(|case| {
                    serde_json::from_str(&report::json::plan(&plan::plan(&case.job).unwrap()).unwrap()).unwrap()
                })
                .collect();
            assert!(plans.iter().all(|plan| plan["verdict"] != "do not"), "seed {seed}: {}", problem.story);
            for answer in problem.questions.iter().flat_map(|question| &question.answers) {
                let Answer::Number(case, place) = answer else { continue };
                if !["force", "holds", "pressure", "hoop", "factor"].iter().any(|what| place.contains(what)) {
                    continue;
                }
                let found = plans[*case].pointer(&format!("/seats/0/{place}")).and_then(Value::as_f64);
                assert!(found.is_some_and(|found| found > 0.0), "seed {seed}, {place}: {found:?}");
            }
        }
    }
    assert!(bushes >= 5 && plugs >= 5, "{bushes} {plugs}");
}

/// Nothing is asked whose answer is out of the ordinary: a cold that no medium has, a heat that no oven should have, a clearance
/// that lasts a moment or all day, ways that all do, or none.
#[test]
fn what_is_asked_can_be_done_in_a_shop() {
    let plans = |seed: u64, level: ExerciseLevel, count: usize| -> Vec<Vec<Value>> {
        let drawn = exercise(seed, level, count, &Library::default()).unwrap();
        let of = |case: &plan::exercise::Case| {
            serde_json::from_str(&report::json::plan(&plan::plan(&case.job).unwrap()).unwrap()).unwrap()
        };
        drawn.problems.iter().map(|problem| problem.cases.iter().map(of).collect()).collect()
    };
    let number = |plan: &Value, place: &str| {
        plan.pointer(place).and_then(Value::as_f64).unwrap_or_else(|| panic!("no {place} in {plan}"))
    };
    for seed in 1..=50 {
        let found = plans(seed, ExerciseLevel::One, 3);
        let (cold, hot) = (&found[1][0], &found[2][0]);
        assert!((-90.0..10.0).contains(&number(cold, "/seats/0/clears_at/inner_c")), "seed {seed}");
        assert!((35.0..120.0).contains(&number(hot, "/seats/0/clears_at/outer_c")), "seed {seed}");
        let bath = &plans(seed, ExerciseLevel::Two, 1)[0][0];
        assert_eq!(bath["verdict"], "drops in", "seed {seed}");
        assert!((30.0..7200.0).contains(&number(bath, "/seats/0/window_s/tightest")), "seed {seed}");
        assert!(number(bath, "/seats/0/time_to_clear_s/tightest") > 0.0, "seed {seed}");
    }
    for seed in 1..=4 {
        for ways in plans(seed, ExerciseLevel::Three, 2) {
            let free = ways[..3].iter().filter(|plan| plan["verdict"] == "drops in").count();
            assert!((1..3).contains(&free) && ways.len() == 4, "seed {seed}: {free} of three ways drop in");
        }
    }
}

#[test]
fn a_wrong_answer_would_be_found_out() {
    for level in 0..3 {
        let [sheet, answers] = papers(3, level);
        let mut found_out = 0;
        for (problem, question, answer) in places(&answers) {
            let mut wrong = answers.clone();
            let number =
                wrong.pointer_mut(&format!("/problems/{problem}/questions/{question}/answers/{answer}/number/value"));
            let Some(number) = number.filter(|number| number.as_f64().is_some_and(|number| number.abs() > 1e-12))
            else {
                continue;
            };
            *number = (number.as_f64().unwrap() * 1.002).into();
            let asked = &answers["problems"][problem]["questions"][question]["answers"][answer]["asked"];
            assert_eq!(recompute::problems(&sheet, &wrong).is_err(), asked == true);
            found_out += usize::from(asked == true);
        }
        assert!(found_out >= 5, "level {}: {found_out}", level + 1);
    }
}

/// Where each answer stands.
fn places(answers: &Value) -> Vec<(usize, usize, usize)> {
    let list = |value: &Value| value.as_array().map_or(0, Vec::len);
    let mut all = Vec::new();
    for problem in 0..list(&answers["problems"]) {
        for question in 0..list(&answers["problems"][problem]["questions"]) {
            let of_question = &answers["problems"][problem]["questions"][question]["answers"];
            all.extend((0..list(of_question)).map(|answer| (problem, question, answer)));
        }
    }
    all
}

#[test]
fn the_job_of_an_answer_gives_that_answer() {
    let mut looked_at = 0;
    for seed in 1..=6 {
        for level in 0..3 {
            let [sheet, answers] = papers(seed, level);
            assert!(sheet["problems"][0]["cases"][0]["job"].is_null(), "the sheet gives the job away");
            for problem in answers["problems"].as_array().unwrap() {
                let cases = problem["cases"].as_array().unwrap();
                let plans: Vec<Value> = cases.iter().map(|case| planned(case["job"].as_str().unwrap())).collect();
                for answer in problem["questions"]
                    .as_array()
                    .unwrap()
                    .iter()
                    .flat_map(|question| question["answers"].as_array().unwrap())
                {
                    let plan = &plans[answer["case"].as_u64().unwrap() as usize];
                    looked_at += usize::from(stands_in(plan, answer));
                }
            }
        }
    }
    assert!(looked_at > 300, "{looked_at}");
}

fn planned(text: &str) -> Value {
    let job = job::check(text, &Library::default()).unwrap();
    serde_json::from_str(&report::json::plan(&plan::plan(&job).unwrap()).unwrap()).unwrap()
}

/// Whether an answer is a number, which must be that of the plan.
fn stands_in(plan: &Value, answer: &Value) -> bool {
    if answer["word"]["of"] == "verdict" {
        assert_eq!(answer["word"]["word"], plan["verdict"]);
    }
    let Some(value) = answer["number"]["value"].as_f64() else { return false };
    let at = answer["number"]["at"].as_str().unwrap();
    let number = plan.pointer(at).and_then(Value::as_f64).unwrap_or_else(|| panic!("no {at}"));
    let (factor, zero) = super::factor(at);
    // Six figures of the plan.
    let allowed = 6e-6 * (number * factor).abs() + 1e-15;
    assert!((number * factor + zero - value).abs() <= allowed, "{at}: {number}, {value}");
    true
}

#[test]
fn both_papers_hold_to_the_schema() {
    let validator = jsonschema::validator_for(&serde_json::from_str(&schema().unwrap()).unwrap()).unwrap();
    for level in 0..3 {
        for mut paper in papers(11, level) {
            let errors: Vec<String> = validator.iter_errors(&paper).map(|error| error.to_string()).collect();
            assert!(errors.is_empty(), "{errors:?}");
            paper["problems"][0].as_object_mut().unwrap().remove("questions");
            assert!(!validator.is_valid(&paper));
        }
    }
    assert_eq!(done(&["schema", "exercise"]), schema().unwrap());
}

#[test]
fn a_seed_gives_the_same_bytes_and_another_seed_others() {
    let sheet = |seed: &str, units: &str| {
        done(&["exercise", "--seed", seed, "--level", "1", "--problems", "10", "--units", units])
    };
    let metric = sheet("2024", "metric");
    assert_eq!(metric, sheet("2024", "metric"));
    assert_ne!(metric, sheet("2025", "metric"));
    assert_eq!(metric.matches("Problem ").count(), 10);
    let inch = sheet("2024", "inch");
    assert!(inch.contains(" thou ") && inch.contains(" °F ") && !inch.contains(" µm "), "{inch}");
    // A problem does not depend on how many come after it.
    let short = done(&["exercise", "--seed", "2024", "--problems", "1"]);
    let first =
        |text: &str| text.split("Problem 2").next().unwrap().split("\n\nA calc").next().unwrap().trim().to_owned();
    assert_eq!(first(&short), first(&metric));
}

#[test]
fn the_sheet_gives_no_answer_and_the_answers_all_of_them() {
    for level in 0..3 {
        let drawn = exercise(5, LEVELS[level], PROBLEMS[level], &Library::default()).unwrap();
        let solution = Solution::new(&drawn).unwrap();
        for form in [Form::Text, Form::Markdown, Form::Html] {
            let [sheet, answers] =
                [Paper::Sheet, Paper::Answers].map(|paper| solution.write(paper, form, System::Metric));
            for told in ["[bearing]", "Often missed", "Drops in:", "interference fit"] {
                assert!(!sheet.contains(told), "the sheet says {told}");
            }
            assert!(answers.contains("[bearing]") && answers.contains("Often missed"));
            for problem in &drawn.problems {
                let escaped = |text: &str| text.replace('"', "&quot;");
                let words = &problem.questions[0].words;
                let has = |page: &str| {
                    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
                    page.contains(words.as_str()) || page.contains(&escaped(words))
                };
                assert!(has(&sheet) && has(&answers), "{words}");
            }
            assert!(answers.contains("practice go before"), "no caution");
        }
    }
}

#[test]
fn a_page_of_an_exercise_fetches_nothing_and_is_well_formed() {
    let drawn = exercise(5, ExerciseLevel::Three, 1, &Library::default()).unwrap();
    let page = Solution::new(&drawn).unwrap().write(Paper::Answers, Form::Html, System::Metric);
    // The typeface is in the page itself.
    let (first, own) = page.split_once("url(data:").unwrap();
    let after = |part: &str| part.split_once(')').unwrap().1.to_owned();
    let page = first.to_owned() + &own.split("url(data:").map(after).collect::<String>();
    for foreign in ["<script", "http", "src=", "@import", "url("] {
        assert!(!page.contains(foreign), "the page has {foreign}");
    }
    for tag in ["math", "section", "article", "dl", "ol", "ul", "pre", "style"] {
        let (opened, closed) = (page.matches(&format!("<{tag}")).count(), page.matches(&format!("</{tag}>")).count());
        assert_eq!(opened, closed, "{tag}");
    }
}

#[test]
fn papers_are_never_written_over_unless_forced() {
    let folder = tempfile::tempdir().unwrap();
    let (sheet, answers) = (folder.path().join("sheet.txt"), folder.path().join("answers.txt"));
    let [sheet_name, answers_name] = [&sheet, &answers].map(|path| path.to_str().unwrap());
    let arguments = ["exercise", "--problems", "1", "-o", sheet_name, "--answers", answers_name];
    assert_eq!(done(&arguments), "");
    let first = fs::read_to_string(&answers).unwrap();
    assert!(first.starts_with("Answers") && fs::read_to_string(&sheet).unwrap().starts_with("Exercise"));
    // Neither paper may be there; and nothing is written when the other is.
    fs::remove_file(&answers).unwrap();
    let again = run(&arguments, "");
    assert_eq!(again.code, 2);
    assert!(again.err.contains("exists") && !answers.exists(), "{}", again.err);
    assert!(seatwise(&arguments).arg("--force").output().unwrap().status.success());
    assert_eq!(fs::read_to_string(&answers).unwrap(), first);
    let one_file = run(&["exercise", "-o", sheet_name, "--answers", sheet_name, "--force"], "");
    assert_eq!(one_file.code, 2);
    assert!(one_file.err.contains("two files"), "{}", one_file.err);
}

#[test]
fn a_sheet_has_one_to_forty_problems() {
    let library = Library::default();
    for count in [0, MOST_PROBLEMS + 1] {
        assert_eq!(exercise(1, ExerciseLevel::One, count, &library).unwrap_err(), ExerciseError::Count { count });
        assert_eq!(run(&["exercise", "--problems", &count.to_string()], "").code, 2);
    }
    assert_eq!(exercise(1, ExerciseLevel::One, MOST_PROBLEMS, &library).unwrap().problems.len(), MOST_PROBLEMS);
    assert_eq!(run(&["exercise", "--level", "4"], "").code, 2);
}

#[test]
fn class_materials_are_the_library_s_rounded() {
    let library = Library::default();
    for class in CLASS_MATERIALS {
        let record = library.material(class.id).unwrap();
        let near = |what: &str, rounded: f64, value: f64| {
            assert!((rounded / value - 1.0).abs() < 0.01, "{}, {what}: {rounded} for {value}", class.name);
        };
        near("density", f64::from(class.density), record.density().value);
        near("modulus", f64::from(class.modulus) * 1e9, record.elastic_modulus().value);
        near("strength", f64::from(class.strength) * 1e6, record.strength().value.value);
        near("expansion", f64::from(class.expansion) * 1e-7, record.expansion().at(373.15).unwrap() / 80.0);
        near("heat capacity", f64::from(class.heat_capacity), record.heat_capacity().at(293.15).unwrap());
        near("conductivity", f64::from(class.conductivity), record.conductivity().at(293.15).unwrap());
        near("poisson", f64::from(class.poisson) / 100.0, record.poisson_ratio());
    }
}
