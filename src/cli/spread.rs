//! Values from one to another in steps, as a flag states them: "60 °C..120 °C/7", or "N7|P7".

use super::failure::Failure;

/// Most values that one flag may ask for.
const MOST: usize = 1000;

/// Decimals that a value between the ends keeps beyond those that were typed.
const MORE_DECIMALS: usize = 3;

/// The values of `text`, each as it would be typed into a job.
pub(super) fn values(flag: &str, text: &str) -> Result<Vec<String>, Failure> {
    let Some((from, rest)) = text.split_once("..") else {
        let list: Vec<String> = text.split('|').map(|value| value.trim().to_owned()).collect();
        let sound = list.iter().all(|value| !value.is_empty());
        return if sound { Ok(list) } else { Err(wrong(flag, text, "one of its values is empty")) };
    };
    let Some((to, steps)) = rest.rsplit_once('/') else {
        return Err(wrong(flag, text, "it does not say in how many values"));
    };
    let count: usize = steps.trim().parse().map_err(|_| wrong(flag, text, "the number of values is not whole"))?;
    if !(2..=MOST).contains(&count) {
        return Err(wrong(flag, text, &format!("{count} values are asked for, and 2 to {MOST} are allowed")));
    }
    let (from, to) = (Quantity::read(from), Quantity::read(to));
    let (Some(from), Some(to)) = (from, to) else {
        return Err(wrong(flag, text, "an end of the range does not begin with a number"));
    };
    if from.unit != to.unit {
        let message = format!("its ends have different units, \"{}\" and \"{}\"", from.unit, to.unit);
        return Err(wrong(flag, text, &message));
    }
    Ok(between(&from, &to, count))
}

fn between(from: &Quantity<'_>, to: &Quantity<'_>, count: usize) -> Vec<String> {
    let places = from.places.max(to.places) + MORE_DECIMALS;
    let value = |i: usize| from.number + (to.number - from.number) * i as f64 / (count - 1) as f64;
    let written = |i: usize| {
        let mut text = format!("{:.places$}", value(i) + 0.0);
        if text.contains('.') {
            text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
        }
        if text == "-0" { "0".to_owned() } else { text }
    };
    (0..count).map(|i| format!("{}{}{}", written(i), if from.unit.is_empty() { "" } else { " " }, from.unit)).collect()
}

fn wrong(flag: &str, text: &str, what: &str) -> Failure {
    Failure::plain(
        format!("{flag}: \"{text}\" is no range: {what}"),
        "write \"60 °C..120 °C/7\" for seven values from one to the other, or \"N7|P7\" for these values",
    )
}

/// The numbers of some values with their common unit; none where one is no number, or their units differ.
pub(super) fn numbers(values: &[String]) -> Option<(Vec<f64>, String)> {
    let read: Vec<Quantity<'_>> = values.iter().map(|value| Quantity::read(value)).collect::<Option<_>>()?;
    let unit = read.first()?.unit;
    let alike = read.iter().all(|quantity| quantity.unit == unit && !unit.starts_with('/'));
    alike.then(|| (read.iter().map(|quantity| quantity.number).collect(), unit.to_owned()))
}

/// A number with what follows it.
struct Quantity<'t> {
    number: f64,
    places: usize,
    unit: &'t str,
}

impl<'t> Quantity<'t> {
    fn read(text: &'t str) -> Option<Self> {
        let text = text.trim();
        let end =
            text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '+' | '-'))).unwrap_or(text.len());
        let typed = text[..end].replace(',', ".");
        let number: f64 = typed.parse().ok().filter(|number: &f64| number.is_finite())?;
        let places = typed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        Some(Self { number, places, unit: text[end..].trim() })
    }
}

#[cfg(test)]
mod tests {
    use super::values;

    #[test]
    fn a_range_has_its_ends_and_what_lies_between_in_the_unit_as_typed() {
        assert_eq!(values("--over", "60 °C..120 °C/4").unwrap(), ["60 °C", "80 °C", "100 °C", "120 °C"]);
        assert_eq!(values("--over", "-0.5 thou..0.5 thou/3").unwrap(), ["-0.5 thou", "0 thou", "0.5 thou"]);
        assert_eq!(values("--over", "1 in..2 in/4").unwrap(), ["1 in", "1.333 in", "1.667 in", "2 in"]);
        assert_eq!(values("--over", "N7|P7").unwrap(), ["N7", "P7"]);
        assert_eq!(values("--over", "0.1..0.2/2").unwrap(), ["0.1", "0.2"]);
    }

    #[test]
    fn what_is_no_range_is_refused() {
        for text in [
            "",
            "N7||P7",
            "60 °C..120 °C",
            "60 °C..120 °C/1",
            "60 °C..120 °C/5000",
            "60 °C..120 °C/x",
            "60 °C..120 °F/3",
            "a..b/3",
            "1e999 m..2 m/3",
        ] {
            assert!(values("--over", text).is_err(), "{text}");
        }
    }
}
