//! Values on a grid, read by linear interpolation along each axis: what is monotone on the grid stays so between.

/// Axes of one table at most.
const MOST_AXES: usize = 4;

/// Even steps from one value to another; a single value where both are the same.
#[derive(Clone, Copy, Debug)]
pub(super) struct Axis {
    low: f64,
    step: f64,
    count: usize,
}

impl Axis {
    /// `steps` even steps from `low` to `high`.
    pub(super) fn new((low, high): (f64, f64), steps: usize) -> Self {
        let steps = if high > low { steps.max(1) } else { 0 };
        Self { low, step: if steps > 0 { (high - low) / steps as f64 } else { 1.0 }, count: steps + 1 }
    }

    pub(super) fn count(self) -> usize {
        self.count
    }

    pub(super) fn at(self, place: usize) -> f64 {
        self.low + self.step * place as f64
    }

    pub(super) fn values(self) -> impl Iterator<Item = f64> {
        (0..self.count).map(move |place| self.at(place))
    }

    /// The place at or below a value, and how far it is to the next one; the ends hold beyond the axis.
    pub(super) fn locate(self, value: f64) -> (usize, f64) {
        if self.count < 2 {
            return (0, 0.0);
        }
        let places = ((value - self.low) / self.step).clamp(0.0, (self.count - 1) as f64);
        // Neither negative nor above the count.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let place = (places as usize).min(self.count - 2);
        (place, places - place as f64)
    }
}

/// A row of values for every point of a grid.
#[derive(Clone, Debug)]
pub(super) struct Table {
    axes: Vec<Axis>,
    width: usize,
    values: Vec<f64>,
}

/// The points of the grid around a place, with their weights.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corners {
    at: [(usize, f64); 1 << MOST_AXES],
    count: usize,
}

impl Table {
    /// A table from the rows of its points, the last axis running fastest.
    pub(super) fn new(axes: Vec<Axis>, rows: Vec<Vec<f64>>) -> Self {
        let width = rows.first().map_or(0, Vec::len);
        debug_assert!(axes.len() <= MOST_AXES && rows.len() == points(&axes));
        Self { axes, width, values: rows.into_iter().flatten().collect() }
    }

    /// The coordinates of a point by its number.
    pub(super) fn coordinates(axes: &[Axis], number: usize) -> Vec<f64> {
        let mut rest = number;
        let mut found: Vec<f64> = axes
            .iter()
            .rev()
            .map(|axis| {
                let place = rest % axis.count();
                rest /= axis.count();
                axis.at(place)
            })
            .collect();
        found.reverse();
        found
    }

    /// The points around a place.
    #[inline]
    pub(super) fn corners(&self, place: &[f64]) -> Corners {
        let mut corners = Corners { at: [(0, 1.0); 1 << MOST_AXES], count: 1 };
        for (axis, &value) in self.axes.iter().zip(place) {
            if axis.count < 2 {
                continue;
            }
            let (below, share) = axis.locate(value);
            for i in 0..corners.count {
                let (offset, weight) = corners.at[i];
                let offset = offset * axis.count + below;
                corners.at[i] = (offset, weight * (1.0 - share));
                corners.at[corners.count + i] = (offset + 1, weight * share);
            }
            corners.count *= 2;
        }
        for corner in &mut corners.at[..corners.count] {
            corner.0 *= self.width;
        }
        corners
    }

    /// One column at a place.
    #[inline]
    pub(super) fn read(&self, corners: &Corners, column: usize) -> f64 {
        corners.at[..corners.count].iter().map(|(offset, weight)| weight * self.values[offset + column]).sum()
    }

    /// Between two columns.
    #[inline]
    pub(super) fn between(&self, corners: &Corners, (column, share): (usize, f64)) -> f64 {
        if share <= 0.0 {
            return self.read(corners, column);
        }
        let at = |(offset, weight): &(usize, f64)| {
            let (a, b) = (self.values[offset + column], self.values[offset + column + 1]);
            weight * (a + share * (b - a))
        };
        corners.at[..corners.count].iter().map(at).sum()
    }

    /// Least and most of all values.
    pub(super) fn ends(&self) -> (f64, f64) {
        self.values.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), &v| (low.min(v), high.max(v)))
    }
}

/// Points of a grid.
pub(super) fn points(axes: &[Axis]) -> usize {
    axes.iter().map(|axis| axis.count()).product()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_of_an_axis_hold_beyond_it() {
        let axis = Axis::new((2.0, 3.5), 3);
        for (value, place, share) in
            [(1.0, 0, 0.0), (2.0, 0, 0.0), (2.25, 0, 0.5), (2.5, 1, 0.0), (3.4, 2, 0.8), (3.5, 2, 1.0), (9.0, 2, 1.0)]
        {
            let (found, part) = axis.locate(value);
            assert!(found == place && (part - share).abs() < 1e-12, "{value}: {found} {part}");
        }
        assert_eq!(Axis::new((2.0, 2.0), 3).locate(7.0).0, 0);
    }

    #[test]
    fn a_plane_is_read_exactly_between_its_points_and_an_axis_of_one_value_takes_no_part() {
        let axes = vec![Axis::new((0.0, 2.0), 4), Axis::new((5.0, 5.0), 3), Axis::new((-1.0, 1.0), 3)];
        let plane = |at: &[f64]| vec![3.0 * at[0] - 2.0 * at[2] + 1.0, at[0] * at[2]];
        let rows = (0..points(&axes)).map(|number| plane(&Table::coordinates(&axes, number))).collect();
        let table = Table::new(axes, rows);
        for place in [[0.3, 5.0, 0.9], [2.0, 5.0, 1.0], [0.0, 5.0, -1.0], [1.77, 5.0, -0.2]] {
            let corners = table.corners(&place);
            assert!((table.read(&corners, 0) - plane(&place)[0]).abs() < 1e-12);
            // Bilinear functions are exact as well.
            assert!((table.read(&corners, 1) - plane(&place)[1]).abs() < 0.2);
        }
    }
}
