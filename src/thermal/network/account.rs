//! What became of the heat and the water.

use super::checked::{Net, Store};
use crate::quantity::Mass;
use uom::si::energy::joule;
use uom::si::f64::Energy;
use uom::si::mass::kilogram;

/// Where the heat went.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HeatAccount {
    /// Gained by the bodies, `Σ m ∫c dT`.
    pub stored: Energy,
    /// Taken up by all surroundings together.
    pub to_surroundings: Energy,
    /// Put in by heaters, less what coolers took.
    pub put_in: Energy,
    /// Brought by vapour that settled.
    pub latent: Energy,
    /// Used to melt frost.
    pub melting: Energy,
}

/// Water that settled on a body.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Water {
    /// As dew, above 0 °C.
    pub dew: Mass,
    /// As frost, below 0 °C (melted meanwhile or not).
    pub frost: Mass,
    /// Heat of fusion that the frost has taken so far.
    pub melting: Energy,
}

impl HeatAccount {
    /// What is missing: `stored + melting + to_surroundings - put_in - latent`; zero but for the solver's error.
    pub fn missing(&self) -> Energy {
        self.stored + self.melting + self.to_surroundings - self.put_in - self.latent
    }
}

impl Water {
    /// Dew and frost together.
    pub fn mass(&self) -> Mass {
        self.dew + self.frost
    }
}

pub(super) fn account(net: &Net, end: &[f64], length: f64) -> HeatAccount {
    let stored: f64 = net.bodies.iter().zip(end).map(|(body, &t)| gained(body, t)).sum();
    let accounts = &end[net.bodies.len()..];
    let to_surroundings: f64 = accounts[..net.surroundings.len()].iter().sum();
    let put_in: f64 = net.bodies.iter().map(|body| body.power * length).sum();
    let of_wet = |kind: usize| (0..net.wet).map(|wet| end[net.dew(wet) + kind]).sum();
    let joules = Energy::new::<joule>;
    HeatAccount {
        stored: joules(stored),
        to_surroundings: joules(to_surroundings),
        put_in: joules(put_in),
        latent: joules(of_wet(3)),
        melting: joules(of_wet(2)),
    }
}

pub(super) fn water(net: &Net, end: &[f64]) -> Vec<Water> {
    let on = |body: &Store| {
        body.wet.map_or_else(Water::default, |wet| {
            let place = net.dew(wet);
            Water {
                dew: Mass::new::<kilogram>(end[place]),
                frost: Mass::new::<kilogram>(end[place + 1]),
                melting: Energy::new::<joule>(end[place + 2]),
            }
        })
    };
    net.bodies.iter().map(on).collect()
}

/// `m ∫c dT` from the start to `t`, J.
fn gained(body: &Store, t: f64) -> f64 {
    body.mass * body.capacity.integral_inside(body.start, t)
}
