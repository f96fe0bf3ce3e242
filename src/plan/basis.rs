//! What the numbers of a seat are worked from, so that a reviewer can put them into the formulas.

use super::clearance::Diameters;
use super::joint::{Joint, Side};
use crate::mechanics::Ring;
use crate::quantity::{Cases, Length, Pressure, ThermodynamicTemperature};
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

/// What the pressure, the clearances and the service of a seat are worked from.
#[derive(Clone, Debug)]
pub struct Basis {
    /// The inner part.
    pub inner: PartBasis,
    /// The outer part.
    pub outer: PartBasis,
    /// Interference that bears with both parts at the temperature of the shop.
    pub at_shop: Cases<Length>,
    /// What a turning shaft takes from the interference in service; zero where nothing turns.
    pub turning: Length,
}

/// One part of a joint.
#[derive(Clone, Debug)]
pub struct PartBasis {
    /// Inside diameter of the ring that stands for the part; none where it is solid.
    pub inside: Option<Length>,
    /// Outside diameter of that ring.
    pub outside: Length,
    /// Elastic modulus at 20 °C.
    pub elastic_modulus: Pressure,
    /// Poisson ratio.
    pub poisson: f64,
    /// How far the ring gives way at the joint, as a multiple of pressure times diameter over modulus.
    pub give: f64,
    /// Height Rz of the roughness; none where it is not known.
    pub roughness: Option<Length>,
    /// Change of length for each length from 20 °C to the temperature of the shop.
    pub strain_at_shop: f64,
    /// The same to the temperature on arrival.
    pub strain_at_bore: f64,
    /// Change of the diameter of the tightest case by then.
    pub growth_at_bore: Length,
    /// Change of length for each length from 20 °C to each state of service.
    pub strain_in_service: Vec<f64>,
}

/// Temperatures of the inner and the outer part.
pub(super) type Pair = (ThermodynamicTemperature, ThermodynamicTemperature);

/// Gathers them; temperatures are those at the shop, on arrival and in each state of service.
pub(super) fn basis(
    joint: &Joint<'_>,
    diameters: &Diameters<'_>,
    (shop, arrival, service): (ThermodynamicTemperature, Pair, &[Pair]),
    (at_shop, turning): (Cases<Length>, Length),
) -> Basis {
    let (inner_size, outer_size) = diameters.tightest();
    let inner_service = service.iter().map(|(inner, _)| *inner);
    let outer_service = service.iter().map(|(_, outer)| *outer);
    Basis {
        inner: PartBasis {
            give: give_inside(&joint.inner.ring, joint.nominal),
            ..part(&joint.inner, inner_size, (shop, arrival.0), inner_service)
        },
        outer: PartBasis {
            inside: Some(joint.nominal),
            give: give_outside(&joint.outer.ring, joint.nominal),
            ..part(&joint.outer, outer_size, (shop, arrival.1), outer_service)
        },
        at_shop,
        turning,
    }
}

fn part(
    side: &Side<'_>,
    size: Length,
    (shop, arrival): (ThermodynamicTemperature, ThermodynamicTemperature),
    service: impl Iterator<Item = ThermodynamicTemperature>,
) -> PartBasis {
    let strain = |temperature: ThermodynamicTemperature| side.expansion.at_inside(temperature.get::<kelvin>());
    PartBasis {
        inside: side.ring.inside,
        outside: side.ring.outside,
        elastic_modulus: side.ring.elastic_modulus,
        poisson: side.ring.poisson,
        give: 0.0,
        roughness: side.roughness_rz,
        strain_at_shop: strain(shop),
        strain_at_bore: strain(arrival),
        growth_at_bore: size * strain(arrival),
        strain_in_service: service.map(strain).collect(),
    }
}

/// `(D² + d²)/(D² - d²) - ν` of a ring pressed from outside; `1 - ν` where it is solid.
fn give_inside(ring: &Ring, joint: Length) -> f64 {
    share(ring.inside.unwrap_or_default(), joint) - ring.poisson
}

/// `(D_o² + D²)/(D_o² - D²) + ν` of a ring pressed from inside.
fn give_outside(ring: &Ring, joint: Length) -> f64 {
    share(joint, ring.outside) + ring.poisson
}

fn share(small: Length, large: Length) -> f64 {
    ((large * large + small * small) / (large * large - small * small)).get::<ratio>()
}
