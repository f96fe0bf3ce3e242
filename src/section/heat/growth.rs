//! How far the seat of a body moves under the temperatures of its nodes.
//!
//! The mean displacement under a hat of the contact is linear in the free strain of the nodes. By reciprocity (E. Betti,
//! 1872) its weights are the work of the thermal forces on the displacements that a pressure under that hat makes, so that
//! one solve for each hat, once, replaces one for each step.

use super::seating::Growth;
use crate::section::body::Body;
use crate::section::element;
use crate::section::envelope::dots;
use crate::section::model::Model;

/// Hats whose movement is summed together.
const TOGETHER: usize = 4;

/// Weights of the nodes of one body, by rows: radial displacement (m) under each hat for a free strain of one at a node.
#[derive(Clone, Debug)]
pub(super) struct Influence {
    nodes: usize,
    /// One row for each hat, or one for all.
    weights: Vec<f64>,
    hats: usize,
}

impl Influence {
    /// Weights of the seat of `body` in contact `k`.
    pub(super) fn new(model: &Model, body: usize, k: usize, growth: Growth) -> Self {
        let (nodes, hats) = (model.bodies[body].mesh.nodes.len(), model.touches[k].len());
        let weights = match growth {
            Growth::Local => local(model, body, k),
            Growth::Mean => {
                let (weights, radius) = (tube_weights(model, body), model.touches[k].radius);
                weights.into_iter().map(|weight| radius * weight).collect()
            }
        };
        Self { nodes, weights, hats }
    }

    /// Radial displacements under the hats, times `sign`, added to `moved`.
    pub(super) fn add(&self, strain: &[f64], sign: f64, moved: &mut [f64]) {
        if self.weights.len() == self.nodes {
            let [all] = dots(strain, [&self.weights]);
            moved[..self.hats].iter_mut().for_each(|moved| *moved += sign * all);
            return;
        }
        let rows = |first: usize| &self.weights[first * self.nodes..];
        let mut hat = 0;
        // Several at once, because reading the strains takes as long as multiplying.
        while hat + TOGETHER <= self.hats {
            let sums = dots::<TOGETHER>(strain, std::array::from_fn(|k| &rows(hat + k)[..self.nodes]));
            moved[hat..].iter_mut().zip(sums).for_each(|(moved, sum)| *moved += sign * sum);
            hat += TOGETHER;
        }
        for (hat, moved) in moved.iter_mut().enumerate().take(self.hats).skip(hat) {
            *moved += sign * dots(strain, [&rows(hat)[..self.nodes]])[0];
        }
    }
}

fn local(model: &Model, body: usize, k: usize) -> Vec<f64> {
    let (touch, own) = (&model.touches[k], &model.bodies[body]);
    let seat = if body == k { &touch.inner } else { &touch.outer };
    let forces = strain_forces(own);
    let mut weights = Vec::with_capacity(touch.len() * own.mesh.nodes.len());
    for hat in 0..touch.len() {
        let mut pressed = vec![[0.0; 2]; own.mesh.nodes.len()];
        for (place, force) in touch.hat(hat) {
            // Over the area, so that the work is the mean displacement.
            pressed[seat[place]][0] += force / touch.area[hat];
        }
        weights.extend(work(own, &forces, &own.solve(&pressed)));
    }
    weights
}

/// Thermal forces of every element for a free strain of one at each of its nodes.
fn strain_forces(body: &Body) -> Vec<[[f64; 8]; 16]> {
    // The stiffness was made from the same elements, so none is inside out.
    let of = |element| element::strain_forces(&body.mesh.corners_of(element), &body.lame).unwrap_or([[0.0; 8]; 16]);
    body.mesh.elements.iter().map(of).collect()
}

/// Work of the thermal forces of a strain of one at each node on displacements.
fn work(body: &Body, forces: &[[[f64; 8]; 16]], displacement: &[[f64; 2]]) -> Vec<f64> {
    let mut work = vec![0.0; body.mesh.nodes.len()];
    for (element, forces) in body.mesh.elements.iter().zip(forces) {
        for (row, forces) in forces.iter().enumerate() {
            let moved = displacement[element[row / 2]][row % 2];
            for (&node, force) in element.iter().zip(forces) {
                work[node] += force * moved;
            }
        }
    }
    work
}

/// Thermal forces of the nodes of a body under nodal free strains, N.
pub(super) fn thermal_forces(body: &Body, strain: &[f64]) -> Vec<[f64; 2]> {
    let mut sum = vec![[0.0; 2]; body.mesh.nodes.len()];
    for (element, forces) in body.mesh.elements.iter().zip(strain_forces(body)) {
        for (row, forces) in forces.iter().enumerate() {
            let force: f64 = element.iter().zip(forces).map(|(&node, force)| force * strain[node]).sum();
            sum[element[row / 2]][row % 2] += force;
        }
    }
    sum
}

/// Shares of the nodes in the mean over the volume of the tube: everything between the body's own radii.
pub(super) fn tube_weights(model: &Model, body: usize) -> Vec<f64> {
    let (mesh, outline) = (&model.bodies[body].mesh, &model.outlines.bodies[body]);
    volume_weights(model, body, |element| {
        let radius = mesh.nodes[element[4]][0];
        radius > outline.inner && radius < outline.outer
    })
}

/// Shares of the nodes in the mean over the volume of some elements.
pub(super) fn volume_weights(model: &Model, body: usize, of: impl Fn(&[usize; 8]) -> bool) -> Vec<f64> {
    let mesh = &model.bodies[body].mesh;
    let mut weights = vec![0.0; mesh.nodes.len()];
    for element in mesh.elements.iter().filter(|element| of(element)) {
        for point in element::points(&mesh.corners_of(element)).flatten() {
            for (&node, shape) in element.iter().zip(point.shape) {
                weights[node] += shape * point.volume;
            }
        }
    }
    let volume: f64 = weights.iter().sum();
    weights.into_iter().map(|weight| weight / volume).collect()
}
