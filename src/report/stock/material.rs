use crate::quantity::{REFERENCE_TEMPERATURE_K, ThermodynamicTemperature};
use crate::report::json::{figures, pretty};
use crate::report::text::{Page, Table};
use crate::stock::curve::{Curve, CurveError};
use crate::stock::material::{Material, StrengthKind, TemperatureLimit};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, megapascal};
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

/// A line for each material: id, strength, modulus, coefficient, and what it is.
pub fn materials_text(materials: &[Material], columns: usize) -> String {
    let mut page = Page::new(columns);
    let rows = materials
        .iter()
        .map(|material| {
            [
                material.id().to_owned(),
                format!("{:.1}", mean_expansion(material) * 1e6),
                format!("{:.0}", material.elastic_modulus().get::<gigapascal>()),
                format!("{:.0}", material.strength().value.get::<megapascal>()),
                format!("{:.0} to {:.0}", limit_c(material.coldest()), limit_c(material.hottest())),
            ]
        })
        .collect();
    let head = ["id", "expansion µm/(m·K)", "modulus GPa", "strength MPa", "allowed °C"].map(str::to_owned);
    page.table(&Table { head: Some(head), rows });
    page.line("");
    page.paragraph(
        "Expansion is the mean from 20 to 100 °C, or to the end of the table. `seatwise materials ID` shows a \
                    material whole, with the source of each value; --at gives it at one temperature.",
    );
    page.finish()
}

/// Every material as one JSON object, `seatwise.materials/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn materials_json(materials: &[Material]) -> Result<String, serde_json::Error> {
    let list: Vec<Value> = materials
        .iter()
        .map(|material| json!({ "id": material.id(), "names": material.names().collect::<Vec<_>>(), "about": material.about() }))
        .collect();
    pretty(&json!({ "format": "seatwise.materials/1", "materials": list }))
}

/// One material whole, with the source of each value.
pub fn material_text(material: &Material, columns: usize) -> String {
    let mut page = Page::new(columns);
    page.flush(&format!("{}: {}", material.id(), material.about()));
    page.flush(&format!("also called: {}", material.names().collect::<Vec<_>>().join(", ")));
    page.line("");
    let strength = material.strength();
    let rows = vec![
        row("density", format!("{:.0} kg/m³", material.density().get::<kilogram_per_cubic_meter>())),
        row("elastic modulus at 20 °C", format!("{:.1} GPa", material.elastic_modulus().get::<gigapascal>())),
        row("Poisson's ratio", format!("{}", material.poisson_ratio())),
        row("strength", format!("{:.0} MPa ({})", strength.value.get::<megapascal>(), kind(strength.kind))),
        row(
            "emissivity",
            format!("{} to {} ({})", material.emissivity().low, material.emissivity().high, material.surface()),
        ),
        row("coldest", limit(material.coldest())),
        row("hottest", limit(material.hottest())),
    ];
    page.table(&Table { head: None, rows });
    page.heading("Change of length from 20 °C, heat capacity, conductivity");
    page.table(&curves(material));
    page.heading("Care");
    for caution in material.cautions() {
        page.paragraph(&format!("{} [{}]", caution.text, caution.provenance));
    }
    page.heading("Sources");
    for (property, provenance) in material.sources() {
        page.paragraph(&format!("{}: {provenance}", property.replace('_', " ")));
    }
    page.finish()
}

fn row(name: &str, value: String) -> [String; 2] {
    [name.to_owned(), value]
}

/// What a strength is, in words.
fn kind(kind: StrengthKind) -> &'static str {
    match kind {
        StrengthKind::Proof02 => "0.2 % proof stress",
        StrengthKind::Proof01 => "0.1 % proof stress",
        StrengthKind::Yield => "yield",
        StrengthKind::TensileBrittle => "tensile strength; it breaks without yielding",
        StrengthKind::FlexuralBrittle => "bending strength; it breaks without yielding",
    }
}

fn limit(limit: &TemperatureLimit) -> String {
    format!("{:.0} °C: {}", limit_c(limit), limit.reason)
}

fn limit_c(limit: &TemperatureLimit) -> f64 {
    limit.temperature.get::<degree_celsius>()
}

/// Rows of the expansion table with the other two properties read at the same temperatures.
fn curves(material: &Material) -> Table<4> {
    let rows = material.expansion().points().map(|(t, strain)| {
        let read = |curve: &Curve| curve.at(t).map_or_else(|_| "-".to_owned(), |value| format!("{value:.1}"));
        [
            format!("{:.1} °C", t - 273.15),
            format!("{:.3} µm/mm", strain * 1e3),
            read(material.heat_capacity()),
            read(material.conductivity()),
        ]
    });
    let head = ["", "dL/L", "c, J/(kg·K)", "k, W/(m·K)"].map(str::to_owned);
    Table { head: Some(head), rows: rows.collect() }
}

/// Mean coefficient from 20 °C to 100 °C, or to the end of the table.
fn mean_expansion(material: &Material) -> f64 {
    let to = material.expansion().range().1.min(373.15);
    material.expansion().at(to).map_or(0.0, |strain| strain / (to - REFERENCE_TEMPERATURE_K))
}

/// One material as one JSON object, `seatwise.material/1`.
///
/// # Errors
/// None in practice: every number is finite.
pub fn material_json(material: &Material) -> Result<String, serde_json::Error> {
    let points = |curve: &Curve, value: &str| -> Vec<Value> {
        curve.points().map(|(t, y)| json!({ "t_k": figures(t), value: figures(y) })).collect()
    };
    let sources: BTreeMap<&str, String> =
        material.sources().map(|(property, provenance)| (property, provenance.to_string())).collect();
    pretty(&json!({
        "format": "seatwise.material/1",
        "id": material.id(),
        "names": material.names().collect::<Vec<_>>(),
        "about": material.about(),
        "family": material.family().to_string(),
        "density_kg_m3": figures(material.density().get::<kilogram_per_cubic_meter>()),
        "e_gpa": figures(material.elastic_modulus().get::<gigapascal>()),
        "poisson_ratio": material.poisson_ratio(),
        "strength_mpa": figures(material.strength().value.get::<megapascal>()),
        "brittle": material.strength().kind.is_brittle(),
        "emissivity": { "low": material.emissivity().low, "high": material.emissivity().high },
        "coldest_c": figures(limit_c(material.coldest())),
        "coldest_reason": material.coldest().reason,
        "hottest_c": figures(limit_c(material.hottest())),
        "hottest_reason": material.hottest().reason,
        "expansion": points(material.expansion(), "dl_l"),
        "heat_capacity": points(material.heat_capacity(), "c_j_kgk"),
        "conductivity": points(material.conductivity(), "k_w_mk"),
        "sources": sources,
    }))
}

/// Properties at one temperature.
struct At {
    celsius: f64,
    dl_l: f64,
    c_j_kgk: f64,
    k_w_mk: f64,
    e_gpa: f64,
}

impl At {
    fn read(material: &Material, temperature: ThermodynamicTemperature) -> Result<Self, CurveError> {
        let t = temperature.get::<kelvin>();
        Ok(Self {
            celsius: temperature.get::<degree_celsius>(),
            dl_l: material.expansion().at(t)?,
            c_j_kgk: material.heat_capacity().at(t)?,
            k_w_mk: material.conductivity().at(t)?,
            e_gpa: material.elastic_modulus_at(temperature)?.get::<gigapascal>(),
        })
    }
}

/// Properties of a material at one temperature, as text.
///
/// # Errors
/// [`CurveError::Outside`] beyond one of its tables.
pub fn material_at_text(
    material: &Material,
    temperature: ThermodynamicTemperature,
    columns: usize,
) -> Result<String, CurveError> {
    let at = At::read(material, temperature)?;
    let mut page = Page::new(columns);
    page.line(&format!("{} at {:.1} °C", material.id(), at.celsius));
    let rows = vec![
        row("change of length from 20 °C", format!("{:.4} µm/mm", at.dl_l * 1e3)),
        row("heat capacity", format!("{:.1} J/(kg·K)", at.c_j_kgk)),
        row("conductivity", format!("{:.2} W/(m·K)", at.k_w_mk)),
        row("elastic modulus", format!("{:.1} GPa", at.e_gpa)),
    ];
    page.table(&Table { head: None, rows });
    Ok(page.finish())
}

/// Properties of a material at one temperature, as one JSON object, `seatwise.material-at/1`.
///
/// # Errors
/// [`CurveError::Outside`] beyond one of its tables.
pub fn material_at_json(material: &Material, temperature: ThermodynamicTemperature) -> Result<String, CurveError> {
    let at = At::read(material, temperature)?;
    let value = json!({
        "format": "seatwise.material-at/1",
        "id": material.id(),
        "t_c": figures(at.celsius),
        "dl_l_from_20c": figures(at.dl_l),
        "c_j_kgk": figures(at.c_j_kgk),
        "k_w_mk": figures(at.k_w_mk),
        "e_gpa": figures(at.e_gpa),
        "density_kg_m3": figures(material.density().get::<kilogram_per_cubic_meter>()),
        "poisson_ratio": material.poisson_ratio(),
    });
    Ok(format!("{value:#}\n"))
}
