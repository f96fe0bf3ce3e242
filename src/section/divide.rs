//! Where the lines of the meshes lie.
//!
//! All bodies share their axial lines, so that the nodes of two bodies that touch match. Elements are small at the ends
//! of each contact and at the corner of a wall, where stresses are singular or steep, and grow from there.

use super::error::SectionError;
use super::geometry::Accuracy;
use super::grading::{ACROSS, ALONG, Focus, distinct, lines};
use super::mesh::Mesh;
use super::outline::{Outlines, Rest};

/// Elements over the width of the ring far from its ends, at [`Accuracy::Normal`].
const OVER_WIDTH: f64 = 10.0;
/// Size at a contact's ends and at a wall's corner as a share of the thinnest wall, at [`Accuracy::Normal`]. Found by
/// halving until results of seats with and without wall stood to 0.1 %.
const AT_EDGES: f64 = 0.03;
/// Elements over the thickness of a wall at least, at [`Accuracy::Normal`].
const OVER_WALL: f64 = 3.0;
/// Elements over the radius of a bore, at [`Accuracy::Normal`].
const OVER_BORE: f64 = 6.0;
/// Lines closer than this, m, are one: less than half the step to which sizes are rounded.
const APART: f64 = 2e-8;

impl Accuracy {
    /// Size of the elements, 1 at normal accuracy.
    pub(super) fn scale(self) -> f64 {
        match self {
            Accuracy::Coarse => 2.0,
            Accuracy::Normal => 1.0,
            Accuracy::Fine => 0.5,
        }
    }
}

/// The meshes of all bodies.
///
/// # Errors
/// [`SectionError::MeshTooLarge`].
pub(super) fn meshes(outlines: &Outlines, accuracy: Accuracy) -> Result<Vec<Mesh>, SectionError> {
    let width = outlines.bodies[outlines.ring].front;
    let axial = axial(outlines, width, accuracy.scale());
    let mesh = |k: usize| {
        let outline = &outlines.bodies[k];
        let near = |z: &f64| *z >= outline.back() - APART && *z <= outline.front + APART;
        let own: Vec<f64> = axial.iter().copied().filter(near).collect();
        Mesh::new(outline, &radial(outlines, k, width, accuracy.scale()), &own)
    };
    (0..outlines.bodies.len()).map(mesh).collect()
}

/// Size of the elements at the ends of the contacts.
fn at_edges(outlines: &Outlines, width: f64) -> f64 {
    let walls = outlines.bodies.iter().flat_map(|body| {
        let rear = body.rear.map_or(f64::INFINITY, |rear| rear.thickness);
        [body.outer - body.inner, rear]
    });
    // Bounded, so that neither a foil nor a block asks for a mesh of its own kind.
    AT_EDGES * walls.fold(width, f64::min).clamp(width / 16.0, width / 2.0)
}

fn axial(outlines: &Outlines, width: f64, scale: f64) -> Vec<f64> {
    let edge = scale * at_edges(outlines, width);
    let mut fixed = Vec::new();
    let mut foci = Vec::new();
    for k in 0..outlines.bodies.len() - 1 {
        let (from, to) = outlines.contact(k);
        fixed.extend([from, to]);
        foci.extend([Focus::at(from, edge), Focus::at(to, edge)]);
        foci.push(Focus { from, to, size: scale * width / OVER_WIDTH });
    }
    for body in &outlines.bodies {
        fixed.extend([body.back(), 0.0, body.front]);
        for cut in [&body.inner_cut, &body.outer_cut] {
            fixed.extend([cut.back, body.front - cut.front]);
            if let Some(arc) = cut.arc {
                let (from, to) = (arc.middle - arc.half_width, arc.middle + arc.half_width);
                fixed.extend([from, to]);
                foci.push(Focus { from, to, size: scale * arc.half_width / OVER_WALL });
            }
        }
        if let Some(step) = body.step {
            fixed.push(step.at);
            foci.push(Focus::at(step.at, edge));
        }
        if let Some(rear) = body.rear {
            let size = scale * rear.thickness / OVER_WALL;
            foci.extend([Focus::at(0.0, edge), Focus { from: -rear.thickness, to: 0.0, size }]);
        }
    }
    lines(&distinct(fixed, APART), &foci, ALONG)
}

fn radial(outlines: &Outlines, k: usize, width: f64, scale: f64) -> Vec<f64> {
    let (outline, edge) = (&outlines.bodies[k], scale * at_edges(outlines, width));
    let mut walls = vec![(outline.inner, outline.outer)];
    walls.extend(outline.rear.map(|rear| (rear.inner, rear.outer)));
    walls.extend(outline.step.map(|step| (outline.inner, step.outer)));
    let mut fixed: Vec<f64> = walls.iter().flat_map(|&(inner, outer)| [inner, outer]).collect();
    if k == outlines.seat {
        if let Rest::Back { from } = outlines.rest {
            fixed.push(from);
        }
        // The ring's face presses on whole elements of the wall.
        fixed.extend(outlines.abutment().map(|wall| [wall.face.0, wall.face.1]).into_iter().flatten());
    }
    let over = |&(from, to): &(f64, f64)| Focus { from, to, size: scale * (to - from) / OVER_WALL };
    let mut foci: Vec<Focus> = walls.iter().map(over).collect();
    // Stresses go with the square of the radius: around a small bore the elements are small too.
    let bores = walls.iter().map(|wall| wall.0).filter(|bore| *bore > 0.0);
    foci.extend(bores.map(|bore| Focus::at(bore, scale * bore / OVER_BORE)));
    if k > 0 {
        foci.push(Focus::at(outline.inner, edge));
    }
    if k + 1 < outlines.bodies.len() {
        foci.push(Focus::at(outline.outer, edge));
    }
    lines(&distinct(fixed, APART), &foci, ACROSS)
}
