use super::error::{MechanicsError, positive};
use super::ring::{CheckedRing, Ring, RingState};
use crate::quantity::{Length, Pressure};
use uom::si::length::{meter, millimeter};
use uom::si::pressure::pascal;

/// Share by which a surface may differ from the diameter of the joint, and largest interference as a share of it.
const LARGEST_SHARE: f64 = 0.02;

/// Two rings pressed into one another, at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Inner ring or solid shaft; its outside lies at the joint.
    pub inner: Ring,
    /// Outer ring; its inside lies at the joint.
    pub outer: Ring,
    /// Nominal diameter of the joint.
    pub diameter: Length,
    /// Length of the contact.
    pub length: Length,
    /// Diametral interference at that moment; zero or negative when the joint is open.
    pub interference: Length,
}

/// What the interference of a [`Joint`] does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressFit {
    /// Contact pressure; zero when the joint is open.
    pub pressure: Pressure,
    /// Inner ring under it.
    pub inner: RingState,
    /// Outer ring under it.
    pub outer: RingState,
}

impl PressFit {
    /// Change of the inner ring's bore, negative when it closes; `None` when the inner part is solid.
    pub fn bore_change(&self) -> Option<Length> {
        self.inner.inside_change
    }

    /// Change of the outer ring's outside, positive when it grows.
    pub fn outside_change(&self) -> Length {
        self.outer.outside_change
    }
}

impl Joint {
    /// Contact pressure, stresses and changes of size.
    ///
    /// `p = δ / (c_inner + c_outer)`, where c is the change of each ring's diameter at the joint for a pressure of one:
    /// `c_inner = d/E_i [(d² + d_i²)/(d² - d_i²) - ν_i]`, `c_outer = d/E_o [(d_o² + d²)/(d_o² - d²) + ν_o]`.
    ///
    /// **Valid for** plane stress (both parts equally wide, open at both ends), elastic parts, round and concentric.
    ///
    /// # Errors
    /// [`MechanicsError`] for a ring without a wall, surfaces that do not meet at the joint, or an interference above
    /// 2 % of the diameter.
    ///
    /// **Source**: as for [`Ring::under`].
    ///
    /// **Example**, Shigley's solutions manual, problem 3-66: a 40 mm steel shaft in a hub of 80 mm, 0.038 mm radial
    /// interference, 147.5 MPa.
    /// ```
    /// use seatwise::mechanics::{Joint, MechanicsError, Ring};
    /// use seatwise::quantity::{Length, Pressure};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    ///
    /// let mm = Length::new::<millimeter>;
    /// let steel = Pressure::new::<megapascal>(207e3);
    /// let shaft = Ring { inside: None, outside: mm(40.0), elastic_modulus: steel, poisson: 0.29 };
    /// let hub = Ring { inside: Some(mm(40.0)), outside: mm(80.0), elastic_modulus: steel, poisson: 0.29 };
    /// let interference = mm(2.0 * 0.038); // diametral
    /// let joint = Joint { inner: shaft, outer: hub, diameter: mm(40.0), length: mm(60.0), interference };
    /// assert!((joint.solve()?.pressure.get::<megapascal>() - 147.5).abs() < 0.05);
    /// # Ok::<(), MechanicsError>(())
    /// ```
    pub fn solve(&self) -> Result<PressFit, MechanicsError> {
        let (inner, outer) = (self.inner_at_joint()?, self.outer_at_joint()?);
        positive("length of the contact", self.length.get::<meter>(), "m")?;
        let interference = self.checked_interference()?;
        let (inner_ring, outer_ring) = (inner.check()?, outer.check()?);
        let pressure = interference.max(0.0) / compliance(&inner_ring, &outer_ring);
        let (pressure, none) = (Pressure::new::<pascal>(pressure), Pressure::new::<pascal>(0.0));
        Ok(PressFit { pressure, inner: inner.under(none, pressure)?, outer: outer.under(pressure, none)? })
    }

    /// The inner ring, its outside brought to the diameter of the joint.
    fn inner_at_joint(&self) -> Result<Ring, MechanicsError> {
        self.check_at_joint("outside of the inner part", self.inner.outside)?;
        Ok(Ring { outside: self.diameter, ..self.inner })
    }

    /// The outer ring, its inside brought to the diameter of the joint.
    fn outer_at_joint(&self) -> Result<Ring, MechanicsError> {
        let bore = self.outer.inside.ok_or(MechanicsError::OuterIsSolid)?;
        self.check_at_joint("bore of the outer part", bore)?;
        Ok(Ring { inside: Some(self.diameter), ..self.outer })
    }

    fn check_at_joint(&self, surface: &'static str, diameter: Length) -> Result<(), MechanicsError> {
        let joint_mm = positive("diameter of the joint", self.diameter.get::<millimeter>(), "mm")?;
        let surface_mm = positive(surface, diameter.get::<millimeter>(), "mm")?;
        if (surface_mm - joint_mm).abs() <= LARGEST_SHARE * joint_mm {
            Ok(())
        } else {
            Err(MechanicsError::NotAtJoint { joint_mm, surface, surface_mm })
        }
    }

    fn checked_interference(&self) -> Result<f64, MechanicsError> {
        let (interference, diameter) = (self.interference.get::<meter>(), self.diameter.get::<meter>());
        // An open joint may be as open as it likes, but must be a number.
        if interference <= LARGEST_SHARE * diameter && interference.is_finite() {
            Ok(interference)
        } else {
            Err(MechanicsError::TooTight { interference_mm: interference * 1e3, joint_mm: diameter * 1e3 })
        }
    }
}

/// Interference taken up by both rings for a pressure of one, m/Pa.
fn compliance(inner: &CheckedRing, outer: &CheckedRing) -> f64 {
    outer.change(1.0, 0.0, outer.inside_radius) - inner.change(0.0, 1.0, inner.outside_radius)
}
