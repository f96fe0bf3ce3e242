use super::material::{self, DataError, LookupError, Material};
use super::medium::{self, Medium, MediumError};

/// The embedded records together with those that the user brings; a user's record goes before an embedded one.
///
/// # Examples
/// ```
/// use seatwise::stock::{Library, Material};
/// let own = Material::parse("shop-iron", seatwise::stock::material::embedded_text("grey-iron").unwrap())?;
/// let library = Library { materials: vec![own], ..Library::default() };
/// assert_eq!(library.material("shop-iron")?.id(), "shop-iron");
/// assert!(library.material("grey-irom").unwrap_err().to_string().contains("grey-iron"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct Library {
    /// The user's materials.
    pub materials: Vec<Material>,
    /// The user's media.
    pub media: Vec<Medium>,
}

impl Library {
    /// The material with this id or plain name.
    ///
    /// # Errors
    /// [`LookupError`], with the nearest known names.
    pub fn material(&self, name: &str) -> Result<Material, LookupError> {
        let own = if self.materials.is_empty() { None } else { self.own_material(&material::normalised(name)) };
        own.map_or_else(|| material::embedded(name), |material| Ok(material.clone()))
    }

    /// The user's material that answers to a name, which is [`material::normalised`].
    fn own_material(&self, asked: &str) -> Option<&Material> {
        let answers = |known: &str| material::is_named(known, asked);
        self.materials.iter().find(|own| answers(own.id()) || own.names().any(answers))
    }

    /// The medium with this id or plain name.
    ///
    /// # Errors
    /// [`MediumError`], with the nearest known names.
    pub fn medium(&self, name: &str) -> Result<Medium, MediumError> {
        let own = self.media.iter().find(|own| own.is_called(name));
        own.map_or_else(|| medium::embedded(name), |medium| Ok(medium.clone()))
    }

    /// Every medium: the user's, then the embedded ones that none of them replaces.
    ///
    /// # Errors
    /// [`DataError`] when the embedded file is faulty.
    pub fn all_media(&self) -> Result<Vec<Medium>, DataError> {
        let replaced = |known: &Medium| self.media.iter().any(|own| own.is_called(known.id()));
        let embedded = medium::embedded_media()?.into_iter().filter(|known| !replaced(known));
        Ok(self.media.iter().cloned().chain(embedded).collect())
    }
}
