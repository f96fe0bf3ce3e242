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
