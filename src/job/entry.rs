//! What was typed, and what was assumed in its place.

use crate::quantity::{
    Angle, AngularVelocity, Deviations, Force, HeatCapacity, HeatTransfer, Length, Mass, Power, Pressure, Roughness,
    System, TemperatureInterval, ThermodynamicTemperature, Time, Torque, Velocity,
};
use std::borrow::Cow;

/// A value of any kind that a job may hold, kept as a quantity so that the report can print it in either system.
#[derive(Clone, Debug, PartialEq)]
pub enum AnyValue {
    /// A size such as a diameter or a width.
    Size(Length),
    /// A size that a caliper is good enough for, such as that of a driver.
    RoughSize(Length),
    /// A deviation, a clearance or an uncertainty.
    SmallLength(Length),
    /// A height above the sea.
    Elevation(Length),
    /// Limit deviations.
    Limits(Deviations),
    /// A temperature.
    Temperature(ThermodynamicTemperature),
    /// A difference of temperatures.
    TemperatureStep(TemperatureInterval),
    /// A duration.
    Duration(Time),
    /// A mass.
    Mass(Mass),
    /// A mass of grams, such as that of frost.
    SmallMass(Mass),
    /// A force.
    Force(Force),
    /// A torque.
    Torque(Torque),
    /// An angle that is turned.
    Angle(Angle),
    /// A pressure or a stress.
    Pressure(Pressure),
    /// A power.
    Power(Power),
    /// The heat capacity of a whole body.
    BodyHeat(HeatCapacity),
    /// A speed of turning.
    Turning(AngularVelocity),
    /// A roughness.
    Roughness(Roughness),
    /// The speed of a surface.
    SurfaceSpeed(Velocity),
    /// A surface film coefficient, low and high.
    Film(HeatTransfer, HeatTransfer),
    /// A share of one, printed as a percentage.
    Share(crate::quantity::Ratio),
    /// A plain number.
    Number(f64),
    /// Words.
    Text(String),
}

/// A value as the user typed it, with its place in the job.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Section and key, such as `housing.outside`.
    pub key: String,
    /// The text as typed.
    pub typed: String,
    /// What it was read as.
    pub value: AnyValue,
    /// The system of the unit that was typed; none when the unit belongs to both.
    pub system: Option<System>,
}

/// A value that the job did not give, and that was put in.
#[derive(Clone, Debug, PartialEq)]
pub struct Assumption {
    /// What the value is of.
    pub what: Cow<'static, str>,
    /// The value used.
    pub value: AnyValue,
    /// Why this value, with its source, and how to state another.
    pub why: Cow<'static, str>,
}
