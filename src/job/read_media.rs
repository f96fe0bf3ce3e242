//! What the shop has to chill and to warm with.

use super::section::{Notes, Section};
use crate::stock::Library;
use crate::stock::medium::{Direction, Medium};

pub(super) const KEYS: [&str; 1] = ["media"];

const WANTED: &str = "write media = [\"domestic-freezer\", \"oven\"]; `seatwise media` lists them";

/// The media under `media`, each once, in the order in which they were typed.
pub(super) fn media(section: &Section<'_>, library: &Library, notes: &mut Notes) -> Option<Vec<Medium>> {
    section.missing("media", WANTED, notes);
    let words = section.word_list("media", WANTED, notes)?;
    if words.is_empty() {
        notes.problem(section.place("media"), "`shop.media` is an empty list", WANTED);
        return None;
    }
    let mut media: Vec<Medium> = Vec::new();
    let mut sound = true;
    for word in words {
        match usable(word.text, library) {
            Ok(medium) if media.iter().any(|known| known.id() == medium.id()) => {}
            Ok(medium) => media.push(medium),
            Err(message) => {
                notes.problem(word.at, format!("`shop.media`: {message}"), "`seatwise media` lists them");
                sound = false;
            }
        }
    }
    sound.then_some(media)
}

fn usable(name: &str, library: &Library) -> Result<Medium, String> {
    let medium = library.medium(name).map_err(|error| error.to_string())?;
    if medium.direction() == Direction::Air {
        return Err(format!("{} neither chills nor warms", medium.id()));
    }
    Ok(medium)
}
