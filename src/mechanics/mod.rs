//! What an interference does: pressure, stress, change of size, force and torque.
//!
//! Plane stress of thick-walled rings (Lamé): exact for a seat that is as wide as the ring in it and open at both ends.
//! A blind bore, or a housing longer than the ring, is stiffer: there the plane pressure, press force and closing of
//! the ring are too low by 9 to 37 % (against independent finite elements of such seats). Knows no media, no temperatures
//! and no files: an interference at one moment comes in, numbers go out.

mod bearing_ring;
mod compound;
mod elastic;
mod error;
mod joint;
mod plastic;
mod press;
mod ring;
mod seam;
mod stress;
mod yield_start;

pub use bearing_ring::{Groove, RING_SHARE, inner_ring_outside, outer_ring_inside};
pub use compound::{Compound, CompoundState, Interface, InterfaceState, Layer};
pub use elastic::{Criterion, Elastic, Part, Strength, Surface, YieldCheck, weakest, yield_interference};
pub use error::MechanicsError;
pub use joint::{Joint, PressFit};
pub use plastic::{FlowRule, PartlyPlastic, PlasticHub, PlasticLimits};
pub use press::Press;
pub use ring::{Ends, Ring, RingState};
pub use stress::Stress;
pub use yield_start::{Onset, YieldStart, yield_start};
