//! The screws of a cover in their places, with the order in which to tighten and the rounds.

use super::font::{CAP_HEIGHT, Fonts, Weight};
use super::layout::{LABEL_SIZE, RIM, SUBTITLE_PITCH, SUBTITLE_SIZE, TITLE_PITCH, TITLE_SIZE};
use super::palette::{Colour, GRID, HAIRLINE, INK, MIDDLE, PAPER};
use super::pen::{BOLD, LABEL, Pen, QUIET, Style, baseline};
use super::scene::{Picture, Point, Scene, at};
use super::{PlotError, ScrewsRequest};
use crate::plan::fasteners::{FastenersPlan, GroupPlan};
use crate::quantity::show_torque;
use crate::report::text::order;
use std::f64::consts::TAU;
use uom::si::length::millimeter;

/// Width of the column with sizes and rounds.
const COLUMN: f64 = 330.0;
/// Side of the square in which the screws stand, unless many of them need more.
const FIELD: f64 = 560.0;
/// Largest side of that square.
const LARGEST_FIELD: f64 = 2400.0;
/// Room around the outermost heads, for their numbers.
const EDGE: f64 = 62.0;
/// Least distance of two screws, so that their numbers do not touch.
const PITCH: f64 = 58.0;
/// Least and largest radius of a drawn head.
const HEAD: (f64, f64) = (18.0, 27.0);
const ROW: f64 = 27.0;
/// Space above the first kind in the column, height of a kind, and space between the blocks.
const COLUMN_HEAD: f64 = 44.0;
const KIND: f64 = 68.0;
const GAP: f64 = 10.0;
/// Space between a head and its number in the job.
const BESIDE: f64 = 17.0;
/// Most screws whose way from one to the next is drawn: with more it is a tangle.
const MOST_ON_A_WAY: usize = 12;
/// Where a number is tried, in turns from straight outwards.
const TURNS: [f64; 8] = [0.0, 0.125, -0.125, 0.25, -0.25, 0.375, -0.375, 0.5];

/// How the heads of a kind are drawn, so that kinds keep apart without colour.
#[derive(Clone, Copy)]
struct Kind {
    corners: u32,
    fill: Colour,
    number: Colour,
}

const KINDS: [Kind; 4] = [
    Kind { corners: 64, fill: INK, number: PAPER },
    Kind { corners: 6, fill: PAPER, number: INK },
    Kind { corners: 4, fill: MIDDLE, number: PAPER },
    Kind { corners: 64, fill: PAPER, number: INK },
];

/// The whole picture.
pub(super) fn picture(request: &ScrewsRequest, fonts: &Fonts) -> Result<Picture, PlotError> {
    let page = Page::new(request, fonts)?;
    let description = format!("{} Order of tightening: {}.", request.subtitle, order(request.plan));
    Ok(Picture { scene: page.draw(), title: request.title.to_owned(), description: description.trim().to_owned() })
}

struct Page<'a> {
    request: &'a ScrewsRequest<'a>,
    pen: Pen<'a>,
    title: Vec<String>,
    subtitle: Vec<String>,
    foot: Vec<String>,
    /// The rounds, each line with its indent.
    rounds: Vec<(f64, String)>,
    legend: Vec<String>,
    /// Top of the field in which the screws stand, its width and height, and px for a millimetre.
    top: f64,
    field: f64,
    depth: f64,
    scale: f64,
    /// Middle of the pattern, mm.
    middle: (f64, f64),
    points: Vec<(f64, f64)>,
}

impl<'a> Page<'a> {
    fn new(request: &'a ScrewsRequest<'a>, fonts: &'a Fonts) -> Result<Self, PlotError> {
        let points: Vec<(f64, f64)> = request
            .plan
            .screws
            .iter()
            .map(|screw| (screw.place.x.get::<millimeter>(), screw.place.y.get::<millimeter>()))
            .collect();
        if points.is_empty() {
            return Err(PlotError::NoPoints);
        }
        let ends = |pick: fn(&(f64, f64)) -> f64| {
            let each = points.iter().map(pick);
            each.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
        };
        let (x, y) = (ends(|point| point.0), ends(|point| point.1));
        let extent = (x.1 - x.0).max(y.1 - y.0).max(1e-6);
        let wanted = PITCH / nearest(&points).unwrap_or(extent).max(1e-9) * extent + 2.0 * EDGE;
        if wanted > LARGEST_FIELD {
            return Err(PlotError::ScrewsTooClose { wanted, largest: LARGEST_FIELD });
        }
        let field = FIELD.max(wanted);
        let width = field + COLUMN + 2.0 * RIM;
        let wrap = |text: &str, size, weight| fonts.wrap(text, size, weight, width - 2.0 * RIM);
        let title = wrap(request.title, TITLE_SIZE, Weight::Bold);
        let subtitle = wrap(request.subtitle, SUBTITLE_SIZE, Weight::Regular);
        let foot = wrap(&format!("By the numbers of the job: {}", order(request.plan)), LABEL_SIZE, Weight::Regular);
        let top = RIM + title.len() as f64 * TITLE_PITCH + subtitle.len() as f64 * SUBTITLE_PITCH;
        let scale = (field - 2.0 * EDGE) / extent;
        let (rounds, legend) = (rounds(request, fonts), legend(fonts));
        let kinds = request.plan.groups.len() as f64;
        let column = COLUMN_HEAD + kinds * KIND + ROW * (rounds.len() + legend.len()) as f64 + 2.0 * GAP;
        let depth = column.max((y.1 - y.0) * scale + 2.0 * EDGE);
        let height = top + depth + foot.len() as f64 * ROW + RIM;
        Ok(Self {
            request,
            pen: Pen::new(width, height, fonts),
            title,
            subtitle,
            foot,
            rounds,
            legend,
            top,
            field,
            depth,
            scale,
            middle: ((x.0 + x.1) / 2.0, (y.0 + y.1) / 2.0),
            points,
        })
    }

    fn plan(&self) -> &'a FastenersPlan {
        self.request.plan
    }

    fn centre(&self) -> Point {
        at(RIM + self.field / 2.0, self.top + self.depth / 2.0)
    }

    fn point(&self, number: usize) -> Point {
        let (x, y) = self.points[number];
        let centre = self.centre();
        at(centre.x + (x - self.middle.0) * self.scale, centre.y - (y - self.middle.1) * self.scale)
    }

    /// Radius of a drawn head: to scale where that can be read.
    fn radius(&self, number: usize) -> f64 {
        (self.plan().screws[number].head.get::<millimeter>() / 2.0 * self.scale).clamp(HEAD.0, HEAD.1)
    }

    fn draw(mut self) -> Scene {
        self.headings();
        self.circles();
        self.way();
        self.heads();
        self.column();
        self.pen.scene
    }

    fn headings(&mut self) {
        self.pen.headings(&self.title, &self.subtitle);
        let mut y = self.top + self.depth + LABEL_SIZE * 0.82;
        for line in &self.foot {
            self.pen.write(line, QUIET, 0.0, at(RIM, y));
            y += ROW;
        }
    }

    /// The circles on which screws of a kind stand.
    fn circles(&mut self) {
        for group in 0..self.plan().groups.len() {
            let numbers: Vec<usize> =
                (0..self.points.len()).filter(|number| self.plan().screws[*number].group == group).collect();
            if numbers.len() < 3 {
                continue;
            }
            let points: Vec<Point> = numbers.iter().map(|number| self.point(*number)).collect();
            let count = points.len() as f64;
            let centre =
                at(points.iter().map(|p| p.x).sum::<f64>() / count, points.iter().map(|p| p.y).sum::<f64>() / count);
            let radii: Vec<f64> = points.iter().map(|p| (p.x - centre.x).hypot(p.y - centre.y)).collect();
            let (low, high) =
                (radii.iter().copied().fold(f64::INFINITY, f64::min), radii.iter().copied().fold(0.0, f64::max));
            if high - low < 0.5 {
                let mut ring = regular(centre, high, 180, 0.0);
                ring.push(ring[0]);
                self.pen.scene.line(ring, 1.5, HAIRLINE);
            }
        }
    }

    /// The way from one screw to the next.
    fn way(&mut self) {
        if self.points.len() <= MOST_ON_A_WAY {
            let points = self.plan().order.iter().map(|number| self.point(*number)).collect();
            self.pen.scene.line(points, 3.0, GRID);
        }
    }

    fn heads(&mut self) {
        for (turn, number) in self.plan().order.clone().into_iter().enumerate() {
            self.head(
                self.plan().screws[number].group,
                self.point(number),
                self.radius(number),
                &(turn + 1).to_string(),
            );
        }
        for number in 0..self.points.len() {
            let text = (number + 1).to_string();
            let place = self.beside(number, self.pen.width(&text, QUIET));
            self.pen.write(&text, QUIET, 0.5, at(place.x, baseline(place.y)));
        }
    }

    /// Where the number of a screw stands: outside of it where no other head is in the way, or else round it.
    fn beside(&self, number: usize, width: f64) -> Point {
        let (centre, point) = (self.centre(), self.point(number));
        // One in the very middle has its number to the right.
        let outward = if (point.x - centre.x).hypot(point.y - centre.y) > 1.0 {
            (point.y - centre.y).atan2(point.x - centre.x)
        } else {
            0.0
        };
        let reach = self.radius(number) + BESIDE;
        let places = TURNS.map(|turn| {
            let angle = outward + TAU * turn;
            at(point.x + reach * angle.cos(), point.y + reach * angle.sin())
        });
        let half = at(width / 2.0, CAP_HEIGHT * LABEL_SIZE / 2.0);
        let free = |place: &&Point| {
            (0..self.points.len()).filter(|other| *other != number).all(|other| {
                let head = self.point(other);
                let gap = at((head.x - place.x).abs() - half.x, (head.y - place.y).abs() - half.y);
                gap.x.max(0.0).hypot(gap.y.max(0.0)) > 1.15 * self.radius(other) + 2.0
            })
        };
        places.iter().find(free).copied().unwrap_or(places[0])
    }

    fn head(&mut self, group: usize, point: Point, radius: f64, number: &str) {
        let kind = KINDS[group % KINDS.len()];
        let turn = if kind.corners == 4 { 0.125 } else { 0.0 };
        let grown = if kind.corners < 10 { radius * 1.15 } else { radius };
        self.pen.scene.fill(regular(point, grown + 3.0, kind.corners, turn), PAPER);
        self.pen.scene.fill(regular(point, grown, kind.corners, turn), INK);
        if kind.fill != INK {
            self.pen.scene.fill(regular(point, grown - 3.0, kind.corners, turn), kind.fill);
        }
        let baseline = at(point.x, baseline(point.y));
        self.pen.write(number, Style { colour: kind.number, ..BOLD }, 0.5, baseline);
    }

    /// Sizes, rounds, and what the numbers are.
    fn column(&mut self) {
        let left = RIM + self.field + 12.0;
        let mut y = self.top + COLUMN_HEAD;
        for (group, screws) in self.plan().groups.iter().enumerate() {
            self.head(group, at(left + 20.0, y), 18.0, "");
            let name = format!("{} × {}", screws.count, screws.thread);
            self.pen.write(&name, BOLD, 0.0, at(left + 52.0, y - 4.0));
            let torque = show_torque(screws.torque, self.request.system, screws.rounding());
            self.pen.write(&torque, LABEL, 0.0, at(left + 52.0, y + ROW - 6.0));
            y += KIND;
        }
        y += GAP;
        for (indent, line) in &self.rounds {
            self.pen.write(line, LABEL, 0.0, at(left + indent, y));
            y += ROW;
        }
        y += GAP;
        for line in &self.legend {
            self.pen.write(line, QUIET, 0.0, at(left, y));
            y += ROW;
        }
    }
}

/// What is turned in which round, in lines of the column.
fn rounds(request: &ScrewsRequest, fonts: &Fonts) -> Vec<(f64, String)> {
    let plan = request.plan;
    let mut rounds = vec!["All in by hand, then:".to_owned()];
    for (number, share) in plan.stages.iter().enumerate() {
        let torque =
            |group: &GroupPlan| Some(show_torque(*group.stage_torques.get(number)?, request.system, group.rounding()));
        let each: Vec<String> = plan.groups.iter().filter_map(torque).collect();
        rounds.push(format!("{}. {:.0} %: {}", number + 1, 100.0 * share, each.join(", ")));
    }
    rounds.push(format!("{}. once round at full torque", plan.stages.len() + 1));
    let lines = |round: String| {
        let pieces = fonts.wrap(&round, LABEL_SIZE, Weight::Regular, COLUMN - 40.0);
        pieces.into_iter().enumerate().map(|(number, piece)| (if number == 0 { 0.0 } else { 22.0 }, piece))
    };
    rounds.into_iter().flat_map(lines).collect()
}

fn legend(fonts: &Fonts) -> Vec<String> {
    let words = "In the head: when to tighten it. Beside it, small: its number in the job.";
    fonts.wrap(words, LABEL_SIZE, Weight::Regular, COLUMN - 20.0)
}

/// Least distance of two points; none for a single one.
fn nearest(points: &[(f64, f64)]) -> Option<f64> {
    let pairs = points.iter().enumerate().flat_map(|(number, a)| points[number + 1..].iter().map(move |b| (a, b)));
    pairs.map(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1)).reduce(f64::min)
}

/// A polygon of equal sides; `turn` in whole turns, its first corner to the right at zero.
fn regular(centre: Point, radius: f64, corners: u32, turn: f64) -> Vec<Point> {
    let corner = |i| TAU * (turn + f64::from(i) / f64::from(corners));
    (0..corners).map(|i| at(centre.x + radius * corner(i).cos(), centre.y + radius * corner(i).sin())).collect()
}
