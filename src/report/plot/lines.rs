//! Clearance over one quantity: lines with their names beside them.

use super::column::spread;
use super::contour::{self, Kind, Mark};
use super::dash::{self, Pattern};
use super::frame::{Axis, Frame};
use super::palette::{Colour, INK, LOOSEST, MIDDLE, MUTED, TIGHTEST};
use super::pen::{LABEL, Style, baseline};
use super::scene::{Area, at};

/// Room for the names to the right of the field, and the least distance of two of them.
pub(super) const NAMES: f64 = 150.0;
const NAME_PITCH: f64 = 27.0;
const LEADER: f64 = 24.0;

/// Looks of lines that differ without colour, for as many as there are; then they begin anew, and their names tell.
const LOOKS: [(Colour, Option<Pattern>); 6] = [
    (MIDDLE, None),
    (TIGHTEST, Some(dash::SHORT)),
    (LOOSEST, Some(dash::LONG)),
    (INK, Some(dash::DASH_DOT)),
    (TIGHTEST, None),
    (LOOSEST, None),
];

/// A line with its name.
pub(super) struct Line {
    pub(super) name: String,
    pub(super) points: Vec<(f64, f64)>,
    pub(super) colour: Colour,
    pub(super) pattern: Option<Pattern>,
    pub(super) width: f64,
    /// A mark at each point; none for a plain line.
    pub(super) marks: Vec<Kind>,
}

/// The look of the line with this number.
pub(super) fn look(number: usize) -> (Colour, Option<Pattern>) {
    LOOKS[number % LOOKS.len()]
}

/// An axis upwards that shows all lines, zero, and the level where it is near.
pub(super) fn axis(name: String, lines: &[Line], level: Option<f64>) -> Axis {
    let all = lines.iter().flat_map(|line| line.points.iter().map(|point| point.1)).chain([0.0]).chain(level);
    let (low, high) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| (low.min(y), high.max(y)));
    let margin = 0.08 * (high - low).max(1e-3);
    Axis::over(name, low - margin, high + margin)
}

/// Lines from back to front, then their marks, then their names.
pub(super) fn draw(frame: &mut Frame<'_>, lines: &[Line], placing: Option<f64>) {
    frame.grid();
    let Area { left, right, .. } = frame.field;
    let level = |frame: &Frame<'_>, value: f64| [at(left, frame.y(value)), at(right, frame.y(value))];
    let zero = level(frame, 0.0);
    frame.pen.scene.line(zero.to_vec(), 3.0, INK);
    if let Some(placing) = placing {
        let line = level(frame, placing);
        frame.pen.dashed(&line, dash::DASH_DOT, 2.0, MUTED);
    }
    for line in lines {
        let points: Vec<_> = line.points.iter().map(|(x, y)| frame.at(*x, *y)).collect();
        match line.pattern {
            Some(pattern) => frame.pen.dashed(&points, pattern, line.width, line.colour),
            None => frame.pen.scene.line(points, line.width, line.colour),
        }
    }
    for line in lines {
        let marks: Vec<Mark> = line
            .points
            .iter()
            .zip(&line.marks)
            .map(|(place, kind)| Mark { place: *place, kind: *kind, label: String::new() })
            .collect();
        contour::marks(frame, &marks, &mut Vec::new());
    }
    names(frame, lines, placing);
}

/// The names of lines and levels at their right ends.
fn names(frame: &mut Frame<'_>, lines: &[Line], placing: Option<f64>) {
    let mut all: Vec<(f64, String, Colour)> = lines
        .iter()
        .filter_map(|line| line.points.last().map(|point| (frame.y(point.1), line.name.clone(), line.colour)))
        .collect();
    all.push((frame.y(0.0), "touches".to_owned(), INK));
    all.extend(placing.map(|placing| (frame.y(placing), "drops in".to_owned(), MUTED)));
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let wanted: Vec<f64> = all.iter().map(|(y, ..)| *y).collect();
    let heights = spread(&wanted, NAME_PITCH, (frame.field.top, frame.field.bottom));
    let right = frame.field.right;
    for ((y, name, colour), height) in all.into_iter().zip(heights) {
        if (height - y).abs() > 4.0 {
            frame.pen.scene.line(vec![at(right + 3.0, y), at(right + LEADER - 5.0, height)], 1.2, colour);
        }
        frame.pen.write(&name, Style { colour, ..LABEL }, 0.0, at(right + LEADER, baseline(height)));
    }
}
