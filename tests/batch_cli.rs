//! `seatwise batch` as it is run: a list of jobs, one a row.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;
#[path = "batch/interrupted.rs"]
mod interrupted;
#[path = "batch/refused.rs"]
mod refused;

use binary::{Run, as_str, finished, folder, seatwise, written};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;
use std::path::{Path, PathBuf};

fn run(arguments: &[&str]) -> Run {
    finished(&mut seatwise(arguments))
}

fn rows(csv: &str) -> Vec<BTreeMap<String, String>> {
    csv::Reader::from_reader(csv.as_bytes()).deserialize().map(Result::unwrap).collect()
}

const HEAD: &str = "title,bearing.designation,bearing.closure,housing.bore_limits,housing.outside,housing.material,\
                    warm.part,warm.medium,warm.temperature,warm.hold\n";

/// Rows of different jobs, pressed and warmed; every tenth names a class that does not exist.
fn jobs(count: usize) -> Vec<String> {
    let row = |i: usize| {
        let bearing = ["6203", "6204", "6205", "6206", "6305"][i % 5];
        let class = if i % 10 == 9 { "Q99" } else { ["N7", "M7", "P7"][i % 3] };
        let outside = 80 + i % 37;
        let warm = if i.is_multiple_of(4) { format!("housing,oven,{} °C,1 h", 70 + i % 40) } else { ",,,".to_owned() };
        format!("\"Seat {i}, row\",{bearing},open,{class},{outside} mm,cast-aluminium,{warm}\n")
    };
    (0..count).map(row).collect()
}

fn list(jobs: &[String]) -> String {
    HEAD.to_owned() + &jobs.concat()
}

#[test]
fn the_template_is_a_list_that_is_planned_without_a_word() {
    let folder = folder();
    let list = folder.path().join("list.csv");
    assert_eq!(run(&["batch", "--template", "-o", as_str(&list)]).code, 0);
    let run = run(&["batch", as_str(&list)]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    let planned = rows(&run.out);
    assert_eq!(planned.len(), 3);
    assert!(planned.iter().all(|row| row["status"] == "planned" && !row["verdict"].is_empty()));
    assert!(planned[0]["cautions"].contains("hot-part"), "{}", planned[0]["cautions"]);
}

#[test]
fn each_row_is_the_plan_of_that_job() {
    let folder = folder();
    let jobs: Vec<String> = jobs(12).into_iter().filter(|row| !row.contains("Q99")).collect();
    let batch = run(&["batch", as_str(&written(&folder, "list.csv", list(&jobs)))]);
    assert_eq!(batch.code, 0, "{}", batch.err);
    let columns: Vec<&str> = HEAD.trim().split(',').collect();
    for (row, job) in rows(&batch.out).iter().zip(&jobs) {
        let record = csv::ReaderBuilder::new().has_headers(false).from_reader(job.as_bytes()).records().next();
        let mut text = String::new();
        for (column, cell) in columns.iter().zip(record.unwrap().unwrap().iter()).filter(|(_, cell)| !cell.is_empty()) {
            writeln!(text, "{column} = \"{cell}\"").unwrap();
        }
        let plan = finished(seatwise(&["plan", "-", "--format", "csv"]).write_stdin(text));
        assert_eq!(plan.code, 0, "{}", plan.err);
        for (name, cell) in &rows(&plan.out)[0] {
            assert_eq!(&row[name], cell, "{name} of {job}");
        }
    }
}

#[test]
fn a_bad_row_is_reported_with_its_line_and_column_and_the_rest_goes_on() {
    let folder = folder();
    let list = written(&folder, "list.csv", list(&jobs(25)));
    let csv = run(&["batch", as_str(&list)]);
    assert_eq!(csv.code, 4);
    let told = rows(&csv.out);
    assert_eq!(told.len(), 25);
    for (i, row) in told.iter().enumerate() {
        assert_eq!(row["title"], format!("Seat {i}, row"), "the order is kept");
        assert_eq!(row["status"], if i % 10 == 9 { "error" } else { "planned" });
        assert_eq!(row["error"].contains("housing.bore_limits: ") && row["error"].contains("help: "), i % 10 == 9);
    }
    // The heading is line 1, so the tenth row is line 11.
    for line in [11, 21] {
        let place = format!("list.csv:{line}: housing.bore_limits: ");
        assert_eq!(csv.err.matches(&place).count(), 1, "{}", csv.err);
    }
    assert!(csv.err.contains("2 of 25 rows"), "{}", csv.err);
    let json = run(&["batch", as_str(&list), "--format", "json"]);
    let lines: Vec<Value> = json.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!((json.code, lines.len()), (4, 25));
    assert_eq!(lines[9]["errors"][0]["column"], "housing.bore_limits");
    for (line, row) in lines.iter().zip(&told).filter(|(line, _)| line["status"] == "planned") {
        assert_eq!(line["verdict"], row["verdict"].as_str());
        let force = line["seats"][0]["press_force_n_tightest"].as_f64().unwrap();
        assert_eq!(force.to_string(), row["press_force_n_tightest"]);
    }
}

#[test]
fn a_list_split_in_two_gives_the_same_bytes_whatever_the_number_of_threads() {
    let folder = folder();
    let jobs = jobs(60);
    let whole = written(&folder, "whole.csv", list(&jobs));
    let first = written(&folder, "first.csv", list(&jobs[..23]));
    let second = written(&folder, "second.csv", list(&jobs[23..]));
    for format in ["csv", "json"] {
        let out = |path: &Path, threads: &str| {
            let arguments = ["batch", as_str(path), "--format", format];
            finished(seatwise(&arguments).env("RAYON_NUM_THREADS", threads)).out
        };
        let (whole, second) = (out(&whole, "2"), out(&second, "1"));
        let second = if format == "csv" { second.split_once('\n').unwrap().1.to_owned() } else { second };
        assert!(whole.len() > 4000 && whole == out(&first, "1") + &second, "{format} differs");
    }
}

#[test]
fn a_list_from_standard_input_and_one_with_semicolons_and_a_byte_order_mark_give_the_same() {
    let folder = folder();
    let jobs = jobs(9);
    let plain = list(&jobs);
    let wanted = run(&["batch", as_str(&written(&folder, "plain.csv", &plain))]);
    let piped = finished(seatwise(&["batch", "-"]).write_stdin(plain.clone()));
    assert_eq!((piped.code, piped.err.as_str(), &piped.out), (0, "", &wanted.out));
    let other = plain.replace(", row", "\u{2}").replace(',', ";").replace('\u{2}', ", row");
    let other = format!("\u{feff}{other}");
    assert_eq!(run(&["batch", as_str(&written(&folder, "other.csv", other.replace('\n', "\r\n")))]).out, wanted.out);
}

#[test]
fn a_job_with_two_seats_has_a_row_for_each_and_a_cell_in_braces_is_toml() {
    let folder = folder();
    let list = written(
        &folder,
        "list.csv",
        "title,bearing.designation,housing.bore_limits,housing.outside,housing.material,housing.shoulder,\
         shaft.outside_limits,shaft.material\nBoth,6205,N7,80 mm,cast-aluminium,\"{ inside = \"\"44 mm\"\", wall = \
         \"\"4 mm\"\" }\",k6,carbon-steel\n",
    );
    let run = run(&["batch", as_str(&list)]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    let seats: Vec<String> = rows(&run.out).into_iter().map(|row| row["seat"].clone()).collect();
    assert_eq!(seats, ["housing", "shaft"]);
}
