//! Symmetric positive definite matrices kept by rows, each from its first entry to the diagonal.
//!
//! Cholesky within that envelope (A. Jennings, "A compact storage scheme for the solution of symmetric linear
//! simultaneous equations", 1966; A. George and J. W. Liu, "Computer Solution of Large Sparse Positive Definite Systems",
//! 1981, ch. 4, both from memory). A section is long and narrow: numbered along the axis its envelope is some fifty
//! entries wide, where an ordering for general sparsity gains nothing, and bodies are factored one by one. A general
//! sparse solver was tried: it took minutes to compile, and its generic code, compiled with ours, needed a second for
//! one section in a test build.

/// A matrix, or its lower Cholesky factor.
#[derive(Clone, Debug)]
pub(super) struct Envelope {
    /// Column of the first entry of each row.
    first: Vec<usize>,
    /// Where the first entry of each row is among the values.
    start: Vec<usize>,
    values: Vec<f64>,
}

/// The Cholesky factor of an [`Envelope`].
#[derive(Clone, Debug)]
pub(super) struct Factor(Envelope);

/// Sum of products; eight sums at a time, which the compiler keeps in vector registers.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 8];
    let (a_chunks, b_chunks) = (a.chunks_exact(8), b.chunks_exact(8));
    let rest: f64 = a_chunks.remainder().iter().zip(b_chunks.remainder()).map(|(a, b)| a * b).sum();
    for (a, b) in a_chunks.zip(b_chunks) {
        for k in 0..8 {
            sums[k] += a[k] * b[k];
        }
    }
    rest + sums.iter().sum::<f64>()
}

impl Envelope {
    /// A matrix of zeros, from the first column of each row.
    pub(super) fn new(first: Vec<usize>) -> Self {
        let mut start = Vec::with_capacity(first.len() + 1);
        start.push(0);
        for (row, column) in first.iter().enumerate() {
            start.push(start[row] + row + 1 - column);
        }
        let values = vec![0.0; start[first.len()]];
        Self { first, start, values }
    }

    /// The part of a full symmetric matrix, given by rows, in the rows and columns `chosen`.
    pub(super) fn dense(full: &[f64], size: usize, chosen: &[usize]) -> Self {
        let mut matrix = Self::new(vec![0; chosen.len()]);
        for (row, &i) in chosen.iter().enumerate() {
            for (column, &j) in chosen.iter().enumerate().take(row + 1) {
                matrix.add(row, column, full[i * size + j]);
            }
        }
        matrix
    }

    /// Adds to the entry of a row and a column not beyond the diagonal.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        self.values[self.start[row] + column - self.first[row]] += value;
    }

    fn row(&self, row: usize) -> &[f64] {
        &self.values[self.start[row]..self.start[row + 1]]
    }

    /// `L` with `L Lᵀ` the matrix; `None` when it is not positive definite.
    pub(super) fn factor(mut self) -> Option<Factor> {
        for i in 0..self.first.len() {
            let (done, current) = self.values.split_at_mut(self.start[i]);
            let current = &mut current[..i + 1 - self.first[i]];
            for j in self.first[i]..i {
                let row = &done[self.start[j]..self.start[j + 1]];
                let from = self.first[i].max(self.first[j]);
                let (ours, theirs) = (&current[from - self.first[i]..], &row[from - self.first[j]..]);
                let sum = dot(&ours[..j - from], &theirs[..j - from]);
                let at = j - self.first[i];
                current[at] = (current[at] - sum) / row[j - self.first[j]];
            }
            let at = i - self.first[i];
            let pivot = current[at] - dot(&current[..at], &current[..at]);
            // Rounding takes some 1e-16 of the diagonal; a pivot that small means that the body can move.
            if pivot.is_nan() || pivot <= 1e-14 * current[at].abs() {
                return None;
            }
            current[at] = pivot.sqrt();
        }
        Some(Factor(self))
    }
}

impl Factor {
    /// Solves in place.
    pub(super) fn solve(&self, vector: &mut [f64]) {
        for i in 0..vector.len() {
            let row = self.0.row(i);
            let (entries, diagonal) = row.split_at(row.len() - 1);
            vector[i] = (vector[i] - dot(entries, &vector[self.0.first[i]..i])) / diagonal[0];
        }
        for i in (0..vector.len()).rev() {
            let row = self.0.row(i);
            let (entries, diagonal) = row.split_at(row.len() - 1);
            let value = vector[i] / diagonal[0];
            vector[i] = value;
            for (below, entry) in vector[self.0.first[i]..i].iter_mut().zip(entries) {
                *below -= entry * value;
            }
        }
    }

    /// `Pᵀ A⁻¹ P` for sparse columns P, each a list of rows and values: with `Y = L⁻¹ P` it is `Yᵀ Y`, so that no
    /// backward solve is needed. By rows.
    pub(super) fn inverse_on(&self, columns: &[Vec<(usize, f64)>]) -> Vec<f64> {
        let forward: Vec<(usize, Vec<f64>)> = columns.iter().map(|column| self.forward(column)).collect();
        let size = columns.len();
        let mut inverse = vec![0.0; size * size];
        for (a, (start_a, column_a)) in forward.iter().enumerate() {
            for (b, (start_b, column_b)) in forward.iter().enumerate().take(a + 1) {
                let from = *start_a.max(start_b);
                let value = dot(&column_a[from - start_a..], &column_b[from - start_b..]);
                inverse[a * size + b] = value;
                inverse[b * size + a] = value;
            }
        }
        inverse
    }

    /// `L⁻¹` of a sparse column, from its first row onward; above it all are zero.
    fn forward(&self, column: &[(usize, f64)]) -> (usize, Vec<f64>) {
        let size = self.0.first.len();
        let start = column.iter().map(|(row, _)| *row).min().unwrap_or(size);
        let mut solution = vec![0.0; size - start];
        for (row, value) in column {
            solution[row - start] += value;
        }
        for i in start..size {
            let (row, from) = (self.0.row(i), self.0.first[i].max(start));
            let entries = &row[from - self.0.first[i]..row.len() - 1];
            let sum = dot(entries, &solution[from - start..i - start]);
            solution[i - start] = (solution[i - start] - sum) / row[row.len() - 1];
        }
        (start, solution)
    }
}
