use crate::job::Problems;
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use std::path::Path;

/// Why a run could not do what was asked.
#[derive(Debug)]
pub(super) enum Failure {
    /// A text with mistakes in it.
    Text { path: String, text: String, problems: Vec<Mistake> },
    /// Anything else: what is wrong, and what to do.
    Plain { message: String, help: String },
    /// The reader of standard output has gone away, as `head` does; not an error.
    ReaderGone,
}

/// A mistake in a text.
#[derive(Debug)]
pub(super) struct Mistake {
    pub(super) message: String,
    pub(super) at: std::ops::Range<usize>,
    pub(super) help: String,
}

impl Failure {
    pub(super) fn plain(message: impl Into<String>, help: impl Into<String>) -> Self {
        Self::Plain { message: message.into(), help: help.into() }
    }

    pub(super) fn file(path: &Path, what: &str, error: &std::io::Error, help: &str) -> Self {
        Self::plain(format!("{what} {}: {error}", path.display()), help)
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
            })
            .collect();
        Self::Text { path, text, problems }
    }

    /// The message as the user reads it, with colours that the stream strips where they are not wanted.
    pub(super) fn render(&self) -> String {
        match self {
            Self::Text { path, text, problems } => {
                problems.iter().map(|problem| underlined(path, text, problem)).collect()
            }
            Self::Plain { message, help } => format!(
                "{}\n",
                Renderer::styled().render(&[Group::with_title(Level::ERROR.primary_title(message.as_str()))
                    .element(Level::HELP.message(help.as_str()))])
            ),
            Self::ReaderGone => String::new(),
        }
    }
}

/// One mistake with its line and the offending text underlined.
fn underlined(path: &str, text: &str, mistake: &Mistake) -> String {
    let at = within(text, &mistake.at);
    let snippet = Snippet::source(text).path(path).annotation(AnnotationKind::Primary.span(at));
    let group = Group::with_title(Level::ERROR.primary_title(mistake.message.as_str()))
        .element(snippet)
        .element(Level::HELP.message(mistake.help.as_str()));
    format!("{}\n", Renderer::styled().render(&[group]))
}

/// A range that lies inside the text, at character boundaries.
fn within(text: &str, at: &std::ops::Range<usize>) -> std::ops::Range<usize> {
    let floor = |mut index: usize| {
        index = index.min(text.len());
        while !text.is_char_boundary(index) {
            index -= 1;
        }
        index
    };
    let start = floor(at.start);
    start..floor(at.end).max(start)
}

/// A path as messages name it.
pub(super) fn named(path: &Path) -> String {
    if path == Path::new("-") { "standard input".to_owned() } else { path.display().to_string() }
}
