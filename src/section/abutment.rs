//! The wall or shoulder behind the ring: what the ring's face presses on it, and what that does at its root.

use super::body::{Body, Field};
use super::outline::Abutment;
use std::f64::consts::PI;

/// Gauss-Legendre points and weights of order three on -1 to 1.
const GAUSS: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// Numbers that describe a wall; all are in proportion to the loads.
pub(super) const WALL_VALUES: usize = 6;

impl Abutment {
    /// Nodal forces of an axial force of one towards the back, spread evenly over the face.
    pub(super) fn push(&self, body: &Body) -> Field {
        let mut forces = vec![[0.0; 2]; body.mesh.nodes.len()];
        let nodes = body.mesh.across(0.0, self.face);
        let pressure = 1.0 / (PI * (self.face.1 - self.face.0) * (self.face.1 + self.face.0));
        for edge in nodes.windows(3).step_by(2) {
            let (inner, outer) = (body.mesh.nodes[edge[0]][0], body.mesh.nodes[edge[2]][0]);
            for (x, weight) in GAUSS {
                let radius = (inner + outer) / 2.0 + x * (outer - inner) / 2.0;
                let force = pressure * 2.0 * PI * radius * weight * (outer - inner) / 2.0;
                let shape = [x * (x - 1.0) / 2.0, 1.0 - x * x, x * (x + 1.0) / 2.0];
                for (node, shape) in edge.iter().zip(shape) {
                    forces[*node][1] -= shape * force;
                }
            }
        }
        forces
    }

    /// Radial membrane and bending stress at the root, the same of the hoop stress at the free edge, and the axial
    /// deflection of the free edge, absolute and against the seat's outer circle on the back face.
    ///
    /// The stresses at the root come from the forces that the wall's elements put on the nodes there: their sum over
    /// `2πr t`, and six times their moment over `2πr t²`. These forces hold the wall in balance exactly, while the
    /// stress itself is singular at the corner and depends on the mesh.
    pub(super) fn values(&self, body: &Body, displacement: &Field, thermal: f64) -> [f64; WALL_VALUES] {
        let inward = self.free < self.root;
        let middle = |nodes: &[[f64; 2]; 8]| {
            let (r, z) = ((nodes[0][0] + nodes[2][0]) / 2.0, (nodes[0][1] + nodes[2][1]) / 2.0);
            z < 0.0 && (r < self.root) == inward
        };
        let forces = body.internal_forces(displacement, thermal, middle);
        let (t, along) = (self.thickness, (-self.thickness, 0.0));
        let (mut force, mut moment) = (0.0, 0.0);
        let outward = if inward { 1.0 } else { -1.0 };
        for node in body.mesh.along(self.root, along) {
            force += outward * forces[node][0];
            moment += outward * forces[node][0] * (body.mesh.nodes[node][1] + t / 2.0);
        }
        let area = 2.0 * PI * self.root * t;
        let edge = body.mesh.along(self.free, along);
        let hoop = self.hoop(body, displacement, thermal, &edge);
        let deflection = edge.first().map_or(0.0, |&node| -displacement[node][1]);
        let rim = body.mesh.across(-t, (0.0, f64::INFINITY));
        // The rim is on the other side of the root.
        let rim = if inward { rim.last() } else { rim.first() };
        let rim = rim.map_or(0.0, |&node| -displacement[node][1]);
        [force / area, 6.0 * moment / (area * t), hoop[0], hoop[1], deflection, deflection - rim]
    }

    /// Membrane and bending part of the hoop stress along the free edge: `1/t ∫ σ dz`, `6/t² ∫ σ (z - z_m) dz`.
    fn hoop(&self, body: &Body, displacement: &Field, thermal: f64, edge: &[usize]) -> [f64; 2] {
        let stresses = body.stresses(displacement, thermal);
        let t = self.thickness;
        let mut sums = [0.0; 2];
        for nodes in edge.windows(3).step_by(2) {
            let length = body.mesh.nodes[nodes[2]][1] - body.mesh.nodes[nodes[0]][1];
            for (&node, weight) in nodes.iter().zip([1.0 / 6.0, 4.0 / 6.0, 1.0 / 6.0]) {
                let share = weight * length * stresses[node][2];
                sums[0] += share / t;
                sums[1] += 6.0 / (t * t) * share * (body.mesh.nodes[node][1] + t / 2.0);
            }
        }
        sums
    }
}
