use super::element::Tensor;
use super::model::{Model, Solution};
use super::outline::Outline;
use super::state_of::singular_ends;
use crate::quantity::{Length, Pressure};
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// Share of the ring's width around a singular place in which neither pressure nor stress is read: meshes of other sizes differ
/// there by more than 2 %.
pub(super) const SINGULAR: f64 = 1.0 / 16.0;

/// Share by which a stress must exceed another one to count as larger.
const SAME: f64 = 1e-9;

/// A stress and its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StressAt {
    /// Stress.
    pub stress: Pressure,
    /// Diameter of the place.
    pub diameter: Length,
    /// Its distance from the back face of the ring, negative behind it.
    pub position: Length,
}

/// Largest stresses of a part.
///
/// Not looked for within a sixteenth of the ring's width of a contact's end beyond which a part goes on, or of a wall's corner,
/// where stress has no limit in elasticity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// Largest equivalent stress after von Mises, `√(½[(σ_r-σ_z)² + (σ_z-σ_t)² + (σ_t-σ_r)²] + 3τ²)`.
    pub von_mises: StressAt,
    /// Largest hoop stress; below zero where there is no tension.
    pub hoop: StressAt,
}

pub(super) fn von_mises([r, z, t, shear]: Tensor) -> f64 {
    (((r - z).powi(2) + (z - t).powi(2) + (t - r).powi(2)) / 2.0 + 3.0 * shear * shear).sqrt()
}

/// Largest stresses of all bodies.
pub(super) fn peaks(model: &Model, solution: &Solution, loads: &[f64]) -> Vec<Peak> {
    let singular = singular(model);
    let reach = SINGULAR * model.outlines.bodies[model.outlines.ring].front;
    let far = |node: &[f64; 2]| singular.iter().all(|place| (node[0] - place[0]).hypot(node[1] - place[1]) >= reach);
    let mut peaks = Vec::new();
    for (b, body) in model.bodies.iter().enumerate() {
        let stresses = body.stresses(&solution.fields[b], model.strain(b, loads));
        let largest = |of: fn(Tensor) -> f64| {
            let mut most: Option<(f64, [f64; 2])> = None;
            for (node, stress) in body.mesh.nodes.iter().zip(&stresses).filter(|(node, _)| far(node)) {
                let value = of(*stress);
                // Of places that differ by rounding alone the first counts, so that the other end of a symmetrical seat is not
                // named by one machine and this one by another.
                if most.is_none_or(|(most, _)| value > most + SAME * most.abs()) {
                    most = Some((value, *node));
                }
            }
            most.map(|(stress, [radius, axial])| StressAt {
                stress: Pressure::new::<pascal>(stress),
                diameter: Length::new::<meter>(2.0 * radius),
                position: Length::new::<meter>(axial),
            })
        };
        // A part lies wholly within reach of singular places only when it is far smaller than the ring.
        let (von_mises, hoop) = (largest(von_mises), largest(|stress| stress[2]));
        peaks.extend(von_mises.zip(hoop).map(|(von_mises, hoop)| Peak { von_mises, hoop }));
    }
    peaks
}

/// Ends of contacts beyond which a part goes on, the corner of the wall and that of a step, as radius and axial position.
pub(super) fn singular(model: &Model) -> Vec<[f64; 2]> {
    let mut places = Vec::new();
    for (k, touch) in model.touches.iter().enumerate() {
        let ends = [touch.axial[0], touch.axial[touch.len() - 1]];
        let singular = ends.into_iter().zip(singular_ends(model, k)).filter(|(_, singular)| *singular);
        places.extend(singular.map(|(axial, _)| [touch.radius, axial]));
    }
    places.extend(model.abutment.as_ref().map(|wall| [wall.root, 0.0]));
    places.extend(model.outlines.bodies.iter().filter_map(Outline::corner_of_step));
    places
}
