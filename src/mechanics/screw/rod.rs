use super::thread::ScrewThread;
use crate::mechanics::error::MechanicsError;
use crate::quantity::{Force, Pressure, Torque, not_negative, positive};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::pressure::pascal;
use uom::si::torque::newton_meter;

/// Stress in a threaded rod that is pulled and twisted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RodStress {
    /// Tension over the stress area, `σ = F/A_s`.
    pub tension: Pressure,
    /// Largest shear of the twist, `τ = 16 T/(π d_s³)`.
    pub torsion: Pressure,
    /// Both together after von Mises, `√(σ² + 3 τ²)`.
    pub combined: Pressure,
}

/// A rod held against the proof stress of its class.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RodCheck {
    /// Force over proof load.
    pub share_of_proof_load: f64,
    /// Combined stress, torsion included, over proof stress. This one decides while the screw is turned.
    pub share_of_proof_stress: f64,
}

impl ScrewThread {
    /// Stress in the rod under a force and the torque on its thread (not that under the nut, which never enters the rod).
    ///
    /// **Valid for** elastic rods, force along the axis; a puller that leans bends its rod as well.
    ///
    /// # Errors
    /// A thread that is none, a force or torque below zero.
    ///
    /// **Source**: VDI 2230 Part 1, reduced stress `σ_red = √(σ_z² + 3 τ²)` with `W_P = π d_s³/16` (from memory); Shigley's
    /// Mechanical Engineering Design, eq. 8-7 for the torsion (from memory).
    pub fn rod_stress(&self, force: Force, thread_torque: Torque) -> Result<RodStress, MechanicsError> {
        let force = not_negative("force of the screw", force.get::<newton>(), "N")?;
        let torque = not_negative("torque on the thread", thread_torque.get::<newton_meter>(), "N·m")?;
        let diameter = self.check()?.stress_diameter;
        let tension = force / (PI / 4.0 * diameter * diameter);
        let torsion = 16.0 * torque / (PI * diameter.powi(3));
        let combined = (tension * tension + 3.0 * torsion * torsion).sqrt();
        let [tension, torsion, combined] = [tension, torsion, combined].map(Pressure::new::<pascal>);
        Ok(RodStress { tension, torsion, combined })
    }

    /// Force that the rod bears without taking a set when it is not twisted: `F_p = A_s S_p`.
    ///
    /// # Errors
    /// A thread that is none, a proof stress that is not positive.
    ///
    /// **Source**: ISO 898-1; the standard multiplies rounded stress areas, so its printed loads differ by up to 0.3 %.
    pub fn proof_load(&self, proof_stress: Pressure) -> Result<Force, MechanicsError> {
        let stress = positive("proof stress", proof_stress.get::<pascal>(), "Pa")?;
        let diameter = self.check()?.stress_diameter;
        Ok(Force::new::<newton>(PI / 4.0 * diameter * diameter * stress))
    }

    /// Shares of the proof stress that a force and a torque on the thread use.
    ///
    /// # Errors
    /// As for [`ScrewThread::rod_stress`] and [`ScrewThread::proof_load`].
    pub fn rod_check(
        &self,
        force: Force,
        thread_torque: Torque,
        proof_stress: Pressure,
    ) -> Result<RodCheck, MechanicsError> {
        let proof = positive("proof stress", proof_stress.get::<pascal>(), "Pa")?;
        let stress = self.rod_stress(force, thread_torque)?;
        Ok(RodCheck {
            share_of_proof_load: stress.tension.get::<pascal>() / proof,
            share_of_proof_stress: stress.combined.get::<pascal>() / proof,
        })
    }
}
