//! The section of a seat beside CalculiX: same mesh, same machine, same run. `cargo bench --bench independent`.
//!
//! Medians of several runs on one core: the whole program from the job file to its table, the section alone from its sizes to
//! pressures, changes and stresses at the nodes, and the other solver from its deck to its results.

#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and its jobs are the examples")]

use seatwise::plan::drawing::{self, Moment, SectionCase, SectionRequest};
use seatwise::section::{Accuracy, Loads, Model};
use seatwise::stock::Library;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Instant;

const SEATS: [(&str, &str); 3] = [("through bore", "iron-hub"), ("blind bore", "pump-case"), ("shaft", "fan-shaft")];
const RUNS: usize = 7;

/// Median time of a command, s.
fn median(command: &mut Command) -> f64 {
    let mut times: Vec<f64> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            assert!(command.stdout(Stdio::null()).status().unwrap().success());
            start.elapsed().as_secs_f64()
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[RUNS / 2]
}

/// Median time of the section of a job alone, s.
fn alone(job: &Path) -> f64 {
    let job = seatwise::job::check(&std::fs::read_to_string(job).unwrap(), &Library::default()).unwrap();
    let request = SectionRequest { seat: None, moment: Moment::Room, case: SectionCase::Tightest };
    let seat = drawing::draw(&job, &request).unwrap().remove(0);
    let (interference, strain) = (vec![seat.interference], vec![Default::default(); 2]);
    let loads = Loads { interference, strain, axial: Default::default() };
    let mut times: Vec<f64> = (0..5 * RUNS)
        .map(|_| {
            let start = Instant::now();
            Model::new(&seat.section, Accuracy::Normal).unwrap().whole(&loads).unwrap();
            start.elapsed().as_secs_f64()
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}

fn main() {
    if Command::new("ccx").arg("-v").output().is_err() {
        println!("ccx is not installed (Debian package calculix-ccx): nothing to compare with");
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    println!("{:<14}{:>8}{:>12}{:>12}{:>14}", "seat", "nodes", "program, ms", "section, ms", "CalculiX, ms");
    for (name, example) in SEATS {
        let job = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("examples/{example}.toml"));
        let deck = folder.path().join(format!("{example}.inp"));
        let seatwise = || Command::new(env!("CARGO_BIN_EXE_seatwise"));
        assert!(seatwise().arg("deck").arg(&job).arg("-o").arg(&deck).status().unwrap().success());
        let text = std::fs::read_to_string(&deck).unwrap();
        let nodes = text.lines().skip_while(|line| !line.starts_with("*NODE, ")).skip(1);
        let nodes = nodes.take_while(|line| !line.starts_with('*')).count();
        let ours = 1e3 * median(seatwise().arg("section").arg(&job));
        let mut solver = Command::new("ccx");
        let theirs = 1e3 * median(solver.arg(example).env("OMP_NUM_THREADS", "1").current_dir(folder.path()));
        let section = 1e3 * alone(&job);
        println!("{name:<14}{nodes:>8}{ours:>12.1}{section:>12.1}{theirs:>14.0}");
        println!("{:<14}times faster: program {:.0}, section {:.0}", "", theirs / ours, theirs / section);
    }
}
