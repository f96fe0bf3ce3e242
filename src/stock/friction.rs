//! Coefficient of friction of a part pressed into its seat, by material families and lubrication.

use serde::Deserialize;
use std::sync::LazyLock;

use super::material::{Bounds, DataError, Family, Provenance, Source, Status};

const FILE: &str = "materials/friction.toml";
const TEXT: &str = include_str!("../../materials/friction.toml");

/// State of the faces that slide on each other.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Lubrication {
    /// Clean and dry, not degreased with particular care.
    Dry,
    /// Wetted with mineral oil or assembly fluid.
    Oiled,
}

/// Lowest and highest coefficient of friction for axial sliding.
///
/// The high end belongs to the force that a press must give, the low end to the force that a fit can hold.
#[derive(Clone, Debug, PartialEq)]
pub struct FrictionRange {
    /// Lowest.
    pub low: f64,
    /// Highest.
    pub high: f64,
    /// Where the range comes from.
    pub provenance: Provenance,
    /// True when the file has no row for the pair and the span of the other metals was taken.
    pub is_fallback: bool,
}

impl FrictionRange {
    /// Both ends without the source.
    pub fn bounds(&self) -> Bounds {
        Bounds { low: self.low, high: self.high }
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFile {
    pair: Vec<RawPair>,
    fallback: RawFallback,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawPair {
    families: [Family; 2],
    dry: Option<RawRange>,
    oiled: Option<RawRange>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFallback {
    dry: RawRange,
    oiled: RawRange,
}

#[derive(Clone, Deserialize)]
#[serde(deny_unknown_fields)]
struct RawRange {
    low: f64,
    high: f64,
    source: Source,
    status: Status,
}

impl RawRange {
    fn to_range(&self, is_fallback: bool) -> Result<FrictionRange, DataError> {
        let Self { low, high, source, status } = self.clone();
        if !(low > 0.0 && low <= high && high < 1.0) {
            let message = format!("friction {low} to {high} must rise and lie between 0 and 1");
            return Err(DataError { file: FILE, message });
        }
        Ok(FrictionRange { low, high, provenance: Provenance { source, status }, is_fallback })
    }
}

/// The embedded file, read once.
fn file() -> Result<&'static RawFile, DataError> {
    static READ: LazyLock<Result<RawFile, DataError>> = LazyLock::new(|| {
        toml::from_str(TEXT).map_err(|error| DataError { file: FILE, message: error.message().to_owned() })
    });
    READ.as_ref().map_err(DataError::clone)
}

/// Friction between two families of materials, in either order.
///
/// # Errors
/// [`DataError`] when the embedded file is faulty; a test calls every pair.
///
/// # Examples
/// ```
/// use seatwise::stock::{friction::{Lubrication, friction}, material::Family};
/// let range = friction(Family::LightAlloy, Family::Steel, Lubrication::Oiled)?;
/// assert!(range.low < range.high && !range.is_fallback);
/// # Ok::<(), seatwise::stock::material::DataError>(())
/// ```
pub fn friction(one: Family, other: Family, lubrication: Lubrication) -> Result<FrictionRange, DataError> {
    let file = file()?;
    let of_pair =
        file.pair.iter().find(|pair| pair.families == [one, other] || pair.families == [other, one]).and_then(|pair| {
            match lubrication {
                Lubrication::Dry => pair.dry.as_ref(),
                Lubrication::Oiled => pair.oiled.as_ref(),
            }
        });
    match of_pair {
        Some(range) => range.to_range(false),
        None => match lubrication {
            Lubrication::Dry => file.fallback.dry.to_range(true),
            Lubrication::Oiled => file.fallback.oiled.to_range(true),
        },
    }
}
