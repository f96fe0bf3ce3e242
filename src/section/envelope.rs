//! Symmetric positive definite matrices kept by rows, each from its first entry to the diagonal.
//!
//! Cholesky within that envelope (A. Jennings, "A compact storage scheme for the solution of symmetric linear
//! simultaneous equations", 1966; A. George and J. W. Liu, "Computer Solution of Large Sparse Positive Definite Systems",
//! 1981, ch. 4, both from memory). A section is long and narrow: numbered along the axis its envelope is some fifty
//! entries wide, where an ordering for general sparsity gains nothing, and bodies are factored one by one. A general
//! sparse solver was tried: it took minutes to compile, and its generic code, compiled with ours, needed a second for
//! one section in a test build.

/// Products at a time.
const LANES: usize = 4;
/// Columns solved together.
const TOGETHER: usize = 4;

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

/// Sums of products of one row with each of N others, four products of each at a time, which the compiler keeps in
/// vector registers. Several at once, because reading the row takes as long as multiplying it. Counted by hand and not by
/// iterators: nearly all the time of a section is spent here, and a build without optimisation takes five times as long
/// with a chain of them.
fn dots<const N: usize>(row: &[f64], others: [&[f64]; N]) -> [f64; N] {
    let length = row.len();
    let others = others.map(|other| &other[..length]);
    let whole = length - length % LANES;
    let mut sums = [[0.0; LANES]; N];
    let mut at = 0;
    while at < whole {
        let a = &row[at..at + LANES];
        let mut n = 0;
        while n < N {
            let (sum, b) = (&mut sums[n], &others[n][at..at + LANES]);
            sum[0] += a[0] * b[0];
            sum[1] += a[1] * b[1];
            sum[2] += a[2] * b[2];
            sum[3] += a[3] * b[3];
            n += 1;
        }
        at += LANES;
    }
    let mut totals = sums.map(|sum| sum.iter().sum());
    while at < length {
        for (total, other) in totals.iter_mut().zip(&others) {
            *total += row[at] * other[at];
        }
        at += 1;
    }
    totals
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    dots(a, [b])[0]
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
        let size = self.first.len();
        let mut i = 0;
        while i < size {
            // Both rows of a node begin alike, and share the reading of the rows above.
            let two = i + 1 < size && self.first[i] == self.first[i + 1];
            let (done, rows) = self.values.split_at_mut(self.start[i]);
            let (row, next) = rows.split_at_mut(i + 1 - self.first[i]);
            let next = if two { &mut next[..i + 2 - self.first[i]] } else { &mut [][..] };
            for j in self.first[i]..i {
                let above = &done[self.start[j]..self.start[j + 1]];
                let from = self.first[i].max(self.first[j]);
                let (at, start) = (j - self.first[i], from - self.first[i]);
                let (entries, diagonal) = (&above[from - self.first[j]..j - self.first[j]], above[j - self.first[j]]);
                if two {
                    let [sum, other] = dots(entries, [&row[start..at], &next[start..at]]);
                    row[at] = (row[at] - sum) / diagonal;
                    next[at] = (next[at] - other) / diagonal;
                } else {
                    row[at] = (row[at] - dot(entries, &row[start..at])) / diagonal;
                }
            }
            finish(row)?;
            if let Some(at) = next.len().checked_sub(2) {
                next[at] = (next[at] - dot(&row[..at], &next[..at])) / row[at];
                finish(next)?;
            }
            i += if two { 2 } else { 1 };
        }
        Some(Factor(self))
    }
}

/// Puts the root of the pivot on the diagonal of a row whose other entries are done.
fn finish(row: &mut [f64]) -> Option<()> {
    let (diagonal, entries) = row.split_last_mut()?;
    let pivot = *diagonal - dot(entries, entries);
    // Rounding takes some 1e-16 of the diagonal; a pivot that small means that the body can move.
    if pivot.is_nan() || pivot <= 1e-14 * diagonal.abs() {
        return None;
    }
    *diagonal = pivot.sqrt();
    Some(())
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
        let mut forward = Vec::with_capacity(columns.len());
        for group in columns.chunks(TOGETHER) {
            let column = |k: usize| group.get(k).map_or(&[][..], Vec::as_slice);
            let (start, solutions) = self.forward(std::array::from_fn(column));
            forward.extend(solutions.into_iter().take(group.len()).map(|solution| (start, solution)));
        }
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

    /// `L⁻¹` of sparse columns, from the first row that any of them has onward; above it all are zero.
    fn forward(&self, columns: [&[(usize, f64)]; TOGETHER]) -> (usize, [Vec<f64>; TOGETHER]) {
        let size = self.0.first.len();
        let start = columns.iter().flat_map(|column| column.iter()).map(|(row, _)| *row).min().unwrap_or(size);
        let mut solutions = columns.map(|column| {
            let mut solution = vec![0.0; size - start];
            for (row, value) in column {
                solution[row - start] += value;
            }
            solution
        });
        for i in start..size {
            let (row, from) = (self.0.row(i), self.0.first[i].max(start));
            let entries = &row[from - self.0.first[i]..row.len() - 1];
            let sums = dots(entries, solutions.each_ref().map(|solution| &solution[from - start..i - start]));
            for (solution, sum) in solutions.iter_mut().zip(sums) {
                solution[i - start] = (solution[i - start] - sum) / row[row.len() - 1];
            }
        }
        (start, solutions)
    }
}
