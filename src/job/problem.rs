use std::fmt;
use std::ops::Range;

/// One thing that is wrong with a job, with its place in the text and what to do about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// What is wrong, with the value that was given and the range or the choices allowed.
    pub message: String,
    /// Bytes of the job text to underline.
    pub at: Range<usize>,
    /// What to do.
    pub help: String,
    /// The range or the choices that are allowed, where the message is about one.
    pub allowed: Option<String>,
}

impl Problem {
    /// A problem; `allowed` is read out of the message or the help, which say it in the same words everywhere.
    ///
    /// A range is told as "... must lie RANGE", a choice as "... one of: NAMES", "... knows: NAMES" or "... takes: NAMES". So
    /// what a program is given cannot differ from what a person reads.
    pub fn new(at: Range<usize>, message: impl Into<String>, help: impl Into<String>) -> Self {
        let (message, help) = (message.into(), help.into());
        let allowed = range_in(&message).or_else(|| choice_in(&help)).map(str::to_owned);
        Self { message, at, help, allowed }
    }
}

/// What the TOML reader says, in the words of a workshop where its own are those of a grammar.
pub(super) fn plainly(said: &str) -> String {
    match said {
        "invalid basic string, expected `\"`" => "the quote at the end of the value is missing".to_owned(),
        "duplicate key" => "this key is given twice in its table".to_owned(),
        other => other.to_owned(),
    }
}

/// What follows "must lie", to the end of its clause.
fn range_in(message: &str) -> Option<&str> {
    let (_, range) = message.split_once("must lie ")?;
    let end = [", ", "; ", ": "].iter().filter_map(|sign| range.find(sign)).min();
    Some(end.map_or(range, |end| &range[..end]).trim_end_matches('.'))
}

fn choice_in(help: &str) -> Option<&str> {
    let (_, names) = ["one of: ", "knows: ", "takes: "].iter().find_map(|words| help.split_once(words))?;
    let end = names.find("; ").unwrap_or(names.len());
    Some(&names[..end])
}

/// Everything that is wrong with a job, in the order of the text; never empty.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problems(Vec<Problem>);

impl Problems {
    /// Sorted by place; `None` when there is nothing wrong.
    pub(super) fn collect(mut found: Vec<Problem>) -> Option<Self> {
        found.sort_by_key(|problem| problem.at.start);
        found.dedup();
        (!found.is_empty()).then_some(Self(found))
    }

    /// The problems, in the order of the text.
    pub fn iter(&self) -> impl Iterator<Item = &Problem> {
        self.0.iter()
    }
}

impl fmt::Display for Problems {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, problem) in self.0.iter().enumerate() {
            if i > 0 {
                writeln!(f)?;
            }
            write!(f, "{}\n  help: {}", problem.message, problem.help)?;
        }
        Ok(())
    }
}

impl std::error::Error for Problems {}

#[cfg(test)]
mod tests {
    use super::Problem;

    #[test]
    fn what_is_allowed_is_what_the_words_say() {
        let allowed = |message: &str, help: &str| Problem::new(0..0, message, help).allowed;
        let range = allowed("`a.b` is 5 K but must lie from -1.5 K to 1 K, and only a ring has it", "one of: x");
        assert_eq!(range.as_deref(), Some("from -1.5 K to 1 K"));
        let choice = allowed("`a` cannot be \"x\"", "did you mean `y`? write one of: y, z; each is a word");
        assert_eq!(choice.as_deref(), Some("y, z"));
        assert_eq!(allowed("`a` is missing", "give it"), None);
    }
}
