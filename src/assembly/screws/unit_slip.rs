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
/// Pull over proof load from which a torque is taken for a slip of the unit, and no longer for too much of the right one: the
/// root of 12, from where on a twelfth of it is nearer to the proof load, as a ratio, than the torque itself.
///
/// For an M8 of 8.8 that is 5 times the torque of tables (21 N·m). The torque of a screw two sizes larger, or of a class 12.9,
/// stays below it (3.4 and 1.7 times); a slip of the unit gives 12 times what was meant, and meant is seldom less than half of
/// the tables. Reasoned here, no published source.
const SLIP: f64 = 3.464_101_615_137_754_6;

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
    if given.middle > SLIP * proof && suits(less)? {
        return Ok(Some(UnitSlip::InchPoundsMeant(less)));
    }
    if given.most < low && suits(more)? {
        return Ok(Some(UnitSlip::FootPoundsMeant(more)));
    }
    Ok(None)
}
