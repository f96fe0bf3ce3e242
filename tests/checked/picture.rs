//! `plots/validation.svg`: error over allowed error of every row, a lane a set. Shape and place carry everything; the one
//! shade is as readable in grey.

use super::page::{by_row, error_and_share, worst};
use super::{Check, Set, sets};
use std::fmt::Write;

const WIDTH: f64 = 960.0;
const LANE: f64 = 19.0;
const HEADING: f64 = 24.0;
const TOP: f64 = 76.0;
/// Centre of the column of rows without a difference, and the ends of the axis.
const NONE: f64 = 372.0;
const AXIS: [f64; 2] = [420.0, 920.0];
/// Powers of ten at the ends of the axis. What is written has a thousandth of the allowed error at least.
const DECADES: [f64; 2] = [-4.0, 0.0];

/// Middle of the lane of a set, counted from the first.
fn middle(lane: usize) -> f64 {
    let families = sets().take(lane + 1).fold((0_u8, ""), |(count, family), set| {
        if set.family == family { (count, family) } else { (count + 1, set.family) }
    });
    TOP + HEADING * f64::from(families.0) + LANE * (lane as f64 + 0.5)
}

fn place(share: f64) -> f64 {
    let decades = (share.log10().max(DECADES[0]) - DECADES[0]) / (DECADES[1] - DECADES[0]);
    AXIS[0] + decades * (AXIS[1] - AXIS[0])
}

/// The dots of a set: a path of round ends, small enough for thousands of them.
pub fn lane(lane: usize, set: &Set, checks: &[Check]) -> String {
    let (rows, y) = (by_row(checks), middle(lane));
    let mut dots = String::new();
    for (k, row) in rows.iter().enumerate() {
        let share = error_and_share(worst(row)).1;
        // Spread across the lane, and across the column, by steps that never repeat.
        let spread = |step: f64| (k as f64 * step).fract() - 0.5;
        let x = if share > 0.0 { place(share) } else { NONE + 44.0 * spread(0.754_877_666) };
        write!(dots, "M{x:.1} {:.1}h0", y + 11.0 * spread(0.618_033_989)).unwrap();
    }
    let (label, count) = (set.title.replace('&', "&amp;"), rows.len());
    format!(
        "<text class=\"set\" x=\"300\" y=\"{:.1}\">{label}</text><text class=\"count\" x=\"334\" y=\"{:.1}\">{count}</text>\
         <path class=\"dots\" d=\"{dots}\"/>\n",
        y + 4.0,
        y + 4.0
    )
}

const STYLE: &str = "text{font:12px sans-serif;fill:#111}.title{font-size:16px;font-weight:bold}.family{font-weight:bold}\
    .set,.count{text-anchor:end}.axis{text-anchor:middle}.grid{stroke:#ccc}.limit{stroke:#111;stroke-width:2}\
    .dots{fill:none;stroke:#111;stroke-opacity:.55;stroke-width:4.4;stroke-linecap:round}";

/// Everything but the lanes.
pub fn frame() -> String {
    let count = sets().count();
    let bottom = middle(count - 1) + LANE / 2.0 + 4.0;
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{WIDTH}\" height=\"{height}\" viewBox=\"0 0 {WIDTH} {height}\">\n\
         <title>Error of each reference row, as a share of what is allowed</title>\n<desc>Dots on a logarithmic axis, a lane for each set \
         of rows; every number is in validation.md.</desc>\n<style>{STYLE}</style>\n<rect width=\"{WIDTH}\" height=\"{height}\" fill=\"#fff\"/>\n\
         <text class=\"title\" x=\"16\" y=\"26\">Error of each reference row, as a share of what is allowed</text>\n\
         <text x=\"16\" y=\"46\">One dot a row, at its value that is nearest to the limit; the number is the count of rows.</text>\n",
        height = bottom + 46.0
    );
    let mut family = "";
    for (lane, set) in sets().enumerate() {
        if set.family != family {
            family = set.family;
            let y = middle(lane) - LANE / 2.0 - 6.0;
            writeln!(text, "<text class=\"family\" x=\"16\" y=\"{y:.1}\">{family}</text>").unwrap();
        }
    }
    for (decade, name) in (-4..=0).zip(["0.01 %", "0.1 %", "1 %", "10 %", "100 %"]) {
        let x = place(10_f64.powi(decade));
        let class = if decade == 0 { "limit" } else { "grid" };
        writeln!(
            text,
            "<path class=\"{class}\" d=\"M{x:.1} {TOP}V{bottom:.1}\"/><text class=\"axis\" x=\"{x:.1}\" y=\"{:.1}\">{name}</text>",
            bottom + 16.0
        )
        .unwrap();
    }
    writeln!(
        text,
        "<text class=\"axis\" x=\"{NONE}\" y=\"{:.1}\">none</text><text class=\"axis\" x=\"{:.1}\" y=\"{:.1}\">error / allowed error, \
         logarithmic</text><text class=\"axis\" x=\"{}\" y=\"{:.1}\">allowed</text>",
        bottom + 16.0,
        f64::midpoint(AXIS[0], AXIS[1]),
        bottom + 34.0,
        AXIS[1],
        TOP - 6.0
    )
    .unwrap();
    text
}

/// The whole picture from the checks of every set.
pub fn picture(all: &[Vec<Check>]) -> String {
    let mut text = frame();
    for (number, (set, checks)) in sets().zip(all).enumerate() {
        text.push_str(&lane(number, set, checks));
    }
    text + "</svg>\n"
}
