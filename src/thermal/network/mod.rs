//! Several lumped bodies that exchange heat with their surroundings and with each other.
//!
//! Each body keeps its own mean temperature: `m c(T) dT/dt = P - Σ A q - Σ G (T - T_other)`. The flux `q` through a
//! surface meets the resistance inside the body, that of a wrap, and the film; moist air adds latent heat. The heat that
//! goes to each of the surroundings is integrated along, so that the account can be checked.

mod account;
mod balance;
mod bearing;
mod bearing_history;
mod bearing_section;
mod check;
mod checked;
mod contact;
mod history;
mod medium;
mod rosenbrock;
mod solve;
mod surface;

pub use account::{HeatAccount, Water};
pub use bearing::{BearingBodies, BearingPlan, BearingSurroundings};
pub use bearing_history::BearingHistory;
pub use bearing_section::{BearingPart, Seal};
pub use contact::BallContact;
pub use history::NetworkHistory;
pub use medium::LoadedMedium;

use super::error::ThermalError;
use super::{ConductionPath, MoistAir, SurfaceFilm, Wrap};
use crate::quantity::{Area, Mass, Power, ThermodynamicTemperature, Time, not_negative};
use crate::stock::Curve;
use uom::si::f64::ThermalConductance;
use uom::si::time::second;

/// Bodies, what surrounds them, and the ways between.
///
/// Bodies and surroundings are named by their place in the lists, from zero.
#[derive(Clone, Debug, Default)]
pub struct Network<'a> {
    /// The bodies.
    pub bodies: Vec<NetworkBody<'a>>,
    /// Temperatures that stay as they are: a room, a bath, a freezer that is large against the part.
    pub surroundings: Vec<ThermodynamicTemperature>,
    /// Surfaces.
    pub exchanges: Vec<Exchange<'a>>,
    /// Contacts between bodies.
    pub links: Vec<Link<'a>>,
}

/// One lumped body.
#[derive(Clone, Copy, Debug)]
pub struct NetworkBody<'a> {
    /// Mass.
    pub mass: Mass,
    /// Specific heat capacity over temperature (K), J/(kg K).
    pub heat_capacity: &'a Curve,
    /// Temperature at the beginning.
    pub start: ThermodynamicTemperature,
    /// Heat put in, W; negative when it is taken out.
    pub power: Power,
}

/// A surface of a body and what it faces.
#[derive(Clone, Copy, Debug)]
pub struct Exchange<'a> {
    /// The body whose surface it is.
    pub body: usize,
    /// What it faces.
    pub with: Partner,
    /// Area.
    pub area: Area,
    /// Film coefficient of convection or boiling.
    pub film: SurfaceFilm<'a>,
    /// Emissivity of the surface, 0 when radiation is left out (grey body in large surroundings).
    pub emissivity: f64,
    /// Resistance between the mean temperature of the body and this surface.
    pub inside: Option<Inside<'a>>,
    /// What is wrapped around the surface.
    pub wrap: Wrap,
    /// Moist air that leaves water on the surface; none gets through a vapour-tight wrap.
    pub moisture: Option<MoistAir>,
}

/// What a surface faces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Partner {
    /// One of the surroundings.
    Surroundings(usize),
    /// Another body, for example the medium in a small bath.
    Body(usize),
}

/// Way of the heat inside a body, `R = L/(n k)`.
#[derive(Clone, Copy, Debug)]
pub struct Inside<'a> {
    /// How far, and the divisor of the shape.
    pub path: ConductionPath,
    /// Conductivity over temperature (K), W/(m K), read at the mean temperature of the body.
    pub conductivity: &'a Curve,
}

/// A contact between two bodies.
#[derive(Clone, Copy, Debug)]
pub struct Link<'a> {
    /// The two bodies.
    pub between: (usize, usize),
    /// Heat per time and difference of their mean temperatures.
    pub conductance: Conductance<'a>,
}

/// Conductance of a contact.
#[derive(Clone, Copy, Debug)]
pub enum Conductance<'a> {
    /// The same throughout.
    Constant(ThermalConductance),
    /// Over the mean of the two temperatures (K), W/K.
    OverTemperature(&'a Curve),
}

impl Network<'_> {
    /// Follows all bodies for a time.
    ///
    /// An embedded, linearly implicit Runge-Kutta pair of order 4 and 3 with step control and dense output; the error of
    /// each step is at most 1e-5 of the widest difference of temperature. Contacts and boiling that answer thousands of
    /// times faster than the rest do not shorten the steps.
    ///
    /// # Errors
    /// Numbers out of range or places that do not exist; [`ThermalError::Property`] when a temperature leaves a table;
    /// [`ThermalError::NotFollowed`] when the step control gives up.
    pub fn run(&self, time: Time) -> Result<NetworkHistory, ThermalError> {
        let length = not_negative("time", time.get::<second>(), "s")?;
        let net = checked::Net::new(self)?;
        solve::solve(&net, length)
    }
}
