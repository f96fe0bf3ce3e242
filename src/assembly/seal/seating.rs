use crate::quantity::Length;
use uom::si::length::millimeter;

/// A hole that leads away from behind the seal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drain {
    /// Its edge nearer the face, below the face.
    pub edge: Length,
}

/// Where a seal is to go: everything from the face of the housing inward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seating {
    /// Width of the seal.
    pub width: Length,
    /// Depth of the face that goes in first, as asked.
    pub asked: Length,
    /// Depth of the shoulder; none where the seal is stopped by its driver.
    pub shoulder: Option<Length>,
    /// A hole behind it.
    pub drain: Option<Drain>,
    /// Depth of whatever else stands behind it: a retaining ring, a bearing.
    pub behind: Option<Length>,
    /// How far the lip is to be moved off a worn track.
    pub shift: Option<Length>,
}

/// Where it comes to lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// Depth that the face which goes in first reaches.
    pub reached: Length,
    /// How far the shoulder keeps it from the depth that was asked; zero where it does not.
    pub short_by: Length,
    /// How far it is moved off a worn track: deeper where positive, nearer the face where negative; the depths include it.
    pub moved: Length,
    /// How far its outer face lies below the face of the housing; negative where it stands proud.
    pub below_face: Length,
    /// How far the hole stays behind the seal at the depth reached; negative where the seal lies over it.
    pub drain_behind: Option<Length>,
    /// The same at the depth that was asked.
    pub drain_behind_asked: Option<Length>,
}

impl Seating {
    /// Where the seal comes to lie: as deep as asked, or against the shoulder if that is nearer the face; from there off a worn
    /// track, deeper where there is room behind it and nearer the face where there is none.
    pub fn stand(&self) -> Stand {
        let stop = self.shoulder.map_or(self.asked, |shoulder| shoulder.min(self.asked));
        let moved =
            self.shift.map_or(Length::default(), |shift| if self.has_room(stop + shift) { shift } else { -shift });
        let reached = stop + moved;
        let behind = |depth: Length| self.drain.map(|drain| drain.edge - depth);
        Stand {
            reached,
            short_by: self.asked - stop,
            moved,
            below_face: reached - self.width,
            drain_behind: behind(reached),
            drain_behind_asked: behind(self.asked + moved),
        }
    }

    fn has_room(&self, depth: Length) -> bool {
        let ends = [self.shoulder, self.behind, self.drain.map(|drain| drain.edge)];
        ends.into_iter().flatten().all(|end| depth <= end)
    }
}

/// Least distance by which a lip is moved off a worn track, mm: common practice, no published source.
pub const LEAST_SHIFT_MM: f64 = 1.0;

/// How far to move a lip off a track of this width in the shaft: half a millimetre more than the track, in steps of half a
/// millimetre, and at least [`LEAST_SHIFT_MM`].
pub fn shifted_by(track: Length) -> Length {
    let steps = (track.get::<millimeter>() / 0.5 - 1e-6).ceil().max(0.0);
    Length::new::<millimeter>((0.5 * steps + 0.5).max(LEAST_SHIFT_MM))
}
