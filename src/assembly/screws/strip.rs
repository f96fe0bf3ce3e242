//! Force at which a thread is stripped from its hole, or from the screw.

use super::error::ScrewsError;
use super::tolerance;
use crate::quantity::{Area, Force, Length, Pressure, within};
use crate::stock::threads::{FLANK_ANGLE_DEGREES, Thread};
use std::f64::consts::PI;
use uom::si::length::{meter, millimeter};
use uom::si::pressure::pascal;

/// Share of the shear strength that is reached before the threads bend and open.
///
/// **Source**: the factors for bending of the threads in E. M. Alexander, Analysis and Design of Threaded Assemblies, SAE 770420
/// (1977), lie from 0.9 to 1.05 (from memory); the low end.
const BENDING: f64 = 0.9;

/// Diameters that decide the shear areas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadSizes {
    /// Outside diameter of the screw.
    pub screw_major: Length,
    /// Pitch diameter of the screw.
    pub screw_pitch: Length,
    /// Pitch diameter of the hole.
    pub hole_pitch: Length,
    /// Core diameter of the hole.
    pub hole_minor: Length,
}

/// A screw in its tapped hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadPair {
    /// The diameters.
    pub sizes: ThreadSizes,
    /// Pitch of the thread.
    pub pitch: Length,
    /// Length over which full threads of both are in each other.
    pub engagement: Length,
}

/// Forces at which threads strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripLoads {
    /// The hole's thread is torn out.
    pub hole: Force,
    /// The screw's thread is torn off.
    pub screw: Force,
}

impl StripLoads {
    /// The lower of the two.
    pub fn least(&self) -> Force {
        self.hole.min(self.screw)
    }
}

impl ThreadPair {
    /// A screw 6g in a hole 6H, or 2A in 2B, both with the least metal that their class allows.
    ///
    /// # Errors
    /// [`ScrewsError::Value`] for an engagement under one pitch or over 500 mm.
    pub fn least_metal(thread: &Thread, engagement: Length) -> Result<Self, ScrewsError> {
        let pitch = thread.pitch.get::<millimeter>();
        within("length of engagement", engagement.get::<millimeter>(), (pitch, 500.0), "mm")?;
        Ok(Self { sizes: tolerance::least_metal(thread), pitch: thread.pitch, engagement })
    }

    /// Area of the hole's thread in the cylinder of the screw's outside: `π d (l/P) [P/2 + (d - D2) tan 30°]`.
    ///
    /// **Source**: FED-STD-H28/2, shear area of internal threads; VDI 2230 Part 1 has the same (both from memory).
    pub fn hole_area(&self) -> Area {
        self.area(self.sizes.screw_major, self.sizes.screw_major - self.sizes.hole_pitch)
    }

    /// Area of the screw's thread in the cylinder of the hole's core: `π D1 (l/P) [P/2 + (d2 - D1) tan 30°]`.
    ///
    /// **Source**: FED-STD-H28/2, shear area of external threads; VDI 2230 Part 1 has the same (both from memory).
    pub fn screw_area(&self) -> Area {
        self.area(self.sizes.hole_minor, self.sizes.screw_pitch - self.sizes.hole_minor)
    }

    fn area(&self, diameter: Length, overlap: Length) -> Area {
        let turns = self.engagement.get::<meter>() / self.pitch.get::<meter>();
        let width = self.pitch / 2.0 + overlap * FLANK_ANGLE_DEGREES.to_radians().tan();
        PI * turns * diameter * width
    }

    /// Forces at which the threads strip, from the shear strengths of both materials.
    ///
    /// **Valid for** a hole whose wall is thick (a boss of twice the diameter), a static pull.
    ///
    /// # Errors
    /// [`ScrewsError::Value`] for a shear strength outside 1 MPa to 10 GPa.
    pub fn strip_loads(&self, hole_shear: Pressure, screw_shear: Pressure) -> Result<StripLoads, ScrewsError> {
        for (what, strength) in
            [("shear strength of the hole's material", hole_shear), ("shear strength of the screw", screw_shear)]
        {
            within(what, strength.get::<pascal>(), (1e6, 1e10), "Pa")?;
        }
        Ok(StripLoads {
            hole: BENDING * self.hole_area() * hole_shear,
            screw: BENDING * self.screw_area() * screw_shear,
        })
    }
}
