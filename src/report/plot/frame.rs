//! A page with one field between two axes: title above, numbers and names along the axes, notes below.

use super::PlotError;
use super::font::{Fonts, Weight};
use super::layout::{LABEL_SIZE, RIM, SUBTITLE_PITCH, SUBTITLE_SIZE, TITLE_PITCH, TITLE_SIZE, WIDTH};
use super::palette::{GRID, MUTED};
use super::pen::{LABEL, Pen, QUIET, baseline};
use super::scene::{Area, Point, at};
use super::units::{decimals_of, fixed, multiples, round_step};

/// Height of the field.
const HEIGHT: f64 = 470.0;
/// Between the field and its numbers.
const NUMBER_SPACE: f64 = 10.0;
/// Least distance of two numbers along the axes.
const PITCH: (f64, f64) = (84.0, 44.0);
/// Pitch of the lines below.
pub(super) const NOTE_PITCH: f64 = 27.0;
/// Lines of title and subtitle that a page can carry.
const MOST_LINES: usize = 12;

/// What stands around the field.
pub(super) struct Around<'a> {
    pub(super) title: &'a str,
    pub(super) subtitle: &'a str,
    /// Lines below the field; a line that is too long is wrapped.
    pub(super) notes: &'a [String],
    /// Room that is kept free to the right of the field.
    pub(super) margin: f64,
}

/// One axis.
#[derive(Clone, Debug)]
pub(super) struct Axis {
    pub(super) name: String,
    pub(super) from: f64,
    pub(super) to: f64,
    /// Names at 0, 1, 2 and so on where the axis has no numbers.
    pub(super) names: Option<Vec<String>>,
}

impl Axis {
    /// An axis of numbers; of a single one, half a unit around it.
    pub(super) fn over(name: String, from: f64, to: f64) -> Self {
        let (from, to) = if to - from > 1e-9 { (from, to) } else { (from - 0.5, to + 0.5) };
        Self { name, from, to, names: None }
    }

    /// An axis of names.
    pub(super) fn of(name: String, names: Vec<String>) -> Self {
        Self { name, from: -0.5, to: names.len() as f64 - 0.5, names: Some(names) }
    }

    fn ticks(&self, span: f64, pitch: f64) -> Vec<(f64, String)> {
        if let Some(names) = &self.names {
            return names.iter().enumerate().map(|(i, name)| (i as f64, name.clone())).collect();
        }
        let step = round_step((self.to - self.from) * pitch / span);
        multiples(self.from, self.to, step).into_iter().map(|value| (value, fixed(value, decimals_of(step)))).collect()
    }
}

/// The field with its scales, and the page that it stands on.
pub(super) struct Frame<'f> {
    pub(super) pen: Pen<'f>,
    pub(super) field: Area,
    across: Axis,
    up: Axis,
}

impl<'f> Frame<'f> {
    /// The page with its words; the field is still empty.
    pub(super) fn new(around: &Around<'_>, across: Axis, up: Axis, fonts: &'f Fonts) -> Result<Self, PlotError> {
        let width = WIDTH - 2.0 * RIM;
        let title = fonts.wrap(around.title, TITLE_SIZE, Weight::Bold, width);
        let subtitle = fonts.wrap(around.subtitle, SUBTITLE_SIZE, Weight::Regular, width);
        let lines = title.len() + subtitle.len();
        if lines > MOST_LINES {
            return Err(PlotError::TitleTooLong { lines, most: MOST_LINES });
        }
        let notes: Vec<String> =
            around.notes.iter().flat_map(|note| fonts.wrap(note, LABEL_SIZE, Weight::Regular, width)).collect();
        let head = RIM + title.len() as f64 * TITLE_PITCH + subtitle.len() as f64 * SUBTITLE_PITCH;
        let top = head + 44.0;
        let bottom = top + HEIGHT;
        let numbers = up.ticks(HEIGHT, PITCH.1);
        let widest = numbers.iter().map(|(_, text)| fonts.width(text, LABEL_SIZE, Weight::Regular));
        let left = RIM + widest.fold(0.0, f64::max) + NUMBER_SPACE;
        let field = Area { left, top, right: WIDTH - RIM - around.margin, bottom };
        let below = if notes.is_empty() { 0.0 } else { 18.0 + NOTE_PITCH * notes.len() as f64 };
        let pen = Pen::new(WIDTH, bottom + 74.0 + below + RIM, fonts);
        let mut frame = Self { pen, field, across, up };
        frame.pen.headings(&title, &subtitle);
        let name = frame.up.name.clone();
        frame.pen.write(&name, QUIET, 0.0, at(RIM, top - 16.0));
        for (i, note) in notes.iter().enumerate() {
            frame.pen.write(note, LABEL, 0.0, at(RIM, bottom + 74.0 + 18.0 + NOTE_PITCH * i as f64));
        }
        Ok(frame)
    }

    pub(super) fn x(&self, value: f64) -> f64 {
        let share = (value - self.across.from) / (self.across.to - self.across.from);
        self.field.left + share * (self.field.right - self.field.left)
    }

    pub(super) fn y(&self, value: f64) -> f64 {
        let share = (value - self.up.from) / (self.up.to - self.up.from);
        self.field.bottom - share * (self.field.bottom - self.field.top)
    }

    pub(super) fn at(&self, across: f64, up: f64) -> Point {
        at(self.x(across), self.y(up))
    }

    /// Lines through the numbers, behind what is drawn later.
    pub(super) fn grid(&mut self) {
        for (value, _) in self.across_ticks() {
            let x = self.x(value);
            self.pen.scene.line(vec![at(x, self.field.top), at(x, self.field.bottom)], 1.0, GRID);
        }
        for (value, _) in self.up_ticks() {
            let y = self.y(value);
            self.pen.scene.line(vec![at(self.field.left, y), at(self.field.right, y)], 1.0, GRID);
        }
    }

    /// The numbers and the rim, over what was drawn before.
    pub(super) fn rim(&mut self) {
        let Area { left, top, right, bottom } = self.field;
        self.pen.around(&[at(left, top), at(right, top), at(right, bottom), at(left, bottom)], 1.5, MUTED);
        let mut free = RIM;
        for (value, text) in self.across_ticks() {
            let (x, width) = (self.x(value), self.pen.width(&text, QUIET));
            self.pen.scene.line(vec![at(x, bottom), at(x, bottom + 7.0)], 1.5, MUTED);
            // A name that would run into the one before is left out; its mark stays.
            let start = (x - width / 2.0).min(WIDTH - RIM - width).max(RIM);
            if start >= free {
                self.pen.write(&text, QUIET, 0.0, at(start, bottom + 28.0));
                free = start + width + 14.0;
            }
        }
        for (value, text) in self.up_ticks() {
            let y = self.y(value);
            self.pen.write(&text, QUIET, 1.0, at(left - NUMBER_SPACE, baseline(y)));
        }
        let name = self.across.name.clone();
        self.pen.write(&name, QUIET, 0.5, at((left + right) / 2.0, bottom + 58.0));
    }

    fn across_ticks(&self) -> Vec<(f64, String)> {
        self.across.ticks(self.field.right - self.field.left, PITCH.0)
    }

    fn up_ticks(&self) -> Vec<(f64, String)> {
        self.up.ticks(self.field.bottom - self.field.top, PITCH.1)
    }
}
