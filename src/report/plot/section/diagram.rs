//! Pressure along the seat, under the section and on its axial scale.

use super::deformed::Scale;
use super::{SectionPicture, readings};
use crate::plan::drawing::SectionPlan;
use crate::quantity::Length;
use crate::report::plot::column::spread;
use crate::report::plot::dash;
use crate::report::plot::font::Weight;
use crate::report::plot::palette::{GRID, INK, MIDDLE, MUTED, TIGHTEST};
use crate::report::plot::pen::{LABEL, Pen, QUIET, Style, baseline, rectangle};
use crate::report::plot::scene::{Area, Point, at};
use crate::report::plot::units::{decimals_of, fixed, multiples, round_step};
use uom::si::length::meter;

/// Height of the diagram, px.
pub(super) const HEIGHT: f64 = 170.0;
/// Least distance of two grid lines.
const PITCH: f64 = 44.0;
const NAME_PITCH: f64 = 27.0;

/// The diagram with its lower side at `bottom`, between the two ends of the drawn section.
pub(super) fn draw(pen: &mut Pen<'_>, request: &SectionPicture, scale: &Scale, (left, right): (f64, f64), bottom: f64) {
    let seat = request.seat;
    let value = |pressure| readings::pressure(pressure, request.system);
    let contact = &seat.state.contacts[0];
    let plane = value(seat.plane.pressure);
    let most = contact.pressure.iter().map(|at| value(at.pressure)).fold(plane, f64::max);
    let most = if most > 0.0 { 1.12 * most } else { 1.0 };
    let y = |value: f64| bottom - value / most * HEIGHT;
    let x = |position: Length| scale.x(position.get::<meter>());
    let (from, to) = ends(seat);
    if !seat.touches() {
        pen.scene.line(vec![at(left, bottom), at(right, bottom)], 1.5, MUTED);
        let middle = at((x(from) + x(to)) / 2.0, bottom - HEIGHT / 2.0);
        pen.write("none: the parts do not touch", LABEL, 0.5, middle);
        return;
    }
    unread(pen, seat, (x(from), x(to)), &x, (bottom - HEIGHT, bottom));
    let step = round_step(most * PITCH / HEIGHT);
    for pressure in multiples(0.0, most, step) {
        pen.scene.line(vec![at(left, y(pressure)), at(right, y(pressure))], 1.0, GRID);
        pen.write(&fixed(pressure, decimals_of(step)), QUIET, 1.0, at(left - 10.0, baseline(y(pressure))));
    }
    pen.scene.line(vec![at(left, bottom), at(right, bottom)], 1.5, MUTED);
    let level = vec![at(x(from), y(plane)), at(x(to), y(plane))];
    pen.dashed(&level, dash::LONG, 2.5, TIGHTEST);
    let curve: Vec<Point> = contact.pressure.iter().map(|p| at(x(p.position), y(value(p.pressure)))).collect();
    pen.scene.line(curve.clone(), 4.5, MIDDLE);
    let end = curve.last().map_or(bottom, |point| point.y);
    names(pen, right, &[(end, curve.last().map_or(right, |p| p.x)), (y(plane), x(to))], (bottom - HEIGHT, bottom));
}

/// Ends of the contact.
fn ends(seat: &SectionPlan) -> (Length, Length) {
    let contact = &seat.field.contacts[0];
    let part = &seat.field.parts[0];
    let at = |node: Option<&usize>| node.map_or(Length::default(), |node| part.nodes[*node].place.position);
    (at(contact.inner.first()), at(contact.inner.last()))
}

/// Grey where no pressure is read, and the ends of the contact as thin lines.
fn unread(
    pen: &mut Pen<'_>,
    seat: &SectionPlan,
    (from, to): (f64, f64),
    x: &dyn Fn(Length) -> f64,
    (top, bottom): (f64, f64),
) {
    let given = &seat.state.contacts[0].pressure;
    let read = given.first().zip(given.last()).map_or((from, to), |(a, b)| (x(a.position), x(b.position)));
    for (left, right) in [(from, read.0), (read.1, to)] {
        if right - left > 0.5 {
            pen.scene.fill(rectangle(&Area { left, right, top, bottom }), GRID);
        }
    }
    for end in [from, to] {
        pen.scene.line(vec![at(end, top), at(end, bottom)], 1.2, INK);
    }
}

fn names(pen: &mut Pen<'_>, right: f64, ends: &[(f64, f64); 2], (top, bottom): (f64, f64)) {
    let mut named = [
        (ends[0], "this seat", Style { weight: Weight::Bold, colour: MIDDLE, ..LABEL }),
        (ends[1], "two plain rings", Style { colour: TIGHTEST, ..LABEL }),
    ];
    named.sort_by(|a, b| a.0.0.total_cmp(&b.0.0));
    let heights = spread(&named.map(|name| name.0.0), NAME_PITCH, (top + 10.0, bottom - 10.0));
    for (((end, x), text, style), y) in named.into_iter().zip(heights) {
        pen.scene.line(vec![at(x + 4.0, end), at(right + 20.0, y)], 1.2, style.colour);
        pen.write(text, style, 0.0, at(right + 26.0, baseline(y)));
    }
}
