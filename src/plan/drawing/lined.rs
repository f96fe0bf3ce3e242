//! A liner in the section: how tight it sits at the moment, and what it makes of the loads.

use super::moment::At;
use super::{DrawingError, PlaneSeat, SectionCase};
use crate::job::{Job, Liner};
use crate::mechanics::{Held, LinedBore};
use crate::plan::joint::Joint;
use crate::plan::model::SeatKind;
use crate::plan::{PlanError, liner};
use crate::quantity::{Force, Length, Pressure, Ratio, ThermodynamicTemperature};
use crate::section::{Loads, Model, SectionError, SurfaceChange};
use crate::stock::Material;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

/// Clearance over the diameter with which a ring is out of the way.
const FAR: f64 = 0.05;

/// The liner of a seat at a moment.
pub(super) struct Lined<'j> {
    liner: &'j Liner,
    bore: LinedBore,
    strains: [Ratio; 2],
    /// Interference of liner and housing on the diameter, negative where they would stand apart or, bonded, pull.
    pub(super) interference: Length,
}

impl<'j> Lined<'j> {
    /// None for a seat without a liner.
    pub(super) fn new(job: &'j Job, joint: &Joint<'_>, at: &At) -> Option<Self> {
        let housing = job.housing.as_ref().filter(|_| joint.seat == SeatKind::Housing)?;
        let liner = housing.liner.as_ref()?;
        let bore = liner::fitted(job, housing, |(least, most)| match at.case {
            SectionCase::Tightest => most,
            SectionCase::Middle => 0.5 * (least + most),
            SectionCase::Loosest => least,
        })?;
        let strains = [strain(&liner.material, at.outer), strain(&housing.material, at.outer)];
        let fitted = if let Held::Pressed(interference) = bore.held { interference } else { Length::default() };
        let interference = fitted + bore.seam * (strains[0] - strains[1]);
        Some(Self { liner, bore, strains, interference })
    }

    /// The section with the bore finished to the limits of the job after the liner was fitted, which is how bores of liners are
    /// made; with it what is put on it, and how the bore of the liner moved as it was fitted.
    pub(super) fn finish(
        &self,
        model: Model,
        ring: Length,
    ) -> Result<(Model, Loads, Option<SurfaceChange>), SectionError> {
        let with = |ring| Loads {
            interference: vec![ring, self.interference],
            strain: vec![Ratio::default(); 3],
            axial: Force::default(),
        };
        let alone = with(-FAR * self.bore.seam);
        let fitted = model.solve(&alone)?.parts.swap_remove(1).inside;
        Ok((model.finished(&alone)?, with(ring), fitted))
    }

    /// Plane stress of liner and housing under the pressure of the ring, beside that of the ring.
    pub(super) fn beside(&self, plane: PlaneSeat) -> Result<PlaneSeat, DrawingError> {
        let state = self.bore.under(plane.pressure.max(Pressure::default()), self.strains[0], self.strains[1]);
        let state = state.map_err(PlanError::from)?;
        let (liner, housing) = (state.liner, state.housing);
        let [ring, ring_hoop] = [plane.von_mises[0], plane.hoop[0]];
        Ok(PlaneSeat {
            von_mises: vec![ring, liner.von_mises(), housing.von_mises()],
            hoop: vec![ring_hoop, liner.at_inside.hoop.max(liner.at_outside.hoop), housing.at_inside.hoop],
            seam: Some(state.between),
            ..plane
        })
    }

    /// Its material.
    pub(super) fn material(&self) -> &'j Material {
        &self.liner.material
    }

    /// Whether it is cast in.
    pub(super) fn is_bonded(&self) -> bool {
        self.bore.held == Held::Bonded
    }
}

/// Free thermal strain since 20 °C, within the table that the plan was made with.
fn strain(material: &Material, at: ThermodynamicTemperature) -> Ratio {
    Ratio::new::<ratio>(material.expansion().at_inside(at.get::<kelvin>()))
}
