//! How a bearing is closed, and how hot and cold its seals, grease and rings may get.

mod raw;
mod words;

use std::fmt;

use serde::Deserialize;
use thiserror::Error;
use uom::si::f64::ThermodynamicTemperature;

use super::material::{DataError, Provenance, TemperatureLimit, UnknownName};

/// Kind of closure.
#[derive(Clone, Copy, Debug, Deserialize, Eq, PartialEq)]
pub enum ClosureKind {
    /// Neither shields nor seals; taken as not greased, or greased after fitting.
    #[serde(rename = "open")]
    Open,
    /// Metal shields over a grease fill.
    #[serde(rename = "shields")]
    Shields,
    /// Elastomer seals over a grease fill.
    #[serde(rename = "elastomer seals")]
    ElastomerSeals,
}

impl fmt::Display for ClosureKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Open => "open",
            Self::Shields => "shields",
            Self::ElastomerSeals => "elastomer seals",
        })
    }
}

/// A seal material.
#[derive(Clone, Debug, PartialEq)]
pub struct Elastomer {
    id: String,
    names: Vec<String>,
    coldest: TemperatureLimit,
    hottest: TemperatureLimit,
}

impl Elastomer {
    /// Abbreviation, as in ISO 1629.
    pub fn id(&self) -> &str {
        &self.id
    }

    /// Other names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.names.iter().map(String::as_str)
    }

    /// Coldest that it bears without being moved.
    pub fn coldest(&self) -> &TemperatureLimit {
        &self.coldest
    }

    /// Hottest that it bears for long.
    pub fn hottest(&self) -> &TemperatureLimit {
        &self.hottest
    }
}

/// How long a bearing may stay at a temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exposure {
    /// Temperature.
    pub temperature: ThermodynamicTemperature,
    /// Hours.
    pub hours: f64,
}

/// A closure with the limits that follow from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Closure {
    kind: ClosureKind,
    elastomer: Option<Elastomer>,
    coldest: Option<TemperatureLimit>,
    hottest: TemperatureLimit,
    exposures: Option<(Vec<Exposure>, Provenance)>,
    grease: Option<(String, Provenance)>,
}

/// Why a text is no closure.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ClosureError {
    /// A word that means nothing here.
    #[error(
        "`{word}` in closure `{asked}` is not understood{}: write `open`, `shields`, or an elastomer and `seals`, \
         for instance `NBR contact seals`",
        if nearest.is_empty() { String::new() } else { format!("; did you mean {}?", nearest.join(" or ")) }
    )]
    Word {
        /// Whole text.
        asked: String,
        /// The word.
        word: String,
        /// Elastomers that resemble it.
        nearest: Vec<String>,
    },
    /// Nothing, or two things that exclude each other.
    #[error("closure `{asked}` must say one of `open`, `shields` or `elastomer seals`")]
    Kind {
        /// Whole text.
        asked: String,
    },
    /// No elastomer or stabilisation class of that name.
    #[error(transparent)]
    Unknown(#[from] UnknownName),
    /// The embedded file is faulty; a test rules it out for a released crate.
    #[error(transparent)]
    File(#[from] DataError),
}

impl Closure {
    /// Reads a closure as a shop writes it: `open`, `shields`, `2Z`, `NBR contact seals`, `elastomer seals`, `2RS`.
    ///
    /// # Errors
    /// [`ClosureError::Word`] for a word that is not understood, [`ClosureError::Kind`] for contradictions.
    ///
    /// # Examples
    /// ```
    /// use seatwise::stock::closure::{Closure, ClosureKind};
    /// let closure = Closure::parse("NBR contact seals")?;
    /// assert_eq!(closure.kind(), ClosureKind::ElastomerSeals);
    /// assert_eq!(closure.elastomer().map(|e| e.id()), Some("NBR"));
    /// # Ok::<(), seatwise::stock::closure::ClosureError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, ClosureError> {
        let file = raw::file()?;
        let (kind, elastomer) = words::read(text, &file.elastomers)?;
        Ok(file.closure(kind, elastomer)?)
    }

    /// Kind of closure.
    pub fn kind(&self) -> ClosureKind {
        self.kind
    }

    /// Seal material, where it is stated.
    pub fn elastomer(&self) -> Option<&Elastomer> {
        self.elastomer.as_ref()
    }

    /// Coldest that the closure may get; `None` when it sets no limit of its own (open, or metal shields).
    ///
    /// For seals of unstated material, the limit of the usual elastomer that bears least.
    pub fn coldest(&self) -> Option<&TemperatureLimit> {
        self.coldest.as_ref()
    }

    /// Hottest that a bearing of standard class with this closure may get while it is fitted.
    pub fn hottest(&self) -> &TemperatureLimit {
        &self.hottest
    }

    /// How long the bearing may stay hot, hottest last, where a source says so.
    pub fn exposures(&self) -> Option<(&[Exposure], &Provenance)> {
        self.exposures.as_ref().map(|(list, provenance)| (list.as_slice(), provenance))
    }

    /// What chilling does to the grease fill, where there is one.
    pub fn grease_note(&self) -> Option<(&str, &Provenance)> {
        self.grease.as_ref().map(|(note, provenance)| (note.as_str(), provenance))
    }
}

/// The embedded elastomers.
///
/// # Errors
/// [`DataError`] when the embedded file is faulty.
pub fn elastomers() -> Result<Vec<Elastomer>, DataError> {
    Ok(raw::file()?.elastomers.clone())
}

/// The elastomer of that abbreviation or name, for a shaft seal's lip or case.
///
/// # Errors
/// [`ClosureError::Unknown`] with the nearest abbreviations.
pub fn elastomer(id_or_name: &str) -> Result<Elastomer, ClosureError> {
    let known = &raw::file()?.elastomers;
    words::elastomer(id_or_name, known).cloned().ok_or_else(|| {
        let nearest = words::nearest(id_or_name, known);
        UnknownName { what: "elastomer", asked: id_or_name.to_owned(), nearest }.into()
    })
}

/// Hottest that rings of a precision class may get while they are fitted, whatever the closure.
///
/// # Errors
/// [`DataError`] when the embedded file is faulty.
pub fn precision_hottest() -> Result<TemperatureLimit, DataError> {
    Ok(raw::file()?.precision.clone())
}

/// Operating temperature up to which rings of a stabilisation class (`SN`, `S0` to `S4`, DIN 623-1) keep their size.
///
/// # Errors
/// [`ClosureError::Unknown`] for another class.
pub fn stabilised_to(class: &str) -> Result<TemperatureLimit, ClosureError> {
    let known = &raw::file()?.stabilisation;
    let found = known.iter().find(|(name, _)| name.eq_ignore_ascii_case(class.trim()));
    found.map(|(_, limit)| limit.clone()).ok_or_else(|| {
        let nearest = known.iter().map(|(name, _)| name.clone()).collect();
        UnknownName { what: "stabilisation class", asked: class.to_owned(), nearest }.into()
    })
}
