use super::terminal;
use crate::job::Problems;
use crate::report::refusal::{Place, Refusal, within};
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use std::path::Path;
use textwrap::{Options, WordSplitter};

/// Why a run could not do what was asked.
#[derive(Debug)]
pub(super) enum Failure {
    /// A text with mistakes in it.
    Text { path: String, text: String, problems: Vec<Mistake> },
    /// Anything else: what is wrong, and what to do.
    Plain(Box<Refusal>),
    /// Several of these, of texts that have nothing to do with each other.
    Several(Vec<Failure>),
    /// The reader of standard output has gone away, as `head` does; not an error.
    ReaderGone,
}

/// A mistake in a text.
#[derive(Debug)]
pub(super) struct Mistake {
    pub(super) message: String,
    pub(super) at: std::ops::Range<usize>,
    pub(super) help: String,
    pub(super) allowed: Option<String>,
}

impl Failure {
    pub(super) fn plain(message: impl Into<String>, help: impl Into<String>) -> Self {
        Self::Plain(Box::new(Refusal { message: message.into(), help: help.into(), ..Refusal::default() }))
    }

    /// The same with what is allowed.
    pub(super) fn allowing(self, allowed: Option<String>) -> Self {
        match self {
            Self::Plain(refusal) => Self::Plain(Box::new(Refusal { allowed, ..*refusal })),
            other => other,
        }
    }

    /// The same with the file in which it lies.
    pub(super) fn of_file(self, path: &Path) -> Self {
        match self {
            Self::Plain(refusal) => Self::Plain(Box::new(Refusal { file: Some(named(path)), ..*refusal })),
            other => other,
        }
    }

    pub(super) fn file(path: &Path, what: &str, error: &std::io::Error, help: &str) -> Self {
        Self::plain(format!("{what} {}: {}", path.display(), reason(error)), help).of_file(path)
    }

    /// A result that could not be written out, which no sound result is.
    pub(super) fn unprintable(error: impl std::fmt::Display) -> Self {
        Self::plain(format!("the result could not be printed: {error}"), "use --format text, and report this")
    }

    pub(super) fn job(path: String, text: String, problems: &Problems) -> Self {
        let problems = problems
            .iter()
            .map(|problem| Mistake {
                message: problem.message.clone(),
                at: problem.at.clone(),
                help: problem.help.clone(),
                allowed: problem.allowed.clone(),
            })
            .collect();
        Self::Text { path, text, problems }
    }

    /// The results of independent steps, or all their failures.
    pub(super) fn gathered<T>(results: impl IntoIterator<Item = Result<T, Self>>) -> Result<Vec<T>, Self> {
        let (mut good, mut bad) = (Vec::new(), Vec::new());
        for result in results {
            match result {
                Ok(value) => good.push(value),
                Err(failure) => bad.push(failure),
            }
        }
        match bad.len() {
            0 => Ok(good),
            1 => Err(bad.swap_remove(0)),
            _ => Err(Self::Several(bad)),
        }
    }

    /// The message as the user reads it, with colours that the stream strips where they are not wanted.
    pub(super) fn render(&self) -> String {
        match self {
            Self::Text { path, text, problems } => {
                problems.iter().map(|problem| underlined(path, text, problem)).collect()
            }
            Self::Plain(refusal) => {
                let (message, help) = (wrapped(&refusal.message), wrapped(&refusal.help));
                let group = Group::with_title(Level::ERROR.primary_title(message)).element(Level::HELP.message(help));
                format!("{}\n", renderer().render(&[group]))
            }
            Self::Several(failures) => failures.iter().map(Self::render).collect(),
            Self::ReaderGone => String::new(),
        }
    }

    /// The same for a program.
    pub(super) fn refusals(&self) -> Vec<Refusal> {
        match self {
            Self::Text { path, text, problems } => problems
                .iter()
                .map(|problem| Refusal {
                    message: problem.message.clone(),
                    help: problem.help.clone(),
                    file: Some(path.clone()),
                    place: Some(Place::of(text, &problem.at)),
                    allowed: problem.allowed.clone(),
                })
                .collect(),
            Self::Plain(refusal) => vec![(**refusal).clone()],
            Self::Several(failures) => failures.iter().flat_map(Self::refusals).collect(),
            Self::ReaderGone => Vec::new(),
        }
    }
}

/// What the system says, without its number.
pub(super) fn reason(error: &std::io::Error) -> String {
    let said = error.to_string();
    let words = said.split(" (os error").next().unwrap_or(&said);
    words.to_lowercase()
}

/// Columns that stand before a line of a message.
const MARGIN: usize = 15;

/// A message in lines that the terminal holds; on one line where there is none, so that other programs find it whole.
fn wrapped(text: &str) -> String {
    let options = |columns: usize| Options::new(columns - MARGIN).word_splitter(WordSplitter::NoHyphenation);
    terminal::known().map_or_else(|| text.to_owned(), |columns| textwrap::fill(text, options(columns)))
}

fn renderer() -> Renderer {
    Renderer::styled().term_width(terminal::width())
}

/// One mistake with its line and the offending text underlined.
fn underlined(path: &str, text: &str, mistake: &Mistake) -> String {
    let at = within(text, &mistake.at);
    let snippet = Snippet::source(text).path(path).annotation(AnnotationKind::Primary.span(at));
    let group = Group::with_title(Level::ERROR.primary_title(wrapped(&mistake.message)))
        .element(snippet)
        .element(Level::HELP.message(wrapped(&mistake.help)));
    format!("{}\n", renderer().render(&[group]))
}

/// A path as messages name it.
pub(super) fn named(path: &Path) -> String {
    if path == Path::new("-") { "standard input".to_owned() } else { path.display().to_string() }
}
