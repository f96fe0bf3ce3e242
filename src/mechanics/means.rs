use super::error::MechanicsError;
use super::screw::{Screw, ScrewFrictionRange};
use crate::quantity::{Force, Length, Pressure, Torque, not_negative, positive};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// Why no force is given for a hammer.
const HAMMER_CAUTION: &str = "no force can be stated for a hammer: a blow is short and its peak depends on hammer, sleeve \
                              and bench; strike only a sleeve that bears on the ring being seated, square to the seat, and \
                              never let a blow pass through the rolling elements";

/// What pushes the part home.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Means {
    /// A hydraulic press.
    Hydraulic {
        /// Diameter of its ram's piston.
        ram: Length,
        /// Pressure at which its valve opens, or that it is rated for.
        most_pressure: Pressure,
    },
    /// A lever or rack (arbor) press.
    Arbor {
        /// Its rated force.
        capacity: Force,
    },
    /// A screw jig or puller.
    Screw {
        /// The screw.
        screw: Screw,
        /// Friction that it may have.
        friction: ScrewFrictionRange,
        /// Torque that may be put on it.
        most_torque: Torque,
    },
    /// Hammer and sleeve.
    HammerAndSleeve,
}

/// Whether a means reaches a force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// Its force is known.
    Known {
        /// Force that it gives for certain.
        available: Force,
        /// Force asked for over force available.
        share: f64,
    },
    /// Nothing can be said; see [`Means::caution`].
    Unknown,
}

impl Reach {
    /// Whether the force is reached; `None` when nothing can be said.
    pub fn reaches(&self) -> Option<bool> {
        match self {
            Self::Known { share, .. } => Some(*share <= 1.0),
            Self::Unknown => None,
        }
    }
}

impl Means {
    /// Force that it gives for certain: a press its full force, a screw that of its torque at the highest friction.
    ///
    /// # Errors
    /// Sizes, pressures, forces or torques that are not positive; a screw or friction that is none.
    pub fn available(&self) -> Result<Option<Force>, MechanicsError> {
        match *self {
            Self::Hydraulic { ram, most_pressure } => {
                positive("pressure of the press", most_pressure.get::<pascal>(), "Pa")?;
                hydraulic_force(ram, most_pressure).map(Some)
            }
            Self::Arbor { capacity } => {
                positive("capacity of the press", capacity.get::<newton>(), "N")?;
                Ok(Some(capacity))
            }
            Self::Screw { screw, friction, most_torque } => {
                friction.check()?;
                let force = screw.force(most_torque, friction.high)?;
                positive("force of the screw at its torque", force.get::<newton>(), "N")?;
                Ok(Some(force))
            }
            Self::HammerAndSleeve => Ok(None),
        }
    }

    /// Holds a force against what the means gives.
    ///
    /// # Errors
    /// As for [`Means::available`]; a force below zero.
    pub fn check(&self, force: Force) -> Result<Reach, MechanicsError> {
        let wanted = not_negative("force asked for", force.get::<newton>(), "N")?;
        Ok(match self.available()? {
            Some(available) => Reach::Known { available, share: wanted / available.get::<newton>() },
            None => Reach::Unknown,
        })
    }

    /// What must be said instead of a number, or beside it. Common practice, no published source.
    pub fn caution(&self) -> Option<&'static str> {
        matches!(self, Self::HammerAndSleeve).then_some(HAMMER_CAUTION)
    }
}

/// Gauge pressure at which a ram gives a force: `p = F/(π D²/4)`.
///
/// **Valid for** a single-acting ram without its own friction; a gauge that is off is off by its own share.
///
/// # Errors
/// A force below zero, a diameter that is not positive.
///
/// **Source**: pressure times area.
pub fn hydraulic_pressure(ram: Length, force: Force) -> Result<Pressure, MechanicsError> {
    let force = not_negative("force of the press", force.get::<newton>(), "N")?;
    Ok(Pressure::new::<pascal>(force / ram_area(ram)?))
}

/// Force of a ram at a gauge pressure: `F = p π D²/4`.
///
/// # Errors
/// A pressure below zero, a diameter that is not positive.
///
/// **Source**: pressure times area.
pub fn hydraulic_force(ram: Length, pressure: Pressure) -> Result<Force, MechanicsError> {
    let pressure = not_negative("pressure of the press", pressure.get::<pascal>(), "Pa")?;
    Ok(Force::new::<newton>(pressure * ram_area(ram)?))
}

fn ram_area(ram: Length) -> Result<f64, MechanicsError> {
    let diameter = positive("diameter of the ram", ram.get::<meter>(), "m")?;
    Ok(PI / 4.0 * diameter * diameter)
}
