//! Reads a file whose keys may be wrong, and goes on after each mistake, so that all of them are told at once.

use super::material::nearest_names;
use serde::de::DeserializeOwned;
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue, ValueDeserializer};

/// Mistakes of one file that are looked for; more than that is another kind of file.
const MOST: usize = 100;

/// A step from a table to what stands in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// The value of a key.
    Key(String),
    /// A place in a list, counted from 0.
    Item(usize),
}

/// Something wrong with a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct KeyFault {
    /// The table in which the key stands, or should.
    pub path: Vec<Step>,
    /// What is wrong.
    pub message: String,
    /// Bytes of the text to underline.
    pub at: Range<usize>,
}

/// What a text holds, and all that is wrong with its keys.
///
/// What is wrong is taken away, and what is missing filled in from `sound`, a text of the same kind without a mistake, so that the
/// values of all other keys can be checked as well. Places in the text of what was filled in lie beyond the end of `text`. None
/// where the text is not TOML, or `sound` has nothing to fill in.
pub(super) fn read<T: DeserializeOwned>(text: &str, sound: &str) -> (Option<T>, Vec<KeyFault>) {
    if let Ok(value) = toml::from_str(text) {
        return (Some(value), Vec::new());
    }
    let (table, errors) = DeTable::parse_recoverable(text);
    if !errors.is_empty() {
        // What follows on the line of a mistake is mostly of its making.
        let mut lines = Vec::new();
        let fault = |error: &toml::de::Error| KeyFault {
            path: error.span().and_then(|at| heading(text, at.start)).into_iter().collect(),
            message: format!("this is not TOML: {}", plainly(error.message())),
            at: error.span().unwrap_or(0..0),
        };
        let mut faults: Vec<KeyFault> = errors.iter().map(fault).collect();
        faults.retain(|fault| {
            let line = text.bytes().take(fault.at.start).filter(|byte| *byte == b'\n').count();
            let first = !lines.contains(&line);
            lines.push(line);
            first
        });
        return (None, faults);
    }
    if table.get_ref().is_empty() {
        return (None, vec![KeyFault { path: Vec::new(), message: "the file is empty".to_owned(), at: 0..0 }]);
    }
    let padded = "\n".repeat(text.len() + 1) + sound;
    let Ok(sound) = DeTable::parse(&padded) else { return (None, Vec::new()) };
    let file = Spanned::new(table.span(), DeValue::Table(table.into_inner()));
    let mut mending = Mending { file, faults: Vec::new(), taken: Vec::new() };
    let value = mending.mended(&DeValue::Table(sound.into_inner()));
    let mut faults = mending.faults;
    faults.sort_by_key(|fault| fault.at.start);
    (value, faults)
}

/// The last heading at or before a byte of a text that cannot be read.
fn heading(text: &str, at: usize) -> Option<Step> {
    let line_end = text.get(at..)?.find('\n').map_or(text.len(), |n| at + n);
    let heading = text.get(..line_end)?.lines().rev().find(|line| line.starts_with('['))?;
    Some(Step::Key(heading.trim_matches(['[', ']', ' ']).to_owned()))
}

/// A file that is being mended.
struct Mending<'t> {
    file: Spanned<DeValue<'t>>,
    faults: Vec<KeyFault>,
    /// Keys that were taken away, with the table in which they stood.
    taken: Vec<(Vec<Step>, String)>,
}

impl<'t> Mending<'t> {
    fn mended<T: DeserializeOwned>(&mut self, sound: &DeValue<'t>) -> Option<T> {
        for _ in 0..MOST {
            let error = match T::deserialize(ValueDeserializer::from(self.file.clone())) {
                Ok(value) => return Some(value),
                Err(error) => error,
            };
            let missing = error.message().strip_prefix("missing field `").and_then(|rest| rest.strip_suffix('`'));
            match missing {
                Some(name) => self.fill(name, error.span(), sound)?,
                None => self.take(plainly(error.message()), error.span()?)?,
            }
        }
        None
    }

    /// Fills in a key that is missing in the table at a place.
    fn fill(&mut self, name: &str, at: Option<Range<usize>>, sound: &DeValue<'t>) -> Option<()> {
        let mut path = Vec::new();
        let found = at.as_ref().is_some_and(|at| leads_to(&self.file, at, &mut path));
        if !found {
            path.clear();
        }
        // A key that was wrong, or stands there otherwise written, is not missing as well.
        let known = |(table, taken): &(Vec<Step>, String)| {
            *table == path && (taken == name || !nearest_names(taken, std::iter::once((name, name))).is_empty())
        };
        if !self.taken.iter().any(known) {
            let at = if found { at.unwrap_or(0..0) } else { 0..0 };
            self.faults.push(KeyFault { path: path.clone(), message: format!("`{name}` is missing"), at });
        }
        let (key, value) = sound_of(sound, &path, name)?;
        table_at(self.file.get_mut(), &path)?.insert(key.clone(), value.clone());
        Some(())
    }

    /// Takes away the key, or the value of a key, at a place.
    fn take(&mut self, message: String, at: Range<usize>) -> Option<()> {
        let (path, key) = key_at(&self.file, &at)?;
        table_at(self.file.get_mut(), &path)?.remove(key.as_str());
        self.faults.push(KeyFault { path: path.clone(), message, at });
        self.taken.push((path, key));
        Some(())
    }
}

/// Whether a table stands exactly at a place; the steps to it.
fn leads_to(value: &Spanned<DeValue<'_>>, at: &Range<usize>, path: &mut Vec<Step>) -> bool {
    if !path.is_empty() && value.get_ref().is_table() && value.span() == *at {
        return true;
    }
    each(value, |step, inner| {
        path.push(step);
        let found = leads_to(inner, at, path);
        if !found {
            path.pop();
        }
        found
    })
}

/// Asks of each value inside another until one says yes.
fn each(value: &Spanned<DeValue<'_>>, mut ask: impl FnMut(Step, &Spanned<DeValue<'_>>) -> bool) -> bool {
    match value.get_ref() {
        DeValue::Table(table) => table.iter().any(|(key, inner)| ask(Step::Key(key.get_ref().to_string()), inner)),
        DeValue::Array(items) => items.iter().enumerate().any(|(place, inner)| ask(Step::Item(place), inner)),
        _ => false,
    }
}

/// The innermost key that stands at a place or whose value holds it, and the table of the key.
fn key_at(value: &Spanned<DeValue<'_>>, at: &Range<usize>) -> Option<(Vec<Step>, String)> {
    let inside = |span: Range<usize>| span.start <= at.start && at.end <= span.end;
    match value.get_ref() {
        DeValue::Table(table) => table.iter().find_map(|(key, inner)| {
            let name = key.get_ref().to_string();
            if let Some((mut path, key)) = key_at(inner, at) {
                path.insert(0, Step::Key(name));
                return Some((path, key));
            }
            (inside(key.span()) || inside(inner.span())).then(|| (Vec::new(), name))
        }),
        DeValue::Array(items) => items.iter().enumerate().find_map(|(place, inner)| {
            let (mut path, key) = key_at(inner, at)?;
            path.insert(0, Step::Item(place));
            Some((path, key))
        }),
        _ => None,
    }
}

fn table_at<'v, 't>(value: &'v mut DeValue<'t>, path: &[Step]) -> Option<&'v mut DeTable<'t>> {
    match (value, path) {
        (DeValue::Table(table), []) => Some(table),
        (DeValue::Table(table), [Step::Key(key), rest @ ..]) => table_at(table.get_mut(key.as_str())?.get_mut(), rest),
        (DeValue::Array(items), [Step::Item(place), rest @ ..]) => table_at(items.get_mut(*place)?.get_mut(), rest),
        _ => None,
    }
}

type Pair<'v, 't> = (&'v Spanned<toml::de::DeString<'t>>, &'v Spanned<DeValue<'t>>);

/// A key of the sound text in the like table; of a list in the first item that has it.
fn sound_of<'v, 't>(value: &'v DeValue<'t>, path: &[Step], name: &str) -> Option<Pair<'v, 't>> {
    match (value, path) {
        (DeValue::Table(table), []) => table.get_key_value(name),
        (DeValue::Table(table), [Step::Key(key), rest @ ..]) => {
            sound_of(table.get(key.as_str())?.get_ref(), rest, name)
        }
        (DeValue::Array(items), [Step::Item(_), rest @ ..]) => {
            items.iter().find_map(|item| sound_of(item.get_ref(), rest, name))
        }
        _ => None,
    }
}

/// What the TOML reader says of a key or a value, in the words of this crate.
fn plainly(said: &str) -> String {
    let choice = |rest: &str| {
        let (asked, known) = rest.split_once(", expected ")?;
        // Names stand in backquotes and may hold commas.
        let known: Vec<String> = known.split('`').skip(1).step_by(2).map(str::to_owned).collect();
        let asked = asked.trim_matches('`').to_owned();
        let near = nearest_names(&asked, known.iter().map(|name| (name.as_str(), name.as_str())));
        let meant = near.first().map(|meant| format!("; did you mean `{meant}`?")).unwrap_or_default();
        Some((asked, meant, known))
    };
    if let Some((asked, meant, known)) = said.strip_prefix("unknown field ").and_then(choice) {
        return format!("there is no `{asked}`{meant} (known: {})", known.join(", "));
    }
    if let Some((asked, meant, known)) = said.strip_prefix("unknown variant ").and_then(choice) {
        let known: Vec<String> = known.iter().map(|name| format!("\"{name}\"")).collect();
        return format!("\"{asked}\" is none of: {}{meant}", known.join(", "));
    }
    if let Some((found, wanted)) = said.strip_prefix("invalid type: ").and_then(|rest| rest.split_once(", expected ")) {
        return format!("{} stands where {} belongs", kind_of(found), wanted_kind(wanted));
    }
    match said {
        "duplicate key" => "this key is given twice in its table".to_owned(),
        other => other.to_owned(),
    }
}

/// "string \"7810\"" in plain words.
fn kind_of(found: &str) -> String {
    let (kind, rest) = found.split_once(' ').unwrap_or((found, ""));
    match kind {
        "string" => format!("the text {rest}"),
        "integer" => format!("the number {}", rest.trim_matches('`')),
        "floating" => format!("the number {}", rest.trim_start_matches("point ").trim_matches('`')),
        "boolean" => format!("the word {}", rest.trim_matches('`')),
        "sequence" => "a list".to_owned(),
        "map" => "a table".to_owned(),
        _ => found.to_owned(),
    }
}

fn wanted_kind(wanted: &str) -> &str {
    match wanted {
        "f64" => "a number without quotes",
        "a string" => "text in quotes",
        "a boolean" => "true or false",
        "a sequence" => "a list in brackets",
        wanted if wanted.starts_with("struct ") => "a table of keys",
        wanted => wanted,
    }
}

#[cfg(test)]
mod tests {
    use super::{KeyFault, read};
    use serde::Deserialize;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[expect(dead_code, reason = "read and looked at as a whole")]
    struct File {
        name: String,
        size: Size,
        #[serde(default)]
        place: Vec<Size>,
    }

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[expect(dead_code, reason = "read and looked at as a whole")]
    struct Size {
        length: f64,
        width: f64,
        height: Option<f64>,
    }

    const SOUND: &str = "name = \"x\"\n[size]\nlength = 1\nwidth = 2\n[[place]]\nlength = 3\nwidth = 4\n";

    fn faults(text: &str) -> Vec<(String, String)> {
        let (value, faults) = read::<File>(text, SOUND);
        assert_eq!(value.is_some(), faults.iter().all(|fault| !fault.message.contains("TOML")), "{faults:?}");
        faults.into_iter().map(|KeyFault { message, at, .. }| (message, text[at].to_owned())).collect()
    }

    #[test]
    fn every_mistake_of_keys_is_told_with_its_place() {
        let told = faults("size = { lenght = 1, width = \"2\", hight = 3 }\n[[place]]\nlength = 1\n");
        let words: Vec<&str> = told.iter().map(|(message, _)| message.split(';').next().unwrap()).collect();
        assert_eq!(
            words,
            [
                "`name` is missing",
                "there is no `lenght`",
                "the text \"2\" stands where a number without quotes belongs",
                "there is no `hight`",
                "`width` is missing"
            ]
        );
        assert_eq!(told[1].1, "lenght");
        assert_eq!(told[2].1, "\"2\"");
        assert!(told[1].0.contains("did you mean `length`?"), "{told:?}");
    }

    #[test]
    fn a_sound_text_has_none_and_a_text_that_is_no_toml_says_where() {
        assert!(faults(SOUND).is_empty());
        assert_eq!(faults("name = \n[size]\nlength = [\n").len(), 2);
        let (value, faults) = read::<File>("# nothing\n", SOUND);
        assert!(value.is_none() && faults.len() == 1 && faults[0].message == "the file is empty", "{faults:?}");
    }

    #[test]
    fn a_value_in_place_of_a_table_is_told() {
        let told = faults("name = 3\nsize = 4\nplace = 5\n");
        assert_eq!(told.iter().map(|(_, at)| at.as_str()).collect::<Vec<_>>(), ["3", "4", "5"]);
    }
}
