//! Limits of a class, and the clearance of a pair, as text and JSON.

use crate::fit::{FitKind, Limits, clearance_band};
use crate::quantity::{Cases, Nanometres, System, Toward, show_limits, show_size, show_small_length};
use crate::report::Layout;
use crate::report::json::{figures, pretty};
use crate::report::text::{Page, Table};
use serde_json::{Value, json};

/// Limits with the class they were asked for.
pub struct Asked<'a> {
    /// The class as the user would write it.
    pub class: &'a str,
    /// Its limits.
    pub limits: &'a Limits,
}

/// Limits of one class as text, in both systems of units, `system` first.
pub fn limits_text(asked: &Asked<'_>, layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    let nominal = show_size(asked.limits.nominal.length(), system, Toward::Nearest);
    page.flush(&format!("{} at {nominal}", asked.class));
    let rows = [system, other(system)].map(|system| row(asked.limits, system));
    page.table(&Table { head: None, rows: rows.to_vec() });
    page.paragraph(&format!("source: {}", asked.limits.source));
    page.finish()
}

fn row(limits: &Limits, system: System) -> [String; 2] {
    let size = |size: Nanometres| show_size(size.length(), system, Toward::Nearest);
    [show_limits(limits.deviations, system), format!("{} to {}", size(limits.smallest()), size(limits.largest()))]
}

fn other(system: System) -> System {
    match system {
        System::Metric => System::Inch,
        System::Inch => System::Metric,
    }
}

/// Limits of one class as one JSON object, `seatwise.limits/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn limits_json(asked: &Asked<'_>) -> Result<String, serde_json::Error> {
    pretty(&json!({
        "format": "seatwise.limits/1",
        "class": asked.class,
        "nominal_mm": figures(asked.limits.nominal.mm()),
        "lower_um": asked.limits.deviations.lower.um(),
        "upper_um": asked.limits.deviations.upper.um(),
        "source": asked.limits.source.to_string(),
    }))
}

/// A bore and what goes into it.
pub struct Pair<'a> {
    /// The outer part.
    pub bore: Asked<'a>,
    /// The inner part.
    pub inner: Asked<'a>,
}

/// A pair as text: the kind of fit first, then interference in the three cases, then the limits.
pub fn pair_text(pair: &Pair<'_>, layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let band = clearance_band(pair.bore.limits, pair.inner.limits);
    let mut page = Page::new(columns);
    page.flush(&format!("{} with {}: {}", pair.bore.class, pair.inner.class, FitKind::of(&band)));
    let rows = [system, other(system)].map(|system| cases(&band, system));
    let head = ["interference", "tightest", "middle", "loosest"].map(str::to_owned);
    page.table(&Table { head: Some(head), rows: rows.to_vec() });
    page.line("");
    for (name, asked) in [("bore", &pair.bore), ("inner part", &pair.inner)] {
        let [limits, sizes] = row(asked.limits, system);
        page.paragraph(&format!("{name} {}: {limits}, {sizes}; source: {}", asked.class, asked.limits.source));
    }
    page.paragraph("Interference is positive when tight; negative figures are clearance.");
    page.finish()
}

fn cases(band: &Cases<Nanometres>, system: System) -> [String; 4] {
    let shown = band.map(|clearance| show_small_length((-clearance).length(), system, Toward::Nearest));
    [String::new(), shown.tightest, shown.middle, shown.loosest]
}

/// A pair as one JSON object, `seatwise.pair/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn pair_json(pair: &Pair<'_>) -> Result<String, serde_json::Error> {
    let band = clearance_band(pair.bore.limits, pair.inner.limits);
    let member = |asked: &Asked<'_>| -> Value {
        json!({
            "class": asked.class,
            "lower_um": asked.limits.deviations.lower.um(),
            "upper_um": asked.limits.deviations.upper.um(),
            "source": asked.limits.source.to_string(),
        })
    };
    let interference = band.map(|clearance| (-clearance).um());
    pretty(&json!({
        "format": "seatwise.pair/1",
        "nominal_mm": figures(pair.bore.limits.nominal.mm()),
        "bore": member(&pair.bore),
        "inner": member(&pair.inner),
        "kind": FitKind::of(&band).to_string(),
        "interference_um": {
            "tightest": interference.tightest,
            "middle": interference.middle,
            "loosest": interference.loosest,
        },
    }))
}
