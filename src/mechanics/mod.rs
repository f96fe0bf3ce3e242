//! What an interference does: pressure, stress, change of size, force and torque; and what the tools do that push a part
//! home: screws, presses, the wall behind the part, the play left in a bearing.
//!
//! Plane stress of thick-walled rings (Lamé): exact for a seat that is as wide as the ring in it and open at both ends.
//! A blind bore, or a housing longer than the ring, is stiffer: there the plane pressure, press force and closing of
//! the ring are too low by 9 to 37 % (against independent finite elements of such seats). Knows no media, no temperatures
//! and no files: an interference at one moment comes in, numbers go out.

mod elastic;
mod error;
mod internal_clearance;
mod joint;
mod means;
mod press;
mod rating;
mod ring;
mod screw;
mod stop;
mod wall;

pub use elastic::{Criterion, Elastic, Part, Strength, Surface, YieldCheck, weakest, yield_interference};
pub use error::MechanicsError;
pub use internal_clearance::{ClearanceRange, FittedClearance, InternalClearance, temperature_loss};
pub use joint::{Joint, PressFit};
pub use means::{Means, Reach, hydraulic_force, hydraulic_pressure};
pub use press::Press;
pub use rating::{STATIC_RATING_CAUTION, share_of_static_rating};
pub use ring::{Ring, RingState, Stress};
pub use screw::{
    RodCheck, RodStress, Screw, ScrewFriction, ScrewFrictionRange, ScrewThread, ScrewTorque, nut_face_diameter,
};
pub use stop::StopTorque;
pub use wall::{AllowableForce, Edge, LoadZone, Wall, WallPlace, WallState};
