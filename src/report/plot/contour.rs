//! A clearance over two quantities: contours with their values, where parts touch, and from where they drop in.

use super::bands::Surface;
use super::dash;
use super::frame::Frame;
use super::palette::{BAND, GRID, INK, MIDDLE, PAPER, TIGHTEST};
use super::pen::{LABEL, Style, baseline, circle, rectangle, simple};
use super::scene::{Area, Point, at};
use super::units::{decimals_of, fixed, multiples, round_step};

/// About how many contours are drawn.
const CONTOURS: f64 = 9.0;
/// Least length of a line that gets a label, px.
const LABELLED: f64 = 90.0;
/// Distance of the lines that shade what is forbidden.
const HATCH: f64 = 13.0;
const MARK: f64 = 12.0;

/// Values at the points of a grid.
pub(super) struct Values<'a> {
    pub(super) across: &'a [f64],
    pub(super) up: &'a [f64],
    /// A row for each place upwards; none where there is no value.
    pub(super) rows: &'a [Vec<Option<f64>>],
    /// Value from which a part drops in; none where it is not the same everywhere.
    pub(super) placing: Option<f64>,
}

/// How a mark is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Full: it drops in, with time enough.
    Good,
    /// Half full: it drops in, in a race.
    Race,
    /// Empty: it does not.
    Pressed,
    /// A cross: it must not be done.
    Forbidden,
}

pub(super) struct Mark {
    pub(super) place: (f64, f64),
    pub(super) kind: Kind,
    /// What stands beside it; may be empty.
    pub(super) label: String,
}

/// Light where parts touch, lighter where they have too little, white where they drop in; and contours.
pub(super) fn contours(frame: &mut Frame<'_>, values: &Values<'_>, taken: &mut Vec<Area>) {
    let surface = surface(frame, values);
    let Some((low, high)) = ends(&surface.values) else { return };
    let drops_in = values.placing.map(|placing| surface.above(placing)).unwrap_or_default();
    let free = surface.above(0.0);
    for outline in surface.outline() {
        frame.pen.scene.fill(outline, GRID);
    }
    for (outline, colour) in [(free, BAND), (drops_in, PAPER)] {
        if outline.len() > 2 {
            frame.pen.scene.fill(outline, colour);
        }
    }
    frame.grid();
    let step = round_step((high - low).max(1e-9) / CONTOURS);
    let mut lines: Vec<(String, Vec<Point>)> = Vec::new();
    for level in multiples(low, high, step).into_iter().filter(|level| level.abs() > 1e-9) {
        for line in surface.contours(level).iter().map(|line| simple(line)) {
            frame.pen.scene.line(line.clone(), 1.4, MIDDLE);
            lines.push((fixed(level, decimals_of(step)), line));
        }
    }
    let placing = values.placing.map(|placing| surface.contours(placing)).unwrap_or_default();
    for line in placing.iter().map(|line| simple(line)) {
        frame.pen.dashed(&line, dash::DASH_DOT, 3.0, INK);
        lines.insert(0, ("drops in from here".to_owned(), line));
    }
    for line in surface.contours(0.0).iter().map(|line| simple(line)) {
        frame.pen.scene.line(line.clone(), 3.0, INK);
        lines.insert(0, ("touches".to_owned(), line));
    }
    for (text, line) in lines {
        label(frame, &text, &line, taken);
    }
}

fn surface(frame: &Frame<'_>, values: &Values<'_>) -> Surface {
    let width = values.across.len();
    let mut surface = Surface::default();
    for (up, row) in values.up.iter().zip(values.rows) {
        for (across, value) in values.across.iter().zip(row) {
            surface.points.push(frame.at(*across, *up));
            surface.values.push(value.unwrap_or(f64::NAN));
        }
    }
    let known = |corners: &[usize; 3]| corners.iter().all(|corner| surface.values[*corner].is_finite());
    let mut triangles = Vec::new();
    for row in 1..values.up.len() {
        for column in 1..width {
            let (a, b) = ((row - 1) * width + column - 1, row * width + column - 1);
            triangles.extend([[a, a + 1, b + 1], [a, b + 1, b]].into_iter().filter(known));
        }
    }
    surface.triangles = triangles;
    surface
}

fn ends(values: &[f64]) -> Option<(f64, f64)> {
    let known = values.iter().copied().filter(|value| value.is_finite());
    known.fold(None, |ends: Option<(f64, f64)>, value| {
        Some(ends.map_or((value, value), |(low, high)| (low.min(value), high.max(value))))
    })
}

/// The value of a line on it, where nothing else stands.
fn label(frame: &mut Frame<'_>, text: &str, line: &[Point], taken: &mut Vec<Area>) {
    let length: f64 = line.windows(2).map(|ends| distance(ends[0], ends[1])).sum();
    if length < LABELLED {
        return;
    }
    let places = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];
    let field = frame.field;
    let free = places.iter().find_map(|share| {
        let centre = along(line, share * length);
        let area = frame.pen.centred(text, LABEL, centre).grown(2.0);
        (field.contains(&area) && !taken.iter().any(|other| other.overlaps(&area))).then_some((centre, area))
    });
    if let Some((centre, area)) = free {
        frame.pen.scene.fill(rectangle(&area), PAPER);
        frame.pen.write(text, LABEL, 0.5, at(centre.x, baseline(centre.y)));
        taken.push(area.grown(4.0));
    }
}

fn distance(a: Point, b: Point) -> f64 {
    (a.x - b.x).hypot(a.y - b.y)
}

fn along(line: &[Point], mut left: f64) -> Point {
    for ends in line.windows(2) {
        let length = distance(ends[0], ends[1]);
        if left <= length && length > 0.0 {
            let share = left / length;
            return at(ends[0].x + share * (ends[1].x - ends[0].x), ends[0].y + share * (ends[1].y - ends[0].y));
        }
        left -= length;
    }
    line[line.len() - 1]
}

/// Slanting lines over what is forbidden, and its name.
pub(super) fn forbid(frame: &mut Frame<'_>, area: Area, name: &str, taken: &mut Vec<Area>) {
    let (wide, high) = (area.right - area.left, area.bottom - area.top);
    if wide < 1.0 || high < 1.0 {
        return;
    }
    let mut offset = HATCH;
    while offset < wide + high {
        // From the left or lower side up to the upper or right one.
        let from = at(area.left + (offset - high).max(0.0), area.top + offset.min(high));
        let to = at(area.left + offset.min(wide), area.top + (offset - wide).max(0.0));
        frame.pen.scene.line(vec![from, to], 1.2, TIGHTEST);
        offset += HATCH;
    }
    let centre = at(0.5 * (area.left + area.right), 0.5 * (area.top + area.bottom));
    let upright = wide < frame.pen.width(name, LABEL) + 12.0;
    let centre =
        if upright { at(area.left + 0.5 * frame.pen.width(name, LABEL) + 8.0, area.top + 26.0) } else { centre };
    let place = frame.pen.centred(name, LABEL, centre).grown(4.0);
    frame.pen.scene.fill(rectangle(&place), PAPER);
    frame.pen.write(name, Style { colour: TIGHTEST, ..LABEL }, 0.5, at(centre.x, baseline(centre.y)));
    taken.push(place);
}

/// The marks with what stands beside them, each where there is room; a leader where it is not close by.
pub(super) fn marks(frame: &mut Frame<'_>, marks: &[Mark], taken: &mut Vec<Area>) {
    let labels: Vec<Area> = marks.iter().map(|mark| beside(frame, mark, taken)).collect();
    for (mark, area) in marks.iter().zip(&labels) {
        let centre = frame.at(mark.place.0, mark.place.1);
        let middle = at(0.5 * (area.left + area.right), 0.5 * (area.top + area.bottom));
        if !mark.label.is_empty() && distance(centre, middle) > 2.6 * MARK {
            frame.pen.scene.line(vec![centre, middle], 1.2, INK);
        }
    }
    for (mark, area) in marks.iter().zip(labels) {
        let centre = frame.at(mark.place.0, mark.place.1);
        draw(frame, mark.kind, centre, if mark.label.is_empty() { 6.0 } else { MARK });
        if !mark.label.is_empty() {
            frame.pen.scene.fill(rectangle(&area), PAPER);
            let bold = Style { weight: super::font::Weight::Bold, ..LABEL };
            let middle = at(0.5 * (area.left + area.right), 0.5 * (area.top + area.bottom));
            frame.pen.write(&mark.label, bold, 0.5, at(middle.x, baseline(middle.y)));
        }
    }
}

/// The places of all marks, which no label may cover.
pub(super) fn solid(frame: &Frame<'_>, marks: &[Mark]) -> Vec<Area> {
    let around = |mark: &Mark| {
        let centre = frame.at(mark.place.0, mark.place.1);
        Area { left: centre.x, right: centre.x, top: centre.y, bottom: centre.y }.grown(MARK)
    };
    marks.iter().map(around).collect()
}

fn beside(frame: &Frame<'_>, mark: &Mark, taken: &mut Vec<Area>) -> Area {
    let centre = frame.at(mark.place.0, mark.place.1);
    let bold = Style { weight: super::font::Weight::Bold, ..LABEL };
    let at_angle = |ring: f64, turn: f64| {
        let angle = std::f64::consts::TAU * turn;
        let centre = at(centre.x + ring * angle.cos(), centre.y + ring * angle.sin());
        frame.pen.centred(&mark.label, bold, centre).grown(2.0)
    };
    let rings = [26.0, 46.0, 68.0, 92.0, 120.0];
    let turns = [0.0, 0.875, 0.125, 0.75, 0.25, 0.5, 0.625, 0.375];
    let places = rings.iter().flat_map(|ring| turns.iter().map(move |turn| at_angle(*ring, *turn)));
    let free = |area: &Area| frame.field.contains(area) && !taken.iter().any(|other| other.overlaps(area));
    let area = places.clone().find(free).unwrap_or_else(|| at_angle(26.0, 0.0));
    if !mark.label.is_empty() {
        taken.push(area);
    }
    area
}

fn draw(frame: &mut Frame<'_>, kind: Kind, centre: Point, radius: f64) {
    let pen = &mut frame.pen;
    if kind == Kind::Forbidden {
        let arm = 0.8 * radius;
        for way in [-1.0, 1.0] {
            let ends = vec![at(centre.x - arm, centre.y - way * arm), at(centre.x + arm, centre.y + way * arm)];
            pen.scene.line(ends, 3.0, INK);
        }
        return;
    }
    pen.disc(centre, radius + 2.5, PAPER);
    pen.disc(centre, radius, INK);
    let ring = radius - 3.0_f64.min(0.4 * radius);
    match kind {
        Kind::Good | Kind::Forbidden => {}
        Kind::Pressed => pen.disc(centre, ring, PAPER),
        Kind::Race => {
            // The upper half is empty.
            let half = circle(centre, ring).into_iter().filter(|point| point.y <= centre.y + 0.1).collect();
            pen.scene.fill(half, PAPER);
        }
    }
}

/// What the areas mean, in a line.
pub(super) const AREAS: &str = "White: drops in; pale: clear, but less than the placing clearance; grey: interference";

/// The colour of the line of a limit.
pub(super) fn limit_line(frame: &mut Frame<'_>, ends: [Point; 2]) {
    frame.pen.scene.line(ends.to_vec(), 2.5, TIGHTEST);
}
