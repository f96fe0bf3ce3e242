//! The embedded data: materials, media and tables of the standards, each value with its source.

pub mod chamfers;
pub mod closure;
pub mod curve;
pub mod dimensions;
pub mod friction;
pub mod iso286;
pub mod iso492;
pub mod iso5753;
mod library;
pub mod material;
pub mod medium;
mod recover;
pub mod retaining_rings;
pub mod seal_seats;
pub mod seat_shapes;
pub mod threads;

pub use closure::Closure;
pub(crate) use curve::Reader;
pub use curve::{Curve, CurveError};
pub use library::Library;
pub use material::Material;
pub use medium::Medium;
