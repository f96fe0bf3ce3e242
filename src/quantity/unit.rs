//! What a unit is.

use super::System;
use Kind::{
    BodyHeat, Conductivity, Density, Duration, Expansion, Film, Force, HeatCapacity, Length, Mass, Power, Pressure,
    Share, Step, Temperature, Torque, Turning, Volume,
};

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    Length,
    Temperature,
    Step,
    Duration,
    Mass,
    Pressure,
    Force,
    Torque,
    Power,
    Turning,
    Film,
    Volume,
    Density,
    Expansion,
    HeatCapacity,
    BodyHeat,
    Conductivity,
    Share,
    /// A plain number; it has no units.
    Bare,
}

impl Kind {
    /// The kind in words that follow "a unit of".
    pub(super) fn name(self) -> &'static str {
        match self {
            Length => "length",
            Temperature => "temperature",
            Step => "temperature difference",
            Duration => "time",
            Mass => "mass",
            Pressure => "pressure or stress",
            Force => "force",
            Torque => "torque",
            Power => "power",
            Turning => "speed of turning",
            Film => "heat transfer coefficient",
            Volume => "volume",
            Density => "density",
            Expansion => "coefficient of expansion",
            HeatCapacity => "heat capacity for each kilogram",
            BodyHeat => "heat capacity of a whole body",
            Conductivity => "thermal conductivity",
            Share => "share",
            Kind::Bare => "plain number",
        }
    }
}

/// One unit: SI value = (number + `zero`) × `factor`.
#[derive(Debug)]
pub(super) struct Unit {
    pub(super) kind: Kind,
    /// Spellings; the first is the one that messages show.
    pub(super) names: &'static [&'static str],
    pub(super) factor: f64,
    pub(super) zero: f64,
    /// The family that the unit belongs to, if only one.
    pub(super) system: Option<System>,
}

impl Unit {
    pub(super) fn name(&self) -> &'static str {
        self.names[0]
    }

    pub(super) fn si(&self, number: f64) -> f64 {
        (number + self.zero) * self.factor
    }

    /// How many of this unit a quantity is.
    pub(super) fn number(&self, si: f64) -> f64 {
        si / self.factor - self.zero
    }
}
