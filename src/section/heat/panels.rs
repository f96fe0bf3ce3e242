//! Cholesky factors in single precision, in panels of eight rows.
//!
//! What a factor of an [`crate::section::envelope::Envelope`] is for numbers that count, this is for the matrix of an implicit step, which is only
//! iterated with: half as long to read. Eight rows that begin at the same column are kept column by column, so that every sum
//! runs over eight rows at once in vector registers and none of it across one. The blocks on the diagonal are kept inverted:
//! a step through them is then a product like any other, where roots and divisions one after another took half of the time.

use super::system::Lower;
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

/// Which entries of a symmetric matrix are kept, by panels.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    rows: usize,
    /// First block of [`ROWS`] columns of each panel.
    first: Vec<usize>,
    /// Where the columns of each panel begin.
    start: Vec<usize>,
}

impl Layout {
    /// From the column of the first entry of each row.
    pub(super) fn new(of_rows: &[usize]) -> Self {
        let (mut first, mut start) = (Vec::new(), vec![0]);
        for (panel, group) in of_rows.chunks(ROWS).enumerate() {
            let least = group.iter().copied().min().unwrap_or_default() / ROWS;
            first.push(least);
            start.push(start[panel] + (panel + 1 - least) * ROWS);
        }
        Self { rows: of_rows.len(), first, start }
    }
}

/// A symmetric positive definite matrix, or its lower factor.
#[derive(Clone, Debug)]
pub(super) struct Panels {
    layout: Layout,
    /// Those of a panel from its first to its last row; of a factor those of the diagonal block are of its inverse.
    columns: Vec<Column>,
    /// Of a factor, each block turned over: rows where the columns were.
    turned: Vec<Column>,
}

impl Lower for Panels {
    fn add(&mut self, row: usize, column: usize, value: f64) {
        let (panel, place) = (row / ROWS, row % ROWS);
        let first = self.layout.start[panel] - self.layout.first[panel] * ROWS;
        self.columns[first + column][place] += value as f32;
    }
}

impl Panels {
    /// A matrix of zeros.
    pub(super) fn new(layout: &Layout) -> Self {
        let (panels, columns) = (layout.first.len(), layout.start[layout.first.len()]);
        let mut zeros = Self { layout: layout.clone(), columns: vec![[0.0; ROWS]; columns], turned: Vec::new() };
        // Rows behind the last are those of a matrix of ones.
        (layout.rows..panels * ROWS).for_each(|row| zeros.add(row, row, 1.0));
        zeros
    }

    /// The factor; `None` when the matrix is not positive definite in this precision.
    pub(super) fn factored(mut self) -> Option<Self> {
        (0..self.layout.first.len()).try_for_each(|panel| self.factor(panel))?;
        self.turned = self.columns.as_chunks::<ROWS>().0.iter().flat_map(turned).collect();
        Some(self)
    }

    /// Factors a panel, those above being done.
    fn factor(&mut self, panel: usize) -> Option<()> {
        let first = self.layout.first[panel];
        let (done, own) = self.columns.split_at_mut(self.layout.start[panel]);
        for block in first..=panel {
            let (known, own) = own.split_at_mut((block - first) * ROWS);
            let own = &mut own[..ROWS];
            if block == panel {
                subtract(own, known, known);
                return invert(own);
            }
            let from = first.max(self.layout.first[block]);
            let above = &done[self.layout.start[block]..self.layout.start[block + 1]];
            let (above, diagonal) = above[(from - self.layout.first[block]) * ROWS..].split_at((block - from) * ROWS);
            subtract(own, &known[(from - first) * ROWS..], above);
            // Nothing of the first columns comes from behind them.
            let low = products::<0>(&own[..HALF], &diagonal[..HALF]);
            let high = products::<HALF>(own, diagonal);
            own[..HALF].copy_from_slice(&low);
            own[HALF..].copy_from_slice(&high);
        }
        Some(())
    }

    /// Solves in place.
    pub(super) fn solve(&self, vector: &mut [f64]) {
        let panels = self.layout.first.len();
        let mut single = vec![0.0; panels * ROWS];
        single.iter_mut().zip(vector.iter()).for_each(|(single, value)| *single = *value as f32);
        for panel in 0..panels {
            let (columns, diagonal) = self.panel(&self.columns, panel);
            let (known, own) = single.split_at_mut(panel * ROWS);
            let left = less(own, &sum(columns, &known[self.layout.first[panel] * ROWS..]));
            own[..ROWS].copy_from_slice(&sum(diagonal, &left));
        }
        for panel in (0..panels).rev() {
            let (blocks, diagonal) = self.panel(&self.turned, panel);
            let (above, own) = single.split_at_mut(panel * ROWS);
            let found = sum(diagonal, &own[..ROWS]);
            own[..ROWS].copy_from_slice(&found);
            let above = above[self.layout.first[panel] * ROWS..].as_chunks_mut::<ROWS>().0;
            for (above, block) in above.iter_mut().zip(blocks.as_chunks::<ROWS>().0) {
                *above = less(above, &sum(block, &found));
            }
        }
        vector.iter_mut().zip(single).for_each(|(value, single)| *value = f64::from(single));
    }

    /// Of all columns, or all of the blocks turned over, those of a panel before the diagonal block, and those of that.
    fn panel<'a>(&self, all: &'a [Column], panel: usize) -> (&'a [Column], &'a [Column]) {
        let own = &all[self.layout.start[panel]..self.layout.start[panel + 1]];
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

/// `s + a x`, written out, so that the compiler keeps all rows in vector registers.
#[inline(always)]
fn plus(s: Column, a: &Column, x: f32) -> Column {
    [
        s[0] + a[0] * x,
        s[1] + a[1] * x,
        s[2] + a[2] * x,
        s[3] + a[3] * x,
        s[4] + a[4] * x,
        s[5] + a[5] * x,
        s[6] + a[6] * x,
        s[7] + a[7] * x,
    ]
}

/// `Σ a bᵀ` over pairs of columns, of half of the entries of the second, those from `FROM` on.
fn products<const FROM: usize>(a: &[Column], b: &[Column]) -> [Column; HALF] {
    let mut sums = [[0.0; ROWS]; HALF];
    for (a, b) in a.iter().zip(b) {
        let mut column = 0;
        while column < HALF {
            sums[column] = plus(sums[column], a, b[FROM + column]);
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
            sums[k] = plus(sums[k], &pair[k], values[k]);
            k += 1;
        }
    }
    std::array::from_fn(|row| sums[0][row] + sums[1][row])
}

/// Makes the inverse of its lower factor of a block; `None` when it is not positive definite.
///
/// Whole columns are worked on, also above the diagonal, which costs less than looking where it is.
fn invert(block: &mut [Column]) -> Option<()> {
    let mut shares = [0.0; ROWS];
    for k in 0..ROWS {
        let mut column = block[k];
        let diagonal = column[k];
        for above in &block[..k] {
            column = less(&column, &above.map(|value| above[k] * value));
        }
        // Not above the least, and not a number neither.
        if column[k].partial_cmp(&(LEAST_PIVOT * diagonal)) != Some(Ordering::Greater) {
            return None;
        }
        shares[k] = 1.0 / column[k].sqrt();
        block[k] = column.map(|value| value * shares[k]);
    }
    // Row after row of the inverse, from those above it: `w_k = (1_k - Σ l_km w_m) / l_kk`.
    let mut rows = [[0.0; ROWS]; ROWS];
    for k in 0..ROWS {
        let mut row = [0.0; ROWS];
        row[k] = 1.0;
        for (factor, above) in block.iter().zip(&rows[..k]) {
            row = less(&row, &above.map(|value| factor[k] * value));
        }
        rows[k] = row.map(|value| value * shares[k]);
    }
    block.copy_from_slice(&turned(&rows));
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::section::envelope::Envelope;

    /// Rows of a ragged band, as those of a mesh are, and not a whole number of panels.
    const SIZE: usize = 45;

    fn first(row: usize) -> usize {
        row.saturating_sub(9 + 7 * (row % 3))
    }

    fn fill(matrix: &mut impl Lower, diagonal: f64) {
        for row in 0..SIZE {
            for column in first(row)..row {
                matrix.add(row, column, -1.0 / (1.0 + (row * 7 + column * 3) as f64 % 5.0));
            }
            matrix.add(row, row, diagonal + row as f64);
        }
    }

    #[test]
    fn a_factor_solves_as_the_one_in_double_precision_does() {
        let firsts: Vec<usize> = (0..SIZE).map(first).collect();
        let (mut single, mut double) = (Panels::new(&Layout::new(&firsts)), Envelope::new(firsts));
        fill(&mut single, 12.0);
        fill(&mut double, 12.0);
        let right: Vec<f64> = (0..SIZE).map(|row| (row % 4) as f64 - 1.0).collect();
        let (mut found, mut exact) = (right.clone(), right);
        single.factored().unwrap().solve(&mut found);
        double.factor().unwrap().solve(&mut exact);
        let most = exact.iter().fold(0.0, |most: f64, value| most.max(value.abs()));
        for (row, (found, exact)) in found.iter().zip(&exact).enumerate() {
            assert!((found - exact).abs() < 1e-5 * most, "{row}: {found} and {exact}");
        }
    }

    #[test]
    fn what_is_not_positive_definite_has_no_factor() {
        let mut matrix = Panels::new(&Layout::new(&(0..SIZE).map(first).collect::<Vec<_>>()));
        fill(&mut matrix, -20.0);
        assert!(matrix.factored().is_none());
        let mut last = Panels::new(&Layout::new(&[0, 0]));
        [(0, 0, 1.0), (1, 0, 1.0), (1, 1, 1.0)]
            .into_iter()
            .for_each(|(row, column, value)| last.add(row, column, value));
        assert!(last.factored().is_none());
    }
}
