//! Points at which heat passes the surfaces of a set of bodies, or from one body to the next.

use super::edges::{self, Edge};
use super::face::{Face, FaceLaw};
use super::stage::Stage;
use crate::section::model::Model;

/// A point of a face.
#[derive(Clone, Copy, Debug)]
pub(super) struct Surface {
    pub(super) rows: [usize; 3],
    pub(super) shape: [f64; 3],
    pub(super) area: f64,
    /// Place among the laws.
    pub(super) law: usize,
}

/// The law of a face of a body.
#[derive(Clone, Copy, Debug)]
pub(super) struct Law<'a> {
    pub(super) law: FaceLaw<'a>,
    pub(super) body: usize,
}

/// How two bodies meet at a point.
#[derive(Clone, Copy, Debug)]
pub(super) enum Meeting {
    /// Over the gap of the seat: number of the first of two hats among those of all contacts, and the share of the second.
    Seat { hat: usize, share: f64 },
    /// Over the shoulder.
    Shoulder,
}

/// A point at which two bodies meet.
#[derive(Clone, Copy, Debug)]
pub(super) struct Joint {
    /// Three rows of the one body, then three of the other.
    pub(super) rows: [usize; 6],
    pub(super) shape: [f64; 6],
    pub(super) area: f64,
    pub(super) meeting: Meeting,
}

/// All points of a set of bodies.
#[derive(Clone, Debug, Default)]
pub(super) struct Surfaces<'a> {
    pub(super) laws: Vec<Law<'a>>,
    pub(super) surfaces: Vec<Surface>,
    pub(super) joints: Vec<Joint>,
}

impl<'a> Surfaces<'a> {
    /// The points of `bodies`; `shoulder` says whether the ring's face lies on the wall.
    pub(super) fn new(
        model: &Model,
        edges: &[Vec<Edge>],
        (bodies, rows): (&[usize], &[Vec<usize>]),
        stage: &Stage<'a>,
        shoulder: bool,
    ) -> Self {
        let seated = bodies.len() > 1;
        let mut all = Self::default();
        for (place, &body) in bodies.iter().enumerate() {
            for face in Face::ALL {
                all.laws.push(Law { law: stage.around[body].of(face), body });
            }
            for edge in &edges[body] {
                if seated && edge.seat.is_some() {
                    continue;
                }
                let law = place * Face::ALL.len() + edge.face.place();
                for part in uncovered(model, body, edge, seated && shoulder) {
                    all.expose(model, (body, &rows[place]), edge, part, law);
                }
            }
        }
        if seated {
            all.join_seats(model, rows);
        }
        if seated && shoulder {
            all.join_shoulder(model, edges, rows);
        }
        all
    }

    fn expose(&mut self, model: &Model, (body, rows): (usize, &[usize]), edge: &Edge, part: (f64, f64), law: usize) {
        let own = edge.nodes.map(|node| rows[node]);
        for point in edges::points(&model.bodies[body].mesh, edge.nodes, part) {
            // Nothing passes the axis.
            if point.area > 0.0 {
                self.surfaces.push(Surface { rows: own, shape: point.shape, area: point.area, law });
            }
        }
    }

    fn join_seats(&mut self, model: &Model, rows: &[Vec<usize>]) {
        let mut first = 0;
        for (k, touch) in model.touches.iter().enumerate() {
            for edge in 0..touch.len() - 1 {
                let nodes = |own: &[usize]| [own[2 * edge], own[2 * edge + 1], own[2 * edge + 2]];
                let (inner, outer) = (nodes(&touch.inner), nodes(&touch.outer));
                for point in edges::points(&model.bodies[k].mesh, inner, (-1.0, 1.0)) {
                    // On a straight edge with its middle half-way, the parabolas give the place.
                    let share = point.shape[1] / 2.0 + point.shape[2];
                    let meeting = Meeting::Seat { hat: first + edge, share };
                    let ends = (inner.map(|node| rows[k][node]), outer.map(|node| rows[k + 1][node]));
                    self.join(ends, (point.shape, point.shape), point.area, meeting);
                }
            }
            first += touch.len();
        }
    }

    /// The ring's face and the wall have nodes of their own: points lie on the stretches that one edge of each shares.
    fn join_shoulder(&mut self, model: &Model, all: &[Vec<Edge>], rows: &[Vec<usize>]) {
        let (ring, seat) = (model.outlines.ring, model.outlines.seat);
        let (ring_mesh, seat_mesh) = (&model.bodies[ring].mesh, &model.bodies[seat].mesh);
        let ends = |nodes: [usize; 3]| (ring_mesh.nodes[nodes[0]][0], ring_mesh.nodes[nodes[2]][0]);
        for own in all[ring].iter().filter(|edge| edge.face == Face::Back) {
            for other in all[seat].iter().filter(|edge| edge.face == Face::Shoulder) {
                let (low, high) = ends(own.nodes);
                let Some(part) = edges::stretch(seat_mesh, other.nodes, (low, high)) else { continue };
                for point in edges::points(seat_mesh, other.nodes, part) {
                    let radius: f64 =
                        point.shape.iter().zip(other.nodes).map(|(shape, node)| shape * seat_mesh.nodes[node][0]).sum();
                    let x = (2.0 * radius - low - high) / (high - low);
                    let shape = [x * (x - 1.0) / 2.0, 1.0 - x * x, x * (x + 1.0) / 2.0];
                    let nodes = (own.nodes.map(|node| rows[ring][node]), other.nodes.map(|node| rows[seat][node]));
                    self.join(nodes, (shape, point.shape), point.area, Meeting::Shoulder);
                }
            }
        }
    }

    fn join(
        &mut self,
        (one, other): ([usize; 3], [usize; 3]),
        (shape, other_shape): ([f64; 3], [f64; 3]),
        area: f64,
        meeting: Meeting,
    ) {
        let both = |a: [usize; 3], b: [usize; 3]| [a[0], a[1], a[2], b[0], b[1], b[2]];
        let [a, b, c] = shape;
        let [d, e, f] = other_shape;
        self.joints.push(Joint { rows: both(one, other), shape: [a, b, c, d, e, f], area, meeting });
    }
}

/// The stretches of an edge that lie free, in natural coordinates: all of it, or what the ring and the wall do not cover.
fn uncovered(model: &Model, body: usize, edge: &Edge, shoulder: bool) -> Vec<(f64, f64)> {
    let on_ring = body == model.outlines.ring && edge.face == Face::Back;
    let on_wall = body == model.outlines.seat && edge.face == Face::Shoulder;
    let Some(abutment) = model.abutment.as_ref().filter(|_| shoulder && (on_ring || on_wall)) else {
        return vec![(-1.0, 1.0)];
    };
    let mesh = &model.bodies[body].mesh;
    let (from, to) = abutment.face;
    [(0.0, from), (to, f64::MAX)].into_iter().filter_map(|part| edges::stretch(mesh, edge.nodes, part)).collect()
}
