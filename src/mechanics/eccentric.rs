//! A ring whose bore stands out of the middle: a boss that is thinner on one side.

use super::error::MechanicsError;
use super::stress::Stress;
use crate::quantity::{Length, Pressure, ValueError, positive};
use uom::si::length::{meter, millimeter};
use uom::si::pressure::pascal;

/// Offset of the bore over its radius, up to which the solution is used.
///
/// Farther out the largest stress of the bore leaves the thin side.
///
/// **Source**: S. Timoshenko, J. N. Goodier, "Theory of Elasticity", eccentric cylinder (from memory).
pub const LARGEST_OFFSET: f64 = 0.5;

/// A round ring with a round bore out of its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EccentricRing {
    /// Diameter of the bore.
    pub bore: Length,
    /// The wall where it is thinnest.
    pub thin: Length,
    /// The wall opposite, where it is thickest.
    pub thick: Length,
}

/// Stresses where the wall is thinnest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThinSide {
    /// At the bore.
    pub at_bore: Stress,
    /// At the outside; the hoop stress there can be the larger one of the two.
    pub at_outside: Stress,
}

impl EccentricRing {
    /// Stresses at the thin side under a pressure in the bore.
    ///
    /// At the bore `σ = p {2 b² (b² + a² - 2 a e - e²)/[(a² + b²) (b² - a² - 2 a e - e²)] - 1}`, at the outside
    /// `σ = 2 p a² (a² + b² + 2 b e - e²)/[(a² + b²) (b² - a² - 2 b e + e²)]`, with the radius a of the bore, b of the
    /// outside, and e from one middle to the other.
    ///
    /// **Valid for** the same pressure all round the bore, linear elasticity, plane stress or plane strain, and e below a
    /// half of a ([`LARGEST_OFFSET`]).
    ///
    /// # Errors
    /// Sizes that are not positive, a thin wall above the thick one, an offset out of range.
    ///
    /// **Source**: G. B. Jeffery (1921), as in S. Timoshenko, J. N. Goodier, "Theory of Elasticity" (from memory); the one for
    /// the outside by exchange of the two circles. Both agree to six figures with potentials fitted to the two circles.
    pub fn thin_side(&self, pressure: Pressure) -> Result<ThinSide, MechanicsError> {
        let a = positive("bore", self.bore.get::<meter>(), "m")? / 2.0;
        let thin = positive("thin wall", self.thin.get::<meter>(), "m")?;
        let thick = positive("thick wall", self.thick.get::<meter>(), "m")?;
        if thin > thick {
            let (larger_mm, smaller_mm) = (self.thick.get::<millimeter>(), self.thin.get::<millimeter>());
            return Err(MechanicsError::WrongOrder {
                larger: "thick wall",
                larger_mm,
                smaller: "thin wall",
                smaller_mm,
            });
        }
        let (b, e) = (a + (thin + thick) / 2.0, (thick - thin) / 2.0);
        if e >= LARGEST_OFFSET * a {
            let (what, to) = ("offset of the bore over its radius", LARGEST_OFFSET);
            return Err(ValueError::OutOfRange { what, value: e / a, from: 0.0, to, unit: "" }.into());
        }
        let (aa, bb, ee, p) = (a * a, b * b, e * e, pressure.get::<pascal>());
        let bore = 2.0 * bb * (bb + aa - 2.0 * a * e - ee) / ((aa + bb) * (bb - aa - 2.0 * a * e - ee)) - 1.0;
        let outside = 2.0 * aa * (aa + bb + 2.0 * b * e - ee) / ((aa + bb) * (bb - aa - 2.0 * b * e + ee));
        let stress = |hoop: f64, radial: f64| Stress {
            radial: Pressure::new::<pascal>(radial),
            hoop: Pressure::new::<pascal>(hoop),
            axial: Pressure::default(),
        };
        Ok(ThinSide { at_bore: stress(p * bore, -p), at_outside: stress(p * outside, 0.0) })
    }
}

impl ThinSide {
    /// The larger hoop stress of the two.
    pub fn hoop(&self) -> Pressure {
        if self.at_bore.hoop > self.at_outside.hoop { self.at_bore.hoop } else { self.at_outside.hoop }
    }
}
