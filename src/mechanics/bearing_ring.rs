//! The plain ring that stands for a ring of a rolling bearing, raceway and shoulders included.

use super::error::MechanicsError;
use super::ring::Ring;
use crate::quantity::{Length, Pressure, positive, within};
use crate::stock::dimensions::RING_SHARE;
use uom::si::length::meter;

/// Inside diameter of the plain ring that stands for an outer ring: `d_e = D - 2 · 0.15 (D - d)`.
///
/// **Valid for** single-row ball bearings of which nothing but bore d and outside D is known; thin sections and roller
/// bearings differ. State the section, or use [`Groove`], where it matters. With a bore that is not smaller than the outside
/// there is no wall, which whatever uses the ring refuses.
///
/// **Source**: common practice, no published source; see [`RING_SHARE`].
pub fn outer_ring_inside(bore: Length, outside: Length) -> Length {
    outside - 2.0 * (RING_SHARE * (outside - bore))
}

/// Outside diameter of the plain ring that stands for an inner ring: `D_e = d + 2 · 0.15 (D - d)`.
///
/// **Valid for** what [`outer_ring_inside`] is valid for.
///
/// **Source**: common practice, no published source; see [`RING_SHARE`].
pub fn inner_ring_outside(bore: Length, outside: Length) -> Length {
    bore + 2.0 * (RING_SHARE * (outside - bore))
}

/// The known section of a bearing ring: a plain ring up to its shoulder, with a groove of a circular arc in it.
///
/// The equivalent plain ring has the same section area, `A = B t - S`, where S is the segment of the groove,
/// `S = r² arccos((r - h)/r) - (r - h) √(2 r h - h²)`: a thin ring gives way to a pressure by `D²/(4 E A/B)`, in which nothing of
/// the section but its area counts.
///
/// **Valid for** walls thin beside the diameter, a groove within the width, shoulders of one height. Finite elements of a
/// grooved ring of 62 mm agree with one plain ring in pressure and closing at once to 0.2 %; the dimensions of that groove
/// are not known, so the rule of equal areas itself is not confirmed by them.
///
/// **Source**: own derivation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Groove {
    /// Width of the ring, B.
    pub width: Length,
    /// Diameter of the shoulders.
    pub shoulder: Length,
    /// Radius of the groove in its cross section, r.
    pub radius: Length,
    /// Depth of the groove below the shoulders, h.
    pub depth: Length,
}

impl Groove {
    /// Inside diameter of the plain ring that stands for an outer ring of this outside diameter.
    ///
    /// # Errors
    /// [`MechanicsError`] for sizes that are not positive, a groove wider than the ring or deeper than its radius or wall.
    pub fn outer_ring_inside(&self, outside: Length) -> Result<Length, MechanicsError> {
        let groove = self.mean_depth()?;
        walled(self.shoulder + 2.0 * self.depth, outside)?;
        Ok(self.shoulder + 2.0 * groove)
    }

    /// Outside diameter of the plain ring that stands for an inner ring of this bore.
    ///
    /// # Errors
    /// As for [`Groove::outer_ring_inside`].
    pub fn inner_ring_outside(&self, bore: Length) -> Result<Length, MechanicsError> {
        let groove = self.mean_depth()?;
        walled(bore, self.shoulder - 2.0 * self.depth)?;
        Ok(self.shoulder - 2.0 * groove)
    }

    /// Area of the groove over the width of the ring.
    fn mean_depth(&self) -> Result<Length, MechanicsError> {
        let width = positive("width of the ring", self.width.get::<meter>(), "m")?;
        let radius = positive("radius of the groove", self.radius.get::<meter>(), "m")?;
        positive("diameter of the shoulders", self.shoulder.get::<meter>(), "m")?;
        let depth = within("depth of the groove", self.depth.get::<meter>(), (0.0, radius), "m")?;
        let half_chord = (depth * (2.0 * radius - depth)).sqrt();
        within("width of the groove", 2.0 * half_chord, (0.0, width), "m")?;
        let segment = radius * radius * ((radius - depth) / radius).acos() - (radius - depth) * half_chord;
        Ok(Length::new::<meter>(segment / width))
    }
}

/// Refuses a section without a wall under the groove, with the sizes.
fn walled(inside: Length, outside: Length) -> Result<(), MechanicsError> {
    let any = Pressure::new::<uom::si::pressure::pascal>(1.0);
    Ring { inside: Some(inside), outside, elastic_modulus: any, poisson: 0.0 }.check().map(|_| ())
}
