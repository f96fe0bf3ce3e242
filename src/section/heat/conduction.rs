use super::edges::{self, Edge};
use super::error::HeatError;
use super::face::Face;
use super::growth::{Influence, tube_weights, volume_weights};
use super::seating::Growth;
use super::solid::{Checked, Solid};
use super::sparse::{self, Sparse};
use super::system::Set;
use crate::quantity::{TemperatureInterval, ThermodynamicTemperature, positive, within};
use crate::section::error::SectionError;
use crate::section::mesh::Mesh;
use crate::section::model::Model;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Largest error of a step when nothing is said, K. With it the references are met to 0.05 K.
const TOLERANCE_K: f64 = 0.01;
/// Tolerances allowed, K.
const TOLERANCES: (f64, f64) = (1e-7, 10.0);

/// Heat conduction in the section of a [`Model`], on its mesh.
#[derive(Clone, Debug)]
pub struct Conduction<'m> {
    pub(super) model: &'m Model,
    pub(super) solids: Vec<Checked>,
    pub(super) edges: Vec<Vec<Edge>>,
    /// Each part by itself, then all together.
    pub(super) sets: Vec<Set>,
    /// Weights of the inner and the outer body of each contact.
    local: Vec<[Influence; 2]>,
    mean: Vec<[Influence; 2]>,
    pub(super) averages: Vec<Averages>,
    pub(super) tolerance: f64,
}

/// Weights of the nodes of a part in its means.
#[derive(Clone, Debug)]
pub(super) struct Averages {
    pub(super) volume: Vec<f64>,
    /// Without the wall or shoulder behind it.
    pub(super) tube: Vec<f64>,
    /// `None` when the part is solid.
    pub(super) inside: Option<Vec<f64>>,
    pub(super) outside: Vec<f64>,
}

/// Temperatures of all nodes of all parts, to begin a history with.
#[derive(Clone, Debug, PartialEq)]
pub struct Temperatures {
    /// K, by part and node.
    pub(super) parts: Vec<Vec<f64>>,
}

impl Temperatures {
    /// These with one temperature throughout a part (from the inside outward, from 0).
    ///
    /// # Errors
    /// [`HeatError::NotHeld`] for a part that the section does not have, [`HeatError::Value`] for a temperature that is not
    /// above zero.
    pub fn with_even(mut self, part: usize, temperature: ThermodynamicTemperature) -> Result<Self, HeatError> {
        let (to, unit) = (self.parts.len() as f64 - 1.0, "from the inside");
        let refused = HeatError::NotHeld { what: "part", value: part as f64, from: 0.0, to, unit };
        let even = positive("temperature of a part", temperature.get::<kelvin>(), "K")?;
        self.parts.get_mut(part).ok_or(refused)?.fill(even);
        Ok(self)
    }
}

impl<'m> Conduction<'m> {
    /// Conduction with a solid for each part, from the inside outward.
    ///
    /// # Errors
    /// [`HeatError::Value`] for values out of range, or another number of solids than of parts.
    pub fn new(model: &'m Model, solids: &[Solid]) -> Result<Self, HeatError> {
        let parts = model.bodies.len();
        count("solids", solids.len(), parts)?;
        let solids = solids.iter().map(Solid::check).collect::<Result<Vec<_>, _>>()?;
        let set = |bodies: Vec<usize>| {
            let meshes: Vec<&Mesh> = bodies.iter().map(|&body| &model.bodies[body].mesh).collect();
            let densities: Vec<f64> = bodies.iter().map(|&body| solids[body].density).collect();
            let rows = sparse::rows(&meshes);
            let sparse = Sparse::new(&meshes, &rows, &densities)?;
            Ok::<Set, SectionError>(Set::new(bodies, rows, sparse))
        };
        let mut sets = (0..parts).map(|body| set(vec![body])).collect::<Result<Vec<_>, _>>()?;
        sets.push(set((0..parts).collect())?);
        let edges: Vec<Vec<Edge>> = (0..parts).map(|body| edges::edges(model, body)).collect();
        let influence = |growth: Growth| {
            let of = |k: usize| [k, k + 1].map(|body| Influence::new(model, body, k, growth));
            (0..model.touches.len()).map(of).collect()
        };
        let averages = (0..parts).map(|body| Averages::new(model, body, &edges[body])).collect();
        let (local, mean) = (influence(Growth::Local), influence(Growth::Mean));
        Ok(Self { model, solids, edges, sets, local, mean, averages, tolerance: TOLERANCE_K })
    }

    /// The same with another tolerance: the largest error that one step may make at any node. Smaller than 0.01 K follows
    /// more closely and takes longer, with the third root of the tolerance.
    ///
    /// # Errors
    /// [`HeatError::Value`] for a tolerance outside 1e-7 to 10 K.
    pub fn with_tolerance(mut self, tolerance: TemperatureInterval) -> Result<Self, HeatError> {
        self.tolerance = within("tolerance", tolerance.get::<step_kelvin>(), TOLERANCES, "K")?;
        Ok(self)
    }

    /// Temperatures that are the same throughout each part, from the inside outward.
    ///
    /// # Errors
    /// [`HeatError::Value`] for another number of temperatures than of parts, and for one that is not above zero.
    pub fn uniform(&self, temperatures: &[ThermodynamicTemperature]) -> Result<Temperatures, HeatError> {
        count("temperatures", temperatures.len(), self.solids.len())?;
        let part = |(temperature, body): (&ThermodynamicTemperature, &crate::section::body::Body)| {
            let value = positive("temperature at the start", temperature.get::<kelvin>(), "K")?;
            Ok(vec![value; body.mesh.nodes.len()])
        };
        let parts = temperatures.iter().zip(&self.model.bodies).map(part).collect::<Result<Vec<_>, SectionError>>()?;
        Ok(Temperatures { parts })
    }

    pub(super) fn influence(&self, growth: Growth) -> &[[Influence; 2]] {
        match growth {
            Growth::Local => &self.local,
            Growth::Mean => &self.mean,
        }
    }
}

pub(super) fn count(what: &'static str, given: usize, needed: usize) -> Result<(), SectionError> {
    if given == needed { Ok(()) } else { Err(SectionError::WrongLoads { what, given, needed }) }
}

impl Averages {
    fn new(model: &Model, body: usize, edges: &[Edge]) -> Self {
        let surface = |face: Face| {
            let mesh = &model.bodies[body].mesh;
            let mut weights = vec![0.0; mesh.nodes.len()];
            for edge in edges.iter().filter(|edge| edge.face == face && edge.nominal) {
                for point in edges::points(mesh, edge.nodes, (-1.0, 1.0)) {
                    edge.nodes.iter().zip(point.shape).for_each(|(&node, shape)| weights[node] += shape * point.area);
                }
            }
            let area: f64 = weights.iter().sum();
            (area > 0.0).then(|| weights.into_iter().map(|weight| weight / area).collect())
        };
        Self {
            volume: volume_weights(model, body, |_| true),
            tube: tube_weights(model, body),
            inside: surface(Face::Inside),
            // Every body has an outside.
            outside: surface(Face::Outside).unwrap_or_default(),
        }
    }
}
