//! Pressure, stress and force of a joint.

use super::PlanError;
use super::joint::{Joint, Side};
use super::model::Pressing;
use crate::job::Job;
use crate::mechanics::{self, Press, PressFit, Strength, weakest, yield_interference};
use crate::quantity::{Cases, Force, Length, Pressure};
use crate::stock::Material;

/// Presses one joint at any interference.
pub(super) struct Presser<'a> {
    joint: &'a Joint<'a>,
    length: Length,
    /// Friction of each case: the high end with the tightest, the low end with the loosest.
    friction: Cases<f64>,
    inner_strength: Strength,
    outer_strength: Strength,
}

impl<'a> Presser<'a> {
    pub(super) fn new(job: &Job, joint: &'a Joint<'a>) -> Self {
        let (low, high) = job.press.friction;
        Self {
            joint,
            length: job.part.width,
            friction: Cases { tightest: high, middle: 0.5 * (low + high), loosest: low },
            inner_strength: strength(joint.inner.material),
            outer_strength: strength(joint.outer.material),
        }
    }

    fn at(&self, interference: Length) -> mechanics::Joint {
        mechanics::Joint {
            inner: self.joint.inner.ring,
            outer: self.joint.outer.ring,
            diameter: self.joint.nominal,
            length: self.length,
            interference,
        }
    }

    fn fits(&self, interference: &Cases<Length>) -> Result<Cases<PressFit>, PlanError> {
        interference.try_map(|interference| Ok(self.at(interference).solve()?))
    }

    /// Pressure, and force to full depth; nothing where the joint is open.
    pub(super) fn pressure_and_force(
        &self,
        interference: &Cases<Length>,
    ) -> Result<(Cases<Pressure>, Cases<Force>), PlanError> {
        let fits = self.fits(interference)?;
        Ok((fits.map(|fit| fit.pressure), self.force_of(&fits)?))
    }

    fn force_of(&self, fits: &Cases<PressFit>) -> Result<Cases<Force>, PlanError> {
        fits.zip(self.friction).try_map(|(fit, friction)| {
            let press = Press { pressure: fit.pressure, diameter: self.joint.nominal, length: self.length, friction };
            Ok(press.full_force()?)
        })
    }

    /// Everything about pressing at these interferences.
    pub(super) fn pressing(&self, interference: &Cases<Length>) -> Result<Pressing, PlanError> {
        let fits = self.fits(interference)?;
        let checks = fits.try_map(|fit| weakest(&fit, &self.inner_strength, &self.outer_strength))?;
        let limit =
            yield_interference(&self.at(self.joint.nominal * 1e-4), &self.inner_strength, &self.outer_strength)?;
        Ok(Pressing {
            pressure: fits.map(|fit| fit.pressure),
            force: self.force_of(&fits)?,
            hoop_outer: fits.map(|fit| fit.outer.at_inside.hoop),
            yield_factor: checks.map(|check| check.factor),
            weaker: self.name(&self.weaker()?),
            // Two rings that touch always bear on each other, so there is always a limit.
            elastic_limit: limit.unwrap_or_default(),
            length: self.length,
        })
    }

    /// The part that yields first, whatever the interference: stresses grow together.
    fn weaker(&self) -> Result<mechanics::Part, PlanError> {
        let fit = self.at(self.joint.nominal * 1e-4).solve()?;
        Ok(weakest(&fit, &self.inner_strength, &self.outer_strength)?.part)
    }

    fn name(&self, part: &mechanics::Part) -> &'static str {
        let side: &Side<'_> = match part {
            mechanics::Part::Inner => &self.joint.inner,
            mechanics::Part::Outer => &self.joint.outer,
        };
        side.name
    }
}

fn strength(material: &Material) -> Strength {
    let strength = material.strength();
    if strength.kind.is_brittle() { Strength::brittle(strength.value) } else { Strength::ductile(strength.value) }
}
