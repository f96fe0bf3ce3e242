//! A bore with a liner in it: two rings that a third one is pressed into as if they were one.

use super::error::MechanicsError;
use super::ring::{CheckedRing, Ring, RingState};
use super::seam::{LARGEST_SHARE, checked_interference, compliance, inside_at, outside_at};
use crate::quantity::{Length, Pressure, Ratio, within};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;

/// Least excess of `(b² + a²)/(b² - a²)` over one at which a ring of the liner's material still has an outside.
const LEAST_EXCESS: f64 = 1e-6;

/// How a liner is held in its housing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Held {
    /// Cast in or bonded: it follows the housing in tension as in pressure.
    Bonded,
    /// Pressed or shrunk in with this diametral interference at the reference temperature: it comes free where that is
    /// used up.
    Pressed(Length),
}

/// A liner in a housing, before a ring goes into it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinedBore {
    /// The liner; its outside lies at the seam.
    pub liner: Ring,
    /// The housing; its inside lies at the seam.
    pub housing: Ring,
    /// Diameter at which both meet.
    pub seam: Length,
    /// How the liner is held.
    pub held: Held,
}

/// A lined bore at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinedState {
    /// Change of the liner's bore from the fitted liner at the reference temperature, over the bore.
    pub bore_strain: Ratio,
    /// Pressure between liner and housing; negative where a bonded liner pulls, zero where a pressed one is free.
    pub between: Pressure,
    /// Stresses and changes of the liner.
    pub liner: RingState,
    /// Stresses and changes of the housing.
    pub housing: RingState,
}

impl LinedBore {
    /// The bore under a pressure in it, with liner and housing strained by their temperature.
    ///
    /// With q the pressure at the seam of diameter D: `q (c_liner + c_housing) = δ + D (ε_liner - ε_housing) + ΔD_liner(p)`,
    /// c being what each gives way for a pressure of one (Lamé), and q not below zero where the liner is only pressed in.
    ///
    /// **Valid for** plane stress, elastic, round and concentric parts of equal length, each at one temperature.
    ///
    /// # Errors
    /// As for [`Compound::solve`](super::Compound::solve).
    ///
    /// **Source**: as for [`Ring::under`], two layers.
    pub fn under(&self, pressure: Pressure, liner: Ratio, housing: Ratio) -> Result<LinedState, MechanicsError> {
        let rings = self.checked_rings()?;
        let free = |strain: Ratio| within("free strain", strain.get::<ratio>(), (-LARGEST_SHARE, LARGEST_SHARE), "");
        let strains = (free(liner)?, free(housing)?);
        let pressure = pressure.get::<pascal>();
        let between = self.between(&rings, pressure, strains)?;
        let at_first = self.between(&rings, 0.0, (0.0, 0.0))?;
        let (inner, outer) = rings;
        let bore = 2.0 * inner.inside_radius;
        let moved =
            inner.change(pressure, between, inner.inside_radius) - inner.change(0.0, at_first, inner.inside_radius);
        Ok(LinedState {
            bore_strain: Ratio::new::<ratio>(moved / bore + strains.0),
            between: Pressure::new::<pascal>(between),
            liner: inner.state(pressure, between),
            housing: outer.state(between, 0.0),
        })
    }

    /// The one ring that gives way to a pressure in the bore as liner and housing do together, while they touch.
    ///
    /// It is of the liner's material, so that hoop stress and strain at the bore are the liner's own, those of its fit in
    /// the housing left out; its outside makes up the stiffness: `(b² + a²)/(b² - a²) = E c/d - ν`. In a housing so stiff that no
    /// outside would do, it has the housing's outside and a stiffer material, and overstates the hoop stress.
    ///
    /// # Errors
    /// As for [`LinedBore::under`].
    ///
    /// **Source**: Lamé; two rings with one compliance.
    pub fn stands_for(&self) -> Result<Ring, MechanicsError> {
        let (inner, outer) = self.checked_rings()?;
        let passed_on = inner.change(1.0, 0.0, inner.outside_radius) / compliance(&inner, &outer);
        let bore = 2.0 * inner.inside_radius;
        let gives = inner.change(1.0, passed_on, inner.inside_radius) / bore;
        let (modulus, poisson) = (self.liner.elastic_modulus.get::<pascal>(), self.liner.poisson);
        let shape = modulus * gives - poisson;
        if shape > 1.0 + LEAST_EXCESS {
            let outside = Length::new::<meter>(bore * ((shape + 1.0) / (shape - 1.0)).sqrt());
            return Ok(Ring { outside, ..self.liner });
        }
        let (a, b) = (inner.inside_radius.powi(2), outer.outside_radius.powi(2));
        let stiffer = Pressure::new::<pascal>(((b + a) / (b - a) + poisson) / gives);
        Ok(Ring { outside: self.housing.outside, elastic_modulus: stiffer, ..self.liner })
    }

    fn checked_rings(&self) -> Result<(CheckedRing, CheckedRing), MechanicsError> {
        let (liner, housing) = (outside_at(self.seam, self.liner)?, inside_at(self.seam, self.housing)?);
        if liner.inside.is_none() {
            return Err(MechanicsError::OuterIsSolid);
        }
        Ok((liner.check()?, housing.check()?))
    }

    fn between(
        &self,
        (liner, housing): &(CheckedRing, CheckedRing),
        pressure: f64,
        (strain, around): (f64, f64),
    ) -> Result<f64, MechanicsError> {
        let fitted = match self.held {
            Held::Bonded => 0.0,
            Held::Pressed(interference) => checked_interference(interference, self.seam)?,
        };
        let grown = self.seam.get::<meter>() * (strain - around) + liner.change(pressure, 0.0, liner.outside_radius);
        let between = (fitted + grown) / compliance(liner, housing);
        Ok(if self.held == Held::Bonded { between } else { between.max(0.0) })
    }
}
