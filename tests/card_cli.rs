//! The job card as the program writes it: one page that needs nothing else, with the plan's own words.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod binary;

use binary::{done, run};

const JOBS: [&str; 3] = ["examples/pump-case.toml", "examples/gear-cover.toml", "examples/half-hour-freezer.toml"];

fn card(job: &str) -> String {
    done(&["card", job])
}

#[test]
fn a_card_fetches_nothing_and_runs_nothing() {
    for job in JOBS {
        let page = card(job);
        assert!(page.starts_with("<!DOCTYPE html>") || page.starts_with("<!doctype html>"), "{job}");
        for forbidden in ["<script", " src=\"http", " href=\"http", "@import", "url(http"] {
            assert!(!page.contains(forbidden), "{job} holds {forbidden}");
        }
    }
}

#[test]
fn headings_go_down_one_level_at_a_time() {
    for job in JOBS {
        let page = card(job);
        let levels: Vec<u32> = page
            .split("<h")
            .skip(1)
            .filter_map(|after| {
                after.chars().next().and_then(|level| level.to_digit(10)).filter(|_| after.as_bytes()[1] != b'r')
            })
            .collect();
        assert_eq!(levels.first(), Some(&1), "{job}");
        assert_eq!(levels.iter().filter(|level| **level == 1).count(), 1, "{job}");
        for pair in levels.windows(2) {
            assert!(pair[1] <= pair[0] + 1, "{job}: {levels:?}");
        }
    }
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    assert_eq!(card(JOBS[0]), card(JOBS[0]));
}

#[test]
fn the_card_says_what_the_plan_says() {
    let squeezed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let plan = squeezed(&done(&["plan", JOBS[0]]));
    let page = squeezed(&card(JOBS[0]));
    for words in ["drops into the housing with 59 µm", "WS-0417", "7 min 02 s", "heat-proof gloves"] {
        assert!(plan.contains(words) && page.contains(words), "\"{words}\"");
    }
}

#[test]
fn a_job_that_is_none_gets_no_card() {
    let refused = run(&["card", "examples/no-such-job.toml"], "");
    assert!(refused.code != 0 && refused.out.is_empty() && refused.err.contains("no-such-job"), "{}", refused.err);
}
