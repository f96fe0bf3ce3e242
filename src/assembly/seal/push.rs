//! An estimate of the force that presses a seal home. No published rule was found; each bound says how it is made.

use super::SealError;
use crate::quantity::{Cases, Force, Length, Pressure};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::length::millimeter;
use uom::si::pressure::{megapascal, pascal};

/// Force at full depth, least and most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CaseForce {
    /// With the loosest fit and the low end of every assumption.
    pub least: Force,
    /// With the tightest fit and the high end of every assumption.
    pub most: Force,
}

/// A bare case of drawn sheet: a cylinder with a flange inside it.
///
/// The case yields long before its bore does. Least: an elastic cylinder alone, up to its yield strength,
/// p = 2 t min(E δ/D, σ)/D on the part of its width that touches. Most: cylinder and flange wholly at the yield strength around
/// the ring, which is what a limit load gives, q = 2 t σ (b + h)/D a unit of circumference, with the height h of the flange.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MetalCase {
    /// Thickness of the sheet, least and most.
    pub sheet: (Length, Length),
    /// Yield strength of the sheet, least and most.
    pub strength: (Pressure, Pressure),
    /// Elastic modulus.
    pub modulus: Pressure,
    /// Friction, least and most.
    pub friction: (f64, f64),
    /// Share of the width that touches at least: the rest is lead-in and bend.
    pub touching: f64,
}

/// A cover of rubber over the sheet: a strip that is bonded inside and slides outside.
///
/// p = 4/3 E (1 + S²) δ/(2 t), S = b/(4 t): compression of a long strip bonded on one face, of twice its thickness between bonded
/// faces (the rule for bonded strips of Gent and Lindley, from memory). The sheet under it counts as rigid, which is on the
/// high side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RubberCover {
    /// Thickness of the cover.
    pub thickness: Length,
    /// Elastic modulus of the rubber, least and most.
    pub modulus: (Pressure, Pressure),
    /// Friction, least and most.
    pub friction: (f64, f64),
    /// Share of the width that touches at least.
    pub touching: f64,
}

/// Inside, outside and width, m, checked.
fn sizes(inside: Length, outside: Length, width: Length) -> Result<(f64, f64, f64), SealError> {
    for (what, size) in [("inside of the seal", inside), ("width of the seal", width)] {
        let value = size.get::<millimeter>();
        if !(value.is_finite() && value > 0.0) {
            return Err(SealError::Size { what, value });
        }
    }
    if !(outside > inside && outside.value.is_finite()) {
        let [inside, outside] = [inside, outside].map(|size| size.get::<millimeter>());
        return Err(SealError::Order { inside, outside });
    }
    Ok((inside.get::<meter>(), outside.get::<meter>(), width.get::<meter>()))
}

impl MetalCase {
    /// What is taken where nothing is known: sheet of 0.8 to 1.2 mm, drawn steel of 200 to 350 MPa, oiled.
    ///
    /// Common practice, no published source.
    pub fn usual() -> Self {
        Self {
            sheet: (Length::new::<millimeter>(0.8), Length::new::<millimeter>(1.2)),
            strength: (Pressure::new::<megapascal>(200.0), Pressure::new::<megapascal>(350.0)),
            modulus: Pressure::new::<megapascal>(206_000.0),
            friction: (0.08, 0.15),
            touching: 0.7,
        }
    }

    /// Force to press the case home; zero at the low end where the loosest fit has no interference.
    ///
    /// # Errors
    /// [`SealError`] for sizes that make no seal.
    pub fn force(
        &self,
        inside: Length,
        outside: Length,
        width: Length,
        fit: Cases<Length>,
    ) -> Result<CaseForce, SealError> {
        let (inside, outside, width) = sizes(inside, outside, width)?;
        let elastic =
            |interference: Length| self.modulus.get::<pascal>() * interference.get::<meter>().max(0.0) / outside;
        let hoop = elastic(fit.loosest).min(self.strength.0.get::<pascal>());
        let pressure = 2.0 * self.sheet.0.get::<meter>() * hoop / outside;
        let least = self.friction.0 * pressure * PI * outside * width * self.touching;
        let hoop = elastic(fit.tightest).min(self.strength.1.get::<pascal>());
        let section = self.sheet.1.get::<meter>() * (width + (outside - inside) / 2.0);
        let most = self.friction.1 * 2.0 * PI * hoop * section;
        Ok(CaseForce { least: Force::new::<newton>(least), most: Force::new::<newton>(most.max(least)) })
    }
}

impl RubberCover {
    /// What is taken where nothing is known: 1 mm of rubber of 70 to 75 Shore A, 6 to 8 MPa, oiled.
    ///
    /// Common practice, no published source.
    pub fn usual() -> Self {
        Self {
            thickness: Length::new::<millimeter>(1.0),
            modulus: (Pressure::new::<megapascal>(6.0), Pressure::new::<megapascal>(8.0)),
            friction: (0.10, 0.25),
            touching: 0.7,
        }
    }

    /// Force to press the covered case home; zero at the low end where the loosest fit has no interference.
    ///
    /// # Errors
    /// [`SealError`] for sizes that make no seal.
    pub fn force(
        &self,
        inside: Length,
        outside: Length,
        width: Length,
        fit: Cases<Length>,
    ) -> Result<CaseForce, SealError> {
        let (_, outside, width) = sizes(inside, outside, width)?;
        let thickness = self.thickness.get::<meter>();
        let force = |modulus: Pressure, friction: f64, width: f64, interference: Length| {
            let shape = width / (4.0 * thickness);
            let stiff = 4.0 / 3.0 * modulus.get::<pascal>() * (1.0 + shape * shape);
            let pressure = stiff * interference.get::<meter>().max(0.0) / (2.0 * thickness);
            Force::new::<newton>(friction * pressure * PI * outside * width)
        };
        let least = force(self.modulus.0, self.friction.0, width * self.touching, fit.loosest);
        Ok(CaseForce { least, most: force(self.modulus.1, self.friction.1, width, fit.tightest) })
    }
}
