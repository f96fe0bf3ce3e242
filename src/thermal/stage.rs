use super::SurfaceFilm;
use super::error::ThermalError;
use crate::quantity::{Power, TemperatureInterval, ThermodynamicTemperature, Time, not_negative, positive, within};
use crate::stock::Curve;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Nearest approach that can be asked for, K: closer than this a part is at the temperature for every shop purpose,
/// and an exponential approach takes ever longer.
pub(super) const NEAREST_K: f64 = 1e-3;
/// Widest meaning of settled, K; anything above is a slip of units.
const FARTHEST_K: f64 = 1e3;

/// One piece of a body's thermal history: the same surroundings from its beginning to its end.
///
/// Heat leaves the body with the flux `q = H (T - T_s) / (1 + H L / (n k))`, where `H = h + ε σ (T² + T_s²)(T + T_s)`;
/// the second term is `ε σ (T⁴ - T_s⁴)` written as a coefficient, so radiation too meets the resistance inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stage<'a> {
    /// Temperature T_s of the fluid and of the walls that the body sees.
    pub surroundings: ThermodynamicTemperature,
    /// Film coefficient h; one over the temperature of the surface is read at the mean temperature of the body.
    pub film: SurfaceFilm<'a>,
    /// Whether the body also exchanges heat by radiation (a grey body in large surroundings).
    pub radiates: bool,
    /// Heat put into the body, zero or more (an induction heater, for example).
    pub power: Power,
    /// When the stage ends.
    pub until: Until,
}

/// When a stage ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Until {
    /// After this time.
    Elapsed(Time),
    /// When the body has come to `target`.
    Reaches {
        /// Temperature to come to.
        target: ThermodynamicTemperature,
        /// Longest time allowed.
        longest: Time,
    },
    /// When the body is within this interval (0.001 K or more) of the temperature that it approaches.
    Settled {
        /// Distance from the final temperature.
        within: TemperatureInterval,
    },
}

/// A stage in plain SI, checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedStage<'a> {
    pub(super) surroundings: f64,
    pub(super) film: CheckedFilm<'a>,
    pub(super) radiates: bool,
    pub(super) power: f64,
    pub(super) until: CheckedUntil,
}

#[derive(Clone, Copy, Debug)]
pub(super) enum CheckedUntil {
    Elapsed(f64),
    Reaches { target: f64, longest: f64 },
    Settled { within: f64 },
}

/// A film in plain SI, above zero everywhere.
#[derive(Clone, Copy, Debug)]
pub(super) enum CheckedFilm<'a> {
    Constant(f64),
    Table(&'a Curve),
}

impl CheckedFilm<'_> {
    /// The coefficient at a temperature that lies in the table, W/(m² K).
    pub(super) fn at(self, t: f64) -> f64 {
        match self {
            Self::Constant(film) => film,
            Self::Table(curve) => curve.at_inside(t),
        }
    }

    /// The smallest coefficient, W/(m² K).
    pub(super) fn least(self) -> f64 {
        match self {
            Self::Constant(film) => film,
            Self::Table(curve) => curve.extremes().0,
        }
    }

    /// An error unless a table covers a temperature.
    pub(super) fn check_covered(self, t: f64) -> Result<(), ThermalError> {
        match self {
            Self::Constant(_) => Ok(()),
            Self::Table(curve) => {
                let known = curve.at(t).map(|_| ());
                known.map_err(|source| ThermalError::Property { property: "film coefficient", source })
            }
        }
    }
}

fn checked_film<'a>(film: &SurfaceFilm<'a>) -> Result<CheckedFilm<'a>, ThermalError> {
    const UNIT: &str = "W/(m² K)";
    match film {
        SurfaceFilm::Constant(film) => {
            let film = positive("film coefficient", film.get::<watt_per_square_meter_kelvin>(), UNIT)?;
            Ok(CheckedFilm::Constant(film))
        }
        SurfaceFilm::OverSurface(curve) => {
            positive("film coefficient", curve.extremes().0, UNIT)?;
            Ok(CheckedFilm::Table(curve))
        }
    }
}

impl<'a> Stage<'a> {
    pub(super) fn check(&self) -> Result<CheckedStage<'a>, ThermalError> {
        Ok(CheckedStage {
            surroundings: positive("temperature of the surroundings", self.surroundings.get::<kelvin>(), "K")?,
            film: checked_film(&self.film)?,
            radiates: self.radiates,
            power: not_negative("heating power", self.power.get::<watt>(), "W")?,
            until: self.until.check()?,
        })
    }
}

impl Until {
    fn check(&self) -> Result<CheckedUntil, ThermalError> {
        Ok(match *self {
            Until::Elapsed(time) => CheckedUntil::Elapsed(not_negative("time", time.get::<second>(), "s")?),
            Until::Reaches { target, longest } => CheckedUntil::Reaches {
                target: positive("target temperature", target.get::<kelvin>(), "K")?,
                longest: not_negative("longest time", longest.get::<second>(), "s")?,
            },
            Until::Settled { within: distance } => CheckedUntil::Settled {
                within: within(
                    "distance from the final temperature",
                    distance.get::<step_kelvin>(),
                    (NEAREST_K, FARTHEST_K),
                    "K",
                )?,
            },
        })
    }
}
