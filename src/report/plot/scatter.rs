//! Parts over their clearance at the seat, and below it what decides that clearance.

use super::font::{Fonts, Weight};
use super::layout::{LABEL_SIZE, RIM, SUBTITLE_PITCH, TITLE_PITCH, TITLE_SIZE, WIDTH};
use super::palette::{BAND, Colour, GRID, INK, LOOSEST, MIDDLE, MUTED, TIGHTEST};
use super::pen::{BOLD, LABEL, Pen, QUIET, Style, baseline};
use super::scene::{Picture, Point, Scene, at};
use super::units::{decimals_of, fixed, length_name, length_text, length_value, multiples, round_step};
use super::{PlotError, ScatterRequest};
use crate::plan::scatter::{Output, Sensitivity};
use crate::quantity::Length;
use std::ops::Range;

/// Heights: of the histogram, of what stands above and below it, of a row of the lower panel.
const BARS: f64 = 250.0;
const HEAD: f64 = 66.0;
const FOOT: f64 = 84.0;
const ROW: f64 = 38.0;
const BAR: f64 = 22.0;
/// Inputs that are shown, and the least total index of one.
const MOST: usize = 8;
const LEAST: f64 = 0.005;
/// Most room for names on the left, and for numbers on the right, of the lower panel.
const NAMES: f64 = 430.0;
const NUMBERS: f64 = 190.0;
/// Between a name and its bar.
const GAP: f64 = 12.0;
/// Least distance of two numbers along the clearance.
const PITCH: f64 = 90.0;

/// The whole picture.
pub(super) fn picture(request: &ScatterRequest, fonts: &Fonts) -> Result<Picture, PlotError> {
    if request.scatter.histogram.is_empty() {
        return Err(PlotError::NoPoints);
    }
    let page = Page::new(request, fonts);
    let description = page.describe();
    Ok(Picture { scene: page.draw(), title: request.title.to_owned(), description })
}

struct Page<'a> {
    request: &'a ScatterRequest<'a>,
    pen: Pen<'a>,
    title: Vec<String>,
    decisive: Option<&'a Sensitivity>,
    /// Inputs of the lower panel, the most decisive first.
    shown: Vec<usize>,
    /// Clearance at the left and at the right, in the unit of the axis.
    span: Range<f64>,
    top: f64,
    bottom: f64,
}

impl<'a> Page<'a> {
    fn new(request: &'a ScatterRequest<'a>, fonts: &'a Fonts) -> Self {
        let scatter = request.scatter;
        let title = fonts.wrap(request.title, TITLE_SIZE, Weight::Bold, WIDTH - 2.0 * RIM);
        let above = if request.subtitle.is_empty() { 0.0 } else { SUBTITLE_PITCH };
        let top = RIM + title.len() as f64 * TITLE_PITCH + above + HEAD;
        let decisive = scatter.sensitivities.iter().find(|found| found.output == Output::Clearance);
        let shown: Vec<usize> = decisive.map_or_else(Vec::new, |found| {
            found.ranked().into_iter().filter(|input| found.indices[*input].total >= LEAST).take(MOST).collect()
        });
        let bottom = top + BARS;
        let rows = if shown.is_empty() { 0.0 } else { 50.0 + ROW * shown.len() as f64 + 40.0 };
        let value = |length: Length| length_value(length, request.system);
        let (first, last) = (scatter.histogram[0].from, scatter.histogram[scatter.histogram.len() - 1].to);
        // Where parts touch and where they drop in belongs to the picture when it is near.
        let (mut low, mut high) = (value(first), value(last));
        let width = high - low;
        for mark in [0.0, value(scatter.placing_clearance)] {
            if mark > low - width && mark < high + width {
                (low, high) = (low.min(mark - 0.05 * width), high.max(mark + 0.05 * width));
            }
        }
        Self {
            request,
            pen: Pen::new(WIDTH, bottom + FOOT + rows, fonts),
            title,
            decisive,
            shown,
            span: low..high,
            top,
            bottom,
        }
    }

    fn x(&self, clearance: f64) -> f64 {
        RIM + (clearance - self.span.start) / (self.span.end - self.span.start) * (WIDTH - 2.0 * RIM)
    }

    /// Writes within the rims of the page.
    fn write(&mut self, text: &str, style: Style, share: f64, point: Point) {
        let width = self.pen.width(text, style);
        let start = (point.x - share * width).clamp(RIM, (WIDTH - RIM - width).max(RIM));
        self.pen.write(text, style, 0.0, at(start, point.y));
    }

    fn rectangle(&mut self, (left, right): (f64, f64), (top, bottom): (f64, f64), colour: Colour) {
        self.pen.scene.fill(vec![at(left, top), at(right, top), at(right, bottom), at(left, bottom)], colour);
    }

    fn draw(mut self) -> Scene {
        self.headings();
        self.axis();
        self.histogram();
        self.marks();
        if let Some(decisive) = self.decisive.filter(|_| !self.shown.is_empty()) {
            self.decides(decisive);
        }
        self.pen.scene
    }

    fn headings(&mut self) {
        self.pen.headings(&self.title, &[self.request.subtitle.to_owned()]);
    }

    fn axis(&mut self) {
        self.pen.scene.line(vec![at(RIM, self.bottom), at(WIDTH - RIM, self.bottom)], 1.5, MUTED);
        let span = self.span.clone();
        let step = round_step((span.end - span.start) * PITCH / (WIDTH - 2.0 * RIM));
        for clearance in multiples(span.start, span.end, step) {
            let x = self.x(clearance);
            self.pen.scene.line(vec![at(x, self.top), at(x, self.bottom)], 1.0, GRID);
            self.pen.scene.line(vec![at(x, self.bottom), at(x, self.bottom + 7.0)], 1.5, MUTED);
            self.write(&fixed(clearance, decimals_of(step)), QUIET, 0.5, at(x, self.bottom + 28.0));
        }
        let name = format!("clearance when it reaches the seat, {}", length_name(self.request.system));
        self.write(&name, QUIET, 0.5, at(WIDTH / 2.0, self.bottom + 58.0));
    }

    /// A bar across the placing clearance is cut there, so that the areas tell the shares.
    fn histogram(&mut self) {
        let scatter = self.request.scatter;
        let most = scatter.histogram.iter().map(|bar| bar.count).max().unwrap_or(1).max(1) as f64;
        let value = |length: Length| length_value(length, self.request.system);
        let placing = self.x(value(scatter.placing_clearance));
        for bar in &scatter.histogram {
            let (left, right) = (self.x(value(bar.from)), self.x(value(bar.to)) - 1.0);
            let top = self.bottom - bar.count as f64 / most * (BARS - 8.0);
            if left < placing {
                self.rectangle((left, right.min(placing)), (top, self.bottom), TIGHTEST);
            }
            if right > placing {
                self.rectangle((left.max(placing), right), (top, self.bottom), LOOSEST);
            }
        }
    }

    /// Where a part touches, and where it drops in.
    fn marks(&mut self) {
        let placing = self.request.scatter.placing_clearance;
        let told = format!("drops in from {}", length_text(placing, self.request.system));
        let value = length_value(placing, self.request.system);
        let marks = [(value, told, self.top - 10.0, 2.5), (0.0, "touches".to_owned(), self.top - 36.0, 1.5)];
        for (clearance, name, y, width) in marks {
            if !self.span.contains(&clearance) {
                continue;
            }
            let x = self.x(clearance);
            self.pen.scene.line(vec![at(x, y + 5.0), at(x, self.bottom)], width, INK);
            self.write(&name, LABEL, 0.5, at(x, y));
        }
    }

    /// Total index as an outlined bar, and within it what the input does alone, which is no more but for the estimate.
    fn decides(&mut self, decisive: &Sensitivity) {
        let top = self.bottom + FOOT + 26.0;
        self.write("what decides it: measure or control the first one first", BOLD, 0.0, at(RIM, top));
        let widest = self
            .shown
            .iter()
            .map(|input| self.pen.fonts.width(&self.request.scatter.inputs[*input].name, LABEL_SIZE, Weight::Regular));
        let names = widest.fold(0.0, f64::max).min(NAMES) + GAP;
        let (left, right) = (RIM + names, WIDTH - RIM - NUMBERS);
        let most = self.shown.first().map_or(1.0, |input| decisive.indices[*input].total).max(1e-9);
        let x = |share: f64| left + (share / most).clamp(0.0, 1.0) * (right - left);
        for (row, input) in self.shown.clone().into_iter().enumerate() {
            let index = &decisive.indices[input];
            let middle = top + 34.0 + ROW * row as f64;
            let (above, below) = (middle - BAR / 2.0, middle + BAR / 2.0);
            let name = self.request.scatter.inputs[input].name.clone();
            let base = baseline(middle);
            self.write(&name, LABEL, 1.0, at(left - GAP, base));
            self.rectangle((left, x(index.total)), (above, below), BAND);
            self.rectangle((left, x(index.alone())), (above, below), MIDDLE);
            let (a, b) = (at(left, above), at(x(index.total), below));
            self.pen.scene.line(vec![a, at(b.x, a.y), b, at(a.x, b.y), a], 1.5, MIDDLE);
            let per_cent = |share: f64| fixed((share * 100.0).clamp(0.0, 100.0), 0);
            let number = format!("{} %, {} alone", per_cent(index.total), per_cent(index.alone()));
            self.write(&number, QUIET, 0.0, at(x(index.total) + 10.0, base));
        }
        let y = top + 34.0 + ROW * self.shown.len() as f64 + 8.0;
        self.write("dark: alone; whole bar: with others; share of the variance", QUIET, 0.0, at(left, y));
    }

    fn describe(&self) -> String {
        let mut said = format!("{} Parts over their clearance at the seat.", self.request.subtitle);
        if let Some(decisive) = self.decisive {
            let each = self.shown.iter().map(|input| {
                let total = decisive.indices[*input].total * 100.0;
                format!("{} {total:.0} %", self.request.scatter.inputs[*input].name)
            });
            said.push_str(&format!(" What decides it: {}.", each.collect::<Vec<_>>().join(", ")));
        }
        said.trim().to_owned()
    }
}
