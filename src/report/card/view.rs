//! What the template of a card is given: words and numbers as they are printed.

use super::figures::{self, Figure};
use super::{CardError, CardRequest};
use crate::job::{AnyValue, Assumption, Entry, Heading};
use crate::plan::inspection::CheckState;
use crate::plan::seal::SealAlonePlan;
use crate::plan::work::{Blank, Work, WorkStep};
use crate::plan::{Caution, Level, Plan, SeatPlan, Sentence, Source};
use crate::quantity::System;
use crate::report::{csv, text, words};
use serde::Serialize;

/// Units as reports print them after a number.
const UNITS: [&str; 27] = [
    "mm", "µm", "in", "thou", "°C", "°F", "K", "s", "min", "h", "N", "kN", "lbf", "N·m", "in·lb", "ft·lb", "kgf·m",
    "MPa", "psi", "kg", "g", "lb", "%", "W", "kW", "m/s", "rpm",
];
/// A source of no more bytes than this is shorter than the words that name its place.
const LONG: usize = 40;
const NO_BREAK: char = '\u{a0}';

/// A whole card.
#[derive(Serialize)]
pub(super) struct View {
    title: String,
    /// Name and text of each field of the title block; an empty text is left to be written by hand.
    block: Vec<(&'static str, String)>,
    notes: Option<String>,
    verdicts: Vec<Verdict>,
    before: Vec<CautionView>,
    stages: Vec<StageView>,
    figures: Vec<Figure>,
    worth_knowing: Vec<CautionView>,
    entries: Vec<(String, String)>,
    /// What was assumed for the same reason, each as name and value, and the reason.
    assumptions: Vec<(Vec<(String, String)>, String)>,
    exact: Vec<Exact>,
    sources: Vec<SourceView>,
    caution_sources: Vec<(String, String)>,
    missing: usize,
}

#[derive(Serialize)]
struct Verdict {
    word: String,
    seat: Option<&'static str>,
    sentence: String,
}

#[derive(Serialize)]
struct CautionView {
    signal: &'static str,
    /// Whether the safety alert symbol stands before the word.
    alert: bool,
    text: String,
}

#[derive(Serialize)]
struct StageView {
    title: String,
    steps: Vec<StepView>,
}

#[derive(Serialize)]
struct StepView {
    text: String,
    /// What was found already, in words.
    found: Option<String>,
    hold_point: Option<String>,
    blanks: Vec<(String, Option<String>)>,
    cautions: Vec<CautionView>,
}

/// Values that were not rounded for the shop, under the names of the JSON.
#[derive(Serialize)]
struct Exact {
    seat: String,
    rows: Vec<(String, [String; 3])>,
}

#[derive(Serialize)]
struct SourceView {
    what: String,
    texts: Vec<(String, String, bool)>,
}

impl View {
    pub(super) fn of_plan(plan: &Plan<'_>, request: &CardRequest<'_>) -> Result<Self, CardError> {
        let system = request.system;
        let several = plan.seats.len() > 1;
        let verdict = |seat: &SeatPlan| Verdict {
            word: seat.verdict.words().to_uppercase(),
            seat: several.then(|| seat.seat.name()),
            sentence: sentence(&plan.answer(seat), system),
        };
        let base = Self::of_work(&plan.job.heading, &plan.work(), &plan.cautions, request);
        Ok(Self {
            verdicts: plan.seats.iter().map(verdict).collect(),
            figures: figures::all(plan, system)?,
            entries: entries(&plan.job.entries, system),
            assumptions: assumptions(&plan.job.assumptions, system),
            exact: plan.seats.iter().map(|seat| exact(plan, seat)).collect(),
            ..base.with_sources(&plan.sources, &plan.job.assumptions)
        })
    }

    pub(super) fn of_seal(plan: &SealAlonePlan<'_>, request: &CardRequest<'_>) -> Self {
        let system = request.system;
        let sentence = together(&text::seal_answer(&plan.seal, system));
        let base = Self::of_work(&plan.job.heading, &plan.work(), &plan.cautions, request);
        Self {
            verdicts: vec![Verdict { word: "PRESS".to_owned(), seat: None, sentence }],
            entries: entries(&plan.job.entries, system),
            assumptions: assumptions(&plan.job.assumptions, system),
            ..base.with_sources(&plan.sources, &plan.job.assumptions)
        }
    }

    fn of_work(heading: &Heading, work: &Work, cautions: &[Caution], request: &CardRequest<'_>) -> Self {
        let system = request.system;
        let pick = |numbers: &[usize]| numbers.iter().map(|&number| caution(&cautions[number], system)).collect();
        let step = |step: &WorkStep| StepView {
            text: sentence(&step.text, system),
            found: step.found.filter(|state| *state != CheckState::ToDo).map(|state| state.words().to_owned()),
            hold_point: step.hold_point.as_ref().map(|hold| sentence(hold, system)),
            blanks: step.blanks.iter().map(|blank| blank_view(blank, system)).collect(),
            cautions: pick(&step.cautions),
        };
        let stages = work
            .stages
            .iter()
            .map(|stage| StageView { title: stage.title.clone(), steps: stage.steps.iter().map(step).collect() });
        Self {
            title: heading.title.clone(),
            block: block(heading, request.date),
            notes: heading.notes.clone(),
            verdicts: Vec::new(),
            before: pick(&work.before),
            stages: stages.collect(),
            figures: Vec::new(),
            worth_knowing: pick(&work.notes),
            entries: Vec::new(),
            assumptions: Vec::new(),
            exact: Vec::new(),
            sources: Vec::new(),
            caution_sources: caution_sources(cautions),
            missing: 0,
        }
    }

    fn with_sources(self, sources: &[Source], assumptions: &[Assumption]) -> Self {
        let missing = sources.iter().filter(|source| source.is_missing()).count();
        Self { sources: grouped(sources, assumptions), missing, ..self }
    }
}

fn sentence(sentence: &Sentence, system: System) -> String {
    together(&words::sentence(sentence, system))
}

fn value(value: &AnyValue, system: System) -> String {
    together(&words::value(value, system))
}

/// The text with each number and its unit kept on one line by a no-break space.
fn together(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut words = text.split(' ').peekable();
    while let Some(word) = words.next() {
        kept.push_str(word);
        let Some(next) = words.peek() else { break };
        let number = word.ends_with(|c: char| c.is_ascii_digit());
        let unit = next.trim_end_matches(|c: char| ",.;:)".contains(c));
        kept.push(if number && UNITS.contains(&unit) { NO_BREAK } else { ' ' });
    }
    kept
}

fn block(heading: &Heading, date: Option<&str>) -> Vec<(&'static str, String)> {
    let given = |text: &Option<String>| text.clone().unwrap_or_default();
    let date = date.map_or_else(|| given(&heading.date), str::to_owned);
    vec![
        ("reference", given(&heading.reference)),
        ("revision", given(&heading.revision)),
        ("date", date),
        ("prepared by", given(&heading.prepared_by)),
    ]
}

fn caution(caution: &Caution, system: System) -> CautionView {
    let alert = caution.hurts_people() && caution.level() != Level::Note;
    CautionView { signal: caution.signal(), alert, text: sentence(caution.sentence(), system) }
}

fn blank_view(blank: &Blank, system: System) -> (String, Option<String>) {
    (blank.what.clone(), blank.wanted.as_ref().map(|wanted| sentence(wanted, system)))
}

fn entries(entries: &[Entry], system: System) -> Vec<(String, String)> {
    let shown = |entry: &Entry| {
        let (typed, read) = (together(&entry.typed), value(&entry.value, system));
        if is_same(&typed, &read) { typed } else { format!("{typed} = {read}") }
    };
    entries.iter().map(|entry| (entry.key.clone(), shown(entry))).collect()
}

/// Whether two texts are the same but for zeros at the end of a number, as 90 mm and 90.000 mm are.
fn is_same(typed: &str, read: &str) -> bool {
    let parts = |text: &str| {
        let (number, unit) = text.split_once(NO_BREAK)?;
        Some((number.parse::<f64>().ok()?.to_bits(), unit.to_owned()))
    };
    typed == read || parts(typed).is_some_and(|typed| parts(read) == Some(typed))
}

/// Assumptions in the order of the plan; those that follow each other with one reason share it.
fn assumptions(assumptions: &[Assumption], system: System) -> Vec<(Vec<(String, String)>, String)> {
    let one = |a: &Assumption| (a.what.to_string(), value(&a.value, system));
    assumptions
        .chunk_by(|a, b| a.why == b.why)
        .map(|same| (same.iter().map(one).collect(), same[0].why.to_string()))
        .collect()
}

/// The results that differ from case to case, as the CSV has them.
fn exact(plan: &Plan<'_>, seat: &SeatPlan) -> Exact {
    let cells = csv::cells(plan, seat);
    let value = |name: &str| cells.iter().find(|(known, _)| *known == name).map(|(_, cell)| cell.as_written());
    let rows = cells.iter().filter_map(|(name, tightest)| {
        let stem = name.strip_suffix("_tightest")?;
        let case = |case: &str| value(&format!("{stem}_{case}")).unwrap_or_default();
        Some((stem.to_owned(), [tightest.as_written(), case("middle"), case("loosest")]))
    });
    Exact { seat: format!("{} seat", seat.seat.name()), rows: rows.collect() }
}

/// Sources under what they belong to, "bearing-steel: density, strength", in the order of the plan. One that stands with an
/// assumption on the same page is named there, and not printed again.
fn grouped(sources: &[Source], assumptions: &[Assumption]) -> Vec<SourceView> {
    let said = |source: &Source| match assumptions.iter().find(|assumed| assumed.why.contains(&source.text)) {
        Some(assumed) if source.text.len() > LONG => format!("as under {}", assumed.what),
        _ => source.text.clone(),
    };
    let mut groups: Vec<SourceView> = Vec::new();
    for source in sources {
        let (what, part) = source.what.split_once(", ").unwrap_or((&source.what, ""));
        let text = (part.to_owned(), said(source), source.is_missing());
        match groups.last_mut().filter(|group| group.what == what) {
            Some(group) => group.texts.push(text),
            None => groups.push(SourceView { what: what.to_owned(), texts: vec![text] }),
        }
    }
    groups
}

/// Where the rules of the cautions come from: each source once, after the codes that rest on it.
fn caution_sources(cautions: &[Caution]) -> Vec<(String, String)> {
    let mut list: Vec<(Vec<&'static str>, &str)> = Vec::new();
    for caution in cautions {
        match list.iter_mut().find(|(_, source)| *source == caution.source()) {
            Some((codes, _)) if codes.contains(&caution.code()) => {}
            Some((codes, _)) => codes.push(caution.code()),
            None => list.push((vec![caution.code()], caution.source())),
        }
    }
    list.into_iter().map(|(codes, source)| (codes.join(", "), source.to_owned())).collect()
}

#[cfg(test)]
mod tests {
    use super::{is_same, together};

    #[test]
    fn what_was_typed_is_not_said_twice() {
        for (typed, read) in [("20 s", "20 s"), ("90 mm", "90.000 mm"), ("-18 °C", "-18.0 °C"), ("M12", "M12")] {
            assert!(is_same(&together(typed), &together(read)), "{typed}");
        }
        for (typed, read) in [("90 mm", "90.001 mm"), ("1 in", "25.400 mm"), ("2 h", "2 h 00 min"), ("N7", "-39/-9 µm")]
        {
            assert!(!is_same(&together(typed), &together(read)), "{typed}");
        }
    }

    #[test]
    fn a_number_keeps_its_unit_on_its_line_and_nothing_else_is_changed() {
        let text = "Warm it at 80 °C for 1 h 30 min, 5 screws to 24.0 N·m.";
        let kept = "Warm it at 80\u{a0}°C for 1\u{a0}h 30\u{a0}min, 5 screws to 24.0\u{a0}N·m.";
        assert_eq!(together(text), kept);
        assert_eq!(together(""), "");
    }
}
