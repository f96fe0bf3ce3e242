//! A screw that presses: torque for force, force for torque, and what the rod bears.

mod rod;
mod thread;
mod torque;

pub use rod::{RodCheck, RodStress};
pub use thread::ScrewThread;
pub use torque::{Screw, ScrewFriction, ScrewFrictionRange, ScrewTorque, nut_face_diameter};
