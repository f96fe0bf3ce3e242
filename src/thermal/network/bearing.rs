//! A rolling bearing as three bodies.

use super::super::error::{ThermalError, positive, within};
use super::super::{ConductionPath, MoistAir, Ring, Wrap};
use super::bearing_history::BearingHistory;
use super::contact::{AIR_W_MK, BallContact};
use super::medium::LoadedMedium;
use super::{Conductance, Exchange, Inside, Link, Network, NetworkBody, Partner};
use crate::quantity::{Area, Length, Mass, Power, ThermodynamicTemperature, Time};
use crate::stock::Curve;
use crate::stock::dimensions::{BALL_SHARE, RING_SHARE};
use crate::thermal::SurfaceFilm;
use std::f64::consts::PI;
use uom::si::area::square_meter;
use uom::si::f64::ThermalConductance;
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::thermal_conductance::watt_per_kelvin;

/// Share of the pitch circle that balls take; common practice (assembly by displacing one ring allows about 0.6). With the
/// shares of ring and ball it meets commonly quoted bearing masses within 10 % (see the tests).
const FILL_SHARE: f64 = 0.6;
/// Allowed rounding of three shares that must add up to one.
const SHARE_ROUNDING: f64 = 1e-6;

/// One of the three bodies of a bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BearingPart {
    /// Outer ring: its temperature counts for the fit in a housing.
    OuterRing,
    /// Balls or rollers with their cage.
    RollingElements,
    /// Inner ring: its temperature counts for the fit on a shaft.
    InnerRing,
}

/// Whether the medium gets between the rings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seal {
    /// Open: the rolling elements see the surroundings through the two ring-shaped openings.
    Open,
    /// Shields or seals, which belong to the outer ring.
    Closed,
}

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
    /// Shares of the mass in the order of [`BearingPart`], when known better than by the rule.
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

/// One stage of a bearing's history. Arrays are in the order of [`BearingPart`].
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

/// Sizes in metres that follow from the rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Section {
    bore: f64,
    outside: f64,
    width: f64,
    ring: f64,
    pub(super) ball: f64,
    pub(super) pitch: f64,
}

impl BearingPart {
    pub(crate) fn index(self) -> usize {
        match self {
            BearingPart::OuterRing => 0,
            BearingPart::RollingElements => 1,
            BearingPart::InnerRing => 2,
        }
    }
}

impl BearingBodies {
    /// Mass of each part, in the order of [`BearingPart`].
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

    /// Exposed area of each part, in the order of [`BearingPart`].
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
        Ring { bore: self.bore, outside: self.outside, width: self.width }.shape()?;
        let (bore, outside) = (self.bore.get::<meter>(), self.outside.get::<meter>());
        let height = outside - bore;
        Ok(Section {
            bore,
            outside,
            width: self.width.get::<meter>(),
            ring: RING_SHARE * height,
            ball: BALL_SHARE * height,
            pitch: 0.5 * (bore + outside),
        })
    }
}

impl Section {
    /// Number of balls that the rule gives; need not be whole.
    fn balls(&self) -> f64 {
        FILL_SHARE * PI * self.pitch / self.ball
    }

    /// Shares of the volume.
    fn shares(&self) -> [f64; 3] {
        let ring = |mean_diameter: f64| PI * mean_diameter * self.ring * self.width;
        let balls = self.balls() * PI / 6.0 * self.ball.powi(3);
        let volumes = [ring(self.outside - self.ring), balls, ring(self.bore + self.ring)];
        let whole: f64 = volumes.iter().sum();
        volumes.map(|volume| volume / whole)
    }

    /// Outside or bore with the two faces of each ring; the openings between them belong to the balls, or, shielded, to
    /// the outer ring.
    fn areas(&self, seal: Seal) -> [f64; 3] {
        let faces = |large: f64, small: f64| 2.0 * PI / 4.0 * (large * large - small * small);
        let (inside, over) = (self.outside - 2.0 * self.ring, self.bore + 2.0 * self.ring);
        let outer = PI * self.outside * self.width + faces(self.outside, inside);
        let inner = PI * self.bore * self.width + faces(over, self.bore);
        let openings = faces(inside, over);
        match seal {
            Seal::Open => [outer, openings, inner],
            Seal::Closed => [outer + openings, 0.0, inner],
        }
    }

    /// Rings give their heat to the outside or bore and to both faces, balls all round (n = 5 for a sphere).
    fn paths(&self) -> [ConductionPath; 3] {
        let ring = ConductionPath::one_face(Length::new::<meter>(self.ring));
        let ring = ring.shorter_of(ConductionPath::both_faces(Length::new::<meter>(self.width)));
        let ball = ConductionPath { length: Length::new::<meter>(0.5 * self.ball), divisor: 5.0 };
        [ring, ball, ring]
    }

    /// Still air between the two rings, beside the balls: `2π k b / ln(r_2/r_1)`, W/K.
    fn gas_between_rings(&self) -> f64 {
        let (inside, over) = (self.outside - 2.0 * self.ring, self.bore + 2.0 * self.ring);
        (1.0 - FILL_SHARE) * 2.0 * PI * AIR_W_MK * self.width / (inside / over).ln()
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
