//! Film coefficients from correlations: how fast a surface gives heat to what surrounds it.
//!
//! Owns free and forced convection of air ([`NaturalConvection`], [`ForcedConvection`]) and their mean over the faces of
//! a part ([`part_in_air`]), boiling nitrogen ([`NitrogenPool`]), radiation of a grey body, ranges for what no
//! correlation covers ([`StatedRange`]), and the table of a film coefficient over surface temperature that inner loops
//! read ([`FilmLaw`]). It knows no jobs and no media.
//!
//! Correlations carry about ±20 % each against measurement, whatever the digits they print; a plan should try a low and
//! a high value.

mod air_values;
mod boiling;
mod correlation;
mod in_air;
mod law;
mod outline;
mod pool;
mod radiation;
mod stated;
mod stream;

pub use boiling::{
    berenson_minimum_flux, berenson_minimum_superheat, berenson_plate_film_boiling, breen_westwater_film_boiling,
    bromley_film_boiling, capillary_length, cylinder_critical_flux, film_boiling_with_radiation,
    rohsenow_nucleate_boiling, zuber_critical_flux,
};
pub use correlation::{ForcedConvection, NaturalConvection};
pub use in_air::{AirAround, FaceFilm, PartFilm, part_in_air};
pub use law::{FilmLaw, SurfaceFilm};
pub use outline::{Axis, RoundPart, Surface};
pub use pool::{FilmBoiling, NitrogenPool, NitrogenPoolCurve};
pub use radiation::{radiation_coefficient, radiation_flux};
pub use stated::{
    CONTACT_OF_MACHINED_FACES, DRY_ICE_ALCOHOL_BATH, HOT_AIR_GUN, METAL_SHELF, OIL_BATH, StatedRange, WATER_BATH,
    contact_film,
};
pub use stream::stream_film;
