//! A seat in half section, to scale, with its fit drawn larger than it is.

use super::dash;
use super::font::{Fonts, Weight};
use super::layout::{LABEL_SIZE, RIM, SUBTITLE_SIZE, TITLE_PITCH, TITLE_SIZE, WIDTH};
use super::palette::{BAND, GRID, HAIRLINE, INK, MUTED, PAPER, TIGHTEST};
use super::pen::{BOLD, Pen, QUIET, baseline};
use super::scene::{Picture, Point, Scene, at};
use super::{PlotError, SeatRequest, column::spread};
use crate::plan::arrangement::{Arrangement, DrawnFit, DrawnKind, DrawnPart, Spot};
use crate::quantity::{Length, Toward, show_size, show_small_length};
use uom::si::length::millimeter;

/// Width of the column of names, and the largest height of the section.
const COLUMN: f64 = 400.0;
const FIELD: f64 = 290.0;
/// Distance of two names, and of the lines of one.
const PITCH: f64 = 53.0;
const LINE: f64 = 23.0;
/// Distance of two lines of a hatch.
const HATCH: f64 = 13.0;
/// How wide the widest fit is drawn, px.
const FIT: f64 = 11.0;
const FOOT: f64 = 57.0;

/// The whole picture.
pub(super) fn picture(request: &SeatRequest<'_>, fonts: &Fonts) -> Result<Picture, PlotError> {
    let page = Page::new(request, fonts).ok_or(PlotError::NoPoints)?;
    let description = page.description();
    Ok(Picture { scene: page.draw(), title: request.title.to_owned(), description })
}

struct Page<'a> {
    request: &'a SeatRequest<'a>,
    pen: Pen<'a>,
    title: Vec<String>,
    top: f64,
    /// px for a millimetre, where the stop lies, and where the axis.
    scale: f64,
    origin: Point,
    /// How many times the fit is drawn.
    times: f64,
}

impl<'a> Page<'a> {
    fn new(request: &'a SeatRequest<'a>, fonts: &'a Fonts) -> Option<Self> {
        let spots = || request.arrangement.parts.iter().flat_map(|part| &part.outline);
        let ends = |pick: fn(&Spot) -> Length| {
            let each = spots().map(|spot| pick(spot).get::<millimeter>());
            let ends = each.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), value| (a.min(value), b.max(value)));
            (ends.0 < ends.1).then_some(ends)
        };
        let (along, radius) = (ends(|spot| spot.along)?, ends(|spot| spot.radius)?);
        let title = fonts.wrap(request.title, TITLE_SIZE, Weight::Bold, WIDTH - 2.0 * RIM);
        let top = RIM + title.len() as f64 * TITLE_PITCH + 10.0;
        let scale = (FIELD / radius.1).min((WIDTH - COLUMN - 2.0 * RIM) / (along.1 - along.0));
        let origin = at(RIM - along.0 * scale, top + radius.1 * scale);
        let height = origin.y.max(top + PITCH * Self::names(request.arrangement)) + FOOT + RIM + 8.0;
        let widest = request.arrangement.fits.iter().map(|fit| fit.clearance.get::<millimeter>().abs() / 2.0 * scale);
        let times = round_down(FIT / widest.fold(1e-6, f64::max));
        let pen = Pen::new(WIDTH, height, fonts);
        Some(Self { request, pen, title, top, scale, origin, times })
    }

    fn names(arrangement: &Arrangement) -> f64 {
        (arrangement.parts.iter().filter(|part| !part.name.is_empty()).count() + arrangement.fits.len()) as f64
    }

    fn point(&self, spot: Spot) -> Point {
        let px = |length: Length| length.get::<millimeter>() * self.scale;
        at(self.origin.x + px(spot.along), self.origin.y - px(spot.radius))
    }

    fn draw(mut self) -> Scene {
        self.pen.headings(&self.title, &[]);
        let arrangement = self.request.arrangement;
        for part in &arrangement.parts {
            self.part(part);
        }
        for fit in &arrangement.fits {
            self.fit(fit);
        }
        self.axis();
        self.labels();
        self.foot();
        self.pen.scene
    }

    fn part(&mut self, part: &DrawnPart) {
        let mut outline: Vec<Point> = part.outline.iter().map(|spot| self.point(*spot)).collect();
        let (fill, hatch) = match part.kind {
            DrawnKind::Seat => (GRID, Some((1.0, HAIRLINE))),
            DrawnKind::Ring => (BAND, Some((-1.0, HAIRLINE))),
            DrawnKind::Seal | DrawnKind::RetainingRing => (MUTED, None),
            DrawnKind::Rolling | DrawnKind::Groove => (PAPER, None),
        };
        if part.kind == DrawnKind::Rolling {
            return self.rolling(&outline);
        }
        self.pen.scene.fill(outline.clone(), fill);
        if let Some((slope, colour)) = hatch {
            for line in hatched(&outline, slope) {
                self.pen.scene.line(line, 1.0, colour);
            }
        }
        outline.push(outline[0]);
        self.pen.scene.line(outline, 2.0, INK);
    }

    /// Where it rolls: a circle as large as the room between the rings, or the width, leaves.
    fn rolling(&mut self, outline: &[Point]) {
        let Some((middle, radius)) = room(outline) else { return };
        let corner = |step: u32| std::f64::consts::TAU * f64::from(step) / 72.0;
        let circle =
            (0..=72).map(|step| at(middle.x + radius * corner(step).cos(), middle.y + radius * corner(step).sin()));
        let circle: Vec<Point> = circle.collect();
        for piece in dash::pieces(&circle, dash::SHORT) {
            self.pen.scene.line(piece, 1.5, MUTED);
        }
    }

    /// Overlap as a dark strip, a gap as a white one, on the side of the outer part.
    fn fit(&mut self, fit: &DrawnFit) {
        let wide = 0.5 * fit.clearance.get::<millimeter>().abs() * self.scale * self.times;
        let radius = fit.nominal * 0.5;
        let [from, to] = [fit.along.0, fit.along.1].map(|along| self.point(Spot { along, radius }));
        let tight = fit.clearance < Length::default();
        let strip = vec![from, to, at(to.x, to.y - wide), at(from.x, from.y - wide)];
        self.pen.scene.fill(strip.clone(), if tight { TIGHTEST } else { PAPER });
        self.pen.scene.line([strip.as_slice(), &[from]].concat(), 1.5, INK);
    }

    fn axis(&mut self) {
        let ends = [at(RIM / 2.0, self.origin.y), at(WIDTH - COLUMN - RIM / 2.0, self.origin.y)];
        for piece in dash::pieces(&ends, dash::DASH_DOT) {
            self.pen.scene.line(piece, 1.5, MUTED);
        }
    }

    /// The names in a column, each with a line to its part.
    fn labels(&mut self) {
        let mut labels: Vec<(Point, String, String)> = Vec::new();
        for part in self.request.arrangement.parts.iter().filter(|part| !part.name.is_empty()) {
            let (name, detail) = part.name.split_once(", ").unwrap_or((&part.name, ""));
            labels.push((self.anchor(part), name.to_owned(), detail.to_owned()));
        }
        for fit in &self.request.arrangement.fits {
            let end = self.point(Spot { along: fit.along.1, radius: fit.nominal * 0.5 });
            let name = format!("{} seat, {}", fit.seat.name(), self.size(fit.nominal));
            labels.push((at(end.x - 4.0, end.y - 3.0), name, self.of_fit(fit)));
        }
        labels.sort_by(|a, b| a.0.y.total_cmp(&b.0.y));
        let wanted: Vec<f64> = labels.iter().map(|label| label.0.y).collect();
        let room = (self.top + 12.0, self.pen.scene.height - FOOT - RIM - LINE);
        let left = WIDTH - COLUMN + 10.0;
        for (y, (anchor, name, detail)) in spread(&wanted, PITCH, room).into_iter().zip(labels) {
            self.pen.scene.line(vec![anchor, at(left - 26.0, y), at(left - 8.0, y)], 1.2, INK);
            self.pen.scene.fill(dot(anchor), INK);
            let base = baseline(y);
            self.pen.write(&name, BOLD, 0.0, at(left, base));
            self.pen.write(&detail, QUIET, 0.0, at(left, base + LINE));
        }
    }

    /// A place inside a part, near its end towards the names.
    fn anchor(&self, part: &DrawnPart) -> Point {
        let points: Vec<Point> = part.outline.iter().map(|spot| self.point(*spot)).collect();
        if let Some((middle, radius)) = room(&points).filter(|_| part.kind == DrawnKind::Rolling) {
            return at(middle.x + radius - 5.0, middle.y);
        }
        let right = points.iter().map(|point| point.x).fold(f64::NEG_INFINITY, f64::max);
        let at_right: Vec<f64> = points.iter().filter(|p| right - p.x < 0.01).map(|point| point.y).collect();
        at(right - 6.0, at_right.iter().sum::<f64>() / at_right.len().max(1) as f64)
    }

    fn size(&self, length: Length) -> String {
        show_size(length, self.request.system, Toward::Nearest)
    }

    fn of_fit(&self, fit: &DrawnFit) -> String {
        let what = if fit.clearance < Length::default() { "interference" } else { "clearance" };
        format!("{} {what}, tightest", show_small_length(fit.clearance.abs(), self.request.system, Toward::Nearest))
    }

    fn foot(&mut self) {
        let words = format!(
            "To scale; the fit at 20 °C is drawn {:.0} times as wide. What rolls, and a ring's breadth, are indicated.",
            self.times
        );
        let lines = self.pen.fonts.wrap(&words, LABEL_SIZE, Weight::Regular, WIDTH - 2.0 * RIM);
        let mut y = self.pen.scene.height - FOOT - RIM + SUBTITLE_SIZE + 10.0;
        for line in lines {
            self.pen.write(&line, QUIET, 0.0, at(RIM, y));
            y += LINE;
        }
    }

    fn description(&self) -> String {
        let fits: Vec<String> = self
            .request
            .arrangement
            .fits
            .iter()
            .map(|fit| format!("{} seat {}: {}", fit.seat.name(), self.size(fit.nominal), self.of_fit(fit)))
            .collect();
        format!("Half section to scale. {}.", fits.join("; "))
    }
}

/// A factor of 1, 2 or 5 times a power of ten, at most `value`; one at least.
fn round_down(value: f64) -> f64 {
    let power = 10f64.powf(value.max(1.0).log10().floor());
    let steps = [5.0, 2.0, 1.0].map(|step| step * power);
    steps.into_iter().find(|step| *step <= value).unwrap_or(1.0)
}

fn dot(centre: Point) -> Vec<Point> {
    let corner = |step: u32| std::f64::consts::TAU * f64::from(step) / 24.0;
    (0..24).map(|step| at(centre.x + 3.0 * corner(step).cos(), centre.y + 3.0 * corner(step).sin())).collect()
}

/// Middle of a rectangle, and radius of the largest circle about it.
fn room(outline: &[Point]) -> Option<(Point, f64)> {
    let [low, _, high, _] = outline else { return None };
    let middle = at((low.x + high.x) / 2.0, (low.y + high.y) / 2.0);
    Some((middle, 0.5 * (low.y - high.y).abs().min((high.x - low.x).abs())))
}

/// Lines at 45° inside an outline, rising to the right for a slope of 1, falling for -1.
fn hatched(outline: &[Point], slope: f64) -> Vec<Vec<Point>> {
    let level = |point: &Point| point.y + slope * point.x;
    let levels = || outline.iter().map(level);
    let (low, high) = (levels().fold(f64::INFINITY, f64::min), levels().fold(f64::NEG_INFINITY, f64::max));
    let step = HATCH * std::f64::consts::SQRT_2;
    let first = (low / step).ceil();
    let count = ((high - first * step) / step).max(0.0) as u32;
    let mut lines = Vec::new();
    for number in 0..=count {
        let wanted = (first + f64::from(number)) * step;
        let mut cuts: Vec<Point> = Vec::new();
        for (from, to) in outline.iter().zip(outline.iter().cycle().skip(1)) {
            let (a, b) = (level(from) - wanted, level(to) - wanted);
            if (a < 0.0) != (b < 0.0) {
                let share = a / (a - b);
                cuts.push(at(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)));
            }
        }
        cuts.sort_by(|a, b| a.x.total_cmp(&b.x));
        lines.extend(cuts.chunks_exact(2).map(<[Point]>::to_vec));
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::{at, hatched, round_down};

    #[test]
    fn a_factor_is_a_round_one_and_never_larger_than_the_room() {
        for (value, factor) in
            [(0.3, 1.0), (1.0, 1.0), (1.9, 1.0), (2.0, 2.0), (49.0, 20.0), (50.0, 50.0), (99.0, 50.0)]
        {
            assert!((round_down(value) - factor).abs() < 1e-9, "{value} gave {}", round_down(value));
        }
    }

    #[test]
    fn a_hatch_stays_inside_an_outline_with_a_corner_that_goes_in() {
        // An L: 100 by 100 without its upper right quarter.
        let corners = [(0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (100.0, 50.0), (100.0, 100.0), (0.0, 100.0)];
        let outline = corners.map(|(x, y)| at(x, y));
        for slope in [1.0, -1.0] {
            let lines = hatched(&outline, slope);
            assert!(lines.len() > 5, "{}", lines.len());
            for line in lines {
                let middle = at((line[0].x + line[1].x) / 2.0, (line[0].y + line[1].y) / 2.0);
                assert!(middle.x <= 50.0 || middle.y >= 50.0, "{slope}: {middle:?} lies in the notch");
            }
        }
    }
}
