//! A rolling bearing as three bodies.

use super::super::error::ThermalError;
use super::super::{MoistAir, Ring, Wrap};
use super::bearing_history::BearingHistory;
use super::bearing_section::{Seal, Section};
use super::contact::BallContact;
use super::medium::LoadedMedium;
use super::{Conductance, Exchange, Inside, Link, Network, NetworkBody, Partner};
use crate::quantity::{Area, Length, Mass, Power, ThermodynamicTemperature, Time, positive, within};
use crate::stock::Curve;
use crate::thermal::SurfaceFilm;
use uom::si::area::square_meter;
use uom::si::f64::ThermalConductance;
use uom::si::mass::kilogram;
use uom::si::thermal_conductance::watt_per_kelvin;

/// Allowed rounding of three shares that must add up to one.
const SHARE_ROUNDING: f64 = 1e-6;

/// A bearing as outer ring, rolling elements and inner ring.
///
/// Sections by rule: each ring is 15 % of (D - d) thick, balls are 30 % of it, and fill 60 % of the pitch circle; the given mass is
/// shared in proportion to these volumes (the cage counts with the balls). All areas together are those of the outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BearingBodies {
    /// Bore diameter.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Width.
    pub width: Length,
    /// Mass of the whole bearing.
    pub mass: Mass,
    /// Shares of the mass in the order of [`super::BearingPart`], when known better than by the rule.
    pub shares: Option<[f64; 3]>,
    /// Whether the medium gets between the rings.
    pub seal: Seal,
    /// How heat passes between rings and rolling elements.
    pub contact: BallContact,
}

/// What surrounds a bearing.
#[derive(Clone, Copy, Debug)]
pub struct BearingSurroundings<'a> {
    /// Temperature.
    pub temperature: ThermodynamicTemperature,
    /// Film on all exposed surfaces.
    pub film: SurfaceFilm<'a>,
    /// Emissivity of all of them.
    pub emissivity: f64,
    /// What it is wrapped in.
    pub wrap: Wrap,
    /// Moist air, if it can reach the parts.
    pub moisture: Option<MoistAir>,
    /// The surroundings as a body that warms or cools, which takes the place of `temperature`.
    pub store: Option<&'a LoadedMedium>,
}

/// One stage of a bearing's history. Arrays are in the order of [`super::BearingPart`].
#[derive(Clone, Copy, Debug)]
pub struct BearingPlan<'a> {
    /// Specific heat capacity of the steel over temperature (K), J/(kg K).
    pub heat_capacity: &'a Curve,
    /// Conductivity of the steel over temperature (K), W/(m K).
    pub conductivity: &'a Curve,
    /// Temperatures at the beginning.
    pub start: [ThermodynamicTemperature; 3],
    /// Heat put into each part; an induction heater heats the inner ring.
    pub power: [Power; 3],
    /// What surrounds it.
    pub surroundings: BearingSurroundings<'a>,
    /// How long.
    pub time: Time,
}

impl BearingBodies {
    /// Mass of each part, in the order of [`super::BearingPart`].
    ///
    /// # Errors
    /// Sizes that make no ring; a mass that is not positive; shares that are not positive or do not add up to one.
    pub fn masses(&self) -> Result<[Mass; 3], ThermalError> {
        let section = self.section()?;
        positive("mass of the bearing", self.mass.get::<kilogram>(), "kg")?;
        let shares = match self.shares {
            Some(shares) => checked_shares(shares)?,
            None => section.shares(),
        };
        Ok(shares.map(|share| self.mass * share))
    }

    /// Exposed area of each part, in the order of [`super::BearingPart`].
    ///
    /// # Errors
    /// Sizes that make no ring.
    pub fn areas(&self) -> Result<[Area; 3], ThermalError> {
        Ok(self.section()?.areas(self.seal).map(Area::new::<square_meter>))
    }

    /// Conductance between each ring and the rolling elements.
    ///
    /// # Errors
    /// Sizes that make no ring; a conductance below zero.
    pub fn contact_conductance(&self) -> Result<ThermalConductance, ThermalError> {
        let section = self.section()?;
        Ok(ThermalConductance::new::<watt_per_kelvin>(self.contact.conductance(section.balls(), section.ball)?))
    }

    /// Follows the three parts through one stage.
    ///
    /// # Errors
    /// As for [`BearingBodies::masses`] and [`Network::run`].
    pub fn run(&self, plan: &BearingPlan) -> Result<BearingHistory, ThermalError> {
        let section = self.section()?;
        let (masses, areas, paths) = (self.masses()?, section.areas(self.seal), section.paths());
        let around = &plan.surroundings;
        let body = |i: usize| NetworkBody {
            mass: masses[i],
            heat_capacity: plan.heat_capacity,
            start: plan.start[i],
            power: plan.power[i],
        };
        let mut network =
            Network { bodies: (0..3).map(body).collect(), links: self.links(&section)?, ..Network::default() };
        let with = match around.store {
            Some(medium) => Partner::Body(network.add_medium(medium)),
            None => {
                network.surroundings.push(around.temperature);
                Partner::Surroundings(0)
            }
        };
        let surface = |i: usize| Exchange {
            body: i,
            with,
            area: Area::new::<square_meter>(areas[i]),
            film: around.film,
            emissivity: around.emissivity,
            inside: Some(Inside { path: paths[i], conductivity: plan.conductivity }),
            wrap: around.wrap,
            moisture: around.moisture,
        };
        let exposed = (0..3).filter(|&i| areas[i] > 0.0);
        network.exchanges.extend(exposed.map(surface));
        Ok(BearingHistory::new(network.run(plan.time)?, section))
    }

    fn links(&self, section: &Section) -> Result<Vec<Link<'static>>, ThermalError> {
        let contact = Conductance::Constant(self.contact_conductance()?);
        let gas = Conductance::Constant(ThermalConductance::new::<watt_per_kelvin>(section.gas_between_rings()));
        Ok(vec![
            Link { between: (0, 1), conductance: contact },
            Link { between: (1, 2), conductance: contact },
            Link { between: (0, 2), conductance: gas },
        ])
    }

    fn section(&self) -> Result<Section, ThermalError> {
        Section::of(&Ring { bore: self.bore, outside: self.outside, width: self.width })
    }
}

fn checked_shares(shares: [f64; 3]) -> Result<[f64; 3], ThermalError> {
    for share in shares {
        positive("share of the mass", share, "")?;
    }
    let sum: f64 = shares.iter().sum();
    within("sum of the shares of the mass", sum, (1.0 - SHARE_ROUNDING, 1.0 + SHARE_ROUNDING), "")?;
    Ok(shares)
}
