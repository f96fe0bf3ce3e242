//! How far a liner and the housing around it are from their strength, in every state that the job knows.

use super::state;
use crate::job::{Housing, Liner};
use crate::mechanics::{LinedBore, Part, RingState, YieldCheck};
use crate::plan::PlanError;
use crate::plan::strength::strength;
use crate::quantity::{Pressure, ThermodynamicTemperature};
use crate::stock::Material;

/// A state in which liner and housing are strained.
pub(in crate::plan) struct Strained {
    /// When it is, in words.
    pub(in crate::plan) when: &'static str,
    /// Whether it belongs to service; else it is passed while the job is done.
    pub(in crate::plan) in_service: bool,
    /// Temperature of both.
    pub(in crate::plan) housing: ThermodynamicTemperature,
    /// Pressure of the ring in the tightest case, with the low and with the high end of the seat's shape; none without a ring.
    pub(in crate::plan) ring: Option<(Pressure, Pressure)>,
}

/// How far a part is from its strength in the worst of some states.
#[derive(Clone, Debug, PartialEq)]
pub struct Reserve {
    /// Strength over stress that is certain, with the low end of the shape's factor; none where that may strain nothing.
    pub factor: Option<f64>,
    /// The same with the high end: the least that it may be.
    pub least: f64,
    /// In which state, in words.
    pub when: String,
}

/// Reserves of one part, while the job is done and in service; none where nothing strains it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reserves {
    /// At the temperature of the shop, and while the housing is warm.
    pub fitting: Option<Reserve>,
    /// At the ends of service.
    pub service: Option<Reserve>,
}

impl Reserves {
    /// The smaller of both.
    pub fn worst(&self) -> Option<&Reserve> {
        [&self.fitting, &self.service].into_iter().flatten().min_by(|a, b| a.least.total_cmp(&b.least))
    }

    fn add(&mut self, in_service: bool, found: Option<Reserve>) {
        let Some(found) = found else { return };
        let kept = if in_service { &mut self.service } else { &mut self.fitting };
        if kept.as_ref().is_none_or(|kept| found.least < kept.least) {
            *kept = Some(found);
        }
    }
}

/// Reserves of the liner and of the housing, for the tightest fit of the liner; each state without the ring as well.
pub(super) fn reserves(
    bore: &LinedBore,
    (housing, liner): (&Housing, &Liner),
    states: &[Strained],
) -> Result<(Reserves, Reserves), PlanError> {
    let (mut of_liner, mut of_housing) = (Reserves::default(), Reserves::default());
    let none = Pressure::default();
    for strained in states {
        let at = |pressure| state(bore, housing, &liner.material, strained.housing, pressure);
        let bare = at(none)?;
        let mut pairs = vec![(bare, bare, "without the ring")];
        if let Some((low, high)) = strained.ring.filter(|(_, high)| *high > none) {
            pairs.push((at(low)?, at(high)?, "with the ring"));
        }
        for (low, high, ring) in pairs {
            let when = || format!("{ring}, {}", strained.when);
            of_liner.add(strained.in_service, reserve((&low.liner, &high.liner), &liner.material, when)?);
            of_housing.add(strained.in_service, reserve((&low.housing, &high.housing), &housing.material, when)?);
        }
    }
    Ok((of_liner, of_housing))
}

/// How far a ring is from its strength, with the low and with the high end of the pressure of what is pressed in; none where
/// nothing strains it.
fn reserve(
    (low, high): (&RingState, &RingState),
    material: &Material,
    when: impl Fn() -> String,
) -> Result<Option<Reserve>, PlanError> {
    let (low, high) = (factor(low, material)?, factor(high, material)?);
    // A ring may relieve a liner: the end that strains more counts as possible, the other as certain.
    let least = [low, high].into_iter().flatten().reduce(f64::min);
    let factor = low.zip(high).map(|(low, high)| low.max(high));
    Ok(least.map(|least| Reserve { factor, least, when: when() }))
}

fn factor(ring: &RingState, material: &Material) -> Result<Option<f64>, PlanError> {
    // Which of the two parts it is makes no difference to a ring by itself.
    Ok(YieldCheck::of(ring, Part::Outer, &strength(material))?.factor)
}
