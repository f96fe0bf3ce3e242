//! How far the time of a lumped body may be from the truth, by shape, Biot number and share of the way.
//!
//! The bounds are fitted, not derived: each lies above every row of two tables of exact solutions (series for wall,
//! cylinder and hollow cylinder, products of series for short ones), which the tests hold against them. Their form comes
//! from the small-Biot expansion: the surface answers before the mean, which is a fixed delay of the model and so an
//! error that falls with `1/ln(1/θ)`; the first eigenvalue is slightly lower than `h/(1 + Bi/n)` says, which is an error in
//! proportion to Bi²; a curved or short body has another divisor than n, which is an error in proportion to Bi.

use super::error::ThermalError;
use super::{Plug, Ring};
use crate::quantity::{positive, within};
use uom::si::length::meter;

/// Largest Biot number at which the lumped body is offered as an answer.
const LUMPED_BIOT: f64 = 1.0;
/// Largest Biot number of the exact solutions behind the bounds.
const LARGEST_BIOT: f64 = 10.0;
/// Shares of the way between which the bounds were held against exact solutions.
const SHARES: (f64, f64) = (0.1, 0.99);
/// What a share may lose when it is worked out as one less the rest.
const SHARE_ROUNDING: f64 = 1e-12;
/// Smallest bore as a share of the outside in the exact solutions; 0.7 when only the bore exchanges heat.
const THICKEST_RING: f64 = 0.5;
const THICKEST_FROM_INSIDE: f64 = 0.7;

/// Shape of a body and the faces through which it exchanges heat, as far as the error of the lumped model goes.
///
/// The Biot number that belongs to it has the length of its [`super::ConductionPath`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ErrorShape {
    /// A flat wall ([`super::ConductionPath::both_faces`] or `one_face`).
    Wall,
    /// A long solid cylinder ([`super::ConductionPath::cylinder`]).
    Cylinder,
    /// A long ring with heat through bore and outside (`both_faces` of its wall).
    RingBothFaces {
        /// Bore over outside, 0.5 to 1.
        bore_share: f64,
    },
    /// A long ring with heat through its outside only (`one_face` of its wall).
    RingOutside {
        /// Bore over outside, 0.5 to 1.
        bore_share: f64,
    },
    /// A long ring with heat through its bore only (`one_face` of its wall).
    RingBore {
        /// Bore over outside, 0.7 to 1.
        bore_share: f64,
    },
    /// A short body with heat through all faces, for which the shorter of two ways was taken.
    Short {
        /// Divisor n of the way that was taken.
        divisor: f64,
        /// Resistance L/n of the other way over that of the way taken, 1 or more.
        longer_way: f64,
        /// Share of the exposed surface to which the other way leads, 0 to 1.
        its_share: f64,
        /// Bore over outside; 1 for a body without a bore.
        bore_share: f64,
    },
}

/// By how much the time of a lumped body may differ from the true time, as shares of the true time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeError {
    /// The model may be later than the part by this share.
    pub late: f64,
    /// The model may be earlier than the part by this share.
    pub early: f64,
    /// Biot number above 1: the bounds are a trend only, and conduction in the section must be solved.
    pub needs_section: bool,
}

impl TimeError {
    /// The larger of the two shares.
    pub fn largest(&self) -> f64 {
        self.late.max(self.early)
    }
}

/// Coefficients of `late = l Bi/(1 + 0.2 Bi) + a Bi²/((1 + b Bi) ln(1/θ)) - s Bi²/(1 + g Bi)` and
/// `early = e Bi + f Bi²/(1 + g Bi)`, neither below zero.
#[derive(Clone, Copy, Debug)]
struct Bound {
    l: f64,
    a: f64,
    b: f64,
    e: f64,
    f: f64,
    g: f64,
    s: f64,
}

/// Bound of the error in the time that a lumped body with the resistance of its path takes to come a share of the way
/// from its start to its surroundings, in mean temperature.
///
/// **Arguments**: `biot`, `h L / k` with the length of the path; `done`, share of the way (0.5 is half of it).
///
/// **Valid for** constant film and properties; Bi to 1, and as a trend to 10 (`needs_section` is then set); 0.1 to 0.99 of
/// the way.
///
/// # Errors
/// [`ThermalError::Value`] for the Biot number, the share or the shape.
///
/// **Source**: fitted above independently computed exact solutions (series of H. S. Carslaw, J. C. Jaeger, "Conduction
/// of Heat in Solids", 2nd ed., from memory), which the tests name row by row.
pub fn time_error(shape: ErrorShape, biot: f64, done: f64) -> Result<TimeError, ThermalError> {
    let biot = within("Biot number", biot, (0.0, LARGEST_BIOT), "")?;
    let left = 1.0 - within("share of the way", done, (SHARES.0 - SHARE_ROUNDING, SHARES.1 + SHARE_ROUNDING), "")?;
    let Bound { l, a, b, e, f, g, s } = shape.bound()?;
    let square = biot * biot;
    let curved = square / (1.0 + g * biot);
    Ok(TimeError {
        late: (l * biot / (1.0 + 0.2 * biot) + a * square / ((1.0 + b * biot) * (1.0 / left).ln()) - s * curved)
            .max(0.0),
        early: (e * biot + f * curved).max(0.0),
        needs_section: biot > LUMPED_BIOT,
    })
}

impl ErrorShape {
    /// A ring with all faces exposed, by the path that [`Ring::shape`] takes.
    ///
    /// # Errors
    /// As for [`Ring::shape`].
    pub fn of_ring(ring: &Ring) -> Result<Self, ThermalError> {
        ring.shape()?;
        let (bore, outside) = (ring.bore.get::<meter>(), ring.outside.get::<meter>());
        let (wall, width) = ((outside - bore) / 2.0, ring.width.get::<meter>());
        // Areas over π: bore and outside (2 r_m · 2 b), both faces (2 r_m · 2 wall) share the mean diameter.
        let ways = [Way { area: width, resistance: wall / 6.0 }, Way { area: wall, resistance: width / 6.0 }];
        Ok(short(ways, 3.0, bore / outside))
    }

    /// A plug with all faces exposed, by the path that [`Plug::shape`] takes.
    ///
    /// # Errors
    /// As for [`Plug::shape`].
    pub fn of_plug(plug: &Plug) -> Result<Self, ThermalError> {
        plug.shape()?;
        let (radius, half) = (plug.outside.get::<meter>() / 2.0, plug.length.get::<meter>() / 2.0);
        // Areas over 2 π r: side 2 b/2, both ends r.
        let side = Way { area: 2.0 * half, resistance: radius / 4.0 };
        let ends = Way { area: radius, resistance: half / 3.0 };
        let divisor = if side.resistance <= ends.resistance { 4.0 } else { 3.0 };
        Ok(short([side, ends], divisor, 1.0))
    }

    fn bound(self) -> Result<Bound, ThermalError> {
        let flat = Bound { l: 0.0, a: 0.0225, b: 0.9, e: 0.0, f: 0.0175, g: 0.65, s: 0.0 };
        Ok(match self {
            ErrorShape::Wall => flat,
            ErrorShape::Cylinder => Bound { a: 0.0215, f: 0.0168, g: 0.5, ..flat },
            ErrorShape::RingBothFaces { bore_share } => {
                Bound { e: 0.066 * curvature(bore_share, THICKEST_RING)?, ..flat }
            }
            ErrorShape::RingOutside { bore_share } => {
                let l = 0.052 * curvature(bore_share, THICKEST_RING)?;
                Bound { l, a: 0.023 * (1.4 - 0.4 * bore_share), b: 0.75, ..flat }
            }
            ErrorShape::RingBore { bore_share } => {
                let curvature = curvature(bore_share, THICKEST_FROM_INSIDE)?;
                Bound { l: 0.065 * curvature, a: 0.027, e: -0.055 * curvature, s: 0.0185, ..flat }
            }
            ErrorShape::Short { divisor, longer_way, its_share, bore_share } => {
                positive("divisor of the Biot number", divisor, "")?;
                within("ratio of the two ways", longer_way, (1.0, f64::MAX), "")?;
                within("share of the surface", its_share, (0.0, 1.0), "")?;
                // Heat from the other faces has the longer way; the mean of both, weighted by area, is the first order.
                let other = 1.06 * its_share * (longer_way - 1.0) / divisor;
                let e = other + 0.066 * curvature(bore_share, THICKEST_RING)?;
                Bound { l: 0.0, a: 0.043, b: 0.5, e, f: 0.02, g: 0.5, s: 0.0 }
            }
        })
    }
}

#[derive(Clone, Copy, Debug)]
struct Way {
    area: f64,
    resistance: f64,
}

fn short([one, other]: [Way; 2], divisor: f64, bore_share: f64) -> ErrorShape {
    let (taken, left) = if one.resistance <= other.resistance { (one, other) } else { (other, one) };
    ErrorShape::Short {
        divisor,
        longer_way: left.resistance / taken.resistance,
        its_share: left.area / (one.area + other.area),
        bore_share,
    }
}

/// `(1 - bore/outside)²`, with which the divisor of a ring departs from that of a wall.
fn curvature(bore_share: f64, thickest: f64) -> Result<f64, ThermalError> {
    let share = within("bore as a share of the outside", bore_share, (thickest, 1.0), "")?;
    Ok((1.0 - share).powi(2))
}
