//! The line along which two bodies touch, and the weights that turn nodal values into pressure and gap.
//!
//! Nodes of both bodies match, and each displacement is a parabola over an edge of three nodes. The pressure is taken as
//! straight between neighbouring nodes, `p(z) = Σ p_i φ_i(z)` with hats φ_i, so that no pressure is negative between
//! nodes unless a nodal one is. Its nodal forces are `F_j = Σ_i p_i D_ij` with `D_ij = 2πR ∫ φ_i N_j dz`, and the gap
//! that belongs to p_i is the mean under its hat, `Σ_j D_ij g_j`. Judging nodal forces instead would be wrong: N of a
//! corner is negative over half of its edge, so that a pressure that is positive everywhere can give a corner a
//! negative force. While all nodes touch, the displacements do not depend on this choice, only the pressure does.

use std::f64::consts::PI;

/// `∫ φ_i N_j dξ` over an edge of length two; rows are hats, columns the parabolas of back node, middle, front node.
const EDGE: [[f64; 3]; 3] =
    [[7.0 / 24.0, 1.0 / 4.0, -1.0 / 24.0], [1.0 / 12.0, 5.0 / 6.0, 1.0 / 12.0], [-1.0 / 24.0, 1.0 / 4.0, 7.0 / 24.0]];

/// A contact of two bodies.
#[derive(Clone, Debug)]
pub(super) struct Touch {
    /// Radius, m.
    pub(super) radius: f64,
    /// Axial positions of the nodes, from back to front, m; two for each edge and one more.
    pub(super) axial: Vec<f64>,
    /// Nodes of the inner body.
    pub(super) inner: Vec<usize>,
    /// Nodes of the outer body.
    pub(super) outer: Vec<usize>,
    /// Area under each hat, m².
    pub(super) area: Vec<f64>,
}

impl Touch {
    pub(super) fn new(radius: f64, axial: Vec<f64>, inner: Vec<usize>, outer: Vec<usize>) -> Self {
        let mut touch = Self { radius, axial, inner, outer, area: Vec::new() };
        touch.area = touch.weigh(&vec![1.0; touch.axial.len()]);
        touch
    }

    pub(super) fn len(&self) -> usize {
        self.axial.len()
    }

    /// Area of an edge on each side of its middle, m²; the middle is half-way.
    fn half_edge(&self, edge: usize) -> f64 {
        PI * self.radius * (self.axial[2 * edge + 2] - self.axial[2 * edge])
    }

    fn edges(&self) -> usize {
        self.len() / 2
    }

    /// `D g`: means under the hats, times their areas.
    pub(super) fn weigh(&self, gaps: &[f64]) -> Vec<f64> {
        let mut sums = vec![0.0; self.len()];
        for edge in 0..self.edges() {
            for (i, row) in EDGE.iter().enumerate() {
                let mean: f64 = row.iter().zip(&gaps[2 * edge..]).map(|(d, gap)| d * gap).sum();
                sums[2 * edge + i] += self.half_edge(edge) * mean;
            }
        }
        sums
    }

    /// `Dᵀ p`: nodal forces of a pressure, N.
    pub(super) fn forces(&self, pressure: &[f64]) -> Vec<f64> {
        let mut forces = vec![0.0; self.len()];
        for edge in 0..self.edges() {
            for (i, row) in EDGE.iter().enumerate() {
                for (j, d) in row.iter().enumerate() {
                    forces[2 * edge + j] += self.half_edge(edge) * d * pressure[2 * edge + i];
                }
            }
        }
        forces
    }

    /// Whole normal force of a pressure, N: its integral over the cylinder.
    pub(super) fn normal_force(&self, pressure: &[f64]) -> f64 {
        self.forces(pressure).iter().sum()
    }

    /// Area of the whole contact line, m².
    pub(super) fn whole_area(&self) -> f64 {
        self.area.iter().sum()
    }
}
