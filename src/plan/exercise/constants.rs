//! The constant values with which closed formulas meet a plan.

use super::model::{Case, Properties};
use crate::job::{FilmChoice, Part};
use crate::plan::{Plan, SeatPlan};
use crate::quantity::{HeatTransfer, Length, REFERENCE_TEMPERATURE_K, ThermodynamicTemperature};
use crate::stock::material::Material;
use crate::thermal::{Plug, Ring};
use uom::si::f64::{SpecificHeatCapacity, TemperatureCoefficient};
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;

/// Above 20 °C, where the coefficient of a straight line of expansion is read.
const ABOVE_20_K: f64 = 80.0;

/// What a case with constant values is worked from, beside its plan.
#[derive(Clone, Debug)]
pub struct Constants {
    /// Coefficients of expansion, inner and outer part.
    pub expansion: [TemperatureCoefficient; 2],
    /// Lower and upper deviation of the inner and the outer part; none where their sizes were measured.
    pub deviations: Option<[[Length; 2]; 2]>,
    /// Heat capacity of the part.
    pub heat_capacity: SpecificHeatCapacity,
    /// Emissivity that the plan uses in the shop.
    pub emissivity: f64,
    /// Film coefficient in the shop; none where it is not stated.
    pub shop_film: Option<HeatTransfer>,
    /// The number below its Biot number, from the way that heat takes out of the part.
    pub way_out: f64,
    /// The temperature at which sizes are given.
    pub reference: ThermodynamicTemperature,
}

/// The constant values of a case; none where they are the library's, which change with temperature.
pub fn constants(case: &Case, plan: &Plan<'_>) -> Option<Constants> {
    if case.properties != Properties::Constant {
        return None;
    }
    let (seat, housing) = (plan.seats.first()?, case.job.housing.as_ref()?);
    let part = &case.job.part;
    Some(Constants {
        expansion: [coefficient(&part.material)?, coefficient(&housing.material)?],
        deviations: deviations(seat),
        heat_capacity: SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(
            part.material.heat_capacity().at(REFERENCE_TEMPERATURE_K).ok()?,
        ),
        emissivity: part.material.emissivity().high,
        shop_film: match case.job.bench.film {
            FilmChoice::Stated(film) => Some(film),
            FilmChoice::OfMedium(_) => None,
        },
        way_out: way_out(part)?,
        reference: crate::quantity::reference_temperature(),
    })
}

fn way_out(part: &Part) -> Option<f64> {
    let shape = match part.bore {
        Some(bore) => Ring { bore, outside: part.outside, width: part.width }.shape(),
        None => Plug { outside: part.outside, length: part.width }.shape(),
    };
    Some(shape.ok()?.path.divisor)
}

fn coefficient(material: &Material) -> Option<TemperatureCoefficient> {
    let strain = material.expansion().at(REFERENCE_TEMPERATURE_K + ABOVE_20_K).ok()?;
    Some(TemperatureCoefficient::new::<per_kelvin>(strain / ABOVE_20_K))
}

fn deviations(seat: &SeatPlan) -> Option<[[Length; 2]; 2]> {
    let classes = seat.fit.uncertainty.is_none();
    let of = |smallest: Length, largest: Length| [smallest - seat.nominal, largest - seat.nominal];
    classes.then(|| [of(seat.inner.smallest, seat.inner.largest), of(seat.outer.smallest, seat.outer.largest)])
}
