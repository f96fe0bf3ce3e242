//! A material: a name from the library, or values given in the job.

use super::entry::AnyValue;
use super::section::{Notes, Section};
use crate::quantity::{self, Entered, QuantityError};
use crate::stock::Library;
use crate::stock::material::{Bounds, Family, Material, RoomValues, Strength, StrengthKind, from_room_values};

const WANTED: &str = "name a material (`seatwise materials` lists them), or give your own values in { }";
const KEYS: [&str; 13] = [
    "name",
    "family",
    "density",
    "modulus",
    "poisson",
    "strength",
    "strength_kind",
    "expansion",
    "heat_capacity",
    "conductivity",
    "coldest",
    "hottest",
    "source",
];

/// The material under `key`: a name, or a table of room-temperature values.
pub(super) fn material_at(section: &Section<'_>, key: &str, library: &Library, notes: &mut Notes) -> Option<Material> {
    if section.is_table(key) { own_material(section, key, notes) } else { material_named(section, key, library, notes) }
}

/// The material that is named under `key`.
pub(super) fn material_named(
    section: &Section<'_>,
    key: &str,
    library: &Library,
    notes: &mut Notes,
) -> Option<Material> {
    let words = section.words(key, WANTED, notes)?;
    match library.material(words.text) {
        Ok(material) => Some(material),
        Err(error) => {
            notes.problem(words.at, format!("`{}`: {error}", section.path(key)), WANTED);
            None
        }
    }
}

/// The user's own material, by values that hold at room temperature.
fn own_material(section: &Section<'_>, key: &str, notes: &mut Notes) -> Option<Material> {
    let table = section.section(key, &KEYS, notes)?;
    let name = table.words("name", "give it a name", notes).map_or("own material", |words| words.text);
    let family = family(&table, notes);
    let density = value(&table, "density", quantity::density, notes);
    let elastic_modulus = value(&table, "modulus", quantity::pressure, notes);
    let poisson_ratio = value(&table, "poisson", quantity::number, notes);
    let strength = value(&table, "strength", quantity::pressure, notes);
    let kind = strength_kind(&table, family, notes);
    let mean_expansion = value(&table, "expansion", quantity::expansion_coefficient, notes);
    let heat_capacity = value(&table, "heat_capacity", quantity::heat_capacity, notes);
    let conductivity = value(&table, "conductivity", quantity::conductivity, notes);
    let coldest = table.quantity("coldest", quantity::temperature, notes).map(|found| found.value);
    let hottest = table.quantity("hottest", quantity::temperature, notes).map(|found| found.value);
    let source = table.words("source", "name where the values come from", notes).map(|words| words.text.to_owned());
    let values = RoomValues {
        family: family?,
        density: density?,
        elastic_modulus: elastic_modulus?,
        poisson_ratio: poisson_ratio?,
        strength: Strength { value: strength?, kind: kind? },
        mean_expansion: mean_expansion?,
        heat_capacity: heat_capacity?,
        conductivity: conductivity?,
        emissivity: None::<Bounds>,
        coldest,
        hottest,
        source,
    };
    match from_room_values(name, &values) {
        Ok(material) => Some(material),
        Err(error) => {
            notes.problem(table.at.clone(), error.to_string(), "check the values and their units");
            None
        }
    }
}

const BRITTLE_WHY: &str = "not stated; cast iron and ceramic may crack without warning, common practice, no published source; \
     state strength_kind = \"0.2 % proof\" for nodular iron or another that yields";

/// What the strength under `strength` means.
fn strength_kind(table: &Section<'_>, family: Option<Family>, notes: &mut Notes) -> Option<StrengthKind> {
    const KEY: &str = "strength_kind";
    if !table.has(KEY) {
        if !matches!(family, Some(Family::CastIron | Family::Ceramic)) {
            return Some(StrengthKind::Proof02);
        }
        notes.assume(table.path(KEY), AnyValue::Text("tensile, brittle".to_owned()), BRITTLE_WHY);
        return Some(StrengthKind::TensileBrittle);
    }
    let words = table.words(KEY, "write what the strength means, such as \"0.2 % proof\"", notes)?;
    match StrengthKind::read(words.text.trim()) {
        Ok(kind) => Some(kind),
        Err(known) => {
            let message = format!("`{}` cannot be \"{}\"", table.path(KEY), words.text);
            notes.problem(words.at, message, format!("write {known}"));
            None
        }
    }
}

/// A value that an own material must have.
fn value<Q>(
    table: &Section<'_>,
    key: &str,
    parse: fn(&str) -> Result<Entered<Q>, QuantityError>,
    notes: &mut Notes,
) -> Option<Q> {
    table.missing(
        key,
        "an own material needs its name, family, density, modulus, poisson, strength, expansion, \
                        heat_capacity and conductivity",
        notes,
    );
    let words = table.words(key, "write the value with its unit, in quotes", notes)?;
    match parse(words.text) {
        Ok(entered) => {
            table.enter(key, words.text, AnyValue::Text(words.text.to_owned()), entered.system, notes);
            Some(entered.value)
        }
        Err(error) => {
            notes.problem(words.part(error.at), format!("`{}`: {}", table.path(key), error.problem), error.help);
            None
        }
    }
}

fn family(table: &Section<'_>, notes: &mut Notes) -> Option<Family> {
    let families = [
        Family::Steel,
        Family::CastIron,
        Family::LightAlloy,
        Family::CopperAlloy,
        Family::Titanium,
        Family::Ceramic,
        Family::Polymer,
    ];
    let names = families.map(|family| family.to_string());
    let wanted = format!("write family = one of: {}", names.join(", "));
    table.missing("family", &wanted, notes);
    let words = table.words("family", &wanted, notes)?;
    let found = families.into_iter().find(|family| family.to_string().eq_ignore_ascii_case(words.text.trim()));
    if found.is_none() {
        notes.problem(words.at, format!("there is no family `{}`", words.text), wanted);
    }
    found
}
