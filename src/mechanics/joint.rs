use super::error::MechanicsError;
use super::ring::{CheckedRing, Ring, RingState};
use super::seam::{checked_interference, compliance, inside_at, outside_at};
use crate::quantity::{Length, Pressure, positive};
use uom::si::length::meter;
use uom::si::pressure::pascal;

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
        let (inner, outer) = self.checked_rings()?;
        let interference = checked_interference(self.interference, self.diameter)?;
        let pressure = interference.max(0.0) / compliance(&inner, &outer);
        Ok(PressFit {
            pressure: Pressure::new::<pascal>(pressure),
            inner: inner.state(0.0, pressure),
            outer: outer.state(pressure, 0.0),
        })
    }

    /// Both rings, meeting at the diameter of the joint.
    pub(super) fn checked_rings(&self) -> Result<(CheckedRing, CheckedRing), MechanicsError> {
        let (inner, outer) = (outside_at(self.diameter, self.inner)?, inside_at(self.diameter, self.outer)?);
        positive("length of the contact", self.length.get::<meter>(), "m")?;
        Ok((inner.check()?, outer.check()?))
    }
}
