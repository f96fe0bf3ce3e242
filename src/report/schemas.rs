//! JSON Schemas of what the program prints, by name.
//!
//! The schemas of a plan and of a section are made from the types that are printed; those here are written down, and
//! `tests/schema.rs` holds what is printed to them, without a field more or less.

use super::json::{self, pretty};
use super::{exercise, refusal, section};
use serde_json::{Map, Value, json};

/// A schema as JSON text.
type Schema = fn() -> Result<String, serde_json::Error>;

/// Every schema with its name: that of the format without `seatwise.` and `/1`.
const ALL: &[(&str, Schema)] = &[
    ("plan", json::schema),
    ("section", section::schema),
    ("seal", json::seal_schema),
    ("exercise", exercise::schema),
    ("options", || pretty(&options())),
    ("sweep", || pretty(&sweep())),
    ("compare", || pretty(&compare())),
    ("batch", || pretty(&batch())),
    ("error", refusal::schema),
];

/// The names, as [`schema`] takes them.
pub fn names() -> impl Iterator<Item = &'static str> {
    ALL.iter().map(|(name, _)| *name)
}

/// The schema of this name; none where there is no such format.
pub fn schema(name: &str) -> Option<Result<String, serde_json::Error>> {
    ALL.iter().find(|(known, _)| *known == name).map(|(_, schema)| schema())
}

/// A document of a format.
fn document(format: &str, about: &str, fields: &[(&str, Value)]) -> Value {
    let mut all = vec![("format", json!({ "const": format }))];
    all.extend_from_slice(fields);
    let mut schema = Map::new();
    schema.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
    schema.insert("title".to_owned(), json!(format));
    schema.insert("description".to_owned(), json!(about));
    if let Value::Object(object) = object(&all) {
        schema.extend(object);
    }
    Value::Object(schema)
}

/// An object with these fields, all of them and no others.
fn object(fields: &[(&str, Value)]) -> Value {
    let properties: Map<String, Value> =
        fields.iter().map(|(name, value)| ((*name).to_owned(), value.clone())).collect();
    let required: Vec<&str> = fields.iter().map(|(name, _)| *name).collect();
    json!({ "type": "object", "properties": properties, "required": required, "additionalProperties": false })
}

fn list(of: &Value) -> Value {
    json!({ "type": "array", "items": of })
}

fn text() -> Value {
    json!({ "type": "string" })
}

fn number() -> Value {
    json!({ "type": "number" })
}

fn whole() -> Value {
    json!({ "type": "integer", "minimum": 0 })
}

fn truth() -> Value {
    json!({ "type": "boolean" })
}

fn or_null(schema: &Value) -> Value {
    json!({ "anyOf": [schema, { "type": "null" }] })
}

fn among(words: &[&str]) -> Value {
    json!({ "enum": words })
}

fn verdict() -> Value {
    among(&["drops in", "some will not", "press", "do not"])
}

fn seat() -> Value {
    among(&["housing", "shaft"])
}

/// The main results of a seat, as in the CSV of a plan.
fn results() -> Value {
    let maybe = or_null(&number());
    let mut fields = vec![
        ("title".to_owned(), or_null(&text())),
        ("reference".to_owned(), or_null(&text())),
        ("seat".to_owned(), seat()),
        ("verdict".to_owned(), verdict()),
        ("nominal_mm".to_owned(), number()),
    ];
    for name in ["interference_um", "at_bore_clearance_um", "at_bore_force_n", "press_force_n", "window_s"] {
        let of = if name == "window_s" { &maybe } else { &number() };
        fields.extend(["tightest", "middle", "loosest"].map(|case| (format!("{name}_{case}"), of.clone())));
    }
    for name in ["chill", "warm"] {
        fields.push((format!("{name}_medium"), or_null(&text())));
        fields.extend(["hold_s", "end_c"].map(|what| (format!("{name}_{what}"), maybe.clone())));
    }
    fields.extend(["free_in_seat_s_tightest", "lock_c_tightest"].map(|name| (name.to_owned(), maybe.clone())));
    let fields: Vec<(&str, Value)> = fields.iter().map(|(name, value)| (name.as_str(), value.clone())).collect();
    object(&fields)
}

fn options() -> Value {
    let maybe = or_null(&number());
    let used = object(&[
        ("part", text()),
        ("medium", text()),
        ("medium_c", maybe.clone()),
        ("setting_c", maybe.clone()),
        ("least_setting_c", maybe.clone()),
        ("hold_s", maybe.clone()),
        ("end_c", maybe.clone()),
        ("coolant_kg", maybe.clone()),
    ]);
    let share = object(&[
        ("drops_in", number()),
        ("drops_in_low", number()),
        ("drops_in_high", number()),
        ("tightest_clearance_um", number()),
        ("tightest_force_n", number()),
    ]);
    let caution = object(&[
        ("code", text()),
        ("level", among(&["danger", "warning", "caution", "note"])),
        ("signal", among(&["danger", "warning", "caution", "notice", "note"])),
        ("text", text()),
        ("source", text()),
    ]);
    let way = object(&[
        ("rank", whole()),
        ("way", text()),
        ("verdict", verdict()),
        ("reason", or_null(&text())),
        ("chill", or_null(&used)),
        ("warm", or_null(&used)),
        ("ready_after_s", maybe.clone()),
        ("clearance_um", maybe.clone()),
        ("in_hand_s", maybe.clone()),
        ("free_in_seat_s", maybe.clone()),
        ("force_n", maybe),
        ("comfortable", truth()),
        ("chilling_shortens", truth()),
        ("danger", or_null(&among(&["none", "danger", "warning", "caution", "note"]))),
        ("share", or_null(&share)),
        ("cautions", list(&caution)),
    ]);
    let seat = object(&[
        ("seat", seat()),
        ("placing_clearance_um", number()),
        ("pairs_left_out", whole()),
        ("ways", list(&way)),
    ]);
    let job = object(&[("title", text()), ("reference", or_null(&text())), ("revision", or_null(&text()))]);
    let aim = object(&[("share", number()), ("seed", whole()), ("draws", whole())]);
    document(
        "seatwise.options/1",
        "The ways of each seat, best first. Temperatures in °C, times in s, clearances in µm, forces in N. `aim` is null where the \
         tightest case counts; else clearance, times and force are those of the part that stands for the share.",
        &[
            ("job", job),
            ("rule", text()),
            ("aim", or_null(&aim)),
            ("comfortable", object(&[("in_hand_s", number()), ("free_in_seat_s", number())])),
            ("seats", list(&seat)),
        ],
    )
}

fn sweep() -> Value {
    let step = object(&[
        ("values", json!({ "type": "object", "additionalProperties": { "type": "string" } })),
        ("verdict", verdict()),
        ("reason", or_null(&text())),
        ("cautions", list(&text())),
        ("seats", list(&results())),
    ]);
    document(
        "seatwise.sweep/1",
        "Plans of one job with other values at a key or two; the last key of `over` changes from step to step.",
        &[("title", text()), ("over", list(&text())), ("steps", list(&step))],
    )
}

fn compare() -> Value {
    let plan = object(&[("name", text()), ("verdict", verdict()), ("cautions", list(&text()))]);
    let seat = object(&[("seat", seat()), ("differs", list(&text())), ("plans", list(&or_null(&results())))]);
    document(
        "seatwise.compare/1",
        "Several plans side by side; `differs` names the results of a seat that are not the same in all of them.",
        &[("plans", list(&plan)), ("seats", list(&seat))],
    )
}

fn batch() -> Value {
    let mistake = object(&[("column", or_null(&text())), ("message", text()), ("help", text())]);
    let common = [("title", text()), ("reference", or_null(&text()))];
    let fields = |status: &str, more: &[(&str, Value)]| {
        let mut all = vec![("format", json!({ "const": "seatwise.batch/1" })), ("status", json!({ "const": status }))];
        all.extend_from_slice(&common);
        all.extend_from_slice(more);
        object(&all)
    };
    let planned = [
        ("verdict", verdict()),
        ("reason", or_null(&text())),
        ("cautions", list(&text())),
        ("seats", list(&results())),
    ];
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "seatwise.batch/1",
        "description": "One line of the result: a job that was planned, or a row that could not be.",
        "oneOf": [fields("planned", &planned), fields("error", &[("errors", list(&mistake))])],
    })
}
