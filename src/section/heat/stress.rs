use super::error::HeatError;
use super::growth::thermal_forces;
use super::history::HeatHistory;
use crate::quantity::positive;
use crate::quantity::{Length, Pressure, Ratio, Time};
use crate::section::element::Tensor;
use crate::section::stress::{SINGULAR, StressAt, von_mises};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::time::second;

/// Largest stresses of a part from its uneven temperature alone: free, and held nowhere.
///
/// Not looked for within a sixteenth of the ring's width of the corner of a wall or shoulder, where stress has no limit in
/// elasticity.
///
/// **Valid for** an elastic part whose modulus and Poisson ratio are those of the section at every temperature; a modulus
/// that falls with temperature makes the stress of a warm part smaller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThermalStress {
    /// Largest principal stress, which pulls when it is above zero: what a brittle part fails by.
    pub tension: StressAt,
    /// Largest equivalent stress after von Mises: what a ductile part yields by.
    pub von_mises: StressAt,
}

/// What a part withstands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Strength {
    /// Brittle, as grey cast iron: its tensile strength against the largest principal stress.
    Brittle {
        /// Tensile strength.
        tensile: Pressure,
    },
    /// Ductile: its yield strength against the equivalent stress after von Mises.
    Ductile {
        /// Yield strength or 0.2 % proof stress.
        proof: Pressure,
    },
}

impl ThermalStress {
    /// Stress as a share of strength; the part fails or yields at one.
    ///
    /// # Errors
    /// [`HeatError::Value`] for a strength that is not above zero.
    ///
    /// **Source**: hypotheses of the largest principal stress and of von Mises, any textbook of strength of materials.
    pub fn share_of(&self, strength: Strength) -> Result<Ratio, HeatError> {
        let (stress, strength) = match strength {
            Strength::Brittle { tensile } => (self.tension.stress, tensile),
            Strength::Ductile { proof } => (self.von_mises.stress, proof),
        };
        positive("strength", strength.get::<pascal>(), "Pa")?;
        Ok(stress / strength)
    }
}

/// Largest principal stress; the hoop is one of the three directions.
fn principal([radial, axial, hoop, shear]: Tensor) -> f64 {
    let plane = (radial + axial) / 2.0 + ((radial - axial) / 2.0).hypot(shear);
    plane.max(hoop)
}

impl HeatHistory<'_> {
    /// Stress of a part (from the inside outward, from 0) at a time.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`].
    pub fn thermal_stress(&self, part: usize, time: Time) -> Result<ThermalStress, HeatError> {
        let part = self.part_held(part)?;
        let nodes = self.temperatures(time)?;
        let table = &self.conduction.solids[part].strain;
        let strain: Vec<f64> = nodes.parts[part].iter().map(|t| table.at(*t)).collect();
        let body = &self.conduction.model.bodies[part];
        let moved = body.solve(&thermal_forces(body, &strain));
        let stresses = body.stresses_under(&moved, |node| strain[node]);
        let model = self.conduction.model;
        // The corner belongs to the seat only.
        let corner = model.abutment.as_ref().filter(|_| part == model.outlines.seat).map(|wall| [wall.root, 0.0]);
        let reach = SINGULAR * model.outlines.bodies[model.outlines.ring].front;
        let far = |[r, z]: [f64; 2]| corner.is_none_or(|corner| (r - corner[0]).hypot(z - corner[1]) >= reach);
        let largest = |of: fn(Tensor) -> f64| {
            let all = body.mesh.nodes.iter().zip(&stresses).filter(|(node, _)| far(**node));
            let (mut most, mut place) = (f64::NEG_INFINITY, [0.0; 2]);
            for (node, stress) in all {
                let value = of(*stress);
                if value > most {
                    (most, place) = (value, *node);
                }
            }
            StressAt {
                stress: Pressure::new::<pascal>(most),
                diameter: Length::new::<meter>(2.0 * place[0]),
                position: Length::new::<meter>(place[1]),
            }
        };
        Ok(ThermalStress { tension: largest(principal), von_mises: largest(von_mises) })
    }

    /// The moment at which a part bears most against its strength, and its stress then. Looked for at the end of every step,
    /// which are close together where temperatures change fast.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`] for a part that the section does not have; [`HeatError::Value`] for a strength that is not above
    /// zero.
    pub fn hardest_moment(&self, part: usize, strength: Strength) -> Result<(Time, ThermalStress), HeatError> {
        let mut hardest: Option<(Ratio, Time, ThermalStress)> = None;
        for time in self.seconds(self.part_held(part)?) {
            let time = Time::new::<second>(time);
            let stress = self.thermal_stress(part, time)?;
            let share = stress.share_of(strength)?;
            if hardest.is_none_or(|(most, ..)| share > most) {
                hardest = Some((share, time, stress));
            }
        }
        // Every part has its start.
        let (value, from, to, unit) = (0.0, 0.0, 0.0, "s");
        hardest.map(|(_, time, stress)| (time, stress)).ok_or(HeatError::NotHeld {
            what: "time",
            value,
            from,
            to,
            unit,
        })
    }
}
