//! The page: title, section to scale with its key, pressure along the seat, what to know of them.

use super::SectionPicture;
use super::deformed::{self, Drawn, Extent, Scale, shown};
use super::diagram;
use super::key::{Levels, NOTHING};
use super::leaders::{self, Named};
use super::readings::{largest, length_unit, pressure_unit};
use crate::quantity::{Length, Toward, show_pressure, show_rough_size};
use crate::report::plot::PlotError;
use crate::report::plot::bands::Surface;
use crate::report::plot::dash;
use crate::report::plot::font::{Fonts, Weight};
use crate::report::plot::layout::{LABEL_SIZE, RIM, SUBTITLE_PITCH, SUBTITLE_SIZE, TITLE_PITCH, TITLE_SIZE, WIDTH};
use crate::report::plot::palette::{GRID, HAIRLINE, INK, MUTED, PAPER, TIGHTEST};
use crate::report::plot::pen::{LABEL, Pen, QUIET, baseline, circle, closed, rectangle, simple};
use crate::report::plot::scene::{Area, Point, Scene, at};
use crate::report::plot::units::{decimals_of, fixed, multiples, round_step};
use crate::report::section as words;
use uom::si::length::meter;

/// Room for the numbers left of the section.
const NUMBERS: f64 = 84.0;
/// Room for the names of the parts, and for the key, right of it.
const NAMES: f64 = 138.0;
const KEY: f64 = 150.0;
/// Largest height of the section.
const HIGHEST: f64 = 460.0;
/// Lines of title and subtitle that a page can carry.
const MOST_LINES: usize = 12;
/// Pitch of the lines below the picture.
const NOTE_PITCH: f64 = 27.0;
/// Least distance of two numbers along an axis.
const PITCH: f64 = 70.0;
/// Least length of a contour that gets a label, px.
const LABELLED: f64 = 70.0;

pub(super) fn compose(request: &SectionPicture, title: &str, fonts: &Fonts) -> Result<Scene, PlotError> {
    let width = WIDTH - 2.0 * RIM;
    let title = fonts.wrap(title, TITLE_SIZE, Weight::Bold, width);
    let mut below = fonts.wrap(request.title, SUBTITLE_SIZE, Weight::Regular, width);
    below.extend(fonts.wrap(
        &signed(&words::readings(request.seat, request.system)),
        SUBTITLE_SIZE,
        Weight::Regular,
        width,
    ));
    let lines = title.len() + below.len();
    if lines > MOST_LINES {
        return Err(PlotError::TitleTooLong { lines, most: MOST_LINES });
    }
    let extent = Extent::of(request.seat);
    let levels = Levels::over(&deformed::range(request, &extent), request.show);
    let notes = fonts.wrap(&notes(request, &extent, &levels), LABEL_SIZE, Weight::Regular, width);
    let head = RIM + title.len() as f64 * TITLE_PITCH + below.len() as f64 * SUBTITLE_PITCH;
    let (long, high) = (extent.axial.end - extent.axial.start, extent.radial.end - extent.radial.start);
    // Displacements stand out a little on every side.
    let px = ((WIDTH - 2.0 * RIM - NUMBERS - NAMES - KEY) / long).min(HIGHEST / high);
    let drawn = (px * high).max(levels.height() - 30.0);
    let top = head + 62.0;
    let section_bottom = top + drawn;
    let spare = (WIDTH - 2.0 * RIM - NUMBERS - NAMES - KEY - px * long).max(0.0);
    let left = RIM + NUMBERS + 0.5 * spare;
    let scale = Scale {
        px,
        left,
        bottom: section_bottom - 0.5 * (drawn - px * high),
        from: (extent.axial.start, extent.radial.start),
    };
    let bottom = section_bottom + 92.0 + diagram::HEIGHT;
    let height = (bottom + 78.0 + notes.len() as f64 * NOTE_PITCH + RIM).ceil();
    let scene = Scene { width: WIDTH, height, shapes: Vec::new() };
    let mut page = Page { pen: Pen { scene, fonts }, request, extent, scale, levels, right: left + px * long };
    page.headings(&title, &below);
    page.section((top, section_bottom));
    let right = page.right;
    page.axial_axis(bottom);
    diagram::draw(&mut page.pen, request, &page.scale, (left, right), bottom);
    let name = format!("pressure on the seat, {}", pressure_unit(request.system));
    page.pen.write(&name, QUIET, 0.0, at(RIM, bottom - diagram::HEIGHT - 18.0));
    for (k, line) in notes.iter().enumerate() {
        page.pen.write(line, QUIET, 0.0, at(RIM, bottom + 94.0 + k as f64 * NOTE_PITCH));
    }
    Ok(page.pen.scene)
}

/// A text with true minus signs before its numbers.
fn signed(text: &str) -> String {
    text.replace(" -", " −")
}

/// What to know of the picture.
fn notes(request: &SectionPicture, extent: &Extent, levels: &Levels) -> String {
    let (seat, system) = (request.seat, request.system);
    if !seat.touches() {
        return format!("To scale; the clearance is drawn {} times as large as it is.", fixed(extent.magnified, 0));
    }
    let mut text = format!(
        "To scale; deformation {} times as large as it is, from the dashed outline before fitting.",
        fixed(extent.magnified, 0)
    );
    if let Some((part, at)) = largest(seat, request.show) {
        let stress = show_pressure(at.stress, system, Toward::Nearest);
        let of = request.show.sides().map_or(String::new(), |[above, _]| format!(" {above}"));
        text.push_str(&format!(" Dot: largest{of}, {stress}, in the {}.", seat.parts[part]));
    }
    if let Some([above, below]) =
        request.show.sides().filter(|_| levels.levels.iter().any(|level| levels.divides(*level)))
    {
        text.push_str(&format!(" Heavy line: 0, between {above} and {below}."));
    }
    if !seat.field.singular.is_empty() {
        let unread = show_rough_size(seat.field.unread, system, Toward::Nearest);
        let corner = words::corner(seat).map_or(String::new(), |of| format!(" and of the corner of the {of}"));
        text.push_str(&format!(
            " Circles and grey: nothing is read within {unread} of an end of the contact{corner}: elasticity sets no limit where a part goes on."
        ));
    }
    if extent.cut {
        text.push_str(&format!(" The {} goes on beyond the picture.", seat.seat.name()));
    }
    text
}

struct Page<'a> {
    pen: Pen<'a>,
    request: &'a SectionPicture<'a>,
    extent: Extent,
    scale: Scale,
    levels: Levels,
    right: f64,
}

impl Page<'_> {
    fn headings(&mut self, title: &[String], below: &[String]) {
        let y = self.pen.headings(title, below);
        let name = format!("diameter, {}", length_unit(self.request.system));
        self.pen.write(&name, QUIET, 0.0, at(RIM, y + 30.0));
    }

    fn section(&mut self, (top, bottom): (f64, f64)) {
        self.diameters();
        let parts: Vec<Drawn> = (0..self.request.seat.parts.len())
            .map(|k| deformed::part(self.request, k, &self.extent, &self.scale))
            .collect();
        for part in &parts {
            self.bands(&part.after);
        }
        for part in &parts {
            for outline in &part.before {
                self.pen.dashed(&simple(&closed(outline)), dash::SHORT, 1.2, TIGHTEST);
            }
            for outline in part.after.outline() {
                self.pen.around(&outline, 2.4, INK);
            }
        }
        self.unread();
        self.contour_labels(&parts);
        self.largest();
        self.names(&parts, (top, bottom));
        let left = WIDTH - RIM - KEY + 24.0;
        self.levels.draw(&mut self.pen, &self.request.show.name(self.request.system), (left, top - 46.0));
    }

    fn bands(&mut self, surface: &Surface) {
        for outline in surface.outline() {
            self.pen.scene.fill(outline, self.levels.colour(0));
        }
        for (k, level) in self.levels.levels.iter().enumerate() {
            let region = surface.above(*level);
            if !region.is_empty() {
                self.pen.scene.fill(region, self.levels.colour(k + 1));
            }
        }
        for level in &self.levels.levels {
            let (width, colour) = if self.levels.divides(*level) { (NOTHING, INK) } else { (0.9, MUTED) };
            for line in surface.contours(*level) {
                self.pen.scene.line(simple(&line), width, colour);
            }
        }
    }

    /// Numbers up the left side: diameters, since those are measured.
    fn diameters(&mut self) {
        let (low, high) = (self.extent.radial.start, self.extent.radial.end);
        let (from, to) = (2.0 * shown(self.request, low), 2.0 * shown(self.request, high));
        let px = self.scale.px * (high - low) / (to - from);
        let step = round_step(44.0 / px);
        // Clear of a circle at the end of the contact.
        let circle = self.scale.px * self.request.seat.field.unread.get::<meter>();
        let beside = f64::max(20.0, circle + 6.0);
        for value in multiples(from, to, step) {
            let y = self.scale.y(low + (value - from) / (to - from) * (high - low));
            self.pen.scene.line(vec![at(self.scale.left - 14.0, y), at(self.right, y)], 1.0, GRID);
            let number = at(self.scale.left - beside, baseline(y));
            self.pen.write(&fixed(value, decimals_of(step)), QUIET, 1.0, number);
        }
    }

    fn axial_axis(&mut self, bottom: f64) {
        let (low, high) = (self.extent.axial.start, self.extent.axial.end);
        let (from, to) = (shown(self.request, low), shown(self.request, high));
        let px = (self.right - self.scale.left) / (to - from);
        let step = round_step(PITCH / px);
        for value in multiples(from, to, step) {
            let x = self.scale.left + (value - from) * px;
            self.pen.scene.line(vec![at(x, bottom), at(x, bottom + 7.0)], 1.5, MUTED);
            self.pen.write(&fixed(value, decimals_of(step)), QUIET, 0.5, at(x, bottom + 28.0));
        }
        let name = format!("from the ring’s back face, {}", length_unit(self.request.system));
        let middle = (self.scale.left + self.right) / 2.0;
        let half = self.pen.width(&name, QUIET) / 2.0;
        self.pen.write(&name, QUIET, 0.5, at(middle.max(RIM + half), bottom + 56.0));
    }

    /// Circles around the places where nothing is read.
    fn unread(&mut self) {
        let field = &self.request.seat.field;
        if !self.request.seat.touches() {
            return;
        }
        let radius = self.scale.px * field.unread.get::<meter>();
        let mut drawn: Vec<Point> = Vec::new();
        let all: Vec<usize> = (0..field.parts.len()).collect();
        for place in &field.singular {
            let centre = self.moved(&all, (place.radius, place.position));
            let near = |other: &Point| (other.x - centre.x).hypot(other.y - centre.y) < 0.5 * radius;
            if !drawn.iter().any(near) {
                self.pen.around(&circle(centre, radius), 3.6, PAPER);
                self.pen.around(&circle(centre, radius), 1.6, INK);
                drawn.push(centre);
            }
        }
    }

    /// The level of each contour on its longest line in each part, where there is room.
    fn contour_labels(&mut self, parts: &[Drawn]) {
        let mut taken: Vec<Area> = self.solid();
        let rims: Vec<Vec<Point>> =
            parts.iter().flat_map(|part| part.after.outline()).map(|outline| closed(&outline)).collect();
        for part in parts {
            for level in self.levels.levels.clone() {
                let text = self.levels.text(level);
                let longest = part.after.contours(level).into_iter().max_by(|a, b| long(a).total_cmp(&long(b)));
                let Some(line) = longest.filter(|line| long(line) > LABELLED) else { continue };
                let free = |share: &f64| {
                    let area = self.pen.centred(&text, LABEL, along(&line, *share)).grown(3.0);
                    let crossed = rims.iter().any(|rim| rim.windows(2).any(|w| area.is_crossed_by(w[0], w[1])));
                    (!crossed && !taken.iter().any(|other| other.overlaps(&area))).then_some((*share, area))
                };
                let shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];
                let Some((share, area)) = shares.iter().find_map(free) else { continue };
                let centre = along(&line, share);
                self.pen.scene.fill(rectangle(&area), PAPER);
                self.pen.write(&text, LABEL, 0.5, at(centre.x, baseline(centre.y)));
                taken.push(area.grown(6.0));
            }
        }
    }

    /// Where no label may stand: the places that are not read, and the dot.
    fn solid(&self) -> Vec<Area> {
        let field = &self.request.seat.field;
        let around = |centre: Point, by: f64| Area {
            left: centre.x - by,
            right: centre.x + by,
            top: centre.y - by,
            bottom: centre.y + by,
        };
        let radius = self.scale.px * field.unread.get::<meter>();
        let all: Vec<usize> = (0..field.parts.len()).collect();
        let singular =
            field.singular.iter().map(|place| around(self.moved(&all, (place.radius, place.position)), radius + 2.0));
        singular.chain(self.dot().map(|dot| around(dot, 10.0))).collect()
    }

    /// Where a place of one of these parts is drawn.
    fn moved(&self, parts: &[usize], place: (Length, Length)) -> Point {
        deformed::moved(self.request, (&self.extent, &self.scale), parts, place)
    }

    fn dot(&self) -> Option<Point> {
        let (part, peak) = largest(self.request.seat, self.request.show)?;
        Some(self.moved(&[part], (peak.diameter / 2.0, peak.position)))
    }

    fn largest(&mut self) {
        if let Some(dot) = self.dot() {
            self.pen.disc(dot, 9.0, PAPER);
            self.pen.disc(dot, 6.5, INK);
        }
    }

    /// The parts by name, right of the section.
    fn names(&mut self, parts: &[Drawn], (top, bottom): (f64, f64)) {
        let places: Vec<Point> = parts.iter().map(|part| front(&part.after)).collect();
        let names = self.request.seat.parts.iter();
        let named: Vec<Named<'_>> =
            places.iter().zip(names).map(|(place, name)| (*place, *name, LABEL, HAIRLINE)).collect();
        leaders::draw(&mut self.pen, &named, (self.right, NOTE_PITCH), (top, bottom));
        for place in places {
            self.pen.disc(place, 3.5, INK);
        }
    }
}

/// A point just inside the front face of a part, half-way up it.
fn front(surface: &Surface) -> Point {
    let used = || surface.triangles.iter().flatten().map(|node| surface.points[*node]);
    let right = used().map(|p| p.x).fold(f64::NEG_INFINITY, f64::max);
    let ys = || used().filter(|p| right - p.x < 8.0).map(|p| p.y);
    let (low, high) = (ys().fold(f64::INFINITY, f64::min), ys().fold(f64::NEG_INFINITY, f64::max));
    at(right - 9.0, (low + high) / 2.0)
}

fn long(line: &[Point]) -> f64 {
    line.windows(2).map(|w| (w[1].x - w[0].x).hypot(w[1].y - w[0].y)).sum()
}

/// The point at a share of a line's length.
fn along(line: &[Point], share: f64) -> Point {
    let mut left = share * long(line);
    for ends in line.windows(2) {
        let length = (ends[1].x - ends[0].x).hypot(ends[1].y - ends[0].y);
        if left <= length && length > 0.0 {
            let part = left / length;
            return at(ends[0].x + part * (ends[1].x - ends[0].x), ends[0].y + part * (ends[1].y - ends[0].y));
        }
        left -= length;
    }
    line[line.len() - 1]
}
