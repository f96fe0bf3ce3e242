//! Draws the page: from back to front the band, the grid, the level lines, the curves, the moments, the words.

use super::along::{self, Obstacles, Wanted};
use super::axes::Panel;
use super::column::spread;
use super::dash::{self, Pattern};
use super::font::{CAP_HEIGHT, Fonts, Weight};
use super::layout::{self, LABEL_SIZE, Layout, RIM};
use super::palette::{BAND, Colour, GRID, HAIRLINE, INK, LOOSEST, MIDDLE, MUTED, TIGHTEST};
use super::pen::{LABEL, QUIET, SUBTITLE, Style, TITLE};
use super::readings::Readings;
use super::scene::{Area, Point, Scene, Shape, Text, at};
use super::{PlotError, PlotRequest, markers};
use crate::quantity::Cases;

const EDGE: f64 = 2.5;
const MIDDLE_LINE: f64 = 4.5;
const ZERO_LINE: f64 = 3.0;
const PLACING_LINE: f64 = 2.0;
const THIN: f64 = 1.2;
/// Distance of two names in the right margin.
const NAME_PITCH: f64 = 27.0;
/// Space between the name of a level line and the end of its panel.
const INSET: f64 = 6.0;
/// A leader is drawn when its label stands further than this from its line.
const LEAST_LEADER: f64 = 4.0;

/// The whole picture.
pub(super) fn compose(request: &PlotRequest, fonts: &Fonts) -> Result<Scene, PlotError> {
    let readings = Readings::new(request.history, request.system)?;
    let layout = Layout::new(request, &readings, fonts)?;
    let scene = Scene { width: layout::WIDTH, height: layout.height, shapes: Vec::new() };
    let curves = layout.panels.iter().map(|panel| panel.curves(&layout.axis)).collect();
    let mut page = Page { scene, layout, fonts, curves, obstacles: Obstacles::default() };
    page.bands();
    page.grid();
    page.level_lines(readings.placing);
    page.curves();
    page.moments();
    page.headings();
    page.time_axes();
    page.names_of_regions();
    let [long, short] = layout::placing_names(request);
    let placing = page.name_along(readings.placing, &[&long, &short], MUTED);
    let touch = page.name_along(0.0, &["parts touch"], INK);
    let mut levels = Vec::new();
    if !placing {
        levels.push((readings.placing, short.as_str(), Style { colour: MUTED, ..LABEL }));
    }
    if !touch {
        levels.push((0.0, "parts touch", Style { colour: INK, ..LABEL }));
    }
    page.names_of_curves(&levels);
    Ok(page.scene)
}

struct Page<'a> {
    scene: Scene,
    layout: Layout,
    fonts: &'a Fonts,
    /// The curves in px, a panel each.
    curves: Vec<Cases<Vec<Point>>>,
    obstacles: Obstacles,
}

/// How a text lies to its point.
#[derive(Clone, Copy)]
enum Anchor {
    Left,
    Centre,
    Right,
}

impl Page<'_> {
    fn write(&mut self, text: &str, style: Style, anchor: Anchor, point: Point) {
        let width = self.fonts.width(text, style.size, style.weight);
        let x = match anchor {
            Anchor::Left => point.x,
            Anchor::Centre => point.x - width / 2.0,
            Anchor::Right => point.x - width,
        };
        let Style { size, weight, colour } = style;
        let text = Text { text: text.to_owned(), start: at(x, point.y), width, size, weight, colour };
        self.obstacles.solid.push(text.area());
        self.scene.text(text);
    }

    fn bands(&mut self) {
        for curves in &self.curves {
            let edge_back = curves.tightest.iter().rev();
            self.scene.fill(curves.loosest.iter().chain(edge_back).copied().collect(), BAND);
        }
    }

    fn grid(&mut self) {
        for tick in self.layout.clearances.clone() {
            let y = self.layout.axis.y(tick.value);
            for panel in &self.layout.panels {
                self.scene.line(vec![at(panel.left, y), at(panel.right, y)], 1.0, GRID);
            }
            let end = at(self.layout.left() - layout::NUMBER_SPACE, centred(y, LABEL_SIZE));
            self.write(&tick.text, QUIET, Anchor::Right, end);
        }
        let name = at(RIM, self.layout.flag_baseline(self.layout.axis_row));
        self.write(&self.layout.axis_name.clone(), QUIET, Anchor::Left, name);
    }

    fn level_lines(&mut self, placing: f64) {
        let level = |clearance: f64| -> Vec<Point> {
            let y = self.layout.axis.y(clearance);
            vec![at(self.layout.left(), y), at(self.layout.right(), y)]
        };
        let (zero, placing) = (level(0.0), level(placing));
        dashed(&mut self.scene, &placing, dash::DASH_DOT, PLACING_LINE, MUTED);
        self.scene.line(zero.clone(), ZERO_LINE, INK);
        self.obstacles.lines.extend([zero, placing]);
    }

    fn curves(&mut self) {
        for curves in self.curves.clone() {
            dashed(&mut self.scene, &curves.loosest, dash::LONG, EDGE, LOOSEST);
            dashed(&mut self.scene, &curves.tightest, dash::SHORT, EDGE, TIGHTEST);
            self.scene.line(curves.middle.clone(), MIDDLE_LINE, MIDDLE);
            self.obstacles.lines.extend([curves.loosest, curves.tightest, curves.middle]);
        }
    }

    /// Poles first, then markers, so that no pole runs over a marker.
    fn moments(&mut self) {
        let bottom = self.layout.axis.bottom;
        let moments = std::mem::take(&mut self.layout.moments);
        for moment in &moments {
            let top = self.layout.flag_baseline(moment.flag.row) - CAP_HEIGHT * LABEL_SIZE;
            let pole = vec![at(moment.x, top), at(moment.x, bottom)];
            self.scene.line(pole.clone(), THIN, HAIRLINE);
            self.obstacles.lines.push(pole);
        }
        for moment in &moments {
            let centre = at(moment.x, self.layout.axis.y(moment.stop.clearance));
            markers::draw(&mut self.scene, moment.stop.kind, centre);
            self.obstacles.solid.push(markers::area(centre));
            let baseline = self.layout.flag_baseline(moment.flag.row);
            self.write(&moment.text, LABEL, Anchor::Left, at(moment.flag.left, baseline));
        }
        self.layout.moments = moments;
    }

    fn headings(&mut self) {
        let mut y = RIM;
        for line in self.layout.title.clone() {
            self.write(&line, TITLE, Anchor::Left, at(RIM, y + layout::TITLE_SIZE * 0.82));
            y += layout::TITLE_PITCH;
        }
        for line in self.layout.subtitle.clone() {
            self.write(&line, SUBTITLE, Anchor::Left, at(RIM, y + layout::SUBTITLE_SIZE * 0.82));
            y += layout::SUBTITLE_PITCH;
        }
    }

    fn time_axes(&mut self) {
        for panel in self.layout.panels.clone() {
            self.time_axis(&panel);
        }
    }

    fn time_axis(&mut self, panel: &Panel) {
        let bottom = self.layout.axis.bottom;
        self.scene.line(vec![at(panel.left, bottom), at(panel.right, bottom)], 1.5, MUTED);
        let fonts = self.fonts;
        for tick in panel.ticks(|text| fonts.width(text, LABEL_SIZE, Weight::Regular)) {
            let x = panel.tick_x(&tick);
            self.scene.line(vec![at(x, bottom), at(x, bottom + 7.0)], 1.5, MUTED);
            self.write(&tick.text, QUIET, Anchor::Centre, at(x, bottom + 28.0));
        }
        let middle = (panel.left + panel.right) / 2.0;
        self.write(&panel.name(), QUIET, Anchor::Centre, at(middle, bottom + 58.0));
    }

    /// The curves by name where they end, and among them the level lines that have no room for theirs.
    fn names_of_curves(&mut self, levels: &[(f64, &str, Style)]) {
        let ends = self.layout.panels[self.layout.panels.len() - 1].last().map(|c| self.layout.axis.y(c));
        let mut names = vec![
            (ends.loosest, "loosest", Style { colour: LOOSEST, ..LABEL }),
            (ends.middle, "middle", Style { weight: Weight::Bold, colour: MIDDLE, ..LABEL }),
            (ends.tightest, "tightest", Style { colour: TIGHTEST, ..LABEL }),
        ];
        names.extend(levels.iter().map(|(level, text, style)| (self.layout.axis.y(*level), *text, *style)));
        names.sort_by(|a, b| a.0.total_cmp(&b.0));
        let inside = NAME_PITCH + LABEL_SIZE / 2.0;
        let column = (self.layout.axis.top + inside, self.layout.axis.bottom - inside);
        let wanted: Vec<f64> = names.iter().map(|name| name.0).collect();
        let heights = spread(&wanted, NAME_PITCH, column);
        for ((wanted, text, style), y) in names.into_iter().zip(heights) {
            self.leader(wanted, y, style.colour);
            let left = self.layout.right() + layout::LEADER;
            self.write(text, style, Anchor::Left, at(left, centred(y, style.size)));
        }
    }

    /// The regions by name, at the top and the bottom of the right margin: upwards is clear.
    fn names_of_regions(&mut self) {
        let left = self.layout.right() + layout::LEADER;
        let inside = LABEL_SIZE / 2.0;
        let (top, bottom) = (self.layout.axis.top + inside, self.layout.axis.bottom - inside);
        for (text, y, way) in [(layout::CLEAR, top, -1.0), (layout::INTERFERENCE, bottom, 1.0)] {
            self.arrow(at(left + 6.0, y), way);
            self.write(text, QUIET, Anchor::Left, at(left + layout::ARROW, centred(y, LABEL_SIZE)));
        }
    }

    fn leader(&mut self, from: f64, to: f64, colour: Colour) {
        let right = self.layout.right();
        let (start, end) = (at(right + 3.0, from), at(right + layout::LEADER - 5.0, to));
        if (to - from).abs() > LEAST_LEADER {
            self.scene.line(vec![start, end], THIN, colour);
        }
    }

    /// A small arrow head that points up (-1) or down (1).
    fn arrow(&mut self, centre: Point, way: f64) {
        let (half, tip) = (6.0, 5.5 * way);
        let base = centre.y - tip;
        self.scene
            .fill(vec![at(centre.x - half, base), at(centre.x + half, base), at(centre.x, centre.y + tip)], MUTED);
    }

    /// Names the level line at `clearance`, with the first of `texts` that no other line runs through; false where there is none.
    fn name_along(&mut self, clearance: f64, texts: &[&str], colour: Colour) -> bool {
        let (top, bottom) = (self.layout.axis.top, self.layout.axis.bottom);
        let room = |p: &Panel| Area { left: p.left + INSET, top, right: p.right - INSET, bottom };
        let rooms: Vec<Area> = self.layout.panels.iter().map(room).collect();
        let y = self.layout.axis.y(clearance);
        let mut places = texts.iter().filter_map(|text| {
            let width = self.fonts.width(text, LABEL_SIZE, Weight::Regular);
            let place = along::place(Wanted { y, width, size: LABEL_SIZE }, &rooms, &self.obstacles)?;
            Some((place.crossings, place.start, *text))
        });
        let free = places.find(|(crossings, ..)| *crossings == 0);
        if let Some((_, start, text)) = free {
            self.write(text, Style { colour, ..LABEL }, Anchor::Left, start);
        }
        free.is_some()
    }
}

/// The baseline that centres capitals on `y`.
fn centred(y: f64, size: f64) -> f64 {
    y + CAP_HEIGHT * size / 2.0
}

fn dashed(scene: &mut Scene, line: &[Point], pattern: Pattern, width: f64, colour: Colour) {
    let pieces = dash::pieces(line, pattern);
    scene.shapes.extend(pieces.into_iter().map(|points| Shape::Line { points, width, colour }));
}
