//! Files: whole or not at all, never over an input, over others only with `--force`.

use super::binary::{Run, finished, run, seatwise};
use super::*;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

const READINGS: &str = "examples/pump-case-readings.csv";

/// Every flag that names a file to write, with a command that writes it; FILE stands for its name.
const WRITERS: [(&str, &[&str]); 32] = [
    ("plan -o", &["plan", PUMP, "-o", "FILE.txt"]),
    ("plan --plot", &["plan", PUMP, "--plot", "FILE.svg"]),
    ("plan --force-plot", &["plan", PUMP, "--force-plot", "FILE.png"]),
    ("plan --screw-plot", &["plan", "examples/gear-cover.toml", "--screw-plot", "FILE.svg"]),
    ("plan --scatter-plot", &["plan", PUMP, "--draws", "100", "--scatter-plot", "FILE.svg"]),
    ("plan --scatter-csv", &["plan", PUMP, "--draws", "100", "--scatter-csv", "FILE.csv"]),
    ("plan of a seal -o", &["plan", "examples/mixer-seal.toml", "-o", "FILE.txt"]),
    ("card -o", &["card", PUMP, "-o", "FILE.html"]),
    ("options -o", &["options", "examples/iron-hub.toml", "--with", "oven", "-o", "FILE.txt"]),
    ("options --plot", &["options", "examples/iron-hub.toml", "--with", "oven", "--plot", "FILE.svg"]),
    ("table -o", &["table", PUMP, "--with", "freezer", "--outer", "60 °C|80 °C", "-o", "FILE.csv"]),
    ("working -o", &["working", PUMP, "-o", "FILE.txt"]),
    ("sweep -o", &["sweep", PUMP, "--over", "bench.carry=10 s|60 s", "-o", "FILE.csv"]),
    ("sweep --plot", &["sweep", PUMP, "--over", "bench.carry=10 s..60 s/2", "--plot", "FILE.svg"]),
    ("compare -o", &["compare", PUMP, PUMP, "-o", "FILE.csv"]),
    ("batch -o", &["batch", "src/cli/batch/template.csv", "-o", "FILE.csv"]),
    ("batch --template -o", &["batch", "--template", "-o", "FILE.csv"]),
    ("section -o", &["section", PUMP, "-o", "FILE.svg"]),
    ("section table -o", &["section", PUMP, "-o", "FILE.txt"]),
    ("deck -o", &["deck", PUMP, "-o", "FILE.inp"]),
    ("exercise -o", &["exercise", "--problems", "1", "-o", "FILE.txt"]),
    ("exercise --answers", &["exercise", "--problems", "1", "--answers", "FILE.txt"]),
    ("limits -o", &["limits", "62", "N7", "-o", "FILE.txt"]),
    ("pair -o", &["pair", "62", "N7", "ISO 492 Normal", "-o", "FILE.txt"]),
    ("materials -o", &["materials", "-o", "FILE.txt"]),
    ("media -o", &["media", "-o", "FILE.txt"]),
    ("schema -o", &["schema", "plan", "-o", "FILE.json"]),
    ("new -o", &["new", "bearing", "-o", "FILE.toml"]),
    ("log --plot", &["log", PUMP, READINGS, "--plot", "FILE.svg"]),
    ("log --keep", &["log", PUMP, READINGS, "--keep", "FILE.toml"]),
    ("log --keep-medium", &["log", PUMP, READINGS, "--keep-medium", "FILE.toml"]),
    ("manual -o", &["manual", "plan", "-o", "FILE.1"]),
];

/// The command with the file in `folder`, and the file.
fn writer(folder: &TempDir, command: &[&str]) -> (Vec<String>, PathBuf) {
    let ending = command.iter().find_map(|word| word.strip_prefix("FILE")).unwrap();
    let file = folder.path().join(format!("result{ending}"));
    let replaced = |word: &&str| if word.starts_with("FILE") { as_str(&file).to_owned() } else { (*word).to_owned() };
    (command.iter().map(replaced).collect(), file)
}

fn run_words(words: &[String]) -> Run {
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    run(&words, "")
}

/// Writers that are tried with `--force` as well: one of each way in which a result comes to be. All are written by one function.
const FORCED: [&str; 6] =
    ["plan --plot", "plan --scatter-csv", "batch -o", "section -o", "exercise --answers", "limits -o"];

/// Refused where the file is there, written over with `--force`, and nothing else left in the folder.
fn is_refused_then_forced(name: &str, command: &[&str]) {
    let folder = folder();
    let (words, file) = writer(&folder, command);
    fs::write(&file, "old").unwrap();
    let refused = run_words(&words);
    assert_eq!((refused.code, refused.out.as_str()), (2, ""), "{name}");
    assert!(refused.err.contains("exists") && refused.err.contains("--force"), "{name}: {}", refused.err);
    assert_eq!(fs::read_to_string(&file).unwrap(), "old", "{name}");
    if !FORCED.contains(&name) {
        return;
    }
    let forced = run_words(&[&words[..], &["--force".to_owned()]].concat());
    assert_eq!((forced.code, forced.err.as_str()), (0, ""), "{name}");
    assert!(fs::read(&file).unwrap() != b"old", "{name}");
    assert_eq!(names(&folder).len(), 1, "{name} leaves {:?}", names(&folder));
}

#[test]
fn no_flag_of_any_command_writes_over_a_file_without_force() {
    let (some, others) = WRITERS.split_at(WRITERS.len() / 2);
    std::thread::scope(|threads| {
        for half in [some, others] {
            threads.spawn(move || half.iter().for_each(|(name, command)| is_refused_then_forced(name, command)));
        }
    });
}

#[test]
fn every_flag_that_takes_a_file_to_write_is_in_the_list_above() {
    let readers = ["--material", "--medium", "--resume"];
    for command in [
        "plan",
        "card",
        "options",
        "table",
        "sweep",
        "compare",
        "batch",
        "section",
        "deck",
        "working",
        "exercise",
        "limits",
        "pair",
        "materials",
        "media",
        "schema",
        "new",
        "log",
        "completions",
        "manual",
    ] {
        let help = binary::done(&[command, "--help"]);
        let flags = help.lines().filter(|line| line.contains(" <FILE>") && line.trim_start().starts_with('-'));
        for flag in flags.map(|line| line.trim().split(" <FILE>").next().unwrap()) {
            let flag = if flag.starts_with("-o") { "-o" } else { flag };
            let listed = WRITERS.iter().any(|(_, words)| words[0] == command && words.contains(&flag));
            let same = flag == "-o" && ["log", "completions"].contains(&command); // shares the code of the others
            assert!(listed || same || readers.contains(&flag), "{command} {flag} is not tried");
        }
    }
}

#[test]
fn no_input_is_written_over_whatever_the_flag_and_however_it_is_named() {
    let folder = folder();
    let alloy = example("materials/cast-aluminium.toml");
    let own = written(&folder, "our-alloy.toml", &alloy);
    let job_text = example(PUMP);
    let job = written(&folder, "job.toml", &job_text);
    let readings_text = example(READINGS);
    let readings = written(&folder, "readings.csv", &readings_text);
    let list_text = example("src/cli/batch/template.csv");
    let list = written(&folder, "out.csv.part", &list_text);
    let out = folder.path().join("out.csv");
    let dotted = folder.path().join(".").join("job.toml");
    let link = folder.path().join("link.toml");
    #[cfg(unix)]
    std::os::unix::fs::symlink(&job, &link).unwrap();
    let (own, job, readings, list, out) = (as_str(&own), as_str(&job), as_str(&readings), as_str(&list), as_str(&out));
    let tries: [&[&str]; 10] = [
        &["plan", job, "-o", job],
        &["plan", job, "-o", as_str(&dotted)],
        &["plan", job, "-o", as_str(&link)],
        &["plan", job, "--draws", "100", "--scatter-csv", job],
        &["plan", job, "--material", own, "--draws", "100", "--scatter-csv", own],
        &["log", job, readings, "--keep", readings],
        &["log", job, readings, "--keep-medium", readings],
        &["log", job, readings, "--material", own, "--keep", own],
        &["ask", "--material", own, "--save", own],
        // What is not whole yet grows beside the result, here under the name of the list.
        &["batch", list, "-o", out],
    ];
    for words in tries {
        let run = run(&[words, &["--force"]].concat(), "");
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{words:?}");
        assert!(run.err.contains("never written over"), "{words:?}: {}", run.err);
    }
    for (path, text) in [(own, alloy), (job, job_text), (readings, readings_text), (list, list_text)] {
        assert_eq!(fs::read_to_string(path).unwrap(), text, "{path}");
    }
}

#[test]
fn when_one_of_several_files_cannot_be_written_none_is_and_nothing_is_printed() {
    let folder = folder();
    let plot = folder.path().join("plot.svg");
    let kept = written(&folder, "percentiles.csv", "old");
    let words = ["plan", PUMP, "--plot", as_str(&plot), "--draws", "100", "--scatter-csv", as_str(&kept)];
    let refused = run(&words, "");
    assert_eq!((refused.code, refused.out.as_str()), (2, ""));
    assert_eq!(names(&folder), ["percentiles.csv"]);
    let twice = run(&["exercise", "-o", as_str(&plot.with_extension("txt")), "--answers", "./x/../plot.txt"], "");
    assert_eq!(twice.code, 2, "a folder that is not there");
    let same = folder.path().join("same.txt");
    let dotted = folder.path().join(".").join("same.txt");
    let twice = run(&["exercise", "-o", as_str(&same), "--answers", as_str(&dotted)], "");
    assert!(twice.code == 2 && twice.err.contains("two results"), "{}", twice.err);
    assert_eq!(names(&folder), ["percentiles.csv"]);
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_rights_stay_as_they_were() {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder();
    let real = written(&folder, "real.txt", "old");
    fs::set_permissions(&real, fs::Permissions::from_mode(0o640)).unwrap();
    let link = folder.path().join("link.txt");
    std::os::unix::fs::symlink(&real, &link).unwrap();
    assert_eq!(run(&["limits", "62", "N7", "-o", as_str(&link), "--force"], "").code, 0);
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert!(fs::read_to_string(&real).unwrap().contains("N7"));
    assert_eq!(fs::metadata(&real).unwrap().permissions().mode() & 0o777, 0o640);
}

/// The program under a shell that lets no file grow beyond some blocks of 512 bytes: a disk that is full.
#[cfg(unix)]
fn on_a_full_disk(blocks: u32, words: &[&str]) -> Run {
    let mut command = Command::new("sh");
    command.args([
        "-c",
        &format!("trap '' XFSZ; ulimit -f {blocks}; exec \"$0\" \"$@\""),
        env!("CARGO_BIN_EXE_seatwise"),
    ]);
    let output = command.args(words).current_dir(env!("CARGO_MANIFEST_DIR")).env("NO_COLOR", "1").output().unwrap();
    Run {
        code: output.status.code().unwrap(),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

#[cfg(unix)]
#[test]
fn a_disk_that_fills_leaves_the_old_file_and_nothing_half_written() {
    let folder = folder();
    let plot = written(&folder, "plot.svg", "old");
    let words = ["plan", PUMP, "--plot", as_str(&plot), "--force"];
    let run = on_a_full_disk(8, &words);
    assert_eq!((run.code, run.out.as_str()), (2, ""), "{}", run.err);
    assert!(run.err.contains("cannot write") && run.err.contains("help: "), "{}", run.err);
    assert_eq!((fs::read_to_string(&plot).unwrap().as_str(), names(&folder).len()), ("old", 1));
    assert_eq!(binary::run(&words, "").code, 0, "with room it is written");
}

#[cfg(unix)]
#[test]
fn a_batch_on_a_disk_that_fills_stops_and_goes_on_when_there_is_room() {
    let folder = folder();
    let list = written(&folder, "list.csv", long_list(300));
    let (whole, out) = (folder.path().join("whole.csv"), folder.path().join("out.csv"));
    assert_eq!(run(&["batch", as_str(&list), "-o", as_str(&whole)], "").code, 0);
    // Room for the first rows that are vouched for, and not for all.
    let blocks = u32::try_from(fs::metadata(&whole).unwrap().len() / 512 * 93 / 100).unwrap();
    let full = on_a_full_disk(blocks, &["batch", as_str(&list), "-o", as_str(&out)]);
    assert_eq!(full.code, 2, "{}", full.err);
    assert!(full.err.contains("cannot write") && !out.exists(), "{}", full.err);
    let resumed = run(&["batch", as_str(&list), "-o", as_str(&out), "--resume"], "");
    assert_eq!(resumed.code, 0, "{}", resumed.err);
    assert!(resumed.err.contains("going on after 256 rows"), "{}", resumed.err);
    assert!(fs::read(&out).unwrap() == fs::read(&whole).unwrap());
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_device_is_told_on_every_way_out_and_is_never_replaced() {
    let full = Path::new("/dev/full");
    for words in [
        vec!["limits", "62", "N7", "-o", "/dev/full", "--force"],
        vec!["batch", "src/cli/batch/template.csv", "-o", "/dev/full", "--force"],
    ] {
        let run = run(&words, "");
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{words:?}");
        assert!(run.err.contains("no space left"), "{words:?}: {}", run.err);
    }
    for words in [vec!["plan", PUMP], vec!["batch", "src/cli/batch/template.csv"]] {
        let stdout = fs::OpenOptions::new().write(true).open(full).unwrap();
        let child = Command::new(env!("CARGO_BIN_EXE_seatwise"))
            .args(&words)
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .stdout(stdout)
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let output = child.wait_with_output().unwrap();
        let said = String::from_utf8(output.stderr).unwrap();
        assert!(output.status.code() == Some(2) && said.contains("no space left"), "{words:?}: {said}");
    }
    assert_eq!(run(&["limits", "62", "N7", "-o", "/dev/null"], "").code, 0, "a device is no file that exists");
    use std::os::unix::fs::FileTypeExt;
    assert!(fs::metadata(full).unwrap().file_type().is_char_device());
    assert!(fs::metadata("/dev/null").unwrap().file_type().is_char_device());
}

#[cfg(unix)]
#[test]
fn a_folder_that_may_not_be_written_is_named() {
    use std::os::unix::fs::PermissionsExt;
    let mut places = vec![PathBuf::from("/proc")];
    let folder = folder();
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o555)).unwrap();
    if fs::File::create(folder.path().join("probe")).is_ok() {
        eprintln!("skipped: this user may write in a folder without the right to; /proc alone is tried");
    } else {
        places.push(folder.path().to_owned());
    }
    for place in places {
        for (ending, words) in [
            ("csv", vec!["batch", "src/cli/batch/template.csv", "-o"]),
            ("svg", vec!["plan", PUMP, "--plot"]),
            ("txt", vec!["limits", "62", "N7", "-o"]),
        ] {
            let file = place.join(format!("seatwise.{ending}"));
            let run = run(&[&words[..], &[as_str(&file)]].concat(), "");
            assert_eq!((run.code, run.out.as_str()), (2, ""), "{}", file.display());
            let told = run.err.contains("cannot write") && run.err.contains("choose a folder");
            assert!(told, "{}: {}", file.display(), run.err);
        }
    }
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).unwrap();
}

fn long_list(rows: usize) -> String {
    let row = |i: usize| format!("Seat {i},6205,open,N7,{} mm,cast-aluminium\n", 80 + i % 37);
    "title,bearing.designation,bearing.closure,housing.bore_limits,housing.outside,housing.material\n".to_owned()
        + &(0..rows).map(row).collect::<String>()
}

/// Whether this process, and so what it starts, ignores the interrupt of the keyboard; where that cannot be read, it does not.
#[cfg(unix)]
fn keyboard_is_ignored() -> bool {
    const INTERRUPT: u64 = 1 << 1;
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok()).is_some_and(|mask| mask & INTERRUPT != 0)
}

#[cfg(unix)]
#[test]
fn a_batch_that_is_interrupted_from_the_keyboard_can_go_on() {
    let folder = folder();
    let list = written(&folder, "list.csv", long_list(520));
    let out = folder.path().join("out.csv");
    let mut child = Command::new(env!("CARGO_BIN_EXE_seatwise"))
        .args(["batch", as_str(&list), "-o", as_str(&out)])
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let (state, began) = (folder.path().join("out.csv.state"), Instant::now());
    while !state.exists() {
        assert!(began.elapsed() < Duration::from_secs(60), "no rows in a minute");
        assert!(child.try_wait().unwrap().is_none(), "it has finished before it could be stopped");
        std::thread::sleep(Duration::from_millis(1));
    }
    let number = child.id().to_string();
    // Who started the tests in the background may have had the key's signal ignored, which their children inherit.
    let (name, signal) = if keyboard_is_ignored() { ("TERM", 15) } else { ("INT", 2) };
    let kill = format!("kill -{name} \"$0\"");
    assert!(Command::new("sh").args(["-c", &kill, &number]).status().unwrap().success());
    let status = child.wait().unwrap();
    use std::os::unix::process::ExitStatusExt;
    assert_eq!(status.signal(), Some(signal), "{status:?}");
    assert!(!out.exists() && folder.path().join("out.csv.part").exists());

    let resumed = run(&["batch", as_str(&list), "-o", as_str(&out), "--resume", "--quiet"], "");
    assert_eq!((resumed.code, resumed.err.as_str()), (0, ""));
    // That the bytes are those of one run is proved where a run is killed.
    assert_eq!(fs::read_to_string(&out).unwrap().lines().count(), 521);
    assert_eq!(names(&folder), ["list.csv", "out.csv"]);
}

#[test]
fn a_picture_is_written_though_the_reader_of_the_text_goes_away() {
    let folder = folder();
    let plot = folder.path().join("plot.svg");
    let mut child = Command::new(env!("CARGO_BIN_EXE_seatwise"))
        .args(["plan", PUMP, "--plot", as_str(&plot)])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    assert!(child.wait().unwrap().success() && plot.exists());
}

#[test]
fn nothing_in_the_sources_opens_a_connection() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut folders = vec![root.join("src")];
    let mut looked_at = 0;
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                let text = fs::read_to_string(&path).unwrap();
                looked_at += 1;
                for word in ["std::net", "TcpStream", "UdpSocket", "Command::new(", "http::"] {
                    assert!(!text.contains(word), "{} uses {word}", path.display());
                }
            }
        }
    }
    assert!(looked_at > 100);
    let lock = fs::read_to_string(root.join("Cargo.toml")).unwrap();
    for network in ["reqwest", "ureq", "hyper", "tokio", "curl"] {
        assert!(!lock.contains(network), "{network}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_run_without_a_network_does_the_same() {
    let offline = Command::new("unshare").args(["-rn", "true"]).output();
    if !offline.is_ok_and(|output| output.status.success()) {
        eprintln!("skipped: this machine gives no space without a network");
        return;
    }
    let mut command = Command::new("unshare");
    command.args(["-rn", env!("CARGO_BIN_EXE_seatwise"), "plan", PUMP]).current_dir(env!("CARGO_MANIFEST_DIR"));
    let output = command.output().unwrap();
    assert!(output.status.success());
    assert_eq!(String::from_utf8(output.stdout).unwrap(), finished(&mut seatwise(&["plan", PUMP])).out);
}
