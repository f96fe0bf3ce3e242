use super::{Series, Thread};
use crate::quantity::Length;
use crate::stock::iso286::{Status, TableError, rows};
use serde::Deserialize;
use std::sync::LazyLock;
use uom::si::length::{inch, millimeter};

/// The CSV text of the metric threads that is built into the program.
pub const EMBEDDED_METRIC: &str = include_str!("../../../fits/threads_metric.csv");
/// The CSV text of the unified threads that is built into the program.
pub const EMBEDDED_UNIFIED: &str = include_str!("../../../fits/threads_unified.csv");

#[derive(Deserialize)]
struct MetricRow {
    series: String,
    nominal_mm: f64,
    pitch_mm: f64,
    status: Status,
    source: String,
}

#[derive(Deserialize)]
struct UnifiedRow {
    series: String,
    size: String,
    nominal_in: f64,
    threads_per_inch: f64,
    status: Status,
    source: String,
}

/// The embedded threads, parsed once: metric coarse, metric fine, UNC, UNF, UNEF, each with rising size.
///
/// # Errors
/// [`TableError`] when an embedded file is malformed.
pub fn threads() -> Result<&'static [Thread], TableError> {
    static THREADS: LazyLock<Result<Vec<Thread>, TableError>> =
        LazyLock::new(|| parse(EMBEDDED_METRIC, EMBEDDED_UNIFIED));
    THREADS.as_deref().map_err(Clone::clone)
}

fn parse(metric: &str, unified: &str) -> Result<Vec<Thread>, TableError> {
    let mut threads = Vec::new();
    for row in rows("fits/threads_metric.csv", metric, check_metric)? {
        threads.push(metric_thread(row));
    }
    for row in rows("fits/threads_unified.csv", unified, check_unified)? {
        threads.push(unified_thread(row));
    }
    Ok(threads)
}

fn metric_thread(row: MetricRow) -> Thread {
    let fine = row.series == "fine";
    let pitch = if fine { format!("×{}", row.pitch_mm) } else { String::new() };
    Thread {
        designation: format!("M{}{pitch}", row.nominal_mm),
        series: if fine { Series::MetricFine } else { Series::MetricCoarse },
        nominal: Length::new::<millimeter>(row.nominal_mm),
        pitch: Length::new::<millimeter>(row.pitch_mm),
        status: row.status,
        source: row.source,
    }
}

fn unified_thread(row: UnifiedRow) -> Thread {
    let series = match row.series.as_str() {
        "UNC" => Series::UnifiedCoarse,
        "UNF" => Series::UnifiedFine,
        _ => Series::UnifiedExtraFine,
    };
    Thread {
        designation: format!("{}-{} {}", row.size, row.threads_per_inch, row.series),
        series,
        nominal: Length::new::<inch>(row.nominal_in),
        pitch: Length::new::<inch>(1.0 / row.threads_per_inch),
        status: row.status,
        source: row.source,
    }
}

fn check_metric(row: &MetricRow) -> Result<(), String> {
    if !matches!(row.series.as_str(), "coarse" | "fine") {
        return Err(format!("series {} is neither coarse nor fine", row.series));
    }
    check_sizes(row.nominal_mm, row.pitch_mm)
}

fn check_unified(row: &UnifiedRow) -> Result<(), String> {
    if !matches!(row.series.as_str(), "UNC" | "UNF" | "UNEF") {
        return Err(format!("series {} is none of UNC, UNF, UNEF", row.series));
    }
    check_sizes(row.nominal_in, 1.0 / row.threads_per_inch)
}

/// A pitch of more than a third of the diameter belongs to no screw of these standards, and would leave no core.
fn check_sizes(nominal: f64, pitch: f64) -> Result<(), String> {
    if nominal.is_finite() && pitch > 0.0 && pitch < nominal / 3.0 {
        Ok(())
    } else {
        Err(format!("a nominal size of {nominal} with a pitch of {pitch} is no thread"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_malformed_row_is_an_error_with_its_line() {
        let head = "series,nominal_mm,pitch_mm,status,source\n";
        for (row, wanted) in [("coarse,10,10,from memory,x", "is no thread"), ("middle,10,1,from memory,x", "neither")]
        {
            let said = parse(&format!("{head}{row}\n"), EMBEDDED_UNIFIED).unwrap_err().to_string();
            assert!(said.contains("line 2") && said.contains(wanted), "{said}");
        }
        let unified = "series,size,nominal_in,threads_per_inch,status,source\nUNC,1/2,0.5,0,from memory,x\n";
        assert!(parse(EMBEDDED_METRIC, unified).unwrap_err().to_string().contains("is no thread"));
    }

    #[test]
    fn the_embedded_tables_are_whole() {
        let count = |series: Series| threads().unwrap().iter().filter(|thread| thread.series == series).count();
        let counts = [
            Series::MetricCoarse,
            Series::MetricFine,
            Series::UnifiedCoarse,
            Series::UnifiedFine,
            Series::UnifiedExtraFine,
        ]
        .map(count);
        assert_eq!(counts, [23, 57, 22, 20, 25]);
    }
}
