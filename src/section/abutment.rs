//! The wall or shoulder behind the ring: what the ring's face presses on it, and what that does at its root.

use super::body::{Body, Field};
use super::outline::Abutment;
use std::f64::consts::PI;

/// Gauss-Legendre points and weights of order three on -1 to 1.
const GAUSS: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// Numbers that describe a wall; all are in proportion to the loads.
pub(super) const WALL_VALUES: usize = 7;

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

    /// Radial membrane and bending stress at the root, the same of the hoop stress at the free edge, the axial deflection of
    /// the free edge, absolute and against the seat's outer circle on the back face, and the mean one under the ring's face.
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
        // The work of an even push of one is the mean displacement under it.
        let face = self.push(body).iter().zip(displacement).map(|(force, moved)| force[1] * moved[1]).sum();
        [force / area, 6.0 * moment / (area * t), hoop[0], hoop[1], deflection, deflection - rim, face]
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

#[cfg(test)]
mod tests {
    //! The wall's forces at its root against the balance of its other stresses, which are nowhere singular.

    use super::Abutment;
    use crate::quantity::{Force, Length, Pressure, Ratio};
    use crate::section::{
        Accuracy, Back, Chamfers, Elastic, Housing, Loads, Model, RingSection, Seat, Section, Support,
    };
    use uom::si::{force::newton, length::millimeter, pressure::gigapascal, ratio::ratio};

    const FORCE: f64 = 1e4;

    fn section(thickness: f64, hole: Option<f64>) -> Section {
        let mm = Length::new::<millimeter>;
        let elastic = |modulus, poisson| Elastic { modulus: Pressure::new::<gigapascal>(modulus), poisson };
        let (chamfers, groove) = (Chamfers { back: mm(0.0), front: mm(0.0) }, None);
        let (bore, outside, width) = (mm(52.0), mm(62.0), mm(16.0));
        let back = Back::Wall { thickness: mm(thickness), hole: hole.map(mm) };
        let housing = Housing { outside: mm(80.0), step: None, front: mm(0.0), back, material: elastic(70.0, 0.33) };
        let ring = RingSection { bore, outside, width, chamfers, groove, material: elastic(208.0, 0.3) };
        Section { ring, liner: None, seat: Seat::Housing(housing), support: Support::Front }
    }

    /// Integrals over the radius, from the free edge to the root, of the hoop stress's mean and of its bending part.
    fn hoop_over_radius(model: &Model, wall: &Abutment, field: &super::Field) -> [f64; 2] {
        let body = &model.bodies[model.outlines.seat];
        let across = body.mesh.across(0.0, (wall.free, wall.root));
        let radii: Vec<f64> = across.iter().map(|&node| body.mesh.nodes[node][0]).collect();
        let mut sums = [0.0; 2];
        for edge in radii.windows(3).step_by(2) {
            // The middle column has no nodes half-way up the elements: the straight mean of both sides stands for it.
            for radius in [edge[0], edge[2]] {
                let column = body.mesh.along(radius, (-wall.thickness, 0.0));
                let part = wall.hoop(body, field, 0.0, &column);
                sums[0] += part[0] * (edge[2] - edge[0]) / 2.0;
                sums[1] += part[1] * (edge[2] - edge[0]) / 2.0;
            }
        }
        sums
    }

    /// `R t σ_m = ∫ t σ_t dr`, and `R M_r = ∫ M_t dr + ∫ F(r)/2π dr` with F(r) the force inside a radius; bending stress
    /// is `6 M/t²`.
    #[test]
    fn the_root_balances_the_rest_of_the_wall() {
        for (millimetres, hole) in [(3.0, Some(40.0)), (5.0, Some(40.0)), (8.0, Some(20.0)), (5.0, None)] {
            let model = Model::new(&section(millimetres, hole), Accuracy::Fine).unwrap();
            let wall = model.outlines.abutment().unwrap();
            let (interference, strain) = (vec![Length::new::<millimeter>(-0.1)], vec![Ratio::new::<ratio>(0.0); 2]);
            let loads = Loads { interference, strain, axial: Force::new::<newton>(FORCE) };
            let plain = model.plain(&loads).unwrap();
            let solution = model.solution(&plain, vec![0.0; model.touches[0].len()]);
            let found = model.wall_values(&solution, &plain);
            let hoop = hoop_over_radius(&model, &wall, &solution.fields[model.outlines.seat]);
            let ((from, to), t) = (wall.face, wall.thickness);
            // ∫ F(r) dr over the pressed face, with F(r) = F (r² - a²)/(b² - a²).
            let inside = ((to.powi(3) - from.powi(3)) / 3.0 - from * from * (to - from)) / (to * to - from * from);
            let sheared = FORCE * inside / (2.0 * std::f64::consts::PI);
            let membrane = hoop[0] / wall.root;
            let bending = (hoop[1] + 6.0 * sheared / (t * t)) / wall.root;
            assert!((found[0] / membrane - 1.0).abs() < 0.01, "{millimetres} mm: {} and {membrane}", found[0]);
            assert!((found[1] / bending - 1.0).abs() < 0.01, "{millimetres} mm: {} and {bending}", found[1]);
        }
    }
}
