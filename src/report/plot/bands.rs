//! Regions of a mesh in which a value is above a level, as closed outlines, and the lines that bound them.
//!
//! Each triangle is cut where its value, straight along its sides, passes the level; sides that two cut triangles share
//! cancel, and what is left is chained into loops. So a region is painted as one shape, without seams between triangles.

use crate::report::plot::scene::{Point, at};
use std::collections::BTreeMap;

/// A corner of a region: a node twice, or the two nodes between which a side is cut, lower number first.
type Corner = (usize, usize);

/// Triangles with a value at each node.
#[derive(Clone, Debug, Default)]
pub(super) struct Surface {
    pub(super) points: Vec<Point>,
    pub(super) values: Vec<f64>,
    /// Nodes of each triangle; all turn the same way.
    pub(super) triangles: Vec<[usize; 3]>,
}

/// Triangles of an 8-node element: one at each corner, two in the middle.
const TRIANGLES: [[usize; 3]; 6] = [[0, 4, 7], [4, 1, 5], [5, 2, 6], [6, 3, 7], [4, 5, 6], [4, 6, 7]];

impl Surface {
    pub(super) fn add(&mut self, element: &[usize; 8]) {
        self.triangles.extend(TRIANGLES.map(|corners| corners.map(|corner| element[corner])));
    }

    /// Loops around the whole surface.
    pub(super) fn outline(&self) -> Vec<Vec<Point>> {
        self.loops(f64::NEG_INFINITY).iter().map(|corners| self.placed(corners, 0.0)).collect()
    }

    /// The region above a level as one outline; loops are joined by bridges of no width, so that holes stay open.
    pub(super) fn above(&self, level: f64) -> Vec<Point> {
        let mut joined: Vec<Point> = Vec::new();
        let mut home = None;
        for corners in self.loops(level) {
            let points = self.placed(&corners, level);
            joined.extend(&points);
            joined.push(points[0]);
            joined.push(*home.get_or_insert(points[0]));
        }
        joined
    }

    /// The lines along which the value has a level.
    pub(super) fn contours(&self, level: f64) -> Vec<Vec<Point>> {
        let cut = |corner: &Corner| corner.0 != corner.1;
        let mut lines = Vec::new();
        for corners in self.loops(level) {
            // A loop begins where the line leaves the rim, when it does.
            let from = (0..corners.len()).find(|&k| !cut(&corners[k])).unwrap_or(0);
            let mut line: Vec<Corner> = Vec::new();
            for k in 0..=corners.len() {
                let corner = corners[(from + k) % corners.len()];
                let bounds =
                    line.last().is_none_or(|before| cut(before) && cut(&corner) && self.share(before, &corner));
                if !bounds {
                    lines.push(std::mem::take(&mut line));
                }
                line.push(corner);
            }
            lines.push(line);
        }
        lines.iter().filter(|line| line.len() > 1).map(|line| self.placed(line, level)).collect()
    }

    /// Whether two cut sides belong to one triangle: three nodes between them.
    fn share(&self, a: &Corner, b: &Corner) -> bool {
        [a.0, a.1].iter().filter(|node| **node == b.0 || **node == b.1).count() == 1
    }

    fn placed(&self, corners: &[Corner], level: f64) -> Vec<Point> {
        corners.iter().map(|corner| self.place(*corner, level)).collect()
    }

    fn place(&self, (a, b): Corner, level: f64) -> Point {
        let (from, to) = (self.points[a], self.points[b]);
        if a == b {
            return from;
        }
        let share = (level - self.values[a]) / (self.values[b] - self.values[a]);
        at(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y))
    }

    fn loops(&self, level: f64) -> Vec<Vec<Corner>> {
        let mut sides: BTreeMap<(Corner, Corner), usize> = BTreeMap::new();
        for triangle in &self.triangles {
            let corners = self.cut(triangle, level);
            for (from, to) in corners.iter().zip(corners.iter().cycle().skip(1)) {
                match sides.get_mut(&(*to, *from)) {
                    Some(count) if *count > 1 => *count -= 1,
                    Some(_) => drop(sides.remove(&(*to, *from))),
                    None => *sides.entry((*from, *to)).or_default() += 1,
                }
            }
        }
        chained(sides.into_keys())
    }

    /// The part of a triangle that lies above the level.
    fn cut(&self, triangle: &[usize; 3], level: f64) -> Vec<Corner> {
        let mut corners = Vec::with_capacity(4);
        for (&from, &to) in triangle.iter().zip(triangle.iter().cycle().skip(1)) {
            let (inside, next) = (self.values[from] >= level, self.values[to] >= level);
            if inside {
                corners.push((from, from));
            }
            if inside != next {
                corners.push((from.min(to), from.max(to)));
            }
        }
        corners
    }
}

/// Loops from sides that each lead from one corner to the next.
fn chained(sides: impl Iterator<Item = (Corner, Corner)>) -> Vec<Vec<Corner>> {
    let mut next: BTreeMap<Corner, Vec<Corner>> = BTreeMap::new();
    for (from, to) in sides {
        next.entry(from).or_default().push(to);
    }
    let mut loops = Vec::new();
    while let Some(&start) = next.keys().next() {
        let mut corners = Vec::new();
        let mut corner = start;
        while let Some(ends) = next.get_mut(&corner) {
            corners.push(corner);
            let end = ends.pop();
            if ends.is_empty() {
                next.remove(&corner);
            }
            let Some(end) = end else { break };
            corner = end;
        }
        if corners.len() > 2 {
            loops.push(corners);
        }
    }
    loops
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Nine nodes of one 8-node element and its value `x`.
    fn square() -> Surface {
        let places = [[0.0, 0.0], [2.0, 0.0], [2.0, 2.0], [0.0, 2.0], [1.0, 0.0], [2.0, 1.0], [1.0, 2.0], [0.0, 1.0]];
        let points: Vec<Point> = places.iter().map(|[x, y]| at(*x, *y)).collect();
        let mut surface = Surface { values: points.iter().map(|p| p.x).collect(), points, triangles: Vec::new() };
        surface.add(&[0, 1, 2, 3, 4, 5, 6, 7]);
        surface
    }

    fn area(outline: &[Point]) -> f64 {
        let next = outline.iter().cycle().skip(1);
        outline.iter().zip(next).map(|(a, b)| a.x * b.y - b.x * a.y).sum::<f64>() / 2.0
    }

    #[test]
    fn a_region_has_the_area_above_its_level() {
        for level in [-1.0, 0.25, 1.0, 1.5, 1.999] {
            let found = area(&square().above(level));
            let want = 2.0 * (2.0 - f64::max(level, 0.0));
            assert!((found - want).abs() < 1e-9, "above {level}: {found}, not {want}");
        }
        assert!(square().above(2.5).is_empty());
    }

    #[test]
    fn a_contour_runs_from_rim_to_rim() {
        let lines = square().contours(0.5);
        assert_eq!(lines.len(), 1, "{lines:?}");
        assert!(lines[0].iter().all(|p| (p.x - 0.5).abs() < 1e-9), "{lines:?}");
        let span = lines[0].iter().map(|p| p.y).fold((f64::INFINITY, 0.0_f64), |(a, b), y| (a.min(y), b.max(y)));
        assert!(span.0 < 1e-9 && (span.1 - 2.0).abs() < 1e-9, "{span:?}");
    }

    #[test]
    fn a_hole_stays_open() {
        let mut ring = square();
        // A pit in the middle of one side, above which nothing is left out, and a hump around it.
        ring.values = ring.points.iter().map(|p| (p.x - 1.0).abs() + (p.y - 1.0).abs()).collect();
        let whole = area(&ring.outline()[0]);
        assert!(area(&ring.above(1.5)) < whole);
        assert!((area(&ring.above(0.0)) - whole).abs() < 1e-9);
    }
}
