//! What else goes in beside the bearing: seal, stack, screws, readings.

pub mod readings;
pub mod screws;
