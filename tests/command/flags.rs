//! Flags that every command shares, help, completions and manual pages.

use super::binary::{done, finished, run, seatwise};
use super::*;
use std::process::Command;
use std::time::{Duration, Instant};

const COMMANDS: [&str; 21] = [
    "ask",
    "new",
    "batch",
    "plan",
    "card",
    "options",
    "table",
    "sweep",
    "compare",
    "log",
    "section",
    "deck",
    "working",
    "exercise",
    "limits",
    "pair",
    "materials",
    "media",
    "schema",
    "completions",
    "manual",
];

#[test]
fn the_help_shows_every_command_in_its_group_and_the_exit_codes_of_the_readme() {
    let help = done(&["--help"]);
    for command in COMMANDS {
        assert_eq!(help.matches(&format!("\n  {command:<13}")).count(), 1, "{command}\n{help}");
    }
    let readme = example("README.md");
    let (_, codes) = readme.split_once("## Exit codes").unwrap();
    let codes: Vec<&str> = codes.lines().filter_map(|line| line.strip_prefix("| ")?.split(' ').next()).collect();
    assert_eq!(codes, ["code", "0", "2", "3", "4"]);
    for code in &codes[1..] {
        assert!(help.contains(&format!("\n  {code}  ")), "{code}\n{help}");
    }
}

#[test]
fn without_a_command_the_help_is_shown_and_the_exit_code_says_that_nothing_was_done() {
    let nothing = run(&[], "");
    assert_eq!((nothing.code, nothing.out.as_str()), (2, ""));
    assert!(nothing.err.contains("Begin a job:"), "{}", nothing.err);
}

#[test]
fn help_and_errors_keep_within_the_terminal() {
    for columns in [60, 90] {
        let narrow = |words: &[&str]| finished(seatwise(words).env("COLUMNS", columns.to_string()));
        for command in COMMANDS {
            let help = narrow(&[command, "--help"]).out;
            // Usage and examples are to be copied, so they are not broken.
            let options = help.split_once("Options:").unwrap().1.split("\nExample").next().unwrap();
            for line in options.lines() {
                assert!(line.chars().count() <= columns, "{command}, {columns}: {line}");
            }
        }
        let help = narrow(&["--help"]).out;
        let groups = help.split_once("Begin a job:").unwrap().1.split("Options:").next().unwrap();
        assert!(groups.lines().all(|line| line.chars().count() <= columns), "{groups}");
        let error = narrow(&["limits", "62", "Q99"]);
        assert!(error.err.lines().count() > 4 && error.err.contains("mistaken"), "{}", error.err);
        assert!(error.err.lines().all(|line| line.chars().count() <= columns), "{}", error.err);
    }
    let piped = run(&["limits", "62", "Q99"], "");
    assert_eq!(piped.err.lines().count(), 3, "a pipe gets each message on one line: {}", piped.err);
}

/// Where a line of prose ends; tables, formulas and examples have wide gaps or stand as they are.
fn is_prose(line: &str) -> bool {
    !line.trim_start().contains("   ") && !line.contains(" = \"")
}

#[test]
fn prose_of_results_keeps_within_the_terminal_and_says_the_same() {
    for words in [
        vec!["plan", "examples/bronze-bush.toml"],
        vec!["plan", "examples/core-plug.toml", "--detail", "short"],
        vec!["options", PUMP, "--with", "oven"],
        vec!["limits", "62", "N7"],
        vec!["log", PUMP, "examples/pump-case-readings.csv"],
        vec!["media", "liquid-nitrogen"],
        vec!["materials", "invar"],
    ] {
        let at = |columns: &str| finished(seatwise(&words).env("COLUMNS", columns)).out;
        let (usual, mut narrower) = (done(&words), false);
        // A word is broken at its hyphen alone.
        let joined = |text: &str| text.replace("-\n", "-").split_whitespace().collect::<String>();
        for columns in [40, 60] {
            let narrow = at(&columns.to_string());
            let too_wide = narrow.lines().filter(|line| is_prose(line) && line.chars().count() > columns);
            // A word of its own length alone stands out.
            let too_wide: Vec<&str> = too_wide.filter(|line| line.trim().contains(' ')).collect();
            let tables = narrow.lines().filter(|line| !is_prose(line)).count();
            assert!(too_wide.len() <= tables, "{words:?} at {columns}: {too_wide:#?}");
            assert_eq!(joined(&narrow), joined(&usual), "{words:?} at {columns}");
            narrower |= narrow.lines().count() > usual.lines().count();
        }
        assert!(narrower, "{words:?} is never wrapped");
    }
    // Never wider than what reads well, nor narrower than what can be read.
    let at = |columns: &str| finished(seatwise(&["limits", "62", "N7"]).env("COLUMNS", columns)).out;
    let usual = done(&["limits", "62", "N7"]);
    assert!(at("250") == usual && at("many") == usual && at("10") == at("40"), "{}", at("10"));
}

#[test]
fn a_file_has_the_usual_width_whatever_the_terminal() {
    let folder = folder();
    let file = folder.path().join("limits.txt");
    let words = ["limits", "62", "N7", "-o", as_str(&file)];
    assert_eq!(finished(seatwise(&words).env("COLUMNS", "40")).code, 0);
    assert_eq!(fs::read_to_string(&file).unwrap(), done(&words[..3]));
}

#[test]
fn every_command_that_takes_a_job_takes_it_from_standard_input() {
    let text = example(PUMP);
    for words in [
        vec!["plan", "JOB"],
        vec!["card", "JOB", "--date", "2026-03-02"],
        vec!["options", "JOB", "--with", "oven"],
        vec!["table", "JOB", "--with", "freezer", "--outer", "60 °C|80 °C"],
        vec!["sweep", "JOB", "--over", "bench.carry=10 s|60 s"],
        vec!["section", "JOB"],
        vec!["deck", "JOB"],
        vec!["working", "JOB"],
        vec!["log", "JOB", "examples/pump-case-readings.csv"],
    ] {
        let with = |job: &'static str| words.iter().map(move |word| if *word == "JOB" { job } else { *word });
        let from_file = done(&with(PUMP).collect::<Vec<_>>());
        let piped = run(&with("-").collect::<Vec<_>>(), &text);
        assert_eq!((piped.code, piped.err.as_str()), (0, ""), "{words:?}");
        assert!(piped.out == from_file, "{words:?} differs");
    }
    let compared = run(&["compare", "-", PUMP], &text);
    assert!(compared.code == 0 && compared.out.contains("standard input"), "{}", compared.err);
    let folder = folder();
    let kept = folder.path().join("kept.toml");
    let log = run(&["log", "-", "examples/pump-case-readings.csv", "--keep", as_str(&kept)], &text);
    assert_eq!((log.code, log.err.as_str()), (0, ""));
    assert!(fs::read_to_string(&kept).unwrap().contains("film"));
    for twice in [vec!["compare", "-", "-"], vec!["log", "-", "-"], vec!["plan", "-", "--material", "-"]] {
        let run = run(&twice, &text);
        assert!(run.code == 2 && run.err.contains("standard input is named twice"), "{twice:?}: {}", run.err);
    }
}

#[test]
fn quiet_leaves_errors_alone_on_standard_error() {
    let folder = folder();
    let list = written(
        &folder,
        "list.csv",
        "title,bearing.designation,housing.bore_limits,housing.outside,housing.material\n\
         Good,6205,N7,80 mm,cast-aluminium\nBad,6205,Q99,80 mm,cast-aluminium\n",
    );
    let loud = run(&["batch", as_str(&list)], "");
    let quiet = run(&["batch", as_str(&list), "--quiet"], "");
    assert_eq!((quiet.code, &quiet.out), (4, &loud.out));
    assert!(loud.err.contains("1 of 2 rows"), "{}", loud.err);
    assert_eq!(quiet.err.lines().count(), 1, "{}", quiet.err);
    assert!(quiet.err.starts_with("error: ") && quiet.err.contains("list.csv:3"), "{}", quiet.err);
    let wrong = run(&["-q", "limits", "62", "Q99"], "");
    assert!(wrong.code == 2 && wrong.err.starts_with("error: "), "{}", wrong.err);
    // The questions are what `ask` is for; its introduction is not.
    let asked = run(&["ask", "--quiet"], "");
    assert!(asked.err.contains("1. ") && !asked.err.contains("An empty line takes"), "{}", asked.err);
}

#[test]
fn colours_come_only_where_they_are_wanted() {
    let err = |words: &[&str], no_color: bool| {
        let mut command = seatwise(&[words, &["limits", "62", "Q99"]].concat());
        command.env_remove("NO_COLOR");
        if no_color {
            command.env("NO_COLOR", "1");
        }
        finished(&mut command).err
    };
    assert!(!err(&[], false).contains('\u{1b}'), "a pipe gets no colours");
    assert!(err(&["--color", "always"], false).contains('\u{1b}'));
    assert!(!err(&["--color", "never"], false).contains('\u{1b}'));
    assert!(!err(&[], true).contains('\u{1b}'));
    let flag = finished(seatwise(&["--color=always", "plann"]).env_remove("NO_COLOR"));
    assert!(flag.code == 2, "{}", flag.err);
}

#[test]
fn every_command_has_completions_and_a_manual_page() {
    let program = done(&["manual"]);
    assert!(program.starts_with(".ie") && program.contains("EXIT") || program.contains("Exit codes"), "{program}");
    for command in COMMANDS {
        assert!(program.contains(&format!("seatwise\\-{command}(1)")), "{command}");
        let page = done(&["manual", command]);
        assert!(page.contains(&format!(".TH seatwise-{command} 1")) && page.contains("Example"), "{command}: {page}");
    }
    for shell in ["bash", "zsh", "fish", "powershell"] {
        let script = done(&["completions", shell]);
        for word in COMMANDS.iter().copied().chain(["scatter-csv"]) {
            assert!(script.contains(word), "{shell} does not complete {word}");
        }
    }
}

/// Shells that are on this machine must find no mistake in their script.
#[test]
fn the_shells_that_are_here_take_their_scripts() {
    let folder = folder();
    for (shell, check) in [("bash", "-n"), ("zsh", "-n"), ("fish", "-n")] {
        let script = written(&folder, shell, done(&["completions", shell]));
        match Command::new(shell).args([check, as_str(&script)]).output() {
            Ok(output) => assert!(output.status.success(), "{shell}: {}", String::from_utf8_lossy(&output.stderr)),
            Err(_) => eprintln!("skipped: there is no {shell} on this machine"),
        }
    }
    let script = as_str(&folder.path().join("bash")).to_owned();
    let completed = Command::new("bash")
        .args(["-c", "source \"$0\"; COMP_WORDS=(seatwise sch); COMP_CWORD=1; _seatwise seatwise sch seatwise; echo \"${COMPREPLY[*]}\"", &script])
        .output();
    if let Ok(completed) = completed {
        assert_eq!(String::from_utf8(completed.stdout).unwrap().trim(), "schema");
    }
}

/// A bound for a build without optimisation on a busy machine; the release build is timed by hand, see the guide.
#[test]
fn the_program_starts_at_once() {
    let times = (0..5).map(|_| {
        let began = Instant::now();
        done(&["limits", "62", "N7"]);
        began.elapsed()
    });
    let best = times.min().unwrap();
    assert!(best < Duration::from_millis(500), "{best:?}");
}
