//! The command: the same bytes on any number of threads, and every form of the result.

#[path = "../binary/mod.rs"]
mod binary;

use binary::{done, finished, run, seatwise};

const JOB: &str = "examples/iron-hub.toml";

fn with_threads(threads: &str, format: &str, seed: &str) -> String {
    let mut command = seatwise(&["plan", JOB, "--draws", "20000", "--seed", seed, "--format", format]);
    let ended = finished(command.env("RAYON_NUM_THREADS", threads));
    assert_eq!((ended.code, ended.err.as_str()), (0, ""));
    ended.out
}

#[test]
fn the_same_seed_gives_the_same_bytes_on_one_thread_and_on_several() {
    let one = with_threads("1", "json", "7");
    assert_eq!(one, with_threads("2", "json", "7"));
    assert_eq!(one, with_threads("5", "json", "7"));
    assert_eq!(with_threads("1", "text", "7"), with_threads("2", "text", "7"));
    assert_ne!(one, with_threads("2", "json", "8"), "another seed draws other parts");
}

#[test]
fn a_plan_without_draws_says_why_it_has_no_scatter() {
    let plan: serde_json::Value = serde_json::from_str(&done(&["plan", JOB, "--format", "json"])).unwrap();
    assert!(plan["scatter"].is_null());
    assert!(plan["scatter_reason"].as_str().unwrap().contains("--draws"));
}

#[test]
fn the_answer_comes_first_and_json_text_and_csv_agree() {
    let folder = tempfile::tempdir().unwrap();
    let (csv, svg) = (folder.path().join("parts.csv"), folder.path().join("parts.svg"));
    let files = [csv.to_str().unwrap(), svg.to_str().unwrap()];
    let flags = ["--draws", "5000", "--force-limit", "10 kN", "--scatter-csv", files[0], "--scatter-plot", files[1]];
    let text = done(&[&["plan", JOB][..], &flags].concat());
    let block = text.split("\nScatter\n").nth(1).unwrap();
    assert!(block.trim_start().starts_with("Of 100 parts, "), "{block}");
    assert!(block.contains("need no more than 10 kN"), "{block}");
    assert!(text.lines().all(|line| line.chars().count() <= 100));
    let plan = done(&["plan", JOB, "--draws", "5000", "--force-limit", "10 kN", "--format", "json"]);
    let plan: serde_json::Value = serde_json::from_str(&plan).unwrap();
    let seat = &plan["scatter"]["seats"][0];
    let [low, share, high] = ["low", "share", "high"].map(|key| seat["drops_in"][key].as_f64().unwrap());
    assert!(low <= share && share <= high);
    let rows = std::fs::read_to_string(&csv).unwrap();
    for output in seat["outputs"].as_array().unwrap() {
        let name = output["output"].as_str().unwrap();
        let row = rows.lines().find(|row| row.split(',').nth(1) == Some(name)).unwrap();
        let mean = row.split(',').nth(4).unwrap();
        assert_eq!(
            mean,
            output["mean"].as_f64().map(|mean| mean.to_string()).unwrap_or_default().trim_end_matches(".0")
        );
    }
    let picture = std::fs::read_to_string(&svg).unwrap();
    assert!(picture.contains("what decides it") && picture.contains("drops in from"));
}

#[test]
fn an_impossible_number_of_draws_or_force_is_refused_with_its_range() {
    for (flags, said) in [
        (["--draws", "0"], "0 draws were asked for, but there must be from 100 to 5000000"),
        (["--draws", "90000000"], "90000000 draws"),
    ] {
        let ended = run(&["plan", JOB, flags[0], flags[1]], "");
        assert_eq!((ended.code, ended.out.as_str()), (2, ""));
        assert!(ended.err.contains(said), "{}", ended.err);
    }
    let ended = run(&["plan", JOB, "--draws", "1000", "--force-limit", "8"], "");
    assert!(ended.code == 2 && ended.err.contains("--force-limit") && ended.err.contains("kN"), "{}", ended.err);
    let alone = run(&["plan", JOB, "--seed", "4"], "");
    assert!(alone.code == 2 && alone.err.contains("--draws"), "{}", alone.err);
}
