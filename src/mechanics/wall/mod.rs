//! The wall behind a part, as a round plate pushed by the face of a ring.

mod allowable;
mod load;
mod plate;

pub use allowable::{AllowableForce, WallPlace};
pub use load::LoadZone;
pub use plate::{Edge, Wall, WallState};
