use super::error::MechanicsError;
use crate::quantity::{Force, not_negative, positive};
use uom::si::force::newton;

/// Why a force through the rolling elements is held against the static load rating.
///
/// **Source**: ISO 76, definition of the basic static load rating: it sets the most loaded rolling element and its raceway by
/// about 0.0001 of the element's diameter together, at a contact stress of 4200 MPa in ball and 4000 MPa in roller bearings
/// (from memory).
pub const STATIC_RATING_CAUTION: &str = "a force that passes through the rolling elements dents the raceways lastingly when \
                                         it comes near the static load rating; the dents are heard and grow; push on the \
                                         ring that is being seated instead";

/// Force through the rolling elements over the basic static load rating C0.
///
/// The whole axial force counts as equivalent load. For a deep groove ball bearing ISO 76 counts half of it (Y0 = 0.5, from
/// memory), so the share is on the safe side, and blows or tilt, which no rating covers, have some room.
///
/// # Errors
/// A force below zero, a rating that is not positive.
///
/// **Source**: ISO 76, from memory; see [`STATIC_RATING_CAUTION`].
pub fn share_of_static_rating(force: Force, rating: Force) -> Result<f64, MechanicsError> {
    let rating = positive("static load rating C0", rating.get::<newton>(), "N")?;
    Ok(not_negative("force through the rolling elements", force.get::<newton>(), "N")? / rating)
}
