//! What the numbers of a seat are worked from.

use super::figures;
use super::range::RangeDocument;
use super::units::{celsius, mm, mpa, range, um};
use crate::plan::{Member, PartBasis, Plan, SeatPlan};
use crate::quantity::{Length, Nanometres};
use schemars::JsonSchema;
use serde::Serialize;

/// What the numbers of a seat are worked from.
#[derive(Debug, JsonSchema, Serialize)]
pub struct BasisDocument {
    /// The inner part.
    pub inner: PartBasisDocument,
    /// The outer part.
    pub outer: PartBasisDocument,
    /// Temperature of the shop.
    pub shop_c: f64,
    /// Interference that bears at the temperature of the shop.
    pub at_shop_um: RangeDocument<f64>,
    /// Share of both roughnesses together that is smoothed away.
    pub smoothing: f64,
    /// What a turning shaft takes from the interference in service.
    pub turning_um: f64,
}

/// One part of the joint.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PartBasisDocument {
    /// Smallest diameter at 20 °C, to a nanometre.
    pub smallest_mm: f64,
    /// Largest diameter at 20 °C, to a nanometre.
    pub largest_mm: f64,
    /// Inside diameter of the ring that stands for the part; null where it is solid.
    pub inside_mm: Option<f64>,
    /// Outside diameter of that ring.
    pub outside_mm: f64,
    /// Elastic modulus at 20 °C.
    pub elastic_modulus_mpa: f64,
    /// Poisson ratio.
    pub poisson: f64,
    /// How far the ring gives way at the joint, as a multiple of pressure times diameter over modulus.
    pub give: f64,
    /// Height Rz of the roughness; null where it is not known.
    pub rz_um: Option<f64>,
    /// Change of length from 20 °C to the temperature of the shop, in micrometres a metre.
    pub strain_at_shop_um_m: f64,
    /// The same to the temperature on arrival.
    pub strain_at_bore_um_m: f64,
    /// Change of the diameter of the tightest case by then.
    pub growth_at_bore_um: f64,
    /// Change of length to each state of service, in micrometres a metre.
    pub strain_in_service_um_m: Vec<f64>,
}

pub(super) fn document(plan: &Plan<'_>, seat: &SeatPlan) -> BasisDocument {
    let basis = &seat.basis;
    BasisDocument {
        inner: part(&basis.inner, &seat.inner),
        outer: part(&basis.outer, &seat.outer),
        shop_c: celsius(plan.job.bench.temperature),
        at_shop_um: range(basis.at_shop.map(um)),
        smoothing: figures(plan.job.press.smoothing),
        turning_um: um(basis.turning),
    }
}

fn part(basis: &PartBasis, member: &Member) -> PartBasisDocument {
    let strain = |strain: f64| figures(1e6 * strain);
    PartBasisDocument {
        smallest_mm: exact(member.smallest),
        largest_mm: exact(member.largest),
        inside_mm: basis.inside.map(mm),
        outside_mm: mm(basis.outside),
        elastic_modulus_mpa: mpa(basis.elastic_modulus),
        poisson: figures(basis.poisson),
        give: figures(basis.give),
        rz_um: basis.roughness.map(um),
        strain_at_shop_um_m: strain(basis.strain_at_shop),
        strain_at_bore_um_m: strain(basis.strain_at_bore),
        growth_at_bore_um: um(basis.growth_at_bore),
        strain_in_service_um_m: basis.strain_in_service.iter().copied().map(strain).collect(),
    }
}

/// Sizes are whole nanometres; six figures would not do for their small differences.
fn exact(size: Length) -> f64 {
    Nanometres::from_length(size).0 as f64 / 1e6
}
