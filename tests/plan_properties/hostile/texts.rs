//! Job files, material files and readings after an accident.

use super::quantities::PIECES;
use super::{JOBS, can_be_underlined, cases, outputs};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use seatwise::job::ask::Talk;
use seatwise::plan::log;
use seatwise::stock::Library;
use seatwise::stock::material::{Material, embedded_ids, embedded_text};
use seatwise::{job, report};

const READINGS: &str = include_str!("../../../examples/pump-case-readings.csv");
const OF_READINGS: &str = include_str!("../../../examples/pump-case.toml");

/// What happens to a text.
#[derive(Clone, Debug)]
enum Accident {
    /// Two words change places.
    Swapped(Index, Index),
    /// Words are lost.
    Lost(Index, usize),
    /// A word becomes another.
    Replaced(Index, String),
    /// Something is typed between two words.
    Typed(Index, String),
    /// Lines stand there twice.
    Twice(Index, usize),
    /// The rest is missing.
    Cut(Index),
    /// A value or a table stands in many others.
    Nested(Index, usize, bool),
}

fn accident() -> impl Strategy<Value = Accident> {
    let piece = || prop_oneof![6 => select(PIECES).prop_map(str::to_owned), 1 => select(TOML).prop_map(str::to_owned)];
    let at = any::<Index>;
    prop_oneof![
        3 => (at(), at()).prop_map(|(a, b)| Accident::Swapped(a, b)),
        3 => (at(), 1..12_usize).prop_map(|(from, count)| Accident::Lost(from, count)),
        4 => (at(), piece()).prop_map(|(word, by)| Accident::Replaced(word, by)),
        3 => (at(), piece()).prop_map(|(before, what)| Accident::Typed(before, what)),
        2 => (at(), 1..8_usize).prop_map(|(from, count)| Accident::Twice(from, count)),
        1 => at().prop_map(Accident::Cut),
        1 => (at(), 1..2000_usize, any::<bool>()).prop_map(|(word, depth, list)| Accident::Nested(word, depth, list)),
    ]
}

/// What TOML gives a meaning to.
#[rustfmt::skip]
const TOML: &[&str] = &[
    "[", "]", "[[", "]]", "{", "}", "=", "#", "\"\"\"", "'''", "\\u{D800}", "\\", "\r", "\u{feff}", "0x", "0b1", "1_000",
    "1979-05-27T07:32:00Z", "nan", "-inf", "true", ".", "[bearing]\n", "[housing]\n", "[[fasteners.groups]]\n",
    "bearing.bore = \"1 mm\"\n", "a.b.c.d.e.f = 1\n", "[\"\"]\n", "\"bearing\".kind = 1\n",
];

/// Words, signs and spaces of a text, none of them empty.
fn words(text: &str) -> Vec<&str> {
    let mut words = Vec::new();
    let mut from = 0;
    let kind = |c: char| if c.is_alphanumeric() || c == '_' || c == '-' || c == '.' { 'a' } else { c };
    let mut before = None;
    for (at, c) in text.char_indices() {
        if before.is_some_and(|before| before != kind(c)) {
            words.push(&text[from..at]);
            from = at;
        }
        before = Some(kind(c));
    }
    words.push(&text[from..]);
    words
}

fn after(text: String, accident: &Accident) -> String {
    let mut words = words(&text);
    let count = words.len();
    match accident {
        Accident::Swapped(a, b) => words.swap(a.index(count), b.index(count)),
        Accident::Lost(from, lost) => {
            let from = from.index(count);
            words.drain(from..(from + lost).min(count));
        }
        Accident::Replaced(word, by) => words[word.index(count)] = by,
        Accident::Typed(before, what) => words.insert(before.index(count), what),
        Accident::Twice(from, taken) => {
            let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
            if lines.is_empty() {
                return text;
            }
            let from = from.index(lines.len());
            let again = lines[from..(from + taken).min(lines.len())].to_vec();
            lines.extend(again);
            return lines.concat();
        }
        Accident::Cut(at) => words.truncate(at.index(count)),
        Accident::Nested(word, depth, list) => {
            let (open, close) = if *list { ("[", "]") } else { ("{ a = ", " }") };
            let word = word.index(count);
            let nested = format!("{}{}{}", open.repeat(*depth), words[word], close.repeat(*depth));
            words[word] = &nested;
            return words.concat();
        }
    }
    words.concat()
}

/// A text after a few accidents.
fn wrecked(texts: Vec<&'static str>) -> impl Strategy<Value = String> {
    (select(texts), proptest::collection::vec(accident(), 1..6))
        .prop_map(|(text, accidents)| accidents.iter().fold(text.to_owned(), after))
}

fn materials() -> Vec<&'static str> {
    embedded_ids().filter_map(embedded_text).collect()
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn a_wrecked_job_is_planned_or_refused_with_its_place(text in wrecked(JOBS.to_vec())) {
        outputs::of(&text, &Library::default());
        let _ = (job::typed(&text), job::put(&text, "warm.temperature", "90 °C"));
        if let Err(problems) = job::check_seal(&text) {
            prop_assert!(problems.iter().all(|problem| can_be_underlined(&text, &problem.at)), "{problems:?}");
        }
    }

    #[test]
    fn wrecked_readings_are_compared_or_refused_with_their_place(text in wrecked(vec![READINGS])) {
        let job = job::check(OF_READINGS, &Library::default()).unwrap();
        match job::check_log(&text, &job) {
            Err(problems) => {
                prop_assert!(problems.iter().all(|problem| can_be_underlined(&text, &problem.at)), "{problems:?}");
            }
            Ok(log) => {
                if let Ok(plan) = log::compare(&job, &log) {
                    outputs::readable(&report::log::text(&plan, job.system), &text);
                    outputs::readable(&report::log::csv(&plan).unwrap(), &text);
                    outputs::readable(&report::log::json(&plan).unwrap(), &text);
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(cases(60))]

    #[test]
    fn a_wrecked_material_is_used_or_refused(text in wrecked(materials())) {
        match Material::parse("own", &text) {
            Ok(material) => {
                let library = Library { materials: vec![material], ..Library::default() };
                let own = |what: &str| job::put(OF_READINGS, what, "own").unwrap();
                outputs::of_typed(&own("housing.material"), &library, &text);
                outputs::of_typed(&own("bearing.material"), &library, &text);
            }
            Err(error) => prop_assert!(error.span().is_none_or(|at| can_be_underlined(&text, &at)), "{error}"),
        }
    }

    #[test]
    fn answers_of_any_kind_end_the_questions_or_are_refused(answers in proptest::collection::vec(answer(), 1..40)) {
        let library = Library::default();
        let mut talk = Talk::new(&library);
        for line in &answers {
            talk.answer(line);
        }
        let (again, left) = Talk::resume(&library, &talk.draft());
        prop_assert!(left.is_empty(), "{left:?}");
        prop_assert_eq!(again.draft(), talk.draft());
        if talk.question().is_none() && let Ok(job) = talk.finish() {
            outputs::of(&talk.text(), &library);
            prop_assert!(!job.heading.title.contains('\n'));
        }
    }
}

#[rustfmt::skip]
const ANSWERS: &[&str] = &[
    "", "", "", "1", "2", "3", "?", "<", "6206", "6308 C3", "N7", "H7", "90 mm", "62 mm", "30 mm", "16 mm", "2 h", "80 °C",
    "cast-aluminium", "carbon-steel", "domestic-freezer", "oven", "open", "bush", "housing", "shaft", "k6", "21 °C",
];

fn answer() -> impl Strategy<Value = String> {
    let usual = select(ANSWERS);
    prop_oneof![8 => usual.prop_map(str::to_owned), 1 => super::quantities::text()]
}
