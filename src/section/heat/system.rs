//! Temperatures of a set of bodies during one stage: how fast they change, and the matrix of an implicit step.

use super::curves::AtNode;
use super::growth::Influence;
use super::panels::{Layout, Panels};
use super::seating;
use super::solid;
use super::sparse::Sparse;
use super::surface::{Joint, Meeting, Surfaces};
use crate::section::envelope::{Envelope, GROUP};
use crate::section::model::Model;

/// Step with which the slope of a law is taken, K.
const SLOPE_K: f64 = 0.05;

/// Bodies with the rows of their nodes and their matrices.
#[derive(Clone, Debug)]
pub(super) struct Set {
    pub(super) bodies: Vec<usize>,
    pub(super) rows: Vec<Vec<usize>>,
    pub(super) sparse: Sparse,
    /// Place of the body of each row.
    owner: Vec<usize>,
}

impl Set {
    pub(super) fn new(bodies: Vec<usize>, rows: Vec<Vec<usize>>, sparse: Sparse) -> Self {
        let mut owner = vec![0; sparse.size()];
        for (place, rows) in rows.iter().enumerate() {
            rows.iter().for_each(|&row| owner[row] = place);
        }
        Self { bodies, rows, sparse, owner }
    }
}

/// Seats of one stage.
#[derive(Clone, Debug)]
pub(super) struct Seats<'a> {
    pub(super) law: seating::Checked,
    /// Weights of the inner and of the outer body of each contact.
    pub(super) influence: Vec<[&'a Influence; 2]>,
    /// Hats of each contact.
    pub(super) hats: Vec<usize>,
    /// Areas of all hats, m².
    pub(super) areas: Vec<f64>,
}

/// A set of bodies with what its surfaces meet.
#[derive(Clone, Debug)]
pub(super) struct System<'a> {
    pub(super) set: &'a Set,
    pub(super) solids: Vec<&'a solid::Checked>,
    pub(super) surfaces: Surfaces<'a>,
    pub(super) seats: Option<Seats<'a>>,
    /// Column of the first entry of each row.
    first: Vec<usize>,
    layout: Layout,
}

/// A symmetric matrix to add to.
pub(super) trait Lower {
    /// Adds to the entry of a row and a column not beyond the diagonal.
    fn add(&mut self, row: usize, column: usize, value: f64);
}

impl Lower for Envelope {
    fn add(&mut self, row: usize, column: usize, value: f64) {
        self.add(row, column, value);
    }
}

impl<'a> System<'a> {
    pub(super) fn new(
        set: &'a Set,
        solids: &'a [solid::Checked],
        surfaces: Surfaces<'a>,
        seats: Option<Seats<'a>>,
    ) -> Self {
        let solids = set.bodies.iter().map(|&body| &solids[body]).collect();
        let mut first: Vec<usize> = set.sparse.rows().map(|row| row[0].column).collect();
        for joint in &surfaces.joints {
            let least = joint.rows.into_iter().min().unwrap_or_default();
            joint.rows.iter().for_each(|&row| first[row] = first[row].min(least));
        }
        // Rows that begin alike are factored together, which takes little more than one.
        for group in first.chunks_mut(GROUP) {
            let least = group.iter().copied().min().unwrap_or_default();
            group.fill(least);
        }
        let layout = Layout::new(&first);
        Self { set, solids, surfaces, seats, first, layout }
    }

    /// What each node holds, passes on and grows by, by rows.
    pub(super) fn nodes(&self, temperatures: &[f64]) -> Vec<AtNode> {
        let of = |(kelvin, &owner): (&f64, &usize)| self.solids[owner].curves.at(*kelvin);
        temperatures.iter().zip(&self.set.owner).map(of).collect()
    }

    /// Free radial gaps under the hats of all contacts, m; negative where the parts, moved freely, would overlap.
    pub(super) fn gaps(&self, temperatures: &[f64]) -> Vec<f64> {
        if self.seats.is_none() { Vec::new() } else { self.gaps_of(&self.nodes(temperatures)) }
    }

    fn gaps_of(&self, nodes: &[AtNode]) -> Vec<f64> {
        let Some(seats) = &self.seats else { return Vec::new() };
        let strain = |rows: &Vec<usize>| rows.iter().map(|&row| nodes[row].strain).collect();
        let strain: Vec<Vec<f64>> = self.set.rows.iter().map(strain).collect();
        let mut gaps = Vec::with_capacity(seats.areas.len());
        for (k, [inner, outer]) in seats.influence.iter().enumerate() {
            let mut moved = vec![-seats.law.interference[k]; seats.hats[k]];
            inner.add(&strain[k], -1.0, &mut moved);
            outer.add(&strain[k + 1], 1.0, &mut moved);
            gaps.extend(moved);
        }
        gaps
    }

    /// Conductance at a point where two bodies meet, W/(m² K).
    fn conductance(&self, joint: &Joint, gaps: &[f64], (one, other): (f64, f64)) -> f64 {
        let Some(seats) = &self.seats else { return 0.0 };
        match joint.meeting {
            Meeting::Seat { hat, share } => {
                let gap = gaps[hat] + share * (gaps[hat + 1] - gaps[hat]);
                seats.law.conductance(gap, one, other)
            }
            Meeting::Shoulder => seats.law.shoulder.unwrap_or(0.0),
        }
    }

    /// What is left of the equation of a step, `M (known - e) + shift f`, J, at temperatures (K) and a time since the stage
    /// began (s); `known` are the enthalpies that it gives back.
    pub(super) fn left(&self, temperatures: &[f64], (known, shift, time): (&[f64], f64, f64)) -> Vec<f64> {
        let nodes = self.nodes(temperatures);
        let pair = |(node, known): (&AtNode, &f64)| [known - node.enthalpy, -shift * node.potential];
        let pairs: Vec<[f64; 2]> = nodes.iter().zip(known).map(pair).collect();
        let mut left = vec![0.0; temperatures.len()];
        self.set.sparse.both_times(&pairs, &mut left);
        for point in &self.surfaces.surfaces {
            let surface = read(temperatures, &point.rows, &point.shape);
            let heat = shift * self.surfaces.laws[point.law].law.flux(surface, time) * point.area;
            for (&row, shape) in point.rows.iter().zip(point.shape) {
                left[row] += shape * heat;
            }
        }
        let gaps = self.gaps_of(&nodes);
        for joint in &self.surfaces.joints {
            let (one, other) = both(temperatures, joint);
            let heat = shift * self.conductance(joint, &gaps, (one, other)) * (one - other) * joint.area;
            for (k, (&row, shape)) in joint.rows.iter().zip(joint.shape).enumerate() {
                left[row] += if k < 3 { -shape * heat } else { shape * heat };
            }
        }
        left
    }

    /// Heat through each face into the part, W, by the order of the laws.
    pub(super) fn faces(&self, temperatures: &[f64], time: f64) -> Vec<f64> {
        let mut faces = vec![0.0; self.surfaces.laws.len()];
        for point in &self.surfaces.surfaces {
            let surface = read(temperatures, &point.rows, &point.shape);
            faces[point.law] += self.surfaces.laws[point.law].law.flux(surface, time) * point.area;
        }
        faces
    }

    /// The matrix of an implicit step in single precision, which nearly always holds it.
    pub(super) fn single(&self, temperatures: &[f64], time: f64, share: (f64, bool)) -> Panels {
        let mut matrix = Panels::new(&self.layout);
        self.add_to(&mut matrix, temperatures, time, share);
        matrix
    }

    /// The same in double precision.
    pub(super) fn double(&self, temperatures: &[f64], time: f64, share: (f64, bool)) -> Envelope {
        let mut matrix = Envelope::new(self.first.clone());
        self.add_to(&mut matrix, temperatures, time, share);
        matrix
    }

    /// `M c + shift (K k + surfaces)`, with c, k and the surfaces as they are at these temperatures: what the iterations
    /// of an implicit step divide by. It may be near the truth only; what is iterated for does not depend on it.
    ///
    /// Capacity and conductivity between two nodes are the mean of theirs, so that the matrix is symmetric, and K k keeps
    /// its row sums of zero. A law that gives more heat to a warmer surface, as transition boiling does, counts, unless
    /// `falling`, as one that gives the same.
    fn add_to(&self, matrix: &mut impl Lower, temperatures: &[f64], time: f64, (shift, falling): (f64, bool)) {
        let of = |(kelvin, &owner): (&f64, &usize)| self.solids[owner].curves.capacity_and_conductivity(*kelvin);
        let local: Vec<[f64; 2]> = temperatures.iter().zip(&self.set.owner).map(of).collect();
        for (row, entries) in self.set.sparse.rows().enumerate() {
            let mut passed = 0.0;
            for entry in entries {
                let column = entry.column;
                let conducted = shift * entry.stiff * (local[row][1] + local[column][1]) / 2.0;
                if column != row {
                    passed += conducted;
                }
                if column < row {
                    let held = entry.mass * (local[row][0] + local[column][0]) / 2.0;
                    matrix.add(row, column, held + conducted);
                } else if column == row {
                    matrix.add(row, row, entry.mass * local[row][0]);
                }
            }
            matrix.add(row, row, -passed);
        }
        self.add_surfaces(temperatures, time, (shift, falling), matrix);
    }

    fn add_surfaces(&self, temperatures: &[f64], time: f64, (shift, falling): (f64, bool), matrix: &mut impl Lower) {
        for point in &self.surfaces.surfaces {
            let law = &self.surfaces.laws[point.law].law;
            let surface = read(temperatures, &point.rows, &point.shape);
            let fall = law.flux(surface - SLOPE_K, time) - law.flux(surface + SLOPE_K, time);
            let slope = fall / (2.0 * SLOPE_K);
            add(matrix, &point.rows, &point.shape, shift * point.area * if falling { slope } else { slope.max(0.0) });
        }
        let gaps = self.gaps(temperatures);
        for joint in &self.surfaces.joints {
            let conductance = self.conductance(joint, &gaps, both(temperatures, joint));
            let [a, b, c, d, e, f] = joint.shape;
            add(matrix, &joint.rows, &[a, b, c, -d, -e, -f], shift * joint.area * conductance);
        }
    }
}

/// Adds `weight · shape shapeᵀ`.
fn add(matrix: &mut impl Lower, rows: &[usize], shape: &[f64], weight: f64) {
    for (&row, a) in rows.iter().zip(shape) {
        for (&column, b) in rows.iter().zip(shape).filter(|(column, _)| **column <= row) {
            matrix.add(row, column, weight * a * b);
        }
    }
}

/// A temperature between nodes.
pub(super) fn read(temperatures: &[f64], rows: &[usize], shape: &[f64]) -> f64 {
    rows.iter().zip(shape).map(|(&row, shape)| shape * temperatures[row]).sum()
}

/// Temperatures of both surfaces of a joint.
fn both(temperatures: &[f64], joint: &Joint) -> (f64, f64) {
    let half = |from: usize| read(temperatures, &joint.rows[from..from + 3], &joint.shape[from..from + 3]);
    (half(0), half(3))
}

/// Hats of each contact and the areas under all.
pub(super) fn hats(model: &Model) -> (Vec<usize>, Vec<f64>) {
    let hats = model.touches.iter().map(|touch| touch.len()).collect();
    (hats, model.touches.iter().flat_map(|touch| touch.area.iter().copied()).collect())
}
