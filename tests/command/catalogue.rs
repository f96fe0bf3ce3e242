//! The text of every error, kept: a change here is a change of what a person at the bench reads.

use super::bad::{self, Case};
use std::fmt::Write;

/// Each case with its command, its exit code and what it says.
fn told(cases: &[Case]) -> String {
    let mut text = String::new();
    for case in cases {
        let run = case.run(&[]);
        let words: Vec<String> = case
            .words
            .iter()
            .map(|word| if word.contains(' ') { format!("\"{word}\"") } else { word.clone() })
            .collect();
        assert!([2, 4].contains(&run.code), "{}: exit {}\n{}", case.name, run.code, run.err);
        assert!(run.code == 4 || run.out.is_empty(), "{} prints a result", case.name);
        for word in ["panicked", "os error", "Err(", "Some(", "not known here", "::"] {
            assert!(!run.err.contains(word), "{} says {word}: {}", case.name, run.err);
        }
        assert!(run.err.contains("error: ") && run.err.contains("help: "), "{} has no help: {}", case.name, run.err);
        let err: String = run.err.lines().map(|line| format!("{}\n", line.trim_end())).collect();
        writeln!(text, "## {}\n$ seatwise {}\n{err}exit {}\n", case.name, words.join(" "), run.code).unwrap();
    }
    text
}

macro_rules! catalogue {
    ($($name:ident),*) => {
        $(#[test]
        fn $name() {
            insta::assert_snapshot!(told(&bad::$name()));
        })*
    };
}

catalogue!(jobs, lists, readings, materials, media, flags);

#[test]
fn the_catalogue_has_every_kind_and_no_case_twice() {
    let cases = bad::cases();
    assert!(cases.len() >= 100, "only {}", cases.len());
    let mut names: Vec<(&str, &[String])> = cases.iter().map(|case| (case.name, &case.words[..1])).collect();
    names.sort_unstable();
    let all = names.len();
    names.dedup();
    assert_eq!(names.len(), all);
}
