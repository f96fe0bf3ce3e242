//! `seatwise new` and `seatwise ask` as they are run, through a pipe and through a terminal.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{done, run};
use seatwise::job::ask::{QUESTIONS, Reply, Talk};
use seatwise::job::{self, STARTERS};
use seatwise::plan;
use seatwise::stock::Library;
use std::fs;

/// A bearing into a warmed housing, one answer a line.
const PUMP: &str =
    "Rear bearing, pump\n\n6206\n\nopen\nN7\ncast-aluminium\n90 mm\n\noven\n80 °C\n1 h 30 min\n21 °C\n20 s\n\n";

/// The text with every line that may be left out counting.
fn with_all_lines(text: &str) -> String {
    let key = |line: &str| {
        line.split_once(" = ").is_some_and(|(key, _)| key.chars().all(|c| c.is_ascii_lowercase() || c == '_'))
    };
    let counts = |line: &str| match line.strip_prefix("# ") {
        Some(rest) if key(rest) || rest.starts_with('[') => format!("{rest}\n"),
        _ => format!("{line}\n"),
    };
    text.lines().map(counts).collect()
}

#[test]
fn every_starter_is_a_job_as_it_stands_and_with_every_line_that_may_be_left_out() {
    for starter in STARTERS {
        assert_eq!(done(&["new", starter.name]), starter.text);
        for text in [starter.text.to_owned(), with_all_lines(starter.text)] {
            if job::is_seal_alone(&text) {
                let job = job::check_seal(&text).unwrap_or_else(|problems| panic!("{}: {problems}", starter.name));
                assert!(plan::seal::plan_alone(&job).unwrap().is_some());
            } else {
                let job = job::check(&text, &Library::default())
                    .unwrap_or_else(|problems| panic!("{}: {problems}", starter.name));
                plan::plan(&job).unwrap();
            }
        }
        assert!(with_all_lines(starter.text).lines().count() == starter.text.lines().count());
        assert!(with_all_lines(starter.text) != starter.text, "{} has no line to take the # from", starter.name);
    }
    let run = run(&["new", "gearwheel"], "");
    assert!(run.code == 2 && run.err.contains("shaft-bearing"), "{}", run.err);
}

#[test]
fn answers_from_a_pipe_end_with_the_plan_and_the_job() {
    let folder = tempfile::tempdir().unwrap();
    let saved = folder.path().join("pump.toml");
    let saved_name = saved.to_str().unwrap();
    let asked = run(&["ask", "--save", saved_name], PUMP);
    assert_eq!(asked.code, 0, "{}", asked.err);
    assert!(asked.err.contains("12. How long does it stay there?"), "{}", asked.err);
    assert_eq!(asked.out, done(&["plan", saved_name, "--detail", "short"]), "the plan alone goes to standard output");
    let text = fs::read_to_string(&saved).unwrap();
    for line in ["designation = \"6206\"", "part = \"housing\"", "hold = \"1 h 30 min\"", "carry = \"20 s\""] {
        assert!(text.contains(line), "{line}: {text}");
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "answers that became a job are no longer kept");
    let again = run(&["ask", "--save", saved_name], PUMP);
    assert!(again.code == 2 && again.err.contains("exists"), "a job is not written over: {}", again.err);
}

#[test]
fn an_interrupted_talk_is_taken_up_where_it_ended() {
    let folder = tempfile::tempdir().unwrap();
    let saved = folder.path().join("pump.toml");
    let kept = folder.path().join("pump.toml.answers");
    let (saved_name, kept_name) = (saved.to_str().unwrap(), kept.to_str().unwrap());
    let lines: Vec<&str> = PUMP.lines().collect();
    let half = run(&["ask", "--save", saved_name], &format!("{}\n", lines[..7].join("\n")));
    assert_eq!((half.code, half.out.as_str()), (2, ""));
    assert!(half.err.contains("before `housing.outside`") && half.err.contains("--resume"), "{}", half.err);
    let unaware = run(&["ask", "--save", saved_name], PUMP);
    assert!(unaware.code == 2 && unaware.err.contains("earlier run"), "they are not written over: {}", unaware.err);
    let rest = run(&["ask", "--save", saved_name, "--resume", kept_name], &format!("{}\n", lines[7..].join("\n")));
    assert_eq!(rest.code, 0, "{}", rest.err);
    let whole = run(&["ask"], PUMP);
    assert_eq!(rest.out, whole.out);
    assert!(saved.exists() && !kept.exists());
}

#[test]
fn a_job_given_in_place_of_answers_is_refused_and_left_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let job = folder.path().join("pump.toml");
    let text = fs::read_to_string("examples/pump-case.toml").unwrap();
    fs::write(&job, &text).unwrap();
    let asked = run(&["ask", "--resume", job.to_str().unwrap()], PUMP);
    assert!(asked.code == 2 && asked.err.contains("is left as it is"), "{}", asked.err);
    assert_eq!(fs::read_to_string(&job).unwrap(), text);
}

#[test]
fn answers_are_kept_where_no_one_says_how_to_save_the_job() {
    let folder = tempfile::tempdir().unwrap();
    let saved = folder.path().join("pump.toml");
    let kept = folder.path().join("pump.toml.answers");
    let lines: Vec<&str> = PUMP.lines().collect();
    let half = run(&["ask", "--save", saved.to_str().unwrap()], &format!("{}\n", lines[..7].join("\n")));
    assert_eq!(half.code, 2, "{}", half.err);
    let rest = run(&["ask", "--resume", kept.to_str().unwrap()], &format!("{}\n", lines[7..].join("\n")));
    assert_eq!(rest.code, 0, "{}", rest.err);
    assert!(rest.err.contains("Not saved. The answers are kept in") && kept.exists(), "{}", rest.err);
    let library = Library::default();
    let (talk, left) = Talk::resume(&library, &fs::read_to_string(&kept).unwrap());
    assert!(talk.question().is_none() && left.is_empty(), "all of them");
}

#[test]
fn what_the_check_refuses_is_asked_again_with_its_words() {
    let library = Library::default();
    // Answers up to a question, one that it refuses, and what it says.
    for (answers, wrong, says) in [
        ("\n\n", "9999", "9999"),
        ("\n\n6206\n\nopen\n", "N77", "grade"),
        ("\n\n6206\n\nopen\nN7\ngrey-iron\n", "52 mm", "around a bore of 62.000 mm"),
        ("\n\n6206\n\nopen\nN7\ngrey-iron\n\ndomestic-freezer\n", "18 °C", "did you mean minus"),
        ("\n\n6206\n\nopen\nN7\ngrey-iron\n\ndomestic-freezer\n\n2 h\nnone\n\n", "0.5", "50 %"),
        ("\nbush\n40 mm\n", "NaN", "not a finite number"),
    ] {
        let mut talk = Talk::new(&library);
        for answer in answers.split_terminator('\n') {
            assert_eq!(talk.answer(answer), Reply::Taken, "{answer} of {answers:?}");
        }
        let question = talk.question().unwrap().key;
        let Reply::Refused(problems) = talk.answer(wrong) else { panic!("{wrong} was taken at {question}") };
        let told: String = problems.iter().map(|problem| format!("{} {}", problem.message, problem.help)).collect();
        assert!(told.contains(says), "{wrong} at {question}: {told}");
        assert_eq!(talk.question().unwrap().key, question, "it is asked again");
    }
}

#[test]
fn a_step_back_asks_again_and_measured_sizes_ask_how_sure_they_are() {
    let library = Library::default();
    let mut talk = Talk::new(&library);
    for answer in ["", "1", "6206", "housing", "open", "61.975 mm"] {
        assert_eq!(talk.answer(answer), Reply::Taken, "{answer}");
    }
    assert_eq!(talk.question().unwrap().key, "housing.bore_limits.within");
    assert_eq!(talk.answer("5 um"), Reply::Taken);
    assert!(talk.text().contains("{ measured = \"61.975 mm\", within = \"5 um\" }"), "{}", talk.text());
    assert!(matches!(talk.answer("?"), Reply::Why(_)));
    assert_eq!(talk.answer("<"), Reply::Back(Some("5 um".to_owned())));
    assert_eq!(talk.answer("back"), Reply::Back(Some("61.975 mm".to_owned())));
    assert_eq!(talk.answer("61.960 mm / 61.985 mm"), Reply::Taken);
    assert!(talk.text().contains("readings = [[\"61.960 mm\", \"61.985 mm\"]]"), "{}", talk.text());
    let (taken_up, left) = Talk::resume(&library, &format!("{}nonsense = 3\n", talk.draft()));
    assert_eq!((taken_up.text(), left), (talk.text(), vec!["nonsense = 3".to_owned()]));
}

#[test]
fn every_choice_of_every_question_leads_to_a_question_or_a_job() {
    let library = Library::default();
    // What a question without choices and without a usual answer is given.
    let given = |key: &str| match key {
        "bearing.bore" => "40 mm",
        "bearing.outside" => "62 mm",
        "bearing.width" => "16 mm",
        "bearing.outside_limits" => "p6",
        "housing.bore_limits" => "N7",
        "shaft.outside_limits" => "k6",
        "warm.power" => "1 kW",
        "warm.temperature" => "110 °C",
        "warm.until" => "100 °C",
        "warm.hold" => "5 min",
        "press.thread" => "M12",
        _ => "carbon-steel",
    };
    for question in QUESTIONS {
        for choice in question.choices {
            let mut talk = Talk::new(&library);
            // A heater goes with a shaft: a housing is not heated from within.
            let heater = *choice == "induction-heater";
            while let Some(asked) = talk.question() {
                let answer = match asked.key {
                    key if key == question.key => choice,
                    "seat" if heater => "shaft",
                    key if asked.usual == seatwise::job::ask::Usual::Needed => given(key),
                    _ => "",
                };
                assert_eq!(talk.answer(answer), Reply::Taken, "{answer} at {} for {choice}", asked.key);
            }
            let job = talk
                .finish()
                .unwrap_or_else(|problems| panic!("{choice} of {}: {problems}\n{}", question.key, talk.text()));
            plan::plan(&job).unwrap();
        }
    }
}

#[test]
fn a_temperature_that_is_never_reached_is_asked_again_and_the_answers_are_kept() {
    let folder = tempfile::tempdir().unwrap();
    let saved = folder.path().join("hub.toml");
    let answers = PUMP.replace("oven\n80 °C\n1 h 30 min", "hot-plate\n80 °C\n79 °C");
    let asked = run(&["ask", "--save", saved.to_str().unwrap()], &answers);
    assert_eq!((asked.code, asked.out.as_str()), (2, ""), "{}", asked.err);
    assert!(
        asked.err.contains("Not taken: the housing") && asked.err.contains("before `warm.temperature`"),
        "{}",
        asked.err
    );
    assert!(folder.path().join("hub.toml.answers").exists());
    let mended = run(&["ask"], &format!("{answers}80 °C\n20 min\n"));
    assert_eq!(mended.code, 0, "{}", mended.err);
}

#[cfg(unix)]
mod terminal {
    use super::PUMP;
    use rustix::io::{FdFlags, fcntl_setfd};
    use rustix::pty::{OpenptFlags, grantpt, openpt, ptsname, unlockpt};
    use rustix::termios::{Winsize, tcsetwinsize};
    use std::ffi::OsStr;
    use std::fs::{self, File, OpenOptions};
    use std::io::{BufRead, BufReader, Write};
    use std::os::fd::OwnedFd;
    use std::os::unix::ffi::OsStrExt;
    use std::path::Path;
    use std::process::{Child, Command, Stdio};

    /// The two ends of a terminal.
    fn terminal() -> (OwnedFd, File) {
        let keyboard = openpt(OpenptFlags::RDWR | OpenptFlags::NOCTTY).unwrap();
        // Else the child would hold its own keyboard open.
        fcntl_setfd(&keyboard, FdFlags::CLOEXEC).unwrap();
        grantpt(&keyboard).unwrap();
        unlockpt(&keyboard).unwrap();
        let name = ptsname(&keyboard, Vec::new()).unwrap();
        let screen = OpenOptions::new().read(true).write(true).open(OsStr::from_bytes(name.as_bytes())).unwrap();
        (keyboard, screen)
    }

    /// The program with a terminal as its standard input, in a folder of its own.
    fn at_a_terminal(folder: &Path, arguments: &[&str]) -> (File, Child) {
        let (keyboard, screen) = terminal();
        let mut command = Command::new(assert_cmd::cargo::cargo_bin("seatwise"));
        command.current_dir(folder).args(arguments).stdin(Stdio::from(screen));
        let child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        (File::from(keyboard), child)
    }

    #[test]
    fn lines_are_as_wide_as_a_terminal_that_does_not_tell_its_rows() {
        let (far, screen) = terminal();
        let size = Winsize { ws_row: 0, ws_col: 48, ws_xpixel: 0, ws_ypixel: 0 };
        tcsetwinsize(&screen, size).unwrap();
        let mut command = Command::new(assert_cmd::cargo::cargo_bin("seatwise"));
        let mut child = command.args(["limits", "62", "N7"]).stdout(Stdio::from(screen)).spawn().unwrap();
        // Else this process would hold the near end open, and the reading below would not come to an end.
        drop(command);
        assert_eq!(child.wait().unwrap().code(), Some(0));
        // The end of a terminal is an error on some systems.
        let lines: Vec<String> = BufReader::new(File::from(far)).lines().map_while(Result::ok).collect();
        let widest = lines.iter().map(|line| line.chars().count()).max().unwrap();
        assert!((40..=48).contains(&widest), "{lines:?}");
    }

    #[test]
    fn a_terminal_that_is_closed_half_way_loses_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let (mut keyboard, mut child) = at_a_terminal(folder.path(), &["ask"]);
        let lines: Vec<&str> = PUMP.lines().collect();
        let mut screen = BufReader::new(child.stderr.take().unwrap());
        for answer in &lines[..7] {
            keyboard.write_all(format!("{answer}\n").as_bytes()).unwrap();
        }
        // Closed once the eighth question stands on the screen.
        let mut line = String::new();
        while !line.contains("8. Outside of the boss") {
            line.clear();
            assert!(screen.read_line(&mut line).unwrap() > 0, "the question did not come");
        }
        drop(keyboard);
        let ended = child.wait().unwrap();
        assert_eq!(ended.code(), Some(2));
        let kept = folder.path().join("seatwise.answers");
        let text = fs::read_to_string(&kept).unwrap();
        assert!(text.contains("housing.material = cast-aluminium"), "{text}");

        let (mut keyboard, child) = at_a_terminal(folder.path(), &["ask", "--resume", "seatwise.answers"]);
        keyboard.write_all(format!("{}\npump.toml\n", lines[7..].join("\n")).as_bytes()).unwrap();
        let output = child.wait_with_output().unwrap();
        let (out, err) = (String::from_utf8(output.stdout).unwrap(), String::from_utf8(output.stderr).unwrap());
        assert_eq!(output.status.code(), Some(0), "{err}");
        assert!(out.contains("Rear bearing, pump") && err.contains("Saved."), "{out}{err}");
        assert!(folder.path().join("pump.toml").exists() && !kept.exists());
    }
}
