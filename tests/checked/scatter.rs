//! Scatter: drawn parts against samples of another library, indices of Sobol' against those of a known function.

use super::reference_rows::{number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::job::{self, Job};
use seatwise::plan::Method;
use seatwise::plan::scatter::{Distribution, OneByOne, Output, Request, indices, scatter};
use seatwise::stock::Library;
use std::f64::consts::PI;

pub const SETS: &[Set] = &[
    Set {
        family: "Scatter",
        title: "Drawn parts",
        allowed: "five standard errors of the mean for mean and deviation; half the interval of 95 % for the share that is loose; \
                  percentiles 0.1 µm in the middle, 0.15 at 1 and 99 %, 0.35 at 0.1 and 99.9 %, where parts are few",
        checks: samples,
    },
    Set {
        family: "Scatter",
        title: "Indices of Ishigami's function",
        allowed: "four standard errors as the program states them, and 0.001",
        checks: ishigami,
    },
];

const DRAWS: u64 = 200_000;
/// Columns of the percentiles and how far each may be off, µm.
const PERCENTILES: [(&str, f64); 7] =
    [("p0.1", 0.35), ("p1", 0.15), ("p5", 0.1), ("p50", 0.1), ("p95", 0.1), ("p99", 0.15), ("p99.9", 0.35)];
/// Seeds of the indices.
pub const SEEDS: [u64; 3] = [1, 2, 3];

/// A ring of 52 mm, 0/-13 µm, in N7; `scatter` is its table.
pub fn ring_in_n7(scatter: &str) -> Job {
    let text = format!(
        "title = \"S31\"\n[bearing]\ndesignation = \"6205\"\noutside_limits = \"-13/0 um\"\n[housing]\n\
         bore_limits = \"N7\"\noutside = \"80 mm\"\nmaterial = \"cast-aluminium\"\n[scatter]\n{scatter}\n"
    );
    job::check(&text, &Library::default()).map_err(|problems| problems.to_string()).unwrap()
}

fn samples() -> Vec<Check> {
    let mut sheet = Sheet::of("scatter/samples.csv");
    for row in read("scatter/samples.csv") {
        let sizes = match row["sizes"].split_once(' ') {
            None => "sizes = \"uniform\"".to_owned(),
            Some((shape, capability)) => format!("sizes = {{ shape = \"{shape}\", capability = \"{capability}\" }}"),
        };
        let request = Request { draws: DRAWS, seed: 11, force_limit: None, method: Method::Plane };
        let seat = scatter(&ring_in_n7(&sizes), &request, &OneByOne).unwrap().seats.remove(0);
        let found = seat.outputs.iter().find(|summary| summary.output == Output::Interference).unwrap();
        let errors = 5.0 * number(&row, "deviation") / (DRAWS as f64).sqrt();
        sheet.row(format!("sizes {}", row["sizes"]));
        let mut within = |column: &str, computed: f64, allowed: f64| {
            sheet.within((column, "µm"), [number(&row, column), computed], allowed);
        };
        within("mean", found.mean.unwrap() * 1e6, errors);
        within("deviation", found.deviation.unwrap() * 1e6, errors);
        for (percentile, (column, allowed)) in found.percentiles.iter().zip(PERCENTILES) {
            within(column, percentile * 1e6, allowed);
        }
        let (low, high) = (seat.loose.low, seat.loose.high);
        sheet.within(("loose", ""), [number(&row, "loose"), 0.5 * (low + high)], 0.5 * (high - low));
    }
    sheet.done()
}

fn ishigami() -> Vec<Check> {
    let mut sheet = Sheet::of("scatter/ishigami.csv");
    let even = Distribution::Uniform { low: -PI, high: PI };
    let function = |x: &[f64]| [x[0].sin() + 7.0 * x[1].sin().powi(2) + 0.1 * x[2].powi(4) * x[0].sin()];
    for seed in SEEDS {
        let [found] = indices(&[even.clone(), even.clone(), even.clone()], seed, &function, &OneByOne);
        for (row, index) in read("scatter/ishigami.csv").iter().zip(found.unwrap()) {
            assert!(index.first_error < 0.025 && index.total_error < 0.02, "{index:?}");
            sheet.row(format!("input {}, seed {seed}", row["input"]));
            sheet.column(row, "first", index.first, [0.0, 4.0 * index.first_error + 1e-3]);
            sheet.column(row, "total", index.total, [0.0, 4.0 * index.total_error + 1e-3]);
        }
    }
    sheet.done()
}
