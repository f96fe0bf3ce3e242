//! Drawn parts against samples that scipy drew from the same distributions: `tests/reference/scatter/samples.csv`.

use crate::jobs::s31;
use seatwise::plan::Method;
use seatwise::plan::scatter::{OneByOne, Output, Request, scatter};

const DRAWS: u64 = 200_000;

/// Percentiles of both samples scatter: by √(p (1 - p)/n) over the density, which is coarse for the outermost.
fn allowed(place: usize) -> f64 {
    [0.35, 0.15, 0.1, 0.1, 0.1, 0.15, 0.35][place]
}

#[test]
fn mean_deviation_share_and_percentiles_agree_with_the_samples_of_scipy() {
    let table = include_str!("../reference/scatter/samples.csv");
    let rows: Vec<&str> = table.lines().filter(|line| !line.starts_with('#')).skip(1).collect();
    assert_eq!(rows.len(), 4);
    for row in rows {
        let (name, numbers) = row.split_once(',').unwrap();
        let numbers: Vec<f64> = numbers.split(',').map(|cell| cell.parse().unwrap()).collect();
        let sizes = match name.split_once(' ') {
            None => "sizes = \"uniform\"".to_owned(),
            Some((shape, capability)) => format!("sizes = {{ shape = \"{shape}\", capability = \"{capability}\" }}"),
        };
        let request = Request { draws: DRAWS, seed: 11, force_limit: None, method: Method::Plane };
        let seat = scatter(&s31(&sizes), &request, &OneByOne).unwrap().seats.remove(0);
        let found = seat.outputs.iter().find(|summary| summary.output == Output::Interference).unwrap();
        let error = numbers[1] / (DRAWS as f64).sqrt();
        assert!((found.mean.unwrap() * 1e6 - numbers[0]).abs() < 5.0 * error, "{name}");
        assert!((found.deviation.unwrap() * 1e6 - numbers[1]).abs() < 5.0 * error, "{name}");
        assert!((seat.loose.low..=seat.loose.high).contains(&numbers[2]), "{name}: {:?}", seat.loose);
        for (place, (percentile, wanted)) in found.percentiles.iter().zip(&numbers[3..]).enumerate() {
            assert!((percentile * 1e6 - wanted).abs() < allowed(place), "{name}: {percentile} against {wanted}");
        }
    }
}
