use crate::plan::caution_of_hazard;
use crate::quantity::System;
use crate::report::json::{figures, pretty};
use crate::report::text::{Page, Table};
use crate::report::words;
use crate::stock::medium::{Direction, Medium, Transfer};
use serde_json::{Value, json};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::degree_celsius;

/// A line for each medium: what it does, how cold or hot, and how fast.
pub fn media_text(media: &[Medium], columns: usize) -> String {
    let mut page = Page::new(columns);
    let rows = media
        .iter()
        .map(|medium| [medium.id().to_owned(), direction(medium).to_owned(), temperature(medium), transfer(medium)])
        .collect();
    let head = ["id", "", "temperature", "film coefficient or power"].map(str::to_owned);
    page.table(&Table { head: Some(head), rows });
    page.line("");
    page.paragraph("`seatwise media ID` shows one with its dangers, notes and sources.");
    page.finish()
}

/// One medium whole.
pub fn medium_text(medium: &Medium, columns: usize) -> String {
    let mut page = Page::new(columns);
    page.line(&format!("{} ({})", medium.id(), direction(medium)));
    page.flush(&format!("also called: {}", medium.names().collect::<Vec<_>>().join(", ")));
    page.line("");
    let rows = vec![["temperature".to_owned(), temperature(medium)], ["heat transfer".to_owned(), transfer(medium)]];
    page.table(&Table { head: None, rows });
    if !medium.hazards().is_empty() {
        page.heading("Dangers");
    }
    for hazard in medium.hazards() {
        let caution = caution_of_hazard(*hazard);
        let text = words::sentence(caution.sentence(), System::Metric);
        page.hanging(&format!("{}: ", caution.signal().to_uppercase()), &text);
        page.small(&format!("[{}; {}]", caution.code(), caution.source()));
    }
    if medium.notes().next().is_some() {
        page.heading("Notes");
    }
    for note in medium.notes() {
        page.paragraph(note);
    }
    page.heading("Sources");
    for (what, provenance) in medium.sources() {
        page.paragraph(&format!("{what}: {provenance}"));
    }
    page.finish()
}

fn direction(medium: &Medium) -> &'static str {
    match medium.direction() {
        Direction::Chill => "chills",
        Direction::Warm => "warms",
        Direction::Air => "air",
    }
}

fn temperature(medium: &Medium) -> String {
    let range = medium.temperature();
    let celsius = |t: uom::si::f64::ThermodynamicTemperature| format!("{:.1}", t.get::<degree_celsius>());
    let span = format!("{} to {} °C", celsius(range.low), celsius(range.high));
    range.default.map_or_else(|| format!("to be stated, {span}"), |usual| format!("{} °C ({span})", celsius(usual)))
}

fn transfer(medium: &Medium) -> String {
    match medium.transfer() {
        Transfer::Film(film) => format!(
            "{:.0} to {:.0} W/(m²·K){}",
            film.low.get::<watt_per_square_meter_kelvin>(),
            film.high.get::<watt_per_square_meter_kelvin>(),
            if film.radiates { " and radiation" } else { "" }
        ),
        Transfer::Power(power) => format!("{:.0} to {:.0} W", power.low.get::<watt>(), power.high.get::<watt>()),
    }
}

/// Every medium as one JSON object, `seatwise.media/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn media_json(media: &[Medium]) -> Result<String, serde_json::Error> {
    pretty(&json!({ "format": "seatwise.media/1", "media": media.iter().map(record).collect::<Vec<_>>() }))
}

/// One medium as one JSON object, `seatwise.medium/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn medium_json(medium: &Medium) -> Result<String, serde_json::Error> {
    let mut value = record(medium);
    if let Some(object) = value.as_object_mut() {
        object.insert("format".to_owned(), json!("seatwise.medium/1"));
    }
    pretty(&value)
}

fn record(medium: &Medium) -> Value {
    let range = medium.temperature();
    let celsius = |t: uom::si::f64::ThermodynamicTemperature| figures(t.get::<degree_celsius>());
    let film = medium.film();
    json!({
        "id": medium.id(),
        "names": medium.names().collect::<Vec<_>>(),
        "direction": direction(medium),
        "default_c": range.default.map(celsius),
        "low_c": celsius(range.low),
        "high_c": celsius(range.high),
        "film_low_w_m2k": film.map(|film| figures(film.low.get::<watt_per_square_meter_kelvin>())),
        "film_high_w_m2k": film.map(|film| figures(film.high.get::<watt_per_square_meter_kelvin>())),
        "radiates": film.map(|film| film.radiates),
        "hazards": medium.hazards().iter().map(|hazard| hazard.code()).collect::<Vec<_>>(),
        "notes": medium.notes().collect::<Vec<_>>(),
        "sources": medium.sources().map(|(what, p)| (what.to_owned(), json!(p.to_string()))).collect::<serde_json::Map<_, _>>(),
    })
}
