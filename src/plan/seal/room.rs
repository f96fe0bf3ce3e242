//! What else stands in the bore that a seal shares with its bearing.

use super::model::Overlap;
use crate::job::{Bed, Job};
use crate::quantity::Length;
use crate::stock::retaining_rings::RingPlace;
use uom::si::length::micrometer;

/// What a length may be off by the last digits of a calculation, µm.
const ROUNDING_UM: f64 = 0.5;

/// A ring or a part, from where to where it stands below the face, at the worse limits.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Piece {
    what: String,
    pub(super) from: Length,
    to: Length,
}

/// The parts of the stack and their ring; none where the job does not say how deep they stand.
///
/// A stack that counts the seal among its parts puts it where it touches its neighbours, so that there is nothing to hold
/// against it.
pub(super) fn pieces(job: &Job) -> Vec<Piece> {
    let Some(bed) = job.stack.as_ref().and_then(|stack| stack.bed.as_deref()) else { return Vec::new() };
    if bed.place == RingPlace::Shaft || bed.parts.iter().any(|part| part.is("seal")) {
        return Vec::new();
    }
    let Some(depth) = &bed.depth else { return Vec::new() };
    let mut pieces = Vec::new();
    pieces.extend(ring(bed));
    let (mut least, mut most) = (Length::default(), Length::default());
    for part in &bed.parts {
        let inner = depth.most - least;
        least += part.size.least;
        most += part.size.most;
        pieces.push(Piece { what: part.name.clone(), from: depth.least - most, to: inner });
    }
    pieces
}

fn ring(bed: &Bed) -> Option<Piece> {
    let (least, most) = match (&bed.from_face, &bed.from_shoulder, &bed.depth) {
        (Some(wall), ..) => (wall.least, wall.most),
        (None, Some(wall), Some(depth)) => (depth.least - wall.most, depth.most - wall.least),
        _ => return None,
    };
    let ring = "retaining ring";
    let what = if bed.ring.name == ring { ring.to_owned() } else { format!("{ring} {}", bed.ring.name) };
    Some(Piece { what, from: least, to: most + bed.groove_width.most })
}

/// Where a seal that lies between these depths meets one of the pieces.
pub(super) fn overlaps(seal: (Length, Length), pieces: &[Piece]) -> Vec<Overlap> {
    let overlap = |piece: &Piece| {
        let by = seal.1.min(piece.to) - seal.0.max(piece.from);
        (by.get::<micrometer>() > ROUNDING_UM).then(|| Overlap {
            what: piece.what.clone(),
            stands: (piece.from, piece.to),
            seal,
            by,
        })
    };
    pieces.iter().filter_map(overlap).collect()
}
