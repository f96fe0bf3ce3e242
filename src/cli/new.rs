use super::Outcome;
use super::args::NewFlags;
use crate::job::STARTERS;

/// The job to begin with; clap has already refused a kind that there is not.
pub(super) fn run(flags: &NewFlags) -> Outcome {
    let text = STARTERS.iter().find(|starter| starter.name == flags.kind).map_or("", |starter| starter.text);
    Outcome::done(text.to_owned())
}
