//! Pressure along the seat, under the section and on its axial scale.

use super::deformed::Scale;
use super::{SectionPicture, leaders, readings};
use crate::plan::drawing::SectionPlan;
use crate::quantity::Length;
use crate::report::plot::dash;
use crate::report::plot::font::Weight;
use crate::report::plot::palette::{GRID, INK, MIDDLE, MUTED, TIGHTEST};
use crate::report::plot::pen::{LABEL, Pen, QUIET, Style, baseline, rectangle};
use crate::report::plot::scene::{Area, Point, at};
use crate::report::plot::units::{decimals_of, fixed, multiples, round_step};
use crate::section::{Contact, PressureAt};
use uom::si::length::meter;

/// Height of the diagram, px.
pub(super) const HEIGHT: f64 = 170.0;
/// Least distance of two grid lines.
const PITCH: f64 = 44.0;
const NAME_PITCH: f64 = 27.0;

/// A curve of the diagram.
struct Curve<'a> {
    contact: &'a Contact,
    name: &'static str,
    dashes: dash::Pattern,
    style: Style,
}

/// The seat, and the seam of a liner.
fn curves(seat: &SectionPlan) -> Vec<Curve<'_>> {
    let style = Style { weight: Weight::Bold, colour: MIDDLE, ..LABEL };
    let of_seat = ("this seat", &[] as &[f64], style);
    let of_seam = ("liner’s seam", dash::SHORT, Style { colour: INK, ..LABEL });
    let kinds = [of_seat, of_seam].into_iter().zip(&seat.state.contacts);
    kinds.map(|((name, dashes, style), contact)| Curve { contact, name, dashes, style }).collect()
}

/// Heights on the page of pressures.
struct Axis {
    least: f64,
    most: f64,
    bottom: f64,
}

impl Axis {
    fn of(request: &SectionPicture, curves: &[Curve<'_>], bottom: f64) -> Self {
        let value = |at: &PressureAt| readings::pressure(at.pressure, request.system);
        let plane = readings::pressure(request.seat.plane.pressure, request.system).max(0.0);
        let all = || curves.iter().flat_map(|curve| curve.contact.pressure.iter().map(value));
        let (least, most) = (all().fold(0.0, f64::min), all().fold(plane, f64::max));
        let room = 0.12 * (most - least);
        if room > 0.0 {
            // A bonded seam may pull.
            let least = if least < 0.0 { least - 0.5 * room } else { 0.0 };
            Self { least, most: most + room, bottom }
        } else {
            Self { least: 0.0, most: 1.0, bottom }
        }
    }

    fn y(&self, pressure: f64) -> f64 {
        self.bottom - (pressure - self.least) / (self.most - self.least) * HEIGHT
    }
}

/// The diagram with its lower side at `bottom`, between the two ends of the drawn section.
pub(super) fn draw(pen: &mut Pen<'_>, request: &SectionPicture, scale: &Scale, (left, right): (f64, f64), bottom: f64) {
    let seat = request.seat;
    let x = |position: Length| scale.x(position.get::<meter>());
    let (from, to) = ends(seat);
    if !seat.touches() {
        pen.scene.line(vec![at(left, bottom), at(right, bottom)], 1.5, MUTED);
        let middle = at((x(from) + x(to)) / 2.0, bottom - HEIGHT / 2.0);
        pen.write("none: the parts do not touch", LABEL, 0.5, middle);
        return;
    }
    let curves = curves(seat);
    let axis = Axis::of(request, &curves, bottom);
    unread(pen, seat, (x(from), x(to)), &x, (bottom - HEIGHT, bottom));
    let step = round_step((axis.most - axis.least) * PITCH / HEIGHT);
    for pressure in multiples(axis.least, axis.most, step) {
        let y = axis.y(pressure);
        pen.scene.line(vec![at(left, y), at(right, y)], 1.0, GRID);
        pen.write(&fixed(pressure, decimals_of(step)), QUIET, 1.0, at(left - 10.0, baseline(y)));
    }
    pen.scene.line(vec![at(left, axis.y(0.0)), at(right, axis.y(0.0))], 1.5, MUTED);
    let plane = axis.y(readings::pressure(seat.plane.pressure, request.system));
    pen.dashed(&[at(x(from), plane), at(x(to), plane)], dash::LONG, 2.5, TIGHTEST);
    let mut ends = vec![(at(x(to), plane), "two plain rings", Style { colour: TIGHTEST, ..LABEL }, TIGHTEST)];
    for Curve { contact, name, dashes, style } in curves {
        let place = |p: &PressureAt| at(x(p.position), axis.y(readings::pressure(p.pressure, request.system)));
        // A liner may go on beyond the picture.
        let points: Vec<Point> = contact.pressure.iter().map(place).filter(|p| p.x >= left && p.x <= right).collect();
        let Some(last) = points.last().copied() else { continue };
        ends.push((last, name, style, style.colour));
        if dashes.is_empty() {
            pen.scene.line(points, 4.5, style.colour);
        } else {
            pen.dashed(&points, dashes, 3.0, style.colour);
        }
    }
    leaders::draw(pen, &ends, (right, NAME_PITCH), (bottom - HEIGHT + 10.0, bottom - 10.0));
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
