use super::Outcome;
use super::args::SchemaFlags;
use super::failure::Failure;
use crate::report::schemas;

pub(super) fn run(flags: &SchemaFlags) -> Result<Outcome, Failure> {
    let text = match schemas::schema(&flags.of) {
        Some(schema) => schema
            .map_err(|error| Failure::plain(format!("the schema could not be printed: {error}"), "report this"))?,
        None => {
            return Err(Failure::plain(
                format!("there is no format {}", flags.of),
                "`seatwise schema --help` lists them",
            ));
        }
    };
    Ok(Outcome::done(text))
}
