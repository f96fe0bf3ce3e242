//! The screws of a cover, as a job states them.

use crate::assembly::screws::Place;
use crate::quantity::{Length, Pressure, Torque};
use crate::stock::Material;
use crate::stock::threads::{StrengthClass, Thread};

/// The screws of a cover, tightened as one pattern.
#[derive(Clone, Debug)]
pub struct Fasteners {
    /// Screws of one kind each; their places are numbered through, from 1.
    pub groups: Vec<ScrewGroup>,
    /// Shares of the torque in which the pattern is gone round, rising to 1.
    pub stages: Vec<f64>,
}

/// Screws of one kind.
#[derive(Clone, Debug)]
pub struct ScrewGroup {
    /// The thread.
    pub thread: Thread,
    /// Strength; none where no class of the tables covers the size.
    pub class: Option<StrengthClass>,
    /// Where each sits.
    pub places: Vec<Place>,
    /// The maker's torque; none where it is to be estimated.
    pub torque: Option<Torque>,
    /// By how much the torque may be off either way, as a share.
    pub torque_within: f64,
    /// Friction in the thread and under the head, low and high.
    pub friction: (f64, f64),
    /// Where that comes from.
    pub friction_source: String,
    /// Outside diameter of the face under the head.
    pub head: Length,
    /// Hole under the head.
    pub hole: Length,
    /// Length over which screw and hole are in each other with full threads.
    pub engagement: Option<Length>,
    /// What it is screwed into; none where the job does not say and has no housing.
    pub into: Option<Tapped>,
}

/// The material of a tapped hole.
#[derive(Clone, Debug)]
pub struct Tapped {
    /// The material.
    pub material: Material,
    /// Its tensile strength.
    pub tensile: Pressure,
    /// Whether that was stated; else it is the strength of the material's record, which is lower for ductile ones.
    pub stated: bool,
}
