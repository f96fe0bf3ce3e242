//! How the quantities of a job scatter.

use super::entry::AnyValue;
use super::scatter::{Form, NormalSize, Scatter, SizeSpread, Spread, Within};
use super::section::{Notes, Section, Words, nearest};
use crate::quantity::{self, Length};
use uom::si::length::{micrometer, millimeter};
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::time::second;

pub(super) const KEYS: [&str; 10] =
    ["sizes", "outside", "bore", "housing", "shaft", "medium", "hold", "carry", "film", "friction"];

/// Smallest and largest capability index that is read.
///
/// Below 0.3 more than a third of the parts would lie beyond the limits; above 5 the size is as good as fixed.
const CAPABILITY: (f64, f64) = (0.3, 5.0);
/// Largest spread of a medium either way, K.
const MEDIUM_K: f64 = 50.0;
/// Largest spread of a time either way, s.
const LONGEST_S: f64 = 24.0 * 3600.0;
/// Sizes in one list of measured values.
const MOST_MEASURED: usize = 10_000;

const SIZE_WANTED: &str = "write \"uniform\", \"normal\", \"fixed\", { shape = \"normal\", capability = \"1.33\" } or \
                           { measured = [\"61.994 mm\", \"61.991 mm\"] }";
const FORM_WANTED: &str = "write \"uniform\", \"normal\", \"fixed\" or { shape = \"normal\", capability = \"1.33\" }";
const SHAPES: [&str; 3] = ["uniform", "normal", "fixed"];

/// The whole table; `None` when a value of it was refused.
pub(super) fn scatter(section: &Section<'_>, notes: &mut Notes) -> Option<Scatter> {
    let before = notes.problems.len();
    let found = Scatter {
        sizes: size(section, "sizes", notes),
        outside: size(section, "outside", notes),
        bore: size(section, "bore", notes),
        housing: size(section, "housing", notes),
        shaft: size(section, "shaft", notes),
        medium: medium(section, notes),
        hold: time(section, "hold", notes),
        carry: time(section, "carry", notes),
        film: form(section, "film", notes),
        friction: form(section, "friction", notes),
    };
    (notes.problems.len() == before).then_some(found)
}

fn size(section: &Section<'_>, key: &str, notes: &mut Notes) -> Option<SizeSpread> {
    if !section.has(key) {
        return None;
    }
    if !section.is_table(key) {
        return Some(match shape(section, key, SIZE_WANTED, notes)? {
            Form::Fixed => SizeSpread::Fixed,
            Form::Uniform => SizeSpread::Uniform,
            Form::Normal { capability } => normal(capability),
        });
    }
    let table = section.section(key, &["shape", "capability", "beyond_limits", "mean", "measured"], notes)?;
    if table.has("measured") {
        return measured(&table, notes);
    }
    match form_of(&table, notes)? {
        Form::Fixed => Some(SizeSpread::Fixed),
        Form::Uniform => Some(SizeSpread::Uniform),
        Form::Normal { capability } => {
            let unsorted = unsorted(&table, notes)?;
            let mean = if table.has("mean") { Some(table.small_length("mean", notes)?.value) } else { None };
            Some(SizeSpread::Normal(NormalSize { capability, unsorted, mean }))
        }
    }
}

fn normal(capability: f64) -> SizeSpread {
    SizeSpread::Normal(NormalSize { capability, unsorted: false, mean: None })
}

/// Whether parts beyond their limits are fitted as well.
fn unsorted(table: &Section<'_>, notes: &mut Notes) -> Option<bool> {
    let wanted = "write \"sorted out\" when every part is measured, or \"fitted\" when none is";
    if !table.has("beyond_limits") {
        return Some(false);
    }
    let words = table.words("beyond_limits", wanted, notes)?;
    echo(table, "beyond_limits", &words, notes);
    match words.text.trim() {
        "sorted out" => Some(false),
        "fitted" => Some(true),
        other => {
            let message = format!("`{}` cannot be \"{other}\"", table.path("beyond_limits"));
            notes.problem(words.at, message, wanted);
            None
        }
    }
}

fn measured(table: &Section<'_>, notes: &mut Notes) -> Option<SizeSpread> {
    let words = table.word_list("measured", SIZE_WANTED, notes)?;
    let path = table.path("measured");
    if words.len() < 2 || words.len() > MOST_MEASURED {
        let message = format!("`{path}` has {} sizes but must have from 2 to {MOST_MEASURED}", words.len());
        notes.problem(table.place("measured"), message, "list the sizes at 20 °C, one for each part measured");
        return None;
    }
    let read = |word: &Words<'_>, notes: &mut Notes| match quantity::length(word.text) {
        Ok(entered) => Some(entered.value),
        Err(error) => {
            notes.problem(word.at.clone(), format!("`{path}`: {}", error.problem), error.help);
            None
        }
    };
    let sizes: Vec<Option<Length>> = words.iter().map(|word| read(word, notes)).collect();
    let sizes: Vec<Length> = sizes.into_iter().collect::<Option<_>>()?;
    let (least, most) = sizes.iter().fold((f64::INFINITY, 0.0_f64), |(least, most), size| {
        (least.min(size.get::<millimeter>()), most.max(size.get::<millimeter>()))
    });
    let said = format!("{} sizes, {least:.4} mm to {most:.4} mm", sizes.len());
    table.enter("measured", &format!("{} sizes", sizes.len()), AnyValue::Text(said), None, notes);
    Some(SizeSpread::Measured(sizes))
}

fn medium(section: &Section<'_>, notes: &mut Notes) -> Option<Spread<quantity::TemperatureInterval>> {
    let (table, form) = spread(section, "medium", notes)?;
    let (section, key) = table.as_ref().map_or((section, "medium"), |table| (table, "within"));
    let found = section.quantity(key, quantity::temperature_step, notes)?;
    let kelvins = found.value.get::<step_kelvin>();
    if !(0.0..=MEDIUM_K).contains(&kelvins) {
        let message = format!("`{}` is {kelvins} K but must lie from 0 K to {MEDIUM_K} K", section.path(key));
        notes.problem(found.at, message, "give how far the medium may be from its planned temperature, either way");
        return None;
    }
    Some(Spread { within: found.value, form })
}

fn time(section: &Section<'_>, key: &str, notes: &mut Notes) -> Option<Spread<Within>> {
    let (table, form) = spread(section, key, notes)?;
    let (section, key) = table.as_ref().map_or((section, key), |table| (table, "within"));
    let words = section.words(key, "write a time or a share, such as \"5 s\" or \"10 %\"", notes)?;
    let path = section.path(key);
    if words.text.trim_end().ends_with('%') {
        let found = section.parse_words(key, &words, quantity::share, notes)?;
        let share = found.value.get::<ratio>();
        if !(0.0..=1.0).contains(&share) {
            let message = format!("`{path}` is {:.0} % but must lie from 0 % to 100 %", share * 100.0);
            notes.problem(found.at, message, "give how far the time may be off, either way");
            return None;
        }
        return Some(Spread { within: Within::Share(found.value), form });
    }
    let found = section.parse_words(key, &words, quantity::duration, notes)?;
    let seconds = found.value.get::<second>();
    if !(0.0..=LONGEST_S).contains(&seconds) {
        let message = format!("`{path}` is {seconds} s but must lie from 0 s to 24 h");
        notes.problem(found.at, message, "give how far the time may be off, either way");
        return None;
    }
    Some(Spread { within: Within::Time(found.value), form })
}

/// The table under `key` with `within` in it, where it is one, and its shape; a plain value is spread evenly.
fn spread<'t>(section: &Section<'t>, key: &str, notes: &mut Notes) -> Option<(Option<Section<'t>>, Form)> {
    if !section.has(key) {
        return None;
    }
    if !section.is_table(key) {
        return Some((None, Form::Uniform));
    }
    let table = section.section(key, &["within", "shape", "capability"], notes)?;
    table.missing("within", "give how far it may be off, either way", notes);
    let form = if table.has("shape") { form_of(&table, notes)? } else { Form::Uniform };
    Some((Some(table), form))
}

fn form(section: &Section<'_>, key: &str, notes: &mut Notes) -> Option<Form> {
    if !section.has(key) {
        return None;
    }
    if !section.is_table(key) {
        return shape(section, key, FORM_WANTED, notes);
    }
    form_of(&section.section(key, &["shape", "capability"], notes)?, notes)
}

/// The shape in a table, with its capability.
fn form_of(table: &Section<'_>, notes: &mut Notes) -> Option<Form> {
    table.missing("shape", FORM_WANTED, notes);
    let form = shape(table, "shape", FORM_WANTED, notes)?;
    if !table.has("capability") {
        return Some(form);
    }
    let path = table.path("capability");
    let found = table.quantity("capability", quantity::number, notes)?;
    if !matches!(form, Form::Normal { .. }) {
        let message = format!("`{path}` belongs to shape = \"normal\"");
        notes.problem(found.at, message, "leave `capability` out, or write shape = \"normal\"");
        return None;
    }
    if !(CAPABILITY.0..=CAPABILITY.1).contains(&found.value) {
        let message = format!("`{path}` is {} but must lie from {} to {}", found.value, CAPABILITY.0, CAPABILITY.1);
        notes.problem(found.at, message, "1 puts the limits at three standard deviations, 1.33 at four");
        return None;
    }
    Some(Form::Normal { capability: found.value })
}

fn shape(section: &Section<'_>, key: &str, wanted: &str, notes: &mut Notes) -> Option<Form> {
    let words = section.words(key, wanted, notes)?;
    let given = words.text.trim().to_lowercase();
    let form = match given.as_str() {
        "fixed" => Form::Fixed,
        "uniform" => Form::Uniform,
        "normal" => Form::Normal { capability: 1.0 },
        _ => {
            let help = nearest(&given, SHAPES.into_iter())
                .map_or_else(|| wanted.to_owned(), |meant| format!("did you mean \"{meant}\"? {wanted}"));
            let message = format!("`{}`: no distribution is called \"{}\"", section.path(key), words.text);
            notes.problem(words.at, message, help);
            return None;
        }
    };
    echo(section, key, &words, notes);
    Some(form)
}

fn echo(section: &Section<'_>, key: &str, words: &Words<'_>, notes: &mut Notes) {
    section.enter(key, words.text, AnyValue::Text(words.text.trim().to_owned()), None, notes);
}

/// A mean or measured sizes that do not belong to the surface are refused here, where its place is known.
pub(super) fn fits(section: &Section<'_>, found: &Scatter, nominals: &[(&str, Option<Length>)], notes: &mut Notes) {
    for (key, nominal) in nominals {
        let spread = match *key {
            "outside" => &found.outside,
            "bore" => &found.bore,
            "housing" => &found.housing,
            _ => &found.shaft,
        };
        match (spread, nominal) {
            (Some(_), None) => {
                let message = format!("`{}` scatters a size that this job does not have", section.path(key));
                notes.problem(section.place(key), message, "leave it out, or describe that seat");
            }
            (Some(SizeSpread::Measured(sizes)), Some(nominal)) => {
                let far = sizes.iter().find(|size| ((**size / *nominal).get::<ratio>() - 1.0).abs() > 0.01);
                if let Some(far) = far {
                    let message = format!(
                        "`{}.measured` has {:.3} mm, but the nominal diameter is {:.3} mm",
                        section.path(key),
                        far.get::<millimeter>(),
                        nominal.get::<millimeter>()
                    );
                    notes.problem(section.place(key), message, "check that the sizes belong to this surface");
                }
            }
            (Some(SizeSpread::Normal(NormalSize { mean: Some(mean), .. })), Some(_))
                if mean.get::<micrometer>().abs() > 2000.0 =>
            {
                let message = format!("`{}.mean` is more than 2 mm from nominal", section.path(key));
                notes.problem(section.place(key), message, "give the mean as a deviation, such as \"-8 um\"");
            }
            _ => {}
        }
    }
    let listed = matches!(found.sizes, Some(SizeSpread::Measured(_)));
    let meant = matches!(found.sizes, Some(SizeSpread::Normal(NormalSize { mean: Some(_), .. })));
    if listed || meant {
        let message = "`scatter.sizes` is for every size at once, and cannot hold sizes or a mean of one".to_owned();
        notes.problem(section.place("sizes"), message, "write it under outside, bore, housing or shaft");
    }
}
