use super::Outcome;
use super::failure::Failure;
use crate::report::json;

pub(super) fn run() -> Result<Outcome, Failure> {
    let text = json::schema()
        .map_err(|error| Failure::plain(format!("the schema could not be printed: {error}"), "report this"))?;
    Ok(Outcome::done(text))
}
