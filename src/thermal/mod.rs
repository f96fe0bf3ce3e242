//! Temperatures of parts against time, and sizes against temperature.
//!
//! Owns thermal expansion ([`diameter_at`] and its inverses), one lumped body in a sequence of surroundings
//! ([`History`]) or several at once ([`Network`]), two parts that exchange heat in the seat ([`bore`]), the volume and exposed area of the shapes that take part ([`Ring`], [`Plug`], [`Boss`],
//! [`ShaftLength`]) and the dew and frost point of air. It knows no stress, no jobs and no media: film coefficients
//! and property curves are handed in.
//!
//! Sizes are at 20 °C (ISO 1). A temperature outside a property table is an error, never an extrapolation.

mod air;
mod balance;
pub mod bore;
mod contact;
mod crossing;
mod error;
mod expansion;
mod explicit;
mod film;
mod frost;
mod geometry;
mod history;
mod lumped;
mod model_error;
mod moist_air;
mod network;
mod nitrogen;
mod root;
mod stage;
mod track;
mod wrap;

pub use air::{Air, standard_pressure};
pub(crate) use contact::Meetings;
pub use contact::contact_temperature;
pub use crossing::first_crossing;
pub use error::ThermalError;
pub use expansion::{Measurement, change_of, diameter_at, size_at_reference, temperature_for_strain};
pub use film::{
    AirAround, Axis, CONTACT_OF_MACHINED_FACES, DRY_ICE_ALCOHOL_BATH, FaceFilm, FilmBoiling, FilmLaw, ForcedConvection,
    HOT_AIR_GUN, METAL_SHELF, NaturalConvection, NitrogenPool, NitrogenPoolCurve, OIL_BATH, PartFilm, RoundPart,
    StatedRange, Surface, SurfaceFilm, WATER_BATH, berenson_minimum_flux, berenson_minimum_superheat,
    berenson_plate_film_boiling, breen_westwater_film_boiling, bromley_film_boiling, capillary_length, contact_film,
    cylinder_critical_flux, film_boiling_with_radiation, part_in_air, radiation_coefficient, radiation_flux,
    rohsenow_nucleate_boiling, stream_film, zuber_critical_flux,
};
pub use frost::{MoistAir, Wetting};
pub use geometry::{BackWall, Boss, Plug, Ring, ShaftLength, Shape};
pub use history::{History, StageRecord};
pub use lumped::{Body, ConductionPath};
pub use model_error::{ErrorShape, TimeError, time_error};
pub use moist_air::{Over, condensation_point, dew_point, frost_point, saturation_pressure, vapour_pressure};
pub use network::{
    BallContact, BearingBodies, BearingHistory, BearingPart, BearingPlan, BearingSurroundings, Conductance, Exchange,
    HeatAccount, Inside, Link, LoadedMedium, Network, NetworkBody, NetworkHistory, Partner, Seal, Water,
};
pub use nitrogen::{
    CARBON_DIOXIDE_LONG_TERM_LIMIT, CARBON_DIOXIDE_SHORT_TERM_LIMIT, Coolant, Evaporated, OXYGEN_DEFICIENT, RoomAir,
    dry_ice_sublimed, nitrogen_boiling_point, nitrogen_boiling_point_at, nitrogen_evaporated, room_air_after,
};
pub use stage::{Stage, Until};
pub use wrap::{Wrap, wrapped};

/// 20 °C in kelvin, the reference temperature of every size (ISO 1).
pub(crate) const REFERENCE_K: f64 = 293.15;

/// 0 °C in kelvin.
const ICE_POINT_K: f64 = 273.15;
