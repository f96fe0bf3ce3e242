//! Units: what a shop writes, checked by the compiler, and printed back.
//!
//! Quantities are `uom` types in SI. Sizes of the tolerance tables and their deviations are whole nanometres
//! ([`Nanometres`]), so that sums of deviations are exact.
//!
//! Readers ([`length`], [`temperature`], [`limits()`] ...) take a number with its unit, with a decimal point or comma,
//! and say what to write when they refuse one. A word with two meanings ("mil", "tenths", "ton") is refused with both.
//! Writers (`show_...`) round once, to the side that [`Toward`] names, and print in one [`System`] of units.
//!
//! ```
//! use seatwise::quantity::{System, Toward, force, length, show_force, show_size};
//! let bore = length("2.4409 in")?;
//! assert_eq!(show_size(bore.value, System::Metric, Toward::Nearest), "61.999 mm");
//! assert_eq!(show_force(force("4.31 kN")?.value, System::Metric, Toward::Up), "4.4 kN");
//! assert_eq!(length("3 tenths").unwrap_err().problem, "`3 tenths` could be 0.3 mm or 0.0003 in");
//! # Ok::<(), seatwise::quantity::QuantityError>(())
//! ```

mod cases;
mod entered;
mod error;
mod exact;
mod limits;
mod material_values;
mod numeral;
mod print;
mod quantities;
mod read;
mod roughness;
mod rounding;
mod spelling;
mod unit;
mod units;
mod value;
mod warming;
mod worked;

pub use cases::Cases;
pub use entered::{Entered, System};
pub use error::QuantityError;
pub use exact::{Deviations, Nanometres};
pub use limits::{SizedLimits, limits, sized_limits};
pub use material_values::{
    body_heat_capacity, conductivity, density, expansion_coefficient, heat_capacity, speed_of_turning, volume,
};
pub use print::{
    show_body_heat_capacity, show_deviation, show_duration, show_elevation, show_film_coefficient, show_force,
    show_limits, show_mass, show_power, show_pressure, show_rough_size, show_roughness, show_share, show_size,
    show_small_length, show_speed_of_turning, show_surface_speed, show_temperature, show_temperature_step, show_torque,
    show_torque_in_each,
};
pub use quantities::{
    coordinate, deviation, duration, film_coefficient, force, length, mass, number, power, pressure, share,
    temperature, temperature_step, torque,
};
pub use roughness::{Roughness, roughness};
pub use rounding::{Toward, to_step};
pub use uom::si::f64::{
    Angle, AngularVelocity, Area, Force, HeatCapacity, HeatTransfer, Length, Mass, Power, Pressure, Ratio,
    TemperatureInterval, ThermodynamicTemperature, Time, Torque, Velocity,
};
pub use value::ValueError;
pub(crate) use value::{not_negative, positive, within};
pub use warming::{REFERENCE_TEMPERATURE_K, celsius, reference_temperature, warming};
pub use worked::Worked;
