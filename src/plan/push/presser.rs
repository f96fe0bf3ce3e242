//! Pressure, stress and force of a joint.

use super::model::{Pressing, ShapeFactor, TakesSet};
use super::set::{FLOW, Yielding};
use super::solved::SolvedSeats;
use super::{plastic, shape};
use crate::job::Job;
use crate::mechanics::{self, Part, Press, PressFit, Strength, YieldedBush, weakest, yield_interference, yield_start};
use crate::plan::joint::{Joint, Side};
use crate::plan::model::SeatKind;
use crate::plan::strength::strength;
use crate::plan::{Method, PlanError};
use crate::quantity::{Cases, Force, Length, Pressure};
use uom::si::ratio::ratio;

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
    /// An inner part that may yield and goes on holding; none for what must not.
    yielding: Option<Yielding>,
}

/// A joint at one interference.
struct Pressed {
    /// Both rings elastic.
    elastic: PressFit,
    /// Share of the elastic pressure that is left where the inner part yields; one elsewhere.
    left: f64,
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
        let (inner_strength, outer_strength) = (strength(joint.inner.material), strength(joint.outer.material));
        let lined =
            joint.seat == SeatKind::Housing && job.housing.as_ref().is_some_and(|housing| housing.liner.is_some());
        // A ring that stands for liner and housing has not the strength of either.
        let yielding = if lined { None } else { Yielding::new(job, joint, trial, (&inner_strength, &outer_strength))? };
        Ok(Self {
            joint,
            length,
            friction: ends(job.press.friction),
            inner_strength,
            outer_strength,
            lined,
            yielding,
            shape: shape::factor(job, joint.seat, method, &trial, job.press.friction.1)?,
        })
    }

    /// The joint as two rings of equal width.
    fn at(&self, interference: Length) -> mechanics::Joint {
        plane(self.joint, self.length, interference)
    }

    fn pressed(&self, interference: &Cases<Length>) -> Result<Cases<Pressed>, PlanError> {
        interference
            .zip(ends(self.shape.pressure))
            .zip(ends(FLOW))
            .try_map(|((interference, factor), flow)| self.pressed_once(interference, (factor, flow)))
    }

    /// One case, in a seat that is stiffer by a factor, with the flow stress of the inner part as a share of its strength.
    fn pressed_once(&self, interference: Length, (factor, flow): (f64, f64)) -> Result<Pressed, PlanError> {
        let elastic = self.at(interference).solve()?;
        let yielded = self.yielded(interference, (factor, flow))?;
        let left = yielded.map_or(1.0, |state| (state.pressure / (elastic.pressure * factor)).get::<ratio>());
        Ok(Pressed { elastic, left })
    }

    /// The inner part where it yields and goes on holding, in a seat that is stiffer by a factor, with its flow stress as a share of
    /// its strength.
    fn yielded(&self, interference: Length, with: (f64, f64)) -> Result<Option<YieldedBush>, PlanError> {
        self.yielding.as_ref().map_or(Ok(None), |yielding| yielding.at(interference, with))
    }

    /// Pressure, and force to full depth; nothing where the joint is open.
    pub(in crate::plan) fn pressure_and_force(
        &self,
        interference: &Cases<Length>,
    ) -> Result<(Cases<Pressure>, Cases<Force>), PlanError> {
        let pressed = self.pressed(interference)?;
        Ok((self.pressure_of(&pressed), self.force_of(&pressed, self.friction)?))
    }

    /// Axial force that the whole contact holds at this friction, once what yields in any state has yielded (see
    /// [`Presser::lasting`]).
    pub(in crate::plan) fn held(
        &self,
        interference: &Cases<Length>,
        friction: f64,
        lasting: &Cases<Length>,
    ) -> Result<Cases<Force>, PlanError> {
        let stiffened = interference.zip(ends(self.shape.pressure)).zip(*lasting);
        let held = stiffened.try_map(|((interference, factor), set)| {
            let Pressed { elastic, left: loading } = self.pressed_once(interference, (factor, FLOW.0))?;
            // Relieved it is elastic, from the interference that is left.
            let relieved =
                if set > Length::default() { ((interference - set) / interference).get::<ratio>() } else { 1.0 };
            let left = if interference > Length::default() { loading.min(relieved).max(0.0) } else { 1.0 };
            Ok::<_, PlanError>(Pressed { elastic, left })
        })?;
        self.force_of(&held, Cases::same(friction))
    }

    /// Interference that is lost for good once each of these states has been; zero where nothing yields.
    pub(in crate::plan) fn lasting(&self, states: &[Cases<Length>]) -> Result<Cases<Length>, PlanError> {
        let mut most = Cases::same(Length::default());
        for interference in states {
            let stiffened = interference.zip(ends(self.shape.pressure)).zip(most);
            most = stiffened.try_map(|((interference, factor), most)| {
                let state = self.yielded(interference, (factor, FLOW.0))?;
                Ok::<_, PlanError>(state.map_or(most, |state| most.max(state.permanent_set)))
            })?;
        }
        Ok(most)
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

    /// What becomes of an inner part that yields at this interference and goes on holding.
    pub(in crate::plan) fn set(&self, interference: Length) -> Result<Option<TakesSet>, PlanError> {
        let factors = (self.shape.pressure.0, self.shape.closing.1);
        self.yielding.as_ref().map_or(Ok(None), |yielding| yielding.set(interference, factors))
    }

    /// The inner part that may yield and goes on holding.
    pub(in crate::plan) fn yielding(&self) -> Option<Yielding> {
        self.yielding
    }

    fn pressure_of(&self, pressed: &Cases<Pressed>) -> Cases<Pressure> {
        pressed.each().zip(ends(self.shape.pressure)).map(|(at, factor)| at.elastic.pressure * factor * at.left)
    }

    fn force_of(&self, pressed: &Cases<Pressed>, friction: Cases<f64>) -> Result<Cases<Force>, PlanError> {
        pressed.each().zip(friction).zip(ends(self.shape.force)).try_map(|((at, friction), factor)| {
            let pressure = at.elastic.pressure * at.left;
            let press = Press { pressure, diameter: self.joint.nominal, length: self.length, friction };
            Ok(press.full_force()? * factor)
        })
    }

    /// Everything about pressing at these interferences.
    pub(in crate::plan) fn pressing(&self, interference: &Cases<Length>) -> Result<Pressing, PlanError> {
        let pressed = self.pressed(interference)?;
        let checks = pressed.each().try_map(|at| weakest(&at.elastic, &self.inner_strength, &self.outer_strength))?;
        // What is certain: a seat that may be stiffer still is a matter of a caution, not of the limit.
        let stiffer = self.shape.pressure.0;
        let limit =
            yield_interference(&self.at(self.joint.nominal * TRIAL_SHARE), &self.inner_strength, &self.outer_strength)?;
        let weaker = self.weaker()?;
        let stiffest = |yielding: &Yielding| yielding.high(interference.tightest, self.shape.pressure.1);
        let flow_high = self.yielding.as_ref().map_or(Ok(None), stiffest)?;
        let hoop = |(at, factor): (&Pressed, f64)| at.elastic.outer.at_inside.hoop * factor * at.left;
        Ok(Pressing {
            pressure: self.pressure_of(&pressed),
            force: self.force_of(&pressed, self.friction)?,
            hoop_outer: pressed.each().zip(ends(self.shape.pressure)).map(hoop),
            // Stress is in proportion to the pressure, and the strength does not change.
            yield_factor: checks.map(|check| check.factor.map(|factor| factor / stiffer)),
            weaker: self.side(weaker).name,
            // Two rings that touch always bear on each other, so there is always a limit.
            elastic_limit: limit.unwrap_or_default() / stiffer,
            elastic_limit_tresca: self.tresca(weaker)?.map(|limit| limit / stiffer),
            length: self.length,
            ring_change: self.ring_change(interference, &pressed)?,
            takes_set: self.set(interference.tightest)?,
            changes_elastically: self.changes_elastically(interference.tightest, flow_high.is_none())?,
            flow_high,
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

    fn changes_elastically(&self, interference: Length, elastic: bool) -> Result<bool, PlanError> {
        match self.joint.seat {
            SeatKind::Shaft => Ok(elastic),
            SeatKind::Housing => Ok(self.yielded(interference, (self.shape.closing.1, FLOW.0))?.is_none()),
        }
    }

    /// How far the ring of the part closes in its housing, or grows on its shaft.
    fn ring_change(
        &self,
        interference: &Cases<Length>,
        pressed: &Cases<Pressed>,
    ) -> Result<Option<Cases<Length>>, PlanError> {
        let change = |((at, factor), interference): ((&Pressed, f64), Length)| match self.joint.seat {
            SeatKind::Shaft => Ok(Some(at.elastic.outside_change() * factor * at.left)),
            SeatKind::Housing => {
                // Nothing is not less than nothing.
                let elastic = at.elastic.bore_change().map(|change| Length::default() - change * factor);
                // With the flow that it surely has, it closes most.
                let yielded = self.yielded(interference, (factor, FLOW.0))?.map(|state| state.bore_closing);
                Ok::<_, PlanError>(yielded.or(elastic))
            }
        };
        let changes = pressed.each().zip(ends(self.shape.closing)).zip(*interference);
        let changes = changes.try_map(change)?;
        Ok(changes.middle.is_some().then(|| changes.map(Option::unwrap_or_default)))
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
