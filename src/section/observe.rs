//! The numbers of a solution that results are made from, in one row: each is in proportion to the loads while the same
//! nodes touch, so that results of unit loads add up.

use super::abutment::WALL_VALUES;
use super::model::{Model, Solution};
use super::outline::same;

/// The nodes of one surface of a body.
#[derive(Clone, Debug)]
pub(super) struct Line {
    pub(super) body: usize,
    pub(super) nodes: Vec<usize>,
    /// Axial positions, m.
    pub(super) axial: Vec<f64>,
    /// Radius where nothing is cut off, m.
    pub(super) radius: f64,
}

/// Where each number stands in the row.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    /// Pressures of all contacts.
    pub(super) contacts: usize,
    /// Inner and outer surface of each body, without an inner one where it is solid.
    pub(super) lines: Vec<Line>,
}

impl Layout {
    pub(super) fn of(model: &Model) -> Self {
        let mut lines = Vec::new();
        for (body, outline) in model.outlines.bodies.iter().enumerate() {
            for radius in [outline.inner, outline.outer] {
                // The outside behind a step is another surface.
                let stepped = outline.step.filter(|_| same(radius, outline.outer)).map_or(0.0, |step| step.at.max(0.0));
                let nodes = model.bodies[body].mesh.along(radius, (stepped, outline.front));
                let axial = nodes.iter().map(|&node| model.bodies[body].mesh.nodes[node][1]).collect();
                if radius > 0.0 {
                    lines.push(Line { body, nodes, axial, radius });
                }
            }
        }
        Self { contacts: model.touches.iter().map(super::touch::Touch::len).sum(), lines }
    }

    /// The row: pressures, mean gaps under the hats, radial displacements of the lines, the wall's numbers.
    pub(super) fn observe(&self, model: &Model, solution: &Solution, loads: &[f64]) -> Vec<f64> {
        let areas = model.touches.iter().flat_map(|touch| &touch.area);
        let mut row = solution.pressure.clone();
        row.extend(solution.gaps.iter().zip(areas).map(|(gap, area)| gap / area));
        for line in &self.lines {
            row.extend(line.nodes.iter().map(|&node| solution.fields[line.body][node][0]));
        }
        row.extend(model.wall_values(solution, loads));
        row
    }

    /// Pressures of contact `k`, whose nodes begin at `from`, and mean gaps beside them.
    pub(super) fn contact<'a>(&self, row: &'a [f64], from: usize, len: usize) -> (&'a [f64], &'a [f64]) {
        (&row[from..from + len], &row[self.contacts + from..self.contacts + from + len])
    }

    /// Radial displacements along line `k`.
    pub(super) fn line<'a>(&self, row: &'a [f64], k: usize) -> &'a [f64] {
        let before: usize = self.lines[..k].iter().map(|line| line.nodes.len()).sum();
        &row[2 * self.contacts + before..][..self.lines[k].nodes.len()]
    }

    pub(super) fn wall<'a>(&self, row: &'a [f64]) -> &'a [f64] {
        &row[row.len() - WALL_VALUES..]
    }
}
