//! A result as lines that a reviewer can compare: `path = value`, numbers to five significant figures.

use serde_json::{Map, Value};

/// Longest line on which an object of plain values stands whole.
const COLUMNS: usize = 120;

/// Every value of a document under its path; an object of few plain values, and a list of them, on one line.
pub fn lines(value: &Value) -> String {
    let mut out = String::new();
    add(value, "", &mut out);
    out
}

fn add(value: &Value, path: &str, out: &mut String) {
    let whole = plain(value);
    if let Some(whole) = whole.filter(|whole| !value.is_object() || path.len() + whole.len() <= COLUMNS) {
        out.push_str(&format!("{path} = {whole}\n"));
        return;
    }
    let join = |key: &str| if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") };
    match value {
        Value::Object(map) => map.iter().for_each(|(key, value)| add(value, &join(key), out)),
        Value::Array(list) => list.iter().enumerate().for_each(|(i, value)| add(value, &join(&i.to_string()), out)),
        _ => {}
    }
}

/// The value on one line, unless it holds lists or objects in turn.
fn plain(value: &Value) -> Option<String> {
    match value {
        Value::Null => Some("none".to_owned()),
        Value::Bool(truth) => Some(truth.to_string()),
        Value::Number(number) => Some(rounded(&number.to_string())),
        Value::String(text) => Some(text.clone()),
        Value::Array(list) if list.iter().all(|value| !value.is_object() && !value.is_array()) => {
            Some(list.iter().filter_map(plain).collect::<Vec<_>>().join(", "))
        }
        Value::Object(map) if map.values().all(|value| !value.is_object() && !value.is_array()) => Some(
            map.iter()
                .filter_map(|(key, value)| Some(format!("{key} {}", plain(value)?)))
                .collect::<Vec<_>>()
                .join(", "),
        ),
        _ => None,
    }
}

/// The document without some of its keys, wherever they stand.
pub fn without(value: &Value, keys: &[&str]) -> Value {
    match value {
        Value::Object(map) => {
            let kept = map.iter().filter(|(key, _)| !keys.contains(&key.as_str()));
            Value::Object(kept.map(|(key, value)| (key.clone(), without(value, keys))).collect::<Map<_, _>>())
        }
        Value::Array(list) => Value::Array(list.iter().map(|value| without(value, keys)).collect()),
        _ => value.clone(),
    }
}

/// A text with every number of more than five significant figures rounded to five: the sixth may hang on the machine.
pub fn rounded(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(start) = rest.find(|c: char| c.is_ascii_digit()) {
        let number = &rest[start..];
        let end = end_of_number(number);
        out.push_str(&rest[..start]);
        out.push_str(&figure(&number[..end]));
        rest = &number[end..];
    }
    out + rest
}

/// Where digits, one point, and an exponent end.
fn end_of_number(text: &str) -> usize {
    let digits = |from: usize| text[from..].bytes().take_while(u8::is_ascii_digit).count();
    let mut end = digits(0);
    if text[end..].starts_with('.') && digits(end + 1) > 0 {
        end += 1 + digits(end + 1);
    }
    let sign = usize::from(text[end..].starts_with("e-") || text[end..].starts_with("e+"));
    if text[end..].starts_with('e') && digits(end + 1 + sign) > 0 {
        end += 1 + sign + digits(end + 1 + sign);
    }
    end
}

fn figure(number: &str) -> String {
    let mantissa = number.split('e').next().unwrap_or(number);
    let significant = mantissa.trim_start_matches(['0', '.']).bytes().filter(u8::is_ascii_digit).count();
    if significant <= 5 || !number.contains(['.', 'e']) {
        return number.to_owned();
    }
    number.parse().map_or_else(|_| number.to_owned(), |value: f64| shortest(&format!("{value:.4e}")))
}

/// A number in scientific notation as the shortest decimal of the same value.
fn shortest(scientific: &str) -> String {
    scientific.parse::<f64>().map_or_else(|_| scientific.to_owned(), |value| value.to_string())
}

#[test]
fn numbers_of_any_form_are_rounded_and_nothing_else_changes() {
    let cases = [
        ("0.0123456 m^1 kg^-1", "0.012346 m^1 kg^-1"),
        ("-1.2345678e-5", "-0.000012346"),
        ("at 123456789 and 123456.4", "at 123456789 and 123460"),
        ("6206-2RS, M8, 9.8.", "6206-2RS, M8, 9.8."),
        ("2e3 1.5e-9", "2e3 1.5e-9"),
    ];
    for (text, expected) in cases {
        assert_eq!(rounded(text), expected);
    }
}

#[test]
fn every_value_of_a_document_stands_on_a_line() {
    let value = serde_json::json!({ "a": [{ "b": 1.234_567, "c": null }], "d": [1, 2.5], "e": { "f": [[true]] } });
    assert_eq!(lines(&value), "a.0 = b 1.2346, c none\nd = 1, 2.5\ne.f.0 = true\n");
    assert_eq!(lines(&without(&value, &["b", "d", "e"])), "a.0 = c none\n");
}
