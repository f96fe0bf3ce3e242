//! Two parts in the seat that exchange heat over the closing gap, against finite elements and against what must hold.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod checked;

use checked::prove;
use checked::races::*;
use proptest::prelude::*;
use seatwise::quantity::Cases;
use seatwise::stock::Curve;
use seatwise::thermal::bore::{
    AirConductivity, Course, Freeing, Gap, Insertion, Placement, StaysFree, still_air_conductivity,
};
use seatwise::thermal::*;
use uom::si::length::micrometer;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

#[path = "bore/answers.rs"]
mod answers;
#[path = "bore/properties.rs"]
mod properties;
#[path = "bore/races.rs"]
mod races;
#[path = "bore/refused.rs"]
mod refused;
