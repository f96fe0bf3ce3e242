//! shim
#![allow(missing_docs)]
use crate::quantity::*;
#[derive(Clone, Debug)]
pub struct ClearanceHistory {
    pub points: Vec<ClearancePoint>,
    pub placing_clearance: Length,
    pub moments: Vec<Moment>,
}
#[derive(Clone, Copy, Debug)]
pub struct ClearancePoint {
    pub time: Time,
    pub clearance: Cases<Length>,
}
#[derive(Clone, Copy, Debug)]
pub struct Moment {
    pub time: Time,
    pub kind: MomentKind,
    pub clearance: Length,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MomentKind {
    OutOfMedium,
    AtBore,
    FirstClears,
    NoLongerClears,
}
