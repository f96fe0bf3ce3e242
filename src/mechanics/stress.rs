use crate::quantity::Pressure;
use uom::si::pressure::pascal;

/// The three principal stresses at one surface of a ring. Tension is positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stress {
    /// Radial stress.
    pub radial: Pressure,
    /// Hoop (tangential) stress.
    pub hoop: Pressure,
    /// Axial stress; zero with free ends.
    pub axial: Pressure,
}

impl Stress {
    fn in_pascal(&self) -> [f64; 3] {
        [self.radial, self.hoop, self.axial].map(|stress| stress.get::<pascal>())
    }

    /// Equivalent stress after von Mises, `√(½ [(σ_r - σ_t)² + (σ_t - σ_z)² + (σ_z - σ_r)²])`.
    pub fn von_mises(&self) -> Pressure {
        let [r, t, z] = self.in_pascal();
        Pressure::new::<pascal>((0.5 * ((r - t).powi(2) + (t - z).powi(2) + (z - r).powi(2))).sqrt())
    }

    /// Equivalent stress after Tresca: the largest difference of the three principal stresses.
    pub fn tresca(&self) -> Pressure {
        let [r, t, z] = self.in_pascal();
        Pressure::new::<pascal>(r.max(t).max(z) - r.min(t).min(z))
    }

    /// Largest tension of the three principal stresses; zero when there is none.
    pub fn largest_tension(&self) -> Pressure {
        let [r, t, z] = self.in_pascal();
        Pressure::new::<pascal>(r.max(t).max(z).max(0.0))
    }
}
