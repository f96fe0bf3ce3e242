//! Torque to preload and back, with the scatter of friction and of the spanner.

use super::error::ScrewsError;
use crate::mechanics::{Screw, ScrewFriction, ScrewFrictionRange};
use crate::quantity::{Force, Pressure, Torque, within};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::torque::newton_meter;

/// Force that a screw pulls with after tightening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Preload {
    /// Highest friction, and the tool at its lowest: what surely holds the cover.
    pub least: Force,
    /// Mean friction, and the tool as set.
    pub middle: Force,
    /// Lowest friction, and the tool at its highest: what the screw and the threads must bear.
    pub most: Force,
}

impl Preload {
    /// Tightening factor, most over least: 1 is no scatter.
    ///
    /// **Source**: α_A of VDI 2230 Part 1; 1.4 to 1.6 with a torque wrench and friction known by trial, 1.6 to 2.5 with
    /// friction estimated (from memory).
    pub fn tightening_factor(&self) -> f64 {
        self.most.get::<newton>() / self.least.get::<newton>()
    }
}

/// How a screw is tightened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tightening {
    /// The screw with the face on which its head turns.
    pub screw: Screw,
    /// Its friction, low and high.
    pub friction: ScrewFrictionRange,
    /// How far the torque may be off either way, as a share of it: 0 to 0.5.
    pub tool: f64,
}

impl Tightening {
    /// Preload that a torque gives.
    ///
    /// # Errors
    /// [`ScrewsError`] for a thread, a friction or a torque that is none, or a scatter of the tool outside 0 to 0.5.
    pub fn preload(&self, torque: Torque) -> Result<Preload, ScrewsError> {
        let tool = self.tool()?;
        Ok(Preload {
            least: self.screw.force(torque * (1.0 - tool), self.friction.high)?,
            middle: self.screw.force(torque, self.mean())?,
            most: self.screw.force(torque * (1.0 + tool), self.friction.low)?,
        })
    }

    /// The largest torque whose preload never exceeds `most`, whatever the friction and the tool do.
    ///
    /// # Errors
    /// As for [`Tightening::preload`]; a force below zero.
    pub fn torque_below(&self, most: Force) -> Result<Torque, ScrewsError> {
        Ok(self.screw.torque(most, self.friction.low)?.total() / (1.0 + self.tool()?))
    }

    fn mean(&self) -> ScrewFriction {
        let (low, high) = (self.friction.low, self.friction.high);
        ScrewFriction { thread: 0.5 * (low.thread + high.thread), face: 0.5 * (low.face + high.face) }
    }

    fn tool(&self) -> Result<f64, ScrewsError> {
        Ok(within("scatter of the torque", self.tool, (0.0, 0.5), "of the torque")?)
    }
}

/// Preload at which pull and twist together use a `share` of the yield strength: `F = ν R_p A_s/√(1 + 3 k²)`, where `k` is
/// twist over pull with the rod's section yielding right through, `τ = 12 T/(π d_s³)`.
///
/// **Arguments**: `friction` in the thread, from which the twist follows; `share` over 0 up to 1, 0.9 by custom.
///
/// **Valid for** a shank no thinner than the stress section, turned by its head.
///
/// # Errors
/// [`ScrewsError`] for a thread or friction that is none, a yield strength or a share out of range.
///
/// **Source**: VDI 2230 Part 1, permitted assembly preload (from memory); meets a printed table of it to its last digit
/// (`tests/reference/assembly/preloads.csv`).
pub fn assembly_preload(
    screw: &Screw,
    friction: f64,
    yield_strength: Pressure,
    share: f64,
) -> Result<Force, ScrewsError> {
    let strength = within("yield strength", yield_strength.get::<pascal>(), (1e6, 1e10), "Pa")?;
    let share = within("share of the yield strength", share, (0.01, 1.0), "of it")?;
    let twist = screw.torque(Force::new::<newton>(1.0), ScrewFriction::both(friction))?.thread.get::<newton_meter>();
    let diameter = screw.thread.stress_diameter.get::<meter>();
    let area = PI / 4.0 * diameter * diameter;
    let twist_over_pull = 12.0 * twist / (PI * diameter.powi(3)) * area;
    Ok(Force::new::<newton>(share * strength * area / (1.0 + 3.0 * twist_over_pull * twist_over_pull).sqrt()))
}
