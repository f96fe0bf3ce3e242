//! Edges of the mesh that lie on a surface, and points on them.

use super::face::Face;
use crate::section::mesh::Mesh;
use crate::section::model::Model;
use crate::section::outline::same;
use std::f64::consts::PI;

/// Gauss-Legendre points and weights of order three, as for the elements.
const GAUSS_3: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// Sides of an element: inner, outer, front, back, each from its lower to its upper end.
const SIDES: [([usize; 3], Face); 4] =
    [([0, 7, 3], Face::Inside), ([1, 5, 2], Face::Outside), ([3, 6, 2], Face::Front), ([0, 4, 1], Face::Back)];

/// One edge of the surface of a body.
#[derive(Clone, Debug)]
pub(super) struct Edge {
    /// Lower end, middle, upper end.
    pub(super) nodes: [usize; 3],
    pub(super) face: Face,
    /// Contact that it belongs to.
    pub(super) seat: Option<usize>,
    /// Whether it lies on the cylinder that gives the face its diameter, and not on a cut or in a wall's hole.
    pub(super) nominal: bool,
}

/// A point of an edge.
#[derive(Clone, Copy, Debug)]
pub(super) struct EdgePoint {
    pub(super) shape: [f64; 3],
    /// Area that it stands for on the whole circle, m².
    pub(super) area: f64,
}

/// All edges of the surface of a body.
pub(super) fn edges(model: &Model, body: usize) -> Vec<Edge> {
    let mesh = &model.bodies[body].mesh;
    let outline = &model.outlines.bodies[body];
    let mut uses = vec![0_u8; mesh.nodes.len()];
    for element in &mesh.elements {
        for &middle in &element[4..] {
            uses[middle] += 1;
        }
    }
    let on_seat = |middle: usize| {
        model.touches.iter().enumerate().find_map(|(k, touch)| {
            let nodes = if k == body { &touch.inner } else { &touch.outer };
            ((k == body || k + 1 == body) && nodes.contains(&middle)).then_some(k)
        })
    };
    let mut edges = Vec::new();
    for element in &mesh.elements {
        for (side, face) in SIDES {
            let nodes = side.map(|k| element[k]);
            if uses[nodes[1]] != 1 {
                continue;
            }
            let [radius, axial] = mesh.nodes[nodes[1]];
            let on_step = outline.corner_of_step().is_some_and(|[corner, at]| same(axial, at) && radius > corner);
            // Else only a wall's side towards the ring lies in front of something and not at the body's own front.
            let face = match face {
                Face::Front | Face::Back if on_step => Face::Outside,
                Face::Front if !same(axial, outline.front) => Face::Shoulder,
                face => face,
            };
            let nominal = match face {
                Face::Inside => same(radius, outline.inner),
                Face::Outside => same(radius, outline.outer),
                _ => true,
            };
            edges.push(Edge { nodes, face, seat: on_seat(nodes[1]), nominal });
        }
    }
    edges
}

/// Parabolas through the ends and the middle of an edge, and their slopes.
fn parabolas(x: f64) -> ([f64; 3], [f64; 3]) {
    ([x * (x - 1.0) / 2.0, 1.0 - x * x, x * (x + 1.0) / 2.0], [x - 0.5, -2.0 * x, x + 0.5])
}

/// Points of the part of an edge between two natural coordinates.
pub(super) fn points(mesh: &Mesh, nodes: [usize; 3], (from, to): (f64, f64)) -> [EdgePoint; 3] {
    GAUSS_3.map(|(place, weight)| {
        let (shape, slope) = parabolas((from + to) / 2.0 + place * (to - from) / 2.0);
        let sum = |values: [f64; 3], d: usize| -> f64 {
            values.iter().zip(nodes).map(|(value, node)| value * mesh.nodes[node][d]).sum()
        };
        let length = sum(slope, 0).hypot(sum(slope, 1)) * (to - from) / 2.0;
        EdgePoint { shape, area: 2.0 * PI * sum(shape, 0) * length * weight }
    })
}

/// Natural coordinates of a straight radial edge at two radii, within the edge; `None` where it lies outside both.
pub(super) fn stretch(mesh: &Mesh, nodes: [usize; 3], (from, to): (f64, f64)) -> Option<(f64, f64)> {
    let (low, high) = (mesh.nodes[nodes[0]][0], mesh.nodes[nodes[2]][0]);
    let place = |radius: f64| ((2.0 * radius - low - high) / (high - low)).clamp(-1.0, 1.0);
    let (from, to) = (place(from), place(to));
    // Less is rounding of the same line in two meshes.
    (to - from > 1e-9).then_some((from, to))
}
