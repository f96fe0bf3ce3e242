//! Words and lines on the page.

use crate::report::plot::dash::{self, Pattern};
use crate::report::plot::font::{CAP_HEIGHT, Fonts, Weight};
use crate::report::plot::layout::{LABEL_SIZE, RIM, SUBTITLE_PITCH, SUBTITLE_SIZE, TITLE_PITCH, TITLE_SIZE};
use crate::report::plot::palette::{Colour, INK, MUTED};
use crate::report::plot::scene::{Area, Point, Scene, Shape, Text, at, text_area};

/// Size, weight and colour of a text.
#[derive(Clone, Copy)]
pub(super) struct Style {
    pub(super) size: f64,
    pub(super) weight: Weight,
    pub(super) colour: Colour,
}

pub(super) const LABEL: Style = Style { size: LABEL_SIZE, weight: Weight::Regular, colour: INK };
pub(super) const QUIET: Style = Style { colour: MUTED, ..LABEL };
pub(super) const BOLD: Style = Style { weight: Weight::Bold, ..LABEL };
/// Title of a picture, and the words below it.
pub(super) const TITLE: Style = Style { size: TITLE_SIZE, ..BOLD };
pub(super) const SUBTITLE: Style = Style { size: SUBTITLE_SIZE, ..QUIET };
/// Height of a letter over its size, from the top of a line to its baseline.
const TO_BASELINE: f64 = 0.82;

pub(super) struct Pen<'f> {
    pub(super) scene: Scene,
    pub(super) fonts: &'f Fonts,
}

impl<'f> Pen<'f> {
    /// An empty page.
    pub(super) fn new(width: f64, height: f64, fonts: &'f Fonts) -> Self {
        Self { scene: Scene { width, height, shapes: Vec::new() }, fonts }
    }

    /// The lines of the title and those below it, from the top of the page; where the next line would begin.
    pub(super) fn headings(&mut self, title: &[String], below: &[String]) -> f64 {
        let mut y = RIM;
        for line in title {
            self.write(line, TITLE, 0.0, at(RIM, y + TITLE_SIZE * TO_BASELINE));
            y += TITLE_PITCH;
        }
        for line in below {
            self.write(line, SUBTITLE, 0.0, at(RIM, y + SUBTITLE_SIZE * TO_BASELINE));
            y += SUBTITLE_PITCH;
        }
        y
    }

    pub(super) fn width(&self, text: &str, style: Style) -> f64 {
        self.fonts.width(text, style.size, style.weight)
    }

    /// Writes a text of which the given share lies left of the point.
    pub(super) fn write(&mut self, text: &str, style: Style, share: f64, point: Point) {
        let width = self.width(text, style);
        let start = at(point.x - share * width, point.y);
        let Style { size, weight, colour } = style;
        self.scene.text(Text { text: text.to_owned(), start, width, size, weight, colour });
    }

    /// The box of a text centred on a point.
    pub(super) fn centred(&self, text: &str, style: Style, centre: Point) -> Area {
        let width = self.width(text, style);
        text_area(at(centre.x - width / 2.0, centre.y + CAP_HEIGHT * style.size / 2.0), width, style.size)
    }

    pub(super) fn dashed(&mut self, line: &[Point], pattern: Pattern, width: f64, colour: Colour) {
        let pieces = dash::pieces(line, pattern).into_iter();
        self.scene.shapes.extend(pieces.map(|points| Shape::Line { points, width, colour }));
    }

    /// A closed line.
    pub(super) fn around(&mut self, outline: &[Point], width: f64, colour: Colour) {
        self.scene.line(simple(&closed(outline)), width, colour);
    }

    pub(super) fn disc(&mut self, centre: Point, radius: f64, colour: Colour) {
        self.scene.fill(circle(centre, radius), colour);
    }
}

/// A line without the points that lie straight between their neighbours.
pub(super) fn simple(line: &[Point]) -> Vec<Point> {
    const STRAIGHT: f64 = 0.03;
    let mut kept: Vec<Point> = Vec::new();
    for (k, point) in line.iter().enumerate() {
        let between = kept.last().zip(line.get(k + 1)).is_some_and(|(from, to)| {
            let (dx, dy) = (to.x - from.x, to.y - from.y);
            let off = (dx * (point.y - from.y) - dy * (point.x - from.x)).abs();
            off <= STRAIGHT * dx.hypot(dy) && dx * (point.x - from.x) + dy * (point.y - from.y) >= 0.0
        });
        if !between {
            kept.push(*point);
        }
    }
    kept
}

/// The baseline that centres capitals on `y`.
pub(super) fn baseline(y: f64) -> f64 {
    y + CAP_HEIGHT * LABEL_SIZE / 2.0
}

pub(super) fn closed(outline: &[Point]) -> Vec<Point> {
    outline.iter().chain(outline.first()).copied().collect()
}

pub(super) fn circle(centre: Point, radius: f64) -> Vec<Point> {
    const CORNERS: u32 = 36;
    let turn = |k| std::f64::consts::TAU * f64::from(k) / f64::from(CORNERS);
    (0..CORNERS).map(|k| at(centre.x + radius * turn(k).cos(), centre.y + radius * turn(k).sin())).collect()
}

pub(super) fn rectangle(area: &Area) -> Vec<Point> {
    vec![at(area.left, area.top), at(area.right, area.top), at(area.right, area.bottom), at(area.left, area.bottom)]
}
