//! How a ring or a shaft grows by turning.

use super::error::MechanicsError;
use super::ring::Ring;
use crate::quantity::{Length, not_negative, positive};
use uom::si::angular_velocity::radian_per_second;
use uom::si::f64::{AngularVelocity, MassDensity};
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;

/// Growth of a ring's two diameters by turning.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Growth {
    /// Of the inside diameter; `None` when it is solid.
    pub inside: Option<Length>,
    /// Of the outside diameter.
    pub outside: Length,
}

impl Ring {
    /// Growth of the free ring at a speed.
    ///
    /// `Δd_i = ρ ω² d_i/(4 E) [(3 + ν) b² + (1 - ν) a²]`, `Δd_o = ρ ω² d_o/(4 E) [(1 - ν) b² + (3 + ν) a²]` with the inside
    /// radius a (zero when solid) and the outside radius b. A joint whose two parts turn together loses the difference of
    /// inside growth of the outer and outside growth of the inner part.
    ///
    /// **Valid for** plane stress, elastic, far below the bursting speed.
    ///
    /// # Errors
    /// As for [`Ring::under`]; a density that is not positive, a speed below zero.
    ///
    /// **Source**: S. Timoshenko, J. N. Goodier, "Theory of Elasticity", rotating discs (from memory).
    pub fn growth_at(&self, density: MassDensity, speed: AngularVelocity) -> Result<Growth, MechanicsError> {
        let ring = self.check()?;
        let density = positive("density", density.get::<kilogram_per_cubic_meter>(), "kg/m³")?;
        let speed = not_negative("speed", speed.get::<radian_per_second>(), "rad/s")?;
        let (a, b) = (ring.inside_radius.powi(2), ring.outside_radius.powi(2));
        let (more, less) = (3.0 + self.poisson, 1.0 - self.poisson);
        let strain = density * speed * speed / (4.0 * self.elastic_modulus.value);
        let length = Length::new::<meter>;
        let inside =
            (ring.inside_radius > 0.0).then(|| length(2.0 * ring.inside_radius * strain * (more * b + less * a)));
        Ok(Growth { inside, outside: length(2.0 * ring.outside_radius * strain * (less * b + more * a)) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Pressure;
    use uom::si::pressure::gigapascal;

    fn grown(inside: Option<f64>, outside: f64, speed: f64) -> Growth {
        let metres = Length::new::<meter>;
        let ring = Ring {
            inside: inside.map(metres),
            outside: metres(outside),
            elastic_modulus: Pressure::new::<gigapascal>(200.0),
            poisson: 0.3,
        };
        let density = MassDensity::new::<kilogram_per_cubic_meter>(8000.0);
        ring.growth_at(density, AngularVelocity::new::<radian_per_second>(speed)).unwrap()
    }

    #[test]
    fn a_thin_hoop_grows_by_rho_v_squared_over_e() {
        // Hoop stress ρ v² = 8000 · 100² = 80 MPa, strain 4e-4 of 200 mm: 80 µm.
        let hoop = grown(Some(0.1998), 0.2002, 1000.0);
        assert!((hoop.outside.value / 8e-5 - 1.0).abs() < 5e-3, "{hoop:?}");
        assert!((hoop.inside.unwrap().value / 8e-5 - 1.0).abs() < 5e-3);
    }

    #[test]
    fn a_solid_disc_grows_by_a_quarter_of_one_less_poisson_and_four_times_at_twice_the_speed() {
        // (1 - ν)/4 ρ ω² b² d/E = 0.175 · 8000 · 1e6 · 0.01 · 0.2/200e9.
        let slow = grown(None, 0.2, 1000.0);
        assert!(slow.inside.is_none() && (slow.outside.value / 1.4e-5 - 1.0).abs() < 1e-9, "{slow:?}");
        assert!((grown(None, 0.2, 2000.0).outside / slow.outside).value - 4.0 < 1e-9);
    }
}
