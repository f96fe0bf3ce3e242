use super::error::{QuantityError, quoted};
use super::quantities::shifted;
use super::read::{Wanted, read};
use super::unit::Kind;
use super::{Entered, Length};
use uom::si::length::meter;

/// A surface roughness with the parameter in which it was given (ISO 21920-2, formerly ISO 4287).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Roughness {
    /// Arithmetic mean deviation of the profile.
    Ra(Length),
    /// Maximum height of the profile.
    Rz(Length),
}

impl Roughness {
    /// The height that was given, whichever parameter it is.
    pub fn height(self) -> Length {
        match self {
            Self::Ra(height) | Self::Rz(height) => height,
        }
    }
}

const HEIGHT: Wanted = Wanted {
    kind: Kind::Length,
    what: "a roughness",
    units: "µm or µin after Ra or Rz",
    example: "Ra 1.6 um or Rz 63 uin",
    least: 0.0,
    most: 1e-3,
    range: "0 to 1 mm",
    thousands_end: 1e-3,
};

/// Reads a roughness, such as "Ra 1.6 um", "Rz 6.3 um" or "Ra 63 uin".
///
/// # Errors
/// No "Ra" or "Rz" before it (Rz is several times Ra, so neither is assumed), no number or unit, more than 1 mm.
pub fn roughness(text: &str) -> Result<Entered<Roughness>, QuantityError> {
    let start = text.len() - text.trim_start().len();
    let name: String = text[start..].chars().take(2).collect::<String>().to_lowercase();
    let parameter: fn(Length) -> Roughness = match name.as_str() {
        "ra" => Roughness::Ra,
        "rz" => Roughness::Rz,
        _ => return Err(no_parameter(text)),
    };
    let cut = start + name.len();
    let entered = read(&text[cut..], &HEIGHT).map_err(|error| shifted(error, cut))?;
    Ok(entered.map(|height| parameter(Length::new::<meter>(height))))
}

fn no_parameter(text: &str) -> QuantityError {
    let typed = text.trim();
    if typed.is_empty() {
        return QuantityError::new(0..text.len(), "nothing is written where a roughness is wanted", HEIGHT.help());
    }
    let problem = match read(text, &HEIGHT) {
        Ok(_) => format!("{} does not say whether it is Ra or Rz", quoted(typed)),
        Err(_) => format!("{} does not begin with Ra or Rz", quoted(typed)),
    };
    QuantityError::new(0..text.len(), problem, HEIGHT.help())
}
