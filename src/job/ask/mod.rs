//! Questions and answers that make a job.
//!
//! The answers build the text of a job file, and [`super::check`] reads it after each of them: what it says of a value is
//! what the user is told, and every rule of a job file holds here. An answer that is refused is asked again. This
//! module neither prints nor reads: a terminal, a pipe or a page may lead the talk.

mod questions;
mod text;

pub use questions::{QUESTIONS, Question, Usual};

use super::problem::Problem;
use super::{Job, Problems, check};
use crate::stock::Library;
use text::{Written, measured, written};

/// Answers so far, in the order in which they were given.
#[derive(Clone, Debug, Default)]
pub struct Answers(Vec<(&'static str, String)>);

impl Answers {
    /// The answer to a question; none where it was not given, or was left empty.
    pub fn get(&self, key: &str) -> Option<&str> {
        self.0.iter().find(|(known, answer)| *known == key && !answer.is_empty()).map(|(_, answer)| answer.as_str())
    }

    fn is(&self, key: &str, answer: &str) -> bool {
        self.get(key) == Some(answer)
    }

    fn is_empty(&self, key: &str) -> bool {
        self.get(key).is_none()
    }

    fn is_measured(&self, key: &str) -> bool {
        self.get(key).is_some_and(|answer| measured(answer).is_some())
    }

    fn has(&self, key: &str) -> bool {
        self.0.iter().any(|(known, _)| *known == key)
    }

    fn given(&self) -> impl Iterator<Item = (&'static str, &str)> {
        self.0.iter().filter(|(_, answer)| !answer.is_empty()).map(|(key, answer)| (*key, answer.as_str()))
    }

    fn part(&self) -> &str {
        self.get("bearing.kind").unwrap_or("part")
    }

    /// What is chilled.
    fn cold(&self) -> &str {
        if self.is("seat", "shaft") { "shaft" } else { self.part() }
    }

    /// What is warmed.
    fn hot(&self) -> &str {
        if self.is("seat", "shaft") { self.part() } else { "housing" }
    }

    /// The kind as a job names it; a bearing with a number needs none.
    fn kind(&self) -> Option<&'static str> {
        match self.part() {
            "bush" => Some("plain bush"),
            "plug" => Some("solid plug"),
            _ if !self.has("bearing.designation") || self.get("bearing.designation").is_some() => None,
            _ if self.is("rolling", "rollers") => Some("roller bearing"),
            _ => Some("ball bearing"),
        }
    }
}

/// What came of an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reply {
    /// It is taken; the next question follows.
    Taken,
    /// It is refused: what is wrong, and what to do. The question stands.
    Refused(Vec<Problem>),
    /// What the question is about.
    Why(String),
    /// The question before this one is asked again; its answer was this.
    Back(Option<String>),
}

/// First line of the answers so far.
const DRAFT_HEAD: &str = "# Answers so far. Go on with: seatwise ask --resume THIS-FILE";

/// A talk that makes a job.
#[derive(Clone, Debug)]
pub struct Talk<'l> {
    stock: &'l Library,
    answers: Answers,
}

impl<'l> Talk<'l> {
    /// A talk that begins.
    pub fn new(library: &'l Library) -> Self {
        Self { stock: library, answers: Answers::default() }
    }

    /// A talk that goes on from the answers of an earlier one, as [`Self::draft`] has written them. Lines that no question
    /// stands for, or whose answer is no longer taken, are given back.
    pub fn resume(library: &'l Library, draft: &str) -> (Self, Vec<String>) {
        let mut talk = Self::new(library);
        let mut left = Vec::new();
        for line in draft.lines().filter(|line| !line.trim().is_empty() && !line.starts_with('#')) {
            let (key, answer) =
                line.split_once('=').map_or((line.trim(), ""), |(key, answer)| (key.trim(), answer.trim()));
            let taken = talk.question().is_some_and(|question| question.key == key)
                && (answer.is_empty() && !matches!(talk.usual(), Some(Usual::Needed)) || talk.take(answer).is_ok());
            match (taken, answer.is_empty()) {
                (true, true) => talk.answers.0.extend(talk.question().map(|question| (question.key, String::new()))),
                (true, false) => {}
                (false, _) => left.push(line.to_owned()),
            }
        }
        (talk, left)
    }

    /// The answers, one a line, for [`Self::resume`].
    pub fn draft(&self) -> String {
        let lines = self.answers.0.iter().map(|(key, answer)| format!("{key} = {answer}\n"));
        format!("{DRAFT_HEAD}\n{}", lines.collect::<String>())
    }

    /// Whether a text is one that [`Self::draft`] has written, and may be written over as the talk goes on: a job, whose lines
    /// look much the same, is not.
    pub fn is_draft(text: &str) -> bool {
        text.trim_start_matches('\u{feff}').lines().next().is_some_and(|line| line.trim_end() == DRAFT_HEAD)
    }

    /// The next question; none when all have their answers.
    pub fn question(&self) -> Option<&'static Question> {
        QUESTIONS.iter().find(|question| !self.answers.has(question.key) && (question.when)(&self.answers))
    }

    /// Number of the question that is asked, from 1.
    pub fn number(&self) -> usize {
        self.answers.0.len() + 1
    }

    /// The words of a question for these answers.
    pub fn words(&self, question: &Question) -> String {
        let (part, cold, hot) = (self.answers.part(), self.answers.cold(), self.answers.hot());
        question.words.replace("{part}", part).replace("{cold}", cold).replace("{hot}", hot)
    }

    /// The answers.
    pub fn answers(&self) -> &Answers {
        &self.answers
    }

    /// The text of the job that the answers make.
    pub fn text(&self) -> String {
        written(&self.answers).text
    }

    /// Takes a line: an answer, nothing for the usual one, `?` for what it is about, `<` or `back` for the question before.
    pub fn answer(&mut self, line: &str) -> Reply {
        let Some(question) = self.question() else { return Reply::Taken };
        let line = line.trim();
        match line {
            "?" => return Reply::Why(question.why.to_owned()),
            "<" | "back" => return Reply::Back(self.answers.0.pop().map(|(_, answer)| answer)),
            _ => {}
        }
        let taken = match (line, question.usual) {
            ("", Usual::Needed) => Err(vec![refusal("this needs an answer", question.why)]),
            ("", Usual::Value(usual)) => self.take(usual),
            ("", Usual::LeftOut(_)) => {
                self.answers.0.push((question.key, String::new()));
                Ok(())
            }
            _ => self.take(line),
        };
        taken.map_or_else(Reply::Refused, |()| Reply::Taken)
    }

    /// The job, once every question has its answer.
    ///
    /// # Errors
    /// What the check says. The answers that it speaks of are taken back, so that [`Self::question`] asks them again; where
    /// there is none, the job cannot be mended by questions.
    pub fn finish(&mut self) -> Result<Job, Problems> {
        let Written { text, places } = written(&self.answers);
        check(&text, self.stock).inspect_err(|problems| {
            let speaks_of = |key: &str| {
                let place = places.iter().filter(|(known, _)| *known == key);
                let mut places = place.map(|(_, range)| range);
                problems.iter().any(|problem| problem.message.contains(&format!("`{key}`")))
                    || places.any(|range| problems.iter().any(|p| range.contains(&p.at.start)))
            };
            self.answers.0.retain(|(key, _)| !speaks_of(key));
        })
    }

    /// Takes back how cold, how hot and how long, so that they are asked again: a job may be sound, and its plan still not
    /// reach a temperature. Whether there was anything to take back.
    pub fn take_back_holds(&mut self) -> bool {
        let before = self.answers.0.len();
        let held = ["chill.temperature", "chill.hold", "warm.temperature", "warm.hold", "warm.until"];
        self.answers.0.retain(|(key, _)| !held.contains(key));
        self.answers.0.len() < before
    }

    fn usual(&self) -> Option<Usual> {
        self.question().map(|question| question.usual)
    }

    /// Takes an answer unless the check finds fault with it, alone or beside the answers before it.
    fn take(&mut self, line: &str) -> Result<(), Vec<Problem>> {
        let Some(question) = self.question() else { return Ok(()) };
        let answer = chosen(question, line)?;
        let before = self.faults();
        self.answers.0.push((question.key, answer));
        let mut faults = self.faults();
        faults.retain(|fault| !before.iter().any(|known| known.message == fault.message));
        if faults.is_empty() {
            return Ok(());
        }
        self.answers.0.pop();
        Err(faults)
    }

    /// What the check says of the answers themselves: what is still missing is not their fault.
    fn faults(&self) -> Vec<Problem> {
        let Written { text, places } = written(&self.answers);
        let Err(problems) = check(&text, self.stock) else { return Vec::new() };
        let of_an_answer = |problem: &&Problem| {
            let at = &problem.at;
            let inside = places.iter().any(|(_, place)| place.start <= at.start && at.end <= place.end);
            inside && at.start < at.end && !self.is_still_asked(&problem.message)
        };
        problems.iter().filter(of_an_answer).cloned().collect()
    }

    /// Whether a message speaks of a key that a later question stands for, as "an oven needs a temperature" does.
    fn is_still_asked(&self, message: &str) -> bool {
        let open =
            QUESTIONS.iter().filter(|question| !self.answers.has(question.key) && (question.when)(&self.answers));
        open.into_iter().any(|question| message.starts_with(&format!("`{}`", question.key)))
    }
}

fn refusal(message: impl Into<String>, help: impl Into<String>) -> Problem {
    Problem::new(0..0, message, help)
}

/// The answer by its number or its words, or by the beginning of its words where that is one choice alone.
fn chosen(question: &Question, line: &str) -> Result<String, Vec<Problem>> {
    if line.contains(['\n', '\r']) || line.chars().any(char::is_control) {
        return Err(vec![refusal("the answer holds signs that cannot be printed", "type it again")]);
    }
    if question.choices.is_empty() {
        return Ok(line.to_owned());
    }
    let number = line.parse::<usize>().ok().and_then(|number| question.choices.get(number.wrapping_sub(1)));
    let exact = question.choices.iter().find(|choice| choice.eq_ignore_ascii_case(line));
    let begun = |choice: &&&str| choice.to_lowercase().starts_with(&line.to_lowercase());
    let mut begun = question.choices.iter().filter(begun);
    let only = begun.next().filter(|_| begun.next().is_none());
    number.or(exact).or(only).map(|choice| (*choice).to_owned()).ok_or_else(|| {
        let message = format!("\"{line}\" is none of the choices");
        vec![refusal(
            message,
            format!("type a number from 1 to {}, or one of: {}", question.choices.len(), question.choices.join(", ")),
        )]
    })
}
