use super::Outcome;
use super::args::{Format, MediaFlags};
use super::failure::Failure;
use crate::report::stock;
use crate::stock::medium;

pub(super) fn run(flags: &MediaFlags) -> Result<Outcome, Failure> {
    let text = match &flags.name {
        None => {
            let media = medium::embedded_media().map_err(|error| Failure::plain(error.to_string(), "report this"))?;
            match flags.format {
                Format::Text => Ok(stock::media_text(&media)),
                Format::Json => stock::media_json(&media),
            }
        }
        Some(name) => {
            let medium = medium::embedded(name)
                .map_err(|error| Failure::plain(error.to_string(), "`seatwise media` lists them"))?;
            match flags.format {
                Format::Text => Ok(stock::medium_text(&medium)),
                Format::Json => stock::medium_json(&medium),
            }
        }
    };
    text.map(Outcome::done).map_err(Failure::unprintable)
}
