use super::Outcome;
use super::args::{Format, MediaFlags};
use super::failure::Failure;
use super::input;
use super::output::Output;
use crate::report::stock;

pub(super) fn run(flags: &MediaFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.own)?;
    let text = match &flags.name {
        None => {
            let media = library.all_media().map_err(|error| Failure::plain(error.to_string(), "report this"))?;
            match flags.format {
                Format::Text => Ok(stock::media_text(&media, output.columns())),
                Format::Json => stock::media_json(&media),
            }
        }
        Some(name) => {
            let medium = library
                .medium(name)
                .map_err(|error| Failure::plain(error.to_string(), "`seatwise media` lists them"))?;
            match flags.format {
                Format::Text => Ok(stock::medium_text(&medium, output.columns())),
                Format::Json => stock::medium_json(&medium),
            }
        }
    };
    text.map(Outcome::done).map_err(Failure::unprintable)
}
