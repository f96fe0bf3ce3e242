//! Structured meshes of 8-node quadrilaterals, one for each body.

use super::error::SectionError;
use super::outline::{Outline, same};

/// Most nodes of one body; at this size the factor takes some 200 MB.
const MOST_NODES: usize = 60_000;

/// A mesh of one body. Nodes lie on a lattice of twice as many lines as there are element edges.
#[derive(Clone, Debug)]
pub(super) struct Mesh {
    /// Radius and axial position of each node, m.
    pub(super) nodes: Vec<[f64; 2]>,
    /// Nodes of each element: corners from the inner back one round by the outer back one, then the middles of the
    /// sides in the same sense, the back side first.
    pub(super) elements: Vec<[usize; 8]>,
    /// Nominal radius of each lattice line, before cuts.
    radial: Vec<f64>,
    /// Axial position of each lattice line.
    axial: Vec<f64>,
    /// Node at each crossing of the lattice, rows of equal z after one another.
    lattice: Vec<Option<usize>>,
}

/// The lattice of element edges with the lines half-way between them.
fn halved(lines: &[f64]) -> Vec<f64> {
    let mut all: Vec<f64> = lines.windows(2).flat_map(|ends| [ends[0], (ends[0] + ends[1]) / 2.0]).collect();
    all.extend(lines.last());
    all
}

impl Mesh {
    /// The mesh of a body from its radial and axial lines.
    ///
    /// # Errors
    /// [`SectionError::MeshTooLarge`].
    pub(super) fn new(outline: &Outline, radial: &[f64], axial: &[f64]) -> Result<Self, SectionError> {
        let (radial, axial) = (halved(radial), halved(axial));
        let nodes = radial.len() * axial.len();
        if nodes > MOST_NODES {
            return Err(SectionError::MeshTooLarge { nodes, limit: MOST_NODES });
        }
        let lattice = vec![None; nodes];
        let mut mesh = Self { nodes: Vec::new(), elements: Vec::new(), radial, axial, lattice };
        let cells = mesh.cells(outline);
        mesh.number(outline, &cells);
        mesh.elements = cells.iter().map(|&(i, j)| mesh.corners(i, j)).collect();
        Ok(mesh)
    }

    /// Lattice places of the cells' inner back corners that belong to the body.
    fn cells(&self, outline: &Outline) -> Vec<(usize, usize)> {
        let mut cells = Vec::new();
        for j in (0..self.axial.len() - 1).step_by(2) {
            for i in (0..self.radial.len() - 1).step_by(2) {
                let (r, z) = (self.radial[i + 1], self.axial[j + 1]);
                let (inner, outer) = outline.radii_at(z);
                if r > inner && r < outer {
                    cells.push((i, j));
                }
            }
        }
        cells
    }

    /// Numbers the nodes along rows of equal z, so that those of an element have numbers close to one another: the
    /// width of the stiffness matrix's band is then some three rows.
    fn number(&mut self, outline: &Outline, cells: &[(usize, usize)]) {
        let mut used = vec![false; self.lattice.len()];
        for &(i, j) in cells {
            for (di, dj) in AROUND {
                used[(j + dj) * self.radial.len() + i + di] = true;
            }
        }
        for (place, _) in used.iter().enumerate().filter(|(_, used)| **used) {
            let (r, z) = (self.radial[place % self.radial.len()], self.axial[place / self.radial.len()]);
            self.lattice[place] = Some(self.nodes.len());
            self.nodes.push([outline.radius_at(r, z), z]);
        }
    }

    fn corners(&self, i: usize, j: usize) -> [usize; 8] {
        // Every crossing that a cell uses was numbered.
        AROUND.map(|(di, dj)| self.lattice[(j + dj) * self.radial.len() + i + di].unwrap_or_default())
    }

    /// Nodes on the line of a nominal radius from one axial position to another, from back to front.
    pub(super) fn along(&self, radius: f64, (from, to): (f64, f64)) -> Vec<usize> {
        let Some(i) = self.radial.iter().position(|r| same(*r, radius)) else { return Vec::new() };
        let inside = |z: f64| (z > from || same(z, from)) && (z < to || same(z, to));
        let rows = (0..self.axial.len()).filter(|&j| inside(self.axial[j]));
        rows.filter_map(|j| self.lattice[j * self.radial.len() + i]).collect()
    }

    /// Nodes on the line of an axial position from one nominal radius to another, from inside outward.
    pub(super) fn across(&self, axial: f64, (from, to): (f64, f64)) -> Vec<usize> {
        let Some(j) = self.axial.iter().position(|z| same(*z, axial)) else { return Vec::new() };
        let inside = |r: f64| (r > from || same(r, from)) && (r < to || same(r, to));
        let columns = (0..self.radial.len()).filter(|&i| inside(self.radial[i]));
        columns.filter_map(|i| self.lattice[j * self.radial.len() + i]).collect()
    }

    /// Coordinates of an element's nodes.
    pub(super) fn corners_of(&self, element: &[usize; 8]) -> [[f64; 2]; 8] {
        element.map(|node| self.nodes[node])
    }
}

/// Steps on the lattice from a cell's inner back corner to its nodes.
const AROUND: [(usize, usize); 8] = [(0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1)];
