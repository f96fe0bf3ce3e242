//! Where two rings meet: the rule of sizes, and how far both give way.

use super::error::MechanicsError;
use super::ring::{CheckedRing, Ring};
use crate::quantity::{Length, positive};
use uom::si::length::{meter, millimeter};

/// Share by which a surface may differ from the diameter of the joint, and largest interference as a share of it.
pub(super) const LARGEST_SHARE: f64 = 0.02;

/// `ring` with its outside brought to the diameter of the joint.
pub(super) fn outside_at(diameter: Length, ring: Ring) -> Result<Ring, MechanicsError> {
    check("outside of the inner part", ring.outside, diameter)?;
    Ok(Ring { outside: diameter, ..ring })
}

/// `ring` with its inside brought to the diameter of the joint.
pub(super) fn inside_at(diameter: Length, ring: Ring) -> Result<Ring, MechanicsError> {
    let bore = ring.inside.ok_or(MechanicsError::OuterIsSolid)?;
    check("bore of the outer part", bore, diameter)?;
    Ok(Ring { inside: Some(diameter), ..ring })
}

fn check(surface: &'static str, size: Length, joint: Length) -> Result<(), MechanicsError> {
    let joint_mm = positive("diameter of the joint", joint.get::<millimeter>(), "mm")?;
    let surface_mm = positive(surface, size.get::<millimeter>(), "mm")?;
    if (surface_mm - joint_mm).abs() <= LARGEST_SHARE * joint_mm {
        Ok(())
    } else {
        Err(MechanicsError::NotAtJoint { joint_mm, surface, surface_mm })
    }
}

/// A diametral interference in metres, when it is one that a joint of this diameter can have.
pub(super) fn checked_interference(interference: Length, diameter: Length) -> Result<f64, MechanicsError> {
    let (interference, diameter) = (interference.get::<meter>(), diameter.get::<meter>());
    // An open joint may be as open as it likes, but must be a number.
    if interference <= LARGEST_SHARE * diameter && interference.is_finite() {
        Ok(interference)
    } else {
        Err(MechanicsError::TooTight { interference_mm: interference * 1e3, joint_mm: diameter * 1e3 })
    }
}

/// Interference taken up by both rings for a pressure of one between them, m/Pa.
pub(super) fn compliance(inner: &CheckedRing, outer: &CheckedRing) -> f64 {
    outer.change(1.0, 0.0, outer.inside_radius) - inner.change(0.0, 1.0, inner.outside_radius)
}
