//! Symmetric positive definite matrices kept by rows, each from its first entry to the diagonal.
//!
//! Cholesky within that envelope (A. Jennings, "A compact storage scheme for the solution of symmetric linear
//! simultaneous equations", 1966; A. George and J. W. Liu, "Computer Solution of Large Sparse Positive Definite Systems",
//! 1981, ch. 4, both from memory). A section is long and narrow: numbered along the axis its envelope is some fifty
//! entries wide, where an ordering for general sparsity gains nothing, and bodies are factored one by one. A general
//! sparse solver was tried: it took minutes to compile, and its generic code, compiled with ours, needed a second for
//! one section in a test build.

use std::cmp::Ordering;

/// Products at a time. Most rows have some fifty entries, and of more at a time too many would be left over.
const LANES: usize = 4;
/// Rows that are worked on together where they begin alike.
pub(super) const GROUP: usize = 4;
/// Columns solved together.
const TOGETHER: usize = 4;

/// Least pivot as a share of the diagonal that it is left of. A pivot as small as rounding says nothing, and that the body
/// can move.
const LEAST_PIVOT: f64 = 1e-14;

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

/// Sums of products of one row with each of N others, several products of each at a time, which the compiler keeps in
/// vector registers. Several at once, because reading the row takes as long as multiplying it. Counted by hand and not by
/// iterators: nearly all the time of a section is spent here, and a build without optimisation takes five times as long
/// with a chain of them.
pub(super) fn dots<const N: usize>(row: &[f64], others: [&[f64]; N]) -> [f64; N] {
    let length = row.len();
    let others = others.map(|other| &other[..length]);
    let (groups, rest) = row.as_chunks::<LANES>();
    let other_groups = others.map(|other| other.as_chunks::<LANES>().0);
    let mut sums = [[0.0; LANES]; N];
    let mut at = 0;
    while at < groups.len() {
        let a = &groups[at];
        let mut n = 0;
        while n < N {
            let b = &other_groups[n][at];
            let s = sums[n];
            sums[n] = [s[0] + a[0] * b[0], s[1] + a[1] * b[1], s[2] + a[2] * b[2], s[3] + a[3] * b[3]];
            n += 1;
        }
        at += 1;
    }
    let mut totals = sums.map(|[a, b, c, d]| ((a + b) + c) + d);
    let mut at = length - rest.len();
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

    /// How many rows from one on are worked on together: [`GROUP`] that begin alike, or two (both rows of a node of the elastic
    /// matrix), or one.
    fn together(&self, row: usize) -> usize {
        let alike = |count: usize| {
            self.first.get(row..row + count).is_some_and(|firsts| firsts.iter().all(|first| *first == firsts[0]))
        };
        if alike(GROUP) {
            GROUP
        } else if alike(2) {
            2
        } else {
            1
        }
    }

    /// `L` with `L Lᵀ` the matrix; `None` when it is not positive definite.
    pub(super) fn factor(mut self) -> Option<Factor> {
        let size = self.first.len();
        let mut row = 0;
        while row < size {
            let count = self.together(row);
            match count {
                GROUP => self.factor_rows::<GROUP>(row)?,
                2 => self.factor_rows::<2>(row)?,
                _ => self.factor_rows::<1>(row)?,
            }
            row += count;
        }
        Some(Factor(self))
    }

    /// Rows that begin alike, those above being done: they share the reading of the rows above.
    fn factor_rows<const N: usize>(&mut self, i: usize) -> Option<()> {
        let first = self.first[i];
        let (done, own) = self.values.split_at_mut(self.start[i]);
        let mut rows = split_rows::<N>(own, i + 1 - first);
        for j in first..i {
            let above = &done[self.start[j]..self.start[j + 1]];
            let from = first.max(self.first[j]);
            let (at, start) = (j - first, from - first);
            let (entries, diagonal) = (&above[from - self.first[j]..j - self.first[j]], above[j - self.first[j]]);
            let sums = dots(entries, rows.each_ref().map(|row| &row[start..at]));
            for (row, sum) in rows.iter_mut().zip(sums) {
                row[at] = (row[at] - sum) / diagonal;
            }
        }
        for k in 0..N {
            let (upper, lower) = rows.split_at_mut(k);
            for (m, above) in upper.iter().enumerate() {
                let at = i + m - first;
                lower[0][at] = (lower[0][at] - dot(&above[..at], &lower[0][..at])) / above[at];
            }
            finish(lower[0])?;
        }
        Some(())
    }
}

/// The first N rows among values, each longer by one than the one before.
fn split_rows<const N: usize>(mut values: &mut [f64], length: usize) -> [&mut [f64]; N] {
    std::array::from_fn(|k| {
        let (row, rest) = std::mem::take(&mut values).split_at_mut(length + k);
        values = rest;
        row
    })
}

/// Puts the root of the pivot on the diagonal of a row whose other entries are done.
fn finish(row: &mut [f64]) -> Option<()> {
    let (diagonal, entries) = row.split_last_mut()?;
    let pivot = *diagonal - dot(entries, entries);
    // Not above the least, and not a number neither.
    if pivot.partial_cmp(&(LEAST_PIVOT * *diagonal)) != Some(Ordering::Greater) {
        return None;
    }
    *diagonal = pivot.sqrt();
    Some(())
}

impl Factor {
    /// Solves in place.
    pub(super) fn solve(&self, vector: &mut [f64]) {
        let size = vector.len();
        let mut row = 0;
        let mut groups = Vec::with_capacity(size);
        while row < size {
            let count = self.0.together(row);
            match count {
                GROUP => self.forth::<GROUP>(row, vector),
                2 => self.forth::<2>(row, vector),
                _ => self.forth::<1>(row, vector),
            }
            groups.push((row, count));
            row += count;
        }
        for (row, count) in groups.into_iter().rev() {
            match count {
                GROUP => self.back::<GROUP>(row, vector),
                2 => self.back::<2>(row, vector),
                _ => self.back::<1>(row, vector),
            }
        }
    }

    fn forth<const N: usize>(&self, i: usize, vector: &mut [f64]) {
        let first = self.0.first[i];
        let rows: [&[f64]; N] = std::array::from_fn(|k| self.0.row(i + k));
        let (known, own) = vector[first..].split_at_mut(i - first);
        let sums = dots(known, rows.map(|row| &row[..i - first]));
        for k in 0..N {
            let ends = &rows[k][i - first..];
            let mut value = own[k] - sums[k];
            for m in 0..k {
                value -= ends[m] * own[m];
            }
            own[k] = value / ends[k];
        }
    }

    fn back<const N: usize>(&self, i: usize, vector: &mut [f64]) {
        let first = self.0.first[i];
        let rows: [&[f64]; N] = std::array::from_fn(|k| self.0.row(i + k));
        let (below, own) = vector[first..].split_at_mut(i - first);
        let mut values = [0.0; N];
        for k in (0..N).rev() {
            let mut value = own[k];
            for m in k + 1..N {
                value -= rows[m][i - first + k] * values[m];
            }
            values[k] = value / rows[k][i - first + k];
            own[k] = values[k];
        }
        let rows = rows.map(|row| &row[..below.len()]);
        let mut at = 0;
        while at < below.len() {
            let mut value = below[at];
            let mut k = 0;
            while k < N {
                value -= rows[k][at] * values[k];
                k += 1;
            }
            below[at] = value;
            at += 1;
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
