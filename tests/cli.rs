//! The real binary: streams, files and exit codes.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{Run, as_str, folder, written};
use std::fs;
use std::path::{Path, PathBuf};

fn run(arguments: &[&str]) -> Run {
    binary::run(arguments, "")
}

const PUMP: &str = "examples/pump-case.toml";

fn examples() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples");
    let paths = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    paths.filter(|path| path.extension().is_some_and(|extension| extension == "toml")).collect()
}

#[test]
fn every_example_is_planned_in_every_format_and_system() {
    // JSON and CSV name the unit of each value, which no system changes.
    let ways = [("text", "metric"), ("text", "inch"), ("json", "inch"), ("csv", "metric")];
    let examples = examples();
    assert!(examples.len() >= 10, "only {} examples", examples.len());
    let (some, others) = examples.split_at(examples.len() / 2);
    std::thread::scope(|threads| {
        for half in [some, others] {
            threads.spawn(move || half.iter().for_each(|path| ways.iter().for_each(|way| is_planned(path, *way))));
        }
    });
}

fn is_planned(path: &Path, (format, units): (&str, &str)) {
    let run = run(&["plan", as_str(path), "--format", format, "--units", units]);
    assert_eq!((run.code, run.err.as_str()), (0, ""), "{} {format} {units}", path.display());
    for word in ["NaN", "inf ", "not known"] {
        assert!(!run.out.contains(word), "{} holds {word}:\n{}", path.display(), run.out);
    }
}

#[test]
fn the_answer_stands_on_the_first_screen() {
    let run = run(&["plan", PUMP]);
    let top: Vec<&str> = run.out.lines().take(8).collect();
    let verdicts = ["DROPS IN", "SOME WILL NOT", "PRESS", "DO NOT"];
    assert!(top.iter().any(|line| verdicts.contains(line)), "{}", top.join("\n"));
}

#[test]
fn a_verdict_worse_than_required_exits_with_3_and_still_prints_the_plan() {
    let run_press = run(&["plan", "examples/core-plug.toml", "--require", "drops-in"]);
    assert_eq!(run_press.code, 3);
    assert!(run_press.out.contains("PRESS"));
    assert_eq!(run(&["plan", "examples/core-plug.toml", "--require", "press"]).code, 0);
}

#[test]
fn a_job_comes_from_standard_input_too() {
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(PUMP)).unwrap();
    let piped = binary::run(&["plan", "-"], &text);
    assert_eq!(piped.out, run(&["plan", PUMP]).out);
}

#[test]
fn a_mistake_is_underlined_with_file_line_and_column_and_nothing_is_written() {
    let folder = folder();
    let job = written(&folder, "job.toml", "title = \"x\"\n[bearing]\nbore = \"30 kg\"\n");
    let out = folder.path().join("plan.txt");
    let run = run(&["plan", as_str(&job), "-o", as_str(&out)]);
    assert_eq!(run.code, 2);
    assert_eq!(run.out, "");
    assert!(run.err.contains("job.toml:3:12"), "{}", run.err);
    assert!(run.err.contains("^^"), "{}", run.err);
    assert!(run.err.contains("help"), "{}", run.err);
    assert!(!out.exists());
}

#[test]
fn files_that_are_no_job_are_refused_with_2_and_one_clear_message() {
    let folder = folder();
    let long = written(&folder, "long.toml", "# a comment that never ends\n".repeat(4_000_000));
    let latin = folder.path().join("latin.toml");
    fs::write(&latin, b"title = \"Gr\xf6\xdfe\"\n").unwrap();
    let empty = written(&folder, "empty.toml", "");
    let cases = [
        (folder.path().to_path_buf(), "is a folder"),
        (folder.path().join("missing.toml"), "cannot read"),
        (long, "too long"),
        (latin, "not UTF-8"),
        (empty, "the job is empty"),
    ];
    for (path, says) in cases {
        let run = run(&["plan", as_str(&path)]);
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{}", path.display());
        assert!(run.err.contains(says), "{}: {}", path.display(), run.err);
        assert!(run.err.contains("help"), "{}", run.err);
        assert!(!run.err.contains("panicked"), "{}", run.err);
    }
}

#[cfg(unix)]
#[test]
fn a_folder_that_may_not_be_written_is_named() {
    let run = run(&["plan", PUMP, "-o", "/proc/plan.txt"]);
    assert_eq!((run.code, run.out.as_str()), (2, ""));
    assert!(run.err.contains("cannot write /proc/plan.txt"), "{}", run.err);
}

#[test]
fn an_input_is_never_written_over_and_an_output_only_with_force() {
    let folder = folder();
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(PUMP)).unwrap();
    let job = written(&folder, "job.toml", &text);
    let onto_itself = run(&["plan", as_str(&job), "-o", as_str(&job), "--force"]);
    assert_eq!(onto_itself.code, 2);
    assert!(onto_itself.err.contains("never written over"), "{}", onto_itself.err);
    assert_eq!(fs::read_to_string(&job).unwrap(), text);

    let out = written(&folder, "plan.txt", "old");
    let refused = run(&["plan", as_str(&job), "-o", as_str(&out)]);
    assert_eq!(refused.code, 2);
    assert_eq!(fs::read_to_string(&out).unwrap(), "old");
    assert_eq!(run(&["plan", as_str(&job), "-o", as_str(&out), "--force"]).code, 0);
    assert!(fs::read_to_string(&out).unwrap().contains("Cautions"));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2, "a temporary file was left behind");
}

#[test]
fn a_plot_is_written_as_svg_or_png_and_nothing_else() {
    let folder = folder();
    let svg = folder.path().join("plot.svg");
    let png = folder.path().join("plot.png");
    assert_eq!(run(&["plan", PUMP, "--plot", as_str(&svg)]).code, 0);
    assert_eq!(run(&["plan", PUMP, "--plot", as_str(&png)]).code, 0);
    assert!(fs::read_to_string(&svg).unwrap().contains("<svg"));
    assert_eq!(&fs::read(&png).unwrap()[1..4], b"PNG");
    let wrong = run(&["plan", PUMP, "--plot", "plot.gif"]);
    assert_eq!((wrong.code, wrong.out.as_str()), (2, ""));
    assert!(wrong.err.contains(".svg or .png"), "{}", wrong.err);
}

#[test]
fn limits_and_pair_answer_at_the_bench_in_both_systems() {
    let limits = run(&["limits", "62", "N7"]);
    assert!(limits.out.contains("-39/-9 µm"), "{}", limits.out);
    let json = run(&["limits", "62", "N7", "--format", "json"]);
    for part in ["\"seatwise.limits/1\"", "\"class\": \"N7\"", "\"lower_um\": -39.0", "\"upper_um\": -9.0"] {
        assert!(json.out.contains(part), "{}", json.out);
    }
    let inch = run(&["limits", "2.4409 in", "N7"]);
    assert!(inch.out.contains("-1.54/-0.35 thou"), "{}", inch.out);
    let pair = run(&["pair", "62", "N7", "ISO 492 Normal"]);
    for part in ["39 µm", "17.5 µm", "-4 µm"] {
        assert!(pair.out.contains(part), "{}", pair.out);
    }
}

#[test]
fn a_class_that_does_not_exist_is_refused_with_what_does() {
    let run = run(&["limits", "62", "CD7"]);
    assert_eq!((run.code, run.out.as_str()), (2, ""));
    assert!(run.err.contains("CD"), "{}", run.err);
}

#[test]
fn a_material_is_shown_with_a_source_for_each_value_and_at_a_temperature() {
    let all = run(&["materials"]);
    for id in ["bearing-steel", "cast-aluminium", "pa66", "invar"] {
        assert!(all.out.contains(id), "{}", all.out);
    }
    let one = run(&["materials", "bearing-steel", "--format", "json"]);
    assert!(one.out.contains("\"expansion\": [") && one.out.contains("\"dl_l\""), "{}", one.out);
    let cold = run(&["materials", "carbon-steel", "--at", "-195.8 °C", "--format", "json"]);
    assert!(cold.out.contains("\"dl_l_from_20c\": -0.0019"), "{}", cold.out);
    let outside = run(&["materials", "acetal", "--at", "-195.8 °C"]);
    assert_eq!(outside.code, 2);
    assert!(outside.err.contains("nothing is extrapolated"), "{}", outside.err);
}

#[test]
fn a_users_own_material_is_used_from_a_file_and_from_the_job() {
    let folder = folder();
    let template =
        fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("materials/cast-aluminium.toml")).unwrap();
    let own = written(&folder, "our-alloy.toml", &template);
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(PUMP)).unwrap();
    let job = written(&folder, "job.toml", text.replace("cast-aluminium", "our-alloy"));
    assert_eq!(run(&["plan", as_str(&job)]).code, 2, "without the file the name means nothing");
    let with_file = run(&["plan", as_str(&job), "--material", as_str(&own)]);
    assert_eq!(with_file.code, 0, "{}", with_file.err);
    assert!(with_file.out.contains("our-alloy"));

    let inline = r#"{ name = "cover alloy", family = "light alloy", density = "2.68 g/cm3", modulus = "72 GPa",
        poisson = "0.33", strength = "165 MPa", expansion = "21.5 um/mK", heat_capacity = "960 J/kgK",
        conductivity = "151 W/mK" }"#
        .replace('\n', " ");
    let job = written(&folder, "inline.toml", text.replace("\"cast-aluminium\"", &inline));
    let with_values = run(&["plan", as_str(&job)]);
    assert_eq!(with_values.code, 0, "{}", with_values.err);
    assert!(with_values.out.contains("no source given"), "a material without a source is flagged");
}

#[test]
fn media_are_listed_with_their_dangers() {
    let all = run(&["media"]);
    for id in ["domestic-freezer", "liquid-nitrogen", "induction-heater", "hot-air-gun"] {
        assert!(all.out.contains(id), "{}", all.out);
    }
    assert!(run(&["media", "LN2"]).out.contains("cryogen"));
}

#[test]
fn metric_and_inch_input_of_the_same_job_give_the_same_plan() {
    let metric = "[bearing]\nkind = \"ball bearing\"\nbore = \"25.4 mm\"\noutside = \"50.8 mm\"\nwidth = \"12.7 mm\"\n\
                  closure = \"open\"\n[housing]\nbore_limits = \"-38.1/-12.7 um\"\noutside = \"76.2 mm\"\n\
                  material = \"cast-aluminium\"\n[warm]\npart = \"housing\"\nmedium = \"oven\"\ntemperature = \"95 °C\"\n\
                  hold = \"60 min\"\n[bench]\ntemperature = \"20 °C\"\n";
    let inch = "[bearing]\nkind = \"ball bearing\"\nbore = \"1 in\"\noutside = \"2 in\"\nwidth = \"1/2 in\"\n\
                closure = \"open\"\n[housing]\nbore_limits = \"-1.5/-0.5 thou\"\noutside = \"3 in\"\n\
                material = \"cast-aluminium\"\n[warm]\npart = \"housing\"\nmedium = \"oven\"\ntemperature = \"203 °F\"\n\
                hold = \"1 h\"\n[bench]\ntemperature = \"68 °F\"\n";
    let plan = |text: &str| {
        let run = binary::run(&["plan", "-", "--format", "csv"], text);
        assert_eq!(run.code, 0, "{}", run.err);
        run.out
    };
    assert_eq!(plan(metric), plan(inch));
}

#[test]
fn a_reader_that_stops_early_is_no_error() {
    let mut child = std::process::Command::new(env!("CARGO_BIN_EXE_seatwise"))
        .args(["plan", PUMP])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdout(std::process::Stdio::piped())
        .stderr(std::process::Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success());
    assert_eq!(String::from_utf8(output.stderr).unwrap(), "");
}
