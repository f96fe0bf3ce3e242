//! The shaft seal.

use super::paragraph::Page;
use super::show::Show;
use super::table::Table;
use crate::plan::seal::{Demand, LipSpeed, SealPlan};
use crate::quantity::{System, Toward, show_force, show_rough_size, show_surface_speed};
use crate::report::words;

/// The answer in a sentence.
pub(crate) fn answer(seal: &SealPlan, system: System) -> String {
    let show = Show { system };
    let mut text = format!("The seal {} is pressed in as it is", seal.name);
    if let (Some(force), Some(fit)) = (seal.force, seal.interference) {
        text.push_str(&format!(
            ", with {} to {} (a rough estimate) for {} of interference at the tightest",
            show_force(force.least, system, Toward::Down),
            show_force(force.most, system, Toward::Up),
            show.small(fit.tightest, Toward::Up)
        ));
    }
    text + "."
}

pub(super) fn details(seal: &SealPlan, system: System, page: &mut Page) {
    let show = Show { system };
    page.heading(&format!("Shaft seal {}, {} case", seal.name, seal.case));
    page.table(&Table { head: None, rows: main(seal, show) });
    page.small(&format!("outside of the seal: {}", seal.allowance_source));
    page.line("");
    page.table(&demands(&seal.demands, system));
    page.small("ranges: row by row in fits/seal_seats.csv, with what is from memory; angle: ISO 6194-1 gives 15° to 30° (from memory)");
    page.paragraph(&words::sentence(&seal.neighbour, system));
}

/// What to do with it.
pub(super) fn steps(seal: &SealPlan, system: System, page: &mut Page) {
    page.steps(&format!("What to do, shaft seal {}", seal.name), &seal.steps, system);
}

/// Fit, force, place and speed.
fn main(seal: &SealPlan, show: Show) -> Vec<[String; 2]> {
    let signed = |length| show.small(length, Toward::Nearest);
    let mut rows = Vec::new();
    if let Some(allowance) = seal.allowance {
        rows.push(row("outside above the nominal bore", range(signed(allowance.least), signed(allowance.most))));
    }
    rows.push(row(
        "bore, deviations",
        format!("{} ({})", range(signed(seal.bore.0), signed(seal.bore.1)), seal.bore_basis),
    ));
    let shaft = range(signed(seal.shaft.0), signed(seal.shaft.1));
    rows.push(row("shaft under the lip, deviations", format!("{shaft} ({})", seal.shaft_basis)));
    if let Some(fit) = seal.interference {
        let (loosest, tightest) = (show.small(fit.loosest, Toward::Down), show.small(fit.tightest, Toward::Up));
        rows.push(row("interference, loosest to tightest", range(loosest, tightest)));
    }
    if let Some(force) = seal.force {
        let (least, most) =
            (show_force(force.least, show.system, Toward::Down), show_force(force.most, show.system, Toward::Up));
        rows.push(row("force to press it home, rough estimate", range(least, most)));
    }
    rows.push(row("driver, outside", show_rough_size(seal.driver, show.system, Toward::Down)));
    rows.push(row("face that goes in first, below the face", show.size(seal.stand.reached)));
    rows.push(row("outer face below the face, seated", range(show.size(seal.reading.0), show.size(seal.reading.1))));
    if let Some(shift) = seal.shift {
        rows.push(row("lip moved off the worn track by", show.size(shift)));
    }
    if let Some(speed) = seal.lip_speed {
        rows.push(row("speed of the shaft under the lip", lip_speed(speed, show.system)));
    }
    rows
}

fn lip_speed(run: LipSpeed, system: System) -> String {
    let speed = show_surface_speed(run.speed, system, Toward::Up);
    match run.safe.zip(run.limit) {
        Some((safe, limit)) => format!(
            "{speed}; its elastomer {} to {}",
            show_surface_speed(safe, system, Toward::Down),
            show_surface_speed(limit, system, Toward::Down)
        ),
        None => format!("{speed} (no limit known here)"),
    }
}

fn row(name: &str, value: String) -> [String; 2] {
    [name.to_owned(), value]
}

fn range(low: String, high: String) -> String {
    if low == high { low } else { format!("{low} to {high}") }
}

fn demands(demands: &[Demand], system: System) -> Table<3> {
    let show = |value| words::value(value, system);
    let rows = demands.iter().map(|demand| {
        let wanted = match (&demand.low, &demand.high) {
            (Some(low), Some(high)) => range(show(low), show(high)),
            (Some(low), None) => format!("at least {}", show(low)),
            (None, Some(high)) => format!("at most {}", show(high)),
            (None, None) => String::new(),
        };
        let given = match (&demand.given, demand.met) {
            (Some(given), Some(false)) => format!("{} (not as wanted)", show(given)),
            (Some(given), _) => show(given),
            (None, _) => "not stated".to_owned(),
        };
        [demand.what.to_owned(), wanted, given]
    });
    Table { head: Some(["", "wanted", "this job"].map(str::to_owned)), rows: rows.collect() }
}
