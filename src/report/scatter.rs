//! The scatter of a plan as text and CSV.

use super::json::figures;
use super::sheet::{Cell, head, written};
use super::text::{Page, Table};
use super::words;
use crate::job::AnyValue;
use crate::plan::Plan;
use crate::plan::scatter::{Output, OutputSummary, PERCENTILES, Scatter, SeatScatter, Share};
use crate::quantity::{System, Toward, show_force};
use uom::si::length::micrometer;

/// What an output is called.
pub(crate) fn name(output: Output) -> &'static str {
    match output {
        Output::Interference => "interference at 20 °C",
        Output::Clearance => "clearance at the seat",
        Output::Window => "latest start of the push",
        Output::Force => "press force at the seat",
        Output::Coldest => "interference, coldest service",
        Output::Hottest => "interference, hottest service",
    }
}

/// What an output is called in JSON and CSV, with its unit.
pub(crate) fn key(output: Output) -> &'static str {
    match output {
        Output::Interference => "interference_um",
        Output::Clearance => "at_bore_clearance_um",
        Output::Window => "window_s",
        Output::Force => "at_bore_force_n",
        Output::Coldest => "coldest_interference_um",
        Output::Hottest => "hottest_interference_um",
    }
}

/// A value (SI) in the unit of [`key`]; none where it lies beyond what is followed.
pub(crate) fn number(output: Output, value: f64) -> Option<f64> {
    let scale = if matches!(output, Output::Window | Output::Force) { 1.0 } else { 1e6 };
    value.is_finite().then(|| figures(value * scale))
}

/// The block of every seat.
pub(crate) fn blocks(plan: &Plan<'_>, system: System, page: &mut Page) {
    let Some(scatter) = &plan.scatter else { return };
    for seat in &scatter.seats {
        let of = if scatter.seats.len() > 1 { format!(", {} seat", seat.seat.name()) } else { String::new() };
        page.heading(&format!("Scatter{of}"));
        page.paragraph(&answer(seat, system));
        for line in more(seat, system) {
            page.paragraph(&line);
        }
        page.line("");
        page.paragraph("Interference at 20 °C and in service, clearance and force when a part reaches the seat:");
        page.table(&percentiles(seat, system));
        page.line("");
        decisive(seat, page);
        drawn(scatter, seat, system, page);
    }
}

/// "Of 100 parts, 97 drop in (96.1 to 97.8, 95 %)".
pub(crate) fn answer(seat: &SeatScatter, system: System) -> String {
    let clearance = words::value(&AnyValue::SmallLength(seat.placing_clearance), system);
    format!("{}, with the placing clearance of {clearance}.", of_hundred(&seat.drops_in, "drop in", "drops in"))
}

fn of_hundred(share: &Share, many: &str, one: &str) -> String {
    let count = per_cent(share.share());
    let does = if count == "1" { one } else { many };
    format!("Of 100 parts, {count} {does} ({} to {}, 95 %)", per_cent(share.low), per_cent(share.high))
}

/// A share times a hundred: to a tenth, or to two figures of what is left to the nearer end.
pub(crate) fn per_cent(share: f64) -> String {
    let rest = 100.0 * share.min(1.0 - share);
    if rest <= 0.0 {
        return if share > 0.5 { "100".to_owned() } else { "0".to_owned() };
    }
    // Held between 1 and 9, so nothing is cut off.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let places = (-rest.log10()).ceil().clamp(0.0, 8.0) as usize + 1;
    let text = format!("{:.places$}", share * 100.0);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn more(seat: &SeatScatter, system: System) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some((force, share)) = &seat.below_force {
        let limit = show_force(*force, system, Toward::Nearest);
        lines.push(format!(
            "{}.",
            of_hundred(share, &format!("need no more than {limit}"), &format!("needs no more than {limit}"))
        ));
    }
    lines.push(format!("{} at 20 °C.", of_hundred(&seat.loose, "are loose", "is loose")));
    for (output, share) in &seat.loose_in_service {
        let end = if *output == Output::Coldest { "coldest" } else { "hottest" };
        lines.push(format!("{} at the {end} of service.", of_hundred(share, "are loose", "is loose")));
    }
    lines
}

/// A column an output: mean, deviation and percentiles, in columns that a page is wide enough for.
fn percentiles(seat: &SeatScatter, system: System) -> Table<7> {
    let head = |output: Output| match output {
        Output::Interference => "interference",
        Output::Clearance => "clearance",
        Output::Window => "latest start",
        Output::Force => "force",
        Output::Coldest => "interf. coldest",
        Output::Hottest => "interf. hottest",
    };
    let row = |name: String, read: &dyn Fn(&OutputSummary) -> Option<f64>| {
        let shown = |summary: &OutputSummary| match read(summary) {
            None => "-".to_owned(),
            Some(value) if value.is_finite() => words::value(&summary.output.value(value), system),
            Some(_) => "over 4 h".to_owned(),
        };
        array(std::iter::once(name).chain(seat.outputs.iter().map(shown)))
    };
    let mut rows = vec![
        row("mean".to_owned(), &|summary| summary.mean),
        row("standard deviation".to_owned(), &|summary| summary.deviation),
    ];
    for (place, per_cent) in PERCENTILES.iter().enumerate() {
        rows.push(row(format!("{per_cent} % have less"), &|summary| Some(summary.percentiles[place])));
    }
    let heads = seat.outputs.iter().map(|summary| head(summary.output).to_owned());
    Table { head: Some(array(std::iter::once(String::new()).chain(heads))), rows }
}

fn array<const N: usize>(mut cells: impl Iterator<Item = String>) -> [String; N] {
    std::array::from_fn(|_| cells.next().unwrap_or_default())
}

/// What decides, the most decisive first.
fn decisive(seat: &SeatScatter, page: &mut Page) {
    for sensitivity in &seat.sensitivities {
        let ranked = sensitivity.ranked();
        let told = ranked.iter().filter(|input| sensitivity.indices[**input].total >= LEAST_TOLD).map(|&input| {
            let index = &sensitivity.indices[input];
            let clip = |share: f64| (share * 100.0).clamp(0.0, 100.0);
            format!("{} {:.0} % ({:.0} % alone)", seat.inputs[input].name, clip(index.total), clip(index.alone()))
        });
        let told: Vec<String> = told.collect();
        page.paragraph(&format!("What decides the {}: {}.", name(sensitivity.output), told.join(", ")));
    }
    page.paragraph(
        "Measure or control the first of a line first. A share is that of the variance (total index of Sobol'); alone is \
         what goes when that input is known and nothing else.",
    );
}

/// Least total index that is told in words.
const LEAST_TOLD: f64 = 0.01;

fn drawn(scatter: &Scatter, seat: &SeatScatter, system: System, page: &mut Page) {
    let error = seat.table_error.get::<micrometer>();
    page.paragraph(&format!(
        "{} parts were drawn with seed {}. The interval says how well that number tells the share, and nothing of how well \
         the distributions describe the parts:",
        scatter.draws, scatter.seed
    ));
    for input in &seat.inputs {
        let (low, high) = (words::value(&input.low, system), words::value(&input.high, system));
        let why = input.assumed.as_deref().unwrap_or("as stated").to_owned();
        page.small(&format!("{}: {}, {low} to {high} ({why})", input.name, input.shape));
    }
    if error > 0.0 {
        page.small(&format!(
            "Expansion is read from tables; parts planned directly beside them differ by {error:.3} µm at most."
        ));
    }
}

/// Mean, deviation and percentiles of every output, a row each; a cell is empty beyond what is followed.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn csv(scatter: &Scatter) -> Result<String, csv::Error> {
    let names = ["seat", "quantity", "draws", "seed", "mean", "standard_deviation", "least", "most"];
    let percentiles = PERCENTILES.map(|p| format!("percentile_{p}"));
    let mut rows = vec![head(names.into_iter().chain(percentiles.iter().map(String::as_str)))];
    for seat in &scatter.seats {
        for summary in &seat.outputs {
            let cell = |value: Option<f64>| Cell::number(value.and_then(|value| number(summary.output, value)));
            let mut row = vec![
                Cell::text(seat.seat.name()),
                Cell::text(key(summary.output)),
                // Counts are digits alone, and a seed may have more of them than a number keeps.
                Cell::text(scatter.draws.to_string()),
                Cell::text(scatter.seed.to_string()),
            ];
            row.extend([summary.mean, summary.deviation, Some(summary.least), Some(summary.most)].map(cell));
            row.extend(summary.percentiles.iter().map(|value| cell(Some(*value))));
            rows.push(row);
        }
    }
    written(rows)
}

#[cfg(test)]
mod tests {
    use super::per_cent;

    #[test]
    fn a_share_near_an_end_keeps_the_digits_that_tell_it_from_the_end() {
        let cases = [
            (0.97, "97"),
            (0.961_23, "96.1"),
            (0.000_66, "0.066"),
            (0.999_34, "99.934"),
            (1.0, "100"),
            (0.0, "0"),
            (0.000_012_3, "0.0012"),
        ];
        for (share, said) in cases {
            assert_eq!(per_cent(share), said);
        }
    }
}
