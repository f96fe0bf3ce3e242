use super::error::MechanicsError;
use crate::quantity::{Force, Length, Pressure, Torque, not_negative, positive, within};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::torque::newton_meter;

/// Largest coefficient of friction taken as one; metals seizing dry come near it.
const LARGEST_FRICTION: f64 = 1.0;

/// A pressed joint as the press and the drive see it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Press {
    /// Contact pressure, zero or more.
    pub pressure: Pressure,
    /// Diameter of the joint.
    pub diameter: Length,
    /// Length of the whole contact.
    pub length: Length,
    /// Coefficient of friction.
    pub friction: f64,
}

impl Press {
    /// Axial force when the part is in by `depth`: `F = μ p π D x`.
    ///
    /// **Valid for** a pressure that does not change along the depth and no burr or tilt; chamfers at the mouth carry
    /// nothing, so count the depth from their end.
    ///
    /// # Errors
    /// A depth outside 0 to the length; numbers that are not positive; friction outside 0 to 1.
    ///
    /// **Source**: Coulomb friction on the contact area, as in DIN 7190-1 (from memory).
    pub fn force_at(&self, depth: Length) -> Result<Force, MechanicsError> {
        let length = positive("length of the contact", self.length.get::<meter>(), "m")?;
        let depth = within("depth", depth.get::<meter>(), (0.0, length), "m")?;
        let diameter = positive("diameter of the joint", self.diameter.get::<meter>(), "m")?;
        let pressure = not_negative("contact pressure", self.pressure.get::<pascal>(), "Pa")?;
        let friction = within("coefficient of friction", self.friction, (0.0, LARGEST_FRICTION), "")?;
        Ok(Force::new::<newton>(friction * pressure * PI * diameter * depth))
    }

    /// Axial force when the part is all the way in.
    ///
    /// # Errors
    /// As for [`Press::force_at`].
    pub fn full_force(&self) -> Result<Force, MechanicsError> {
        self.force_at(self.length)
    }

    /// Torque that the whole contact can hold, `F D/2`.
    ///
    /// # Errors
    /// As for [`Press::force_at`].
    pub fn torque_capacity(&self) -> Result<Torque, MechanicsError> {
        let force = self.full_force()?.get::<newton>();
        Ok(Torque::new::<newton_meter>(force * self.diameter.get::<meter>() / 2.0))
    }

    /// Capacity over a load of axial force and torque together, `μ p π D L / √(F² + (2 T/D)²)`; `None` without any load.
    ///
    /// Friction has one direction at a time: an axial load takes from the torque that is left. Give the lowest friction and
    /// the loosest interference for what a joint surely holds. The signs of force and torque do not matter.
    ///
    /// **Valid for** steady loads on a joint that is warm or cold throughout; bending, speed and slipping back and forth come
    /// on top.
    ///
    /// # Errors
    /// As for [`Press::force_at`]; a load that is not a finite number.
    ///
    /// **Source**: Coulomb friction, both loads at right angles on the circumference; as in DIN 7190-1 (from memory).
    pub fn slip_factor(&self, axial: Force, torque: Torque) -> Result<Option<f64>, MechanicsError> {
        let capacity = self.full_force()?.get::<newton>();
        let axial = not_negative("axial load", axial.get::<newton>().abs(), "N")?;
        let torque = not_negative("torque", torque.get::<newton_meter>().abs(), "N m")?;
        let load = axial.hypot(2.0 * torque / self.diameter.get::<meter>());
        Ok((load > 0.0).then(|| capacity / load).filter(|factor| factor.is_finite()))
    }
}
