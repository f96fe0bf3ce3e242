//! Units: what a shop writes, checked by the compiler, and printed back.
//!
//! Quantities are `uom` types in SI. Sizes of the tolerance tables and their deviations are whole nanometres
//! ([`Nanometres`]), so that sums of deviations are exact.

mod cases;
mod exact;

pub use cases::Cases;
pub use exact::{Deviations, Nanometres};
pub use uom::si::f64::{
    Area, Force, HeatTransfer, Length, Mass, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature,
    Time, Torque,
};
