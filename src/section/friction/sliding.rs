//! A ring that slides along its seat: traction one way along the whole contact, `t = μ p`.
//!
//! The driver's force on the ring's front face, and the support's on a face of the seat, balance it.

use super::both_ways::BothWays;
use crate::section::body::{Body, Field};
use crate::section::error::SectionError;
use crate::section::model::Model;
use crate::section::settle::{self, Settled};
use std::f64::consts::PI;

/// Rounds of traction following pressure; each leaves a share of the error that is about the friction itself.
const ROUNDS: usize = 200;
/// Change of the pressure over its largest value that ends the rounds.
const SETTLED: f64 = 1e-10;

/// Which way the ring slides in its seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    /// Towards the back, pushed on its front face, while the seat rests on its back.
    Home,
    /// Towards the front, pulled on its front face, while the seat is held at its front.
    Out,
}

/// Pressures of all contacts while the ring slides.
pub(super) fn pressure(
    model: &Model,
    both: &BothWays,
    free: &[f64],
    (settled, friction): (&Settled, f64),
    way: Way,
) -> Result<Vec<f64>, SectionError> {
    let unit = unit_gaps(model, both, way);
    let mut pressure = settled.pressure.clone();
    for _ in 0..ROUNDS {
        let gaps: Vec<f64> = free
            .iter()
            .zip(unit.chunks(both.count))
            .map(|(free, unit)| free + friction * unit.iter().zip(&pressure).map(|(a, p)| a * p).sum::<f64>())
            .collect();
        let next = settle::settle(&model.matrix, &gaps, &model.bonded)?.pressure;
        let largest = next.iter().copied().fold(0.0, f64::max);
        let change = next.iter().zip(&pressure).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
        pressure = next;
        if change <= SETTLED * largest {
            return Ok(pressure);
        }
    }
    Err(SectionError::NotSettled { steps: ROUNDS })
}

/// Gaps for a pressure of one whose traction is as large, with what balances it, by rows.
fn unit_gaps(model: &Model, both: &BothWays, way: Way) -> Vec<f64> {
    let (contact, ring) = (both.ring, model.outlines.ring);
    let (touch, start) = (&model.touches[contact], both.start[contact]);
    let ring_is_inner = ring == contact;
    let seat = if ring_is_inner { contact + 1 } else { contact };
    // Friction on the ring acts against its way; the ring's driver and the seat's support act against friction.
    let on_ring = if way == Way::Home { 1.0 } else { -1.0 };
    let on_outer = if ring_is_inner { -on_ring } else { on_ring };
    let face = |body: usize| &model.outlines.bodies[body];
    let rests_on = if way == Way::Home { face(seat).back() } else { face(seat).front };
    let mut balance = moved(model, ring, face(ring).front, -on_ring);
    for (sum, more) in balance.iter_mut().zip(moved(model, seat, rests_on, on_ring)) {
        *sum += more;
    }
    let size = 2 * both.count;
    let mut unit = vec![0.0; both.count * both.count];
    for i in 0..both.count {
        for (j, area) in touch.area.iter().enumerate() {
            let traction = both.matrix[i * size + both.count + start + j];
            unit[i * both.count + start + j] = on_outer * traction + area * balance[i];
        }
    }
    unit
}

/// Weighted gaps of all contacts for an axial force towards the front, spread evenly over a face of one body.
fn moved(model: &Model, body: usize, axial: f64, force: f64) -> Vec<f64> {
    let field = model.bodies[body].solve(&face_force(&model.bodies[body], axial, force));
    let mut moved = Vec::new();
    for (k, touch) in model.touches.iter().enumerate() {
        let (nodes, sign) = match body {
            _ if body == k => (&touch.inner, -1.0),
            _ if body == k + 1 => (&touch.outer, 1.0),
            _ => {
                moved.extend(vec![0.0; touch.len()]);
                continue;
            }
        };
        let nodal: Vec<f64> = nodes.iter().map(|&node| sign * field[node][0]).collect();
        moved.extend(touch.weigh(&nodal));
    }
    moved
}

/// Nodal forces of an axial force towards the front, spread evenly over a face: over an edge, with r straight and the shape
/// functions quadratic, `∫ N r dr` is a third of the half edge times the inner radius, four thirds times the middle, a third
/// times the outer.
fn face_force(body: &Body, axial: f64, force: f64) -> Field {
    let mut forces = vec![[0.0; 2]; body.mesh.nodes.len()];
    let nodes = body.mesh.across(axial, (0.0, f64::INFINITY));
    let radius = |node: usize| body.mesh.nodes[node][0];
    let (Some(&first), Some(&last)) = (nodes.first(), nodes.last()) else { return forces };
    let pressure = force / (PI * (radius(last).powi(2) - radius(first).powi(2)));
    for edge in nodes.windows(3).step_by(2) {
        let (inner, outer) = (radius(edge[0]), radius(edge[2]));
        let half = (outer - inner) / 2.0;
        let shares = [inner / 3.0, 2.0 / 3.0 * (inner + outer), outer / 3.0];
        for (&node, share) in edge.iter().zip(shares) {
            forces[node][1] += pressure * 2.0 * PI * half * share;
        }
    }
    forces
}

#[cfg(test)]
mod tests {
    //! The force on a face is the one that was asked for, and even.

    use super::face_force;
    use crate::quantity::{Length, Pressure};
    use crate::section::{Accuracy, Back, Chamfers, Elastic, Housing, Model, RingSection, Seat, Section, Support};
    use uom::si::{length::millimeter, pressure::gigapascal};

    #[test]
    fn a_face_takes_the_whole_force_and_stretches_a_tube_by_hookes_law() {
        let mm = Length::new::<millimeter>;
        let material = Elastic { modulus: Pressure::new::<gigapascal>(200.0), poisson: 0.0 };
        let chamfers = Chamfers { back: mm(0.0), front: mm(0.0) };
        let ring = RingSection { bore: mm(52.0), outside: mm(62.0), width: mm(16.0), chamfers, groove: None, material };
        let back = Back::Open { beyond: mm(0.0) };
        let housing = Housing { outside: mm(90.0), step: None, front: mm(0.0), back, material };
        let section = Section { ring, liner: None, seat: Seat::Housing(housing), support: Support::Front };
        let body = Model::new(&section, Accuracy::Coarse).unwrap().bodies.swap_remove(0);
        let (pull, push) = (face_force(&body, 0.016, 1000.0), face_force(&body, 0.0, -1000.0));
        let sum = |field: &[[f64; 2]]| field.iter().map(|force| force[1]).sum::<f64>();
        assert!((sum(&pull) - 1000.0).abs() < 1e-9 && (sum(&push) + 1000.0).abs() < 1e-9);
        let both: Vec<[f64; 2]> = pull.iter().zip(&push).map(|(a, b)| [a[0] + b[0], a[1] + b[1]]).collect();
        let moved = body.solve(&both);
        let area = std::f64::consts::PI * (0.031_f64.powi(2) - 0.026_f64.powi(2));
        let wanted = 1000.0 * 0.016 / (200e9 * area);
        for (front, back) in body.mesh.across(0.016, (0.0, 1.0)).iter().zip(body.mesh.across(0.0, (0.0, 1.0))) {
            let stretch = moved[*front][1] - moved[back][1];
            assert!((stretch / wanted - 1.0).abs() < 1e-9, "{stretch} {wanted}");
        }
    }
}
