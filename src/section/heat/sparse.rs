//! The conduction matrices of a set of bodies.
//!
//! With nodal enthalpies `e = ∫c dT` and flux potentials `θ = ∫k dT`, both interpolated as the temperatures are, the
//! weak form of `ρ c(T) ∂T/∂t = ∇·(k(T) ∇T)` is `M ė = -K θ + surfaces`, with `M_ij = ∫ ρ N_i N_j dV` and
//! `K_ij = ∫ ∇N_i·∇N_j dV` the same at every temperature: nothing is assembled anew in a step, `1ᵀ M e` is the heat held,
//! and no heat is lost between elements whatever c(T) and k(T) are (interpolation of the potential as in G. Comini,
//! S. Del Guidice, R. W. Lewis, O. C. Zienkiewicz, "Finite element solution of non-linear heat conduction problems", 1974,
//! from memory, who take the enthalpy so).

use crate::section::SectionError;
use crate::section::element;
use crate::section::mesh::Mesh;

/// Rows of the matrices that bodies share.
#[derive(Clone, Debug)]
pub(super) struct Sparse {
    start: Vec<usize>,
    entries: Vec<Entry>,
}

/// An entry of both matrices, side by side: they are read together, and reading takes longer than multiplying.
#[derive(Clone, Copy, Debug)]
pub(super) struct Entry {
    pub(super) column: usize,
    pub(super) mass: f64,
    pub(super) stiff: f64,
}

/// Rows of the nodes of several bodies: along the axis first, then along the radius, bodies interleaved. The band is then
/// as narrow as for one body, with the exchange across the seat in it.
pub(super) fn rows(meshes: &[&Mesh]) -> Vec<Vec<usize>> {
    let mut all: Vec<(f64, f64, usize, usize)> = Vec::new();
    for (place, mesh) in meshes.iter().enumerate() {
        let nodes = mesh.nodes.iter().enumerate();
        all.extend(nodes.map(|(node, &[r, z])| (z, r, place, node)));
    }
    // Lines that bodies share have the same z but for rounding, far below the 0.1 µm to which sizes are rounded.
    let key = |z: f64| (z * 1e8).round();
    all.sort_by(|a, b| key(a.0).total_cmp(&key(b.0)).then(a.1.total_cmp(&b.1)).then(a.2.cmp(&b.2)));
    let mut rows: Vec<Vec<usize>> = meshes.iter().map(|mesh| vec![0; mesh.nodes.len()]).collect();
    for (row, (_, _, place, node)) in all.into_iter().enumerate() {
        rows[place][node] = row;
    }
    rows
}

impl Sparse {
    /// The matrices; `densities` by body.
    ///
    /// # Errors
    /// [`SectionError::Distorted`].
    pub(super) fn new(meshes: &[&Mesh], rows: &[Vec<usize>], densities: &[f64]) -> Result<Self, SectionError> {
        let size = rows.iter().map(Vec::len).sum();
        let mut entries: Vec<Vec<(usize, f64, f64)>> = vec![Vec::with_capacity(21); size];
        for ((mesh, rows), density) in meshes.iter().zip(rows).zip(densities) {
            for element in &mesh.elements {
                let nodes = mesh.corners_of(element);
                let (mass, stiff) = matrices(&nodes).ok_or(SectionError::Distorted { z_mm: nodes[0][1] * 1e3 })?;
                for a in 0..8 {
                    let row = &mut entries[rows[element[a]]];
                    for b in 0..8 {
                        let column = rows[element[b]];
                        let (m, k) = (density * mass[a][b], stiff[a][b]);
                        match row.iter_mut().find(|entry| entry.0 == column) {
                            Some(entry) => (entry.1, entry.2) = (entry.1 + m, entry.2 + k),
                            None => row.push((column, m, k)),
                        }
                    }
                }
            }
        }
        Ok(Self::from_rows(entries))
    }

    fn from_rows(entries: Vec<Vec<(usize, f64, f64)>>) -> Self {
        let mut sparse = Self { start: vec![0], entries: Vec::new() };
        for mut row in entries {
            row.sort_by_key(|entry| entry.0);
            sparse.entries.extend(row.into_iter().map(|(column, mass, stiff)| Entry { column, mass, stiff }));
            sparse.start.push(sparse.entries.len());
        }
        sparse
    }

    pub(super) fn size(&self) -> usize {
        self.start.len() - 1
    }

    /// The entries of each row.
    pub(super) fn rows(&self) -> impl Iterator<Item = &[Entry]> {
        self.start.windows(2).map(|ends| &self.entries[ends[0]..ends[1]])
    }

    /// `M x`, added to nothing.
    pub(super) fn mass_times(&self, x: &[f64], product: &mut [f64]) {
        for (sum, row) in product.iter_mut().zip(self.rows()) {
            *sum = row.iter().map(|entry| entry.mass * x[entry.column]).sum();
        }
    }

    /// `M x + K y`, each given as a pair (x, y): one reading of the rows for both.
    pub(super) fn both_times(&self, pairs: &[[f64; 2]], product: &mut [f64]) {
        for (sum, row) in product.iter_mut().zip(self.rows()) {
            let mut sums = [0.0; 2];
            for entry in row {
                let [x, y] = pairs[entry.column];
                sums = [sums[0] + entry.mass * x, sums[1] + entry.stiff * y];
            }
            *sum = sums[0] + sums[1];
        }
    }
}

/// `∫ N_a N_b dV` and `∫ ∇N_a·∇N_b dV` of an element.
type Matrices = ([[f64; 8]; 8], [[f64; 8]; 8]);

fn matrices(nodes: &[[f64; 2]; 8]) -> Option<Matrices> {
    let (mut mass, mut stiff) = ([[0.0; 8]; 8], [[0.0; 8]; 8]);
    for point in element::points(nodes) {
        let point = point?;
        for a in 0..8 {
            for b in 0..8 {
                let [[ar, az], [br, bz]] = [point.gradient[a], point.gradient[b]];
                mass[a][b] += point.volume * point.shape[a] * point.shape[b];
                stiff[a][b] += point.volume * (ar * br + az * bz);
            }
        }
    }
    Some((mass, stiff))
}
