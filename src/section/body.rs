//! One body: its mesh, its stiffness factored once, and what its seat gives way.

use super::element::{self, Lame, Tensor};
use super::envelope::{Envelope, Factor};
use super::error::SectionError;
use super::mesh::Mesh;
use super::outline::{Outline, Rest};

/// Marks a displacement that is held at zero.
const HELD: usize = usize::MAX;

/// Displacements or forces of all nodes, radial and axial.
pub(super) type Field = Vec<[f64; 2]>;

/// A body that can be solved for any number of loads.
#[derive(Clone, Debug)]
pub(super) struct Body {
    pub(super) mesh: Mesh,
    pub(super) lame: Lame,
    /// Row of each displacement in the matrix.
    rows: Vec<[usize; 2]>,
    factor: Factor,
    /// Displacements for a free thermal strain of one.
    pub(super) expanded: Field,
}

impl Body {
    /// Assembles and factors the stiffness.
    ///
    /// # Errors
    /// [`SectionError::Distorted`], [`SectionError::NotStiff`].
    pub(super) fn new(outline: Outline, mesh: Mesh, rest: Rest) -> Result<Self, SectionError> {
        let lame = Lame::new(outline.modulus, outline.poisson);
        let rows = rows(&mesh, &held(&outline, &mesh, rest));
        let mut matrix = Envelope::new(first_columns(&mesh, &rows));
        let mut thermal = vec![[0.0; 2]; mesh.nodes.len()];
        for element in &mesh.elements {
            let nodes = mesh.corners_of(element);
            let distorted = SectionError::Distorted { z_mm: nodes[0][1] * 1e3 };
            let stiffness = element::stiffness(&nodes, &lame).ok_or(distorted)?;
            scatter(&stiffness, element, &rows, &mut matrix, &mut thermal);
        }
        let factor = matrix.factor().ok_or(SectionError::NotStiff { part: outline.part })?;
        let mut body = Self { mesh, lame, rows, factor, expanded: Field::new() };
        body.expanded = body.solve(&thermal);
        Ok(body)
    }

    /// Displacements under nodal forces (for the whole circle, N).
    pub(super) fn solve(&self, forces: &[[f64; 2]]) -> Field {
        let mut vector = vec![0.0; self.rows.iter().flatten().filter(|row| **row != HELD).count()];
        for (row, force) in self.rows.iter().flatten().zip(forces.iter().flatten()) {
            if *row != HELD {
                vector[*row] = *force;
            }
        }
        self.factor.solve(&mut vector);
        let value = |row: usize| if row == HELD { 0.0 } else { vector[row] };
        self.rows.iter().map(|row| row.map(value)).collect()
    }

    /// What the body gives way under sets of radial nodal forces, each a list of nodes and forces: the work of one set
    /// on the displacements of another, by rows.
    ///
    /// None of the nodes lies on the axis, where the radial displacement is held.
    pub(super) fn radial_compliance(&self, sets: &[Vec<(usize, f64)>]) -> Vec<f64> {
        let column = |set: &Vec<(usize, f64)>| set.iter().map(|(node, force)| (self.rows[*node][0], *force)).collect();
        self.factor.inverse_on(&sets.iter().map(column).collect::<Vec<_>>())
    }

    /// The same for sets of nodes, directions (0 radial, 1 axial) and forces; forces on what is held do nothing.
    pub(super) fn compliance(&self, sets: &[Vec<(usize, usize, f64)>]) -> Vec<f64> {
        let free = |&(node, direction, force): &(usize, usize, f64)| {
            let row = self.rows[node][direction];
            (row != HELD).then_some((row, force))
        };
        let column = |set: &Vec<(usize, usize, f64)>| set.iter().filter_map(free).collect();
        self.factor.inverse_on(&sets.iter().map(column).collect::<Vec<_>>())
    }

    /// Forces that the elements chosen by `of` put on the nodes, N: `∫ Bᵀ σ dV`.
    pub(super) fn internal_forces(
        &self,
        displacement: &[[f64; 2]],
        thermal: f64,
        of: impl Fn(&[[f64; 2]; 8]) -> bool,
    ) -> Field {
        let mut forces = vec![[0.0; 2]; self.mesh.nodes.len()];
        for element in &self.mesh.elements {
            let nodes = self.mesh.corners_of(element);
            // The factor was made from the same elements, so none is inside out.
            let Some(stiffness) = of(&nodes).then(|| element::stiffness(&nodes, &self.lame)).flatten() else {
                continue;
            };
            let local = element.map(|node| displacement[node]);
            for (row, entries) in stiffness.matrix.iter().enumerate() {
                let elastic: f64 = entries.iter().zip(local.iter().flatten()).map(|(k, u)| k * u).sum();
                forces[element[row / 2]][row % 2] += elastic - thermal * stiffness.thermal[row];
            }
        }
        forces
    }

    /// Stress at each node, the mean of its elements' values.
    pub(super) fn stresses(&self, displacement: &[[f64; 2]], thermal: f64) -> Vec<Tensor> {
        self.stresses_under(displacement, |_| thermal)
    }

    /// The same for a free thermal strain of each node.
    pub(super) fn stresses_under(&self, displacement: &[[f64; 2]], thermal: impl Fn(usize) -> f64) -> Vec<Tensor> {
        let mut sums = vec![[0.0; 4]; self.mesh.nodes.len()];
        let mut counts = vec![0.0; self.mesh.nodes.len()];
        for element in &self.mesh.elements {
            let (nodes, local) = (self.mesh.corners_of(element), element.map(|node| displacement[node]));
            let strain = element.map(&thermal);
            let Some(stresses) = element::at_nodes(&nodes, &self.lame, &local, &strain) else { continue };
            for (&node, stress) in element.iter().zip(stresses) {
                counts[node] += 1.0;
                for (sum, part) in sums[node].iter_mut().zip(stress) {
                    *sum += part;
                }
            }
        }
        sums.iter().zip(counts).map(|(sum, count)| sum.map(|part| part / count)).collect()
    }
}

/// Which displacements are held: radial ones on the axis, axial ones at the support.
fn held(outline: &Outline, mesh: &Mesh, rest: Rest) -> Vec<[bool; 2]> {
    let mut held: Vec<[bool; 2]> = mesh.nodes.iter().map(|[r, _]| [*r <= 0.0, false]).collect();
    let face: Vec<usize> = match rest {
        Rest::Front => mesh.across(outline.front, (outline.inner, outline.outer)),
        Rest::Back { from } => mesh.across(outline.back(), (from, outline.outer_at_back())),
        Rest::BackCircle => mesh.across(outline.back(), (outline.outer_at_back(), outline.outer_at_back())),
        Rest::Circle => mesh.across(outline.front, (outline.outer, outline.outer)),
    };
    for node in face {
        held[node][1] = true;
    }
    held
}

fn rows(mesh: &Mesh, held: &[[bool; 2]]) -> Vec<[usize; 2]> {
    let mut next = 0;
    let mut row = |held: bool| {
        if held {
            return HELD;
        }
        next += 1;
        next - 1
    };
    (0..mesh.nodes.len()).map(|node| held[node].map(&mut row)).collect()
}

fn first_columns(mesh: &Mesh, rows: &[[usize; 2]]) -> Vec<usize> {
    let mut first: Vec<usize> = rows.iter().flatten().copied().filter(|row| *row != HELD).collect();
    for element in &mesh.elements {
        let own = || element.iter().flat_map(|&node| rows[node]).filter(|row| *row != HELD);
        let least = own().min().unwrap_or(0);
        for row in own() {
            first[row] = first[row].min(least);
        }
    }
    first
}

fn scatter(
    stiffness: &element::Stiffness,
    element: &[usize; 8],
    rows: &[[usize; 2]],
    matrix: &mut Envelope,
    thermal: &mut [[f64; 2]],
) {
    for a in 0..16 {
        thermal[element[a / 2]][a % 2] += stiffness.thermal[a];
        let row = rows[element[a / 2]][a % 2];
        if row == HELD {
            continue;
        }
        for b in 0..16 {
            let column = rows[element[b / 2]][b % 2];
            // HELD is above every row.
            if column <= row {
                matrix.add(row, column, stiffness.matrix[a][b]);
            }
        }
    }
}
