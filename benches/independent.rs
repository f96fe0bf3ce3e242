//! The section of a seat beside CalculiX: same mesh, same machine, same run. `cargo bench --bench independent`.
//!
//! Each time is that of a whole program from its input file to its result, the median of several runs, on one core.

#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and its jobs are the examples")]

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

fn main() {
    if Command::new("ccx").arg("-v").output().is_err() {
        println!("ccx is not installed (Debian package calculix-ccx): nothing to compare with");
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    println!("{:<14}{:>8}{:>14}{:>14}{:>10}", "seat", "nodes", "seatwise, ms", "CalculiX, ms", "times");
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
        println!("{name:<14}{nodes:>8}{ours:>14.1}{theirs:>14.0}{:>10.0}", theirs / ours);
    }
}
