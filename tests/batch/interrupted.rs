//! Runs that are killed and go on.

use super::*;
use std::process::Stdio;
use std::time::{Duration, Instant};

fn beside(path: &Path, end: &str) -> PathBuf {
    PathBuf::from(format!("{}{end}", path.display()))
}

/// Starts a run, and kills it once its state says that some rows are done, before it has finished.
fn killed(list: &Path, out: &Path) -> u64 {
    let mut child = std::process::Command::new(env!("CARGO_BIN_EXE_seatwise"))
        .args(["batch", as_str(list), "-o", as_str(out)])
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let (state, began) = (beside(out, ".state"), Instant::now());
    while !state.exists() {
        assert!(began.elapsed() < Duration::from_secs(120), "no rows in two minutes");
        assert!(child.try_wait().unwrap().is_none(), "it has finished before it could be killed");
        std::thread::sleep(Duration::from_millis(2));
    }
    child.kill().unwrap();
    child.wait().unwrap();
    assert!(!out.exists(), "a result that is not whole must not stand in its place");
    let text = fs::read_to_string(&state).unwrap();
    text.lines().nth(2).unwrap().split(' ').next().unwrap().parse().unwrap()
}

#[test]
fn a_run_that_was_killed_goes_on_and_gives_the_same_bytes_as_one_that_was_not() {
    let folder = folder();
    let list = written(&folder, "list.csv", list(&jobs(620)));
    let whole = folder.path().join("whole.csv");
    assert_eq!(run(&["batch", as_str(&list), "-o", as_str(&whole)]).code, 4);

    let out = folder.path().join("out.csv");
    let done = killed(&list, &out);
    assert!(done > 0 && done < 620, "{done} rows were done");
    // What was written after the last state, such as half a row, is cut off.
    let part = beside(&out, ".part");
    let mut torn = fs::read(&part).unwrap();
    torn.extend_from_slice(b"planned,\"half a ro");
    fs::write(&part, torn).unwrap();

    let refused = run(&["batch", as_str(&list), "-o", as_str(&out)]);
    assert_eq!(refused.code, 2);
    assert!(refused.err.contains("--resume"), "{}", refused.err);

    let resumed = run(&["batch", as_str(&list), "-o", as_str(&out), "--resume"]);
    assert_eq!(resumed.code, 4);
    assert!(resumed.err.contains(&format!("after {done} rows")), "{}", resumed.err);
    assert!(resumed.err.contains("62 of 620 rows"), "failures of before are counted: {}", resumed.err);
    // Rows that were done are not done again: their complaints do not come again.
    let complaints = resumed.err.matches("error: ").count() as u64;
    assert_eq!(complaints, 62 - done / 10);
    assert!(fs::read(&out).unwrap() == fs::read(&whole).unwrap(), "the results differ");
    for end in [".part", ".state", ".state-new"] {
        assert!(!beside(&out, end).exists(), "{end} is left behind");
    }
}

#[test]
fn a_run_goes_on_only_with_its_own_list_and_its_own_flags() {
    let folder = folder();
    let all = jobs(520);
    let path = written(&folder, "list.csv", list(&all));
    let out = folder.path().join("out.csv");
    killed(&path, &out);
    let arguments = ["batch", as_str(&path), "-o", as_str(&out), "--resume"];

    let other_format = run(&[&arguments[..], &["--format", "json"]].concat());
    assert!(other_format.code == 2 && other_format.err.contains("other flags"), "{}", other_format.err);

    // A medium that is read from a file is one of its flags, whatever the file is called.
    let media = fs::read_to_string("materials/media.toml").unwrap();
    let own = media.split("[[medium]]").nth(1).unwrap().replace("domestic-freezer", "own-freezer");
    let own = written(&folder, "own.toml", format!("[[medium]]{}", own.replace("names = [", "names = [] # [")));
    let other_media = run(&[&arguments[..], &["--medium", as_str(&own)]].concat());
    assert!(other_media.code == 2 && other_media.err.contains("other flags"), "{}", other_media.err);

    let mut changed = all.clone();
    changed[3] = changed[3].replace("6206", "6306");
    fs::write(&path, list(&changed)).unwrap();
    let other_list = run(&arguments);
    assert!(other_list.code == 2 && other_list.err.contains("have changed"), "{}", other_list.err);

    fs::write(&path, list(&all)).unwrap();
    let part = beside(&out, ".part");
    let kept = fs::read(&part).unwrap();
    fs::write(&part, &kept[..100]).unwrap();
    let short = run(&arguments);
    assert!(short.code == 2 && short.err.contains("shorter"), "{}", short.err);

    // Beginning anew is possible, and leaves nothing behind.
    fs::write(&path, list(&all[..20])).unwrap();
    assert_eq!(run(&["batch", as_str(&path), "-o", as_str(&out), "--force"]).code, 4);
    assert_eq!(rows(&fs::read_to_string(&out).unwrap()).len(), 20);
    assert!(!part.exists() && !beside(&out, ".state").exists());
}

#[test]
fn resuming_where_nothing_was_begun_begins() {
    let folder = folder();
    let list = written(&folder, "list.csv", list(&jobs(5)));
    let out = folder.path().join("out.csv");
    let run = run(&["batch", as_str(&list), "-o", as_str(&out), "--resume"]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    assert_eq!(rows(&fs::read_to_string(&out).unwrap()).len(), 5);
}

/// Killed at moments all over a run, and taken up again each time until it is whole, and so on: a hundred times in a release
/// build; a debug build, which is thirty times slower, does a few.
#[test]
fn a_run_that_is_killed_again_and_again_loses_no_row_and_doubles_none() {
    let kills = if cfg!(debug_assertions) { 8 } else { 100 };
    let folder = folder();
    let list = written(&folder, "list.csv", list(&jobs(if cfg!(debug_assertions) { 520 } else { 4000 })));
    let whole = folder.path().join("whole.csv");
    let began = Instant::now();
    assert_eq!(run(&["batch", as_str(&list), "-o", as_str(&whole)]).code, 4);
    let (takes, whole) = (began.elapsed(), fs::read(&whole).unwrap());
    let out = folder.path().join("out.csv");
    let (mut killed, mut furthest) = (0, 0);
    for number in 0.. {
        if killed >= kills {
            break;
        }
        let mut child = std::process::Command::new(env!("CARGO_BIN_EXE_seatwise"))
            .args(["batch", as_str(&list), "-o", as_str(&out), "--resume"])
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(takes.mul_f64(f64::from(1 + number * 37 % 60) / 75.0));
        killed += u32::from(child.try_wait().unwrap().is_none());
        child.kill().unwrap();
        child.wait().unwrap();
        if out.exists() {
            // It was whole before it was killed.
            assert!(fs::read(&out).unwrap() == whole, "the results differ after {killed} kills");
            fs::remove_file(&out).unwrap();
            furthest = 0;
        }
        let state = fs::read_to_string(beside(&out, ".state"));
        let done =
            state.map_or(furthest, |text| text.lines().nth(2).unwrap().split(' ').next().unwrap().parse().unwrap());
        assert!(done >= furthest, "{done} rows are done, and {furthest} were");
        furthest = done;
    }
    assert_eq!(run(&["batch", as_str(&list), "-o", as_str(&out), "--resume"]).code, 4);
    assert!(fs::read(&out).unwrap() == whole, "the results differ");
}
