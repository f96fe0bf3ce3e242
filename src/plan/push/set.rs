//! A bush, or a hollow shaft, that takes a set when it is fitted and goes on holding.

use super::model::TakesSet;
use crate::job::{Job, PartKind};
use crate::mechanics::{self, MechanicsError, Onset, PlasticBush, Strength, YieldedBush};
use crate::plan::PlanError;
use crate::plan::joint::Joint;
use crate::plan::model::SeatKind;
use crate::quantity::{Length, Pressure};
use crate::stock::Material;
use crate::stock::material::Family;
use uom::si::length::meter;
use uom::si::ratio::ratio;

/// Hoop stress at which a ring flows over its yield strength: by Tresca, which it surely bears, and the most that von Mises gives
/// in plane stress, `2/√3`.
pub(super) const FLOW: (f64, f64) = (1.0, 1.154_700_538_379_251_5);

/// The inner part of a joint that may yield and goes on holding.
#[derive(Clone, Copy)]
pub(in crate::plan) struct Yielding {
    bush: PlasticBush,
    /// Interference at which it begins to yield, and the pressure then.
    first: Onset,
}

impl Yielding {
    /// None for what must not yield: the ring of a bearing, whose raceway would follow, a solid part, and what cracks or creeps
    /// instead.
    pub(super) fn new(
        job: &Job,
        joint: &Joint<'_>,
        plane: mechanics::Joint,
        (inner, outer): (&Strength, &Strength),
    ) -> Result<Option<Self>, PlanError> {
        let may = match joint.seat {
            SeatKind::Housing => job.part.kind == PartKind::PlainBush,
            SeatKind::Shaft => true,
        };
        if !may || plane.inner.inside.is_none() || !flows(joint.inner.material) {
            return Ok(None);
        }
        let bush = PlasticBush { joint: plane, flow_stress: inner.limit, outer: *outer, stiffer: 1.0 };
        Ok(Some(Self { bush, first: bush.limits()?.first }))
    }

    /// The inner part at an interference, in a seat that is stiffer by a factor, with this share of its yield strength as its flow
    /// stress.
    ///
    /// None where it stays elastic, or where nothing is computed: beyond the theory, or with an outer part that passes its strength.
    pub(super) fn at(
        &self,
        interference: Length,
        (stiffer, flow): (f64, f64),
    ) -> Result<Option<YieldedBush>, PlanError> {
        if interference * stiffer <= self.first.interference * flow {
            return Ok(None);
        }
        let joint = mechanics::Joint { interference, ..self.bush.joint };
        let bush = PlasticBush { joint, flow_stress: self.bush.flow_stress * flow, stiffer, ..self.bush };
        match bush.solve() {
            Ok(state) => Ok(Some(state).filter(|state| state.plastic_ratio.get::<ratio>() > 1.0)),
            Err(MechanicsError::BeyondPlasticBush { .. } | MechanicsError::OuterYields { .. }) => Ok(None),
            Err(error) => Err(error.into()),
        }
    }

    /// Share of the elastic pressure that is left in a drawn part, whose flow stress is taken midway between its two ends.
    ///
    /// Where nothing is computed all of it counts, which is the most that it can be.
    pub(in crate::plan) fn left(&self, interference: Length, stiffer: f64) -> f64 {
        let state = self.at(interference, (stiffer, 0.5 * (FLOW.0 + FLOW.1))).ok().flatten();
        let elastic = self.first.pressure * (interference * stiffer / self.first.interference);
        state.map_or(1.0, |state| (state.pressure / elastic).get::<ratio>())
    }

    /// Flow stress and plastic ratio that bound the pressure from above at this interference; none where it is elastic.
    pub(super) fn high(&self, interference: Length, stiffer: f64) -> Result<Option<(Pressure, f64)>, PlanError> {
        let state = self.at(interference, (stiffer, FLOW.1))?;
        Ok(state.map(|state| (self.bush.flow_stress * FLOW.1, state.plastic_ratio.get::<ratio>())))
    }

    /// What becomes of the tightest case, strength judged with the low end of the seat's shape.
    ///
    /// Its bore closes most with the high end of the closing.
    pub(super) fn set(
        &self,
        interference: Length,
        (certain, closing): (f64, f64),
    ) -> Result<Option<TakesSet>, PlanError> {
        let Some(state) = self.at(interference, (certain, FLOW.0))? else { return Ok(None) };
        let closed = self.at(interference, (closing, FLOW.0))?.unwrap_or(state);
        Ok(Some(TakesSet {
            pressure: state.pressure,
            share: state.plastic_share.get::<ratio>(),
            closes: closed.bore_closing,
            lost: state.permanent_set,
            surplus: Some(state.surplus).filter(|surplus| surplus.get::<meter>() > 0.0),
            flow: self.bush.flow_stress,
        }))
    }
}

/// Whether a metal flows at its strength instead of cracking or creeping.
fn flows(material: &Material) -> bool {
    let metal = !matches!(material.family(), Family::Polymer | Family::Ceramic);
    metal && !material.strength().kind.is_brittle()
}
