//! Clearance of one seat against time: what the plan hands to a plot.
//!
//! Owns the values only. The plan computes them, and a report draws them.

use crate::quantity::{Cases, Length, Time};

/// Clearance of one seat against time in the three cases.
///
/// Time zero is the moment when the parts leave their media: it is negative before, while they are chilled or warmed,
/// and positive after, in shop air. Clearance is positive when the joint is loose.
#[derive(Clone, Debug, PartialEq)]
pub struct ClearanceHistory {
    /// The curve, in order of time. Two points at the same time make a step.
    pub points: Vec<ClearancePoint>,
    /// Clearance that the fitter needs to slip the part in by hand.
    pub placing_clearance: Length,
    /// What happens along the way, in any order.
    pub moments: Vec<Moment>,
    /// What follows once the part stands in its seat.
    pub in_seat: InSeat,
}

impl ClearanceHistory {
    /// No curve, for a plan that no page will show.
    pub(super) fn empty(placing_clearance: Length) -> Self {
        Self { points: Vec::new(), placing_clearance, moments: Vec::new(), in_seat: InSeat::default() }
    }
}

/// Clearance while the part stands in its seat, where both parts exchange heat over the closing gap.
///
/// Time zero is the moment when it is in, at the end of the carrying time; negative clearance is the interference that
/// the joint has gripped with. Empty where neither part is treated.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InSeat {
    /// The curve, in order of time.
    pub points: Vec<ClearancePoint>,
    /// What happens along the way.
    pub moments: Vec<Moment>,
}

/// Clearance in the three cases at one time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearancePoint {
    /// Time after the parts have left their media, negative before; in the seat, time since the part is in.
    pub time: Time,
    /// Bore of the outer part less outside of the inner part; negative is interference.
    pub clearance: Cases<Length>,
}

/// Something that happens at one time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Time as that of the curve it belongs to.
    pub time: Time,
    /// What happens.
    pub kind: MomentKind,
    /// Clearance of the middle case at that time; of the tightest case for [`MomentKind::Grips`].
    pub clearance: Length,
}

/// What happens at a [`Moment`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MomentKind {
    /// The parts leave their media: time zero.
    OutOfMedium,
    /// The part reaches the bore.
    AtBore,
    /// The tightest case first has the placing clearance.
    FirstClears,
    /// The tightest case loses the placing clearance.
    NoLongerClears,
    /// The tightest case grips in its seat.
    Grips,
}
