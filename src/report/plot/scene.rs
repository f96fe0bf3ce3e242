//! A picture as a list of shapes in px of the drawing, before it becomes SVG or PNG.

use super::font::{ASCENT, DESCENT, Weight};
use super::palette::Colour;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub(super) x: f64,
    pub(super) y: f64,
}

pub(super) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// A box with its sides along the axes; y grows downwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Area {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

impl Area {
    pub(super) fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    pub(super) fn contains(&self, other: &Self) -> bool {
        self.left <= other.left && self.right >= other.right && self.top <= other.top && self.bottom >= other.bottom
    }

    pub(super) fn grown(self, by: f64) -> Self {
        Self { left: self.left - by, top: self.top - by, right: self.right + by, bottom: self.bottom + by }
    }

    /// Whether the straight line from `from` to `to` touches the box (clipping after Liang and Barsky, from memory).
    pub(super) fn is_crossed_by(&self, from: Point, to: Point) -> bool {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for (step, room) in
            [(-dx, from.x - self.left), (dx, self.right - from.x), (-dy, from.y - self.top), (dy, self.bottom - from.y)]
        {
            if step.abs() < f64::EPSILON {
                if room < 0.0 {
                    return false;
                }
            } else if step < 0.0 {
                enters = enters.max(room / step);
            } else {
                leaves = leaves.min(room / step);
            }
        }
        enters <= leaves
    }
}

#[derive(Clone, Debug)]
pub(super) struct Text {
    pub(super) text: String,
    /// Left end of the baseline.
    pub(super) start: Point,
    pub(super) width: f64,
    pub(super) size: f64,
    pub(super) weight: Weight,
    pub(super) colour: Colour,
}

impl Text {
    /// The box that the letters take.
    pub(super) fn area(&self) -> Area {
        text_area(self.start, self.width, self.size)
    }
}

/// The box of a text of `width` at `size` that starts at `start` on its baseline.
pub(super) fn text_area(start: Point, width: f64, size: f64) -> Area {
    Area { left: start.x, right: start.x + width, top: start.y - ASCENT * size, bottom: start.y + DESCENT * size }
}

#[derive(Clone, Debug)]
pub(super) enum Shape {
    Fill { outline: Vec<Point>, colour: Colour },
    Line { points: Vec<Point>, width: f64, colour: Colour },
    Text(Text),
}

/// A scene with the words that stand for it.
#[derive(Clone, Debug)]
pub(super) struct Picture {
    pub(super) scene: Scene,
    pub(super) title: String,
    pub(super) description: String,
}

/// Shapes in the order in which they are painted.
#[derive(Clone, Debug)]
pub(super) struct Scene {
    pub(super) width: f64,
    pub(super) height: f64,
    pub(super) shapes: Vec<Shape>,
}

impl Scene {
    pub(super) fn fill(&mut self, outline: Vec<Point>, colour: Colour) {
        self.shapes.push(Shape::Fill { outline, colour });
    }

    pub(super) fn line(&mut self, points: Vec<Point>, width: f64, colour: Colour) {
        self.shapes.push(Shape::Line { points, width, colour });
    }

    pub(super) fn text(&mut self, text: Text) {
        self.shapes.push(Shape::Text(text));
    }

    #[cfg(test)]
    pub(super) fn texts(&self) -> impl Iterator<Item = &Text> {
        self.shapes.iter().filter_map(|shape| if let Shape::Text(text) = shape { Some(text) } else { None })
    }
}
