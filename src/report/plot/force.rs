//! Force of the tightest case against depth: at once, after standing still for a while, and with all at one temperature.

use super::column::spread;
use super::dash::{self, Pattern};
use super::font::{Fonts, Weight};
use super::layout::{LEADER, RIM, SUBTITLE_PITCH, TITLE_PITCH, TITLE_SIZE, WIDTH};
use super::palette::{Colour, GRID, LOOSEST, MIDDLE, MUTED, TIGHTEST};
use super::pen::{LABEL, Pen, QUIET, Style, baseline};
use super::scene::{Picture, Scene, at};
use super::units::{decimals_of, fixed, multiples, round_step};
use super::{ForceRequest, PlotError};
use crate::quantity::{System, Toward, show_duration, show_force};
use std::slice;
use uom::si::force::{kilonewton, pound_force};
use uom::si::length::{inch, millimeter};

const HEIGHT: f64 = 600.0;
/// Height below the curves: numbers and name of the axis.
const FOOT: f64 = 78.0;
/// Room for the name of the force axis above the curves.
const HEAD: f64 = 40.0;
/// Least distance of two grid lines, and of two numbers along the depth.
const PITCH: (f64, f64) = (44.0, 90.0);
/// Distance of two names in the right margin, and their room.
const NAME_PITCH: f64 = 27.0;
const NAME_ROOM: f64 = 290.0;
/// Largest force that is drawn, kN; no press of a small shop comes near it.
const LARGEST_KN: f64 = 1e6;

/// A curve: straight from nothing at the mouth to its force at full depth.
struct Line {
    name: String,
    force: f64,
    pattern: Option<Pattern>,
    width: f64,
    colour: Colour,
}

/// The whole picture.
pub(super) fn picture(request: &ForceRequest, fonts: &Fonts) -> Result<Picture, PlotError> {
    let lines = lines(request);
    let most = lines.iter().map(|line| line.force).fold(0.0, f64::max);
    if most.is_nan() || most > LARGEST_KN * 1e3 {
        let what = "the force".to_owned();
        return Err(PlotError::OutOfRange { what, value: most, largest: LARGEST_KN * 1e3, unit: "on its axis" });
    }
    let description = describe(request, &lines);
    let page = Page::new(request, fonts, lines, most);
    Ok(Picture { scene: page.draw(), title: request.title.to_owned(), description })
}

fn force_unit(system: System) -> &'static str {
    if system == System::Metric { "kN" } else { "lbf" }
}

fn lines(request: &ForceRequest) -> Vec<Line> {
    let value = |force: crate::quantity::Force| match request.system {
        System::Metric => force.get::<kilonewton>(),
        System::Inch => force.get::<pound_force>(),
    };
    let patterns = [None, Some(dash::LONG), Some(dash::DASH_DOT), Some(dash::SHORT)];
    let told = |force| show_force(force, request.system, Toward::Up);
    let standing =
        request.course.after.iter().zip(patterns).enumerate().map(|(number, (&(time, force), pattern))| Line {
            name: if number == 0 {
                format!("at once, {}", told(force))
            } else {
                format!("after {}, {}", show_duration(time, Toward::Nearest), told(force))
            },
            force: value(force),
            pattern,
            width: 3.5,
            colour: if number == 0 { LOOSEST } else { TIGHTEST },
        });
    let shop = request.course.at_shop;
    let last = Line {
        name: format!("shop heat, {}", told(shop)),
        force: value(shop),
        pattern: None,
        width: 4.5,
        colour: MIDDLE,
    };
    standing.chain([last]).collect()
}

fn describe(request: &ForceRequest, lines: &[Line]) -> String {
    let each: Vec<&str> = lines.iter().map(|line| line.name.as_str()).collect();
    format!("{} Force of the tightest case at full depth: {}.", request.subtitle, each.join("; ")).trim().to_owned()
}

struct Page<'a> {
    pen: Pen<'a>,
    lines: Vec<Line>,
    title: Vec<String>,
    subtitle: String,
    system: System,
    depth: f64,
    most: f64,
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl<'a> Page<'a> {
    fn new(request: &ForceRequest, fonts: &'a Fonts, lines: Vec<Line>, most: f64) -> Self {
        let title = fonts.wrap(request.title, TITLE_SIZE, Weight::Bold, WIDTH - 2.0 * RIM);
        let rows = title.len() as f64;
        let top = RIM + rows * TITLE_PITCH + if request.subtitle.is_empty() { 0.0 } else { SUBTITLE_PITCH } + HEAD;
        let height = HEIGHT.max(top + 330.0 + FOOT);
        let depth = match request.system {
            System::Metric => request.course.depth.get::<millimeter>(),
            System::Inch => request.course.depth.get::<inch>(),
        };
        Self {
            pen: Pen::new(WIDTH, height, fonts),
            lines,
            title,
            subtitle: request.subtitle.to_owned(),
            system: request.system,
            depth,
            // A seat without force still has an axis.
            most: if most > 0.0 { 1.08 * most } else { 1.0 },
            left: RIM + 70.0,
            right: WIDTH - RIM - NAME_ROOM,
            top,
            bottom: height - FOOT,
        }
    }

    fn x(&self, depth: f64) -> f64 {
        self.left + depth / self.depth * (self.right - self.left)
    }

    fn y(&self, force: f64) -> f64 {
        self.bottom - force / self.most * (self.bottom - self.top)
    }

    fn draw(mut self) -> Scene {
        self.headings();
        self.axes();
        self.curves();
        self.names();
        self.pen.scene
    }

    fn headings(&mut self) {
        self.pen.headings(&self.title, slice::from_ref(&self.subtitle));
        let name = format!("force of the tightest case, {}", force_unit(self.system));
        self.pen.write(&name, QUIET, 0.0, at(RIM, self.top - 14.0));
    }

    fn axes(&mut self) {
        let step = round_step(self.most * PITCH.0 / (self.bottom - self.top));
        for force in multiples(0.0, self.most, step) {
            let y = self.y(force);
            self.pen.scene.line(vec![at(self.left, y), at(self.right, y)], 1.0, GRID);
            let number = at(self.left - 10.0, baseline(y));
            self.pen.write(&fixed(force, decimals_of(step)), QUIET, 1.0, number);
        }
        self.pen.scene.line(vec![at(self.left, self.bottom), at(self.right, self.bottom)], 1.5, MUTED);
        let step = round_step(self.depth * PITCH.1 / (self.right - self.left));
        for depth in multiples(0.0, self.depth, step) {
            let x = self.x(depth);
            self.pen.scene.line(vec![at(x, self.bottom), at(x, self.bottom + 7.0)], 1.5, MUTED);
            self.pen.write(&fixed(depth, decimals_of(step)), QUIET, 0.5, at(x, self.bottom + 28.0));
        }
        let unit = if self.system == System::Metric { "mm" } else { "in" };
        let middle = at((self.left + self.right) / 2.0, self.bottom + 58.0);
        self.pen.write(&format!("depth in the seat, {unit}"), QUIET, 0.5, middle);
    }

    fn curves(&mut self) {
        for line in &self.lines {
            let ends = [at(self.x(0.0), self.y(0.0)), at(self.x(self.depth), self.y(line.force))];
            match line.pattern {
                None => self.pen.scene.line(ends.to_vec(), line.width, line.colour),
                Some(pattern) => self.pen.dashed(&ends, pattern, line.width, line.colour),
            }
        }
    }

    /// The curves by name where they end, from the highest down.
    fn names(&mut self) {
        let mut names: Vec<(f64, String, Colour)> =
            self.lines.iter().map(|line| (self.y(line.force), line.name.clone(), line.colour)).collect();
        names.sort_by(|a, b| a.0.total_cmp(&b.0));
        let wanted: Vec<f64> = names.iter().map(|name| name.0).collect();
        let heights = spread(&wanted, NAME_PITCH, (self.top, self.bottom));
        for ((end, name, colour), y) in names.into_iter().zip(heights) {
            let (from, to) = (at(self.right + 3.0, end), at(self.right + LEADER - 5.0, y));
            self.pen.scene.line(vec![from, to], 1.2, colour);
            let start = at(self.right + LEADER, baseline(y));
            self.pen.write(&name, Style { colour, ..LABEL }, 0.0, start);
        }
    }
}
