//! Pressure, stress and force of a joint.

use super::model::{Pressing, ShapeFactor};
use super::solved::SolvedSeats;
use super::{plastic, shape};
use crate::job::Job;
use crate::mechanics::{self, Part, Press, PressFit, Strength, weakest, yield_interference, yield_start};
use crate::plan::joint::{Joint, Side};
use crate::plan::model::SeatKind;
use crate::plan::strength::strength;
use crate::plan::{Method, PlanError};
use crate::quantity::{Cases, Force, Length, Pressure};

/// An interference, as a share of the diameter, by which ratios are found that are the same for any.
const TRIAL_SHARE: f64 = 1e-4;

/// Presses one joint at any interference.
pub(in crate::plan) struct Presser<'a> {
    joint: &'a Joint<'a>,
    length: Length,
    /// Friction of each case: the high end with the tightest, the low end with the loosest.
    friction: Cases<f64>,
    inner_strength: Strength,
    outer_strength: Strength,
    shape: ShapeFactor,
    /// Whether the outer ring stands for a liner and the housing around it.
    lined: bool,
}

/// The end of a range that belongs to each case.
pub(in crate::plan) fn ends((low, high): (f64, f64)) -> Cases<f64> {
    Cases { tightest: high, middle: 0.5 * (low + high), loosest: low }
}

impl<'a> Presser<'a> {
    pub(in crate::plan) fn new(
        job: &Job,
        joint: &'a Joint<'a>,
        method: (Method, &SolvedSeats),
    ) -> Result<Self, PlanError> {
        let length = job.part.width;
        let trial = plane(joint, length, joint.nominal * TRIAL_SHARE);
        Ok(Self {
            joint,
            length,
            friction: ends(job.press.friction),
            inner_strength: strength(joint.inner.material),
            outer_strength: strength(joint.outer.material),
            lined: joint.seat == SeatKind::Housing
                && job.housing.as_ref().is_some_and(|housing| housing.liner.is_some()),
            shape: shape::factor(job, joint.seat, method, &trial, job.press.friction.1)?,
        })
    }

    /// The joint as two rings of equal width.
    fn at(&self, interference: Length) -> mechanics::Joint {
        plane(self.joint, self.length, interference)
    }

    fn fits(&self, interference: &Cases<Length>) -> Result<Cases<PressFit>, PlanError> {
        interference.try_map(|interference| Ok(self.at(interference).solve()?))
    }

    /// Pressure, and force to full depth; nothing where the joint is open.
    pub(in crate::plan) fn pressure_and_force(
        &self,
        interference: &Cases<Length>,
    ) -> Result<(Cases<Pressure>, Cases<Force>), PlanError> {
        let fits = self.fits(interference)?;
        Ok((self.pressure_of(&fits), self.force_of(&fits, self.friction)?))
    }

    /// Axial force of the whole contact at other frictions than those of pressing.
    pub(in crate::plan) fn force_at(
        &self,
        interference: &Cases<Length>,
        friction: Cases<f64>,
    ) -> Result<Cases<Force>, PlanError> {
        self.force_of(&self.fits(interference)?, friction)
    }

    /// Force to full depth in the tightest case.
    pub(super) fn tightest_force(&self, interference: Length) -> Result<Force, PlanError> {
        let none = Length::default();
        let cases = Cases { tightest: interference, middle: none, loosest: none };
        Ok(self.pressure_and_force(&cases)?.1.tightest)
    }

    /// Force to full depth for each metre of interference at a friction of one, as two rings of equal width, in N/m; and the
    /// factor that the seat's shape adds.
    pub(in crate::plan) fn stiffness(&self) -> Result<(f64, &ShapeFactor), PlanError> {
        let trial = self.joint.nominal * TRIAL_SHARE;
        let pressure = self.at(trial).solve()?.pressure;
        let press = Press { pressure, diameter: self.joint.nominal, length: self.length, friction: 1.0 };
        Ok(((press.full_force()? / trial).value, &self.shape))
    }

    fn pressure_of(&self, fits: &Cases<PressFit>) -> Cases<Pressure> {
        fits.zip(ends(self.shape.pressure)).map(|(fit, factor)| fit.pressure * factor)
    }

    fn force_of(&self, fits: &Cases<PressFit>, friction: Cases<f64>) -> Result<Cases<Force>, PlanError> {
        fits.zip(friction).zip(ends(self.shape.force)).try_map(|((fit, friction), factor)| {
            let press = Press { pressure: fit.pressure, diameter: self.joint.nominal, length: self.length, friction };
            Ok(press.full_force()? * factor)
        })
    }

    /// Everything about pressing at these interferences.
    pub(in crate::plan) fn pressing(&self, interference: &Cases<Length>) -> Result<Pressing, PlanError> {
        let fits = self.fits(interference)?;
        let checks = fits.try_map(|fit| weakest(&fit, &self.inner_strength, &self.outer_strength))?;
        // What is certain: a seat that may be stiffer still is a matter of a caution, not of the limit.
        let stiffer = self.shape.pressure.0;
        let limit =
            yield_interference(&self.at(self.joint.nominal * TRIAL_SHARE), &self.inner_strength, &self.outer_strength)?;
        let weaker = self.weaker()?;
        Ok(Pressing {
            pressure: self.pressure_of(&fits),
            force: self.force_of(&fits, self.friction)?,
            hoop_outer: fits.zip(ends(self.shape.pressure)).map(|(fit, factor)| fit.outer.at_inside.hoop * factor),
            // Stress is in proportion to the pressure, and the strength does not change.
            yield_factor: checks.map(|check| check.factor.map(|factor| factor / stiffer)),
            weaker: self.side(weaker).name,
            // Two rings that touch always bear on each other, so there is always a limit.
            elastic_limit: limit.unwrap_or_default() / stiffer,
            elastic_limit_tresca: self.tresca(weaker)?.map(|limit| limit / stiffer),
            length: self.length,
            ring_change: self.ring_change(&fits),
            // The theory knows one hub: a ring that stands for liner and housing must not be taken into flow.
            plastic: if self.lined {
                None
            } else {
                plastic::plastic(
                    self.at(interference.tightest),
                    (&self.inner_strength, &self.outer_strength),
                    weaker,
                    checks.tightest.factor.map(|factor| factor / stiffer),
                )?
            },
            shape: self.shape.clone(),
        })
    }

    /// How far the ring of the part closes in its housing, or grows on its shaft.
    fn ring_change(&self, fits: &Cases<PressFit>) -> Option<Cases<Length>> {
        let change = |fit: &PressFit| match self.joint.seat {
            SeatKind::Housing => fit.bore_change().map(|change| -change),
            SeatKind::Shaft => Some(fit.outside_change()),
        };
        change(&fits.middle)?;
        Some(fits.zip(ends(self.shape.closing)).map(|(fit, factor)| change(&fit).unwrap_or_default() * factor))
    }

    /// The part that yields first, whatever the interference: stresses grow together.
    fn weaker(&self) -> Result<Part, PlanError> {
        let fit = self.at(self.joint.nominal * TRIAL_SHARE).solve()?;
        Ok(weakest(&fit, &self.inner_strength, &self.outer_strength)?.part)
    }

    fn tresca(&self, weaker: Part) -> Result<Option<Length>, PlanError> {
        let material = self.side(weaker).material.strength();
        if material.kind.is_brittle() {
            return Ok(None);
        }
        let onset = yield_start(&self.at(Length::default()), weaker, material.value)?;
        Ok(Some(onset.tresca.interference))
    }

    fn side(&self, part: Part) -> &Side<'a> {
        match part {
            Part::Inner => &self.joint.inner,
            Part::Outer => &self.joint.outer,
        }
    }
}

fn plane(joint: &Joint<'_>, length: Length, interference: Length) -> mechanics::Joint {
    mechanics::Joint { inner: joint.inner.ring, outer: joint.outer.ring, diameter: joint.nominal, length, interference }
}
