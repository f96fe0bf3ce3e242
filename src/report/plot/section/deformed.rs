//! Where the nodes are drawn: to scale, with their displacements magnified.

use super::bands::Surface;
use super::{SectionPicture, readings};
use crate::plan::drawing::SectionPlan;
use crate::quantity::Length;
use crate::report::plot::scene::{Point, at};
use crate::section::{Node, PartField};
use std::ops::Range;
use uom::si::length::meter;

/// Largest displacement on the page as a share of the smaller extent of the section.
const LARGEST: f64 = 0.06;
/// How far beyond the ring's faces a longer seat is drawn, in widths of the ring.
const BEYOND: f64 = 1.0;

/// The section in metres: what is drawn of it, and how much its displacements are magnified.
pub(super) struct Extent {
    pub(super) axial: Range<f64>,
    pub(super) radial: Range<f64>,
    pub(super) magnified: f64,
    /// Whether the seat goes on beyond what is drawn.
    pub(super) cut: bool,
}

fn metres(length: Length) -> f64 {
    length.get::<meter>()
}

/// Radial room that the inner part takes beyond the bore before it is fitted: nothing at its inside, half the interference
/// at its outside, so that both surfaces meet after it.
pub(super) fn oversize(seat: &SectionPlan, part: usize, node: &Node) -> f64 {
    if part > 0 {
        return 0.0;
    }
    let radii = || seat.field.parts[0].nodes.iter().map(|node| metres(node.place.radius));
    let (inner, outer) = (radii().fold(f64::INFINITY, f64::min), metres(seat.nominal) / 2.0);
    let share = (metres(node.place.radius) - inner) / (outer - inner);
    metres(seat.interference) / 2.0 * share.clamp(0.0, 1.0)
}

/// Elements of a part that lie in what is drawn.
fn drawn<'p>(part: &'p PartField, axial: &'p Range<f64>) -> impl Iterator<Item = &'p [usize; 8]> {
    let inside = |element: &&[usize; 8]| {
        let z = |k: usize| metres(part.nodes[element[k]].place.position);
        let middle = (z(0) + z(2)) / 2.0;
        middle >= axial.start && middle <= axial.end
    };
    part.elements.iter().filter(inside)
}

impl Extent {
    pub(super) fn of(seat: &SectionPlan) -> Self {
        let width = metres(seat.width);
        let window = -BEYOND * width..(1.0 + BEYOND) * width;
        let (mut axial, mut radial) = (f64::INFINITY..f64::NEG_INFINITY, f64::INFINITY..f64::NEG_INFINITY);
        let mut largest = 0.0_f64;
        let mut all = 0;
        let mut kept = 0;
        for (k, part) in seat.field.parts.iter().enumerate() {
            all += part.elements.len();
            for element in drawn(part, &window) {
                kept += 1;
                for node in element.map(|node| &part.nodes[node]) {
                    let (r, z) = (metres(node.place.radius), metres(node.place.position));
                    axial = axial.start.min(z)..axial.end.max(z);
                    radial = radial.start.min(r)..radial.end.max(r);
                    let moved = metres(node.radial) + oversize(seat, k, node);
                    largest = largest.max(moved.abs()).max(metres(node.axial).abs()).max(oversize(seat, k, node).abs());
                }
            }
        }
        let room = LARGEST * (axial.end - axial.start).min(radial.end - radial.start);
        let magnified = if largest > 0.0 { round_below(room / largest) } else { 1.0 };
        Self { axial, radial, magnified, cut: kept < all }
    }
}

/// The largest of 1, 2 and 5 times a power of ten that is not above `most`, and 1 at least.
fn round_below(most: f64) -> f64 {
    let power = 10_f64.powf(most.log10().floor());
    [5.0, 2.0, 1.0].iter().map(|m| m * power).find(|value| *value <= most).unwrap_or(power).max(1.0)
}

/// From metres to the page.
pub(super) struct Scale {
    pub(super) px: f64,
    pub(super) left: f64,
    pub(super) bottom: f64,
    pub(super) from: (f64, f64),
}

impl Scale {
    pub(super) fn x(&self, axial: f64) -> f64 {
        self.left + (axial - self.from.0) * self.px
    }

    pub(super) fn y(&self, radius: f64) -> f64 {
        self.bottom - (radius - self.from.1) * self.px
    }

    fn place(&self, node: &Node, (radial, axial): (f64, f64)) -> Point {
        at(self.x(metres(node.place.position) + axial), self.y(metres(node.place.radius) + radial))
    }
}

/// A part as it is drawn, before and after it is fitted.
pub(super) struct Drawn {
    pub(super) before: Vec<Vec<Point>>,
    pub(super) after: Surface,
}

pub(super) fn part(request: &SectionPicture, number: usize, extent: &Extent, scale: &Scale) -> Drawn {
    let (seat, part) = (request.seat, &request.seat.field.parts[number]);
    let room = |node: &Node| extent.magnified * oversize(seat, number, node);
    let moved = |node: &Node| extent.magnified * metres(node.radial) + room(node);
    let before = |node: &Node| scale.place(node, (room(node), 0.0));
    let after = |node: &Node| scale.place(node, (moved(node), extent.magnified * metres(node.axial)));
    let surface = |place: &dyn Fn(&Node) -> Point| {
        let values = part.nodes.iter().map(|node| request.show.of(node, request.system)).collect();
        let mut surface = Surface { points: part.nodes.iter().map(place).collect(), values, triangles: Vec::new() };
        let (from, to) = (extent.axial.start, extent.axial.end);
        drawn(part, &(from..to)).for_each(|element| surface.add(element));
        surface
    };
    Drawn { before: surface(&before).outline(), after: surface(&after) }
}

/// Values of the drawn nodes that are read: those away from singular places.
pub(super) fn range(request: &SectionPicture, extent: &Extent) -> Range<f64> {
    let (field, system) = (&request.seat.field, request.system);
    let far = |node: &Node| {
        field.singular.iter().all(|place| {
            let (r, z) = (node.place.radius - place.radius, node.place.position - place.position);
            metres(r).hypot(metres(z)) >= metres(field.unread)
        })
    };
    let mut range = f64::INFINITY..f64::NEG_INFINITY;
    for part in &field.parts {
        for element in drawn(part, &extent.axial) {
            for node in element.map(|node| &part.nodes[node]).into_iter().filter(|node| far(node)) {
                let value = request.show.of(node, system);
                range = range.start.min(value)..range.end.max(value);
            }
        }
    }
    range
}

/// The place of a stress on the page, as its node has moved.
pub(super) fn moved(request: &SectionPicture, extent: &Extent, scale: &Scale, radius: Length, axial: Length) -> Point {
    let seat = request.seat;
    let nodes = seat.field.parts.iter().enumerate().flat_map(|(k, part)| part.nodes.iter().map(move |node| (k, node)));
    let far =
        |(_, node): &(usize, &Node)| metres(node.place.radius - radius).hypot(metres(node.place.position - axial));
    let nearest = nodes.min_by(|a, b| far(a).total_cmp(&far(b)));
    nearest.map_or(at(scale.x(metres(axial)), scale.y(metres(radius))), |(k, node)| {
        let radial = extent.magnified * (metres(node.radial) + oversize(seat, k, node));
        scale.place(node, (radial, extent.magnified * metres(node.axial)))
    })
}

/// Lengths of the page's axes in the units of the picture.
pub(super) fn shown(request: &SectionPicture, metres: f64) -> f64 {
    readings::length(Length::new::<meter>(metres), request.system)
}
