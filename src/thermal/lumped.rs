use super::error::ThermalError;
use crate::quantity::{Area, Length, Mass, not_negative, positive, within};
use crate::stock::Curve;
use uom::si::area::square_meter;
use uom::si::length::meter;
use uom::si::mass::kilogram;

/// A body whose whole mass is taken at one temperature, its mean.
///
/// `m c(T) dT/dt = P - A q(T)`, with the flux `q` of [`super::Stage`] and the resistance of [`ConductionPath`].
#[derive(Clone, Copy, Debug)]
pub struct Body<'a> {
    /// Mass.
    pub mass: Mass,
    /// Surface that exchanges heat with the surroundings.
    pub area: Area,
    /// Specific heat capacity over temperature (K), J/(kg K).
    pub heat_capacity: &'a Curve,
    /// Thermal conductivity over temperature (K), W/(m K).
    pub conductivity: &'a Curve,
    /// Emissivity of the surface, 0 to 1.
    pub emissivity: f64,
    /// How far heat must travel inside the body.
    pub path: ConductionPath,
}

/// How far heat travels inside a body, and the divisor that the shape gives to it.
///
/// The mean temperature lags behind the surface. To first order the body cools as if its film coefficient were
/// `h / (1 + Bi/n)` with `Bi = h L / k`: n = 3 for a wall, 4 for a cylinder.
///
/// **Valid for** Bi up to about 1. Against the exact series for wall, cylinder and ring, the time to a given mean
/// temperature is then within `1.1 % × Bi` from half of the way on (`2 % × Bi` for a thick ring cooled outside only). In
/// the first tenth of the way the model is late, by up to `13 % × Bi`, because the surface answers before the mean.
///
/// **Source**: first term of the series solution for small Bi, H. S. Carslaw, J. C. Jaeger, "Conduction of Heat in
/// Solids", 2nd ed., sections 3.11 and 7.7 (from memory), with the eigenvalue expanded in Bi.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ConductionPath {
    /// Conduction length L.
    pub length: Length,
    /// Divisor n of the Biot number.
    pub divisor: f64,
}

impl ConductionPath {
    /// Wall or ring of this `thickness`, heated or cooled on both faces: half of it, n = 3.
    pub fn both_faces(thickness: Length) -> Self {
        Self { length: thickness / 2.0, divisor: 3.0 }
    }

    /// Wall of this `thickness`, heated or cooled on one face, the other one without exchange: all of it, n = 3.
    pub fn one_face(thickness: Length) -> Self {
        Self { length: thickness, divisor: 3.0 }
    }

    /// Solid cylinder of this `diameter`: its radius, n = 4.
    pub fn cylinder(diameter: Length) -> Self {
        Self { length: diameter / 2.0, divisor: 4.0 }
    }

    /// No resistance inside: the surface is as warm as the mean.
    pub fn none() -> Self {
        Self { length: Length::new::<meter>(0.0), divisor: 3.0 }
    }

    /// The path of the two that resists less: heat takes the shorter way out.
    pub fn shorter_of(self, other: Self) -> Self {
        if self.length / self.divisor <= other.length / other.divisor { self } else { other }
    }
}

/// A body in plain SI, checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedBody<'a> {
    pub(super) mass: f64,
    pub(super) area: f64,
    pub(super) heat_capacity: &'a Curve,
    pub(super) conductivity: &'a Curve,
    pub(super) emissivity: f64,
    pub(super) path_length: f64,
    pub(super) path_divisor: f64,
}

impl<'a> Body<'a> {
    pub(super) fn check(&self) -> Result<CheckedBody<'a>, ThermalError> {
        positive("heat capacity", self.heat_capacity.extremes().0, "J/(kg K)")?;
        positive("conductivity", self.conductivity.extremes().0, "W/(m K)")?;
        Ok(CheckedBody {
            mass: positive("mass", self.mass.get::<kilogram>(), "kg")?,
            area: positive("exposed area", self.area.get::<square_meter>(), "m²")?,
            heat_capacity: self.heat_capacity,
            conductivity: self.conductivity,
            emissivity: within("emissivity", self.emissivity, (0.0, 1.0), "")?,
            path_length: not_negative("conduction length", self.path.length.get::<meter>(), "m")?,
            path_divisor: positive("divisor of the Biot number", self.path.divisor, "")?,
        })
    }
}
