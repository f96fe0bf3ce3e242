//! Temperatures of parts against time, and sizes against temperature.
//!
//! Owns thermal expansion ([`diameter_at`] and its inverses), one lumped body in a sequence of surroundings
//! ([`History`]), the volume and exposed area of the shapes that take part ([`Ring`], [`Plug`], [`Boss`],
//! [`ShaftLength`]) and the dew and frost point of air. It knows no stress, no jobs and no media: film coefficients
//! and property curves are handed in.
//!
//! Sizes are at 20 °C (ISO 1). A temperature outside a property table is an error, never an extrapolation.

mod balance;
mod contact;
mod crossing;
mod error;
mod expansion;
mod geometry;
mod history;
mod lumped;
mod moist_air;
mod root;
mod stage;
mod track;

pub use contact::contact_temperature;
pub use crossing::first_crossing;
pub use error::ThermalError;
pub use expansion::{Measurement, change_of, diameter_at, size_at_reference, temperature_for_strain};
pub use geometry::{BackWall, Boss, Plug, Ring, ShaftLength, Shape};
pub use history::{History, StageRecord};
pub use lumped::{Body, ConductionPath};
pub use moist_air::{Over, condensation_point, dew_point, frost_point, saturation_pressure, vapour_pressure};
pub use stage::{Stage, Until};

/// 20 °C in kelvin, the reference temperature of every size (ISO 1).
pub(crate) const REFERENCE_K: f64 = 293.15;

/// 0 °C in kelvin.
const ICE_POINT_K: f64 = 273.15;
