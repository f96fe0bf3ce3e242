//! A liner in the housing's bore: how far the bore follows which material, and what it does to both.

mod free;
mod strain;

pub use free::FreeFrom;
pub use strain::{Reserve, Reserves};

pub(super) use free::hottest;
pub(super) use strain::Strained;

use super::PlanError;
use crate::job::{Housing, Job};
use crate::mechanics::{Held, LinedBore, LinedState, Ring};
use crate::quantity::{Cases, Length, Pressure, Ratio, ThermodynamicTemperature, reference_temperature};
use crate::stock::{Curve, Material};
use crate::thermal::ThermalError;
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

/// Steps of temperature in which the bore of a lined housing is tabulated, K: where a liner comes free the table bends.
const STEP_K: f64 = 2.0;

/// What the pressure and the hold of a liner are computed with.
pub(super) const SOURCE: &str =
    "thick-wall rings (Lamé), plane stress, thermal expansion of both materials (see sources)";

/// What a liner does and bears.
#[derive(Clone, Debug)]
pub struct LinerPlan {
    /// Wall of the liner.
    pub wall: Length,
    /// Material of the liner.
    pub liner: String,
    /// Material of the housing around it.
    pub housing: String,
    /// Interference with which it is pressed in, least and most; none where it is cast in.
    pub pressed: Option<(Length, Length)>,
    /// Change of the bore for a degree around 20 °C, over the bore, per kelvin.
    pub bore_expansion_per_k: f64,
    /// Pressure between liner and housing with the ring in it, at the temperature of the shop.
    pub between: Cases<Pressure>,
    /// Hoop stress of the housing there, tightest case.
    pub housing_hoop: Pressure,
    /// How far the liner is from its strength, with its most interference.
    pub liner_reserves: Reserves,
    /// The same of the housing around it.
    pub housing_reserves: Reserves,
    /// Where a pressed liner is free in its housing; nowhere for one that is cast in.
    pub free_from: FreeFrom,
}

/// The lined bore of a housing, for the least interference of a pressed liner; none without one.
pub(super) fn bore(job: &Job, housing: &Housing) -> Option<LinedBore> {
    fitted(job, housing, |(least, _)| least)
}

/// The lined bore of a housing, pressed in with one of the ends of its interference.
pub(super) fn fitted(job: &Job, housing: &Housing, end: impl Fn((Length, Length)) -> Length) -> Option<LinedBore> {
    let liner = housing.liner.as_ref()?;
    let ring = |inside: Length, outside: Length, material: &Material| Ring {
        inside: Some(inside),
        outside,
        elastic_modulus: material.elastic_modulus(),
        poisson: material.poisson_ratio(),
    };
    Some(LinedBore {
        liner: ring(job.part.outside, liner.outside, &liner.material),
        housing: ring(liner.outside, housing.thinner_outside(), &housing.material),
        seam: liner.outside,
        held: liner.interference.map_or(Held::Bonded, |range| Held::Pressed(end(range))),
    })
}

/// Change of the bore against temperature, liner and housing equally warm, from the fitted liner at 20 °C.
pub(super) fn expansion(bore: &LinedBore, housing: &Housing) -> Result<Option<Curve>, PlanError> {
    let Some(liner) = &housing.liner else { return Ok(None) };
    let (inner, outer) = (liner.material.expansion(), housing.material.expansion());
    let (from, to) = (inner.range().0.max(outer.range().0), inner.range().1.min(outer.range().1));
    let steps = ((to - from) / STEP_K).ceil();
    let count = steps as u32;
    let mut temperatures: Vec<f64> = (0..=count).map(|i| from + (to - from) * f64::from(i) / steps).collect();
    let reference = reference_temperature().get::<kelvin>();
    temperatures.retain(|at| (at - reference).abs() > 0.5 * STEP_K);
    temperatures.push(reference);
    temperatures.sort_by(f64::total_cmp);
    let strain = |at_k: f64| -> Result<(f64, f64), PlanError> {
        let at = |curve: &Curve| Ratio::new::<ratio>(curve.at_inside(at_k));
        let state = bore.under(Pressure::default(), at(inner), at(outer))?;
        Ok((at_k, state.bore_strain.get::<ratio>()))
    };
    let points = temperatures.into_iter().map(strain).collect::<Result<Vec<_>, _>>()?;
    // The two tables overlap: every job was checked at 20 °C at the least.
    let curve = Curve::new(&points).map_err(|source| ThermalError::Property { property: "expansion", source })?;
    Ok(Some(curve))
}

/// Mass of housing metal that takes up as much heat as housing and liner do, over that of the bare boss.
pub(super) fn heat_share(job: &Job, housing: &Housing) -> f64 {
    let Some(liner) = &housing.liner else { return 1.0 };
    let square = |length: Length| length.get::<meter>().powi(2);
    let (bore, seam, outside) = (square(job.part.outside), square(liner.outside), square(housing.even_outside()));
    let reference = reference_temperature().get::<kelvin>();
    let heat = |material: &Material| material.density().value * material.heat_capacity().at_inside(reference);
    let of_liner = (seam - bore) * heat(&liner.material);
    let of_housing = (outside - seam) * heat(&housing.material);
    (of_liner + of_housing) / ((outside - bore) * heat(&housing.material))
}

/// What the liner and the housing around it bear once the ring presses with `pressure` in the shop, and in some states.
pub(super) fn plan(
    job: &Job,
    pressure: &Cases<Pressure>,
    states: impl Fn() -> Result<Vec<Strained>, PlanError>,
) -> Result<Option<LinerPlan>, PlanError> {
    let Some((housing, liner)) = job.housing.as_ref().and_then(|h| h.liner.as_ref().map(|liner| (h, liner))) else {
        return Ok(None);
    };
    let (Some(least), Some(most)) = (bore(job, housing), fitted(job, housing, |(_, most)| most)) else {
        return Ok(None);
    };
    let at_shop = |bore: &LinedBore, pressure| state(bore, housing, &liner.material, job.bench.temperature, pressure);
    let tightest = at_shop(&most, pressure.tightest)?;
    let (liner_reserves, housing_reserves) = strain::reserves(&most, (housing, liner), &states()?)?;
    let nearby = reference_temperature().get::<kelvin>() + 0.5 * STEP_K;
    let curve = expansion(&least, housing)?;
    Ok(Some(LinerPlan {
        wall: 0.5 * (liner.outside - job.part.outside),
        liner: liner.material.id().to_owned(),
        housing: housing.material.id().to_owned(),
        pressed: liner.interference,
        bore_expansion_per_k: curve.map_or(0.0, |curve| curve.at_inside(nearby) / (0.5 * STEP_K)),
        between: Cases {
            tightest: tightest.between,
            middle: at_shop(&least, pressure.middle)?.between,
            loosest: at_shop(&least, pressure.loosest)?.between,
        },
        housing_hoop: tightest.housing.at_inside.hoop,
        liner_reserves,
        housing_reserves,
        free_from: free::free_from(&least, housing, &liner.material)?,
    }))
}

fn state(
    bore: &LinedBore,
    housing: &Housing,
    liner: &Material,
    at: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<LinedState, PlanError> {
    let strain = |material: &Material| Ratio::new::<ratio>(material.expansion().at_inside(at.get::<kelvin>()));
    Ok(bore.under(pressure, strain(liner), strain(&housing.material))?)
}
