//! Screws of a cover: torque and preload, what the threads bear, and the order in which they are tightened.
//!
//! Owns the relations between torque, preload and stripping, and the order; which screws a job has, and what is said of
//! them, belongs to others. Torque on a flank is [`crate::mechanics::Screw`].
//!
//! **Source**: VDI 2230 Part 1 (preload, torque, scatter), ISO 898-1 (proof loads), FED-STD-H28/2 and ISO 965-1 (shear
//! areas at the limits of the threads); each named where it is used, from memory unless a check against a print is named.

mod error;
mod order;
mod place;
mod preload;
mod strip;
mod tolerance;
mod unit_slip;

pub use error::ScrewsError;
pub use order::opposite_first;
pub use place::{Place, circle, nearest_pair};
pub use preload::{Preload, Tightening, assembly_preload};
pub use strip::{StripLoads, ThreadPair, ThreadSizes};
pub use unit_slip::{UnitSlip, unit_slip};
