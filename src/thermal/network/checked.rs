use super::super::error::ThermalError;
use super::check::{known, place};
use super::surface::Surface;
use super::{Conductance, Link, Network, NetworkBody};
use crate::quantity::{ThermodynamicTemperature, not_negative, positive, within};
use crate::stock::Curve;
use uom::si::mass::kilogram;
use uom::si::power::watt;
use uom::si::thermal_conductance::watt_per_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Accounts of a wet body: dew, frost, heat of melting, latent heat.
const ACCOUNTS: usize = 4;

/// A network in plain SI, checked.
#[derive(Clone, Debug)]
pub(super) struct Net<'a> {
    pub(super) bodies: Vec<Store<'a>>,
    pub(super) surroundings: Vec<f64>,
    pub(super) surfaces: Vec<Surface<'a>>,
    pub(super) links: Vec<CheckedLink<'a>>,
    /// Bodies on which water settles; each has four accounts.
    pub(super) wet: usize,
}

/// What a body holds.
#[derive(Clone, Copy, Debug)]
pub(super) struct Store<'a> {
    pub(super) mass: f64,
    pub(super) capacity: &'a Curve,
    pub(super) start: f64,
    pub(super) power: f64,
    /// Which of the wet bodies it is.
    pub(super) wet: Option<usize>,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedLink<'a> {
    pub(super) one: usize,
    pub(super) other: usize,
    conductance: LinkLaw<'a>,
}

#[derive(Clone, Copy, Debug)]
enum LinkLaw<'a> {
    Constant(f64),
    Table(&'a Curve),
}

impl<'a> Net<'a> {
    pub(super) fn new(network: &Network<'a>) -> Result<Self, ThermalError> {
        let mut bodies = network.bodies.iter().map(Store::new).collect::<Result<Vec<_>, _>>()?;
        let surroundings = network.surroundings.iter().map(|&t| level(t)).collect::<Result<Vec<_>, _>>()?;
        let of = (bodies.len(), surroundings.len());
        let surfaces = network.exchanges.iter().map(|e| Surface::new(e, of)).collect::<Result<Vec<_>, _>>()?;
        let links = network.links.iter().map(|link| CheckedLink::new(link, of.0)).collect::<Result<Vec<_>, _>>()?;
        let mut wet = 0;
        for surface in surfaces.iter().filter(|surface| surface.moisture.is_some()) {
            let body = &mut bodies[surface.body];
            if body.wet.is_none() {
                body.wet = Some(wet);
                wet += 1;
            }
        }
        Ok(Self { bodies, surroundings, surfaces, links, wet })
    }

    /// Numbers in the state: a temperature for each body, heat for each of the surroundings, four for each wet body.
    pub(super) fn size(&self) -> usize {
        self.bodies.len() + self.surroundings.len() + ACCOUNTS * self.wet
    }

    /// Place of the dew of a wet body in the state; frost, heat of melting and latent heat follow.
    pub(super) fn dew(&self, wet: usize) -> usize {
        self.bodies.len() + self.surroundings.len() + ACCOUNTS * wet
    }
}

impl<'a> Store<'a> {
    fn new(body: &NetworkBody<'a>) -> Result<Self, ThermalError> {
        positive("heat capacity", body.heat_capacity.extremes().0, "J/(kg K)")?;
        let power = body.power.get::<watt>();
        let start = level(body.start)?;
        let known = body.heat_capacity.at(start);
        known.map_err(|source| ThermalError::Property { property: "heat capacity", source })?;
        Ok(Self {
            mass: positive("mass", body.mass.get::<kilogram>(), "kg")?,
            capacity: body.heat_capacity,
            start,
            power: within("heating power", power, (f64::MIN, f64::MAX), "W")?,
            wet: None,
        })
    }
}

impl<'a> CheckedLink<'a> {
    fn new(link: &Link<'a>, bodies: usize) -> Result<Self, ThermalError> {
        let (one, other) = link.between;
        place("body of a contact", one, bodies)?;
        place("body of a contact", other, bodies)?;
        let conductance = match link.conductance {
            Conductance::Constant(value) => {
                LinkLaw::Constant(not_negative("conductance of the contact", value.get::<watt_per_kelvin>(), "W/K")?)
            }
            Conductance::OverTemperature(curve) => {
                not_negative("conductance of the contact", curve.extremes().0, "W/K")?;
                LinkLaw::Table(curve)
            }
        };
        Ok(Self { one, other, conductance })
    }

    /// Conductance between two temperatures, W/K.
    pub(super) fn conductance(&self, one: f64, other: f64) -> f64 {
        match self.conductance {
            LinkLaw::Constant(value) => value,
            LinkLaw::Table(curve) => curve.at_inside(0.5 * (one + other)),
        }
    }

    pub(super) fn check_covered(&self, one: f64, other: f64) -> Result<(), ThermalError> {
        match self.conductance {
            LinkLaw::Constant(_) => Ok(()),
            LinkLaw::Table(curve) => known(curve, 0.5 * (one + other), "conductance of the contact"),
        }
    }
}

fn level(t: ThermodynamicTemperature) -> Result<f64, ThermalError> {
    Ok(positive("temperature", t.get::<kelvin>(), "K")?)
}
