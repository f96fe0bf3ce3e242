use super::abutment::WALL_VALUES;
use super::body::{Body, Field};
use super::check;
use super::divide;
use super::error::SectionError;
use super::geometry::{Accuracy, Section, Support};
use super::loads::{LARGEST_FORCE, Loads};
use super::outline::{Abutment, Outlines, Rest};
use super::settle::{self, Settled};
use super::state::WallState;
use super::state_of;
use super::touch::Touch;
use crate::quantity::{Force, within};
use uom::si::force::newton;

/// A section divided into elements and factored: ready to be solved for any loads.
#[derive(Clone, Debug)]
pub struct Model {
    pub(super) outlines: Outlines,
    pub(super) bodies: Vec<Body>,
    pub(super) touches: Vec<Touch>,
    pub(super) abutment: Option<Abutment>,
    /// Weighted gaps for a pressure of one at each corner of all contacts, by rows.
    pub(super) matrix: Vec<f64>,
    /// Whether each of these corners is bonded.
    pub(super) bonded: Vec<bool>,
    /// Radial displacements along the ring's seat, under which it was finished; empty for one that was straight from the first.
    pub(super) finished: Vec<f64>,
    /// Displacements of the seat for an axial force of one on its wall.
    pushed: Option<Field>,
}

/// Displacements of every body for one set of loads, and what led to them.
#[derive(Clone, Debug)]
pub(super) struct Solution {
    pub(super) pressure: Vec<f64>,
    pub(super) gaps: Vec<f64>,
    pub(super) fields: Vec<Field>,
}

impl Model {
    /// Checks a section, divides it into elements and factors their stiffness.
    ///
    /// Each body is condensed to its contacts by solving for a pressure on each of their corners; what follows for any
    /// loads is work on a matrix as large as the contacts have corners.
    ///
    /// **Valid for** axisymmetric, elastic, frictionless parts of uniform temperature each. Ring and wall do not touch
    /// axially: their force is a load.
    ///
    /// # Errors
    /// [`SectionError`] for sizes that do not make a section, or one that is too large.
    pub fn new(section: &Section, accuracy: Accuracy) -> Result<Self, SectionError> {
        let outlines = check::outlines(section)?;
        let mut bodies = Vec::new();
        for (k, mesh) in divide::meshes(&outlines, accuracy)?.into_iter().enumerate() {
            let rest = if k == outlines.seat { outlines.rest.circle() } else { Rest::Circle };
            bodies.push(Body::new(outlines.bodies[k], mesh, rest)?);
        }
        let touches: Vec<Touch> = (0..bodies.len() - 1).map(|k| touch(&outlines, &bodies, k)).collect();
        let matrix = compliance(&bodies, &touches);
        let of = |(k, touch): (usize, &Touch)| vec![outlines.bonded == Some(k); touch.len()];
        let bonded = touches.iter().enumerate().flat_map(of).collect();
        let abutment = outlines.abutment();
        // A seat that is held by one circle takes no force.
        let able = abutment.as_ref().filter(|_| outlines.rest != outlines.rest.circle());
        let pushed =
            able.map(|abutment| pushed(&outlines, outlines.rest, &bodies[outlines.seat], abutment)).transpose()?;
        Ok(Self { outlines, bodies, touches, abutment, matrix, bonded, finished: Vec::new(), pushed })
    }

    /// The wall or shoulder under a push of the ring's face alone, as if ring and seat did not touch, with the seat held by
    /// `support` in place of that of the section; `None` where there is no wall.
    ///
    /// It is in proportion to the force. A ring that is tight in its seat stiffens the wall's root: with it the wall bears
    /// less.
    ///
    /// # Errors
    /// [`SectionError::NoAbutment`] for a support that takes no force, and for an opening that is not the section's own: its mesh
    /// has no line there. An opening or a force out of range.
    pub fn pushed_wall(&self, support: Support, force: Force) -> Result<Option<WallState>, SectionError> {
        let Some(abutment) = &self.abutment else { return Ok(None) };
        let (seat, force_n) =
            (self.outlines.seat, within("axial force", force.get::<newton>(), (0.0, LARGEST_FORCE), "N")?);
        let rest = check::rest(support, &self.outlines.bodies[seat])?;
        if rest == rest.circle() {
            return Err(SectionError::NoAbutment { force_n, why: "nothing holds the seat" });
        }
        if matches!(support, Support::Back { opening: Some(_) }) && rest != self.outlines.rest {
            return Err(SectionError::NoAbutment { force_n, why: "the section was not divided for that opening" });
        }
        let body = &self.bodies[seat];
        let values = abutment.values(body, &pushed(&self.outlines, rest, body, abutment)?, 0.0);
        Ok(Some(state_of::wall(&values.map(|value| force_n * value))))
    }

    /// The same section with the seat of its ring finished after its other parts were fitted under `loads`: the seat is straight and
    /// of its size then, whatever it was before.
    ///
    /// `loads` keep the ring out of the way: an interference below zero. Those of a later solution count from the finished seat,
    /// and what it has to do with loads is a sum no more: it has no [`Units`](super::Units).
    ///
    /// # Errors
    /// As for [`Model::solve`]; a ring that touches its seat under these loads.
    pub fn finished(self, loads: &Loads) -> Result<Self, SectionError> {
        let plain = self.plain(loads)?;
        let straight = Self { finished: Vec::new(), ..self };
        let solution = straight.solved(&plain)?;
        let contact = straight.ring_contact();
        let from: usize = straight.touches[..contact].iter().map(Touch::len).sum();
        let touch = &straight.touches[contact];
        if solution.pressure[from..from + touch.len()].iter().any(|pressure| *pressure > 0.0) {
            return Err(SectionError::InTheWay);
        }
        let (body, nodes) =
            if contact == straight.outlines.ring { (contact + 1, &touch.outer) } else { (contact, &touch.inner) };
        let finished = nodes.iter().map(|&node| solution.fields[body][node][0]).collect();
        Ok(Self { finished, ..straight })
    }

    /// The contact of the ring with what it sits in or on.
    fn ring_contact(&self) -> usize {
        self.outlines.ring.min(self.touches.len() - 1)
    }

    /// By how much the ring's contact is closer than radii and displacements say, at a node of it: what finishing took off or left.
    fn taken_by_finish(&self, contact: usize, place: usize) -> f64 {
        if contact != self.ring_contact() {
            return 0.0;
        }
        let moved = self.finished.get(place).copied().unwrap_or(0.0);
        if contact == self.outlines.ring { moved } else { -moved }
    }

    /// Loads in plain SI, when this section can take them.
    pub(super) fn plain(&self, loads: &Loads) -> Result<Vec<f64>, SectionError> {
        let plain = loads.plain(&self.outlines)?;
        let force_n = plain.last().copied().unwrap_or(0.0);
        if force_n > 0.0 && self.pushed.is_none() {
            let why = if self.outlines.rest == self.outlines.rest.circle() {
                "nothing holds the seat"
            } else {
                "nothing is behind the ring"
            };
            return Err(SectionError::NoAbutment { force_n, why });
        }
        Ok(plain)
    }

    /// Displacements of a body for loads, before the contact.
    fn free_field(&self, body: usize, loads: &[f64]) -> Field {
        let (contacts, bodies) = (self.touches.len(), self.bodies.len());
        let strain = loads[contacts + body];
        let mut field: Field = self.bodies[body].expanded.iter().map(|u| u.map(|u| strain * u)).collect();
        if let (true, Some(pushed)) = (body == self.outlines.seat, &self.pushed) {
            let force = loads[contacts + bodies];
            for (sum, unit) in field.iter_mut().zip(pushed) {
                *sum = [sum[0] + force * unit[0], sum[1] + force * unit[1]];
            }
        }
        field
    }

    /// Weighted gaps of all contacts for loads, if the bodies could pass through one another.
    pub(super) fn free_gaps(&self, loads: &[f64]) -> Vec<f64> {
        self.apart(loads, 0, |k, place| loads[k] + self.taken_by_finish(k, place))
    }

    /// Weighted axial slips of all contacts for loads, before anything holds the bodies against one another.
    pub(super) fn free_slips(&self, loads: &[f64]) -> Vec<f64> {
        self.apart(loads, 1, |_, _| 0.0)
    }

    /// How far the outer body has moved from the inner one at each contact, less `taken`; 0 radially, 1 axially.
    fn apart(&self, loads: &[f64], direction: usize, taken: impl Fn(usize, usize) -> f64) -> Vec<f64> {
        let fields: Vec<Field> = (0..self.bodies.len()).map(|body| self.free_field(body, loads)).collect();
        let mut moved = Vec::new();
        for (k, touch) in self.touches.iter().enumerate() {
            let apart = |(place, (&outer, &inner)): (usize, (&usize, &usize))| {
                fields[k + 1][outer][direction] - fields[k][inner][direction] - taken(k, place)
            };
            let nodal: Vec<f64> = touch.outer.iter().zip(&touch.inner).enumerate().map(apart).collect();
            moved.extend(touch.weigh(&nodal));
        }
        moved
    }

    /// Finds the nodes that touch and the pressures on them.
    pub(super) fn settle(&self, loads: &[f64]) -> Result<Settled, SectionError> {
        settle::settle(&self.matrix, &self.free_gaps(loads), &self.bonded)
    }

    /// Everything that follows from pressures.
    pub(super) fn solution(&self, loads: &[f64], pressure: Vec<f64>) -> Solution {
        let mut fields = Vec::new();
        for (b, body) in self.bodies.iter().enumerate() {
            let mut field = self.free_field(b, loads);
            for (sum, pressed) in field.iter_mut().zip(body.solve(&self.contact_forces(b, &pressure))) {
                *sum = [sum[0] + pressed[0], sum[1] + pressed[1]];
            }
            fields.push(field);
        }
        let gaps = settle::gaps(&self.matrix, &self.free_gaps(loads), &pressure);
        Solution { pressure, gaps, fields }
    }

    /// Nodal forces of the contact pressures on a body.
    fn contact_forces(&self, body: usize, pressure: &[f64]) -> Field {
        let mut forces = vec![[0.0; 2]; self.bodies[body].mesh.nodes.len()];
        let mut from = 0;
        for (k, touch) in self.touches.iter().enumerate() {
            let nodal = touch.forces(&pressure[from..from + touch.len()]);
            from += touch.len();
            let (nodes, sign) = match body {
                _ if body == k => (&touch.inner, -1.0),
                _ if body == k + 1 => (&touch.outer, 1.0),
                _ => continue,
            };
            for (&node, force) in nodes.iter().zip(nodal) {
                forces[node][0] += sign * force;
            }
        }
        forces
    }

    /// Free thermal strain of a body among plain loads.
    pub(super) fn strain(&self, body: usize, loads: &[f64]) -> f64 {
        loads[self.touches.len() + body]
    }

    /// Numbers that describe the wall, zero without one.
    pub(super) fn wall_values(&self, solution: &Solution, loads: &[f64]) -> [f64; WALL_VALUES] {
        let seat = self.outlines.seat;
        let values =
            |wall: &Abutment| wall.values(&self.bodies[seat], &solution.fields[seat], self.strain(seat, loads));
        self.abutment.as_ref().map_or([0.0; WALL_VALUES], values)
    }
}

/// Displacements of a seat for an axial force of one on its wall, taken by the face that it rests on.
///
/// Only here does the face hold the seat: it takes the force, and lets the seat flare when the ring presses, as a seat
/// that stands on a table does. Held flat, a boss would press up to a twentieth more.
fn pushed(outlines: &Outlines, rest: Rest, seat: &Body, abutment: &Abutment) -> Result<Field, SectionError> {
    let resting = Body::new(outlines.bodies[outlines.seat], seat.mesh.clone(), rest)?;
    Ok(resting.solve(&abutment.push(&resting)))
}

fn touch(outlines: &Outlines, bodies: &[Body], k: usize) -> Touch {
    let (radius, ends) = (outlines.bodies[k].outer, outlines.contact(k));
    let inner = bodies[k].mesh.along(radius, ends);
    let outer = bodies[k + 1].mesh.along(radius, ends);
    let axial = inner.iter().step_by(2).map(|&node| bodies[k].mesh.nodes[node][1]).collect();
    Touch::new(radius, axial, inner, outer)
}

/// Weighted gaps of all contacts for a pressure of one at each corner, `D C Dᵀ`, by rows: each body adds what it gives
/// way, where its inner and its outer contact act on one another too.
fn compliance(bodies: &[Body], touches: &[Touch]) -> Vec<f64> {
    let start = |k: usize| touches[..k].iter().map(Touch::len).sum::<usize>();
    let size = start(touches.len());
    let mut matrix = vec![0.0; size * size];
    for (b, body) in bodies.iter().enumerate() {
        // (place among all pressures, nodal forces; outward on the outer body, inward on the inner one)
        let mut places = Vec::new();
        let mut sets = Vec::new();
        let mut add = |k: usize, nodes: &[usize], sign: f64| {
            for i in 0..touches[k].len() {
                places.push(start(k) + i);
                sets.push(touches[k].hat(i).into_iter().map(|(j, force)| (nodes[j], sign * force)).collect());
            }
        };
        if b > 0 {
            add(b - 1, &touches[b - 1].outer, 1.0);
        }
        if b < touches.len() {
            add(b, &touches[b].inner, -1.0);
        }
        for (row, gaps) in places.iter().zip(body.radial_compliance(&sets).chunks(sets.len())) {
            for (column, gap) in places.iter().zip(gaps) {
                matrix[row * size + column] += gap;
            }
        }
    }
    matrix
}
