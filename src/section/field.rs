use super::body::Body;
use super::error::SectionError;
use super::geometry::Elastic;
use super::loads::Loads;
use super::model::{Model, Solution};
use super::observe::Layout;
use super::outline::Rest;
use super::state::State;
use super::state_of;
use super::stress::{self, Peak, SINGULAR};
use crate::quantity::{Length, Pressure};
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// The meshes of a section with what loads do at their nodes: what a picture, or another solver, needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    /// Parts, from the inside outward.
    pub parts: Vec<PartField>,
    /// Contacts, from the inside outward; contact k is between parts k and k + 1.
    pub contacts: Vec<ContactNodes>,
    /// Where stress has no limit in elasticity: the ends of the contacts, and the corner of the wall.
    pub singular: Vec<Place>,
    /// Distance from such a place within which nothing is read.
    pub unread: Length,
}

/// A place in the section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Radius.
    pub radius: Length,
    /// Distance from the back face of the ring, negative behind it.
    pub position: Length,
}

/// The mesh of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct PartField {
    /// Which part: "ring", "liner", "housing" or "shaft".
    pub part: &'static str,
    /// Material.
    pub material: Elastic,
    /// Nodes.
    pub nodes: Vec<Node>,
    /// Nodes of each element: corners from the inner back one, radius first, then the middles of the sides in the same sense.
    pub elements: Vec<[usize; 8]>,
    /// Nodes that are held along the axis.
    pub held: Vec<usize>,
}

/// A node with what loads do there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// Where it lies without loads.
    pub place: Place,
    /// Radial displacement, outward.
    pub radial: Length,
    /// Axial displacement, towards the front.
    pub axial: Length,
    /// Stress, the mean of the elements around the node.
    pub stress: NodeStress,
}

/// Stress at a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NodeStress {
    /// Radial.
    pub radial: Pressure,
    /// Axial.
    pub axial: Pressure,
    /// Hoop.
    pub hoop: Pressure,
    /// Shear between radial and axial.
    pub shear: Pressure,
}

impl NodeStress {
    /// Equivalent stress after von Mises.
    pub fn von_mises(&self) -> Pressure {
        let plain = [self.radial, self.axial, self.hoop, self.shear].map(|part| part.get::<pascal>());
        Pressure::new::<pascal>(stress::von_mises(plain))
    }
}

/// Nodes of two parts that touch: the k-th of one lies on the k-th of the other, from back to front.
#[derive(Clone, Debug, PartialEq)]
pub struct ContactNodes {
    /// Of the inner part.
    pub inner: Vec<usize>,
    /// Of the outer part.
    pub outer: Vec<usize>,
}

impl Model {
    /// Displacement and stress at every node.
    ///
    /// # Errors
    /// As for [`Model::solve`].
    pub fn field(&self, loads: &Loads) -> Result<Field, SectionError> {
        let plain = self.plain(loads)?;
        Ok(self.field_of(&self.solved(&plain)?, &plain))
    }

    /// What [`Model::solve`], [`Model::stresses`] and [`Model::field`] give, from one solution.
    ///
    /// # Errors
    /// As for [`Model::solve`].
    pub fn whole(&self, loads: &Loads) -> Result<(State, Vec<Peak>, Field), SectionError> {
        let plain = self.plain(loads)?;
        let solution = self.solved(&plain)?;
        let layout = Layout::of(self);
        let state = state_of::state(self, &layout, &layout.observe(self, &solution, &plain));
        Ok((state, stress::peaks(self, &solution, &plain), self.field_of(&solution, &plain)))
    }

    fn field_of(&self, solution: &Solution, plain: &[f64]) -> Field {
        let part = |(k, body): (usize, &Body)| {
            let field = &solution.fields[k];
            let stresses = body.stresses(field, self.strain(k, plain));
            let nodes = body.mesh.nodes.iter().zip(field).zip(stresses);
            PartField {
                part: self.outlines.bodies[k].part,
                material: self.outlines.bodies[k].elastic(),
                nodes: nodes.map(|((place, moved), stress)| node(*place, *moved, stress)).collect(),
                elements: body.mesh.elements.clone(),
                held: self.held(k),
            }
        };
        let touch =
            |touch: &super::touch::Touch| ContactNodes { inner: touch.inner.clone(), outer: touch.outer.clone() };
        Field {
            parts: self.bodies.iter().enumerate().map(part).collect(),
            contacts: self.touches.iter().map(touch).collect(),
            singular: stress::singular(self).into_iter().map(place).collect(),
            unread: Length::new::<meter>(SINGULAR * self.outlines.bodies[self.outlines.ring].front),
        }
    }

    /// Nodes of a part that keep it from drifting along the axis while the contact is solved.
    fn held(&self, part: usize) -> Vec<usize> {
        let rest = if part == self.outlines.seat { self.outlines.rest.circle() } else { Rest::Circle };
        let (outline, mesh) = (&self.outlines.bodies[part], &self.bodies[part].mesh);
        let (at, radius) = match rest {
            Rest::BackCircle => (outline.back(), outline.outer_at_back()),
            _ => (outline.front, outline.outer),
        };
        mesh.across(at, (radius, radius))
    }
}

fn place([radius, axial]: [f64; 2]) -> Place {
    Place { radius: Length::new::<meter>(radius), position: Length::new::<meter>(axial) }
}

fn node(at: [f64; 2], [radial, axial]: [f64; 2], stress: [f64; 4]) -> Node {
    let [r, z, t, shear] = stress.map(Pressure::new::<pascal>);
    Node {
        place: place(at),
        radial: Length::new::<meter>(radial),
        axial: Length::new::<meter>(axial),
        stress: NodeStress { radial: r, axial: z, hoop: t, shear },
    }
}
