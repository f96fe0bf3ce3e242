use crate::mechanics::error::{MechanicsError, ordered};
use crate::quantity::{Force, Length, Pressure, not_negative, positive};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// Narrowest zone over its outside diameter: below it the differences in the formulas lose their digits. A ring's face is
/// wider by far.
const NARROWEST: f64 = 1e-3;

/// The ring-shaped zone on which a ring or sleeve bears, with even pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadZone {
    /// Inside diameter of the bearing face; zero for a full face.
    pub inside: Length,
    /// Outside diameter of the bearing face.
    pub outside: Length,
}

impl LoadZone {
    /// Pressure on the shoulder under the face: `p = F/[π/4 (D² - d²)]`.
    ///
    /// **Valid for** faces that are square and flat; a tilted ring bears on a part of it.
    ///
    /// # Errors
    /// A force below zero, a zone without width.
    ///
    /// **Source**: force over area.
    pub fn face_pressure(&self, force: Force) -> Result<Pressure, MechanicsError> {
        let force = not_negative("force on the wall", force.get::<newton>(), "N")?;
        let zone = self.check()?;
        Ok(Pressure::new::<pascal>(force / (PI * (zone.outside - zone.inside) * (zone.outside + zone.inside))))
    }

    pub(super) fn check(&self) -> Result<Zone, MechanicsError> {
        let inside = not_negative("inside of the loaded zone", self.inside.get::<meter>(), "m")?;
        let outside = positive("outside of the loaded zone", self.outside.get::<meter>(), "m")?;
        ordered(("inside of the loaded zone", inside), ("outside of the loaded zone", outside))?;
        let least = ("narrowest zone that can be reckoned with", NARROWEST * outside);
        ordered(least, ("width of the loaded zone", outside - inside))?;
        Ok(Zone { inside: inside / 2.0, outside: outside / 2.0 })
    }
}

/// A zone by its radii, m, and integrals of the shear force across the plate, for a load of 2π.
#[derive(Clone, Copy, Debug)]
pub(super) struct Zone {
    pub(super) inside: f64,
    pub(super) outside: f64,
}

/// `s1 = ∫Q dr`, `s2 = ∫ r s1 dr`, `s3 = ∫ s2/r dr`, each from the zone's inside, with the shear force Q for a load of 2π.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Integrals {
    pub(super) s1: f64,
    pub(super) s2: f64,
    pub(super) s3: f64,
}

impl Zone {
    pub(super) fn integrals(&self, radius: f64) -> Integrals {
        if radius <= self.inside {
            Integrals::default()
        } else if radius <= self.outside {
            self.within(radius)
        } else {
            self.beyond(radius)
        }
    }

    /// In the zone `Q = (r² - r0²)/(r m)`, `m = r1² - r0²`.
    fn within(&self, radius: f64) -> Integrals {
        let (start, square) = (self.inside * self.inside, radius * radius);
        let rise = square - start;
        // r0² ln(r/r0) goes to zero with r0.
        let log = if self.inside > 0.0 { (radius / self.inside).ln() } else { 0.0 };
        let area = (self.outside - self.inside) * (self.outside + self.inside);
        Integrals {
            s1: (rise / 2.0 - start * log) / area,
            s2: (rise * rise / 8.0 - start * (square * log / 2.0 - rise / 4.0)) / area,
            s3: (rise * (square + start) / 32.0 + start * rise / 8.0 - start * log * (start / 8.0 + square / 4.0))
                / area,
        }
    }

    /// Beyond the zone `Q = 1/r`.
    fn beyond(&self, radius: f64) -> Integrals {
        let Integrals { s1, s2, s3 } = self.within(self.outside);
        let (end, square) = (self.outside * self.outside, radius * radius);
        let (rise, log) = (square - end, (radius / self.outside).ln());
        Integrals {
            s1: s1 + log,
            s2: s2 + s1 * rise / 2.0 + square * log / 2.0 - rise / 4.0,
            s3: s3 + s2 * log + s1 * (rise / 4.0 - end * log / 2.0) + (square + end) * log / 4.0 - rise / 4.0,
        }
    }
}
