use super::Outcome;
use super::args::{SchemaFlags, SchemaOf};
use super::failure::Failure;
use crate::report::{exercise, json, refusal, section};

pub(super) fn run(flags: &SchemaFlags) -> Result<Outcome, Failure> {
    let schema = match flags.of {
        SchemaOf::Plan => json::schema(),
        SchemaOf::Section => section::schema(),
        SchemaOf::Exercise => exercise::schema(),
        SchemaOf::Seal => json::seal_schema(),
        SchemaOf::Error => refusal::schema(),
    };
    let text =
        schema.map_err(|error| Failure::plain(format!("the schema could not be printed: {error}"), "report this"))?;
    Ok(Outcome::done(text))
}
