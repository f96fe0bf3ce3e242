//! A torque in in·lb that was meant in ft·lb, or the other way: twelve times too little or too much.

use super::error::ScrewsError;
use super::preload::Tightening;
use crate::quantity::{Force, Torque};

/// Inches in a foot.
const INCHES_PER_FOOT: f64 = 12.0;
/// Shares of the proof load between which a screw of a cover is tightened on purpose.
///
/// Common practice, no published source: less holds nothing, more is no longer elastic.
const ON_PURPOSE: (f64, f64) = (0.1, 1.2);

/// What was probably meant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum UnitSlip {
    /// The torque is far too much for the screw, and a twelfth of it would suit.
    InchPoundsMeant(Torque),
    /// The torque is far too little for the screw, and twelve times as much would suit.
    FootPoundsMeant(Torque),
}

/// Looks at a torque against the proof load of its screw.
///
/// # Errors
/// As for [`Tightening::preload`].
pub fn unit_slip(tightening: &Tightening, torque: Torque, proof: Force) -> Result<Option<UnitSlip>, ScrewsError> {
    let (low, high) = (ON_PURPOSE.0 * proof, ON_PURPOSE.1 * proof);
    let given = tightening.preload(torque)?;
    let suits =
        |torque: Torque| tightening.preload(torque).map(|preload| low <= preload.middle && preload.middle <= high);
    let (less, more) = (torque / INCHES_PER_FOOT, torque * INCHES_PER_FOOT);
    if given.least > high && suits(less)? {
        return Ok(Some(UnitSlip::InchPoundsMeant(less)));
    }
    if given.most < low && suits(more)? {
        return Ok(Some(UnitSlip::FootPoundsMeant(more)));
    }
    Ok(None)
}
