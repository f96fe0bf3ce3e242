//! The line along which two bodies touch, and the weights that turn nodal values into pressure and gap.
//!
//! Nodes of both bodies match, and each displacement is a parabola over an edge of three nodes. The pressure is straight
//! over each edge, `p(z) = Σ p_i φ_i(z)` with a hat φ_i on each corner, so that it is negative nowhere when no p_i is.
//! Its nodal forces are `F_j = Σ_i p_i D_ij` with `D_ij = 2πR ∫ φ_i N_j dz`, and the gap that belongs to p_i is the mean
//! under its hat, `Σ_j D_ij g_j` (the mortar method with linear multipliers for quadratic elements; B. Wohlmuth,
//! "Discretization Methods and Iterative Solvers Based on Domain Decomposition", 2001, from memory).
//!
//! Judging the forces of single nodes instead would be wrong: N of a corner is negative over half of its edge, so that
//! a pressure that is positive everywhere can give a corner a negative force. A pressure on all three nodes of an edge
//! would swing from node to node beside a singular end, and open nodes that touch.

use std::f64::consts::PI;

/// `∫ φ_i N_j dξ` over an edge of length two; rows are hats at back and front, columns back node, middle, front node.
const EDGE: [[f64; 3]; 2] = [[1.0 / 3.0, 2.0 / 3.0, 0.0], [0.0, 2.0 / 3.0, 1.0 / 3.0]];

/// A contact of two bodies.
#[derive(Clone, Debug)]
pub(super) struct Touch {
    /// Radius, m.
    pub(super) radius: f64,
    /// Axial positions of the corners, from back to front, m.
    pub(super) axial: Vec<f64>,
    /// Nodes of the inner body, two for each edge and one more.
    pub(super) inner: Vec<usize>,
    /// Nodes of the outer body.
    pub(super) outer: Vec<usize>,
    /// Area under each hat, m².
    pub(super) area: Vec<f64>,
}

impl Touch {
    /// A contact from the axial positions of its corners and the matching nodes.
    pub(super) fn new(radius: f64, axial: Vec<f64>, inner: Vec<usize>, outer: Vec<usize>) -> Self {
        let mut touch = Self { radius, axial, inner, outer, area: Vec::new() };
        touch.area = touch.weigh(&vec![1.0; touch.inner.len()]);
        touch
    }

    /// Number of pressures.
    pub(super) fn len(&self) -> usize {
        self.axial.len()
    }

    /// Area of half an edge, m².
    fn half_edge(&self, edge: usize) -> f64 {
        PI * self.radius * (self.axial[edge + 1] - self.axial[edge])
    }

    /// `D g`: means of nodal gaps under the hats, times their areas.
    pub(super) fn weigh(&self, gaps: &[f64]) -> Vec<f64> {
        let mut sums = vec![0.0; self.len()];
        for edge in 0..self.len() - 1 {
            for (i, row) in EDGE.iter().enumerate() {
                let mean: f64 = row.iter().zip(&gaps[2 * edge..]).map(|(d, gap)| d * gap).sum();
                sums[edge + i] += self.half_edge(edge) * mean;
            }
        }
        sums
    }

    /// `Dᵀ p`: nodal forces of pressures, N.
    pub(super) fn forces(&self, pressure: &[f64]) -> Vec<f64> {
        let mut forces = vec![0.0; self.inner.len()];
        for edge in 0..self.len() - 1 {
            for (i, row) in EDGE.iter().enumerate() {
                for (j, d) in row.iter().enumerate() {
                    forces[2 * edge + j] += self.half_edge(edge) * d * pressure[edge + i];
                }
            }
        }
        forces
    }

    /// Nodal forces of a pressure of one at corner `i` alone: place among the nodes and force.
    pub(super) fn hat(&self, i: usize) -> Vec<(usize, f64)> {
        let mut hat = Vec::with_capacity(5);
        let mut edge = |edge: usize, row: [f64; 3]| {
            hat.extend(row.iter().enumerate().map(|(j, d)| (2 * edge + j, d * self.half_edge(edge))));
        };
        if i > 0 {
            edge(i - 1, EDGE[1]);
        }
        if i + 1 < self.len() {
            edge(i, EDGE[0]);
        }
        hat
    }

    /// Whole normal force of a pressure, N: its integral over the cylinder.
    pub(super) fn normal_force(&self, pressure: &[f64]) -> f64 {
        pressure.iter().zip(&self.area).map(|(p, area)| p * area).sum()
    }

    /// Area of the whole contact, m².
    pub(super) fn whole_area(&self) -> f64 {
        self.area.iter().sum()
    }
}
