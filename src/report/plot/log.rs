//! Readings of a piece over the curve that was expected and the one that was fitted.

use super::column::spread;
use super::dash;
use super::font::{Fonts, Weight};
use super::layout::{LEADER, RIM, SUBTITLE_PITCH, TITLE_PITCH, TITLE_SIZE, WIDTH};
use super::palette::{BAND, GRID, INK, LOOSEST, MIDDLE, MUTED, PAPER};
use super::pen::{LABEL, Pen, QUIET, Style, baseline};
use super::scene::{Picture, Point, Scene, at};
use super::units::{TimeUnit, decimals_of, fixed, multiples, round_step};
use super::{LogRequest, PlotError};
use crate::plan::log::CurvePoint;
use crate::quantity::{System, ThermodynamicTemperature};
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::time::second;

const HEIGHT: f64 = 620.0;
/// Height below the curves, room for the name of the axis above them, and for the names at their ends.
const FOOT: f64 = 78.0;
const HEAD: f64 = 40.0;
const NAME_ROOM: f64 = 210.0;
const NAME_PITCH: f64 = 27.0;
/// Least distance of two grid lines, and of two numbers along the time.
const PITCH: (f64, f64) = (44.0, 80.0);
/// Half the width of a reading's mark.
const MARK: f64 = 6.0;

/// The whole picture.
pub(super) fn picture(request: &LogRequest<'_>, fonts: &Fonts) -> Result<Picture, PlotError> {
    if request.piece.curve.len() < 2 || request.piece.points.is_empty() {
        return Err(PlotError::NoPoints);
    }
    let page = Page::new(request, fonts);
    let description = describe(request);
    Ok(Picture { scene: page.draw(), title: request.title.to_owned(), description })
}

fn degrees(temperature: ThermodynamicTemperature, system: System) -> f64 {
    match system {
        System::Metric => temperature.get::<degree_celsius>(),
        System::Inch => temperature.get::<degree_fahrenheit>(),
    }
}

fn describe(request: &LogRequest<'_>) -> String {
    let unit = if request.system == System::Metric { "°C" } else { "°F" };
    let reading = |point: &crate::plan::log::LogPoint| {
        format!("{:.0} s {} {unit}", point.time.get::<second>(), fixed(degrees(point.read, request.system), 1))
    };
    let readings: Vec<String> = request.piece.points.iter().map(reading).collect();
    format!("{} Readings: {}.", request.subtitle, readings.join("; ")).trim().to_owned()
}

struct Page<'a> {
    request: &'a LogRequest<'a>,
    pen: Pen<'a>,
    title: Vec<String>,
    unit: TimeUnit,
    longest: f64,
    span: (f64, f64),
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl<'a> Page<'a> {
    fn new(request: &'a LogRequest<'a>, fonts: &'a Fonts) -> Self {
        let title = fonts.wrap(request.title, TITLE_SIZE, Weight::Bold, WIDTH - 2.0 * RIM);
        let above = if request.subtitle.is_empty() { 0.0 } else { SUBTITLE_PITCH };
        let top = RIM + title.len() as f64 * TITLE_PITCH + above + HEAD;
        let height = HEIGHT.max(top + 360.0 + FOOT);
        let piece = request.piece;
        let longest = piece.curve.iter().map(|point| point.time.get::<second>()).fold(1.0, f64::max);
        let drawn = piece.curve.iter().flat_map(|p| p.expected.into_iter().chain(p.fitted));
        let all = drawn.chain(piece.points.iter().map(|point| point.read)).chain([piece.medium_temperature]);
        let (low, high) =
            all.map(|t| degrees(t, request.system)).fold((f64::MAX, f64::MIN), |(a, b), t| (a.min(t), b.max(t)));
        let room = 0.04 * (high - low).max(1.0);
        Self {
            request,
            pen: Pen::new(WIDTH, height, fonts),
            title,
            unit: TimeUnit::for_span(longest),
            longest,
            span: (low - room, high + room),
            left: RIM + 62.0,
            right: WIDTH - RIM - NAME_ROOM,
            top,
            bottom: height - FOOT,
        }
    }

    fn x(&self, seconds: f64) -> f64 {
        self.left + seconds / self.longest * (self.right - self.left)
    }

    fn y(&self, temperature: ThermodynamicTemperature) -> f64 {
        self.height_of(degrees(temperature, self.request.system))
    }

    fn height_of(&self, degrees: f64) -> f64 {
        self.bottom - (degrees - self.span.0) / (self.span.1 - self.span.0) * (self.bottom - self.top)
    }

    fn draw(mut self) -> Scene {
        self.headings();
        self.band();
        self.axes();
        self.curves();
        self.readings();
        self.names();
        self.pen.scene
    }

    fn headings(&mut self) {
        self.pen.headings(&self.title, &[self.request.subtitle.to_owned()]);
        let unit = if self.request.system == System::Metric { "°C" } else { "°F" };
        self.pen.write(&format!("temperature, {unit}"), QUIET, 0.0, at(RIM, self.top - 14.0));
    }

    fn line(&self, pick: impl Fn(&CurvePoint) -> Option<ThermodynamicTemperature>) -> Vec<Point> {
        let point = |p: &CurvePoint| Some(at(self.x(p.time.get::<second>()), self.y(pick(p)?)));
        self.request.piece.curve.iter().filter_map(point).collect()
    }

    /// What was expected, from the slow end to the quick one.
    fn band(&mut self) {
        let mut outline = self.line(|p| Some(p.expected[0]));
        let mut back = self.line(|p| Some(p.expected[2]));
        back.reverse();
        outline.extend(back);
        self.pen.scene.fill(outline, BAND);
    }

    fn axes(&mut self) {
        let step = round_step((self.span.1 - self.span.0) * PITCH.0 / (self.bottom - self.top));
        for value in multiples(self.span.0, self.span.1, step) {
            let y = self.height_of(value);
            self.pen.scene.line(vec![at(self.left, y), at(self.right, y)], 1.0, GRID);
            self.pen.write(&fixed(value, decimals_of(step)), QUIET, 1.0, at(self.left - 10.0, baseline(y)));
        }
        self.pen.scene.line(vec![at(self.left, self.bottom), at(self.right, self.bottom)], 1.5, MUTED);
        let (per, span) = (self.unit.seconds(), self.longest / self.unit.seconds());
        let least = span * PITCH.1 / (self.right - self.left);
        let step = self.unit.steps().iter().copied().find(|step| *step >= least).unwrap_or_else(|| round_step(least));
        for value in multiples(0.0, span, step) {
            let x = self.x(value * per);
            self.pen.scene.line(vec![at(x, self.bottom), at(x, self.bottom + 7.0)], 1.5, MUTED);
            self.pen.write(&fixed(value, decimals_of(step)), QUIET, 0.5, at(x, self.bottom + 28.0));
        }
        let name = format!("{} since it went in", self.unit.plural());
        self.pen.write(&name, QUIET, 0.5, at(f64::midpoint(self.left, self.right), self.bottom + 58.0));
    }

    fn curves(&mut self) {
        let medium = self.y(self.request.piece.medium_temperature);
        self.pen.dashed(&[at(self.left, medium), at(self.right, medium)], dash::SHORT, 1.5, MUTED);
        let middle = self.line(|p| Some(p.expected[1]));
        self.pen.dashed(&middle, dash::LONG, 2.5, LOOSEST);
        let fitted = self.line(|p| p.fitted);
        if fitted.len() > 1 {
            self.pen.scene.line(fitted, 3.5, MIDDLE);
        }
    }

    /// A reading is a diamond with a pale rim, so that it stands out from any curve, in grey as well.
    fn readings(&mut self) {
        for point in &self.request.piece.points {
            let (x, y) = (self.x(point.time.get::<second>()), self.y(point.read));
            let diamond = |r: f64| vec![at(x, y - r), at(x + r, y), at(x, y + r), at(x - r, y)];
            self.pen.scene.fill(diamond(MARK + 3.0), PAPER);
            self.pen.scene.fill(diamond(MARK), INK);
        }
    }

    /// Each curve by its name where it ends.
    fn names(&mut self) {
        let piece = self.request.piece;
        let Some(last) = piece.curve.last() else { return };
        let mut names = vec![
            (self.y(last.expected[1]), "expected, middle", LOOSEST),
            (self.y(piece.medium_temperature), "medium", MUTED),
        ];
        if let Some(fitted) = last.fitted {
            names.push((self.y(fitted), "fitted", MIDDLE));
        }
        if let Some(point) = piece.points.last() {
            names.push((self.y(point.read), "readings", INK));
        }
        names.sort_by(|a, b| a.0.total_cmp(&b.0));
        let wanted: Vec<f64> = names.iter().map(|name| name.0).collect();
        for ((end, name, colour), y) in names.into_iter().zip(spread(&wanted, NAME_PITCH, (self.top, self.bottom))) {
            self.pen.scene.line(vec![at(self.right + 3.0, end), at(self.right + LEADER - 5.0, y)], 1.2, colour);
            let start = at(self.right + LEADER, baseline(y));
            self.pen.write(name, Style { colour, ..LABEL }, 0.0, start);
        }
    }
}
