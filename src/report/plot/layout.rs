//! Where things stand on the page, from top to bottom: title, moments, curves, time axes.

use super::axes::{ClearanceAxis, Panel, Tick};
use super::flags::{self, Flag, Pole};
use super::font::{Fonts, Weight};
use super::readings::{Readings, Stop};
use super::units::{length_name, length_text, moment_time, moment_unit};
use super::{PlotError, PlotRequest};
use crate::plan::clearance_history::MomentKind;
use crate::quantity::System;

/// Width of the page; with the height it is what a phone held sideways shows at half size.
pub(super) const WIDTH: f64 = 960.0;
/// Height of the page, unless a long title or many moments need more.
const HEIGHT: f64 = 640.0;
/// White rim of the page.
pub(super) const RIM: f64 = 18.0;
/// Type sizes: nothing is set smaller than 20 px.
pub(super) const TITLE_SIZE: f64 = 28.0;
pub(super) const SUBTITLE_SIZE: f64 = 21.0;
pub(super) const LABEL_SIZE: f64 = 20.0;
pub(super) const TITLE_PITCH: f64 = 36.0;
pub(super) const SUBTITLE_PITCH: f64 = 28.0;
pub(super) const FLAG_PITCH: f64 = 28.0;
/// Distance of the lowest flags' baseline from the top of the axis; a number may stand at the very top.
pub(super) const FLAG_FOOT: f64 = 18.0;
/// Lines of title and subtitle together that a picture can carry.
const MOST_LINES: usize = 12;
/// Space between the numbers of the clearance axis and the curves.
pub(super) const NUMBER_SPACE: f64 = 10.0;
/// Space between the curves and the names in the right margin, crossed by leaders.
pub(super) const LEADER: f64 = 24.0;
/// Room for the arrow before the name of a region.
pub(super) const ARROW: f64 = 18.0;
/// Least height of the curves.
const LEAST_PLOT: f64 = 330.0;
/// Height below the curves: numbers and name of the time axis.
const FOOT: f64 = 78.0;
/// Least span of the clearance axis, so that flat curves do not magnify nothing: µm or thousandths of an inch.
const LEAST_SPAN: (f64, f64) = (4.0, 0.2);

pub(super) const CLEAR: &str = "clear";
pub(super) const INTERFERENCE: &str = "interference";

/// The page, ready to be drawn on.
pub(super) struct Layout {
    pub(super) height: f64,
    pub(super) title: Vec<String>,
    pub(super) subtitle: Vec<String>,
    pub(super) axis: ClearanceAxis,
    pub(super) axis_name: String,
    /// Row of the axis name among the flags.
    pub(super) axis_row: usize,
    pub(super) clearances: Vec<Tick>,
    pub(super) panels: Vec<Panel>,
    pub(super) moments: Vec<MomentLabel>,
}

/// The label of a moment with its place.
pub(super) struct MomentLabel {
    pub(super) stop: Stop,
    pub(super) text: String,
    pub(super) x: f64,
    pub(super) flag: Flag,
}

impl Layout {
    pub(super) fn new(request: &PlotRequest, readings: &Readings, fonts: &Fonts) -> Result<Self, PlotError> {
        let (title, subtitle) = headings(request, fonts)?;
        let least_span = if request.system == System::Metric { LEAST_SPAN.0 } else { LEAST_SPAN.1 };
        let mut axis = ClearanceAxis::over(readings, least_span);
        let clearances = axis.ticks(LEAST_PLOT);
        let set = |text: &str| fonts.width(text, LABEL_SIZE, Weight::Regular);
        let numbers = clearances.iter().map(|tick| set(&tick.text)).fold(0.0, f64::max);
        // The name of the placing clearance goes there when curves leave it no room.
        let [_, placing] = placing_names(request);
        let right = WIDTH - RIM - LEADER - set(&placing).max(ARROW + set(INTERFERENCE));
        let panels = Panel::side_by_side(readings, RIM + numbers + NUMBER_SPACE, right);
        let axis_name = format!("clearance, {}", length_name(request.system));
        let (moments, axis_row) = moments(&readings.stops, &panels, set(&axis_name), set);
        let rows = 1 + moments.iter().map(|m| m.flag.row).fold(axis_row, usize::max);
        let head = RIM + title.len() as f64 * TITLE_PITCH + subtitle.len() as f64 * SUBTITLE_PITCH;
        axis.top = head + rows as f64 * FLAG_PITCH + FLAG_FOOT + 4.0;
        let height = HEIGHT.max(axis.top + LEAST_PLOT + FOOT);
        axis.bottom = height - FOOT;
        Ok(Self { height, title, subtitle, axis, axis_name, axis_row, clearances, panels, moments })
    }

    /// Right end of the curves.
    pub(super) fn right(&self) -> f64 {
        self.panels[self.panels.len() - 1].right
    }

    /// Left end of the curves.
    pub(super) fn left(&self) -> f64 {
        self.panels[0].left
    }

    /// Baseline of a row of flags.
    pub(super) fn flag_baseline(&self, row: usize) -> f64 {
        self.axis.top - FLAG_FOOT - row as f64 * FLAG_PITCH
    }
}

/// Names of the placing clearance, the full one and the short one.
pub(super) fn placing_names(request: &PlotRequest) -> [String; 2] {
    let least = length_text(request.history.placing_clearance, request.system);
    [format!("placing clearance {least}"), format!("placing {least}")]
}

fn headings(request: &PlotRequest, fonts: &Fonts) -> Result<(Vec<String>, Vec<String>), PlotError> {
    let width = WIDTH - 2.0 * RIM;
    let title = fonts.wrap(request.title, TITLE_SIZE, Weight::Bold, width);
    let subtitle = fonts.wrap(request.subtitle, SUBTITLE_SIZE, Weight::Regular, width);
    let lines = title.len() + subtitle.len();
    if lines > MOST_LINES {
        return Err(PlotError::TitleTooLong { lines, most: MOST_LINES });
    }
    Ok((title, subtitle))
}

/// The labels of the moments, and the row that is free for the name of the clearance axis.
fn moments(stops: &[Stop], panels: &[Panel], name_width: f64, set: impl Fn(&str) -> f64) -> (Vec<MomentLabel>, usize) {
    let shown = stops.iter().filter_map(|stop| {
        let panel = panels.iter().rev().find(|panel| panel.shows(stop))?;
        let counted = panel.counted(stop.time);
        let time = moment_time(counted, moment_unit(counted, panel.unit), stop.kind);
        Some((*stop, moment_text(stop.kind, &time), panel.x(stop.time)))
    });
    let shown: Vec<(Stop, String, f64)> = shown.collect();
    let poles: Vec<Pole> = shown.iter().map(|(_, text, x)| Pole { x: *x, width: set(text) }).collect();
    let flags = flags::place(&poles, (RIM, WIDTH - RIM));
    let row = flags::free_row(&poles, &flags, (RIM, RIM + name_width));
    let labels = shown.into_iter().zip(flags);
    (labels.map(|((stop, text, x), flag)| MomentLabel { stop, text, x, flag }).collect(), row)
}

fn moment_text(kind: MomentKind, time: &str) -> String {
    match kind {
        MomentKind::OutOfMedium => "out of the medium".to_owned(),
        MomentKind::AtBore => format!("at the bore, {time}"),
        MomentKind::FirstClears => format!("all clear from {time}"),
        MomentKind::Grips => format!("grips after {time}"),
        MomentKind::NoLongerClears => format!("all clear until {time}"),
    }
}
