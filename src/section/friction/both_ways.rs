//! Contacts that carry axial traction beside pressure.

use crate::section::body::Body;
use crate::section::model::Model;
use crate::section::touch::Touch;

/// Weighted gaps and slips for a pressure, or an axial traction, of one at each corner of all contacts.
pub(super) struct BothWays {
    /// Where the pressures of each contact begin.
    pub(super) start: Vec<usize>,
    /// Pressures of all contacts; as many tractions follow them.
    pub(super) count: usize,
    /// By rows: gaps and slips; columns: pressures and tractions. A positive traction pushes the outer body to the front.
    pub(super) matrix: Vec<f64>,
    /// The contact of the ring with what it sits in or on.
    pub(super) ring: usize,
}

impl BothWays {
    pub(super) fn of(model: &Model) -> Self {
        let touches = &model.touches;
        let mut start = Vec::with_capacity(touches.len());
        let mut count = 0;
        for touch in touches {
            start.push(count);
            count += touch.len();
        }
        let ring = model.outlines.ring.saturating_sub(1);
        let mut both = Self { start, count, matrix: vec![0.0; 4 * count * count], ring };
        for (b, body) in model.bodies.iter().enumerate() {
            both.add(b, body, touches);
        }
        both
    }

    /// What one body gives way.
    fn add(&mut self, b: usize, body: &Body, touches: &[Touch]) {
        let (mut own, mut sets) = (Vec::new(), Vec::new());
        let mut place = |k: usize, nodes: &[usize], sign: f64, direction: usize| {
            for i in 0..touches[k].len() {
                own.push(direction * self.count + self.start[k] + i);
                let force = |(j, force): (usize, f64)| (nodes[j], direction, sign * force);
                sets.push(touches[k].hat(i).into_iter().map(force).collect());
            }
        };
        for direction in [0, 1] {
            if b > 0 {
                place(b - 1, &touches[b - 1].outer, 1.0, direction);
            }
            if b < touches.len() {
                place(b, &touches[b].inner, -1.0, direction);
            }
        }
        let size = 2 * self.count;
        for (row, motions) in own.iter().zip(body.compliance(&sets).chunks(sets.len().max(1))) {
            for (column, motion) in own.iter().zip(motions) {
                self.matrix[row * size + column] += motion;
            }
        }
    }

    /// Contact of a place, be it a pressure or a traction.
    pub(super) fn contact(&self, place: usize) -> usize {
        let place = place % self.count;
        self.start.iter().rposition(|start| *start <= place).unwrap_or_default()
    }

    /// Normal force at the ring's seat, N.
    pub(super) fn at_ring(&self, model: &Model, pressure: &[f64]) -> f64 {
        let touch = &model.touches[self.ring];
        touch.normal_force(&pressure[self.start[self.ring]..][..touch.len()])
    }
}
