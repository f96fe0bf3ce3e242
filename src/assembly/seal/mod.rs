//! A radial shaft seal in its bore: interference, force to press it in, where it comes to lie, speed of its lip.

mod error;
mod fit;
mod push;
mod seating;

pub use error::SealError;
pub use fit::{Allowance, interference, surface_speed};
pub use push::{CaseForce, MetalCase, RubberCover};
pub use seating::{Drain, LEAST_SHIFT_MM, Seating, Stand, shifted_by};
