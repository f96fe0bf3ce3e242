//! The materials that come with the crate, by id or plain name.
//!
//! Names are kept here as well as in the files, so that a look-up parses one file only; a test holds the two together.

use std::collections::HashMap;
use std::sync::{LazyLock, OnceLock};
use thiserror::Error;

use super::names::ALIASES;
use super::{Material, MaterialError, UnknownName};

/// Id and text of each file, in the order of the list of materials.
const FILES: &[(&str, &str)] = &[
    ("bearing-steel", include_str!("../../../materials/bearing-steel.toml")),
    ("carbon-steel", include_str!("../../../materials/carbon-steel.toml")),
    ("low-alloy-steel", include_str!("../../../materials/low-alloy-steel.toml")),
    ("stainless-304", include_str!("../../../materials/stainless-304.toml")),
    ("stainless-316", include_str!("../../../materials/stainless-316.toml")),
    ("stainless-440c", include_str!("../../../materials/stainless-440c.toml")),
    ("grey-iron", include_str!("../../../materials/grey-iron.toml")),
    ("ductile-iron", include_str!("../../../materials/ductile-iron.toml")),
    ("cast-aluminium", include_str!("../../../materials/cast-aluminium.toml")),
    ("die-cast-aluminium", include_str!("../../../materials/die-cast-aluminium.toml")),
    ("aluminium-6061-t6", include_str!("../../../materials/aluminium-6061-t6.toml")),
    ("aluminium-2024-t3", include_str!("../../../materials/aluminium-2024-t3.toml")),
    ("magnesium-az91", include_str!("../../../materials/magnesium-az91.toml")),
    ("bronze", include_str!("../../../materials/bronze.toml")),
    ("brass", include_str!("../../../materials/brass.toml")),
    ("copper", include_str!("../../../materials/copper.toml")),
    ("titanium-6al-4v", include_str!("../../../materials/titanium-6al-4v.toml")),
    ("invar", include_str!("../../../materials/invar.toml")),
    ("silicon-nitride", include_str!("../../../materials/silicon-nitride.toml")),
    ("acetal", include_str!("../../../materials/acetal.toml")),
    ("pa66", include_str!("../../../materials/pa66.toml")),
];

/// Why a named material cannot be had.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum LookupError {
    /// No material has that id or name.
    #[error(transparent)]
    Unknown(#[from] UnknownName),
    /// The embedded file is faulty; a test rules it out for a released crate.
    #[error(transparent)]
    File(#[from] MaterialError),
}

/// Ids of the embedded materials, steels first.
pub fn embedded_ids() -> impl Iterator<Item = &'static str> {
    FILES.iter().map(|(id, _)| *id)
}

/// Every plain name of an embedded material with the id it stands for.
pub fn embedded_aliases() -> impl Iterator<Item = (&'static str, &'static str)> {
    ALIASES.iter().flat_map(|(id, names)| names.iter().map(move |name| (*name, *id)))
}

/// Text of an embedded material's file, to print or to copy as a start of a user's own; `None` for an unknown id.
pub fn embedded_text(id: &str) -> Option<&'static str> {
    FILES.iter().find(|(known, _)| *known == id).map(|(_, text)| *text)
}

/// The embedded material of that id or plain name; case, spaces, hyphens and full stops do not matter.
///
/// # Errors
/// [`LookupError::Unknown`] with the nearest ids.
///
/// # Examples
/// ```
/// let cast = seatwise::stock::material::embedded("light alloy casting")?;
/// assert_eq!(cast.id(), "cast-aluminium");
/// # Ok::<(), seatwise::stock::material::LookupError>(())
/// ```
pub fn embedded(id_or_name: &str) -> Result<Material, LookupError> {
    let slots = &*SLOTS;
    let found = slots
        .by_name
        .get(&normalised(id_or_name))
        .and_then(|index| Some((FILES.get(*index)?, slots.read.get(*index)?)));
    match found {
        Some(((id, text), slot)) => Ok(slot.get_or_init(|| Material::parse(id, text)).clone()?),
        None => {
            let nearest = nearest_names(id_or_name, known_names());
            Err(UnknownName { what: "material", asked: id_or_name.to_owned(), nearest }.into())
        }
    }
}

/// Every id and name of an embedded material with the id.
fn known_names() -> impl Iterator<Item = (&'static str, &'static str)> {
    embedded_ids().map(|id| (id, id)).chain(embedded_aliases())
}

/// The embedded materials, each read when it is first asked for: a job names two or three of them.
struct Slots {
    read: Vec<OnceLock<Result<Material, MaterialError>>>,
    by_name: HashMap<String, usize>,
}

static SLOTS: LazyLock<Slots> = LazyLock::new(|| {
    let place = |id: &str| FILES.iter().position(|(known, _)| *known == id);
    let by_name = known_names().filter_map(|(name, id)| Some((normalised(name), place(id)?)));
    Slots { read: FILES.iter().map(|_| OnceLock::new()).collect(), by_name: by_name.collect() }
});

/// A name without what people write differently: case, spaces, hyphens, full stops.
pub(crate) fn normalised(name: &str) -> String {
    let mut plain = String::with_capacity(name.len());
    plain.extend(name.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase));
    plain
}

/// Whether a known name, without what people write differently, is `asked`, which is [`normalised`].
pub(crate) fn is_named(known: &str, asked: &str) -> bool {
    known.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).eq(asked.chars())
}

/// Up to three ids whose id or name resembles `asked`, nearest first.
pub(crate) fn nearest_names<'a>(asked: &str, known: impl Iterator<Item = (&'a str, &'a str)>) -> Vec<String> {
    /// Jaro-Winkler likeness below which a suggestion would puzzle more than help; chosen by trial.
    const ALIKE: f64 = 0.8;
    let asked = normalised(asked);
    let mut scored: Vec<(f64, &str)> =
        known.map(|(name, id)| (strsim::jaro_winkler(&normalised(name), &asked), id)).collect();
    scored.retain(|(score, _)| *score >= ALIKE);
    scored.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut ids: Vec<String> = Vec::new();
    for (_, id) in scored {
        if ids.len() < 3 && !ids.iter().any(|known| known == id) {
            ids.push(id.to_owned());
        }
    }
    ids
}
