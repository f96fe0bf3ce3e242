//! Names in a column right of a picture, with lines to what they name: no line crosses another.

use crate::report::plot::column::spread;
use crate::report::plot::palette::Colour;
use crate::report::plot::pen::{Pen, Style, baseline};
use crate::report::plot::scene::{Point, at};

/// Where the lines end, right of the picture, and where the names begin.
const LINE_END: f64 = 22.0;
const NAME: f64 = 28.0;

/// What is named: its place, its name, how that is written, and the colour of the line.
pub(super) type Named<'a> = (Point, &'a str, Style, Colour);

/// Names in a column right of `right`, at least `pitch` apart between two heights, with lines from their places.
pub(super) fn draw(pen: &mut Pen<'_>, named: &[Named<'_>], (right, pitch): (f64, f64), column: (f64, f64)) {
    let places: Vec<Point> = named.iter().map(|named| named.0).collect();
    for ((place, name, style, colour), y) in named.iter().zip(heights(&places, right + LINE_END, pitch, column)) {
        pen.scene.line(vec![*place, at(right + LINE_END, y)], 1.3, *colour);
        pen.write(name, *style, 0.0, at(right + NAME, baseline(y)));
    }
}

/// Heights of the names of some places, in the order of the places.
///
/// Of all orders of the names the one whose lines are shortest together is taken: two lines that cross are longer than the same
/// two with their ends exchanged, so that none do. There are four names at most, and so two dozen orders.
fn heights(places: &[Point], x: f64, pitch: f64, column: (f64, f64)) -> Vec<f64> {
    let mut best: Option<(f64, Vec<f64>)> = None;
    for order in orders(places.len()) {
        let wanted: Vec<f64> = order.iter().map(|&k| places[k].y).collect();
        let mut found = vec![0.0; places.len()];
        for (&k, y) in order.iter().zip(spread(&wanted, pitch, column)) {
            found[k] = y;
        }
        let long: f64 = places.iter().zip(&found).map(|(place, y)| (x - place.x).hypot(y - place.y)).sum();
        if best.as_ref().is_none_or(|(least, _)| long < *least) {
            best = Some((long, found));
        }
    }
    best.map_or_else(Vec::new, |(_, found)| found)
}

/// All orders of the first `count` numbers.
fn orders(count: usize) -> Vec<Vec<usize>> {
    let Some(last) = count.checked_sub(1) else { return vec![Vec::new()] };
    let with = |order: Vec<usize>| {
        (0..count).map(move |place| {
            let mut order = order.clone();
            order.insert(place, last);
            order
        })
    };
    orders(last).into_iter().flat_map(with).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Which side of the line from `a` to `b` a point lies on.
    fn side(a: Point, b: Point, p: Point) -> f64 {
        (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)
    }

    fn cross((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
        side(a, b, c) * side(a, b, d) < -1e-6 && side(c, d, a) * side(c, d, b) < -1e-6
    }

    proptest! {
        #[test]
        fn no_two_lines_cross(places in prop::collection::vec((0.0..700.0_f64, 0.0..400.0_f64), 0..=4)) {
            let places: Vec<Point> = places.into_iter().map(|(x, y)| at(x, y)).collect();
            let lines: Vec<(Point, Point)> =
                places.iter().zip(heights(&places, 722.0, 27.0, (10.0, 390.0))).map(|(p, y)| (*p, at(722.0, y))).collect();
            for (k, one) in lines.iter().enumerate() {
                for other in &lines[k + 1..] {
                    prop_assert!(!cross(*one, *other), "{:?}", lines);
                }
            }
        }
    }

    #[test]
    fn a_place_far_to_the_left_does_not_go_by_its_height_alone() {
        // By height the first would be named above the second, and its line would cut across that of the second.
        let places = [at(0.0, 100.0), at(700.0, 101.0)];
        let found = heights(&places, 722.0, 27.0, (10.0, 390.0));
        let lines = [(places[0], at(722.0, found[0])), (places[1], at(722.0, found[1]))];
        assert!(!cross(lines[0], lines[1]), "{found:?}");
    }
}
