//! Where the nodes are drawn: to scale, with their displacements magnified.

use super::{SectionPicture, readings};
use crate::plan::drawing::SectionPlan;
use crate::quantity::Length;
use crate::report::plot::bands::Surface;
use crate::report::plot::scene::{Point, at};
use crate::section::{Node, PartField};
use std::ops::Range;
use uom::si::length::meter;

/// Largest displacement on the page as a share of the smaller extent of the section.
const LARGEST: f64 = 0.06;
/// How far beyond the ring's faces a longer seat is drawn, in widths of the ring.
const BEYOND: f64 = 0.6;

/// The section in metres: what is drawn of it, and how much its displacements are magnified.
pub(super) struct Extent {
    pub(super) axial: Range<f64>,
    pub(super) radial: Range<f64>,
    pub(super) magnified: f64,
    /// Whether the seat goes on beyond what is drawn.
    pub(super) cut: bool,
    shifts: Vec<f64>,
}

fn metres(length: Length) -> f64 {
    length.get::<meter>()
}

fn oversize(seat: &SectionPlan, part: usize, node: &Node) -> f64 {
    metres(seat.oversize(part, node))
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
        let shifts = shifts(seat);
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
                    largest = largest
                        .max(moved.abs())
                        .max((metres(node.axial) + shifts[k]).abs())
                        .max(oversize(seat, k, node).abs());
                }
            }
        }
        let room = LARGEST * (axial.end - axial.start).min(radial.end - radial.start);
        let magnified = if largest > 0.0 { round_below(room / largest) } else { 1.0 };
        Self { axial, radial, magnified, cut: kept < all, shifts }
    }

    /// Axial displacement of a node as it is drawn, not magnified.
    fn axial_move(&self, part: usize, node: &Node) -> f64 {
        metres(node.axial) + self.shifts[part]
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
    let after = |node: &Node| scale.place(node, (moved(node), extent.magnified * extent.axial_move(number, node)));
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

/// Where a place of one of these parts is drawn: with the node of theirs that is nearest to it.
pub(super) fn moved(
    request: &SectionPicture,
    (extent, scale): (&Extent, &Scale),
    parts: &[usize],
    (radius, axial): (Length, Length),
) -> Point {
    let seat = request.seat;
    let nodes = parts.iter().flat_map(|&k| seat.field.parts[k].nodes.iter().map(move |node| (k, node)));
    let far =
        |(_, node): &(usize, &Node)| metres(node.place.radius - radius).hypot(metres(node.place.position - axial));
    let nearest = nodes.min_by(|a, b| far(a).total_cmp(&far(b)));
    nearest.map_or(at(scale.x(metres(axial)), scale.y(metres(radius))), |(k, node)| {
        let radial = extent.magnified * (metres(node.radial) + oversize(seat, k, node));
        scale.place(node, (radial, extent.magnified * extent.axial_move(k, node)))
    })
}

/// By how much each part is shifted along the axis in the picture: a circle that keeps it from drifting stands somewhere, and
/// where is no result. The seat stays where it is at its contact on the mean, and so does each other part, or it lies on the
/// shoulder.
fn shifts(seat: &SectionPlan) -> Vec<f64> {
    let (parts, contacts) = (&seat.field.parts, &seat.field.contacts);
    let mean = |part: usize, nodes: &[usize]| {
        let moved = nodes.iter().map(|node| metres(parts[part].nodes[*node].axial)).sum::<f64>();
        -moved / nodes.len().max(1) as f64
    };
    let last = parts.len() - 1;
    let at = |part: usize| {
        if part < last { mean(part, &contacts[part].inner) } else { mean(part, &contacts[last - 1].outer) }
    };
    let mut shifts: Vec<f64> = (0..parts.len()).map(at).collect();
    if seat.state.wall.is_some() {
        let on_face = |node: &&Node| metres(node.place.position).abs() < 1e-9;
        let face: Vec<&Node> = parts[last].nodes.iter().filter(on_face).collect();
        let under = |node: &Node| {
            let far = |other: &&&Node| metres(other.place.radius - node.place.radius).abs();
            face.iter().min_by(|a, b| far(a).total_cmp(&far(b))).map(|wall| metres(wall.axial - node.axial))
        };
        for part in 0..last {
            let lowest = parts[part].nodes.iter().filter(on_face).filter_map(under).reduce(f64::max);
            shifts[part] = lowest.map_or(shifts[part], |lowest| lowest + shifts[last]);
        }
    }
    shifts
}

/// Lengths of the page's axes in the units of the picture.
pub(super) fn shown(request: &SectionPicture, metres: f64) -> f64 {
    readings::length(Length::new::<meter>(metres), request.system)
}
