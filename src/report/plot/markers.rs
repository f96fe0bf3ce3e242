//! Markers of the moments: a shape for each kind, so that they keep apart without colour.

use super::palette::{INK, PAPER};
use super::scene::{Area, Point, Scene, at};
use crate::plan::clearance_history::MomentKind;
use std::f64::consts::TAU;

const RADIUS: f64 = 9.0;
const OUTLINE: f64 = 3.0;

/// Draws the marker of `kind` about `centre`, with a rim of paper around it.
pub(super) fn draw(scene: &mut Scene, kind: MomentKind, centre: Point) {
    scene.fill(outline(kind, centre, RADIUS + OUTLINE), PAPER);
    scene.fill(outline(kind, centre, RADIUS), INK);
}

/// The box of a marker with its rim.
pub(super) fn area(centre: Point) -> Area {
    Area { left: centre.x, top: centre.y, right: centre.x, bottom: centre.y }.grown(1.3 * (RADIUS + OUTLINE))
}

fn outline(kind: MomentKind, centre: Point, radius: f64) -> Vec<Point> {
    match kind {
        MomentKind::OutOfMedium => regular(centre, radius, 48, 0.0),
        MomentKind::AtBore => regular(centre, radius * 1.25, 4, 0.0),
        MomentKind::FirstClears => regular(centre, radius * 1.25, 3, -0.25),
        MomentKind::Grips => regular(centre, radius * 1.25, 3, 0.25),
        MomentKind::NoLongerClears => regular(centre, radius * 1.25, 4, 0.125),
    }
}

/// A polygon of equal sides; `turn` in whole turns, its first corner to the right at zero.
fn regular(centre: Point, radius: f64, corners: u32, turn: f64) -> Vec<Point> {
    let corner = |i| TAU * (turn + f64::from(i) / f64::from(corners));
    (0..corners).map(|i| at(centre.x + radius * corner(i).cos(), centre.y + radius * corner(i).sin())).collect()
}
