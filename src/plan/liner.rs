//! A liner in the housing's bore: how far the bore follows which material, and what it does to both.

use super::PlanError;
use super::strength::strength;
use crate::job::{Housing, Job};
use crate::mechanics::{Held, LinedBore, LinedState, Part, Ring, YieldCheck};
use crate::quantity::{Cases, Length, Pressure, Ratio, ThermodynamicTemperature, reference_temperature};
use crate::stock::material::{Provenance, TemperatureLimit};
use crate::stock::{Curve, Material};
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

/// Steps of temperature in which the bore of a lined housing is tabulated, K: where a liner comes free the table bends.
const STEP_K: f64 = 2.0;

/// Temperature to which the end of a liner's hold is found, K.
const TOLERANCE_K: f64 = 0.01;

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
    /// Strength over stress of the housing there, tightest case; none where there is no stress.
    pub housing_factor: Option<f64>,
    /// Common temperature from which a pressed liner is free in its housing; none where that is not reached within the
    /// materials' tables, or it is cast in.
    pub free_from: Option<ThermodynamicTemperature>,
}

/// The lined bore of a housing, for the least interference of a pressed liner; none without one.
pub(super) fn bore(job: &Job, housing: &Housing) -> Option<LinedBore> {
    held(job, housing, |(least, _)| least)
}

fn held(job: &Job, housing: &Housing, end: impl Fn((Length, Length)) -> Length) -> Option<LinedBore> {
    let liner = housing.liner.as_ref()?;
    let ring = |inside: Length, outside: Length, material: &Material| Ring {
        inside: Some(inside),
        outside,
        elastic_modulus: material.elastic_modulus(),
        poisson: material.poisson_ratio(),
    };
    Some(LinedBore {
        liner: ring(job.part.outside, liner.outside, &liner.material),
        housing: ring(liner.outside, housing.outside, &housing.material),
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
    Ok(Curve::new(&points).ok())
}

/// Mass of housing metal that takes up as much heat as housing and liner do, over that of the bare boss.
pub(super) fn heat_share(job: &Job, housing: &Housing) -> f64 {
    let Some(liner) = &housing.liner else { return 1.0 };
    let square = |length: Length| length.get::<meter>().powi(2);
    let (bore, seam, outside) = (square(job.part.outside), square(liner.outside), square(housing.outside));
    let reference = reference_temperature().get::<kelvin>();
    let heat = |material: &Material| material.density().value * material.heat_capacity().at_inside(reference);
    let of_liner = (seam - bore) * heat(&liner.material);
    let of_housing = (outside - seam) * heat(&housing.material);
    (of_liner + of_housing) / ((outside - bore) * heat(&housing.material))
}

/// What the liner and the housing around it bear once the ring presses with `pressure`.
pub(super) fn plan(job: &Job, pressure: &Cases<Pressure>) -> Result<Option<LinerPlan>, PlanError> {
    let Some((housing, liner)) = job.housing.as_ref().and_then(|h| h.liner.as_ref().map(|liner| (h, liner))) else {
        return Ok(None);
    };
    let (Some(least), Some(most)) = (bore(job, housing), held(job, housing, |(_, most)| most)) else { return Ok(None) };
    let shop = job.bench.temperature;
    let tightest = state(&most, housing, &liner.material, shop, pressure.tightest)?;
    let between =
        |bore: &LinedBore, pressure| Ok::<_, PlanError>(state(bore, housing, &liner.material, shop, pressure)?.between);
    let check = YieldCheck::of(&tightest.housing, Part::Outer, &strength(&housing.material))?;
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
            middle: between(&least, pressure.middle)?,
            loosest: between(&least, pressure.loosest)?,
        },
        housing_hoop: tightest.housing.at_inside.hoop,
        housing_factor: check.factor,
        free_from: free_from(&least, housing, &liner.material)?,
    }))
}

/// How hot a housing may get before its pressed liner comes free; none where it never does, or is cast in.
pub(super) fn hottest(job: &Job) -> Option<TemperatureLimit> {
    let housing = job.housing.as_ref()?;
    let liner = housing.liner.as_ref()?;
    // What cannot be computed is an error of `plan`, which asks for the same temperature.
    let temperature = free_from(&bore(job, housing)?, housing, &liner.material).ok()??;
    Some(TemperatureLimit {
        temperature,
        reason: "the pressed liner with its least interference comes free: it may turn or come out, and the bore grows no further \
                 than the liner alone"
            .to_owned(),
        provenance: Provenance::of_calculation(SOURCE, "from the liner's least interference and the expansion of both materials"),
    })
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

/// The nearest temperature above that of reference at which a pressed liner bears no more: a housing that expands more leaves it
/// when warm.
fn free_from(
    bore: &LinedBore,
    housing: &Housing,
    liner: &Material,
) -> Result<Option<ThermodynamicTemperature>, PlanError> {
    let Held::Pressed(_) = bore.held else { return Ok(None) };
    let bears = |at_k: f64| -> Result<bool, PlanError> {
        let at = ThermodynamicTemperature::new::<kelvin>(at_k);
        Ok(state(bore, housing, liner, at, Pressure::default())?.between > Pressure::default())
    };
    let most = liner.expansion().range().1.min(housing.material.expansion().range().1);
    let (mut low, mut high) = (reference_temperature().get::<kelvin>(), most);
    if bears(high)? {
        return Ok(None);
    }
    while high - low > TOLERANCE_K {
        let middle = 0.5 * (low + high);
        if bears(middle)? { low = middle } else { high = middle }
    }
    Ok(Some(ThermodynamicTemperature::new::<kelvin>(low)))
}
