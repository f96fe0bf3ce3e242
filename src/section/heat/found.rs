//! What a history says.

use crate::quantity::{Length, ThermodynamicTemperature, Time};
use uom::si::f64::Energy;

/// When a stage began and ended, and when the parts met in it. Times since the history began.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StageTimes {
    /// Beginning.
    pub from: Time,
    /// End.
    pub to: Time,
    /// When the clearance was first gone anywhere along a seat; `None` when the parts were apart or stayed free.
    pub first_touch: Option<Time>,
    /// When the mean clearance of every seat was gone: from then on interference holds the ring.
    pub grip: Option<Time>,
}

/// A part at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartTemperatures {
    /// Mean over the volume.
    pub mean: ThermodynamicTemperature,
    /// Mean over the volume of the tube, without the wall or shoulder behind it.
    pub tube: ThermodynamicTemperature,
    /// Coldest node.
    pub least: ThermodynamicTemperature,
    /// Warmest node.
    pub most: ThermodynamicTemperature,
    /// Mean over the cylinder of the bore, without cuts; `None` when the part is solid.
    pub inside: Option<ThermodynamicTemperature>,
    /// Mean over the cylinder of the outside, without cuts.
    pub outside: ThermodynamicTemperature,
}

/// A temperature and its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TemperatureAt {
    /// Diameter of the place.
    pub diameter: Length,
    /// Its distance from the back face of the ring, negative behind it.
    pub position: Length,
    /// Temperature.
    pub temperature: ThermodynamicTemperature,
}

/// Diametral clearance at a place of the seat; below zero where the free parts would overlap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceAt {
    /// Distance from the back face of the ring.
    pub position: Length,
    /// Clearance.
    pub clearance: Length,
}

/// Diametral clearance of a seat at one moment, of parts that are free to grow.
#[derive(Clone, Debug, PartialEq)]
pub struct SeatClearance {
    /// Along the seat, from back to front.
    pub along: Vec<ClearanceAt>,
    /// Mean over the length.
    pub mean: Length,
    /// Least along the length.
    pub least: Length,
}

/// Where the heat of a stage went. Positive is heat into the part.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatBalance {
    /// Heat that each part gained, from its temperatures at both ends.
    pub gained: Vec<Energy>,
    /// Heat that passed each face of each part, in the order of [`super::Face::ALL`]. What passed the seat and the shoulder
    /// is not in it.
    pub faces: Vec<[Energy; 5]>,
    /// What all parts gained less what passed all faces: the error of the steps, since the seat only hands heat on.
    pub missing: Energy,
}
