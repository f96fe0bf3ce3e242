//! A line of some width as closed outlines: a bar for each piece, a disc at each corner, square ends.

use super::scene::{Point, at};
use std::f64::consts::TAU;

const DISC_CORNERS: u32 = 16;

/// Outlines that together cover a line of `width`; all turn the same way, so that they add where they overlap.
pub(super) fn outlines(line: &[Point], width: f64) -> Vec<Vec<Point>> {
    let half = width / 2.0;
    let bars = line.windows(2).filter_map(|ends| bar(ends[0], ends[1], half));
    let corners = line.iter().skip(1).take(line.len().saturating_sub(2));
    bars.chain(corners.map(|corner| disc(*corner, half))).collect()
}

/// None for a piece of no length, which covers nothing.
fn bar(from: Point, to: Point, half: f64) -> Option<Vec<Point>> {
    let length = (to.x - from.x).hypot(to.y - from.y);
    if length < 1e-9 {
        return None;
    }
    let (x, y) = ((from.y - to.y) / length * half, (to.x - from.x) / length * half);
    Some(vec![at(from.x - x, from.y - y), at(to.x - x, to.y - y), at(to.x + x, to.y + y), at(from.x + x, from.y + y)])
}

fn disc(centre: Point, radius: f64) -> Vec<Point> {
    let corner = |i| TAU * f64::from(i) / f64::from(DISC_CORNERS);
    (0..DISC_CORNERS).map(|i| at(centre.x + radius * corner(i).cos(), centre.y + radius * corner(i).sin())).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn signed_area(outline: &[Point]) -> f64 {
        let next = outline.iter().cycle().skip(1);
        outline.iter().zip(next).map(|(a, b)| a.x * b.y - b.x * a.y).sum::<f64>() / 2.0
    }

    /// Outlines of opposite turn would cancel and leave holes in the line.
    #[test]
    fn all_outlines_turn_the_same_way() {
        let line = [at(0.0, 0.0), at(10.0, 0.0), at(3.0, 7.0), at(3.0, 7.0), at(-8.0, -9.0)];
        let outlines = outlines(&line, 4.0);
        assert_eq!(outlines.len(), 3 + 3);
        assert!(outlines.iter().all(|outline| signed_area(outline) > 0.0));
        assert!((signed_area(&outlines[0]) - 40.0).abs() < 1e-9);
    }
}
