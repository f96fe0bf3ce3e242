//! Cholesky factors in single precision, in panels of eight rows.
//!
//! What a factor of an [`Envelope`] is for numbers that count, this is for the matrix of an implicit step, which is only
//! iterated with: half as long to read. Eight rows that begin at the same column are kept column by column, so that every sum
//! runs over eight rows at once in vector registers and none of it across one. The blocks on the diagonal are kept inverted:
//! a step through them is then a product like any other, where roots and divisions one after another took half of the time.

use crate::section::envelope::Envelope;
use std::cmp::Ordering;

/// Rows of a panel.
pub(super) const ROWS: usize = 8;
/// Columns that are summed at once: more would not fit into the registers.
const HALF: usize = ROWS / 2;
/// Least pivot as a share of the diagonal that it is left of. A thousand rows leave some 1e-6 of rounding, which is a
/// hundredth of this.
const LEAST_PIVOT: f32 = 1e-4;

/// The entries of a panel in one column.
type Column = [f32; ROWS];

/// The lower factor of a symmetric positive definite matrix.
#[derive(Clone, Debug)]
pub(super) struct Panels {
    rows: usize,
    /// First block of [`ROWS`] columns of each panel.
    first: Vec<usize>,
    /// Where the columns of each panel begin.
    start: Vec<usize>,
    /// Those of a panel from its first to its last row; those of the diagonal block are of its inverse.
    columns: Vec<Column>,
    /// Each block turned over: rows where the columns were.
    turned: Vec<Column>,
}

impl Panels {
    /// The factor of a matrix; `None` when that is not positive definite in this precision.
    pub(super) fn new(matrix: &Envelope) -> Option<Self> {
        let mut panels = Self::empty(matrix);
        for panel in 0..panels.first.len() {
            panels.fill(matrix, panel);
            panels.factor(panel)?;
        }
        panels.turned.extend(panels.columns.as_chunks::<ROWS>().0.iter().flat_map(turned));
        Some(panels)
    }

    fn empty(matrix: &Envelope) -> Self {
        let (rows, mut first, mut start) = (matrix.first().len(), Vec::new(), vec![0]);
        for (panel, group) in matrix.first().chunks(ROWS).enumerate() {
            let least = group.iter().copied().min().unwrap_or_default() / ROWS;
            first.push(least);
            start.push(start[panel] + (panel + 1 - least) * ROWS);
        }
        let columns = vec![[0.0; ROWS]; start[first.len()]];
        let turned = Vec::with_capacity(columns.len());
        Self { rows, first, start, columns, turned }
    }

    /// The entries of the matrix in a panel; rows behind the last are those of a matrix of ones.
    fn fill(&mut self, matrix: &Envelope, panel: usize) {
        let from = self.first[panel] * ROWS;
        let columns = &mut self.columns[self.start[panel]..self.start[panel + 1]];
        for place in 0..ROWS {
            let row = panel * ROWS + place;
            if row < self.rows {
                let own = &mut columns[matrix.first()[row] - from..=row - from];
                own.iter_mut().zip(matrix.row(row)).for_each(|(column, value)| column[place] = *value as f32);
            } else {
                columns[row - from][place] = 1.0;
            }
        }
    }

    /// Factors a panel, those above being done.
    fn factor(&mut self, panel: usize) -> Option<()> {
        let first = self.first[panel];
        let (done, own) = self.columns.split_at_mut(self.start[panel]);
        for block in first..=panel {
            let (known, own) = own.split_at_mut((block - first) * ROWS);
            let own = &mut own[..ROWS];
            if block == panel {
                subtract(own, known, known);
                return invert(own);
            }
            let from = first.max(self.first[block]);
            let above = &done[self.start[block]..self.start[block + 1]];
            let (above, diagonal) = above[(from - self.first[block]) * ROWS..].split_at((block - from) * ROWS);
            subtract(own, &known[(from - first) * ROWS..], above);
            let [low, high] = [products::<0>(own, diagonal), products::<HALF>(own, diagonal)];
            own[..HALF].copy_from_slice(&low);
            own[HALF..].copy_from_slice(&high);
        }
        Some(())
    }

    /// Solves in place.
    pub(super) fn solve(&self, vector: &mut [f64]) {
        let panels = self.first.len();
        let mut single = vec![0.0; panels * ROWS];
        single.iter_mut().zip(vector.iter()).for_each(|(single, value)| *single = *value as f32);
        for panel in 0..panels {
            let (columns, diagonal) = self.panel(&self.columns, panel);
            let (known, own) = single.split_at_mut(panel * ROWS);
            let left = less(own, &sum(columns, &known[self.first[panel] * ROWS..]));
            own[..ROWS].copy_from_slice(&sum(diagonal, &left));
        }
        for panel in (0..panels).rev() {
            let (blocks, diagonal) = self.panel(&self.turned, panel);
            let (above, own) = single.split_at_mut(panel * ROWS);
            let found = sum(diagonal, &own[..ROWS]);
            own[..ROWS].copy_from_slice(&found);
            let above = above[self.first[panel] * ROWS..].as_chunks_mut::<ROWS>().0;
            for (above, block) in above.iter_mut().zip(blocks.as_chunks::<ROWS>().0) {
                *above = less(above, &sum(block, &found));
            }
        }
        vector.iter_mut().zip(single).for_each(|(value, single)| *value = f64::from(single));
    }

    /// Of all columns, or all of the blocks turned over, those of a panel before the diagonal block, and those of that.
    fn panel<'a>(&self, all: &'a [Column], panel: usize) -> (&'a [Column], &'a [Column]) {
        let own = &all[self.start[panel]..self.start[panel + 1]];
        own.split_at(own.len() - ROWS)
    }
}

fn turned(block: &[Column; ROWS]) -> [Column; ROWS] {
    std::array::from_fn(|row| std::array::from_fn(|column| block[column][row]))
}

fn less(from: &[f32], sums: &Column) -> Column {
    let from = &from[..ROWS];
    std::array::from_fn(|row| from[row] - sums[row])
}

/// `Σ a bᵀ` over pairs of columns, of half of the entries of the second, those from `FROM` on.
fn products<const FROM: usize>(a: &[Column], b: &[Column]) -> [Column; HALF] {
    let mut sums = [[0.0; ROWS]; HALF];
    for (a, b) in a.iter().zip(b) {
        let mut column = 0;
        while column < HALF {
            let s = sums[column];
            let f = b[FROM + column];
            sums[column] = [
                s[0] + a[0] * f,
                s[1] + a[1] * f,
                s[2] + a[2] * f,
                s[3] + a[3] * f,
                s[4] + a[4] * f,
                s[5] + a[5] * f,
                s[6] + a[6] * f,
                s[7] + a[7] * f,
            ];
            column += 1;
        }
    }
    sums
}

/// Takes `Σ a bᵀ` off a block.
fn subtract(block: &mut [Column], a: &[Column], b: &[Column]) {
    let [low, high] = [products::<0>(a, b), products::<HALF>(a, b)];
    for (column, sums) in block.iter_mut().zip(low.iter().chain(&high)) {
        for (value, sum) in column.iter_mut().zip(sums) {
            *value -= sum;
        }
    }
}

/// `Σ a x` over columns and values.
// Within a loop over blocks the compiler would take four blocks at once, and gather what lies side by side.
#[inline(never)]
fn sum(columns: &[Column], values: &[f32]) -> Column {
    // Two sums, so that one need not wait for the other.
    let mut sums = [[0.0; ROWS]; 2];
    let (pairs, two) = (columns.as_chunks::<2>().0, values.as_chunks::<2>().0);
    for (pair, values) in pairs.iter().zip(two) {
        let mut k = 0;
        while k < 2 {
            let (s, a, x) = (sums[k], &pair[k], values[k]);
            sums[k] = [
                s[0] + a[0] * x,
                s[1] + a[1] * x,
                s[2] + a[2] * x,
                s[3] + a[3] * x,
                s[4] + a[4] * x,
                s[5] + a[5] * x,
                s[6] + a[6] * x,
                s[7] + a[7] * x,
            ];
            k += 1;
        }
    }
    std::array::from_fn(|row| sums[0][row] + sums[1][row])
}

/// Makes the inverse of its lower factor of a block; `None` when it is not positive definite.
fn invert(block: &mut [Column]) -> Option<()> {
    let mut shares = [0.0; ROWS];
    for k in 0..ROWS {
        let diagonal = block[k][k];
        let mut column = block[k];
        for m in 0..k {
            let share = block[m][k];
            for row in k..ROWS {
                column[row] -= share * block[m][row];
            }
        }
        // Not above the least, and not a number neither.
        if column[k].partial_cmp(&(LEAST_PIVOT * diagonal)) != Some(Ordering::Greater) {
            return None;
        }
        let share = 1.0 / column[k].sqrt();
        shares[k] = share;
        block[k] = column.map(|value| value * share);
    }
    // Column by column: what is left of a column of ones is divided by each pivot in turn.
    let factor: [Column; ROWS] = std::array::from_fn(|k| block[k]);
    for k in 0..ROWS {
        let mut left = [0.0; ROWS];
        left[k] = 1.0;
        for m in k..ROWS {
            let value = left[m] * shares[m];
            left[m] = value;
            for row in m + 1..ROWS {
                left[row] -= value * factor[m][row];
            }
        }
        block[k] = left;
    }
    Some(())
}
