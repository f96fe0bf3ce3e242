//! Materials and films of a job as the section takes them: closely spaced tables.

use crate::plan::PlanError;
use crate::plan::joint::Side;
use crate::plan::surroundings::Surroundings;
use crate::quantity::{HeatTransfer, ThermodynamicTemperature, celsius};
use crate::section::heat::{Exposed, Film, Gap, HeatError, Placement, Property, Solid};
use crate::stock::Curve;
use crate::thermal::FilmLaw;
use crate::thermal::bore::{self, still_air_conductivity};
use uom::si::thermal_conductivity::watt_per_meter_kelvin;

/// Rows between two of a curve, so that straight lines follow its cubics.
const BETWEEN: usize = 4;

/// Temperatures between which the air in the gap is taken, °C, and the step of its table.
const AIR_C: (i32, i32, usize) = (-188, 512, 25);

pub(super) fn table(curve: &Curve) -> Result<Property, HeatError> {
    let points: Vec<(f64, f64)> = curve.points().collect();
    let mut rows = Vec::with_capacity(BETWEEN * points.len());
    for pair in points.windows(2) {
        let (from, step) = (pair[0].0, (pair[1].0 - pair[0].0) / BETWEEN as f64);
        rows.extend((0..BETWEEN).map(|k| from + step * k as f64).map(|kelvin| (kelvin, curve.at_inside(kelvin))));
    }
    rows.extend(points.last());
    Property::new(&rows)
}

pub(super) fn solid(side: &Side<'_>) -> Result<Solid, HeatError> {
    let material = side.material;
    Ok(Solid {
        density: material.density(),
        capacity: table(material.heat_capacity())?,
        conductivity: table(material.conductivity())?,
        strain: table(&side.expansion)?,
    })
}

pub(super) fn exposed(around: &Surroundings) -> Result<Exposed, HeatError> {
    let film = match &around.film {
        FilmLaw::Constant(film) => Film::Constant(*film),
        FilmLaw::OfTemperature(curve) => Film::OverSurface(table(curve)?),
    };
    Ok(Exposed { film, emissivity: around.emissivity, surroundings: around.temperature })
}

/// What one side of the joint meets in the shop while it stands in its seat.
pub(super) fn in_shop(side: &Side<'_>, film: HeatTransfer, shop: ThermodynamicTemperature) -> Exposed {
    Exposed { film: Film::Constant(film), emissivity: side.material.emissivity().high, surroundings: shop }
}

/// The gap as the two bodies have it too.
pub(super) fn gap(placement: Placement, emissivity: f64) -> Result<Gap, PlanError> {
    let usual = bore::Gap::usual(bore::Placement::Concentric);
    let (from, to, step) = AIR_C;
    let mut rows = Vec::new();
    for degrees in (from..=to).step_by(step) {
        let temperature = celsius(f64::from(degrees));
        let value = still_air_conductivity(temperature)?.get::<watt_per_meter_kelvin>();
        rows.push((temperature.value, value));
    }
    let air = Property::new(&rows).unwrap_or_else(|_| Property::constant(rows[0].1));
    Ok(Gap { air, smallest: usual.smallest, emissivity, contact: usual.contact, placement })
}
