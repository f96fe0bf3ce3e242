//! What else goes in beside the bearing: shaft seals, stacks along the axis, screws and their order, readings of a bore.

pub mod readings;
pub mod screws;
pub mod seal;
pub mod stack;
